package cycle

import (
	"math"
	"math/rand/v2"
	"testing"

	"changeout/calc/property/refrigerant"
	"changeout/calc/published/near"
)

func lookup(t *testing.T, name string) *refrigerant.Refrigerant {
	t.Helper()
	r, ok := refrigerant.Lookup(name)
	if !ok {
		t.Fatalf("no %s", name)
	}
	return r
}

func TestDefinitions(t *testing.T) {
	near.Value(t, "superheat", Superheat(283.15, 278.15), 5, 1e-12, "by definition")
	near.Value(t, "subcooling", Subcooling(313.15, 308.15), 5, 1e-12, "by definition")
	near.Value(t, "mid-point", MidPoint(277.59, 283.59), 280.59, 1e-9, "practice-79")
	near.Value(t, "ratio", Ratio(800e3, 140e3), 40.0/7, 1e-12, "cengel-boles, 800 ÷ 140")
	// The textbook's own enthalpies, kJ/kg, recalled: 37.85 ÷ 40.33. Exact arithmetic, printed to 0.1 %.
	eta, ok := Efficiency(246.36, 284.21, 286.69)
	if near.Value(t, "efficiency", eta, 0.939, 0.0005, "cengel-boles, example of an actual cycle"); !ok {
		t.Error("efficiency: not given")
	}
	for _, h := range [][3]float64{{250, 280, 250}, {250, 280, 240}, {250, 240, 290}, {250, 280, math.NaN()}, {math.NaN(), 280, 290}} {
		if eta, ok := Efficiency(h[0], h[1], h[2]); ok {
			t.Errorf("efficiency of %v: got %v, want none", h, eta)
		}
	}
}

// TestPlaceInBand: at and around both ends of a band, with an error of 1 K. A
// strict end allows nothing outward, and warns inward like any other.
func TestPlaceInBand(t *testing.T) {
	soft, strict := Band{Low: 2, High: 8}, Band{Low: 2, High: 8, StrictLow: true, StrictHigh: true}
	for _, c := range []struct {
		v            float64
		soft, strict Place
	}{
		{0.99, Below, Below}, {1, AtLow, Below}, {1.99, AtLow, Below}, {2, AtLow, AtLow}, {2.99, AtLow, AtLow}, {3, Inside, Inside},
		{5, Inside, Inside}, {7, Inside, Inside}, {7.01, AtHigh, AtHigh}, {8, AtHigh, AtHigh}, {8.01, AtHigh, Above}, {9, AtHigh, Above}, {9.01, Above, Above},
	} {
		if got := soft.Place(c.v, 1); got != c.soft {
			t.Errorf("soft band 2 to 8, reading %v ± 1: got place %v, want %v", c.v, got, c.soft)
		}
		if got := strict.Place(c.v, 1); got != c.strict {
			t.Errorf("strict band 2 to 8, reading %v ± 1: got place %v, want %v", c.v, got, c.strict)
		}
	}
}

// TestErrorNeverExcuses: whatever the error, a reading outside a strict end
// stays outside, and no reading outside a band is ever called inside it.
func TestErrorNeverExcuses(t *testing.T) {
	for name, b := range map[string]Band{"suction superheat": SuctionSuperheat, "discharge superheat": DischargeSuperheat, "subcooling": SubcoolingUsual,
		"evaporating": EvaporatingCooling, "condensing": CondensingOverAir, "air": IndoorAirChange} {
		for e := 0.0; e <= 3; e += 0.25 {
			for v := b.Low - 6; v <= b.High+6; v += 0.125 {
				got := b.Place(v, e)
				if b.StrictLow && v < b.Low && got != Below || b.StrictHigh && v > b.High && got != Above || got == Inside && (v < b.Low || v > b.High) {
					t.Errorf("%s: %v K with an error of %v K: got place %v", name, v, e, got)
				}
			}
		}
	}
	if !SuctionSuperheat.StrictLow || !DischargeSuperheat.StrictLow || !EvaporatingCooling.StrictLow || !DischargeSuperheat.StrictHigh {
		t.Error("liquid that returns and a hot discharge must have strict ends")
	}
}

// TestIdealCompression: entropy is kept, the gas is hotter, and an enthalpy
// rise is at least v dp over the way: dh = v dp along an isentrope, integrated
// by Simpson's rule over 40 steps (its error is below 1e-6 of the rise).
func TestIdealCompression(t *testing.T) {
	for _, name := range []string{"R-22", "R-32", "R-134a", "R-290", "R-410A", "R-407C", "R-454B"} {
		r := lookup(t, name)
		d, err := r.DewAtT(278.15)
		if err != nil {
			t.Fatal(err)
		}
		q, dry, err := Suction(r, d.T+8, d.P)
		if err != nil || !dry {
			t.Fatalf("%s: suction %v, dry %v", name, err, dry)
		}
		p2 := 2.8 * d.P
		const steps = 40
		sum := 0.0
		var last refrigerant.Properties
		for i := range steps + 1 {
			// Equal steps of ln p: dh = v p d(ln p).
			p := d.P * math.Pow(p2/d.P, float64(i)/steps)
			s, err := Ideal(r, q, p)
			if err != nil {
				t.Fatalf("%s at %v Pa: %v", name, p, err)
			}
			weight := 2.0 + 2*float64(i%2)
			if i == 0 || i == steps {
				weight = 1
			}
			sum += weight * p / s.Rho
			last = s
		}
		work := sum * math.Log(p2/d.P) / steps / 3
		near.Value(t, name+" work of an ideal compression", last.Enthalpy-q.Enthalpy, work, 1e-6*work, "dh = v dp at constant entropy")
		near.Value(t, name+" entropy", last.Entropy, q.Entropy, 1e-6, "isentropic")
		if !(last.T > q.T) {
			t.Errorf("%s: %v K after compression of %v K", name, last.T, q.T)
		}
	}
}

