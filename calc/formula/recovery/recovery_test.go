package recovery_test

import (
	"testing"

	"changeout/calc/formula/recovery"
	"changeout/calc/published/near"
)

// TestInches holds every cell of the table of 40 CFR 82.156, read in print.
func TestInches(t *testing.T) {
	for _, c := range []struct {
		class    recovery.Class
		large    bool
		old, now float64
	}{
		{recovery.VeryHigh, false, 0, 0}, {recovery.VeryHigh, true, 0, 0}, {recovery.High, false, 0, 0}, {recovery.High, true, 4, 10},
		{recovery.Medium, false, 4, 10}, {recovery.Medium, true, 4, 15},
	} {
		near.Value(t, "older machine", recovery.Inches(c.class, c.large, false), c.old, 0, "40 CFR 82.156 table 1")
		near.Value(t, "newer machine", recovery.Inches(c.class, c.large, true), c.now, 0, "40 CFR 82.156 table 1")
	}
	for _, large := range []bool{false, true} {
		p := recovery.Level(recovery.Inches(recovery.Low, large, true), 101325)
		near.Value(t, "low pressure, Pa", p, 3333, 1, "25 mm Hg absolute, 133.32 Pa each; 1 Pa for 3386.389 Pa against 25.4 × 133.322")
	}
}

func TestClassOf(t *testing.T) {
	const psi = 6894.757293168361
	for _, c := range []struct {
		psia float64
		want recovery.Class
	}{{45, recovery.Low}, {45.1, recovery.Medium}, {170, recovery.Medium}, {170.1, recovery.High}, {355, recovery.High}, {355.1, recovery.VeryHigh}} {
		if got := recovery.ClassOf(c.psia * psi * (1 - 1e-12)); got != c.want {
			t.Errorf("%v psi absolute: got class %d, want %d (40 CFR 82.152)", c.psia, got, c.want)
		}
	}
}

func TestNeeded(t *testing.T) {
	for _, c := range []struct {
		mass, room, each float64
		want             int
	}{{10, 10, 20, 1}, {10.01, 10, 20, 2}, {30, 10, 20, 2}, {30.1, 10, 20, 3}, {20, 0, 20, 1}, {0, 5, 20, 1}} {
		if got := recovery.Needed(c.mass, c.room, c.each); got != c.want {
			t.Errorf("%v kg into %v, then %v each: got %d, want %d (by hand)", c.mass, c.room, c.each, got, c.want)
		}
	}
}

// TestLiquidFull uses a straight line of density, whose answer is known.
func TestLiquidFull(t *testing.T) {
	line := func(T float64) (float64, bool) { return 2000 - 3*T, T < 400 }
	got, ok := recovery.LiquidFull(line, 1000, 250, 390)
	if !ok {
		t.Fatal("no answer on a straight line")
	}
	near.Value(t, "temperature", got, 1000.0/3, 0.005, "2000 − 3 T = 1000; bisection to 0.005 K")
	if got > 1000.0/3 {
		t.Errorf("got %v, want no more than %v: the cooler end is the safe one", got, 1000.0/3)
	}
	if _, ok := recovery.LiquidFull(line, 500, 250, 390); ok {
		t.Error("a density that is never reached gave an answer")
	}
	if _, ok := recovery.LiquidFull(line, 1000, 250, 410); ok {
		t.Error("an equation without an answer gave one")
	}
}
