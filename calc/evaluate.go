package calc

import (
	"math"
	"strings"

	"changeout/calc/unit"
)

// Evaluate runs a worksheet on what a person entered. It never panics on any
// text: the answer holds either problems, each a sentence, or finite outputs.
func Evaluate(w *Worksheet, req Request) Answer {
	a := Answer{Worksheet: w.ID}
	r := &Run{sheet: w, values: make([]value, len(w.Inputs)), system: req.System, wanted: req.OutUnits, answer: &a}
	r.env.Atmosphere = unit.StandardAtmosphere
	r.readAll(req.Fields)
	if len(a.Problems) > 0 {
		return Answer{Worksheet: w.ID, Problems: a.Problems}
	}
	w.Compute(r)
	if len(a.Problems) > 0 {
		return Answer{Worksheet: w.ID, Problems: a.Problems}
	}
	for _, out := range a.Outputs {
		if math.IsNaN(out.Value) || math.IsInf(out.Value, 0) {
			return Answer{Worksheet: w.ID, Problems: []Problem{{Code: NotFinite,
				Sentence: "These inputs lead to no usable number for " + out.Label + ". Check each input."}}}
		}
	}
	a.Outputs = r.inOrder()
	return a
}

// inOrder returns the outputs in the order of the declaration, however the
// compute function came to them. Those that the verdict calls main come first.
func (r *Run) inOrder() []OutputValue {
	sorted := make([]OutputValue, 0, len(r.answer.Outputs))
	var leads []string
	if v := r.answer.Verdict; v != nil {
		for _, id := range v.Main {
			if r.OutputText(id) != "" { // set in this run
				leads = append(leads, id)
			}
		}
	}
	take := func(id string, lead bool) {
		for _, out := range r.answer.Outputs {
			if out.ID == id {
				if len(leads) > 0 {
					out.Main = lead
				}
				sorted = append(sorted, out)
			}
		}
	}
	for _, id := range leads {
		take(id, true)
	}
	for i := range r.sheet.Outputs {
		if id := r.sheet.Outputs[i].ID; !contains(leads, id) {
			take(id, false)
		}
	}
	return sorted
}

// readAll parses the fields in the order that later ones depend on: choices
// first, because they decide what is asked; then the altitude, because gauge
// pressures need it; then the rest.
func (r *Run) readAll(fields []Field) {
	w := r.sheet
	for _, f := range fields {
		base, _, companion := strings.Cut(f.Input, ".")
		in := w.Input(base)
		if in == nil || (companion && in.Kind != Series) {
			r.unknownInput(f.Input)
		}
	}
	pass := func(want func(*Input) bool) {
		for i := range w.Inputs {
			if want(&w.Inputs[i]) {
				r.readOne(i, fields)
			}
		}
	}
	pass(func(in *Input) bool { return in.Kind == Choice })
	pass(func(in *Input) bool { return in.Altitude })
	if r.system == unit.Either {
		r.system = r.systemOf(fields)
	}
	pass(func(in *Input) bool { return in.Kind == Quantity && !in.Altitude })
	pass(func(in *Input) bool { return in.Kind == Series })
}

func (r *Run) readOne(i int, fields []Field) {
	in := &r.sheet.Inputs[i]
	if !r.asked(in) {
		return
	}
	field := find(fields, in.ID)
	if strings.TrimSpace(field.Text) == "" {
		if in.Default == "" {
			switch {
			case in.Optional:
			case in.Listed != "": // nothing was typed that a name could be close to
				r.problem(in, Missing, in.Label+" is missing: choose one from the list.")
			case in.Kind == Choice:
				r.problem(in, Missing, in.Label+" is missing: choose "+optionList(in)+".")
			default:
				r.problem(in, Missing, in.Label+" is missing: enter "+r.allowedBeside(in, field.Unit)+".")
			}
			return
		}
		field.Text, field.Unit = in.Default, ""
		r.parse(i, in, field, fields)
		return
	}
	r.parse(i, in, field, fields)
	r.values[i].typed = true
}

func (r *Run) parse(i int, in *Input, field Field, fields []Field) {
	switch in.Kind {
	case Choice:
		r.parseChoice(i, in, field)
	case Quantity:
		r.parseQuantity(i, in, field)
	case Series:
		rows, ok := r.parseSeries(in, field, find(fields, in.ID+".columns").Text)
		if ok {
			r.values[i] = value{given: true, series: rows, text: field.Text}
		}
	}
}

// asked reports whether an input applies, given the choices made.
func (r *Run) asked(in *Input) bool {
	for _, w := range in.When {
		if !contains(w.Is, r.Choice(w.Input)) {
			return false
		}
	}
	return true
}

func (r *Run) parseChoice(i int, in *Input, field Field) {
	folded := foldWord(field.Text)
	for _, o := range in.Options {
		if foldsTo(o.ID, folded) || foldsTo(o.Label, folded) {
			r.values[i] = value{given: true, choice: o.ID, text: o.Label}
			return
		}
		for _, a := range o.Aliases {
			if foldsTo(a, folded) {
				r.values[i] = value{given: true, choice: o.ID, text: o.Label}
				return
			}
		}
	}
	p := Problem{Input: in.ID, Code: UnknownChoice}
	most := 1
	if in.Listed != "" {
		most = 3
	}
	near := nearest(folded, in.Options, most)
	choose, names := "choose "+optionList(in), ""
	for i, o := range near {
		if i > 0 {
			names += ", "
		}
		names += o.Label
		p.Suggest = append(p.Suggest, Suggestion{Input: in.ID, Label: o.Label, Text: o.ID})
	}
	if in.Listed != "" && len(near) > 0 {
		choose = "close to it: " + names + "; " + in.Listed + " has them all"
	}
	p.Sentence = in.Label + ": “" + short(field.Text) + "” is not in the list; " + choose + "."
	r.answer.Problems = append(r.answer.Problems, p)
}

