package catalog_test

import (
	"math/rand/v2"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/property/refrigerant"
)

// TestLeakNeverTight makes tests of systems with a known loss, reads them with
// the greatest errors that were stated, evenly spread, and looks at the verdict.
//
// Nothing may call a loss tight that is larger than what it says could hide,
// more often than the 2.3 % that lie outside k = 2 on one side (2.5 % are
// allowed for 2000 trials); and a tight system must not be called a leak more
// often than that.
func TestLeakNeverTight(t *testing.T) {
	n, _ := refrigerant.Lookup("R-728")
	random := rand.New(rand.NewPCG(7, 11))
	even := func(a float64) float64 { return a * (2*random.Float64() - 1) }
	const trials = 2000
	wrong, alarms, tight, sound := 0, 0, 0, 0
	for range trials {
		t1, t2 := 283.15+20*random.Float64(), 283.15+20*random.Float64()
		p1 := 1e6 + 3.2e6*random.Float64()
		class, off := []float64{0.05, 0.1, 0.25, 0.5}[random.IntN(4)], []float64{0.3, 0.5, 1}[random.IntN(3)]
		gauge := class / 100 * 6e6
		start, err := n.AtTP(t1, p1)
		if err != nil {
			t.Fatal(err)
		}
		// The true pressure at the end, from the density kept.
		p2 := p1 * t2 / t1
		for range 40 {
			s, err := n.AtTP(t2, p2)
			if err != nil {
				t.Fatal(err)
			}
			p2 *= start.Rho / s.Rho
		}
		loss := 0.0
		if random.IntN(2) == 0 {
			loss = 1e5 * random.Float64()
		}
		a := evaluate(catalog.StandingPressure, []calc.Field{
			{Input: "start-pressure", Text: number((p1-101325+even(gauge))/1e3) + " kPag"}, {Input: "start-temperature", Text: number(t1+even(off)) + " K"},
			{Input: "end-pressure", Text: number((p2-loss-101325+even(gauge))/1e3) + " kPag"}, {Input: "end-temperature", Text: number(t2+even(off)) + " K"},
			{Input: "hold", Text: "24 h"}, {Input: "gauge-class", Text: number(class) + " %"}, {Input: "gauge-range", Text: "60 barg"}, {Input: "temperature-error", Text: number(off) + " K"},
		})
		if len(a.Problems) > 0 {
			t.Fatal(a.Problems)
		}
		var hidden float64
		for _, o := range a.Outputs {
			if o.ID == "hidden" {
				hidden = o.Value
			}
		}
		leak := a.Verdict.ID == "leak" || a.Verdict.ID == "small-rise"
		switch {
		case loss == 0:
			sound++
			if leak {
				alarms++
			}
		case a.Verdict.ID == "tight":
			if loss > hidden {
				wrong++
			}
		}
		if a.Verdict.ID == "tight" {
			tight++
		}
	}
	t.Logf("%d trials: %d called tight, %d of them with a loss beyond the one named; %d of %d tight systems called a leak", trials, tight, wrong, alarms, sound)
	if !(float64(wrong) <= 0.025*float64(tight)) {
		t.Errorf("%d of %d called tight had lost more than could hide, want at most 2.5 %%", wrong, tight)
	}
	if !(float64(alarms) <= 0.025*float64(sound)) {
		t.Errorf("%d of %d tight systems were called a leak, want at most 2.5 %%", alarms, sound)
	}
	// A judge that never says tight would pass everything above.
	if !(float64(tight) >= 0.15*trials) {
		t.Errorf("only %d of %d were called tight", tight, trials)
	}
}
