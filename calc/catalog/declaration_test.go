package catalog_test

import (
	"math"
	"regexp"
	"sort"
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/source"
	"changeout/calc/unit"
)

var idShape = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

// idList reports ids that are misshapen or occur twice.
func idList(t *testing.T, where string, ids []string) {
	t.Helper()
	seen := map[string]bool{}
	for _, id := range ids {
		if !idShape.MatchString(id) {
			t.Errorf("%s: id %q, want lower-case words joined by hyphens", where, id)
		}
		if seen[id] {
			t.Errorf("%s: id %q occurs twice", where, id)
		}
		seen[id] = true
	}
}

func TestDeclarations(t *testing.T) {
	var ids []string
	for _, w := range catalog.All() {
		ids = append(ids, w.ID)
		if catalog.Lookup(w.ID) != w {
			t.Errorf("Lookup(%q) finds another worksheet", w.ID)
		}
		if w.Title == "" || w.Purpose == "" || w.Compute == nil || len(w.Inputs) == 0 || len(w.Outputs) == 0 || len(w.Limits) == 0 || len(w.Cautions) == 0 || len(w.Example) == 0 {
			t.Errorf("%s: title, purpose, compute, inputs, outputs, limits, cautions and an example are needed", w.ID)
		}
		var in, out, verdicts, labels []string
		for i := range w.Inputs {
			in = append(in, w.Inputs[i].ID)
			labels = append(labels, w.Inputs[i].Label)
			checkInput(t, w, i)
		}
		idList(t, w.ID+" inputs", in)
		sort.Strings(labels)
		for i := 1; i < len(labels); i++ {
			if labels[i] == labels[i-1] && !exclusive(w, labels[i]) {
				t.Errorf("%s: two inputs that can stand together are labelled %q", w.ID, labels[i])
			}
		}
		for _, o := range w.Outputs {
			out = append(out, o.ID)
			if o.Label == "" || o.Quantity == nil {
				t.Errorf("%s %s: label and quantity are needed", w.ID, o.ID)
				continue
			}
			checkUnits(t, w.ID+" "+o.ID, o.Quantity, o.Units)
		}
		idList(t, w.ID+" outputs", out)
		for _, v := range w.Verdicts {
			verdicts = append(verdicts, v.ID)
			if v.Title == "" || !strings.Contains("good stop doubt info", string(v.Tone)) || v.Tone == "" {
				t.Errorf("%s verdict %s: title %q, tone %q", w.ID, v.ID, v.Title, v.Tone)
			}
			for _, id := range v.Main {
				if w.Output(id) == nil {
					t.Errorf("%s verdict %s: %q is no output", w.ID, v.ID, id)
				}
			}
		}
		idList(t, w.ID+" verdicts", verdicts)
		for _, c := range w.Cautions {
			if !strings.Contains("DANGER WARNING CAUTION NOTICE", c.Signal) || c.Signal == "" || c.Hazard == "" || c.Consequence == "" || c.Avoid == "" {
				t.Errorf("%s: caution %+v needs a signal word and three parts", w.ID, c)
			}
		}
	}
	idList(t, "worksheets", ids)
	if a := catalog.Unknown("saturate"); len(a.Problems) != 1 || a.Problems[0].Code != calc.UnknownWorksheet || !strings.Contains(a.Problems[0].Sentence, "“saturate”") {
		t.Errorf("Unknown: got %+v", a)
	}
}

func checkUnits(t *testing.T, where string, q *unit.Quantity, offered []string) {
	t.Helper()
	for _, id := range offered {
		if u := q.Unit(id); u == nil || u.ID != id {
			t.Errorf("%s: unit %q is not one of %s", where, id, q.ID)
		}
	}
	for _, system := range []unit.System{unit.SI, unit.InchPound} {
		if calc.DefaultUnit(q, offered, system) == nil {
			t.Errorf("%s: no default unit for %q", where, system)
		}
	}
}

