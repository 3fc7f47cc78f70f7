package publish

import (
	"context"
	"html/template"
	"os"
	"path/filepath"
	"testing"

	"changeout/build/internal/licences"
	"changeout/build/internal/markup"
	"changeout/build/internal/module"
	"changeout/build/internal/report"
	"changeout/build/internal/searchindex"
)

// small is a whole site of a few lines a file: two pages that link to each
// other, a worksheet, a table, a figure, and templates that draw just enough
// to look at.
var small = map[string]string{
	"go.mod":                    "module small\n",
	"wasm/main.go":              "package main\n",
	"content/contents.md":       "# Contents\n\n- [Start](index.md)\n- The job\n  - [Hold](stages/hold.md)\n- About\n  - [Limits](about/limits.md)\n  - [Words](about/glossary.md)\n- More numbers\n  - [Twice](worksheet:twice)\n  - [Squares](table:squares)\n  - [Sources](about/sources.html)\n",
	"content/stages.md":         "1. Hold: prove that it is tight.\n2. Charge: put in the right mass.\n",
	"content/hazards.md":        "| hazard | words | lowest |\n| --- | --- | --- |\n| Stored charge | capacitor | WARNING |\n",
	"content/index.md":          "---\ntitle: A small handbook\nsummary: It has three pages.\nkind: reference\nupdated: 2026-01-01\n---\n",
	"content/stages/hold.md":    "---\ntitle: Hold a vacuum\nsummary: Prove that nothing comes in.\nkind: reference\nstage: 1\nupdated: 2026-03-02\n---\n\n## What this achieves\n\nA [[micron]] is small. See [the limits](../about/limits.md#when) and [twice](../worksheets/twice.html). [@book]\n\n![Curve](curve.svg)\n\n:: worksheet twice\n",
	"content/stages/curve.svg":  "<svg xmlns=\"http://www.w3.org/2000/svg\"/>\n",
	"content/about/limits.md":   "---\ntitle: Limits\nsummary: When not to use it.\nkind: reference\nupdated: 2026-02-03\n---\n\n## When\n\nLocal codes govern. Go back to [the hold](../stages/hold.md).\n",
	"content/about/glossary.md": "---\ntitle: Words\nsummary: What words mean.\nkind: reference\nupdated: 2026-02-03\n---\n\n## micron\n\nA thousandth of a millimetre of mercury.\n",

	"site/app.ts":                      "document.title += '!';\n",
	"site/worksheets.ts":               "document.title += '=';\n",
	"site/search.ts":                   "document.title += '?';\n",
	"content/search.md":                "# Words people say\n\n| People say | This handbook says |\n| --- | --- |\n| pull down | vacuum |\n",
	"site/assess.ts":                   "document.title += '%';\n",
	"site/calculate.ts":                "onmessage = null;\n",
	"site/stored.ts":                   "document.title += '&';\n",
	"site/job.ts":                      "document.title += '#';\n",
	"site/early.ts":                    "document.title += '0';\n",
	"site/app.css":                     ".co-step { color: black }\n",
	"site/drawn.css":                   ".co-job { color: black }\n",
	"site/print.css":                   "nav { display: none }\n",
	"site/worker/worker.ts":            "declare const __VERSION__: string; declare const __EDITION__: [string, string]; declare const __PRECACHE__: [string, string, number][];\nconsole.log(__VERSION__, __EDITION__[0], __PRECACHE__.length);\n",
	"site/static/icon.svg":             "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 512 512\"><path fill=\"#0a4a47\" d=\"M0 0h512v512H0z\"/></svg>\n",
	"site/static/manifest.webmanifest": "{\"name\":\"small\"}\n",

	"site/layouts/base.tmpl":      `{{define "base"}}<!doctype html><html lang="en" data-version="{{.Version}}" data-module="{{.Assets.Module}}"><head><title>{{.Title}}</title><link rel="stylesheet" href="{{.Base}}{{.Assets.CSS}}"><link rel="icon" href="{{.Base}}{{.Assets.Icon}}"><script defer src="{{.Base}}{{.Assets.Script}}"></script>{{if .Sheets}}<script defer src="{{.Base}}{{.Assets.Worksheets}}"></script>{{end}}{{if .Stored}}<script defer src="{{.Base}}{{.Assets.Stored}}"></script>{{end}}</head><body><main id="main" data-page="{{.ID}}">{{template "main" .}}</main><p>{{.Date}} {{.Updated}} {{.Company}}</p>{{with .Next}}<a href="{{$.Base}}{{.URL}}">{{.Title}}</a>{{end}}</body></html>{{end}}`,
	"site/layouts/page.tmpl":      `{{define "main"}}<h1>{{.Title}}</h1>{{.Body}}{{end}}`,
	"site/layouts/front.tmpl":     `{{define "main"}}<h1>{{.Title}}</h1>{{range .Stages}}<p>{{.Number}} {{.Title}}{{range .Pages}} <a href="{{$.Base}}{{.URL}}">{{.Title}}</a>{{else}} Not written yet.{{end}}</p>{{end}}{{range .Shelves}}<h2>{{.Title}}</h2>{{range .Items}}<a href="{{$.Base}}{{.URL}}">{{.Title}}</a>{{end}}{{end}}{{end}}`,
	"site/layouts/list.tmpl":      `{{define "main"}}<h1>{{.Title}}</h1>{{range .Groups}}<h2>{{.Title}}</h2>{{if .Grid}}Side by side: {{end}}{{range .Items}}<a href="{{$.Base}}{{.URL}}">{{.Title}}</a>{{with .Note}} {{.}}{{end}}{{end}}{{end}}{{end}}`,
	"site/layouts/worksheet.tmpl": `{{define "main"}}<h1>{{.Title}}</h1>{{template "worksheet" .Form}}{{range .UsedIn}}<a href="{{$.Base}}{{.URL}}">{{.Title}}</a>{{end}}{{end}}`,
	"site/layouts/table.tmpl":     `{{define "main"}}<h1>{{.Title}}</h1>{{.Body}}{{with .Lead}}<p id="lead">{{.}} <a href="{{$.Base}}about/limits.html#when">when</a> <a href="#lead">here</a></p>{{end}}{{range .Tables}}{{template "table" .}}{{end}}{{end}}`,
	"site/layouts/single.tmpl":    `{{define "single"}}<!doctype html><html lang="en" data-single-file><head><style>{{.CSS}}</style></head><body>{{range .Pages}}<section id="{{.ID}}" data-page="{{.ID}}"{{if .Packed}} data-packed{{end}}>{{.Main}}</section>{{end}}{{if .Packed}}<script type="application/octet-stream" id="co-packed">{{.Packed}}</script>{{end}}<script type="text/plain" id="co-search">{{.Search}}</script><script type="application/octet-stream" id="co-module">{{.Module}}</script><script>{{.Script}}</script></body></html>{{end}}`,

	"site/components/worksheet/worksheet.tmpl": `{{define "worksheet"}}<form id="{{.ID}}-form"><label for="{{.ID}}-x">x</label><input id="{{.ID}}-x" aria-describedby="{{.ID}}-hint {{.ID}}-error"></form>{{end}}`,
	"site/components/table/table.tmpl":         `{{define "table"}}<table>{{range .}}<tr><td>{{.}}</td></tr>{{end}}</table>{{end}}`,
}

