package refrigerant_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"changeout/calc/property/refrigerant"
	"changeout/calc/property/viscosity"
	"changeout/calc/source"
)

const viscosityFolder = "../../../testdata/published/viscosity/"

// stateOf makes the state of a row: temperature and what the quantity says, or temperature with pressure or density or both.
func stateOf(t *testing.T, r *refrigerant.Refrigerant, row row) refrigerant.Properties {
	t.Helper()
	var x [3]float64
	for i, s := range strings.Split(row.inputText, ";") {
		var err error
		if x[i], err = strconv.ParseFloat(s, 64); err != nil {
			t.Fatalf("%s: input %q", row.where, row.inputText)
		}
	}
	var p refrigerant.Properties
	var err error
	switch {
	case row.quantity == "saturated liquid":
		p, err = r.SaturatedLiquid(x[0])
	case row.quantity == "saturated vapor":
		p, err = r.SaturatedVapor(x[0])
	case row.inputUnit == "K;Pa":
		p, err = r.AtTP(x[0], x[1])
	case row.inputUnit == "K;Pa;kg/m3":
		p = refrigerant.Properties{T: x[0], P: x[1], Rho: x[2]}
	case row.inputUnit == "K;kg/m3":
		p = refrigerant.Properties{T: x[0], P: 1e5, Rho: x[1]}
	case row.inputUnit == "K;mol/m3":
		p = refrigerant.Properties{T: x[0], P: 1e5, Rho: max(x[1], 1e-9) * r.MolarMass}
	default:
		t.Fatalf("%s: quantity %q with unit %q", row.where, row.quantity, row.inputUnit)
	}
	if err != nil {
		t.Fatalf("%s: %s %s: %v", row.where, r.Name, row.inputText, err)
	}
	return p
}

