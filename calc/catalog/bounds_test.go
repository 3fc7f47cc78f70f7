package catalog_test

import (
	"math"
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/unit"
)

// onePerInput calls f with every quantity input and one run that enters it.
func onePerInput(t *testing.T, f func(w *calc.Worksheet, in *calc.Input, fields []calc.Field)) {
	for _, w := range catalog.All() {
		for i := range w.Inputs {
			in := &w.Inputs[i]
			if in.Kind != calc.Quantity || in.Quantity.Calendar() { // a date has one way to be written
				continue
			}
			for _, fields := range runs(t, w) {
				if _, ok := textOf(fields, in.ID); ok {
					f(w, in, fields)
					break
				}
			}
		}
	}
}

func unitsOf(in *calc.Input) []string {
	if len(in.Units) > 0 {
		return in.Units
	}
	var ids []string
	for i := range in.Quantity.Units {
		ids = append(ids, in.Quantity.Units[i].ID)
	}
	return ids
}

// codeFor returns the code of the first problem that belongs to an input.
func codeFor(a calc.Answer, input string) string {
	for _, p := range a.Problems {
		if p.Input == input {
			return p.Code
		}
	}
	return ""
}

// TestBoundsInEveryUnit: at each bound there is an answer or a sentence of the
// worksheet, and just outside it the door says too low or too high. The step
// outside is 1e-6 of the bound: a thousand times the slack for conversions.
func TestBoundsInEveryUnit(t *testing.T) {
	onePerInput(t, func(w *calc.Worksheet, in *calc.Input, fields []calc.Field) {
		env := envOf(fields)
		size := math.Max(math.Abs(in.Low), math.Abs(in.High))
		for _, id := range unitsOf(in) {
			u := in.Quantity.Unit(id)
			for _, c := range []struct {
				si   float64
				code string
			}{{in.Low, ""}, {in.High, ""}, {in.Low - 1e-6*size, calc.TooLow}, {in.High + 1e-6*size, calc.TooHigh}} {
				if in.Altitude { // a gauge reading elsewhere keeps its place
					env.Atmosphere = calc.AtmosphereAt(c.si)
				}
				want := c.code
				if u.Datum == unit.Suction && want != "" {
					want = map[string]string{calc.TooLow: calc.TooHigh, calc.TooHigh: calc.TooLow}[want]
				}
				text := number(u.FromSI(c.si, env)) + " " + u.ID
				a := evaluate(w, with(fields, calc.Field{Input: in.ID, Text: text}))
				got := codeFor(a, in.ID)
				doored := got == calc.TooLow || got == calc.TooHigh
				// A worksheet may refuse with the same code for a reason of its own; only its sentence differs.
				if (want != "" && got != want) || (want == "" && doored && saysBound(a, in)) {
					t.Errorf("%s %s = %s: got code %q (%v), want %q", w.ID, in.ID, text, got, a.Problems, want)
				}
				if s := sound(a); s != "" {
					t.Errorf("%s %s = %s: %s", w.ID, in.ID, text, s)
				}
			}
		}
	})
}

// TestBoundsAsWritten: the bounds that a sentence names are let in themselves,
// in every unit, so that nobody is sent to a value that is refused.
func TestBoundsAsWritten(t *testing.T) {
	onePerInput(t, func(w *calc.Worksheet, in *calc.Input, fields []calc.Field) {
		for _, id := range unitsOf(in) {
			u := in.Quantity.Unit(id)
			env := envOf(fields)
			if in.Altitude {
				env.Atmosphere = unit.StandardAtmosphere
			}
			low, high, ok := strings.Cut(strings.TrimSuffix(u.Range(in.Low, in.High, env), "\u00a0"+u.Label), " to ")
			a, b := unit.ParseNumber(low), unit.ParseNumber(high)
			if !ok || a.Trouble != unit.NumberFine || b.Trouble != unit.NumberFine || !(a.Value < b.Value) {
				t.Errorf("%s %s in %s: the range is written %q to %q", w.ID, in.ID, id, low, high)
			}
			for _, v := range []float64{a.Value, b.Value} {
				answer := evaluate(w, with(fields, calc.Field{Input: in.ID, Text: number(v) + " " + id}))
				if code := codeFor(answer, in.ID); (code == calc.TooLow || code == calc.TooHigh) && saysBound(answer, in) {
					t.Errorf("%s %s: %v %s is named as a bound and refused", w.ID, in.ID, v, id)
				}
			}
		}
	})
}

