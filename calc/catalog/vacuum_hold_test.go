package catalog_test

import (
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
)

// TestNoVolumeNoLeakRate: what is not known must not look like a zero.
func TestNoVolumeNoLeakRate(t *testing.T) {
	for _, fields := range runs(t, catalog.VacuumHold) {
		_, known := textOf(fields, "volume")
		a := evaluate(catalog.VacuumHold, fields)
		for _, o := range a.Outputs {
			if (o.ID == "leak-rate" || o.ID == "leak-rate-high") && !known {
				t.Errorf("%v: %s = %s without a volume", fields, o.ID, o.Text)
			}
		}
	}
}

// TestLeakRateIsRiseTimesVolume: Q = V dp/dt. Exact but for rounding.
func TestLeakRateIsRiseTimesVolume(t *testing.T) {
	a := evaluate(catalog.VacuumHold, []calc.Field{{Input: "log", Text: "0 380 / 5 680 / 10 980 / 15 1280 / 20 1580 / 25 1880 / 30 2180"}, {Input: "ambient-start", Text: "20 C"},
		{Input: "ambient-end", Text: "20 C"}, {Input: "volume", Text: "45 L"}})
	value := map[string]float64{}
	for _, o := range a.Outputs {
		value[o.ID] = o.Value
	}
	for _, c := range [][2]string{{"leak-rate", "leak-rise"}, {"leak-rate-high", "leak-rise-high"}} {
		got, want := value[c[0]], value[c[1]]*0.045
		if d := got - want; !(d <= 1e-12*want && d >= -1e-12*want) || !(want > 0) {
			t.Errorf("%s: got %g, want %g = %s × 0.045 m³, difference %g, tolerance %g", c[0], got, want, c[1], d, 1e-12*want)
		}
	}
}

// TestUndeterminedDoesNotContradictItself: a short hold whose bound is under
// the accepted rise is not said to allow more than that.
func TestUndeterminedDoesNotContradictItself(t *testing.T) {
	a := evaluate(catalog.VacuumHold, []calc.Field{{Input: "log", Text: "0 480 / 1 500 / 2 510 / 4 515 / 6 516 / 8 516 / 10 516"}, {Input: "leak-limit", Text: "100 micron/min"},
		{Input: "ambient-start", Text: "20 C"}, {Input: "ambient-end", Text: "20 C"}})
	if a.Verdict == nil || a.Verdict.ID != "undetermined" {
		t.Fatalf("got %+v, want undetermined: ten minutes do not prove a system tight", a.Verdict)
	}
	if s := a.Verdict.Sentence; !strings.Contains(s, "below the accepted") {
		t.Errorf("sentence %q", s)
	}
	for _, s := range a.Warnings {
		if strings.Contains(s, "still allows a rise above the accepted") {
			t.Errorf("warning %q, but the bound is below the accepted rise", s)
		}
	}
}