func (r *Run) parseQuantity(i int, in *Input, field Field) {
	given := short(field.Text)
	if in.Quantity.Calendar() {
		r.parseDate(i, in, given)
		return
	}
	n := unit.ParseNumber(field.Text)
	switch n.Trouble {
	case unit.NumberNone, unit.NumberBad:
		r.problem(in, NotANumber, in.Label+": “"+given+"” is not a number; enter "+r.allowedBeside(in, field.Unit)+".")
		return
	case unit.NumberUnbounded:
		r.problem(in, TooHigh, in.Label+": “"+given+"” is too large; enter "+r.allowedBeside(in, field.Unit)+".")
		return
	}
	u, ok := r.pickUnit(in, n.Rest, field)
	if !ok {
		return
	}
	if n.Trouble == unit.NumberTwoWays {
		r.askWhichNumber(in, field, n)
		return
	}
	si := u.ToSI(n.Value, r.env)
	if !r.withinBounds(in, u, si, given) {
		return
	}
	r.values[i] = value{given: true, number: si, unit: u, text: strings.TrimSpace(strings.TrimSuffix(given, n.Rest)) + "\u00a0" + u.Label}
	if in.Altitude {
		r.env.Atmosphere = AtmosphereAt(si)
	}
}

// parseDate reads a day of the calendar.
func (r *Run) parseDate(i int, in *Input, given string) {
	u := in.Quantity.SIUnit()
	day, rest, ok := unit.SplitDate(given)
	if !ok || rest != "" {
		r.problem(in, NotANumber, in.Label+": “"+given+"” is not a date; write year, month, day as in 2026-11-25.")
	} else if r.withinBounds(in, u, day, given) {
		r.values[i] = value{given: true, number: day, unit: u, text: given}
	}
}

// pickUnit finds the unit of a quantity: written after the number, chosen
// beside it, or the default of the person's family.
func (r *Run) pickUnit(in *Input, written string, field Field) (*unit.Unit, bool) {
	spelled := written
	if spelled == "" {
		spelled = field.Unit
	}
	if spelled == "" {
		return DefaultUnit(in.Quantity, in.Units, r.system), true
	}
	if u := in.Quantity.Unit(spelled); u != nil {
		return u, true
	}
	if v := in.Quantity.VagueUnit(spelled); v != nil {
		p := Problem{Input: in.ID, Code: VagueUnit, Sentence: in.Label + ": “" + short(field.Text) + "” does not say " + v.Ask +
			"; write " + strings.Join(v.Mean, " or ") + "."}
		number := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(field.Text), written))
		for _, id := range v.Mean {
			p.Suggest = append(p.Suggest, Suggestion{Input: in.ID, Label: number + " " + in.Quantity.Unit(id).Label, Text: number + " " + id})
		}
		r.answer.Problems = append(r.answer.Problems, p)
		return nil, false
	}
	r.problem(in, UnknownUnit, in.Label+": the unit “"+short(spelled)+"” is not known here; use "+unitList(in)+".")
	return nil, false
}

// askWhichNumber asks about a comma that may be decimal or thousands.
func (r *Run) askWhichNumber(in *Input, field Field, n unit.Number) {
	a, b := plainNumber(n.Ways[0]), plainNumber(n.Ways[1])
	tail := ""
	if n.Rest != "" {
		tail = " " + n.Rest
	}
	r.answer.Problems = append(r.answer.Problems, Problem{Input: in.ID, Code: TwoWays,
		Sentence: in.Label + ": “" + short(field.Text) + "” can mean " + a + " or " + b + "; choose one.",
		Suggest:  []Suggestion{{Input: in.ID, Label: a + tail, Text: a + tail}, {Input: in.ID, Label: b + tail, Text: b + tail}}})
}

func (r *Run) withinBounds(in *Input, u *unit.Unit, si float64, given string) bool {
	// A value typed at the very bound must pass after conversion there and back.
	slack := 1e-9 * math.Max(math.Abs(in.Low), math.Abs(in.High))
	low, high := !(si >= in.Low-slack), !(si <= in.High+slack)
	if u.Datum == unit.Suction {
		low, high = high, low // a deeper vacuum is a larger number
	}
	switch {
	case low:
		r.problem(in, TooLow, in.Label+": “"+given+"” is too low; enter "+allowedIn(in, u, r)+reason(in)+".")
	case high:
		r.problem(in, TooHigh, in.Label+": “"+given+"” is too high; enter "+allowedIn(in, u, r)+reason(in)+".")
	}
	return !low && !high
}

func (r *Run) problem(in *Input, code, sentence string) {
	r.answer.Problems = append(r.answer.Problems, Problem{Input: in.ID, Code: code, Sentence: sentence})
}

// systemOf guesses the family of units from those that were typed or chosen.
func (r *Run) systemOf(fields []Field) unit.System {
	for i := range r.sheet.Inputs {
		in := &r.sheet.Inputs[i]
		if in.Kind != Quantity {
			continue
		}
		f := find(fields, in.ID)
		spelled := unit.ParseNumber(f.Text).Rest
		if spelled == "" {
			spelled = f.Unit
		}
		if strings.TrimSpace(f.Text) == "" || spelled == "" {
			continue
		}
		if u := in.Quantity.Unit(spelled); u != nil && u.System != unit.Either {
			return u.System
		}
	}
	return unit.SI
}

func find(fields []Field, id string) Field {
	for _, f := range fields {
		if f.Input == id {
			return f
		}
	}
	return Field{}
}
