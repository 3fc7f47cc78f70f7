package leakrate

import (
	"math"
	"testing"

	"changeout/calc/published/near"
)

// TestAnnualised: worked examples of public pages, each printed to the figure
// shown; half of the last digit.
func TestAnnualised(t *testing.T) {
	for _, c := range []struct {
		added, full, days, want, tolerance float64
		source                             string
	}{
		{3, 50, 60, 36.5, 0.05, "leak-rate-examples: 3 lb of 50 lb in 60 days"},
		{2, 50, 30, 48.7, 0.05, "leak-rate-examples: 2 lb of 50 lb in 30 days"},
		{10, 100, 180, 20.27, 0.015, "leak-rate-examples: 10 lb of 100 lb in 180 days; cut, not rounded"},
		{5, 100, 365.0 / 12, 60, 1e-9, "achrleak: 5 lb of 100 lb in a month"},
		{10, 100, 400, 10, 1e-12, "the days count at most 365"},
	} {
		near.Value(t, c.source, 100*Annualised(c.added, c.full, c.days), c.want, c.tolerance, c.source)
	}
}

func TestRolling(t *testing.T) {
	losses := []Loss{{-1, 50}, {0, 4}, {100, 6}, {365, 7}, {366, 9}}
	near.Value(t, "365 days, both ends in", Rolling(losses, 100, 365, math.Inf(-1)), 0.17, 1e-12, "study608: sum over the past 365 days")
	near.Value(t, "after a test", Rolling(losses, 100, 365, 100), 0.07, 1e-12, "study608: since the successful test")
}

// TestLosses: hand arithmetic.
func TestLosses(t *testing.T) {
	losses, offset := Losses([]Visit{{40, 42, 0}, {100, 2, 0}, {100, 1, 0}, {35, 0, 38}, {200, 0, 5}, {231, 5, 0}, {300, 0, 0}})
	want := []Loss{{40, 4}, {100, 3}, {231, 5}}
	if len(losses) != len(want) {
		t.Fatalf("got %v, want %v", losses, want)
	}
	for i := range want {
		near.Value(t, "day", losses[i].Day, want[i].Day, 1e-12, "sorted, joined by day")
		near.Value(t, "loss", losses[i].Mass, want[i].Mass, 1e-12, "42 − 38; 2 + 1; 31 days later nothing is taken off")
	}
	near.Value(t, "taken off", offset, 38, 1e-12, "38 kg recovered 5 days before")
}

func TestMonths(t *testing.T) {
	for _, c := range []struct {
		amount    float64
		detection bool
		want      int
	}{{4.99, false, 0}, {5, false, 12}, {49.9, false, 12}, {50, false, 6}, {499, true, 12}, {500, false, 3}, {500, true, 6}, {5, true, 24}, {math.NaN(), false, 0}} {
		if got := Months(c.amount, 5, c.detection); got != c.want {
			t.Errorf("%v t, detection %v: got %d months, want %d (eu573, article 5)", c.amount, c.detection, got, c.want)
		}
	}
}
