package page

import (
	"path"
	"slices"
	"strings"

	"changeout/build/internal/report"
)

// An Entry is one line of the reading order.
type Entry struct {
	Title    string
	Target   string // as written in contents.md: a .md path, worksheet:id, table:id, or "" for a group
	Page     *Page  // the page Target names, or nil
	Line     int
	Children []*Entry
}

// companyGroup heads the company's pages that its contents.md does not place.
const companyGroup = "This company’s pages"

// readContents reads the nested list of links. Headings open a group; other lines are prose and are skipped.
func (r *reader) readContents(f *dataFile) {
	type level struct {
		indent int
		entry  *Entry
	}
	root := &Entry{}
	stack := []level{{-2, root}}
	seen := map[*Page]bool{}
	for number, line := range strings.Split(string(f.source), "\n") {
		number++
		text, indent, ok := listItem(line)
		if heading := strings.TrimLeft(line, "#"); !ok && len(heading) < len(line) && strings.HasPrefix(heading, " ") {
			if strings.HasPrefix(line, "## ") {
				text, indent, ok = strings.TrimSpace(heading), -1, true
			}
		}
		if !ok {
			continue
		}
		e := &Entry{Title: text, Line: number}
		if title, target, _, ok := firstLink(text); ok {
			e.Title, e.Target = title, target
			file, _, _ := strings.Cut(target, "#")
			if strings.HasSuffix(file, ".md") {
				e.Page = r.book.byPath[path.Clean(file)]
				if e.Page == nil {
					r.problems = append(r.problems, report.Problem{File: f.name, Line: number,
						Text: "no page " + file, Hint: report.DidYouMean(path.Clean(file), r.book.paths())})
					continue
				}
				if seen[e.Page] {
					r.problems = append(r.problems, report.Problem{File: f.name, Line: number,
						Text: "page " + file + " is listed twice", Hint: "a page has one place in the reading order"})
					continue
				}
				seen[e.Page] = true
				r.book.Order = append(r.book.Order, e.Page)
			}
		}
		for stack[len(stack)-1].indent >= indent {
			stack = stack[:len(stack)-1]
		}
		parent := stack[len(stack)-1].entry
		parent.Children = append(parent.Children, e)
		stack = append(stack, level{indent, e})
	}
	r.book.Contents = root.Children
}

// addCompanyPages puts pages of a company layer that no list names at the end of the reading order.
func (r *reader) addCompanyPages() {
	b := r.book
	var group *Entry
	for _, p := range b.Pages {
		if !p.Company || slices.Contains(b.Order, p) {
			continue
		}
		if group == nil {
			group = &Entry{Title: companyGroup}
			b.Contents = append(b.Contents, group)
		}
		group.Children = append(group.Children, &Entry{Title: p.Title, Target: p.Path, Page: p})
		b.Order = append(b.Order, p)
	}
}

func (b *Book) paths() []string {
	paths := make([]string, len(b.Pages))
	for i, p := range b.Pages {
		paths[i] = p.Path
	}
	return paths
}

func replaceEntries(entries []*Entry, old, p *Page) {
	for _, e := range entries {
		if e.Page == old {
			e.Page = p
		}
		replaceEntries(e.Children, old, p)
	}
}

// listItem takes the text of a bulleted or numbered item, and the width of its indent.
func listItem(line string) (text string, indent int, ok bool) {
	for i := 0; i < len(line); i++ {
		switch c := line[i]; {
		case c == ' ':
			indent++
		case c == '\t':
			indent += 4
		case c == '-' || c == '*' || c == '+':
			text, ok = strings.CutPrefix(line[i+1:], " ")
			return strings.TrimSpace(text), indent, ok
		case '0' <= c && c <= '9':
			rest := strings.TrimLeft(line[i:], "0123456789")
			if rest == "" || rest[0] != '.' && rest[0] != ')' {
				return "", 0, false
			}
			text, ok = strings.CutPrefix(rest[1:], " ")
			return strings.TrimSpace(text), indent, ok
		default:
			return "", 0, false
		}
	}
	return "", 0, false
}

// firstLink takes the first Markdown link out of a line; rest is the line without it.
func firstLink(s string) (title, target, rest string, ok bool) {
	before, after, ok := strings.Cut(s, "[")
	if !ok {
		return "", "", s, false
	}
	title, after, ok = strings.Cut(after, "](")
	if !ok {
		return "", "", s, false
	}
	target, after, ok = strings.Cut(after, ")")
	if !ok {
		return "", "", s, false
	}
	return strings.TrimSpace(title), strings.TrimSpace(target), before + after, true
}
