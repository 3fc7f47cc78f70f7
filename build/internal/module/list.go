package module

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
)

// Package is what the Go command says about one package; see `go help list`.
type Package struct {
	Dir        string
	ImportPath string
	Standard   bool
	Module     *GoModule

	GoFiles, SFiles, HFiles, EmbedFiles, OtherFiles []string
}

// GoModule is the module a package comes from.
type GoModule struct {
	Path    string
	Version string
	Dir     string
	Main    bool
}

// List returns the packages that are linked into pkg: for the phone's target
// when phone is true, for this machine otherwise.
func List(ctx context.Context, root, pkg string, phone bool) ([]Package, error) {
	var env []string
	if phone {
		env = target
	}
	return list(ctx, root, env, pkg)
}

func list(ctx context.Context, root string, env []string, pkg string) ([]Package, error) {
	out, err := goCommand(ctx, root, env, "list", "-deps",
		"-json=Dir,ImportPath,Standard,Module,GoFiles,SFiles,HFiles,EmbedFiles,OtherFiles", pkg)
	if err != nil {
		return nil, err
	}
	var packages []Package
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p Package
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return packages, nil
		} else if err != nil {
			return nil, err
		}
		packages = append(packages, p)
	}
}

// GoEnv returns one value of `go env`, such as GOROOT or GOVERSION.
func GoEnv(ctx context.Context, root, name string) (string, error) {
	out, err := goCommand(ctx, root, nil, "env", name)
	return string(bytes.TrimSpace(out)), err
}
