package publish

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"html/template"
	"maps"
	"path/filepath"
	"sync"

	"changeout/build/internal/check"
	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
	"changeout/build/internal/typeset"
)

// edition is one state of the site: what it was made from and what is in it.
type edition struct {
	in      inputs
	shelf   *shelf
	content *content
	frame   Frame             // what all pages share
	shared  [sha256.Size]byte // digest of everything that reaches every page
	units   []*unit           // all pages in the order they are listed
	digest  string

	mu    sync.Mutex
	drawn map[string]drawn  // page name: what it was made from
	files map[string]stored // set once written

	searched [][]byte // parts of the search index
}

// drawn remembers a page in the output.
type drawn struct {
	key  [sha256.Size]byte
	file stored
}

// unit is one page of the site, read or made.
type unit struct {
	frame  Frame
	layout string
	// inputs is what the page is made from beside what all pages share. Two
	// units with the same inputs have the same bytes.
	inputs [sha256.Size]byte
	// page is the content page that is shown, or that gives a made page its
	// opening words; nil for a page that is made altogether.
	page *page.Page
	// data gives the layout's data. r is the converted page, nil without one.
	data   func(f Frame, r *markup.Result) (any, error)
	search bool             // a made page that can be found; a content page keeps its own part of the index
	places []markup.Passage // what can be found on a made page
	packed bool             // compressed in the single file
}

func (u *unit) name() string { return u.frame.ID + ".html" }

// make makes everything and hands it to the sink. On success the returned
// edition describes it. Content and shelf stay with the publisher even when
// there are problems, so that the next look starts from there.
func (p *Publisher) make(ctx context.Context, to sink) (*edition, []report.Problem) {
	e := &edition{in: p.o.look(), drawn: map[string]drawn{}}
	shelf, shelfProblems := p.loadShelf(ctx, e.in, p.shelf, p.seen)
	e.content = p.readContent(e.in, p.content, p.seen)
	p.content, p.shelf, p.seen = e.content, shelf, e.in

	list := &report.List{}
	list.Add(shelfProblems...)
	list.Add(e.content.problem...)
	if shelf == nil {
		// No page can be drawn, but all that is wrong with the text is shown too.
		p.convertAll(ctx, e, list)
		list.Add(p.checkBook(e, e.content.results)...)
		return nil, list.Sorted()
	}
	e.shelf = shelf
	e.frame = p.frame(e)
	e.shared = sharedDigest(e)

	// Pages of the content come first: the made pages tell where a worksheet or
	// a source is used, which is known once all pages are converted.
	pages := p.contentUnits(e)
	p.draw(ctx, e, pages, to, list)
	for id := range p.madeIDs() {
		e.content.known(e.content.book.Page(id + ".md"))
	}
	for _, r := range e.content.results {
		list.Add(r.Problems...)
	}
	// The check across pages reads a copy of the results while the made pages
	// are drawn: on an edit it is a third of the work.
	var checking sync.WaitGroup
	results := maps.Clone(e.content.results)
	checking.Go(func() { list.Add(p.checkBook(e, results)...) })
	made, problems := p.madeUnits(e)
	list.Add(problems...)
	p.draw(ctx, e, made, to, list)
	checking.Wait()
	e.units = append(pages, made...)

	list.Add(shelf.put(to)...)
	list.Add(p.putContentAssets(e, to)...)
	list.Add(e.content.causes.put(to)...)
	if err := ctx.Err(); err != nil {
		list.Add(report.Problem{Text: "the build was stopped"})
	}
	if !list.Empty() {
		return nil, list.Sorted()
	}
	if problems := p.putLists(e, to); len(problems) > 0 {
		return nil, problems
	}
	return e, nil
}

// frame makes what all pages share.
func (p *Publisher) frame(e *edition) Frame {
	f := Frame{SiteName: SiteName, Company: p.companyName(), Version: p.o.Version, Date: p.o.Date, Assets: e.shelf.assets}
	if f.Date == "" {
		f.Date = newest(e.content.book)
	}
	f.Assets.Single = p.singleURL()
	if f.Version == "" {
		f.Version = p.inputDigest(e, f)
	}
	return f
}

// newest is the latest date in the headers of the pages.
func newest(b *page.Book) string {
	day := ""
	for _, p := range b.Pages {
		if u := updated(p); u > day {
			day = u
		}
	}
	return day
}

// inputDigest is the version: ten digits over everything a reader can see. It
// cannot be taken from the finished pages, because it stands in them.
func (p *Publisher) inputDigest(e *edition, f Frame) string {
	h := sha256.New()
	shared, _ := json.Marshal(f)
	h.Write(shared)
	h.Write(e.shelf.source)
	h.Write(p.o.codeDigest())
	h.Write(p.supplyDigest())
	for name, b := range sorted(e.shelf.static) {
		fmt.Fprintf(h, "static %s %d\n%s", name, len(b), b)
	}
	worker := sha256.Sum256(e.shelf.worker)
	h.Write(worker[:])
	licences, _ := json.Marshal(e.shelf.licences)
	h.Write(licences)
	writeEntries(h, e.content.book.Contents, 0)
	for _, s := range e.content.book.Stages {
		fmt.Fprintf(h, "stage %d %q %q\n", s.Number, s.Title, s.Summary)
	}
	for _, pg := range e.content.book.Pages {
		fmt.Fprintf(h, "page %q %q %q %q %d %q %d\n%s", pg.Path, pg.Title, pg.Summary, pg.Kind, pg.Stage, updated(pg), len(pg.Body), pg.Body)
	}
	for _, s := range e.content.book.Sayings {
		fmt.Fprintf(h, "saying %q %q\n", s.Said, s.Means)
	}
	for _, a := range e.content.book.Assets {
		b, _ := a.Read()
		fmt.Fprintf(h, "file %q %d\n%s", a.Path, len(b), b)
	}
	return fmt.Sprintf("%x", h.Sum(nil))[:10]
}