// TestViscosityPublished holds every row of the folder against the answer. Tolerances stand in the rows and are explained at the
// head of each file. Air is not in the catalogue and is tested in the package viscosity.
func TestViscosityPublished(t *testing.T) {
	for _, file := range []string{"printed.csv", "coolprop-correlations.csv", "estimates.csv", "measured.csv"} {
		worst := map[string]float64{}
		n := 0
		for _, row := range readRows(t, viscosityFolder+file) {
			if row.refrigerant == "R-729" {
				continue
			}
			r, ok := refrigerant.Lookup(row.refrigerant)
			if !ok {
				t.Fatalf("%s: unknown refrigerant %q", row.where, row.refrigerant)
			}
			p := stateOf(t, r, row)
			v, err := r.Viscosity(p)
			if err != nil {
				t.Errorf("%s: %s %s at %s: %v", row.where, row.refrigerant, row.quantity, row.inputText, err)
				continue
			}
			n++
			if _, ok := source.Lookup(row.source); !ok {
				t.Errorf("%s: source %q is not in the bibliography", row.where, row.source)
			}
			if want := file == "estimates.csv" || row.quantity == "estimate"; want && !v.Estimated || file == "coolprop-correlations.csv" && v.Estimated {
				t.Errorf("%s: %s %s at %s: estimated is %v", row.where, row.refrigerant, row.quantity, row.inputText, v.Estimated)
			}
			d := v.Value/row.expected - 1
			if !(math.Abs(d) < row.tolerance) {
				t.Errorf("%s: %s %s at %s: got %.8g Pa s, want %.8g, difference %.2g, tolerance %.2g (%s %s)", row.where, row.refrigerant, row.quantity, row.inputText, v.Value, row.expected, d, row.tolerance, row.source, row.locator)
			}
			key := row.refrigerant
			if file == "measured.csv" {
				key += " " + row.quantity
			}
			if !(math.Abs(d) <= math.Abs(worst[key])) {
				worst[key] = d
			}
		}
		if n < 15 {
			t.Fatalf("%s: %d rows compared: this test would prove nothing", file, n)
		}
		var keys []string
		for k := range worst {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		for _, k := range keys {
			t.Logf("%-26s worst %-24s %+.2g", file, k, worst[k])
		}
	}
}

// TestViscosityOfFieldRefrigerants: what technicians meet must have a viscosity of liquid and vapour from -40 °C to 60 °C, falling
// for the liquid and rising for the vapour, and nothing else may be without one than what is named here.
func TestViscosityOfFieldRefrigerants(t *testing.T) {
	for _, name := range []string{"R-410A", "R-32", "R-407C", "R-404A", "R-448A", "R-449A", "R-454B", "R-454C", "R-455A", "R-513A", "R-22", "R-134a", "R-1234yf", "R-744", "R-290", "R-600a", "R-717", "R-507A", "R-422D", "R-427A"} {
		r, _ := refrigerant.Lookup(name)
		_, high := r.Range()
		liquid, vapor := math.Inf(1), 0.0
		for T := 233.15; T < min(333.15, 0.97*high); T += 2.5 {
			b, err1 := r.SaturatedLiquid(T)
			d, err2 := r.SaturatedVapor(T)
			l, err3 := r.Viscosity(b)
			v, err4 := r.Viscosity(d)
			if err := errors.Join(err1, err2, err3, err4); err != nil {
				t.Errorf("%s at %.2f K: %v", name, T, err)
				continue
			}
			if !(l.Value < liquid && v.Value > vapor && l.Value > v.Value) {
				t.Errorf("%s at %.2f K: liquid %.4g after %.4g, vapour %.4g after %.4g Pa s", name, T, l.Value, liquid, v.Value, vapor)
			}
			liquid, vapor = l.Value, v.Value
			if _, ok := source.Lookup(l.Source); !ok {
				t.Errorf("%s: source %q is not in the bibliography", name, l.Source)
			}
		}
	}
	none := map[string]bool{"R-116": true, "R-1132(E)": true, "R-1132a": true, "R-1336mzz(E)": true}
	for _, r := range refrigerant.All() {
		want := false
		for _, c := range r.Components {
			want = want || none[c.Name]
		}
		_, high := r.Range()
		p, err := r.SaturatedVapor(0.97 * high)
		if err != nil {
			t.Fatal(r.Name, err)
		}
		_, err = r.Viscosity(p)
		if got := errors.Is(err, refrigerant.ErrNoViscosity); got != want {
			t.Errorf("%s: %v, want no viscosity: %v", r.Name, err, want)
		}
	}
}

// TestViscosityRefuses: a state that is no state must end in an error, never in a number.
func TestViscosityRefuses(t *testing.T) {
	r, _ := refrigerant.Lookup("R-410A")
	nan, inf := math.NaN(), math.Inf(1)
	for _, p := range []refrigerant.Properties{{}, {T: nan, P: 1e5, Rho: 1}, {T: 300, P: nan, Rho: 1}, {T: 300, P: 1e5, Rho: nan}, {T: inf, P: 1e5, Rho: 1},
		{T: 300, P: inf, Rho: 1}, {T: 300, P: 1e5, Rho: inf}, {T: 300, P: 1e5, Rho: -1}, {T: 100, P: 1e5, Rho: 1}, {T: 1e4, P: 1e5, Rho: 1}, {T: 300, P: 1e5, Rho: 1e6}} {
		if v, err := r.Viscosity(p); !errors.Is(err, refrigerant.ErrRange) || v.Value != 0 {
			t.Errorf("%+v: got %v, %v, want 0 and ErrRange", p, v, err)
		}
	}
	p, err := r.AtPH(1e6, 300e3)
	if err != nil || p.Phase != refrigerant.TwoPhase {
		t.Fatal(p, err)
	}
	if _, err := r.Viscosity(p); !errors.Is(err, refrigerant.ErrTwoPhase) {
		t.Errorf("two-phase: %v, want ErrTwoPhase", err)
	}
}

// TestViscosityRandom: random states of every refrigerant give a number that a fluid can have, or an error.
func TestViscosityRandom(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	given := 0
	for _, r := range refrigerant.All() {
		low, _ := r.Range()
		for range 40 {
			T := low - 5 + (430-low)*random.Float64()
			p, err := r.AtTP(T, math.Exp(math.Log(1e3)+math.Log(1e5)*random.Float64()))
			if err != nil {
				continue
			}
			v, err := r.Viscosity(p)
			if err != nil {
				if v.Value != 0 {
					t.Errorf("%s: %g with error %v", r.Name, v.Value, err)
				}
				continue
			}
			given++
			low, high := 3e-6, 0.05 // the coldest liquids pour like oil
			if p.Phase == refrigerant.Vapor && p.Rho < 0.3*r.Critical.Rho {
				high = 4e-5
			}
			if !(v.Value > low && v.Value < high) {
				t.Errorf("%s at %.5g K, %.5g Pa, %.4g kg/m³: %.4g Pa s, want %.1g to %.1g", r.Name, T, p.P, p.Rho, v.Value, low, high)
			}
		}
	}
	if given < 1500 {
		t.Errorf("%d viscosities given: this test would prove nothing", given)
	}
	t.Logf("%d viscosities given", given)
}

func FuzzViscosity(f *testing.F) {
	f.Add(300.0, 1e6, 50.0, uint8(20))
	f.Add(250.0, 1e5, 1200.0, uint8(60))
	f.Fuzz(func(t *testing.T, T, p, rho float64, which uint8) {
		r := refrigerant.All()[int(which)%len(refrigerant.All())]
		v, err := r.Viscosity(refrigerant.Properties{T: T, P: p, Rho: rho})
		if err == nil && !(v.Value > 1e-6 && v.Value < 0.1) || err != nil && v.Value != 0 {
			t.Errorf("%s at %g K, %g Pa, %g kg/m³: %g Pa s, %v", r.Name, T, p, rho, v.Value, err)
		}
	})
}

// TestViscosityOfDiluteGas: at zero density a correlation is the dilute gas, and the engine reaches the same from above.
func TestViscosityOfDiluteGas(t *testing.T) {
	for _, c := range viscosity.All {
		r, ok := refrigerant.Lookup(c.Name)
		if !ok {
			continue // air
		}
		got, err := c.At(300, 0)
		p := refrigerant.Properties{T: 300, P: 1, Rho: 1e-9}
		v, err2 := r.Viscosity(p)
		if err != nil || err2 != nil || !(math.Abs(v.Value/got-1) < 1e-6) {
			t.Errorf("%s: %g Pa s at zero density, %g near it, %v, %v", c.Name, got, v.Value, err, err2)
		}
	}
}