func checkInput(t *testing.T, w *calc.Worksheet, i int) {
	t.Helper()
	in := &w.Inputs[i]
	where := w.ID + " " + in.ID
	if in.Label == "" {
		t.Errorf("%s: no label", where)
	}
	for _, when := range in.When {
		// A condition is read from a choice that stands before it, so the form asks in that order.
		var on *calc.Input
		for k := range i {
			if w.Inputs[k].ID == when.Input && w.Inputs[k].Kind == calc.Choice {
				on = &w.Inputs[k]
			}
		}
		if on == nil || len(when.Is) == 0 {
			t.Errorf("%s: condition on %q, which is no choice before it", where, when.Input)
			continue
		}
		for _, is := range when.Is {
			if !hasOption(on, is) {
				t.Errorf("%s: condition on %s being %q, which is no option", where, when.Input, is)
			}
		}
	}
	switch in.Kind {
	case calc.Quantity:
		if in.Quantity == nil || !(in.Low < in.High) || math.IsInf(in.Low, 0) || math.IsInf(in.High, 0) {
			t.Errorf("%s: quantity and bounds are needed: %v to %v", where, in.Low, in.High)
			return
		}
		if in.BoundReason == "" {
			t.Errorf("%s: the bounds give no reason", where)
		}
		checkUnits(t, where, in.Quantity, in.Units)
	case calc.Choice:
		if (len(in.Options) > 20) != (in.Listed != "") {
			t.Errorf("%s: %d options, and a place that lists them %q; a long list needs one, a short one is said in full", where, len(in.Options), in.Listed)
		}
		seen := map[string]string{}
		for _, o := range in.Options {
			if o.ID == "" || o.Label == "" {
				t.Errorf("%s: option %+v", where, o)
			}
			for _, s := range append([]string{o.ID, o.Label}, o.Aliases...) {
				f := strings.ToLower(strings.NewReplacer("-", "", " ", "", "(", "", ")", "", ",", "").Replace(s))
				if owner, ok := seen[f]; ok && owner != o.ID {
					t.Errorf("%s: %q means both %s and %s", where, s, owner, o.ID)
				}
				seen[f] = o.ID
			}
		}
		if in.Default != "" && !hasOption(in, in.Default) {
			t.Errorf("%s: default %q is no option", where, in.Default)
		}
	case calc.Series:
		var ids []string
		for _, c := range in.Columns {
			ids = append(ids, c.ID)
			if c.Label == "" || c.Quantity == nil || len(c.Units) == 0 || !(c.Low < c.High) {
				t.Errorf("%s column %s: label, quantity, units and bounds are needed", where, c.ID)
				continue
			}
			checkUnits(t, where+" column "+c.ID, c.Quantity, c.Units)
			for _, n := range c.Names {
				if n != strings.ToLower(n) {
					t.Errorf("%s column %s: name %q is not folded to lower case", where, c.ID, n)
				}
			}
		}
		idList(t, where+" columns", ids)
		if in.MinRows < 1 || in.MaxRows < in.MinRows {
			t.Errorf("%s: %d to %d rows", where, in.MinRows, in.MaxRows)
		}
	default:
		t.Errorf("%s: kind %q", where, in.Kind)
	}
}

func hasOption(in *calc.Input, id string) bool {
	for _, o := range in.Options {
		if o.ID == id {
			return true
		}
	}
	return false
}

// TestDefaultsAreInside: a default is text like any other; it must pass the
// door it goes through, in every family of units.
func TestDefaultsAreInside(t *testing.T) {
	for _, w := range catalog.All() {
		for i := range w.Inputs {
			in := &w.Inputs[i]
			if in.Default == "" || in.Kind != calc.Quantity {
				continue
			}
			n := unit.ParseNumber(in.Default)
			u := in.Quantity.Unit(n.Rest)
			if n.Trouble != unit.NumberFine || n.Rest == "" || u == nil {
				t.Errorf("%s %s: default %q needs a number and a unit", w.ID, in.ID, in.Default)
				continue
			}
			if si := u.ToSI(n.Value, unit.Env{Atmosphere: unit.StandardAtmosphere}); !(si >= in.Low && si <= in.High) {
				t.Errorf("%s %s: default %q is %v SI, want %v to %v", w.ID, in.ID, in.Default, si, in.Low, in.High)
			}
		}
	}
}

// TestExamplesRun: the worked example that the handbook prints has answers,
// working, and nothing to put right, in both families of units.
func TestExamplesRun(t *testing.T) {
	for _, w := range catalog.All() {
		for _, system := range []unit.System{unit.Either, unit.SI, unit.InchPound} {
			a := calc.Evaluate(w, calc.Request{Worksheet: w.ID, System: system, Fields: w.Example})
			for _, p := range a.Problems {
				t.Errorf("%s example: %s: %s", w.ID, p.Code, p.Sentence)
			}
			if len(a.Outputs) == 0 || len(a.Steps) == 0 || (len(w.Verdicts) > 0 && a.Verdict == nil) {
				t.Errorf("%s example: %d outputs, %d steps, verdict %v", w.ID, len(a.Outputs), len(a.Steps), a.Verdict)
			}
		}
	}
}

// TestSourcesAreKnown: every key that a worksheet declares is in the
// bibliography, once.
func TestSourcesAreKnown(t *testing.T) {
	for _, w := range catalog.All() {
		seen := map[string]bool{}
		for _, key := range w.Sources {
			if _, ok := source.Lookup(key); !ok {
				t.Errorf("%s: source %q is not in the bibliography", w.ID, key)
			}
			if seen[key] {
				t.Errorf("%s: source %q is declared twice", w.ID, key)
			}
			seen[key] = true
		}
	}
}

// exclusive reports whether the inputs with a label are never asked together.
func exclusive(w *calc.Worksheet, label string) bool {
	asked := map[string]int{}
	for _, in := range w.Inputs {
		if in.Label == label {
			if len(in.When) == 0 {
				return false
			}
			for _, v := range in.When[0].Is {
				asked[in.When[0].Input+"="+v]++
			}
		}
	}
	for _, n := range asked {
		if n > 1 {
			return false
		}
	}
	return true
}
