// Package licences lists the software that reaches a phone, with the full
// text of each licence. The list is made from what the Go command reports as
// linked, not typed by hand, so a new dependency cannot be forgotten.
package licences

import (
	"cmp"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"changeout/build/internal/module"
	"changeout/build/internal/report"
)

// Item is one piece of software and its licence.
type Item struct {
	Name    string // module path, or "Go" for the standard library and runtime
	Version string
	// Role says in one sentence how it reaches the phone.
	Role string
	// Linked is true if its compiled code is inside the module that phones load.
	// It is false for a library that only ran while the site was built.
	Linked bool
	Texts  []Text
}

// Text is one licence file.
type Text struct {
	File string // name as in its distribution, such as LICENSE
	Body string
}

// Options says which programs to look at.
type Options struct {
	Root  string // the folder that holds go.mod
	Phone string // package of the module that phones load; "./wasm" if empty
	Build string // package of the program that makes the site; "./build" if empty
}

// output names the build-time libraries whose output or code is in the
// published pages. Other libraries of the build program leave nothing in them.
// The licences ask for a notice with copies of the code; listing these is the
// careful reading.
var output = []struct{ module, role string }{
	{"github.com/yuin/goldmark", "Turned the Markdown text into the HTML of the pages. Its code is not in the pages."},
	{"github.com/alecthomas/chroma/v2", "Coloured the samples of logs and settings. Its class names and style rules are in the pages."},
	{"github.com/evanw/esbuild", "Bundled the scripts and style sheets. A few of its helper functions can be in the scripts."},
}

// List returns the items in a fixed order: Go first, then modules linked for
// the phone, then build-time libraries, each group by name.
func List(ctx context.Context, o Options) ([]Item, []report.Problem) {
	o.Phone = cmp.Or(o.Phone, "./wasm")
	o.Build = cmp.Or(o.Build, "./build")
	goItem, err := goLicence(ctx, o.Root)
	if err != nil {
		return nil, failed("the licence of Go cannot be read: " + err.Error())
	}
	items := []Item{goItem}
	linked, problems := modules(ctx, o.Root, o.Phone, true)
	for _, m := range linked {
		item, err := moduleItem(m)
		if err != nil {
			problems = append(problems, failed(err.Error())...)
			continue
		}
		item.Role, item.Linked = "Its code is in the module that phones load.", true
		items = append(items, item)
	}
	tools, more := modules(ctx, o.Root, o.Build, false)
	problems = append(problems, more...)
	for _, m := range tools {
		i := slices.IndexFunc(output, func(known struct{ module, role string }) bool { return known.module == m.Path })
		if i < 0 || slices.ContainsFunc(linked, func(l module.GoModule) bool { return l.Path == m.Path }) {
			continue
		}
		item, err := moduleItem(m)
		if err != nil {
			problems = append(problems, failed(err.Error())...)
			continue
		}
		item.Role = output[i].role
		items = append(items, item)
	}
	return items, problems
}

// modules returns the modules other than our own that are linked into pkg.
func modules(ctx context.Context, root, pkg string, phone bool) ([]module.GoModule, []report.Problem) {
	packages, err := module.List(ctx, root, pkg, phone)
	if err != nil {
		return nil, failed(fmt.Sprintf("the modules linked into %s cannot be listed: %v", pkg, err))
	}
	seen := map[string]module.GoModule{}
	for _, p := range packages {
		if p.Module != nil && !p.Module.Main {
			seen[p.Module.Path] = *p.Module
		}
	}
	var list []module.GoModule
	for _, m := range seen {
		list = append(list, m)
	}
	slices.SortFunc(list, func(a, b module.GoModule) int { return cmp.Compare(a.Path, b.Path) })
	return list, nil
}

func goLicence(ctx context.Context, root string) (Item, error) {
	goroot, err := module.GoEnv(ctx, root, "GOROOT")
	if err != nil {
		return Item{}, err
	}
	version, err := module.GoEnv(ctx, root, "GOVERSION")
	if err != nil {
		return Item{}, err
	}
	// Some packagings of Go keep the licence one folder higher.
	for _, dir := range []string{goroot, filepath.Dir(goroot)} {
		if texts, err := readTexts(dir); err == nil {
			return Item{
				Name:    "Go",
				Version: strings.TrimPrefix(version, "go"),
				Role:    "The standard library and the runtime are in the module that phones load.",
				Linked:  true,
				Texts:   texts,
			}, nil
		}
	}
	return Item{}, fmt.Errorf("no licence file in %s", goroot)
}

func moduleItem(m module.GoModule) (Item, error) {
	texts, err := readTexts(m.Dir)
	if err != nil {
		return Item{}, fmt.Errorf("the module %s %s has no licence file that can be read: %w", m.Path, m.Version, err)
	}
	return Item{Name: m.Path, Version: strings.TrimPrefix(m.Version, "v"), Texts: texts}, nil
}

// stems are the file names that hold terms, without extension. PATENTS is a
// grant that belongs to Go's licence.
var stems = []string{"license", "licence", "copying", "notice", "patents"}

func readTexts(dir string) ([]Text, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var texts []Text
	licence := false
	for _, e := range entries {
		stem, ext, _ := strings.Cut(strings.ToLower(e.Name()), ".")
		if e.IsDir() || !slices.Contains(stems, stem) || (ext != "" && ext != "md" && ext != "txt") {
			continue
		}
		b, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return nil, err
		}
		licence = licence || (stem != "patents" && stem != "notice")
		texts = append(texts, Text{File: e.Name(), Body: strings.ReplaceAll(string(b), "\r\n", "\n")})
	}
	if !licence {
		return nil, fmt.Errorf("no licence file in %s", dir)
	}
	return texts, nil
}

func failed(text string) []report.Problem {
	return []report.Problem{{File: "go.mod", Text: text, Hint: "run `go mod download`, then build again"}}
}
