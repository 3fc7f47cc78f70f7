package electrical

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"changeout/calc/published/near"
)

// TestCopper: a resistance meter's manual prints 96.22 for 100 at 30 °C, by
// 0.00393/K at 20 °C, which is 234.5 within rounding: half the last digit.
func TestCopper(t *testing.T) {
	near.Value(t, "100 Ω at 30 °C", CopperAt20(100, 303.15), 96.22, 0.005, "ohmmeter-tc")
	near.Value(t, "at 20 °C", CopperAt20(0.83, 293.15), 0.83, 1e-12, "definition")
	// The machine standard's 235 (from memory) must stay within its 0.03 % here.
	near.Value(t, "against 235", CopperAt20(1, 333.15), (235.0+20)/(235+60), 3e-4, "IEC 60034-1, from memory")
}

// TestStar: the phases give the pairs back, whatever they are.
func TestStar(t *testing.T) {
	u, v, w := Star(0.82, 0.83, 0.91)
	near.Value(t, "u+v", u+v, 0.82, 1e-12, "definition")
	near.Value(t, "v+w", v+w, 0.83, 1e-12, "definition")
	near.Value(t, "w+u", w+u, 0.91, 1e-12, "definition")
}

// TestRoundingDoubt: no three rounded readings may be further from the truth
// than it says. The true values are drawn, rounded and compared.
func TestRoundingDoubt(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	const digit, lead = 0.01, 0.13
	worst := 0.0
	for range 20000 {
		var x, read [3]float64
		error0 := digit * (random.Float64() - 0.5)
		for i := range x {
			x[i] = 0.3 + 0.05*random.Float64()
			read[i] = math.Round((x[i]+lead)/digit)*digit - lead - error0
		}
		_, truth := Unbalance(x[0], x[1], x[2])
		mean, got := Unbalance(read[0], read[1], read[2])
		// The imbalance itself scales with the error of the mean, which the bound leaves out: 1 digit of 30, of at most 10 %.
		allowed := RoundingDoubt(digit, mean) + truth*digit/mean
		if d := math.Abs(got - truth); !(d <= allowed) {
			t.Fatalf("%v read as %v: imbalance %g, truth %g, difference %g, allowed %g", x, read, got, truth, d, allowed)
		} else {
			worst = max(worst, d/allowed)
		}
	}
	if !(worst > 0.7) {
		t.Errorf("the worst of 20000 draws used %.2f of the bound, want above 0.7: it is too loose to tell anything", worst)
	}
	if !math.IsInf(RoundingDoubt(0.1, 0.05), 1) {
		t.Error("a mean below the last digit must leave everything open")
	}
}

// TestUnbalance: printed examples; half the last printed digit, in percent.
func TestUnbalance(t *testing.T) {
	for _, c := range []struct{ a, b, c, want, tolerance float64 }{
		{462, 463, 455, 1.1, 0.05}, {480, 476, 472, 0.84, 0.005}, {462, 468, 450, 2.2, 0.05}, {203, 210, 212, 2.56, 0.005},
	} {
		_, u := Unbalance(c.a, c.b, c.c)
		near.Value(t, "unbalance", 100*u, c.want, c.tolerance, "etips, imd, practice-32, sym")
	}
	if _, u := Unbalance(0, 0, 0); !math.IsNaN(u) {
		t.Errorf("unbalance of nothing: got %v, want NaN", u)
	}
}

// TestNegativeSequence holds the closed form against phasors: three line
// voltages are built from a positive and a negative sequence, measured, and
// the ratio must come back. 1e-9 is the rounding of the square roots.
func TestNegativeSequence(t *testing.T) {
	a := cmplx.Rect(1, 2*math.Pi/3)
	random := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		want := math.Pow(10, -6*random.Float64()) * 0.99
		u2 := cmplx.Rect(400*want, 2*math.Pi*random.Float64())
		ab := 400 + u2
		bc := 400*a*a + u2*a
		ca := 400*a + u2*a*a
		got, ok := NegativeSequence(cmplx.Abs(ab), cmplx.Abs(bc), cmplx.Abs(ca))
		if !ok {
			t.Fatalf("factor %g: refused", want)
		}
		near.Value(t, "U2/U1", got, want, 1e-9, "symmetrical components")
		// NEMA's figure is never larger and at most 2/√3 smaller while the factor is small (pillay-2001, table 1: 2 to 2.3).
		if _, u := Unbalance(cmplx.Abs(ab), cmplx.Abs(bc), cmplx.Abs(ca)); want < 0.02 && !(got >= 0.99*u && got <= 1.165*u) {
			t.Errorf("factor %g beside NEMA %g: outside 1 to 1.155", got, u)
		}
	}
	if _, ok := NegativeSequence(100, 100, 400); ok {
		t.Error("100, 100, 400 V close no triangle, but a factor was given")
	}
	if _, ok := NegativeSequence(0, 0, 0); ok {
		t.Error("no voltage at all gave a factor")
	}
}

