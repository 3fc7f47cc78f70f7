package calc

import "changeout/calc/unit"

// Run is one run of a worksheet: what was entered, in SI, and what is being
// answered. The compute function reads with Has, Float, Choice and Series and
// writes with Set, Step, Warn, Advise, Conclude, Chart and Refuse.
type Run struct {
	sheet  *Worksheet
	values []value
	env    unit.Env
	system unit.System
	wanted []Field
	answer *Answer
}

// value is a parsed input.
type value struct {
	given  bool
	typed  bool // by the person, not a default
	number float64
	choice string
	series *Rows
	unit   *unit.Unit
	text   string
}

// Rows is a parsed series: one slice of SI values a column. A column that was
// not given is nil.
type Rows struct {
	Columns [][]float64
	fields  []int // the field of a row that each column was read from, counted from 1; 0 for a column not given
}

// Len returns the number of rows.
func (r *Rows) Len() int {
	for _, c := range r.Columns {
		if c != nil {
			return len(c)
		}
	}
	return 0
}

func (r *Run) index(id string) int {
	for i := range r.sheet.Inputs {
		if r.sheet.Inputs[i].ID == id {
			return i
		}
	}
	panic("calc: worksheet " + r.sheet.ID + " has no input " + id)
}

// Has reports whether the input was given (or has a default) and applies.
func (r *Run) Has(id string) bool { return r.values[r.index(id)].given }

// Float returns the SI value of a quantity input, 0 when it was not given.
func (r *Run) Float(id string) float64 { return r.values[r.index(id)].number }

// Choice returns the option chosen, "" when none was.
func (r *Run) Choice(id string) string { return r.values[r.index(id)].choice }

// Series returns the rows of a series input, nil when none were given.
func (r *Run) Series(id string) *Rows { return r.values[r.index(id)].series }

// Atmosphere returns the local atmospheric pressure, Pa.
func (r *Run) Atmosphere() float64 { return r.env.Atmosphere }

// Given returns an input as it was entered, with its unit's label.
func (r *Run) Given(id string) string { return r.values[r.index(id)].text }

// Text writes an SI value of a quantity in the unit the person would expect:
// the one they used for that quantity, else the first offered of their family
// of units.
func (r *Run) Text(q *unit.Quantity, si float64, offered ...string) string {
	return r.unitFor(q, offered).Text(si, r.env)
}

// Entered writes an SI value as Text does, with up to five figures and no zeros
// after the last one that counts: what a person entered keeps its figures in
// the working.
func (r *Run) Entered(q *unit.Quantity, si float64, offered ...string) string {
	u := r.unitFor(q, offered)
	return unit.Short(u.FromSI(si, r.env), 5) + "\u00a0" + u.Label
}

// Set gives an output its value in SI.
func (r *Run) Set(id string, si float64) {
	out := r.sheet.Output(id)
	if out == nil {
		panic("calc: worksheet " + r.sheet.ID + " has no output " + id)
	}
	label, shown := out.Label, si
	if si < 0 && out.Below != "" {
		label, shown = out.Below, -si
	}
	r.answer.Outputs = append(r.answer.Outputs, OutputValue{ID: id, Label: label, Value: si,
		SIUnit: out.Quantity.SIUnit().ID, Text: r.outputText(out, shown), Main: out.Main})
}

// OutputText returns an output as it is shown; the output must have been set.
func (r *Run) OutputText(id string) string {
	for i := range r.answer.Outputs {
		if r.answer.Outputs[i].ID == id {
			return r.answer.Outputs[i].Text
		}
	}
	return ""
}

// Step records one line of working.
func (r *Run) Step(label, formula, value string, cite Cite) {
	r.answer.Steps = append(r.answer.Steps, Step{Label: label, Formula: formula, Value: value, Cite: cite})
}

// Warn adds a sentence that the person must read before using the answer.
func (r *Run) Warn(sentence string) { r.answer.Warnings = append(r.answer.Warnings, sentence) }

// Advise adds a sentence that says what to do next.
func (r *Run) Advise(sentence string) { r.answer.Advice = append(r.answer.Advice, sentence) }

