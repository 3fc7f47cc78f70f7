package moistair_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"changeout/calc/property/moistair"
)

const states = "../../../testdata/published/moistair/psychrolib.csv"

// TestAgainstPsychrolib holds W, h and v against psychrolib 2.5.0, which has
// the same equations and takes the vapour pressure of water from Hyland and
// Wexler. The worst W differs by 0.026 %, where IAPWS differs from them; 0.04 % is
// allowed. Enthalpy then by 2500 kJ/kg times that of W; volume
// by 1.6 times that of W. A wet bulb near dry air leaves a small W as a
// difference of large terms, so 1e-6 kg/kg is allowed everywhere.
func TestAgainstPsychrolib(t *testing.T) {
	f, err := os.Open(states)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for _, row := range rows[1:] {
		n := func(i int) float64 {
			v, err := strconv.ParseFloat(row[i], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		T, value, p, want := n(0)+273.15, n(2), n(3), n(4)
		W := moistair.Relative(T, value, p)
		if row[1] == "wet-bulb" {
			W = moistair.WetBulb(T, value+273.15, p)
		}
		dW := 4e-4*want + 1e-6
		for _, c := range []struct {
			what                 string
			got, want, tolerance float64
		}{
			{"W", W, want, dW},
			{"enthalpy", moistair.Enthalpy(T, W), n(5), 2.6e6*dW + 1},
			{"enthalpy of their W", moistair.Enthalpy(T, want), n(5), 0.01},
			{"volume", moistair.Volume(T, W, p), n(6), n(6) * (1.61*dW + 1e-7)},
			{"volume of their W", moistair.Volume(T, want, p), n(6), 1e-7},
		} {
			if d := c.got - c.want; !(math.Abs(d) <= c.tolerance) {
				t.Errorf("%v: %s: got %v, want %v, difference %g, tolerance %g (psychrolib 2.5.0)", row[:4], c.what, c.got, c.want, d, c.tolerance)
			}
		}
		worst = math.Max(worst, math.Abs(W-want)/want)
	}
	if len(rows) < 100 {
		t.Errorf("%s: got %d rows, want at least 100", states, len(rows))
	}
	t.Logf("%d states, W within %.4f %%", len(rows)-1, 100*worst)
}

// TestHandbookTable holds saturated air against three lines of the handbook's
// table of moist air at 101.325 kPa, recalled. The table takes the real gas
// into account: W is 0.4 to 0.5 % above the ideal-gas equation, so is h − 1.006 t.
func TestHandbookTable(t *testing.T) {
	for _, c := range []struct{ celsius, W, h, v float64 }{
		{10, 0.007661, 29.352e3, 0.8116}, {20, 0.014758, 57.555e3, 0.8498}, {30, 0.027329, 100.006e3, 0.8962},
	} {
		T := c.celsius + 273.15
		W := moistair.Saturated(T, 101325)
		for _, x := range []struct {
			what                 string
			got, want, tolerance float64
		}{{"W", W, c.W, 0.006 * c.W}, {"h", moistair.Enthalpy(T, W), c.h, 0.006 * 2.55e6 * c.W}, {"v", moistair.Volume(T, W, 101325), c.v, 0.001 * c.v}} {
			if d := x.got - x.want; !(math.Abs(d) <= x.tolerance) {
				t.Errorf("saturated air at %v °C: %s: got %v, want %v, difference %g, tolerance %g (ASHRAE Fundamentals, table of moist air, from memory)",
					c.celsius, x.what, x.got, x.want, d, x.tolerance)
			}
		}
	}
}

// TestApparatus finds the point from which a coil line was drawn: air mixed
// from air on and air saturated at the apparatus dew point. Tolerance 1e-9 K,
// what bisection of a quarter kelvin leaves.
func TestApparatus(t *testing.T) {
	const p = 101325.0
	for _, c := range []struct{ adp, rh float64 }{{-4, 0.2}, {3, 0.5}, {11.3, 0.6}} {
		for _, b := range []float64{0.05, 0.2, 0.5} {
			T1, Ts := 300.15, c.adp+273.15
			W1, Ws := moistair.Relative(T1, c.rh, p), moistair.Saturated(Ts, p)
			T2, W2 := Ts+b*(T1-Ts), Ws+b*(W1-Ws)
			got, ok := moistair.Apparatus(T1, W1, T2, W2, 250, p)
			if d := got - Ts; !ok || !(math.Abs(d) <= 1e-9) {
				t.Errorf("apparatus dew point %v °C, bypass %v: got %v %v, want %v, difference %g, tolerance 1e-9 (by construction)", c.adp, b, got, ok, Ts, d)
			}
		}
	}
	if T, ok := moistair.Apparatus(300, 0.004, 288, 0.004, 278, p); ok {
		t.Errorf("a dry coil line: got an apparatus dew point at %v, want none above 278 K (W saturated there is 0.0054)", T)
	}
}

// TestOutside: no number outside the range.
func TestOutside(t *testing.T) {
	for _, W := range []float64{moistair.Saturated(700, 1e5), moistair.Saturated(373.15, 9e4), moistair.Relative(math.NaN(), 0.5, 1e5), moistair.WetBulb(300, math.NaN(), 1e5)} {
		if !math.IsNaN(W) {
			t.Errorf("outside the range: got W = %v, want NaN", W)
		}
	}
}
