package page

import (
	"strconv"
	"strings"
)

// A Term is one entry of the glossary.
type Term struct {
	Name       string // as written in the heading, without what stands in brackets
	ID         string // slug of Name; the anchor is term- and the id
	Definition string // first paragraph, as Markdown on one line
	Line       int
}

// A Glossary holds the terms that pages may link to. The zero value has none.
type Glossary struct {
	Terms []Term
	index map[string]int // slug of a name or of what stands in brackets: place in Terms
}

// TermPrefix starts the anchor of a term on the glossary page.
const TermPrefix = "term-"

// Find looks a term up by the words a page uses: capitals do not count, a plain plural finds the singular, and an
// entry “RCL (refrigerant concentration limit)” is found by either name.
func (g *Glossary) Find(words string) (Term, bool) {
	var buffer [64]byte
	slug := AppendSlug(buffer[:0], words, 0)
	if i, ok := g.index[string(slug)]; ok {
		return g.Terms[i], true
	}
	for _, ending := range [...]string{"s", "es"} {
		if stem, ok := strings.CutSuffix(string(slug), ending); ok {
			if i, ok := g.index[stem]; ok {
				return g.Terms[i], true
			}
		}
	}
	return Term{}, false
}

// Names lists the terms as written.
func (g *Glossary) Names() []string {
	names := make([]string, len(g.Terms))
	for i, t := range g.Terms {
		names[i] = t.Name
	}
	return names
}

// TermID gives the id for a heading of the glossary.
func TermID(heading string) string {
	name, _ := splitBrackets(heading)
	return Slug(name)
}

// readGlossary takes the entries “## term” and the paragraph below each.
func (r *reader) readGlossary(p *Page) *Glossary {
	g := &Glossary{index: map[string]int{}}
	open := false // the first paragraph of the last term is still being read
	for i, line := range strings.Split(string(p.Body), "\n") {
		number := p.BodyLine + i
		line = strings.TrimSpace(line)
		heading, ok := strings.CutPrefix(line, "## ")
		if !ok {
			if !open || len(g.Terms) == 0 || strings.HasPrefix(line, "#") {
				open = false
				continue
			}
			t := &g.Terms[len(g.Terms)-1]
			if line == "" {
				open = t.Definition == ""
				continue
			}
			t.Definition = strings.TrimSpace(t.Definition + " " + line)
			continue
		}
		name, other := splitBrackets(heading)
		t := Term{Name: name, ID: Slug(name), Line: number}
		if at, taken := g.index[t.ID]; taken {
			r.problems = append(r.problems, p.Problem(number, "term "+name+" is defined twice",
				"first on line "+strconv.Itoa(g.Terms[at].Line)))
			continue
		}
		g.index[t.ID] = len(g.Terms)
		if other != "" {
			if id := Slug(other); id != "" {
				if _, taken := g.index[id]; !taken {
					g.index[id] = len(g.Terms)
				}
			}
		}
		g.Terms = append(g.Terms, t)
		open = true
	}
	for _, t := range g.Terms {
		if t.Definition == "" {
			r.problems = append(r.problems, p.Problem(t.Line, "term "+t.Name+" has no definition", "write a paragraph below it"))
		}
	}
	return g
}

// splitBrackets separates “RCL (refrigerant concentration limit)” into its two names.
func splitBrackets(heading string) (name, other string) {
	heading = strings.TrimSpace(heading)
	if before, after, ok := strings.Cut(heading, " ("); ok {
		if inner, ok := strings.CutSuffix(after, ")"); ok {
			return strings.TrimSpace(before), inner
		}
	}
	return heading, ""
}
