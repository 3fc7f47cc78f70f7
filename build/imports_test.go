package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// pkg is what "go list -json" says about a package.
type pkg struct {
	ImportPath   string
	Standard     bool
	Imports      []string
	TestImports  []string
	XTestImports []string
}

func list(t *testing.T, env []string, args ...string) []pkg {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-json=ImportPath,Standard,Imports,TestImports,XTestImports"}, args...)...)
	cmd.Dir = ".."
	cmd.Env = append(os.Environ(), env...)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list %v: %v\n%s", args, err, stderr.String())
	}
	var pkgs []pkg
	for d := json.NewDecoder(bytes.NewReader(out)); d.More(); {
		var p pkg
		if err := d.Decode(&p); err != nil {
			t.Fatal(err)
		}
		pkgs = append(pkgs, p)
	}
	if len(pkgs) < 3 {
		t.Fatalf("go list %v names %d packages: this test would prove nothing", args, len(pkgs))
	}
	return pkgs
}

// under reports whether an import path is a folder or below it.
func under(path, folder string) bool { return path == folder || strings.HasPrefix(path, folder+"/") }

func underAny(path string, folders []string) bool {
	for _, f := range folders {
		if under(path, f) {
			return true
		}
	}
	return false
}

// tooBig is what must not reach a phone: each would cost its reader tens to
// hundreds of kilobytes. The runtime of the wasip1 target needs none of them.
var tooBig = []string{"fmt", "encoding", "html", "text/template", "os", "net", "embed", "regexp", "log", "reflect", "time", "bufio", "io/fs", "path", "syscall", "math/big", "unicode/utf16", "internal/poll", "internal/oserror"}

// TestWhatShipsStaysSmall walks everything that the module links.
func TestWhatShipsStaysSmall(t *testing.T) {
	for _, p := range list(t, []string{"GOOS=wasip1", "GOARCH=wasm"}, "-deps", "./wasm") {
		if p.Standard && underAny(p.ImportPath, tooBig) {
			t.Errorf("the module links %s; find who imports it with: GOOS=wasip1 GOARCH=wasm go list -deps ./wasm", p.ImportPath)
		}
		if !p.Standard && !under(p.ImportPath, "changeout/wasm") && !under(p.ImportPath, "changeout/calc") {
			t.Errorf("the module links %s; it may link calc and wasm only", p.ImportPath)
		}
		if under(p.ImportPath, "changeout/calc/property/refrigerant/facts") {
			t.Errorf("the module links %s, whose words are for pages only", p.ImportPath)
		}
		if under(p.ImportPath, "changeout/calc/published") || under(p.ImportPath, "changeout/calc/calctest") {
			t.Errorf("the module links %s, which is for tests and for the build", p.ImportPath)
		}
	}
}

// TestArrows: calc <- wasm, calc <- build, and nothing imports build or wasm.
func TestArrows(t *testing.T) {
	calc := 0
	for _, p := range list(t, nil, "./...") {
		all := append(append(append([]string{}, p.Imports...), p.TestImports...), p.XTestImports...)
		for _, imported := range all {
			switch {
			case under(imported, "changeout/build") && !under(p.ImportPath, "changeout/build"),
				under(imported, "changeout/wasm") && !under(p.ImportPath, "changeout/wasm"),
				under(imported, "changeout/site"):
				t.Errorf("%s imports %s; nothing imports build, wasm or site", p.ImportPath, imported)
			}
		}
		if !under(p.ImportPath, "changeout/calc") {
			continue
		}
		calc++
		shared := under(p.ImportPath, "changeout/calc/property") || under(p.ImportPath, "changeout/calc/formula")
		for _, imported := range p.Imports {
			switch {
			case shared && under(imported, "changeout/calc") && !under(imported, "changeout/calc/property") && !under(imported, "changeout/calc/formula"):
				t.Errorf("%s imports %s; property and formula know SI numbers only: no units, labels or sources", p.ImportPath, imported)
			case under(p.ImportPath, "changeout/calc/property") && under(imported, "changeout/calc/formula"):
				t.Errorf("%s imports %s; a formula may use a property, not the other way", p.ImportPath, imported)
			case !under(p.ImportPath, "changeout/calc/published") && !under(p.ImportPath, "changeout/calc/calctest") && underAny(imported, tooBig):
				t.Errorf("%s imports %s, which is too big for the phone", p.ImportPath, imported)
			}
		}
	}
	if calc < 10 {
		t.Errorf("saw %d packages of calc, want at least 10: this test would prove nothing", calc)
	}
}