// TestSuctionIsNeverTakenForDry: at the dew point and under it the state is
// that of dry vapour, and it says so.
func TestSuctionIsNeverTakenForDry(t *testing.T) {
	r := lookup(t, "R-407C")
	d, _ := r.DewAtT(280)
	for _, below := range []float64{0, 0.5, 3, 40} {
		q, dry, err := Suction(r, d.T-below, d.P)
		if err != nil || dry {
			t.Errorf("%v K under dew: dry %v, %v", below, dry, err)
		}
		near.Value(t, "temperature", q.T, d.T, 1e-6, "dew point")
	}
}

// TestDome: each point lies on saturation, from low to high.
func TestDome(t *testing.T) {
	for _, name := range []string{"R-134a", "R-410A", "R-744"} {
		r := lookup(t, name)
		liquid, vapour := Dome(r, 270)
		if len(liquid) < 11 || len(vapour) < 11 {
			t.Errorf("%s: %d and %d points", name, len(liquid), len(vapour))
		}
		for i := range liquid {
			b, err := r.BubbleAtP(liquid[i].P)
			if err != nil || (i > 0 && !(liquid[i].P > liquid[i-1].P)) {
				t.Errorf("%s liquid %d: %v, pressure %v", name, i, err, liquid[i].P)
				continue
			}
			near.Value(t, name+" bubble", b.T, liquid[i].T, 1e-6*b.T, "bubble point")
		}
		for i := 1; i < len(vapour); i++ {
			if !(vapour[i].P > vapour[i-1].P) {
				t.Errorf("%s vapour %d: pressure %v after %v", name, i, vapour[i].P, vapour[i-1].P)
			}
		}
	}
}

// TestAtRest: the error against a Monte Carlo of independent errors taken as
// uniform inside their limits: 1.96 standard deviations of two such errors lie
// between 0.9 and 1.15 of the root of the squares of the limits (1.13 of it
// when one dominates).
func TestAtRest(t *testing.T) {
	r := lookup(t, "R-410A")
	const T, u, gauge = 301.15, 0.5, 0.2e5
	s, err := AtRest(r, 18e5, T, gauge, u)
	if err != nil {
		t.Fatal(err)
	}
	random := rand.New(rand.NewPCG(1, 2))
	var sum, squares float64
	const n = 4000
	for range n {
		b, err := r.BubbleAtT(T + u*(2*random.Float64()-1))
		if err != nil {
			t.Fatal(err)
		}
		e := 18e5 + gauge*(2*random.Float64()-1) - b.P
		sum, squares = sum+e, squares+e*e
	}
	mean := sum / n
	spread := 1.96 * math.Sqrt(squares/n-mean*mean)
	near.Value(t, "mean excess", s.Excess, mean, 5*spread/math.Sqrt(n), "Monte Carlo")
	if ratio := spread / s.Error; !(ratio > 0.9 && ratio < 1.2) {
		t.Errorf("error %v Pa, Monte Carlo %v Pa at 95 %%: ratio %v, want 0.9 to 1.2", s.Error, spread, ratio)
	}
	for _, T := range []float64{10, 600, math.NaN()} {
		if s, err := AtRest(r, 1e6, T, 1e4, 0.5); err == nil {
			t.Errorf("at %v K: got %+v, want an error", T, s)
		}
	}
}

// TestBands: the numbers as the sources print them.
func TestBands(t *testing.T) {
	const fahrenheit = 5.0 / 9
	near.Value(t, "discharge limit, 225 °F", DischargeLimit, (225+459.67)*fahrenheit, 0.25, "practice-15, printed as 225 °F and 107 °C")
	near.Value(t, "floodback by discharge, 20 °F", FloodbackDischarge, 20*fahrenheit, 1e-9, "manual-11")
	near.Value(t, "settled scatter, 5 psi", StandingScatter, 5*6894.757, 5e3, "common practice, 0.3 bar is about 5 psi")
	near.Value(t, "suspect, 10 psi", StandingSuspect, 10*6894.757, 2e3, "common practice, 0.7 bar is about 10 psi")
	near.Value(t, "superheat band", SuctionSuperheat.Low, 5, 0, "manual-49, 5 to 30 K")
	near.Value(t, "discharge superheat band", DischargeSuperheat.Low, 20, 0, "manual-12")
}
