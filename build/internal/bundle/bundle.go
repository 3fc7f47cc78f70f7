// Package bundle turns the TypeScript and CSS of site into the few files a
// browser loads. It is the only place that knows esbuild, which is linked as a
// Go library: no Node is needed. A warning counts as a problem, so that nothing
// doubtful is shipped.
package bundle

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"

	"github.com/evanw/esbuild/pkg/api"

	"changeout/build/internal/report"
)

// Options says which file to bundle.
type Options struct {
	Root  string // absolute folder of the repository; file names in problems are relative to it
	Entry string // slash path below Root, such as site/app.ts or site/app.css

	// Define gives constants to the script. A name such as __MODULE__ in the
	// source becomes the JSON text of the value, and branches that are never
	// taken are removed. Names must be declared in the source
	// (`declare const __MODULE__: string`).
	Define map[string]any
}

// engines are the oldest browsers the scripts and styles are written for: all
// of them understand ES2020, run WebAssembly and service workers.
var engines = []api.Engine{
	{Name: api.EngineChrome, Version: "87"},
	{Name: api.EngineFirefox, Version: "91"},
	{Name: api.EngineSafari, Version: "14.1"},
	{Name: api.EngineIOS, Version: "14.5"},
}

// Build bundles and minifies one entry file. The output has no source map and
// no comment with a folder name: same input, same bytes.
func Build(o Options) ([]byte, []report.Problem) {
	if _, err := os.Stat(filepath.Join(o.Root, filepath.FromSlash(o.Entry))); err != nil {
		return nil, []report.Problem{{File: o.Entry, Text: "this file is needed for the site and is not there", Hint: "restore " + o.Entry}}
	}
	define := make(map[string]string, len(o.Define))
	for name, value := range o.Define {
		b, err := json.Marshal(value)
		if err != nil {
			return nil, []report.Problem{{File: o.Entry, Text: "the constant " + name + " cannot be written as JSON: " + err.Error()}}
		}
		define[name] = string(b)
	}
	result := api.Build(api.BuildOptions{
		AbsWorkingDir: o.Root,
		EntryPoints:   []string{"./" + o.Entry},
		Outdir:        filepath.Join(o.Root, "out"), // names only: Write is off
		Bundle:        true,
		Write:         false,
		Format:        api.FormatIIFE, // a classic script: also runs inside the single file, opened from storage
		Platform:      api.PlatformBrowser,
		Target:        api.ES2020,
		Engines:       engines,
		Charset:       api.CharsetUTF8,
		LegalComments: api.LegalCommentsNone,
		Define:        define,

		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,

		LogLevel: api.LogLevelSilent,
		// A tsconfig.json is for the editor and the type check. What it says must
		// not change the shipped bytes.
		TsconfigRaw: `{"compilerOptions":{"target":"ES2020","useDefineForClassFields":true,"strict":true}}`,
		Loader: map[string]api.Loader{
			".svg": api.LoaderDataURL, // small drawings in CSS; img-src allows data:
		},
	})
	problems := messages(o, result.Errors)
	problems = append(problems, messages(o, result.Warnings)...)
	if len(problems) > 0 {
		return nil, problems
	}
	for _, f := range result.OutputFiles {
		if filepath.Ext(f.Path) == outputExt(o.Entry) {
			return f.Contents, nil
		}
	}
	return nil, []report.Problem{{File: o.Entry, Text: "bundling gave no output"}}
}

func outputExt(entry string) string {
	if strings.HasSuffix(entry, ".css") {
		return ".css"
	}
	return ".js"
}

// messages turns esbuild's messages into problems.
func messages(o Options, list []api.Message) []report.Problem {
	var problems []report.Problem
	for _, m := range list {
		p := report.Problem{File: o.Entry, Text: m.Text}
		if m.Location != nil {
			p.File = filepath.ToSlash(m.Location.File)
			p.Line = m.Location.Line
			if m.Location.Suggestion != "" {
				p.Hint = "write " + m.Location.Suggestion
			}
		}
		for _, n := range m.Notes {
			if p.Hint == "" {
				p.Hint = n.Text
			}
		}
		problems = append(problems, p)
	}
	return problems
}
