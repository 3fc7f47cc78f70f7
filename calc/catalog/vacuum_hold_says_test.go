package catalog_test

import (
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
)

const (
	flatHold = "0,300\n10,305\n20,310\n30,312\n40,315\n50,316\n60,318\n90,320\n150,322"
	holdRise = "leak-rise"
)

// holdText is all that an answer says, and whether it names a rate.
func holdText(a calc.Answer) (said string, rate bool) {
	said = strings.Join(append(append([]string{a.Verdict.Sentence}, a.Warnings...), a.Advice...), "\n")
	for _, s := range a.Steps {
		said += "\n" + s.Label + " " + s.Formula + " " + s.Value
	}
	for _, o := range a.Outputs {
		rate = rate || o.ID == holdRise
	}
	return strings.ReplaceAll(said, "\u00a0", " "), rate
}

// TestHoldWithoutAmbient: what was taken for a temperature that nobody entered
// is said, and nothing is called dry that ice could hide in.
func TestHoldWithoutAmbient(t *testing.T) {
	for _, c := range []struct {
		name, log, start, end, verdict string
		want                           []string
		not                            string
	}{
		{"none", flatHold, "", "", "undetermined", []string{"No ambient was entered: water is judged at 20.0 °C, and no temperature drift was taken off", "allows for a drift of 1.2 K",
			"ice is not ruled out", "Enter the ambient", "Gas temperature no ambient entered no drift taken off, 1.2 K allowed for"}, "break the vacuum with weighed"},
		{"one", flatHold, "21 C", "", "tight", []string{"One ambient was entered: 21.0 °C", "no temperature drift was taken off", "Gas temperature one ambient entered: 21.0 °C"}, "No ambient"},
		{"one in the log", strings.Replace(flatHold, "0,300\n", "0,300,21\n", 1), "", "", "tight", []string{"One ambient was entered: 21.0 °C"}, "No ambient"},
		{"both", flatHold, "21 C", "21 C", "tight", []string{"p ∝ T"}, "was entered"},
	} {
		a := evaluate(catalog.VacuumHold, []calc.Field{{Input: "log", Text: c.log}, {Input: "ambient-start", Text: c.start}, {Input: "ambient-end", Text: c.end}})
		if len(a.Problems) > 0 || a.Verdict == nil || a.Verdict.ID != c.verdict {
			t.Errorf("%s: got %v %+v, want %s", c.name, a.Problems, a.Verdict, c.verdict)
			continue
		}
		said, _ := holdText(a)
		for _, w := range c.want {
			if !strings.Contains(said, w) {
				t.Errorf("%s: %q is not said in\n%s", c.name, w, said)
			}
		}
		if strings.Contains(said, c.not) {
			t.Errorf("%s: %q must not be said in\n%s", c.name, c.not, said)
		}
	}
}

// TestHoldWithoutRows: no rate is named that one or two rows would have to
// show; what is missing is.
func TestHoldWithoutRows(t *testing.T) {
	for _, c := range []struct {
		name, log, want string
		rate            bool
	}{
		{"one row left", "0,300\n1,320 Pa\n2,340 pa\n3,335", "1 row over 0 min can be judged, of 4 entered; at least 8 rows over 30 min, isolated from the pump, are needed.", false},
		{"four rows", "0,300\n5,310\n10,315\n15,320", "4 rows over 15 min are too few to tell a curve from scatter: at least 8 rows are needed.", true},
	} {
		a := evaluate(catalog.VacuumHold, []calc.Field{{Input: "log", Text: c.log}, {Input: "ambient-start", Text: "20 C"}, {Input: "ambient-end", Text: "20 C"}, {Input: "volume", Text: "45 L"}})
		if len(a.Problems) > 0 || a.Verdict == nil || a.Verdict.ID != "undetermined" {
			t.Errorf("%s: got %v %+v, want undetermined", c.name, a.Problems, a.Verdict)
			continue
		}
		said, rate := holdText(a)
		if !strings.Contains(said, c.want) || rate != c.rate || strings.Contains(said, "1 rows") || (!c.rate && strings.Contains(said, "at most")) {
			t.Errorf("%s: a rate %v, want %v; said\n%s\nwant %q", c.name, rate, c.rate, said, c.want)
		}
	}
}