// bookSources is a bibliography of one.
type bookSources struct{}

func (bookSources) Source(key string) (string, string, string, bool) {
	return "A book", "https://example.org/book", "print", key == "book"
}
func (bookSources) Keys() []string { return []string{"book"} }

type form struct{ ID string }

func supply() Supply {
	draw := func(text string) func(string, markup.Place) ([]byte, error) {
		return func(id string, _ markup.Place) ([]byte, error) { return []byte(text), nil }
	}
	return Supply{
		Sources:    bookSources{},
		Worksheets: markup.Embeds{IDs: []string{"twice"}, HTML: draw(`<form id="twice-form"></form>`)},
		Tables:     markup.Embeds{IDs: []string{"squares"}, HTML: draw(`<table id="squares"></table>`)},
		WorksheetPages: []WorksheetPage{{ID: "twice", Title: "Twice", Summary: "Doubles a number.",
			Form: func(string) (any, error) { return form{"twice"}, nil },
			Places: func() []markup.Passage {
				return []markup.Passage{{Kind: searchindex.Field, ID: "twice-x", Text: "A number"}}
			}}},
		TablePages: []TablePage{{ID: "squares", Title: "Squares", Summary: "Squares of numbers.", Group: "Numbers",
			Tables: func() ([]any, error) { return []any{[]int{1, 4, 9}}, nil }}},
		Bibliography: []SourceGroup{{Title: "Books", Items: []SourceEntry{{Key: "book", Text: "A book", Read: "read in print"}}}},
		Checked:      []CheckedWorksheet{{ID: "twice", Title: "Twice", Rows: []CheckedRow{{Inputs: "x = 2", Quantity: "y", Expected: "4", Got: "4", Difference: "0", Tolerance: "0", Source: template.HTML("A book, table 1"), Read: "in print"}}}},
	}
}

// tree writes files into a folder that the test may change.
func tree(t testing.TB, files map[string]string) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range files {
		write(t, root, name, text)
	}
	return root
}

func write(t testing.TB, root, name, text string) {
	t.Helper()
	file := filepath.Join(root, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func read(t testing.TB, root, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// options builds the tree in root with a module of a few bytes instead of a
// compiled one.
func options(root string) Options {
	m := &module.Module{Bytes: []byte("\x00asm\x01\x00\x00\x00 pretended")}
	return Options{
		Root:   root,
		Supply: supply(),
		Module: func(context.Context) (*module.Module, []report.Problem) { return m, nil },
		Licences: func(context.Context) ([]licences.Item, []report.Problem) {
			return []licences.Item{{Name: "Go", Version: "1.26", Role: "Inside.", Linked: true, Texts: []licences.Text{{File: "LICENSE", Body: "Go's <terms>"}}}}, nil
		},
	}
}

// mustBuild builds without problems.
func mustBuild(t testing.TB, p *Publisher) Summary {
	t.Helper()
	s, problems := p.Build(context.Background())
	for _, p := range problems {
		t.Errorf("unexpected problem: %v", p)
	}
	if len(problems) > 0 {
		t.FailNow()
	}
	return s
}