func TestDeratingAndRise(t *testing.T) {
	for _, c := range []struct{ u, want float64 }{{0, 1}, {0.5, 1}, {1.5, 0.97}, {2, 0.95}, {3, 0.89}, {4, 0.82}, {5, 0.76}, {2.25, 0.94}} {
		got, ok := Derating(c.u / 100)
		if !ok {
			t.Errorf("derating at %v %%: refused", c.u)
		}
		near.Value(t, "derating", got, c.want, 1e-9, "etbder")
	}
	for _, u := range []float64{0.0501, 0.2, math.Inf(1), math.NaN()} {
		if f, ok := Derating(u); ok {
			t.Errorf("derating at %v: got %v, want a refusal", u, f)
		}
	}
	near.Value(t, "rise at 3 %", 100*ExtraRise(0.03), 20, 2.5, "practice-31: about 20 %")
	near.Value(t, "rise at 5 %", 100*ExtraRise(0.05), 50, 0.5, "practice-31: 50 %")
	near.Value(t, "rise at 3.5 %", 100*ExtraRise(0.035), 25, 1, "practice-32: 25 %")
}

// TestInsulation: a testing site's example of one winding, 200 MΩ at 20 °C and
// 25 MΩ at 50 °C, must agree at 40 °C; a tester's manual prints 150 at 20 °C
// and 75 at 30 °C. Exact powers of two.
func TestInsulation(t *testing.T) {
	near.Value(t, "200 MΩ at 20 °C", InsulationAt(200, 293.15, 313.15), 50, 1e-9, "insulation-page")
	near.Value(t, "25 MΩ at 50 °C", InsulationAt(25, 323.15, 313.15), 50, 1e-9, "insulation-page")
	near.Value(t, "75 MΩ at 30 °C, to 20 °C", InsulationAt(75, 303.15, 293.15), 150, 1e-9, "ir-meter")
	near.Value(t, "thermosetting, 60 °C", ThermosettingAt(1, 333.15, 313.15), 2.25, 0.005, "IEEE 43-2013, from memory")
	near.Value(t, "thermosetting, 20 °C", ThermosettingAt(1, 293.15, 313.15), 0.40, 0.005, "IEEE 43-2013, from memory")
}

// TestCharge: a drive maker's page prints 111.821 s; a resistor maker's sheet
// 0.015062769 s and 219.375 J. Half the last digit.
func TestCharge(t *testing.T) {
	near.Value(t, "600 V, 300 µF, 150 kΩ to 50 V", DischargeTime(150e3, 300e-6, 600, 50), 111.821, 0.0005, "discharge-drive")
	near.Value(t, "1500 V, 195 µF, 50 Ω to 320 V", DischargeTime(50, 195e-6, 1500, 320), 0.015062769, 5e-10, "discharge-sheet")
	near.Value(t, "energy", StoredEnergy(195e-6, 1500), 219.375, 5e-4, "discharge-sheet")
	near.Value(t, "already below", DischargeTime(1e4, 3e-3, 40, 50), 0, 0, "definition")
	near.Value(t, "voltage after the time", VoltageAfter(150e3, 300e-6, 600, 111.821), 50, 1e-3, "discharge-drive")
}

// tables are printed resistance tables of two families, kΩ from −20 to 50 °C
// every 5 K, as service manuals give them (manual-26, manual-27).
var tables = []struct {
	law  Thermistor
	kohm [15]float64
}{
	{Thermistor{20e3, 298.15, 3950}, [15]float64{197.8, 148.2, 112.1, 85.60, 65.93, 51.14, 39.99, 31.52, 25.02, 20.00, 16.10, 13.04, 10.62, 8.707, 7.176}},
	{Thermistor{10e3, 298.15, 3435}, [15]float64{73.4, 57.0, 44.7, 35.3, 28.2, 22.6, 18.3, 14.8, 12.1, 10.0, 8.2, 6.9, 5.8, 4.9, 4.1}},
}

// TestThermistorTables: the B law misses a printed table by no more than
// LawMisfit, plus half the last printed digit.
func TestThermistorTables(t *testing.T) {
	for _, table := range tables {
		for i, k := range table.kohm {
			c := float64(5*i - 20)
			digit := 0.05 / k
			if table.law.R0 > 15e3 {
				digit = 0.0005
			}
			allowed := LawMisfit(c+273.15, 298.15) + digit
			got := table.law.Resistance(c + 273.15)
			if miss := got/(1000*k) - 1; !(math.Abs(miss) <= allowed) {
				t.Errorf("B %v at %v °C: got %.0f Ω, table %.0f Ω, off by %.4f, allowed %.4f", table.law.B, c, got, 1000*k, miss, allowed)
			}
			near.Value(t, "back", table.law.Temperature(got), c+273.15, 1e-9, "inverse")
		}
	}
}

// TestBetween: rows of the 20 kΩ table 20 K apart, joined by the B law, meet
// the printed rows between them within 0.15 K.
func TestBetween(t *testing.T) {
	k := tables[0].kohm
	for i := 0; i+4 < len(k); i += 4 {
		at := func(j int) float64 { return float64(5*j-20) + 273.15 }
		law := Between(at(i), 1000*k[i], at(i+4), 1000*k[i+4])
		for j := i; j <= i+4; j++ {
			near.Value(t, "temperature between rows", law.Temperature(1000*k[j]), at(j), 0.15, "manual-26")
		}
	}
	// A temperature controller's manual prints a 10 kΩ table to five figures; rows 25 K apart.
	law := Between(273.15, 32128, 298.15, 9814)
	near.Value(t, "19549 Ω", law.Temperature(19549)-273.15, 10, 0.15, "sh-manual")
}
