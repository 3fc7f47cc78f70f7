package publish

import (
	"context"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"changeout/build/internal/bundle"
	"changeout/build/internal/licences"
	"changeout/build/internal/module"
	"changeout/build/internal/report"
)

// Names in the site. The worker has no digest in its name: a browser finds the
// next version by asking for the same address again.
const (
	workerFile   = "worker.js"
	manifestFile = "manifest.webmanifest"
	iconFile     = "icon.svg"
)

// shelf is everything a site has besides pages. It is made once and kept until
// one of its sources changes.
type shelf struct {
	templates templates
	source    []byte // digest of the templates' text
	css, js   []byte
	drawn     []byte // the style of pages that a script draws
	print     []byte // the style of paper
	sheets    []byte // the script of pages that hold a worksheet
	early     []byte // what every page runs before anything is drawn
	search    []byte // the script that the first search loads
	job       []byte // the script of the job file, loaded when it is needed
	assess    []byte // the script of the page that assesses
	calculate []byte // the worker that runs the module
	stored    []byte // the script of the page that shows what is stored
	worker    []byte // bundled, without the list that stands before it
	static    map[string][]byte
	module    *module.Module
	licences  []licences.Item
	assets    Assets
}

// loadShelf makes what changed and takes the rest from before, which may be
// nil.
func (p *Publisher) loadShelf(ctx context.Context, in inputs, before *shelf, last inputs) (*shelf, []report.Problem) {
	s := &shelf{}
	var list report.List
	var wg sync.WaitGroup
	if before != nil && in.sameSite(last) {
		s.templates, s.source, s.css, s.drawn, s.print, s.js, s.sheets, s.early, s.search, s.job, s.assess, s.calculate, s.stored, s.worker, s.static = before.templates, before.source, before.css, before.drawn, before.print, before.js, before.sheets, before.early, before.search, before.job, before.assess, before.calculate, before.stored, before.worker, before.static
	} else {
		wg.Go(func() { list.Add(s.loadSite(p.o)...) })
	}
	if before != nil && in.sameCode(last) {
		s.module, s.licences = before.module, before.licences
	} else {
		wg.Go(func() {
			m, problems := p.o.Module(ctx)
			s.module = m
			list.Add(problems...)
		})
		wg.Go(func() {
			items, problems := p.o.Licences(ctx)
			s.licences = items
			list.Add(problems...)
		})
	}
	wg.Wait()
	if !list.Empty() {
		return nil, list.Sorted()
	}
	s.assets = Assets{
		CSS:      hashedName("app.css", s.css),
		Drawn:    hashedName("drawn.css", s.drawn),
		Print:    hashedName("print.css", s.print),
		Script:   hashedName("app.js", s.js),
		Module:   hashedName("changeout.wasm", s.module.Bytes),
		Sum:      integrity(s.module.Bytes),
		Search:   searchFile,
		Worker:   workerFile,
		Manifest: manifestFile,
		Icon:     iconFile,
		Touch:    iconName(180),

		Worksheets: hashedName("worksheets.js", s.sheets),
		Early:      hashedName("early.js", s.early),
		Job:        hashedName("job.js", s.job),
		Searching:  hashedName("search.js", s.search),
		Assessing:  hashedName("assess.js", s.assess),
		Calculator: hashedName("calculate.js", s.calculate),
		Stored:     hashedName("stored.js", s.stored),
	}
	return s, nil
}

