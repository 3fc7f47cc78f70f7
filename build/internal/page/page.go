// Package page reads the content tree: pages with their headers, the reading order, the stages of the job, the glossary
// and the table of hazards. It knows Markdown only as far as these lists need; package markup turns bodies into HTML.
//
// Start with [Read]. Content comes from an fs.FS, so tests use a few lines of memory instead of a folder.
package page

import (
	"path"
	"strings"
	"time"

	"changeout/build/internal/report"
)

// The kinds of page. A procedure has fixed sections and ticked steps; a reference page is free.
const (
	Procedure = "procedure"
	Reference = "reference"
)

// A Page is one Markdown file with its header read.
type Page struct {
	Path    string // in the content tree: stages/evacuate-and-hold.md
	ID      string // the path without .md: stages/evacuate-and-hold
	URL     string // from the site's root: stages/evacuate-and-hold.html
	File    string // as problems name it: content/stages/evacuate-and-hold.md
	Company bool   // comes from a layer over the handbook

	Title   string
	Summary string    // one sentence for menus and the front page
	Kind    string    // Procedure or Reference
	Stage   int       // 1 to 10; 0 for none
	Updated time.Time // zero when the header gives none

	Body     []byte // Markdown below the header
	BodyLine int    // line of the file on which Body starts, counted from 1

	Prev, Next *Page // neighbours in the reading order, nil at the ends and for pages outside it
}

// Base is the relative path from the page to the site's root: "" or "../" once for each folder.
func (p *Page) Base() string { return strings.Repeat("../", strings.Count(p.Path, "/")) }

// Problem makes a problem on a line of the page's file.
func (p *Page) Problem(line int, text, hint string) report.Problem {
	return report.Problem{File: p.File, Line: line, Text: text, Hint: hint}
}

// Parse reads one file: path is its place in the content tree, file the name shown in problems.
// The page is usable even when there are problems.
func Parse(treePath, file string, source []byte) (*Page, []report.Problem) {
	id := strings.TrimSuffix(treePath, ".md")
	p := &Page{Path: treePath, ID: id, URL: id + ".html", File: file, Title: path.Base(id), Kind: Reference}
	problems := p.readHeader(source)
	return p, problems
}
