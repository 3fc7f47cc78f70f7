package calcview

import (
	"strings"
	"sync"

	"changeout/build/internal/markup"
	"changeout/build/internal/searchindex"
	"changeout/calc"
	"changeout/calc/property/refrigerant"
	"changeout/calc/unit"
)

// worksheetPlaces lists what a search can find on a worksheet's page: each
// entry with its range in the units people use, the results, and the example
// with its numbers.
func worksheetPlaces(w *calc.Worksheet) func() []markup.Passage {
	return sync.OnceValue(func() []markup.Passage {
		var list []markup.Passage
		for i := range w.Inputs {
			in := &w.Inputs[i]
			words := in.Label
			switch in.Kind {
			case calc.Quantity:
				if !in.Quantity.Calendar() {
					words += " · " + strings.TrimSuffix(Bounds(in), ".")
				}
			case calc.Series:
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
		id := "worksheet-" + w.ID
		list = append(list, markup.Passage{Kind: searchindex.Holds, ID: id, Text: "Works out: " + strings.Join(results, ", ")})
		var example []string
		for _, f := range w.Example {
			if in := w.Input(f.Input); in != nil && in.Kind == calc.Quantity {
				example = append(example, in.Label+" "+exampleText(in, f))
			}
		}
		if len(example) > 0 {
			list = append(list, markup.Passage{Kind: searchindex.Holds, ID: id, Text: "Example: " + strings.Join(example, ", ")})
		}
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

// refrigerantPlaces say between which values the tables of a refrigerant
// stand: a search for a pressure finds the tables that hold it.
func refrigerantPlaces(r *refrigerant.Refrigerant) func() []markup.Passage {
	return sync.OnceValue(func() []markup.Passage {
		low, high := r.Range()
		low = max(low, coldestRow)
		from, err1 := r.DewAtT(low)
		to, err2 := r.BubbleAtT(high)
		if err1 != nil || err2 != nil {
			return nil
		}
		env := unit.Env{Atmosphere: unit.StandardAtmosphere}
		span := func(q *unit.Quantity, id string, a, b float64) string {
			u := q.Unit(id)
			return unit.Fixedf(u.FromSI(a, env), 0) + " to " + unit.Fixedf(u.FromSI(b, env), 0) + " " + u.Label
		}
		return []markup.Passage{{Kind: searchindex.Holds, Text: span(unit.Temperature, "C", low, high) + ", " + span(unit.Pressure, "psig", from.P, to.P)}}
	})
}
