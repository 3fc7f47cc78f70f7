package catalog_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/property/refrigerant"
	"changeout/calc/published"
	"changeout/calc/unit"
)

// runs gathers what a worksheet was asked in the example and in the published
// cases that it answers, each refrigerant included.
func runs(t testing.TB, w *calc.Worksheet) [][]calc.Field {
	list := [][]calc.Field{w.Example}
	last := ""
	for _, c := range cases(t, w) {
		if key := published.Key(c.Inputs); c.Output != "problem" && key != last {
			list, last = append(list, c.Inputs), key
		}
	}
	if w != catalog.Saturation && w != catalog.ChargeAdjustment { // the others refuse refrigerants that do not suit what else was entered
		return list
	}
	for _, r := range catalog.Offered() {
		list = append(list, withRefrigerant(w, r))
	}
	return list
}

// withRefrigerant asks for a refrigerant at a temperature well inside its range.
func withRefrigerant(w *calc.Worksheet, r *refrigerant.Refrigerant) []calc.Field {
	low, high := r.Range()
	middle := number(math.Min(473, low+0.6*(high-low))) + " K"
	if f := runningFields(w, r); f != nil {
		return f
	}
	if w.Input("lines") != nil {
		liquid := math.Max(253.15, math.Min(333.15, low+0.6*(high-low)))
		return []calc.Field{{Input: "system", Text: "inverter-multi-split"}, {Input: "refrigerant", Text: r.Name}, {Input: "nameplate", Text: "5 kg"},
			{Input: "already", Text: "0 kg"}, {Input: "lines", Text: "9.52 10 0.06"}, {Input: "liquid-temperature", Text: number(liquid) + " K"}, {Input: "room-volume", Text: "50 m3"}}
	}
	return []calc.Field{{Input: "refrigerant", Text: r.Name}, {Input: "temperature", Text: middle}, {Input: "line-temperature", Text: middle}}
}

// with returns the fields with one of them replaced or added.
func with(fields []calc.Field, f calc.Field) []calc.Field {
	out := slices.DeleteFunc(slices.Clone(fields), func(g calc.Field) bool { return g.Input == f.Input })
	return append(out, f)
}

func textOf(fields []calc.Field, id string) (string, bool) {
	for _, f := range fields {
		if f.Input == id {
			return f.Text, true
		}
	}
	return "", false
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

func evaluate(w *calc.Worksheet, fields []calc.Field) calc.Answer {
	return calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: fields})
}

// envOf is the site that a set of fields implies.
func envOf(fields []calc.Field) unit.Env {
	env := unit.Env{Atmosphere: unit.StandardAtmosphere}
	if text, ok := textOf(fields, "altitude"); ok {
		n := unit.ParseNumber(text)
		if u := unit.Length.Unit(n.Rest); u != nil {
			env.Atmosphere = calc.AtmosphereAt(u.ToSI(n.Value, env))
		}
	}
	return env
}

// noNumber also finds a mark of text.Say that no value filled.
var noNumber = regexp.MustCompile(`NaN|[+−-]Inf|\bInf\b|\{\}`)

// sound reports what no answer may hold: a number that is none, an empty
// sentence, outputs beside problems.
func sound(a calc.Answer) string {
	if len(a.Problems) > 0 && (len(a.Outputs) > 0 || a.Verdict != nil || len(a.Steps) > 0 || len(a.Charts) > 0) {
		return "outputs beside problems"
	}
	for _, p := range a.Problems {
		if p.Sentence == "" || p.Code == "" || p.Code == calc.NotFinite || noNumber.MatchString(p.Sentence) {
			return "problem " + p.Code + ": " + p.Sentence
		}
	}
	for _, o := range a.Outputs {
		if math.IsNaN(o.Value) || math.IsInf(o.Value, 0) || o.Text == "" || noNumber.MatchString(o.Text) {
			return "output " + o.ID + " " + number(o.Value) + " " + o.Text
		}
	}
	for _, s := range a.Steps {
		if s.Label == "" || s.Value == "" || s.Cite.Key == "" || noNumber.MatchString(s.Formula+s.Value) {
			return "step " + s.Label + ": " + s.Formula + " = " + s.Value + " [" + s.Cite.Key + "]"
		}
	}
	for _, s := range append(slices.Clone(a.Warnings), a.Advice...) {
		if s == "" || noNumber.MatchString(s) {
			return "sentence: " + s
		}
	}
	if a.Verdict != nil && (a.Verdict.Sentence == "" || noNumber.MatchString(a.Verdict.Sentence)) {
		return "verdict: " + a.Verdict.Sentence
	}
	for _, c := range a.Charts {
		if c.Title == "" || c.SVG == "" || noNumber.MatchString(c.SVG) {
			return "chart " + c.Title
		}
	}
	return ""
}

// TestEveryInputIsUsed: each input is entered in the example or in a published
// case; the tests of bounds and units build on those.
func TestEveryInputIsUsed(t *testing.T) {
	for _, w := range catalog.All() {
		for i := range w.Inputs {
			used := slices.ContainsFunc(runs(t, w), func(fields []calc.Field) bool {
				_, ok := textOf(fields, w.Inputs[i].ID)
				return ok
			})
			if !used {
				t.Errorf("%s: input %s is in no example and no published case", w.ID, w.Inputs[i].ID)
			}
		}
	}
}
