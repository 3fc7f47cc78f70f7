package licences

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestList runs on a small program outside the repository that links a library
// from a folder, so that it says what the rules are and not what this
// repository happens to use.
func TestList(t *testing.T) {
	root := t.TempDir()
	for name, text := range map[string]string{
		"go.mod":               "module example\n\ngo 1.24\n\nrequire lib.example/units v1.2.3\n\nrequire github.com/yuin/goldmark v1.8.7\n\nreplace lib.example/units => ./units\n\nreplace github.com/yuin/goldmark => ./goldmark\n",
		"units/go.mod":         "module lib.example/units\n",
		"units/LICENSE":        "Units licence text.\r\nSecond line.\r\n",
		"units/NOTICE.md":      "A notice.\n",
		"units/units.go":       "package units\n",
		"goldmark/go.mod":      "module github.com/yuin/goldmark\n",
		"goldmark/COPYING":     "Markdown licence text.\n",
		"goldmark/goldmark.go": "package goldmark\n",
		"wasm/main.go":         "package main\n\nimport _ \"lib.example/units\"\n\nfunc main() {}\n",
		"build/main.go":        "package main\n\nimport (\n\t_ \"github.com/yuin/goldmark\"\n\t_ \"lib.example/units\"\n)\n\nfunc main() {}\n",
	} {
		file := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	items, problems := List(context.Background(), Options{Root: root})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	want := []struct {
		name   string
		linked bool
		files  string
		text   string
	}{
		{"Go", true, "LICENSE", "Copyright"},
		{"lib.example/units", true, "LICENSE NOTICE.md", "Units licence text.\nSecond line.\n"},
		{"github.com/yuin/goldmark", false, "COPYING", "Markdown licence text."},
	}
	if len(items) != len(want) {
		t.Fatalf("got %d items, want %d: %+v", len(items), len(want), items)
	}
	for i, w := range want {
		got := items[i]
		var files []string
		for _, text := range got.Texts {
			files = append(files, text.File)
		}
		if got.Name != w.name || got.Linked != w.linked || !strings.HasPrefix(strings.Join(files, " "), w.files) || !strings.Contains(got.Texts[0].Body, w.text) || got.Role == "" || got.Version == "" {
			t.Errorf("got %s %s linked=%v role %q files %v, want %s linked=%v files %s holding %q", got.Name, got.Version, got.Linked, got.Role, files, w.name, w.linked, w.files, w.text)
		}
	}
}

func TestModuleWithoutLicence(t *testing.T) {
	if texts, err := readTexts(t.TempDir()); err == nil {
		t.Errorf("got %v for a folder without a licence, want an error", texts)
	}
}
