package purge_test

import (
	"math"
	"testing"

	"changeout/calc/formula/purge"
)

func TestPurge(t *testing.T) {
	for _, c := range []struct {
		what                 string
		got, want, tolerance float64
		source               string
	}{
		{"1 m of 10 mm bore, m³", purge.Volume(0.01, 1), 7.853982e-5, 1e-11, "π/4 × 10⁻⁴, by hand"},
		{"time, s", purge.Time(5, 0.016, 20e-3/60), 240, 1e-9, "5 × 16 L ÷ 20 L/min = 4 min"},
		{"no purge", purge.Remaining(0), purge.Air, 0, "air"},
		{"five volumes", purge.Remaining(5), 0.2095 * 0.006737947, 1e-9, "e⁻⁵ from a table"},
		{"half the room", purge.Room(5, 10), 0.10475, 1e-12, "half of 20.95 %"},
		{"more than the room", purge.Room(20, 10), 0, 0, "never below zero"},
	} {
		if d := math.Abs(c.got - c.want); !(d <= c.tolerance) {
			t.Errorf("%s: got %v, want %v, difference %g, tolerance %g (%s)", c.what, c.got, c.want, d, c.tolerance, c.source)
		}
	}
}
