package calcview

import (
	"html/template"
	"slices"
	"sort"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"changeout/build/internal/publish"
	"changeout/calc/catalog"
	"changeout/calc/source"
)

// SourceItem is one entry of the source list under a worksheet or a table.
type SourceItem struct {
	ID     string
	Number int
	Text   template.HTML
	Read   string
	// Equation: the equation of a refrigerant, which an answer for another one does not rest on.
	Equation bool
}

func sourceItems(prefix string, keys []string) []SourceItem {
	var items []SourceItem
	for _, k := range keys {
		s, ok := source.Lookup(k)
		if !ok {
			continue // the catalogue's tests fail on an unknown key
		}
		items = append(items, SourceItem{ID: prefix + k, Text: sourceHTML(s), Read: readWords(s.Read), Equation: equations()[k]})
	}
	return items
}

// equations are the bibliography keys of the equations of all refrigerants offered.
var equations = sync.OnceValue(func() map[string]bool {
	keys := map[string]bool{}
	for _, r := range catalog.Offered() {
		for _, k := range catalog.EquationKeys(r) {
			keys[k] = true
		}
	}
	return keys
})

// sourceHTML writes a source in full: author. Title, edition, place. Address.
func sourceHTML(s source.Source) template.HTML {
	rest := slices.DeleteFunc([]string{s.Title, s.Edition, s.Locator}, func(p string) bool { return p == "" })
	text := strings.Join(rest, ", ")
	if s.Author != "" {
		text = s.Author + ". " + text
	}
	first, size := utf8.DecodeRuneInString(text)
	text = template.HTMLEscapeString(string(unicode.ToUpper(first)) + text[size:])
	host, _, _ := strings.Cut(s.Address, " ")
	switch {
	case !strings.Contains(host, "."):
		// Words in place of an address, for who keeps the bibliography; nobody can go there.
	case strings.HasPrefix(s.Address, "http"):
		text += `. <a href="` + template.HTMLEscapeString(s.Address) + `" rel="noreferrer">` + template.HTMLEscapeString(s.Address) + `</a>`
	default:
		text += ". " + template.HTMLEscapeString(s.Address)
	}
	return template.HTML(text)
}

func readWords(r source.Read) string {
	switch r {
	case source.InPrint:
		return "read in the document itself"
	case source.Secondary:
		return "read in a secondary source"
	case source.Memory:
		return "from memory: verify before use"
	case source.Practice:
		return "practice"
	}
	return ""
}

// Sources resolves the citations of content pages.
type Sources struct{}

// Source returns the full entry of a key, its address, and how it was read.
func (Sources) Source(key string) (label, url, kind string, ok bool) {
	s, ok := source.Lookup(key)
	if !ok {
		return "", "", "", false
	}
	var parts []string
	for _, p := range []string{s.Author, s.Title, s.Edition, s.Locator} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	if strings.HasPrefix(s.Address, "http") {
		url = s.Address
	}
	switch s.Read {
	case source.InPrint:
		kind = "print"
	case source.Secondary:
		kind = "secondary"
	case source.Memory:
		kind = "memory"
	case source.Practice:
		kind = "practice"
	}
	return strings.Join(parts, ". "), url, kind, true
}

// Keys lists every key of the bibliography.
func (Sources) Keys() []string {
	var keys []string
	for _, s := range source.All() {
		keys = append(keys, s.Key)
	}
	sort.Strings(keys)
	return keys
}

// bibliography groups all sources by kind for the page of sources.
func bibliography() []publish.SourceGroup {
	titles := []struct{ kind, title string }{
		{source.Regulation, "Regulations"}, {source.Standard, "Standards"}, {source.Paper, "Papers"}, {source.Handbook, "Handbooks"},
		{source.Textbook, "Textbooks"}, {source.Library, "Reference libraries"}, {source.Manual, "Makers' manuals, described without their names"},
		{source.Article, "Trade articles and training notes"}, {source.CommonPractice, "Special marks"},
	}
	var groups []publish.SourceGroup
	for _, t := range titles {
		g := publish.SourceGroup{Title: t.title}
		for _, s := range source.All() {
			if s.Kind == t.kind {
				g.Items = append(g.Items, publish.SourceEntry{Key: s.Key, Text: sourceHTML(s), Read: readWords(s.Read)})
			}
		}
		if len(g.Items) > 0 {
			groups = append(groups, g)
		}
	}
	return groups
}
