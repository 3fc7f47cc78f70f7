package check

import (
	"path"
	"slices"
	"strconv"
	"strings"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// frontPage needs no place in the reading order.
const frontPage = "index.md"

// Book checks links and anchors across pages, that every page has its place in contents.md, that stages exist, and that
// no two pages share a title. results holds the converted page for each page of the book. generated lists addresses
// that the build makes without a Markdown file (worksheets/vacuum-hold.html), from the site's root; nil leaves links to
// .html addresses to [Output].
func Book(book *page.Book, results map[*page.Page]*markup.Result, generated []string) []report.Problem {
	b := &bookCheck{book: book, results: results, ids: map[*page.Page]map[string]bool{}, files: map[string]bool{}}
	for _, a := range book.Assets {
		b.files[a.Path] = true
	}
	for _, address := range generated {
		b.files[address] = true
	}
	b.knowsGenerated = generated != nil
	for _, p := range book.Pages {
		b.files[p.URL] = true
	}
	b.order()
	b.stages()
	b.titles()
	for _, p := range book.Pages {
		if r := results[p]; r != nil {
			for _, link := range r.Links {
				b.link(p, link)
			}
		}
	}
	return b.problems
}

type bookCheck struct {
	book           *page.Book
	results        map[*page.Page]*markup.Result
	files          map[string]bool                // addresses of the site
	knowsGenerated bool                           // files holds what the build generates too
	ids            map[*page.Page]map[string]bool // made when a link asks for them
	problems       []report.Problem
}

func (b *bookCheck) add(p *page.Page, line int, text, hint string) {
	b.problems = append(b.problems, p.Problem(line, text, hint))
}

// order reports pages that no reader finds in the contents.
func (b *bookCheck) order() {
	listed := make(map[*page.Page]bool, len(b.book.Order))
	for _, p := range b.book.Order {
		listed[p] = true
	}
	for _, p := range b.book.Pages {
		if !listed[p] && p.Path != frontPage && p.Path != page.HazardsPath {
			b.add(p, 1, "page has no place in "+page.ContentsPath, "add a line “- ["+p.Title+"]("+p.Path+")” there")
		}
	}
}

// stages reports procedures of a stage that stages.md does not have.
func (b *bookCheck) stages() {
	if len(b.book.Stages) == 0 {
		return
	}
	for _, p := range b.book.Pages {
		known := slices.ContainsFunc(b.book.Stages, func(s page.Stage) bool { return s.Number == p.Stage })
		if p.Stage != 0 && !known {
			b.add(p, 1, "stage "+strconv.Itoa(p.Stage)+" is not in "+page.StagesPath, "")
		}
	}
}

// titles reports titles that menus could not tell apart.
func (b *bookCheck) titles() {
	first := make(map[string]*page.Page, len(b.book.Pages))
	for _, p := range b.book.Pages {
		if before := first[p.Title]; before != nil {
			b.add(p, 1, "title “"+p.Title+"” is that of another page", before.File)
			continue
		}
		first[p.Title] = p
	}
}

func (b *bookCheck) link(from *page.Page, link markup.Link) {
	if link.Path == "" {
		return // markup knows the anchors of a page
	}
	what := "link"
	if link.Image {
		what = "image"
	}
	if !strings.HasSuffix(link.Path, ".md") {
		if !b.files[link.Path] && (b.knowsGenerated || path.Ext(link.Path) != ".html") {
			hint := "put the file beside the page, or mend the address"
			if b.book.Page(link.Path+".md") != nil {
				hint = "pages are linked by their file: add .md"
			} else if stem, ok := strings.CutSuffix(link.Path, ".html"); ok && b.book.Page(stem+".md") != nil {
				hint = "pages are linked by their file: write .md"
			}
			b.add(from, link.Line, "dead "+what+": there is no "+link.Path, hint)
		}
		return
	}
	target := b.book.Page(link.Path)
	if target == nil {
		hint := "pages are linked relative to the page that links"
		if link.Path == page.ContentsPath || link.Path == page.StagesPath {
			hint = "it is a list, not a page; link to " + frontPage
		} else if near := report.Nearest(link.Path, b.paths()); near != "" {
			hint = "did you mean " + relative(from.Path, near) + "?"
		} else if near := sameName(link.Path, b.paths()); near != "" {
			hint = "did you mean " + relative(from.Path, near) + "?"
		}
		b.add(from, link.Line, "dead "+what+": there is no page "+link.Path, hint)
		return
	}
	result := b.results[target]
	if link.Fragment == "" || result == nil || b.idsOf(target)[link.Fragment] {
		return
	}
	if len(result.Worksheets)+len(result.Tables) > 0 && markup.NearID(link.Fragment, b.idList(target)) == "" {
		return // perhaps an anchor inside a worksheet; Output sees those
	}
	b.add(from, link.Line, "dead "+what+": there is no #"+link.Fragment+" on "+target.Path,
		markup.NearID(link.Fragment, b.idList(target)))
}

func (b *bookCheck) idsOf(p *page.Page) map[string]bool {
	ids := b.ids[p]
	if ids == nil {
		ids = map[string]bool{"main": true, "sources": len(b.results[p].Sources) > 0}
		for _, use := range b.results[p].IDs {
			ids[use.ID] = true
		}
		b.ids[p] = ids
	}
	return ids
}

func (b *bookCheck) idList(p *page.Page) []string {
	list := make([]string, 0, len(b.results[p].IDs))
	for _, use := range b.results[p].IDs {
		list = append(list, use.ID)
	}
	return list
}

func (b *bookCheck) paths() []string {
	paths := make([]string, len(b.book.Pages))
	for i, p := range b.book.Pages {
		paths[i] = p.Path
	}
	return paths
}

// sameName finds a page with the same file name in another folder.
func sameName(wanted string, paths []string) string {
	for _, p := range paths {
		if path.Base(p) == path.Base(wanted) {
			return p
		}
	}
	return ""
}

// relative gives the link from one page of the tree to another.
func relative(from, to string) string {
	folder := path.Dir(from)
	up := ""
	for folder != "." && !strings.HasPrefix(to, folder+"/") {
		folder = path.Dir(folder)
		up += "../"
	}
	if folder != "." {
		to = strings.TrimPrefix(to, folder+"/")
	}
	return up + to
}
