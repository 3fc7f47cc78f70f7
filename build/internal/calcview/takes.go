package calcview

import (
	"slices"
	"strings"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/unit"
)

// takes says in one sentence why an input of a worksheet cannot take over what
// a step has written down in a unit, named as a person reads it; "" when it
// can. row is the first cell of the row of a log, "" for an input alone.
func takes(id, input, row, label string) string {
	in := catalog.Lookup(id).Input(input)
	switch {
	case in == nil:
		return "the worksheet “" + id + "” has no input “" + input + "”"
	case (in.Kind == calc.Series) != (row != ""):
		return "an input that is a log takes rows, and no other input does"
	case in.Kind == calc.Series:
		for _, c := range in.Columns[1:] {
			if c.Quantity != nil && unitLabels(c.Quantity, c.Units[:1])[0] == label {
				return ""
			}
		}
		return "no column of the log is in " + label
	case in.Kind != calc.Quantity:
		return "the input “" + input + "” is not a quantity"
	}
	if labels := unitLabels(in.Quantity, in.Units); !slices.Contains(labels, label) {
		return "the input “" + input + "” is not in " + label + " but in " + strings.Join(labels, ", ")
	}
	return ""
}

func unitLabels(q *unit.Quantity, ids []string) []string {
	labels := make([]string, len(ids))
	for i, id := range ids {
		labels[i] = id
		if u := q.Unit(id); u != nil {
			labels[i] = u.Label
		}
	}
	return labels
}
