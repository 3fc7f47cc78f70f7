package main

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// capture runs the command and returns its exit code and what it printed.
func capture(t *testing.T, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	read := func(target **os.File) func() string {
		r, w, err := os.Pipe()
		if err != nil {
			t.Fatal(err)
		}
		old := *target
		*target = w
		done := make(chan string)
		go func() {
			b, _ := io.ReadAll(r)
			done <- string(b)
		}()
		return func() string {
			*target = old
			w.Close()
			return <-done
		}
	}
	out, errs := read(&os.Stdout), read(&os.Stderr)
	code = run(context.Background(), args)
	return code, out(), errs()
}

// TestExitCodes: 0 and an answer, or 2 and one sentence with nothing on
// standard output.
func TestExitCodes(t *testing.T) {
	for _, c := range []struct {
		args   []string
		code   int
		stdout string
		stderr string
	}{
		{[]string{"compute"}, 0, "saturation", ""},
		{[]string{"compute", "saturation"}, 0, "refrigerant", ""},
		{[]string{"compute", "saturation", "refrigerant=R-32", "pressure=9barg"}, 0, "Dew temperature", ""},
		{[]string{"compute", "-json", "saturation", "refrigerant=R-32", "pressure=9barg"}, 0, `{"worksheet":"saturation","outputs":{`, ""},
		{[]string{"compute", "saturation", "refrigerant=R-32", "pressure=9bar"}, 2, "", "Pressure: “9bar” does not say gauge or absolute; write barg or bara."},
		{[]string{"compute", "-json", "saturation", "refrigerant=R-32"}, 2, "", "Pressure is missing"},
		{[]string{"compute", "no-such"}, 2, "", "There is no worksheet “no-such”"},
		{[]string{"bake"}, 2, "", `there is no command "bake"`},
		{[]string{"check", "extra"}, 2, "", `"extra" is not understood after check`},
	} {
		code, stdout, stderr := capture(t, c.args...)
		if code != c.code {
			t.Errorf("%q: exit code %d, want %d (%s)", c.args, code, c.code, stderr)
		}
		if c.code == 0 && (!strings.Contains(stdout, c.stdout) || stderr != "") {
			t.Errorf("%q: stdout %q, stderr %q, want %q on stdout only", c.args, stdout, stderr, c.stdout)
		}
		if c.code == 2 && (stdout != "" || !strings.Contains(stderr, c.stderr) || strings.Count(stderr, "\n") != 1) {
			t.Errorf("%q: stdout %q, stderr %q, want one sentence %q on stderr only", c.args, stdout, stderr, c.stderr)
		}
	}
}

// TestPlaceSingle: a build puts the single file into the site, unless it was
// told another place or none.
func TestPlaceSingle(t *testing.T) {
	for _, c := range []struct{ out, given, want string }{
		{"", "", "/repo/public/handbook.html"},
		{"/srv/site", "", "/srv/site/handbook.html"},
		{"", "one.html", "one.html"},
		{"", "none", ""},
	} {
		var o options
		o.Root, o.Out, o.Single = "/repo", c.out, c.given
		o.placeSingle()
		if got := filepath.ToSlash(o.Single); got != c.want {
			t.Errorf("-out %q -single %q: got %q, want %q", c.out, c.given, got, c.want)
		}
	}
}
