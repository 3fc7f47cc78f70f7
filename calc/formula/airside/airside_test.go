package airside_test

import (
	"math"
	"testing"

	"changeout/calc/formula/airside"
	"changeout/calc/property/moistair"
	"changeout/calc/property/refrigerant"
)

const p = 101325.0

// coil is a coil of R-410A in air of 26.7 °C with 19.4 °C wet bulb (80/67 °F),
// 0.063 kg/s for each kW, evaporating at 7 °C, with a surface of its own.
func coil(t testing.TB, name string, surface, bypass float64) (*airside.Coil, *airside.Compressor) {
	t.Helper()
	ref, ok := refrigerant.Lookup(name)
	if !ok {
		t.Fatal(name)
	}
	k, err := airside.NewCompressor(ref, 280.15)
	if err != nil {
		t.Fatal(err)
	}
	c := &airside.Coil{T: 299.85, P: p, Mass: 0.063}
	c.W = moistair.WetBulb(c.T, 292.55, p)
	drop := moistair.Enthalpy(c.T, c.W) - moistair.Enthalpy(surface, moistair.Saturated(surface, p))
	if err := c.Rated(c.Mass*(1-bypass)*drop, bypass, 280.15); err != nil {
		t.Fatal(err)
	}
	return c, k
}

// The published fits of capacity against airflow f of whole units.
var published = []struct {
	source string
	f      func(f float64) float64
}{
	{"practice-28, performance map", func(f float64) float64 { return 0.718605468 + 0.410099989*f - 0.128705457*f*f }},
	{"lbl-buildings, curves I and II", func(f float64) float64 { return 0.8 + 0.2*f }},
	{"lbl-buildings, curve III", func(f float64) float64 { return 0.47278589 + 1.2433415*f - 1.0387055*f*f + 0.32257813*f*f*f }},
	{"lbl-buildings, rooftop unit", func(f float64) float64 {
		return (0.80998945030797 + 0.24327631528576*f - 0.00005407671152*f*f) / 1.05321168888
	}},
}

// TestTrendAgainstPublishedCurves: the capacity at the same compressor speed
// falls with the airflow as published curves do, and not above them: a number
// too high would place the frost too low. The curves differ among themselves by
// 2.5 points at half of the air. With a usual coil (surface 4 to 7 K above the
// refrigerant, bypass factor 0.1 to 0.2) the model lies from 2 points above to
// 7 points below each of them, because it leaves out what softens the fall. From
// 8 K on it lies above them, and the worksheet warns. A surface at the
// evaporating temperature, which no real coil has, lies 11 to 13.5 points below
// at half of the air; that is the dry teaching model of practice.md B.5.
func TestTrendAgainstPublishedCurves(t *testing.T) {
	for _, c := range []struct{ surface, bypass, above, below float64 }{
		{284.15, 0.2, 0.01, 0.07}, {285.15, 0.2, 0.01, 0.07}, {286.15, 0.1, 0.01, 0.07}, {287.15, 0.15, 0.02, 0.07}, {280.1501, 0.2, 0, 0.135},
	} {
		x, k := coil(t, "R-410A", c.surface, c.bypass)
		for _, f := range []float64{0.9, 0.8, 0.7, 0.6, 0.5} {
			_, q, ok := x.Settle(f, k)
			got := q / x.Heat
			for _, m := range published {
				want := m.f(f)
				if d := got - want; !ok || !(d <= c.above && d >= -c.below) {
					t.Errorf("surface %.1f °C, airflow %v: got capacity %.4f, want %.4f, difference %.4f, tolerance +%v −%v (%s)", c.surface-273.15, f, got, want, d, c.above, c.below, m.source)
				}
			}
			t.Logf("surface %.1f °C, airflow %v: capacity %.3f, published %.3f %.3f %.3f %.3f", c.surface-273.15, f, got, published[0].f(f), published[1].f(f), published[2].f(f), published[3].f(f))
		}
	}
}

