package catalog_test

import (
	"math"
	"os"
	"strconv"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/published"
	"changeout/calc/source"
)

// cases loads the published values of a worksheet.
func cases(t testing.TB, w *calc.Worksheet) []published.Case {
	t.Helper()
	list, err := published.Load(os.DirFS("../../testdata/published"), w.ID)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// TestPublishedValues holds every worksheet against its check values. A
// failure names got, want, difference, tolerance and source.
func TestPublishedValues(t *testing.T) {
	for _, w := range catalog.All() {
		passed := 0
		for _, c := range cases(t, w) {
			r := published.Check(w, c, calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: c.Inputs}))
			if !r.OK {
				t.Errorf("%s: %s", w.ID, r.Why)
				continue
			}
			passed++
		}
		t.Logf("%s: %d published values met", w.ID, passed)
	}
}

// TestPublishedRowsAreSound: each row can fail, and says where it comes from.
func TestPublishedRowsAreSound(t *testing.T) {
	reads := map[string]bool{"print": true, "secondary": true, "library": true, "memory": true, "practice": true, "computed": true}
	for _, w := range catalog.All() {
		for _, c := range cases(t, w) {
			where := c.File + ":" + strconv.Itoa(c.Line) + " " + c.Name
			if _, ok := source.Lookup(c.Source); !ok {
				t.Errorf("%s: source %q is not in the bibliography", where, c.Source)
			}
			if !reads[c.Read] || c.Locator == "" || c.Name == "" || len(c.Inputs) == 0 {
				t.Errorf("%s: read %q, locator %q: say how it was read and where", where, c.Read, c.Locator)
			}
			switch c.Output {
			case "problem":
				if c.Expected == "" || c.Unit != "" || c.Tolerance != 0 {
					t.Errorf("%s: a problem row has a code and neither unit nor tolerance", where)
				}
			case "verdict":
				if w.Verdict(c.Expected) == nil || c.Unit != "" || c.Tolerance != 0 {
					t.Errorf("%s: verdict %q is not declared, or the row has a unit or a tolerance", where, c.Expected)
				}
			default:
				out := w.Output(c.Output)
				if out == nil || out.Quantity.Unit(c.Unit) == nil {
					t.Errorf("%s: output %q in %q is not declared", where, c.Output, c.Unit)
					continue
				}
				want, err := strconv.ParseFloat(c.Expected, 64)
				if err != nil || math.IsNaN(want) || math.IsInf(want, 0) || !(c.Tolerance > 0) {
					t.Errorf("%s: expected %q within %g: a number and a tolerance above zero are needed", where, c.Expected, c.Tolerance)
				}
			}
		}
	}
}

// TestEveryOutputAndVerdictIsChecked: nothing that a worksheet can show goes
// without a case, and at least three cases come from outside.
func TestEveryOutputAndVerdictIsChecked(t *testing.T) {
	outside := map[string]bool{"print": true, "secondary": true, "library": true, "memory": true}
	for _, w := range catalog.All() {
		outputs, verdicts, fromOutside := map[string]int{}, map[string]int{}, 0
		for _, c := range cases(t, w) {
			outputs[c.Output]++
			if c.Output == "verdict" {
				verdicts[c.Expected]++
			}
			if outside[c.Read] {
				fromOutside++
			}
		}
		for _, o := range w.Outputs {
			if outputs[o.ID] == 0 {
				t.Errorf("%s: no published value for output %s", w.ID, o.ID)
			}
		}
		for _, v := range w.Verdicts {
			if verdicts[v.ID] == 0 {
				t.Errorf("%s: no case for verdict %s", w.ID, v.ID)
			}
		}
		if outputs["problem"] == 0 {
			t.Errorf("%s: no case for a refusal", w.ID)
		}
		if fromOutside < 3 {
			t.Errorf("%s: %d cases from outside, want at least 3", w.ID, fromOutside)
		}
	}
}
