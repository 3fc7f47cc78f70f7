package module

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// tree writes a small Go module with a wasm program.
func tree(t *testing.T, files map[string]string) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range files {
		file := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

var small = map[string]string{
	"go.mod":         "module example\n\ngo 1.24\n",
	"calc/calc.go":   "package calc\n\nfunc Twice(x float64) float64 { return 2 * x }\n",
	"calc/notes.txt": "not compiled\n",
	"wasm/main.go":   "package main\n\nimport \"example/calc\"\n\nfunc main() {}\n\n//go:wasmexport twice\nfunc twice(x float64) float64 { return calc.Twice(x) }\n",
}

func build(t *testing.T, root, cache string) (*Module, string) {
	t.Helper()
	var progress bytes.Buffer
	m, problems := Build(context.Background(), Options{Root: root, CacheDir: cache, Progress: &progress})
	for _, p := range problems {
		t.Errorf("unexpected problem: %v", p)
	}
	if m == nil {
		t.Fatal("no module")
	}
	return m, progress.String()
}

func TestBuild(t *testing.T) {
	cache := t.TempDir()
	m, progress := build(t, tree(t, small), cache)
	if !bytes.HasPrefix(m.Bytes, []byte("\x00asm\x01\x00\x00\x00")) {
		t.Errorf("got first bytes %x, want the head of a WebAssembly file", m.Bytes[:min(8, len(m.Bytes))])
	}
	if sum := sha256.Sum256(m.Bytes); m.SHA256 != hex.EncodeToString(sum[:]) {
		t.Errorf("got digest %s, want %x", m.SHA256, sum)
	}
	if !strings.Contains(progress, "building") {
		t.Errorf("got progress %q, want a line before the slow step", progress)
	}

	// Another folder, another time, nothing cached: the same bytes.
	again, _ := build(t, tree(t, small), "off")
	if again.SHA256 != m.SHA256 {
		t.Errorf("got another module from the same sources in another folder: %s, want %s", again.SHA256, m.SHA256)
	}

	// The key does not hold the folder, so the copy comes from the cache.
	cached, progress := build(t, tree(t, small), cache)
	if progress != "" || cached.SHA256 != m.SHA256 {
		t.Errorf("got %q and %s, want the cached module %s without progress", progress, cached.SHA256, m.SHA256)
	}
}

func TestChangedSourceIsCompiled(t *testing.T) {
	root, cache := tree(t, small), t.TempDir()
	first, _ := build(t, root, cache)
	file := filepath.Join(root, "calc", "calc.go")
	if err := os.WriteFile(file, []byte("package calc\n\nfunc Twice(x float64) float64 { return x + x + 1 }\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	second, progress := build(t, root, cache)
	if progress == "" || second.SHA256 == first.SHA256 {
		t.Errorf("got the old module after a change in calc (progress %q)", progress)
	}
}

func TestDamagedCacheIsNotUsed(t *testing.T) {
	root, cache := tree(t, small), t.TempDir()
	first, _ := build(t, root, cache)
	files, err := filepath.Glob(filepath.Join(cache, "*"))
	if err != nil || len(files) != 1 {
		t.Fatalf("got %d files in the cache, want 1 (%v)", len(files), err)
	}
	b, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	b[len(b)/2] ^= 1
	if err := os.WriteFile(files[0], b, 0o644); err != nil {
		t.Fatal(err)
	}
	second, progress := build(t, root, cache)
	if progress == "" || second.SHA256 != first.SHA256 {
		t.Errorf("got %s (progress %q), want a new build of %s", second.SHA256, progress, first.SHA256)
	}
}

func TestCacheStaysSmall(t *testing.T) {
	c, err := openCache(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	for i := range keep + 5 {
		sum := sha256.Sum256([]byte{byte(i)})
		c.put(hex.EncodeToString(sum[:]), []byte("module"))
	}
	files, _ := filepath.Glob(filepath.Join(string(c), "*"))
	if len(files) != keep {
		t.Errorf("got %d files, want %d", len(files), keep)
	}
}

func TestCompileErrors(t *testing.T) {
	broken := map[string]string{
		"go.mod":       small["go.mod"],
		"calc/calc.go": "package calc\n\nfunc Twice(x float64) float64 {\n\treturn y * x\n}\n\nfunc Other() int { return \"\" }\n",
		"wasm/main.go": small["wasm/main.go"],
	}
	_, problems := Build(context.Background(), Options{Root: tree(t, broken), CacheDir: "off"})
	want := []struct {
		line int
		text string
	}{{4, "undefined: y"}, {7, "cannot use"}}
	if len(problems) != len(want) {
		t.Fatalf("got %v, want %d problems", problems, len(want))
	}
	for i, w := range want {
		p := problems[i]
		if p.File != "calc/calc.go" || p.Line != w.line || !strings.Contains(p.Text, w.text) {
			t.Errorf("got %v, want calc/calc.go:%d: %s", p, w.line, w.text)
		}
	}
}

func TestMissingPackage(t *testing.T) {
	_, problems := Build(context.Background(), Options{Root: tree(t, map[string]string{"go.mod": small["go.mod"]}), CacheDir: "off"})
	if len(problems) != 1 || problems[0].File != "wasm" || !strings.Contains(problems[0].Text, "wasm") {
		t.Errorf("got %v, want one problem that names wasm", problems)
	}
}

func TestCompileProgram(t *testing.T) {
	root := tree(t, map[string]string{"go.mod": small["go.mod"], "build/main.go": "package main\n\nfunc main() { println(\"here\") }\n"})
	file := filepath.Join(t.TempDir(), "program")
	if problems := CompileProgram(context.Background(), root, "./build", file); len(problems) > 0 {
		t.Fatal(problems)
	}
	if info, err := os.Stat(file); err != nil || info.Size() == 0 {
		t.Errorf("got no program: %v", err)
	}
}