// TestDryTeachingModel meets the table of practice.md B.5: dry coil without
// inner resistance, 27 °C in, 7 °C evaporating, bypass factor 0.2, capacity
// held. The table has h ~ V^0.5, this model V^0.8; with fewer heat units at low
// flow the model is colder. At 80 and 60 % the table prints 3.0 and −3.5 °C;
// 0.7 and 2.0 K are what the exponent makes of it by hand:
// T = 27 − 16/(f (1 − e^(−1.609 f^−0.2))).
func TestDryTeachingModel(t *testing.T) {
	c := &airside.Coil{T: 300.15, W: 0.002, P: p, Mass: 1}
	if err := c.Rated(0.8*(moistair.Enthalpy(300.15, 0.002)-moistair.Enthalpy(280.15, 0.002))*0.9999999, 0.2, 280.15); err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct{ f, hand, table, apart float64 }{{1, 7, 7, 0.01}, {0.8, 27 - 16/(0.8*(1-math.Exp(-1.6094379*math.Pow(0.8, -0.2)))), 3.0, 0.7}, {0.6, 27 - 16/(0.6*(1-math.Exp(-1.6094379*math.Pow(0.6, -0.2)))), -3.5, 2.0}} {
		got := c.Hold(x.f, c.Heat) - 273.15
		if d := got - x.hand; !(math.Abs(d) <= 0.001) {
			t.Errorf("airflow %v: got %v °C, want %v, difference %g, tolerance 0.001 (the equation by hand)", x.f, got, x.hand, d)
		}
		if d := got - x.table; !(d <= 0.1 && d >= -x.apart) {
			t.Errorf("airflow %v: got %v °C, want %v, difference %g, tolerance +0.1 −%v (practice.md B.5)", x.f, got, x.table, d, x.apart)
		}
	}
}

// TestCompressorBetweenPoints: straight lines between points 5 K apart stay
// within 0.05 % of the engine, the glide of a blend included.
func TestCompressorBetweenPoints(t *testing.T) {
	for _, name := range []string{"R-410A", "R-448A", "R-32", "R-744", "R-134a"} {
		ref, _ := refrigerant.Lookup(name)
		k, err := airside.NewCompressor(ref, 280.15)
		if err != nil {
			t.Fatal(name, err)
		}
		one := 0.0
		low, high := k.Range()
		for _, dew := range []float64{280.15, 236.1, 251, 265.65, 273, 291, 293.2} {
			v, err := ref.SaturatedVapor(dew)
			if err != nil {
				t.Fatal(name, err)
			}
			b, err := ref.BubbleAtP(v.P)
			if err != nil {
				t.Fatal(name, err)
			}
			middle := (b.T + dew) / 2
			if middle < low || middle > high {
				continue
			}
			if q := v.Rho * (v.Enthalpy - k.Liquid) / k.Share(middle); one == 0 {
				one = q
			} else if d := q/one - 1; !(math.Abs(d) <= 1e-3) { // the first point carries its own 0.05 %
				t.Errorf("%s at %v K: capacity off by %g, tolerance 1e-3 (the engine)", name, dew, d)
			}
			if d := k.Pressure(middle)/v.P - 1; !(math.Abs(d) <= 5e-4) {
				t.Errorf("%s at %v K: got pressure %v, want %v, difference %g, tolerance 5e-4 (the engine)", name, dew, k.Pressure(middle), v.P, d)
			}
		}
	}
}

