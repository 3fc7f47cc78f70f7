package causes

import (
	"regexp"
	"slices"
	"strings"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// table is a Markdown table with the heading above it.
type table struct {
	page    *page.Page
	heading string
	line    int // of the titles
	titles  []string
	rows    []row
}

type row struct {
	t     *table
	line  int
	cells []string
}

// cell gives the cell of a column by its title; "" when the row ends before it.
func (r row) cell(title string) string {
	for i, t := range r.t.titles {
		if i < len(r.cells) && strings.EqualFold(t, title) {
			return r.cells[i]
		}
	}
	return ""
}

func (r row) problem(text, hint string) report.Problem { return r.t.page.Problem(r.line, text, hint) }

// has tells whether the table has a column.
func (t *table) has(title string) bool {
	return slices.ContainsFunc(t.titles, func(s string) bool { return strings.EqualFold(s, title) })
}

// tables lists the tables of a page. Code blocks are passed over.
func tables(p *page.Page) []*table {
	var found []*table
	var t *table
	heading, fenced, first := "", false, ""
	for i, line := range strings.Split(string(p.Body), "\n") {
		number := p.BodyLine + i
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "```") {
			fenced = !fenced
		}
		if fenced || !strings.HasPrefix(line, "|") {
			t, first = nil, ""
			if title, ok := strings.CutPrefix(line, "## "); ok && !fenced {
				heading = title
			}
			continue
		}
		switch {
		case t != nil:
			t.rows = append(t.rows, row{t, number, cells(line)})
		case first == "":
			first = line
		case strings.Trim(line, "|-: ") == "":
			t = &table{page: p, heading: heading, line: number - 1, titles: cells(first)}
			found = append(found, t)
		}
	}
	return found
}

// cells parts a row. Marks of code round a cell are dropped.
func cells(line string) []string {
	line = strings.TrimSuffix(strings.TrimPrefix(line, "|"), "|")
	parts := strings.Split(line, "|")
	for i, c := range parts {
		parts[i] = strings.Trim(strings.TrimSpace(c), "`")
	}
	return parts
}

var (
	linkMark     = regexp.MustCompile(`\[([^\]@]+)\]\(([^)\s]+)\)`)
	citationMark = regexp.MustCompile(`\[@[^\]]+\]`)
	wordOfID     = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
)

// link takes the first link of a cell: its words and its address from the site's root.
func link(p *page.Page, cell string) (words, address string) {
	m := linkMark.FindStringSubmatch(cell)
	if m == nil {
		return "", ""
	}
	return m[1], siteAddress(p, m[2])
}

// plain is a cell without its links and citations, which stand at the end.
func plain(cell string) string {
	cell = citationMark.ReplaceAllString(linkMark.ReplaceAllString(cell, ""), "")
	return strings.Join(strings.Fields(cell), " ")
}

// siteAddress turns an address as authors write it into one from the site's root. Whether it leads anywhere is for the
// check of the page, which reads the same link.
func siteAddress(p *page.Page, address string) string {
	if scheme, id, ok := strings.Cut(address, ":"); ok {
		if scheme == "worksheet" || scheme == "table" {
			return scheme + "s/" + id + ".html"
		}
		return address
	}
	file, fragment, _ := strings.Cut(address, "#")
	target := p.Path
	if file != "" {
		target = join(p.Path, file)
	}
	target = strings.TrimSuffix(target, ".md") + ".html"
	if fragment != "" {
		target += "#" + fragment
	}
	return target
}
