package markup

import (
	"strings"

	"changeout/build/internal/page"
)

// An Env is what a page may refer to. It does not change while pages are converted.
type Env struct {
	Sources    Sources        // the bibliography; nil knows only the special keys
	Worksheets Embeds         // what “:: worksheet id” draws
	Tables     Embeds         // what “:: table id” draws
	Glossary   *page.Glossary // nil has no terms
	Hazards    *page.Hazards  // nil has no hazards

	// Assessment draws what “:: assessment” stands for into a page whose way to the site's root is base; nil without a
	// cause model. It may run on several goroutines.
	Assessment func(base string) ([]byte, error)
	Causes     string // address of the cause model's data from the site's root, for “:: report”; "" without a model
}

// Sources is the bibliography as this package needs it.
type Sources interface {
	// Source resolves a key. label is the full entry as plain text, url its address or "". kind tells how it was
	// read: "print", "secondary", "memory", "practice", or "" when the page should not say.
	Source(key string) (label, url string, kind string, ok bool)
	// Keys lists every key, for near-miss hints.
	Keys() []string
}

// Embeds are things computed at build that a page can show: worksheets, or tables.
type Embeds struct {
	IDs []string // every known id

	// HTML draws one into a page. It runs once for each use and may run on several goroutines.
	// When nil, a link to its own page stands in its place.
	HTML func(id string, place Place) ([]byte, error)

	// URL gives the address of its own page from the site's root, for links worksheet:id and table:id.
	// When nil, worksheets/id.html or tables/id.html.
	URL func(id string) string

	// Takes says in one sentence why an input of a worksheet cannot take over a field in that unit, as a row of a log
	// or, with row "", alone; "" when it can. nil takes everything.
	Takes func(id, input, row, unit string) string

	// Field says what a field to write down in a unit may hold; id and input are the worksheet input that may take it
	// over, or "". nil knows no unit but the one written.
	Field func(unit, id, input string) Field

	known map[string]bool
}

// A Field is what a field to write down may hold.
type Field struct {
	Units  []string // labels to choose from, the one written first; behind + the first choice in metric, behind * in US units
	Signed bool     // it can go below zero: phones whose numeric pad lacks a minus get a button
	Words  bool     // a meter may show words there, such as OL
	Size   bool     // pipe sizes, written as fractions: no numeric pad has a stroke
}

// A Place is where an embed is drawn.
type Place struct {
	Base string // relative path to the site's root: "" or "../" …

	// Cite puts a source on the page's list and gives the HTML of the citation mark, as [@key, locator] would.
	// An unknown key gives its name in brackets and a problem on the line of the embed.
	// It is only valid until HTML returns.
	Cite func(key, locator string) []byte
}

func (e *Embeds) prepare(folder string) {
	e.known = make(map[string]bool, len(e.IDs))
	for _, id := range e.IDs {
		e.known[id] = true
	}
	if e.URL == nil {
		e.URL = func(id string) string { return folder + id + ".html" }
	}
}

// A hazardIndex finds the hazards whose words stand in a text, one look-up a word.
type hazardIndex struct {
	rows  []page.Hazard
	words map[string][]hazardPhrase // first word of a phrase: phrases that start with it
	stems [1 << 8][]hazardPhrase    // first byte of a first word with any ending: such phrases
}

// A hazardPhrase is one entry of the column “words in a step that call for it”.
type hazardPhrase struct {
	row   int
	words []string // lower case; a final * on a word means any ending
}

func newHazardIndex(h *page.Hazards) *hazardIndex {
	x := &hazardIndex{rows: h.Rows, words: map[string][]hazardPhrase{}}
	for i, row := range h.Rows {
		for _, entry := range row.Words {
			words := strings.FieldsFunc(entry, func(r rune) bool { return !wordRune(r) && r != '*' })
			if len(words) == 0 || words[0] == "*" {
				continue
			}
			p := hazardPhrase{i, words}
			if first := words[0]; strings.HasSuffix(first, "*") {
				x.stems[first[0]] = append(x.stems[first[0]], p)
			} else {
				x.words[first] = append(x.words[first], p)
			}
		}
	}
	return x
}

func wordRune(r rune) bool {
	return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || '0' <= r && r <= '9' || r >= 0x80
}

// find calls found for every phrase in a lower-case text; the same row may come more than once.
func (x *hazardIndex) find(lower []byte, found func(row int, phrase string)) {
	if len(x.rows) == 0 {
		return
	}
	for rest := lower; ; {
		word, after := nextWord(rest)
		if len(word) == 0 {
			return
		}
		for _, p := range x.words[string(word)] {
			if p.follows(after) {
				found(p.row, strings.Join(p.words, " "))
			}
		}
		for _, p := range x.stems[word[0]] {
			if matchWord(word, p.words[0]) && p.follows(after) {
				found(p.row, string(word))
			}
		}
		rest = after
	}
}

// follows tells whether the second and later words of the phrase open the text.
func (p hazardPhrase) follows(text []byte) bool {
	for _, want := range p.words[1:] {
		var word []byte
		word, text = nextWord(text)
		if !matchWord(word, want) {
			return false
		}
	}
	return true
}

func matchWord(word []byte, want string) bool {
	if stem, ok := strings.CutSuffix(want, "*"); ok {
		return len(word) >= len(stem) && string(word[:len(stem)]) == stem
	}
	return string(word) == want
}

// nextWord takes the first run of letters and digits; hyphens part words, so “stored-charge” is two.
func nextWord(text []byte) (word, rest []byte) {
	start := 0
	for start < len(text) && !wordRune(rune(text[start])) {
		start++
	}
	end := start
	for end < len(text) && wordRune(rune(text[end])) {
		end++
	}
	return text[start:end], text[end:]
}
