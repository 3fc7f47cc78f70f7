package searchindex

import (
	"strings"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// Check reports rows of search.md whose right side stands nowhere in the
// index: such a search would find nothing.
func Check(index []byte, sayings []page.Saying) []report.Problem {
	x, err := Read(index)
	if err != nil {
		return []report.Problem{{Text: "the search index cannot be read: " + err.Error()}}
	}
	words := map[string]bool{}
	texts := func(p Page, each func(string)) {
		each(p.Title)
		each(p.Summary)
		for _, place := range p.Places {
			each(place.Text)
		}
	}
	for _, p := range x.Pages {
		texts(p, func(text string) {
			for _, w := range Words(text) {
				words[w] = true
			}
		})
	}
	var problems []report.Problem
	for _, s := range sayings {
		for _, phrase := range s.Means {
			for _, w := range Words(phrase) {
				if !words[w] {
					problems = append(problems, report.Problem{File: s.File, Line: s.Line,
						Text: "“" + phrase + "” is not said in the handbook: no page has the word “" + w + "”", Hint: "write the word that pages use, or take it out"})
					break
				}
			}
		}
		for _, said := range s.Said {
			if len(Words(said)) == 0 || strings.Contains(said, "*") {
				problems = append(problems, report.Problem{File: s.File, Line: s.Line, Text: "“" + said + "” is no word that can be typed", Hint: "write plain words"})
			}
		}
	}
	return report.Sorted(problems)
}