// sharedDigest covers what reaches every page beside its own inputs.
func sharedDigest(e *edition) [sha256.Size]byte {
	b, _ := json.Marshal(e.frame)
	return sha256.Sum256(append(b, e.shelf.source...))
}

// digestOf is a digest of values that JSON can write.
func digestOf(values ...any) [sha256.Size]byte {
	b, err := json.Marshal(values)
	if err != nil {
		panic(err) // our own plain structs
	}
	return sha256.Sum256(b)
}

// draw brings pages into the sink, all processors at work. A page whose inputs
// are those of the last edition is kept as it is.
func (p *Publisher) draw(ctx context.Context, e *edition, units []*unit, to sink, list *report.List) {
	buffers := sync.Pool{New: func() any { return new(bytes.Buffer) }}
	parallel(ctx, units, func(u *unit) {
		key := sha256.Sum256(append(e.shared[:], u.inputs[:]...))
		name := u.name()
		d := drawn{key: key}
		if old, ok := p.drawn(name); ok && old.key == key {
			d = old
			to.keep(name, old.file)
			e.content.known(u.page)
		} else {
			b := buffers.Get().(*bytes.Buffer)
			defer buffers.Put(b)
			b.Reset()
			file, problem := e.drawOne(u, b, to)
			if problem != nil {
				list.Add(*problem)
				return
			}
			d.file = file
		}
		e.mu.Lock()
		e.drawn[name] = d
		e.mu.Unlock()
	})
}

func (e *edition) drawOne(u *unit, b *bytes.Buffer, to sink) (stored, *report.Problem) {
	data, err := u.data(u.frame, e.content.convert(u.page))
	if err != nil {
		return stored{}, &report.Problem{File: u.name(), Text: "this page cannot be made: " + err.Error()}
	}
	if err := e.shelf.templates[u.layout].ExecuteTemplate(b, "base", data); err != nil {
		problem := executeProblem(u.frame.ID, err)
		return stored{}, &problem
	}
	file, err := to.put(u.name(), typeset.Page(b.Bytes()))
	if err != nil {
		problem := writeProblem(err)
		return stored{}, &problem
	}
	return file, nil
}

// drawn finds a page of the last edition.
func (p *Publisher) drawn(name string) (drawn, bool) {
	if p.last == nil {
		return drawn{}, false
	}
	d, ok := p.last.drawn[name]
	return d, ok
}

// convertAll converts every page that was not converted yet, for its problems.
func (p *Publisher) convertAll(ctx context.Context, e *edition, list *report.List) {
	parallel(ctx, e.content.book.Pages, e.content.known)
	for _, r := range e.content.results {
		list.Add(r.Problems...)
	}
}

// checkBook looks at what single pages cannot know.
func (p *Publisher) checkBook(e *edition, results map[*page.Page]*markup.Result) []report.Problem {
	return check.Book(e.content.book, results, p.madeURLs())
}

// putContentAssets copies figures and samples that lie beside the pages.
func (p *Publisher) putContentAssets(e *edition, to sink) []report.Problem {
	var problems []report.Problem
	for _, a := range e.content.book.Assets {
		b, err := a.Read()
		if err == nil {
			_, err = to.put(a.Path, b)
		}
		if err != nil {
			problems = append(problems, report.Problem{File: a.Path, Text: "this file cannot go into the site: " + err.Error()})
		}
	}
	return problems
}

// putLists writes what is made from the list of all files: the search index
// and the worker.
func (p *Publisher) putLists(e *edition, to sink) []report.Problem {
	err := p.putSearch(e, to)
	if err == nil {
		var script []byte
		script, e.digest = precache(to.list(), e.shelf.worker, e.frame.Version, e.frame.Date)
		_, err = to.put(workerFile, script)
	}
	if err != nil {
		return []report.Problem{writeProblem(err)}
	}
	return nil
}

// companyName is the first heading of the company's reading order: the folder
// name says nothing to a reader.
func (p *Publisher) companyName() string {
	if p.o.Company == "" {
		return ""
	}
	return firstHeading(dirFS(p.o.Company), page.ContentsPath)
}

// OffersSingle is true if the single file is part of the site.
func (p *Publisher) OffersSingle() bool { return p.singleURL() != "" }

// singleURL is where the single file lies in the site, or "" if it is not
// written there.
func (p *Publisher) singleURL() string {
	if p.o.Single == "" {
		return ""
	}
	rel, err := filepath.Rel(p.o.Out, p.o.Single)
	if err != nil || !filepath.IsLocal(rel) {
		return ""
	}
	return filepath.ToSlash(rel)
}

// trusted marks HTML that markup or a template of ours has made.
func trusted(b []byte) template.HTML { return template.HTML(b) }