// TestDifferenceFollowsItsTemperature: beside a dew point in °F stands a
// superheat in °F, in whichever family the form was.
func TestDifferenceFollowsItsTemperature(t *testing.T) {
	for entered, want := range map[string]string{"60 F": "°F", "16 C": "K"} {
		for _, system := range []unit.System{unit.SI, unit.InchPound} {
			a := calc.Evaluate(catalog.Saturation, calc.Request{System: system, Fields: []calc.Field{{Input: "refrigerant", Text: "R-410A"}, {Input: "pressure", Text: "120 psig"}, {Input: "line-temperature", Text: entered}}})
			found := false
			for _, o := range a.Outputs {
				if o.ID == "superheat" || o.ID == "glide" {
					found = true
					if !strings.HasSuffix(o.Text, "\u00a0"+want) {
						t.Errorf("line at %s, system %q: %s is %s, want it in %s", entered, system, o.ID, o.Text, want)
					}
				}
			}
			if !found {
				t.Errorf("no difference came out: %v", a.Problems)
			}
		}
	}
}

// saysBound reports whether the door itself refused: its sentence quotes what
// was typed.
func saysBound(a calc.Answer, in *calc.Input) bool {
	for _, p := range a.Problems {
		if p.Input == in.ID && len(p.Sentence) > len(in.Label)+5 && p.Sentence[len(in.Label):len(in.Label)+5] == ": “" {
			return true
		}
	}
	return false
}

// TestEveryUnitGivesTheSameAnswer: the same value in another unit, typed or
// chosen beside it, changes nothing in SI. 1e-9 relative covers conversions
// there and back and the solvers' last digits; a fitted hold needs 1e-6.
func TestEveryUnitGivesTheSameAnswer(t *testing.T) {
	onePerInput(t, func(w *calc.Worksheet, in *calc.Input, fields []calc.Field) {
		text, _ := textOf(fields, in.ID)
		n := unit.ParseNumber(text)
		u := in.Quantity.Unit(n.Rest)
		if u == nil {
			t.Errorf("%s %s = %q: the example should carry a unit", w.ID, in.ID, text)
			return
		}
		env := envOf(fields)
		si := u.ToSI(n.Value, env)
		base := evaluate(w, fields)
		for _, id := range unitsOf(in) {
			v := in.Quantity.Unit(id)
			bare := number(v.FromSI(si, env))
			for _, f := range []calc.Field{{Input: in.ID, Text: bare + " " + id}, {Input: in.ID, Text: bare, Unit: id}} {
				sameAnswer(t, w, base, evaluate(w, with(fields, f)), w.ID+" "+in.ID+" = "+f.Text+" "+f.Unit)
			}
		}
	})
}

func sameAnswer(t *testing.T, w *calc.Worksheet, want, got calc.Answer, what string) {
	t.Helper()
	relative := 1e-9
	if w == catalog.VacuumHold {
		relative = 1e-6
	}
	if len(got.Outputs) != len(want.Outputs) || (got.Verdict == nil) != (want.Verdict == nil) {
		t.Errorf("%s: got outputs %v problems %v, want outputs %v", what, got.Outputs, got.Problems, want.Outputs)
		return
	}
	for i, o := range got.Outputs {
		tolerance := relative * math.Max(1, math.Abs(want.Outputs[i].Value))
		if d := o.Value - want.Outputs[i].Value; o.ID != want.Outputs[i].ID || !(math.Abs(d) <= tolerance) {
			t.Errorf("%s: %s: got %v, want %v, difference %g, tolerance %g (the same input in another unit)", what, o.ID, o.Value, want.Outputs[i].Value, d, tolerance)
		}
	}
	if got.Verdict != nil && got.Verdict.ID != want.Verdict.ID {
		t.Errorf("%s: verdict %s, want %s", what, got.Verdict.ID, want.Verdict.ID)
	}
}
