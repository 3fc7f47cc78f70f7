//go:build !unix

package serve

func replace(string, []string) error { return ErrCannotRestart }
