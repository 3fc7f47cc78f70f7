package catalog_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/property/viscosity"
	"changeout/calc/source"
	"changeout/calc/unit"
)

// TestWorkingEndsInTheOutputs: the number shown large is the number that the
// working arrives at, word for word, and every line of working names a source
// that the worksheet declares.
func TestWorkingEndsInTheOutputs(t *testing.T) {
	for _, w := range catalog.All() {
		for _, fields := range runs(t, w) {
			a := evaluate(w, fields)
			for _, p := range a.Problems {
				t.Errorf("%s %v: %s", w.ID, fields, p.Sentence)
			}
			if s := sound(a); s != "" {
				t.Errorf("%s %v: %s", w.ID, fields, s)
			}
			for _, o := range a.Outputs {
				if !o.Main {
					continue
				}
				if !slices.ContainsFunc(a.Steps, func(s calc.Step) bool { return s.Value == o.Text }) {
					t.Errorf("%s %v: no line of working ends in %s = %s", w.ID, fields, o.ID, o.Text)
				}
			}
			if len(a.Steps) == 0 {
				t.Errorf("%s %v: no working", w.ID, fields)
			}
			for _, s := range a.Steps {
				if _, ok := source.Lookup(s.Cite.Key); !ok || !slices.Contains(w.Sources, s.Cite.Key) {
					t.Errorf("%s: step %q cites %q, which the worksheet does not declare or the bibliography does not hold", w.ID, s.Label, s.Cite.Key)
				}
			}
		}
	}
}

var powerOfTen = regexp.MustCompile(`× 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]`)

// TestFiguresReadPlainly: in both families of units no output of any published
// case, and no bound in any unit offered, asks a technician to read a power of
// ten; only units that the trade reads so, as leak rates, have them.
func TestFiguresReadPlainly(t *testing.T) {
	powers := 0
	for _, w := range catalog.All() {
		for _, fields := range runs(t, w) {
			for _, system := range []unit.System{unit.SI, unit.InchPound} {
				a := calc.Evaluate(w, calc.Request{Worksheet: w.ID, System: system, Fields: fields})
				for _, o := range a.Outputs {
					if !powerOfTen.MatchString(o.Text) {
						continue
					}
					if powers++; !strings.Contains(o.Text, "Pa·m³/s") && !strings.Contains(o.Text, "mbar·L/s") {
						t.Errorf("%s %v: %s reads %s", w.ID, fields, o.ID, o.Text)
					}
				}
			}
		}
		for i := range w.Inputs {
			in := &w.Inputs[i]
			if in.Kind != calc.Quantity {
				continue
			}
			for _, id := range unitsOf(in) {
				u, env := in.Quantity.Unit(id), unit.Env{Atmosphere: unit.StandardAtmosphere}
				if low, high := u.Limit(in.Low, env), u.Limit(in.High, env); powerOfTen.MatchString(low + high) {
					t.Errorf("%s %s: the bounds read %s to %s %s", w.ID, in.ID, low, high, id)
				}
			}
		}
	}
	if powers == 0 {
		t.Error("no leak rate was written with a power of ten: the test looked at nothing")
	}
}

// behind says what a declared source stands behind where no line of working
// and no published case cites it.
var behind = map[string]string{
	"easa43":          "the limit that leaves the polarisation index out",
	"practice-35":     "the caution against energising windings in a vacuum",
	"practice-96":     "the caution: keep a cylinder below 48 °C",
	"berkeley-energy": "the line of 100 kJ in the caution and the warning",
	"manual-44":       "one of the four charge tables behind the printed ranges",
	"manual-45":       "one of the four charge tables behind the printed ranges, extras for indoor units",
	"manual-46":       "one of the four charge tables behind the printed ranges, extras for branch boxes",
}

// TestNoSourceIsDecoration: a source that a worksheet lists is cited by a line
// of working in some run, or is the source of a published case, or is the
// equation of state of a refrigerant on offer, or one of the three special
// marks, or stands in the list above with what it is for.
func TestNoSourceIsDecoration(t *testing.T) {
	for _, w := range catalog.All() {
		used := map[string]bool{"common-practice": true, "makers-manual": true, "from-memory": true}
		for _, fields := range runs(t, w) {
			for _, s := range evaluate(w, fields).Steps {
				used[s.Cite.Key] = true
			}
		}
		for _, c := range cases(t, w) {
			used[c.Source] = true
		}
		if w.Input("refrigerant") != nil {
			used[viscosity.EstimateSource] = true
			for _, r := range catalog.Offered() {
				for _, key := range catalog.EquationKeys(r) {
					used[key] = true
				}
				if c := viscosity.Lookup(r.Name); c != nil {
					used[c.Source] = true
				}
			}
		}
		for _, key := range w.Sources {
			if !used[key] && behind[key] == "" {
				t.Errorf("%s: source %q is declared, but nothing in the worksheet rests on it", w.ID, key)
			}
		}
	}
}
