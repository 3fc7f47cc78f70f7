package calcview

import (
	"strings"
	"sync"

	"changeout/build/internal/markup"
	"changeout/build/internal/searchindex"
	"changeout/calc"
)

// worksheetPlaces lists what a search can find on a worksheet's page: each
// entry, and the results. Not what an entry takes, nor the example: such
// numbers would answer nearly every amount that somebody asks for.
func worksheetPlaces(w *calc.Worksheet) func() []markup.Passage {
	return sync.OnceValue(func() []markup.Passage {
		var list []markup.Passage
		for i := range w.Inputs {
			in := &w.Inputs[i]
			words := in.Label
			if in.Kind == calc.Series {
				var columns []string
				for _, c := range in.Columns {
					columns = append(columns, c.Label)
				}
				words += " · " + strings.Join(columns, ", ")
			}
			list = append(list, markup.Passage{Kind: searchindex.Field, ID: w.ID + "-" + in.ID, Text: words})
		}
		var results []string
		for i := range w.Outputs {
			results = append(results, w.Outputs[i].Label)
		}
		list = append(list, markup.Passage{Kind: searchindex.Holds, ID: "worksheet-" + w.ID, Text: "Works out: " + strings.Join(results, ", ")})
		return list
	})
}

// waterPlaces say what the tables of water hold.
var waterPlaces = sync.OnceValue(func() []markup.Passage {
	var list []markup.Passage
	for _, t := range waterTable() {
		table := t.(Table)
		list = append(list, markup.Passage{Kind: searchindex.Holds, ID: "table-" + table.ID, Text: table.Title})
		for _, r := range table.Rows {
			var cells []string
			for i, c := range r.Cells {
				cells = append(cells, strings.TrimSpace(c+" "+table.Columns[i].Unit))
			}
			list = append(list, markup.Passage{Kind: searchindex.Holds, Text: strings.Join(cells, " · ")})
		}
	}
	return list
})
