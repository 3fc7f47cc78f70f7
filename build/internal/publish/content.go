package publish

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"

	"changeout/build/internal/causes"
	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
	"changeout/build/internal/searchindex"
)

// content is the handbook as read, and what each page turned into. It moves on
// with the files even when a build has problems and nothing is written.
type content struct {
	book    *page.Book
	problem []report.Problem // of reading, not of converting
	conv    *markup.Converter
	causes  *assessment // nil without a cause model
	// pages holds what was found in each converted page. Its HTML is dropped
	// once it is written: at thousands of pages it would fill the memory.
	mu      sync.Mutex
	pages   map[*page.Page]*converted
	results map[*page.Page]*markup.Result // the same results, as package check takes them
	bodies  map[*page.Page][sha256.Size]byte
}

// converted is one page's result and its part of the search index.
type converted struct {
	result *markup.Result
	search []byte
}

// readContent brings the content up to date with the files. before may be nil.
func (p *Publisher) readContent(in inputs, before *content, last inputs) *content {
	if before != nil {
		if names, ok := in.edited(last); ok && before.reread(names) {
			return before
		}
	}
	c := &content{pages: map[*page.Page]*converted{}, results: map[*page.Page]*markup.Result{}, bodies: map[*page.Page][sha256.Size]byte{}}
	c.book, c.problem = page.Read(p.o.layers()...)
	var problems []report.Problem
	c.causes, problems = p.readCauses(c.book)
	c.problem = append(c.problem, problems...)
	c.conv = markup.New(markup.Env{
		Sources:    p.o.Supply.Sources,
		Worksheets: p.o.Supply.Worksheets,
		Tables:     p.o.Supply.Tables,
		Glossary:   c.book.Glossary,
		Hazards:    c.book.Hazards,
		Assessment: c.causes.drawer(),
		Causes:     c.causes.name(),
	})
	if before != nil && sameTerms(before.book, c.book) && c.causes.name() == before.causes.name() {
		c.adopt(before)
	}
	return c
}

// convert turns a page into HTML and remembers the rest of the result. It is
// nil for no page.
func (c *content) convert(p *page.Page) *markup.Result {
	if p == nil {
		return nil
	}
	r := c.conv.Convert(p)
	kept := *r
	kept.HTML = nil
	k := &converted{result: &kept, search: searchindex.FromContent(p, r).Lines()}
	kept.Passages = nil
	c.mu.Lock()
	c.pages[p], c.results[p] = k, k.result
	c.mu.Unlock()
	return r
}

// bodyDigest is the digest of a page's text, taken once.
func (c *content) bodyDigest(p *page.Page) [sha256.Size]byte {
	sum, ok := c.bodies[p]
	if !ok {
		sum = sha256.Sum256(p.Body)
		c.bodies[p] = sum
	}
	return sum
}

// known converts a page if that was not done yet, for what stands in it.
func (c *content) known(p *page.Page) {
	c.mu.Lock()
	done := p == nil || c.pages[p] != nil
	c.mu.Unlock()
	if !done {
		c.convert(p)
	}
}

// reread replaces single pages. It is false when the whole book is needed.
func (c *content) reread(names []string) bool {
	for _, name := range names {
		old := c.book.Page(name)
		if old == nil || strings.HasPrefix(name, causes.Folder) {
			return false
		}
		fresh, problems := c.book.Reread(name)
		if fresh == nil {
			return false
		}
		// A page that moves to another stage changes lists of the book.
		if fresh.Stage != old.Stage || fresh.Kind != old.Kind {
			return false
		}
		delete(c.pages, old)
		delete(c.results, old)
		delete(c.bodies, old)
		c.problem = slices.DeleteFunc(c.problem, func(p report.Problem) bool { return p.File == fresh.File })
		c.problem = append(c.problem, problems...)
	}
	return true
}

// adopt takes over the results of pages that are the same as before.
func (c *content) adopt(before *content) {
	for _, fresh := range c.book.Pages {
		old := before.book.Page(fresh.Path)
		if old == nil || before.pages[old] == nil || !samePage(old, fresh) {
			continue
		}
		c.pages[fresh] = before.pages[old]
		c.results[fresh] = before.results[old]
	}
}

func samePage(a, b *page.Page) bool {
	return a.File == b.File && a.Company == b.Company && a.Title == b.Title && a.Summary == b.Summary &&
		a.Kind == b.Kind && a.Stage == b.Stage && a.Updated.Equal(b.Updated) && a.BodyLine == b.BodyLine && bytes.Equal(a.Body, b.Body)
}

// sameTerms tells whether two books give the converter the same glossary and
// hazards.
func sameTerms(a, b *page.Book) bool {
	return slices.Equal(a.Glossary.Terms, b.Glossary.Terms) &&
		slices.EqualFunc(a.Hazards.Rows, b.Hazards.Rows, func(x, y page.Hazard) bool {
			return x.ID == y.ID && x.Name == y.Name && x.Lowest == y.Lowest && slices.Equal(x.Words, y.Words)
		})
}

// contentsFile is the name of the reading order in problems. A company that
// has one of its own replaces the handbook's.
func (p *Publisher) contentsFile() string {
	layers := p.o.layers()
	for i := len(layers) - 1; i > 0; i-- {
		if _, err := fs.Stat(layers[i].FS, page.ContentsPath); err == nil {
			return path.Join(layers[i].Name, page.ContentsPath)
		}
	}
	return path.Join(layers[0].Name, page.ContentsPath)
}

// firstHeading is the first heading of a Markdown file, or "".
func firstHeading(fsys fs.FS, name string) string {
	b, err := fs.ReadFile(fsys, name)
	if err != nil {
		return ""
	}
	for line := range strings.Lines(string(b)) {
		if title, ok := strings.CutPrefix(line, "# "); ok {
			return strings.TrimSpace(title)
		}
	}
	return ""
}

// writeEntries writes the reading order into a digest.
func writeEntries(w io.Writer, entries []*page.Entry, depth int) {
	for _, e := range entries {
		fmt.Fprintf(w, "entry %d %q %q\n", depth, e.Title, e.Target)
		writeEntries(w, e.Children, depth+1)
	}
}

// parallel calls work for each item on all processors. Errors of ctx end it
// early.
func parallel[T any](ctx context.Context, items []T, work func(T)) {
	var wg sync.WaitGroup
	next := make(chan []T)
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for batch := range next {
				for _, item := range batch {
					if ctx.Err() == nil {
						work(item)
					}
				}
			}
		})
	}
	// Batches keep the channel out of the profile; small ones share the work.
	for batch := range slices.Chunk(items, 16) {
		next <- batch
	}
	close(next)
	wg.Wait()
}
