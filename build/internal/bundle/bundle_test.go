package bundle

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

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

func TestScript(t *testing.T) {
	files := map[string]string{
		"site/app.ts":          "import {greet} from './module/greet.ts';\ndeclare const __MODULE__: string;\ndeclare const __SINGLE__: boolean;\nif (__SINGLE__) console.log('never');\ngreet(__MODULE__ ?? '°C');\n",
		"site/module/greet.ts": "// a comment\nexport function greet(name: string): void { document.title = name + ' °C'; }\n",
		"site/tsconfig.json":   `{"compilerOptions":{"target":"es5","strict":"nonsense"}}`,
	}
	o := Options{Root: tree(t, files), Entry: "site/app.ts", Define: map[string]any{"__MODULE__": "assets/x.wasm", "__SINGLE__": false}}
	b, problems := Build(o)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	js := string(b)
	for _, want := range []string{`"assets/x.wasm"`, "document.title", "°C"} {
		if !strings.Contains(js, want) {
			t.Errorf("got %q, want %s in it", js, want)
		}
	}
	for _, not := range []string{"never", "a comment", o.Root, "import", "__SINGLE__", "sourceMapping"} {
		if strings.Contains(js, not) {
			t.Errorf("got %q, want no %s in it", js, not)
		}
	}
	// The same files in another folder give the same bytes.
	o.Root = tree(t, files)
	again, _ := Build(o)
	if string(again) != js {
		t.Errorf("got other bytes in another folder:\n%s\n%s", again, js)
	}
}

func TestStyle(t *testing.T) {
	root := tree(t, map[string]string{
		"site/app.css":                  "@import './components/step/step.css';\n@media print { .co-step { color: black } }\n",
		"site/components/step/step.css": "/* note */\n.co-step { color: #ff0000; inset: 0 }\n",
	})
	b, problems := Build(Options{Root: root, Entry: "site/app.css"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	css := string(b)
	if !strings.Contains(css, ".co-step{color:red") || strings.Contains(css, "@import") || strings.Contains(css, "note") {
		t.Errorf("got %q, want one minified sheet", css)
	}
}

func TestProblemsHavePlaces(t *testing.T) {
	for _, c := range []struct {
		name, entry, file, text string
		line                    int
		files                   map[string]string
	}{
		{"syntax", "site/app.ts", "site/app.ts", "", 2, map[string]string{"site/app.ts": "let a = 1;\nlet = ;\n"}},
		{"missing import", "site/app.ts", "site/app.ts", "./gone.ts", 1, map[string]string{"site/app.ts": "import './gone.ts';\n"}},
		{"warning in a component", "site/app.css", "site/b.css", "", 2, map[string]string{"site/app.css": "@import './b.css';\n", "site/b.css": ".a { color: red }\n.b { colour red }\n"}},
		{"suspicious comparison", "site/app.ts", "site/app.ts", "", 1, map[string]string{"site/app.ts": "if (typeof document === 'strnig') document.title = '';\n"}},
		{"no entry", "site/worker/worker.ts", "site/worker/worker.ts", "not there", 0, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, problems := Build(Options{Root: tree(t, c.files), Entry: c.entry})
			if len(problems) == 0 {
				t.Fatalf("got no problem and %q", b)
			}
			p := problems[0]
			if p.File != c.file || p.Line != c.line || !strings.Contains(p.Text, c.text) {
				t.Errorf("got %v, want %s:%d with %q", p, c.file, c.line, c.text)
			}
			if b != nil {
				t.Errorf("got output %q beside problems", b)
			}
		})
	}
}
