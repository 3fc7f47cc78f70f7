// Package publish makes the site: it reads the content, converts and frames
// every page, bundles scripts and styles, and brings the output folder up to
// date in one step.
//
// The order is always the same. Everything is made and checked first, into a
// hidden folder beside the output. Only when nothing is wrong are the files
// moved to their places, and files of an earlier build that are no longer made
// are removed. With any problem the old site stays as it was.
//
// A [Publisher] remembers what it made. When it is asked again it looks at the
// dates and sizes of the inputs and makes only what a change reaches: that is
// what lets the preview server answer within a moment at thousands of pages.
//
// The same input gives the same bytes. No clock, no folder name and no random
// number reaches a page; see [Options] for Version and Date.
package publish

import (
	"cmp"
	"context"
	"io"
	"path/filepath"

	"changeout/build/internal/licences"
	"changeout/build/internal/module"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// SiteName is the name people see.
const SiteName = "Changeout"

// Options says what to build from, and where to.
type Options struct {
	Root    string // the repository: holds go.mod, wasm and site
	Content string // folder of the handbook's Markdown; Root/content if empty
	Company string // folder laid over the handbook, or ""
	Out     string // output folder; Root/public if empty
	Base    string // path the site will be served under, or "": all addresses are relative, only 404.html needs it
	Single  string // file that takes the whole handbook, or ""

	// Version is shown in the footer. When it is empty it is a digest of all
	// inputs, so every edit gives another version and touches every page. The
	// preview server sets it to a fixed word to stay quick.
	Version string
	Date    string // day of the build, as 2026-11-25; see [BuildDate]

	Supply   Supply    // what the computation gives: worksheets, tables, sources
	Progress io.Writer // slow steps are announced here; nil is quiet

	// Module and Licences are replaced in tests. By default the module is
	// compiled from Root, and the licences are read from the module cache.
	Module   func(context.Context) (*module.Module, []report.Problem)
	Licences func(context.Context) ([]licences.Item, []report.Problem)

	companyAsGiven string // how problems name the company's folder
}

func (o Options) withDefaults() Options {
	o.Root = absolute(cmp.Or(o.Root, "."))
	o.Content = absolute(cmp.Or(o.Content, filepath.Join(o.Root, "content")))
	o.Out = absolute(cmp.Or(o.Out, filepath.Join(o.Root, "public")))
	o.companyAsGiven = o.Company
	if o.Company != "" {
		o.Company = absolute(o.Company)
	}
	if o.Single != "" {
		o.Single = absolute(o.Single)
	}
	if o.Module == nil {
		o.Module = func(ctx context.Context) (*module.Module, []report.Problem) {
			return module.Build(ctx, module.Options{Root: o.Root, Progress: o.Progress})
		}
	}
	if o.Licences == nil {
		o.Licences = func(ctx context.Context) ([]licences.Item, []report.Problem) {
			return licences.List(ctx, licences.Options{Root: o.Root})
		}
	}
	if o.Progress == nil {
		o.Progress = io.Discard
	}
	return o
}

// absolute is a path that stays right whatever folder a tool works in.
func absolute(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return path // only without a current folder
}

// layers are the content trees, the handbook first.
func (o Options) layers() []page.Layer {
	layers := []page.Layer{{FS: dirFS(o.Content), Name: displayName(o.Root, o.Content, o.Content)}}
	if o.Company != "" {
		layers = append(layers, page.Layer{FS: dirFS(o.Company), Name: displayName(o.Root, o.Company, o.companyAsGiven)})
	}
	return layers
}

// displayName is how a folder is called in problems: relative to the
// repository where it lies inside, as given otherwise.
func displayName(root, dir, given string) string {
	if rel, err := filepath.Rel(root, dir); err == nil && filepath.IsLocal(rel) {
		return filepath.ToSlash(rel)
	}
	return filepath.ToSlash(given)
}

// A Publisher builds one site, again and again. It is not safe for
// concurrent use.
type Publisher struct {
	o    Options
	last *edition // what the output folder holds; nil before the first build

	// What was read last, whether or not it could be written.
	seen    inputs
	content *content
	shelf   *shelf

	supplied supplied // what the computation gave; it cannot change while the program runs
}

// New prepares a publisher. Nothing is read yet.
func New(o Options) *Publisher { return &Publisher{o: o.withDefaults()} }

// Summary says what a build did.
type Summary struct {
	Pages   int // pages in the site, made ones included
	Written int // files whose bytes changed
	Removed int // files of an earlier build that are gone
	Files   int // files in the site
	Bytes   int64
	Version string
	Digest  string // names the offline cache
	Single  int64  // bytes of the single file, 0 if none was asked for
}

// Build brings the output folder up to date. With problems, which come sorted,
// nothing in it changes.
func (p *Publisher) Build(ctx context.Context) (Summary, []report.Problem) {
	var written map[string]stored
	if p.last != nil {
		written = p.last.files
	}
	out, err := openOutput(p.o.Out, written)
	if err != nil {
		return Summary{}, []report.Problem{{File: filepath.ToSlash(p.o.Out), Text: "the output folder cannot be used: " + err.Error(), Hint: "choose another with -out"}}
	}
	defer out.discard()
	e, problems := p.make(ctx, out)
	if len(problems) > 0 {
		return Summary{}, report.Sorted(problems)
	}
	s := Summary{Pages: len(e.units), Version: e.frame.Version, Digest: e.digest}
	if p.o.Single != "" {
		if s.Single, problems = p.writeSingle(ctx, e, out); len(problems) > 0 {
			return Summary{}, report.Sorted(problems)
		}
	}
	if s.Written, s.Removed, err = out.commit(); err != nil {
		return Summary{}, []report.Problem{{File: filepath.ToSlash(p.o.Out), Text: "the site cannot be written: " + err.Error(), Hint: "check space and rights of the folder, then build again"}}
	}
	e.files = out.next
	s.Files = len(e.files)
	for _, f := range e.files {
		s.Bytes += f.size
	}
	p.last = e
	return s, nil
}

// Files makes the whole site in memory and returns every file by name. It is
// for checks and tests; the output folder is not touched.
func (p *Publisher) Files(ctx context.Context) (map[string][]byte, []report.Problem) {
	memory := newMemory()
	fresh := &Publisher{o: p.o}
	_, problems := fresh.make(ctx, memory)
	return memory.files, report.Sorted(problems)
}
