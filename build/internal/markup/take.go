package markup

import (
	"fmt"
	"html"
	"strconv"
	"strings"
)

// takeForm is how a field to write down names the worksheet further down the page that may take it over.
const takeForm = "write :: write id | Label | unit | worksheet input, and for a log the figure of its first column: vacuum-hold log 5"

// take is where a field goes: an input of a worksheet, and for a log the first cell of the row.
type take struct{ worksheet, input, row string }

// taken is a field that a worksheet further down may take over.
type taken struct {
	take
	write, unit string
	line        int
	used        bool
}

func parseTake(s string) *take {
	words := strings.Fields(s)
	if len(words) < 2 || len(words) > 3 || !validID(words[0]) || !validID(words[1]) {
		return nil
	}
	t := &take{worksheet: words[0], input: words[1]}
	if len(words) == 3 {
		if _, err := strconv.ParseFloat(words[2], 64); err != nil {
			return nil
		}
		t.row = words[2]
	}
	return t
}

// takenBy writes the list of fields above that the worksheet may take over, for site/components/worksheet/take.ts:
// field, input, row and unit of each. A list, because what is far up a page may not be laid out.
func (w *walker) takenBy(worksheet string) []byte {
	var list []string
	for i := range w.takes {
		t := &w.takes[i]
		if t.worksheet != worksheet {
			continue
		}
		t.used = true
		if w.env.Worksheets.Takes != nil {
			if wrong := w.env.Worksheets.Takes(t.worksheet, t.input, t.row, t.unit); wrong != "" {
				w.problem(t.line, "field “"+t.write+"”: "+wrong, takeForm)
			}
		}
		list = append(list, strings.Join([]string{t.write, t.input, t.row, t.unit}, "|"))
	}
	if len(list) == 0 {
		return nil
	}
	return fmt.Appendf(nil, "<template data-take=\"%s\" data-from=\"%s\"></template>\n", worksheet, html.EscapeString(strings.Join(list, ";")))
}

// endTakes says which fields name a worksheet that does not stand below them.
func (w *walker) endTakes() {
	for _, t := range w.takes {
		if !t.used {
			w.problem(t.line, "field “"+t.write+"” goes to the worksheet “"+t.worksheet+"”, which does not stand below it on this page", "embed it further down, or leave that part out")
		}
	}
}
