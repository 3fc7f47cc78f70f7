package page

import (
	"strings"

	"changeout/build/internal/report"
)

// A Signal is the word that opens a caution, as ANSI Z535 defines them. A higher value is a graver danger.
type Signal int

// The signal words from gravest down: will kill or maim, could kill or maim, could injure, is about property.
const (
	NoSignal Signal = iota
	Notice
	Caution
	Warning
	Danger
)

// signalWords are the words as printed, indexed by Signal.
var signalWords = [...]string{"", "NOTICE", "CAUTION", "WARNING", "DANGER"}

// String gives the word in capitals.
func (s Signal) String() string { return signalWords[s] }

// ParseSignal reads a signal word, whatever its capitals; NoSignal when it is none.
func ParseSignal(word string) Signal {
	for i := Notice; i <= Danger; i++ {
		if strings.EqualFold(word, signalWords[i]) {
			return i
		}
	}
	return NoSignal
}

// A Hazard is one row of the table of hazards.
type Hazard struct {
	ID     string // slug of Name
	Name   string
	Words  []string // words and phrases in a step that call for the caution, in lower case; a final * means any ending
	Lowest Signal   // the least grave word that a caution for it may carry
	Line   int
}

// Hazards is the table. The zero value has no rows.
type Hazards struct {
	Rows  []Hazard
	index map[string]int
}

// Find looks a hazard up by its id.
func (h *Hazards) Find(id string) (Hazard, bool) {
	i, ok := h.index[id]
	if !ok {
		return Hazard{}, false
	}
	return h.Rows[i], true
}

// IDs lists the ids in the order of the table.
func (h *Hazards) IDs() []string {
	ids := make([]string, len(h.Rows))
	for i, row := range h.Rows {
		ids[i] = row.ID
	}
	return ids
}

// readHazards reads the tables whose first column is titled “Hazard”: hazard, words separated by commas, lowest signal
// word. Other tables of the file are prose.
func (r *reader) readHazards(name string, source []byte) *Hazards {
	h := &Hazards{index: map[string]int{}}
	add := func(line int, text, hint string) {
		r.problems = append(r.problems, report.Problem{File: name, Line: line, Text: text, Hint: hint})
	}
	titled := false  // the last row of titles was that of hazards
	inTable := false // past the row of dashes
	for number, line := range strings.Split(string(source), "\n") {
		number++
		line = strings.TrimSpace(line)
		if !strings.HasPrefix(line, "|") {
			inTable, titled = false, false
			continue
		}
		if strings.Trim(line, "|-: ") == "" {
			inTable = titled
			continue
		}
		cells := strings.Split(strings.Trim(line, "|"), "|")
		if !inTable {
			titled = strings.EqualFold(plainCell(cells[0]), "hazard")
			continue
		}
		if len(cells) < 3 {
			add(number, "row has fewer than three cells", "hazard | words in a step that call for it | lowest signal word")
			continue
		}
		row := Hazard{Name: plainCell(cells[0]), Line: number}
		row.ID = Slug(row.Name)
		if row.ID == "" {
			add(number, "hazard has no name", "")
			continue
		}
		if _, taken := h.index[row.ID]; taken {
			add(number, "hazard "+row.Name+" stands twice in the table", "")
			continue
		}
		for word := range strings.SplitSeq(cells[1], ",") {
			if word = strings.ToLower(plainCell(word)); word != "" {
				row.Words = append(row.Words, word)
			}
		}
		word := plainCell(cells[2])
		row.Lowest = ParseSignal(word)
		if row.Lowest == NoSignal {
			add(number, "lowest signal word is “"+word+"”", "use DANGER, WARNING, CAUTION or NOTICE")
		}
		h.index[row.ID] = len(h.Rows)
		h.Rows = append(h.Rows, row)
	}
	if len(h.Rows) == 0 {
		add(1, "no table of hazards", "hazard | words in a step that call for it | lowest signal word")
	}
	return h
}

// plainCell drops the marks of emphasis and code that people put round words in a table; a final * is a wildcard.
func plainCell(cell string) string {
	cell = strings.TrimSpace(cell)
	cell = strings.Trim(cell, "`")
	if bold, ok := strings.CutPrefix(cell, "**"); ok {
		cell = strings.TrimSuffix(bold, "**")
	}
	return strings.TrimSpace(cell)
}
