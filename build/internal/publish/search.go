package publish

import (
	"bytes"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
	"changeout/build/internal/searchindex"
)

// searchFile is the index that a phone loads when somebody begins to search.
const searchFile = "search-index.txt"

// places gives what can be searched on a page that the computation supplies.
func places(of func() []markup.Passage) []markup.Passage {
	if of == nil {
		return nil
	}
	return of()
}

// entry is the index's record of a made page.
func (u *unit) entry() searchindex.Page {
	return searchindex.Page{URL: u.frame.ID + ".html", Kind: u.frame.Kind, Title: u.frame.Title, Summary: u.frame.Summary, Places: u.places}
}

// searchParts lists the parts of the index: its head, then each page in the
// order in which pages are listed.
func (e *edition) searchParts() [][]byte {
	parts := [][]byte{searchindex.Head(e.content.book.Sayings)}
	for _, u := range e.units {
		switch {
		case u.search:
			parts = append(parts, u.entry().Lines())
		case u.page != nil && e.content.pages[u.page] != nil && u.layout == "page":
			parts = append(parts, e.content.pages[u.page].search)
		}
	}
	return parts
}

// putSearch writes the index. At thousands of pages it is large, so it is
// joined only if a part of it changed.
func (p *Publisher) putSearch(e *edition, to sink) error {
	e.searched = e.searchParts()
	if p.last != nil && same(p.last.searched, e.searched) {
		if file, ok := p.last.files[searchFile]; ok {
			to.keep(searchFile, file)
			return nil
		}
	}
	_, err := to.put(searchFile, searchindex.Join(nil, e.searched))
	return err
}

// CheckSearch reports words of search.md that a search would not find. It
// reads the whole index, so it belongs to the check and not to each build.
func CheckSearch(files map[string][]byte, o Options) []report.Problem {
	book, _ := page.Read(o.withDefaults().layers()...) // its problems were reported by the build
	return searchindex.Check(files[searchFile], book.Sayings)
}

// same compares the parts; those of a page that was not converted again are
// the very same bytes.
func same(a, b [][]byte) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if len(a[i]) != len(b[i]) || len(a[i]) > 0 && &a[i][0] != &b[i][0] && !bytes.Equal(a[i], b[i]) {
			return false
		}
	}
	return true
}
