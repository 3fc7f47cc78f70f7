package page

import (
	"io/fs"
	"path"
	"strconv"
	"strings"

	"changeout/build/internal/report"
)

// A Saying is a row of the tables in search.md: what people type into the search, and the words of the handbook that it
// should also find.
type Saying struct {
	Said  []string // words or phrases as people say them, in lower case
	Means []string // words or phrases as pages write them, in lower case
	File  string
	Line  int
}

// longestSaying is how many words a phrase of search.md may have: the search looks so far ahead.
const longestSaying = 4

// readSayings reads search.md of every layer: a company adds to the handbook's words and does not replace them.
func (r *reader) readSayings(layers []Layer) {
	first := map[string]string{}
	for _, layer := range layers {
		if layer.FS == nil {
			continue
		}
		source, err := fs.ReadFile(layer.FS, SearchPath)
		if err != nil {
			continue // there need be none
		}
		r.readSayingsFile(path.Join(layer.Name, SearchPath), source, first)
	}
}

// readSayingsFile takes the rows of all tables: said | means. Words are separated by commas. first remembers where a
// phrase stood.
func (r *reader) readSayingsFile(name string, source []byte, first map[string]string) {
	add := func(line int, text, hint string) {
		r.problems = append(r.problems, report.Problem{File: name, Line: line, Text: text, Hint: hint})
	}
	inTable := false // past the row of dashes
	for number, line := range strings.Split(string(source), "\n") {
		number++
		line = strings.TrimSpace(line)
		switch {
		case !strings.HasPrefix(line, "|"):
			inTable = false
			continue
		case strings.Trim(line, "|-: ") == "":
			inTable = true
			continue
		case !inTable:
			continue
		}
		cells := strings.Split(strings.Trim(line, "|"), "|")
		if len(cells) != 2 {
			add(number, "row has "+strconv.Itoa(len(cells))+" cells", "what people say | what this handbook says")
			continue
		}
		s := Saying{Said: phrases(cells[0]), Means: phrases(cells[1]), File: name, Line: number}
		if len(s.Said) == 0 || len(s.Means) == 0 {
			add(number, "row has an empty cell", "what people say | what this handbook says")
			continue
		}
		for _, p := range append(s.Said, s.Means...) {
			if n := len(strings.Fields(p)); n > longestSaying {
				add(number, "“"+p+"” has "+strconv.Itoa(n)+" words", "a phrase has at most "+strconv.Itoa(longestSaying))
			}
		}
		for _, p := range s.Said {
			if at := first[p]; at != "" {
				add(number, "“"+p+"” is explained twice", "first in "+at)
			}
			first[p] = name + ":" + strconv.Itoa(number)
		}
		r.book.Sayings = append(r.book.Sayings, s)
	}
}

func phrases(cell string) []string {
	var list []string
	for p := range strings.SplitSeq(cell, ",") {
		if p = strings.Join(strings.Fields(strings.ToLower(plainCell(p))), " "); p != "" {
			list = append(list, p)
		}
	}
	return list
}