// TestOneCoil: every way to ask agrees, and less air is always colder, with
// less capacity. Tolerance 1e-6: bisection leaves 1e-12 of the range.
func TestOneCoil(t *testing.T) {
	for _, name := range []string{"R-410A", "R-454B"} {
		c, k := coil(t, name, 285.15, 0.15)
		last, lastQ := 0.0, 0.0
		for f := 0.2; f < 1.5; f += 0.05 {
			T, q, ok := c.Settle(f, k)
			if !ok || !(T > last) || !(q > lastQ) {
				t.Errorf("%s airflow %v: %v K %v W %v, not above %v K %v W", name, f, T, q, ok, last, lastQ)
			}
			last, lastQ = T, q
			if g := c.FlowFor(q, T); !(math.Abs(g-f) <= 1e-6) {
				t.Errorf("%s: FlowFor(Settle(%v)) = %v", name, f, g)
			}
			if h := c.FlowFor(c.Heat, c.Hold(f, c.Heat)); !(math.Abs(h-f) <= 1e-6) {
				t.Errorf("%s: FlowFor(Hold(%v)) = %v", name, f, h)
			}
		}
		if T, q, _ := c.Settle(1, k); !(math.Abs(T-280.15) <= 1e-6 && math.Abs(q/c.Heat-1) <= 1e-6) {
			t.Errorf("%s: at rated airflow got %v K, %v of the capacity, want 280.15 K, 1", name, T, q/c.Heat)
		}
		// The same coil, known from its air off instead of its rating.
		Ws := moistair.Saturated(c.Surface, p)
		again := &airside.Coil{T: c.T, W: c.W, P: p, Mass: c.Mass, Flow: 1}
		if err := again.Measured(c.Surface+0.15*(c.T-c.Surface), Ws+0.15*(c.W-Ws), 280.15); err != nil {
			t.Fatal(err)
		}
		// A straight line in T and W bends by 0.1 % in h.
		if d := again.Heat/c.Heat - 1; !(math.Abs(d) <= 2e-3) || !(math.Abs(again.NTU-c.NTU) <= 0.02) {
			t.Errorf("%s: from the air off: heat %v, NTU %v; from the rating %v, %v", name, again.Heat, again.NTU, c.Heat, c.NTU)
		}
	}
}

// TestContradictions: readings that no coil makes are an error.
func TestContradictions(t *testing.T) {
	at := func(celsius, rh float64) (float64, float64) {
		return celsius + 273.15, moistair.Relative(celsius+273.15, rh, p)
	}
	for _, c := range []struct {
		what                              string
		on, onRH, off, offRH, evaporating float64
	}{
		{"air off colder than the refrigerant", 26, 0.5, 12, 0.9, 13},
		{"air off drier than saturation at the refrigerant", 26, 0.5, 12, 0.3, 4},
		{"no heat", 26, 0.3, 25.9, 0.5, 4},
	} {
		T1, W1 := at(c.on, c.onRH)
		T2, W2 := at(c.off, c.offRH)
		x := &airside.Coil{T: T1, W: W1, P: p, Mass: 1, Flow: 1}
		if err := x.Measured(T2, W2, c.evaporating+273.15); err == nil {
			t.Errorf("%s: got %+v, want ErrReadings", c.what, x)
		}
	}
	x := &airside.Coil{T: 300, W: 0.01, P: p, Mass: 0.1}
	if err := x.Rated(1e5, 0.2, 280); err == nil {
		t.Errorf("a capacity that the air cannot give: got %+v, want ErrReadings", x)
	}
}

// TestHandbookExample: 5 m³/s of moist air of 30 °C and 50 % cooled to 10 °C
// saturated. The handbook prints 197 kW from table values rounded to three
// figures; tolerance 1 kW. Source: ASHRAE Fundamentals, Psychrometrics, from memory.
func TestHandbookExample(t *testing.T) {
	W1, W2 := moistair.Relative(303.15, 0.5, p), moistair.Saturated(283.15, p)
	m := 5 / moistair.Volume(303.15, W1, p)
	got := airside.Taken(m, 303.15, W1, 283.15, W2)
	if d := got.Total - 197e3; !(math.Abs(d) <= 1e3) {
		t.Errorf("got %v W, want 197000, difference %g, tolerance 1000", got.Total, d)
	}
	if d := got.Sensible + got.Latent - got.Total; !(math.Abs(d) <= 1e-6) {
		t.Errorf("sensible %v and latent %v are not the total %v", got.Sensible, got.Latent, got.Total)
	}
}