// Conclude sets the verdict with the sentence that explains it.
func (r *Run) Conclude(id, sentence string) {
	v := r.sheet.Verdict(id)
	if v == nil {
		panic("calc: worksheet " + r.sheet.ID + " has no verdict " + id)
	}
	r.answer.Verdict = &VerdictValue{Verdict: *v, Sentence: sentence}
}

// VerdictTitle returns the title of the verdict concluded so far.
func (r *Run) VerdictTitle() string {
	if r.answer.Verdict == nil {
		return ""
	}
	return r.answer.Verdict.Title
}

// Chart adds a drawing.
func (r *Run) Chart(title, svg string) {
	r.answer.Charts = append(r.answer.Charts, Chart{Title: title, SVG: svg})
}

// Refuse ends the run with a problem: the answer will hold no outputs. The
// compute function should return after it.
func (r *Run) Refuse(input, code, sentence string, suggest ...Suggestion) {
	r.answer.Problems = append(r.answer.Problems, Problem{Input: input, Code: code, Sentence: sentence, Suggest: suggest})
}

// RefuseRow refuses for one row of a series, counted from 1, and one column
// of it, so that the form can lead to the cell.
func (r *Run) RefuseRow(input, code, sentence string, row, column int) {
	r.answer.Problems = append(r.answer.Problems, Problem{Input: input, Code: code, Sentence: sentence, Row: row, Field: r.Series(input).fields[column]})
}

func (r *Run) outputText(out *Output, si float64) string {
	u := r.wantedUnit(out)
	if u == nil && out.Quantity == unit.Duration && contains(out.Units, "min") && contains(out.Units, "h") {
		return unit.SpanText(si)
	}
	if u == nil {
		u = r.unitFor(out.Quantity, out.Units)
	}
	if out.Significant > 0 {
		s := u.Significant(u.FromSI(si, r.env), out.Significant)
		if s == "" || u.Label == "" {
			return s
		}
		return s + "\u00a0" + u.Label
	}
	return u.Text(si, r.env)
}

func (r *Run) wantedUnit(out *Output) *unit.Unit {
	for _, f := range r.wanted {
		if f.Input == out.ID {
			return out.Quantity.Unit(f.Unit)
		}
	}
	return nil
}

// unitFor picks the unit to show a quantity in: the unit the person used for
// that very quantity if it is offered, else the first offered of their
// family. A difference of temperatures follows the first temperature entered.
func (r *Run) unitFor(q *unit.Quantity, offered []string) *unit.Unit {
	for i := range r.sheet.Inputs {
		in := &r.sheet.Inputs[i]
		if in.Quantity != q || r.values[i].unit == nil || !r.values[i].typed {
			continue
		}
		if len(offered) == 0 || contains(offered, r.values[i].unit.ID) {
			return r.values[i].unit
		}
	}
	system := r.system
	if q == unit.TemperatureDifference { // beside a temperature in °F, kelvins would be read as degrees
		for i := range r.sheet.Inputs {
			if v := &r.values[i]; r.sheet.Inputs[i].Quantity == unit.Temperature && v.unit != nil && v.typed {
				system = unit.SI
				if v.unit.System == unit.InchPound {
					system = unit.InchPound
				}
				break
			}
		}
	}
	return DefaultUnit(q, offered, system)
}

// DefaultUnit returns the first unit offered that belongs to the family, then
// the first that belongs to either, then the first offered at all. With none
// offered, all units of the quantity are.
func DefaultUnit(q *unit.Quantity, offered []string, system unit.System) *unit.Unit {
	if system == unit.Either {
		system = unit.SI
	}
	var either, first *unit.Unit
	consider := func(u *unit.Unit) bool {
		if u == nil {
			return false
		}
		if first == nil {
			first = u
		}
		if u.System == system {
			return true
		}
		if either == nil && u.System == unit.Either {
			either = u
		}
		return false
	}
	if len(offered) == 0 {
		for i := range q.Units {
			if consider(&q.Units[i]) {
				return &q.Units[i]
			}
		}
	}
	for _, id := range offered {
		if u := q.Unit(id); consider(u) {
			return u
		}
	}
	if either != nil {
		return either
	}
	return first
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
