package calc_test

import (
	"math"

	"changeout/calc"
	"changeout/calc/unit"
)

// probe is a worksheet for tests only: one input of every kind, and outputs
// that show what the door made of the text.
var probe = &calc.Worksheet{
	ID: "probe", Title: "Probe", Purpose: "Tests of the door.",
	Inputs: []calc.Input{
		{ID: "method", Label: "Method", Kind: calc.Choice, Default: "gauge", Options: []calc.Option{
			{ID: "gauge", Label: "By gauge", Aliases: []string{"manifold"}}, {ID: "scale", Label: "By scale"}, {ID: "rows", Label: "By rows"}, {ID: "nothing", Label: "Nothing"}}},
		{ID: "pressure", Label: "Pressure", Kind: calc.Quantity, Quantity: unit.Pressure, Units: []string{"kPag", "kPaa", "psig", "psia", "inHgv"}, Low: 1e3, High: 15e6,
			BoundReason: "no field gauge shows more", When: []calc.When{{Input: "method", Is: []string{"gauge"}}}},
		{ID: "altitude", Label: "Site altitude", Kind: calc.Quantity, Quantity: unit.Length, Units: []string{"m", "ft"}, Default: "0 m", Low: -500, High: 5000, Altitude: true},
		{ID: "mass", Label: "Mass", Kind: calc.Quantity, Quantity: unit.Mass, Units: []string{"kg", "lb"}, Low: 0.5, High: 2, Optional: true,
			When: []calc.When{{Input: "method", Is: []string{"scale", "gauge"}}}},
		{ID: "log", Label: "Log", Kind: calc.Series, MinRows: 3, MaxRows: 6, When: []calc.When{{Input: "method", Is: []string{"rows"}}}, Columns: []calc.Column{
			{ID: "time", Label: "Time", Names: []string{"time", "date"}, Quantity: unit.Duration, Units: []string{"min", "s", "h"}, Low: -1e9, High: 1e9, Clock: true},
			{ID: "pressure", Label: "Pressure", Names: []string{"pressure", "vacuum"}, Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa", "mbar"}, Low: 0, High: 120e3},
			{ID: "size", Label: "Size", Names: []string{"size", "od"}, Quantity: unit.TubeDiameter, Units: []string{"mm", "in"}, Low: 1e-3, High: 0.1, Optional: true},
		}},
	},
	Outputs: []calc.Output{
		{ID: "absolute", Label: "Absolute pressure", Quantity: unit.Pressure, Units: []string{"kPaa", "psia"}},
		{ID: "mass", Label: "Mass", Quantity: unit.Mass, Units: []string{"kg", "lb"}, Significant: 3},
		{ID: "broken", Label: "Broken number", Quantity: unit.Mass},
	},
	Verdicts: []calc.Verdict{{ID: "seen", Tone: calc.Good, Title: "Seen"}},
	Compute: func(r *calc.Run) {
		if rows := r.Series("log"); rows != nil {
			lastRows = rows
		}
		if r.Has("mass") { // set out of order on purpose
			m := r.Float("mass")
			if m == 1.25 {
				m = math.NaN()
			}
			r.Set("mass", m)
		}
		if r.Has("pressure") {
			r.Set("absolute", r.Float("pressure"))
		}
		if r.Choice("method") == "nothing" {
			r.Refuse("method", "nothing-to-do", "Method: nothing was asked.", calc.Suggestion{Input: "method", Label: "gauge", Text: "gauge"})
			return
		}
		r.Conclude("seen", "It was seen.")
	},
}

// lastRows is what the last run with a log was given.
var lastRows *calc.Rows

// ask runs the probe on "input=text" and "input:unit=text" words.
func ask(words ...string) calc.Answer { return askIn(unit.Either, words...) }

func askIn(system unit.System, words ...string) calc.Answer {
	req := calc.Request{Worksheet: "probe", System: system}
	for _, w := range words {
		req.Fields = append(req.Fields, fieldOf(w))
	}
	return calc.Evaluate(probe, req)
}

func fieldOf(word string) calc.Field {
	for i := range len(word) {
		if word[i] != '=' {
			continue
		}
		f := calc.Field{Input: word[:i], Text: word[i+1:]}
		for j := range i {
			if word[j] == ':' {
				f.Input, f.Unit = word[:j], word[j+1:i]
			}
		}
		return f
	}
	panic("no = in " + word)
}
