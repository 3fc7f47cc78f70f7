// Package searchindex writes the index that a phone searches: every place of
// the handbook that a search can lead to, with its text.
//
// The index is the text itself, without lists of words: those would double it,
// and a phone makes them from the text in some ten milliseconds (site's
// components/search/index.ts). It is UTF-8, one record a line, fields separated
// by tabs; a backslash escapes \\, and \l stands for < so that the text can lie
// inside a page.
//
//	U  quantity  factor  offset  spellings…      a unit, SI = (value + offset) × factor
//	S  said|said…  means|means…                  what people say, what pages say
//	P  address without .html  kind  stage  title  summary
//	hCODE  text                                  a place on that page: one letter of markup.PassageKind or of Field and
//	y  text                                      Holds, then what its id is (place.go); without, it belongs to the one before
package searchindex

import (
	"bytes"
	"strconv"
	"strings"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
)

// Kinds of places that no Markdown makes.
const (
	Field markup.PassageKind = 'i' // an entry of a worksheet
	Holds markup.PassageKind = 'x' // what a worksheet works out, or what a computed table holds
)

// A Page is one address with its places.
type Page struct {
	URL            string // from the site's root
	Kind           string // front, procedure, reference, worksheet, list, table
	Stage          int    // 0 for none
	Title, Summary string
	Places         []markup.Passage
}

// FromContent is the entry of a page that was written in Markdown. What stands
// round the work is shortened, so that the index stays small: of reasons the
// sentences with a figure, of definitions the first sentence and those, of
// tables on a page that is no procedure the first column.
func FromContent(p *page.Page, r *markup.Result) Page {
	places := make([]markup.Passage, 0, len(r.Passages))
	for _, place := range r.Passages {
		switch {
		case place.Kind == markup.PassageWhy:
			place.Text = sentences(place.Text, false)
		case place.Kind == markup.PassageTerm && place.ID == "":
			place.Text = sentences(place.Text, true)
		case place.Kind == markup.PassageTable && p.Kind != page.Procedure:
			place.Text, _, _ = strings.Cut(place.Text, " · ")
			if page.Slug(place.Text) == place.Text {
				place.Text = "" // an id that only a table of data uses
			}
		}
		if place.Text != "" {
			places = append(places, place)
		}
	}
	return Page{URL: p.URL, Kind: p.Kind, Stage: p.Stage, Title: p.Title, Summary: p.Summary, Places: places}
}

// sentences keeps those that hold a figure, and the first one if asked.
func sentences(text string, first bool) string {
	var kept []string
	for len(text) > 0 {
		end := len(text)
		for i := 0; i+1 < len(text); i++ {
			if text[i] == '.' && text[i+1] == ' ' {
				end = i + 1
				break
			}
		}
		if first || strings.ContainsAny(text[:end], "0123456789½¼¾") {
			kept = append(kept, strings.TrimSpace(text[:end]))
		}
		text, first = text[end:], false
	}
	return strings.Join(kept, " ")
}

// kinds are the letters of page kinds; other kinds are plain pages.
var kinds = map[string]string{"procedure": "p", "worksheet": "w", "table": "t"}

// Lines writes the records of one page.
func (p Page) Lines() []byte {
	n := 0
	for _, place := range p.Places {
		n += len(place.ID) + len(place.Text) + 4
	}
	b := make([]byte, 0, n+len(p.URL)+len(p.Title)+len(p.Summary)+16)
	stage := ""
	if p.Stage > 0 {
		stage = strconv.Itoa(p.Stage)
	}
	b = record(b, "P", strings.TrimSuffix(p.URL, ".html"), kinds[p.Kind], stage, p.Title, p.Summary)
	for _, place := range p.Places {
		b = append(b, byte(place.Kind))
		b = record(b, p.code(place), place.Text)
	}
	return b
}

// Head writes the records that stand before the pages.
func Head(sayings []page.Saying) []byte {
	b := appendUnits(nil)
	for _, s := range sayings {
		b = record(b, "S", strings.Join(s.Said, "|"), strings.Join(s.Means, "|"))
	}
	return b
}

// record appends one line. Runs of white space in a field become one space.
func record(b []byte, fields ...string) []byte {
	for i, f := range fields {
		if i > 0 {
			b = append(b, '\t')
		}
		space := false
		for k := 0; k < len(f); k++ {
			switch c := f[k]; c {
			case ' ', '\t', '\n', '\r':
				space = true
				continue
			case '\\':
				b = append(appendSpace(b, &space), `\\`...)
			case '<':
				b = append(appendSpace(b, &space), `\l`...)
			default:
				b = append(appendSpace(b, &space), c)
			}
		}
	}
	return append(b, '\n')
}

func appendSpace(b []byte, space *bool) []byte {
	if *space {
		*space = false
		if n := len(b); n > 0 && b[n-1] != '\t' && b[n-1] != '\n' {
			b = append(b, ' ')
		}
	}
	return b
}

// Join puts the parts into one file.
func Join(head []byte, pages [][]byte) []byte {
	n := len(head)
	for _, p := range pages {
		n += len(p)
	}
	b := bytes.NewBuffer(make([]byte, 0, n))
	b.Write(head)
	for _, p := range pages {
		b.Write(p)
	}
	return b.Bytes()
}