// loadSite reads and bundles the site folder.
func (s *shelf) loadSite(o Options) []report.Problem {
	site := os.DirFS(filepath.Join(o.Root, "site"))
	var problems []report.Problem
	for _, b := range []struct {
		entry string
		to    *[]byte
	}{
		{"site/app.ts", &s.js},
		{"site/worksheets.ts", &s.sheets},
		{"site/early.ts", &s.early},
		{"site/job.ts", &s.job},
		{"site/search.ts", &s.search},
		{"site/assess.ts", &s.assess},
		{"site/calculate.ts", &s.calculate},
		{"site/stored.ts", &s.stored},
		{"site/app.css", &s.css},
		{"site/drawn.css", &s.drawn},
		{"site/print.css", &s.print},
		{"site/worker/worker.ts", &s.worker},
	} {
		out, found := bundle.Build(bundle.Options{Root: o.Root, Entry: b.entry})
		*b.to = out
		problems = append(problems, found...)
	}
	t, found := parseTemplates(site, "site")
	s.templates = t
	problems = append(problems, found...)

	h := sha256.New()
	for _, pattern := range []string{"layouts/*.tmpl", "components/*/*.tmpl"} {
		files, _ := fs.Glob(site, pattern)
		for _, file := range files {
			b, err := fs.ReadFile(site, file)
			if err != nil {
				problems = append(problems, report.Problem{File: path.Join("site", file), Text: "this file cannot be read", Hint: reason(err)})
			}
			fmt.Fprintf(h, "%s %d\n%s", file, len(b), b)
		}
	}
	s.source = h.Sum(nil)

	s.static = map[string][]byte{}
	err := fs.WalkDir(site, "static", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || unused(d.Name()) || strings.HasSuffix(name, ".md") {
			return err
		}
		b, err := fs.ReadFile(site, name)
		s.static[strings.TrimPrefix(name, "static/")] = b
		return err
	})
	if err != nil {
		problems = append(problems, report.Problem{File: "site/static", Text: "the files that go into the site as they are cannot be read", Hint: reason(err)})
	}
	for _, name := range []string{manifestFile, iconFile} {
		if s.static[name] == nil && err == nil {
			problems = append(problems, report.Problem{File: "site/static/" + name, Text: "this file is needed for the site and is not there"})
		}
	}
	if svg := s.static[iconFile]; svg != nil {
		for _, size := range iconSizes {
			b, err := drawIcon(svg, size)
			if err != nil {
				problems = append(problems, report.Problem{File: "site/static/" + iconFile, Text: "the icon cannot be drawn: " + err.Error()})
				break
			}
			if name := iconName(size); s.static[name] == nil {
				s.static[name] = b
			}
		}
	}
	return problems
}

// put hands the files to the sink.
func (s *shelf) put(to sink) []report.Problem {
	files := map[string][]byte{
		s.assets.CSS:    s.css,
		s.assets.Drawn:  s.drawn,
		s.assets.Print:  s.print,
		s.assets.Script: s.js,

		s.assets.Worksheets: s.sheets,
		s.assets.Early:      s.early,
		s.assets.Job:        s.job,
		s.assets.Searching:  s.search,
		s.assets.Assessing:  s.assess,
		s.assets.Calculator: s.calculate,
		s.assets.Stored:     s.stored,
		s.assets.Module:     s.module.Bytes,
	}
	var problems []report.Problem
	for name, b := range s.static {
		if files[name] != nil {
			problems = append(problems, report.Problem{File: "site/static/" + name, Text: "the build writes a file of this name itself"})
			continue
		}
		files[name] = b
	}
	for name, b := range files {
		if _, err := to.put(name, b); err != nil {
			problems = append(problems, writeProblem(err))
		}
	}
	return problems
}

// hashedName puts the digest of the content into a file name below assets.
// Sixteen digits are plenty against two versions that meet by chance.
func hashedName(name string, b []byte) string {
	sum := sha256.Sum256(b)
	stem, ext := strings.TrimSuffix(name, path.Ext(name)), path.Ext(name)
	return "assets/" + stem + "." + hex.EncodeToString(sum[:8]) + ext
}

// integrity is the digest in the form that a browser compares by itself.
func integrity(b []byte) string {
	sum := sha256.Sum256(b)
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

func writeProblem(err error) report.Problem {
	return report.Problem{Text: "the site cannot be written: " + err.Error(), Hint: "check space and rights of the output folder"}
}

// codeDigest is a digest of the Go sources of the build program. A change in
// how pages are made then gives another version, as a change of text does.
func (o Options) codeDigest() []byte {
	h := sha256.New()
	root := os.DirFS(o.Root)
	var names []string
	for name := range stamps(root, "build") {
		if strings.HasSuffix(name, ".go") {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		b, _ := fs.ReadFile(root, name)
		fmt.Fprintf(h, "%s %d\n%s", name, len(b), b)
	}
	return h.Sum(nil)
}
