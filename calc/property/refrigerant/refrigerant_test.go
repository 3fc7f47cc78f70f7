package refrigerant_test

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"changeout/calc/property/refrigerant"
	"changeout/calc/source"
)

// R is the gas constant of CODATA 2018, J/(mol K).
const R = 8.31446261815324

func mustLookup(t testing.TB, name string) *refrigerant.Refrigerant {
	t.Helper()
	r, ok := refrigerant.Lookup(name)
	if !ok {
		t.Fatalf("%s is not in the catalogue", name)
	}
	return r
}

func TestLookup(t *testing.T) {
	for in, want := range map[string]string{
		"R410A": "R-410A", "r-410a": "R-410A", "410A": "R-410A", " R 410a ": "R-410A", "R-1234ze(E)": "R-1234ze(E)",
		"r1234ZE(e)": "R-1234ze(E)", "744": "R-744", "R‑32": "R-32", "RE170": "R-E170",
	} {
		r, ok := refrigerant.Lookup(in)
		if !ok || r.Name != want {
			t.Errorf("Lookup(%q): got %v %v, want %s", in, r, ok, want)
		}
	}
	for _, in := range []string{"", "R", "-", "R-999Z", "410", "R-410B1", "R-438A"} {
		if r, ok := refrigerant.Lookup(in); ok {
			t.Errorf("Lookup(%q): got %s, want nothing", in, r.Name)
		}
	}
}

// The catalogue itself: unique names, fractions that sum to one, marks that go with values.
func TestCatalogue(t *testing.T) {
	seen := map[string]bool{}
	all := refrigerant.All()
	if len(all) < 150 {
		t.Errorf("%d refrigerants, want 46 pure fluids and 107 blends", len(all))
	}
	for _, r := range all {
		if seen[r.Name] {
			t.Errorf("%s stands twice", r.Name)
		}
		seen[r.Name] = true
		var mass, mole, molar float64
		for _, c := range r.Components {
			mass += c.MassFraction
			mole += c.MoleFraction
			molar += c.MoleFraction * mustLookup(t, c.Name).MolarMass
		}
		// Sums of a few rounded numbers: 1e-12 is far above rounding, far below any misprint of a composition.
		if !(math.Abs(mass-1) < 1e-12) || !(math.Abs(mole-1) < 1e-12) || !(math.Abs(molar/r.MolarMass-1) < 1e-12) {
			t.Errorf("%s: mass fractions sum to %v, mole fractions to %v, molar mass %v against %v", r.Name, mass, mole, molar, r.MolarMass)
		}
		if r.ChargeAsLiquid != (len(r.Components) > 1) {
			t.Errorf("%s: ChargeAsLiquid %v with %d components", r.Name, r.ChargeAsLiquid, len(r.Components))
		}
		if (r.Class == "") != (r.ClassRead == "") || (r.Class == "") != (r.ClassKey == "") {
			t.Errorf("%s: class %q, read %q, key %q", r.Name, r.Class, r.ClassRead, r.ClassKey)
		}
		for _, f := range []refrigerant.Fact{r.RCL, r.LFL} {
			if f.Known() && (f.Source == "" || !(f.Value > 0.001 && f.Value < 1)) {
				t.Errorf("%s: limit %+v", r.Name, f)
			}
		}
		for _, g := range r.GWPs {
			if !g.Known() || g.Source == "" || g.List == "" || !(g.Value >= 0 && g.Value < 15000) {
				t.Errorf("%s: %+v", r.Name, g)
			}
		}
		low, high := r.Range()
		if !(low > 0 && high > low && high < r.Critical.T) {
			t.Errorf("%s: range %v to %v K, critical %v K", r.Name, low, high, r.Critical.T)
		}
	}
}

// Warming potentials of blends as printed in the project's reference table (sum of mass fraction times value).
func TestWarming(t *testing.T) {
	for _, c := range []struct {
		name, list string
		want       float64
	}{
		{"R-404A", "AR4", 3921.6}, {"R-404A", "AR5", 3942.8}, {"R-407C", "AR4", 1773.8}, {"R-410A", "AR5", 1923.5},
		{"R-410A", "EU 2024/573", 2087.5}, {"R-422D", "EU 2024/573", 2728.9}, {"R-448A", "EU 2024/573", 1386.0},
		{"R-449A", "AR4", 1397.0}, {"R-454B", "EU 2024/573", 465.2}, {"R-454C", "AR5", 146.3}, {"R-466A", "AR4", 733.4},
		{"R-513A", "AR4", 631.4}, {"R-452B", "AR4", 698.3}, {"R-427A", "AR5", 2024.0}, {"R-507A", "AR5", 3985.0},
	} {
		found := false
		for _, g := range mustLookup(t, c.name).GWPs {
			if g.List != c.list {
				continue
			}
			found = true
			// The table is rounded to 0.1; some rows sit on the edge of rounding.
			if !(math.Abs(g.Value-c.want) < 0.06) {
				t.Errorf("%s %s: got %.3f, want %.1f, difference %.3f, tolerance 0.06; source standards.md 2.3", c.name, c.list, g.Value, c.want, g.Value-c.want)
			}
		}
		if !found {
			t.Errorf("%s: no value by %s", c.name, c.list)
		}
	}
}

// Everywhere in the range: a state, pressures rising with temperature, liquid density falling, vapour density rising, bubble
// pressure not below dew pressure, and back from pressure to the temperature.
func TestWholeRange(t *testing.T) {
	const steps = 40
	solves, worst, worstAt := 0, 0.0, ""
	for _, r := range refrigerant.All() {
		low, high := r.Range()
		pMin, pMax, err := r.PressureRange()
		if err != nil {
			t.Errorf("%s: no pressure range: %v", r.Name, err)
			continue
		}
		var lastB, lastD refrigerant.Point
		for i := 0; i <= steps; i++ {
			T := low + (high-low)*float64(i)/steps
			b, err := r.BubbleAtT(T)
			if err != nil {
				t.Errorf("%s: bubble at %v K: %v", r.Name, T, err)
				continue
			}
			d, err := r.DewAtT(T)
			if err != nil {
				t.Errorf("%s: dew at %v K: %v", r.Name, T, err)
				continue
			}
			if i > 0 && !(b.P > lastB.P && d.P > lastD.P && b.RhoLiquid < lastB.RhoLiquid && d.RhoVapor > lastD.RhoVapor) {
				// Water is densest at 277 K, the one liquid here that expands when it cools.
				if !(r.Name == "R-718" && T < 285) {
					t.Errorf("%s: not monotone at %v K: bubble %+v after %+v, dew %+v after %+v", r.Name, T, b, lastB, d, lastD)
				}
			}
			// Azeotropes touch: rounding may put dew above bubble by some 1e-12.
			if !(b.P >= d.P*(1-1e-9)) {
				t.Errorf("%s: at %v K bubble pressure %v below dew pressure %v", r.Name, T, b.P, d.P)
			}
			for j, back := range []func(float64) (refrigerant.Point, error){r.BubbleAtP, r.DewAtP} {
				p := []float64{b.P, d.P}[j]
				q, err := back(p)
				if err != nil {
					t.Errorf("%s: kind %d at %v Pa (%v K): %v", r.Name, j, p, T, err)
					continue
				}
				solves += 2
				diff := math.Abs(q.T/T - 1)
				if diff > worst {
					worst, worstAt = diff, r.Name
				}
				// p is steep in T, so that rounding of p leaves about 1e-13 in T; 1e-10 also covers very low pressures.
				if !(diff < 1e-10) {
					t.Errorf("%s: kind %d: T %v -> p %v -> T %v, relative difference %.2g, tolerance 1e-10", r.Name, j, T, p, q.T, diff)
				}
			}
			lastB, lastD = b, d
		}
		for _, p := range []float64{pMin, pMax} {
			if _, err := r.BubbleAtP(p); err != nil {
				t.Errorf("%s: bubble at the limit %v Pa: %v", r.Name, p, err)
			}
			if _, err := r.DewAtP(p); err != nil {
				t.Errorf("%s: dew at the limit %v Pa: %v", r.Name, p, err)
			}
		}
	}
	t.Logf("%d solves; worst return T -> p -> T: relative %.2g (%s)", solves, worst, worstAt)
}

// The vapour's density runs smoothly along the dew line: no state sits on another branch of the equations. Near the critical
// point of some blends (R-452A) Newton's method finds a second, dense "vapour"; this test found it first.
func TestSmooth(t *testing.T) {
	for _, r := range refrigerant.All() {
		low, high := r.Range()
		const n = 200
		h := (high - low) / n
		var x [3]float64
		for i := 0; i <= n; i++ {
			p, err := r.DewAtT(low + h*float64(i))
			if err != nil {
				t.Fatalf("%s: %v", r.Name, err)
			}
			x[0], x[1], x[2] = x[1], x[2], math.Log(p.RhoVapor)
			// The second difference of ln ρ'' is some 1e-3 at this step, 0.05 at the cold end of the widest range (R-124, from
			// 75 K) and 0.02 toward 0.99 of critical; a jump to another root is 0.3 and more.
			if bend := x[0] - 2*x[1] + x[2]; i > 1 && !(math.Abs(bend) < 0.08) {
				t.Errorf("%s: ln ρ'' bends by %.3g near %v K, tolerance 0.08", r.Name, bend, low+h*float64(i))
			}
		}
	}
}

func TestOutside(t *testing.T) {
	for _, r := range refrigerant.All() {
		low, high := r.Range()
		for _, T := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, low * 0.999, high * 1.001, 1e300, r.Critical.T} {
			if p, err := r.BubbleAtT(T); !errors.Is(err, refrigerant.ErrRange) || p != (refrigerant.Point{}) {
				t.Errorf("%s: bubble at %v K: got %+v, %v; want ErrRange", r.Name, T, p, err)
			}
			if p, err := r.DewAtT(T); !errors.Is(err, refrigerant.ErrRange) || p != (refrigerant.Point{}) {
				t.Errorf("%s: dew at %v K: got %+v, %v; want ErrRange", r.Name, T, p, err)
			}
			if v, err := r.LiquidDensity(T, 1e6); !errors.Is(err, refrigerant.ErrRange) || v != 0 {
				t.Errorf("%s: density at %v K: got %v, %v; want ErrRange", r.Name, T, v, err)
			}
		}
		for _, p := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1e5, 1e-300, 1e12, r.Critical.P * 1.2} {
			if q, err := r.BubbleAtP(p); !errors.Is(err, refrigerant.ErrRange) || q != (refrigerant.Point{}) {
				t.Errorf("%s: bubble at %v Pa: got %+v, %v; want ErrRange", r.Name, p, q, err)
			}
			if q, err := r.DewAtP(p); !errors.Is(err, refrigerant.ErrRange) || q != (refrigerant.Point{}) {
				t.Errorf("%s: dew at %v Pa: got %+v, %v; want ErrRange", r.Name, p, q, err)
			}
		}
		mid := (low + high) / 2
		b, err := r.BubbleAtT(mid)
		if err != nil {
			t.Fatal(err)
		}
		if v, err := r.LiquidDensity(mid, b.P*0.9); !errors.Is(err, refrigerant.ErrNotLiquid) || v != 0 {
			t.Errorf("%s: density below the bubble pressure: got %v, %v; want ErrNotLiquid", r.Name, v, err)
		}
		if v, err := r.LiquidDensity(mid, math.NaN()); err == nil || v != 0 {
			t.Errorf("%s: density at p NaN: got %v, %v; want an error", r.Name, v, err)
		}
		// At the bubble pressure it is the saturated liquid; above, denser, by a little.
		v, err := r.LiquidDensity(mid, b.P)
		if err != nil || !(math.Abs(v/b.RhoLiquid-1) < 1e-9) {
			t.Errorf("%s: density at the bubble pressure: got %v, %v; want %v", r.Name, v, err, b.RhoLiquid)
		}
		v, err = r.LiquidDensity(mid, b.P+1e6)
		if err != nil || !(v > b.RhoLiquid && v < 1.3*b.RhoLiquid) {
			t.Errorf("%s: density 1 MPa above the bubble pressure: got %v, %v; saturated %v", r.Name, v, err, b.RhoLiquid)
		}
	}
}

// Random input ends in a finite, sensible state or an error, whatever it is.
func TestRandomInput(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	all := refrigerant.All()
	good := 0
	for range 20000 {
		r := all[rnd.IntN(len(all))]
		x := math.Float64frombits(rnd.Uint64())
		if rnd.IntN(2) == 0 {
			x = math.Exp(rnd.Float64() * 18)
		}
		var p refrigerant.Point
		var err error
		switch rnd.IntN(4) {
		case 0:
			p, err = r.BubbleAtT(x)
		case 1:
			p, err = r.DewAtT(x)
		case 2:
			p, err = r.BubbleAtP(x)
		case 3:
			p, err = r.DewAtP(x)
		}
		if err != nil {
			if errors.Is(err, refrigerant.ErrSolve) {
				t.Errorf("%s at %v: %v", r.Name, x, err)
			}
			continue
		}
		good++
		if !(p.T > 0 && p.P > 0 && p.RhoLiquid > p.RhoVapor && p.RhoVapor > 0) || math.IsInf(p.P, 0) || math.IsInf(p.RhoLiquid, 0) {
			t.Errorf("%s at %v: %+v", r.Name, x, p)
		}
	}
	if good < 1000 {
		t.Errorf("only %d of the random inputs gave a state", good)
	}
}

func FuzzSaturation(f *testing.F) {
	f.Add(uint8(60), 300.0, 1e6)
	f.Add(uint8(70), 0.0, math.Inf(1))
	f.Add(uint8(80), math.NaN(), -1.0)
	all := refrigerant.All()
	f.Fuzz(func(t *testing.T, i uint8, T, p float64) {
		r := all[int(i)%len(all)]
		for _, a := range []func() (refrigerant.Point, error){
			func() (refrigerant.Point, error) { return r.BubbleAtT(T) }, func() (refrigerant.Point, error) { return r.DewAtT(T) },
			func() (refrigerant.Point, error) { return r.BubbleAtP(p) }, func() (refrigerant.Point, error) { return r.DewAtP(p) },
		} {
			q, err := a()
			if err == nil && !(q.T > 0 && q.P > 0 && q.RhoLiquid > q.RhoVapor && q.RhoVapor > 0) {
				t.Errorf("%s at %v K, %v Pa: %+v", r.Name, T, p, q)
			}
		}
		if v, err := r.LiquidDensity(T, p); err == nil && !(v > 0 && v < 1e5) {
			t.Errorf("%s at %v K, %v Pa: density %v", r.Name, T, p, v)
		}
	})
}

// At low pressure the vapour is an ideal gas: ρ” = pM/(RT).
func TestIdealGasLimit(t *testing.T) {
	for _, r := range refrigerant.All() {
		low, _ := r.Range()
		p, err := r.DewAtT(low)
		if err != nil {
			t.Fatal(err)
		}
		if p.P > 2000 {
			continue
		}
		z := p.P * r.MolarMass / (p.RhoVapor * R * p.T)
		// Z = 1 + Bp/(RT); the second virial coefficient reaches -1.4e-2 m³/mol at the cold end (R-11 at 163 K).
		// 2e-5 is for the gas constants of older equations.
		tol := 2e-2*p.P/(R*p.T) + 2e-5
		if !(math.Abs(z-1) < tol) {
			t.Errorf("%s at %v K, %v Pa: compressibility factor %v, want 1 within %.2g", r.Name, p.T, p.P, z, tol)
		}
	}
}

func TestConcurrent(t *testing.T) {
	r := mustLookup(t, "R-448A")
	want, err := r.DewAtT(280)
	if err != nil {
		t.Fatal(err)
	}
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			for range 50 {
				if got, err := r.DewAtT(280); err != nil || got != want {
					t.Errorf("got %+v, %v; want %+v", got, err, want)
				}
			}
		})
	}
	wg.Wait()
}

func TestNoAllocation(t *testing.T) {
	r := mustLookup(t, "R-448A")
	T := 250.0
	n := testing.AllocsPerRun(200, func() {
		T += 0.1
		b, err := r.BubbleAtT(T)
		if err == nil {
			_, err = r.DewAtP(b.P * 0.9)
		}
		if err != nil {
			t.Error(err)
		}
	})
	// A garbage collection may empty the pool once in the run.
	if n >= 1 {
		t.Errorf("%v allocations a solve, want 0", n)
	}
}

// Every key that the catalogue and the check values name is in the bibliography.
func TestSources(t *testing.T) {
	known := map[string]bool{}
	for _, s := range source.All() {
		known[s.Key] = true
	}
	used := map[string]string{}
	for _, r := range refrigerant.All() {
		keys := append([]string{r.RCL.Source, r.LFL.Source, r.ClassKey}, r.Sources()...)
		if len(r.Sources()) == 0 {
			t.Errorf("%s: no sources", r.Name)
		}
		for _, g := range r.GWPs {
			keys = append(keys, g.Source)
		}
		for _, k := range keys {
			if k != "" {
				used[k] = r.Name
			}
		}
	}
	files, _ := filepath.Glob("../../../testdata/published/saturation/*.csv")
	for _, f := range files {
		for _, r := range readRows(t, f) {
			used[r.source] = r.where
		}
	}
	for k, where := range used {
		if !known[k] {
			t.Errorf("source key %q (%s) is not in the bibliography", k, where)
		}
	}
}

func TestMissing(t *testing.T) {
	m, ok := refrigerant.LookupMissing("r438a")
	if !ok || m.Name != "R-438A" || m.Pairs == "" {
		t.Errorf("R-438A: got %+v, %v", m, ok)
	}
	for _, name := range []string{"", "R-410A", "R-999"} {
		if m, ok := refrigerant.LookupMissing(name); ok {
			t.Errorf("%q: got %+v", name, m)
		}
	}
}

// The catalogue against the collected ASHRAE 34 compositions, where that folder is present: every blend is either here with the
// same composition or named as missing.
func TestAgainstCollection(t *testing.T) {
	dir := os.Getenv("CHANGEOUT_SHARED")
	if dir == "" {
		dir = "/work/shared"
	}
	file := filepath.Join(dir, "reference", "eos", "blends.json")
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Skipf("%s is not there (set CHANGEOUT_SHARED); the compositions were NOT compared with it. The molar masses and "+
			"saturation tables of testdata still hold them to account", file)
	}
	var collected []struct {
		Name    string
		Mole    []float64 `json:"mole_fractions"`
		Percent []float64 `json:"mass_percent"`
	}
	if err := json.Unmarshal(raw, &collected); err != nil {
		t.Fatal(err)
	}
	here, left := 0, 0
	for _, c := range collected {
		r, ok := refrigerant.Lookup(c.Name)
		if _, missing := refrigerant.LookupMissing(c.Name); missing == ok {
			t.Errorf("%s: in the catalogue %v, named as missing %v", c.Name, ok, missing)
		}
		if !ok {
			left++
			continue
		}
		here++
		if len(r.Components) != len(c.Percent) {
			t.Errorf("%s: %d components, want %d", r.Name, len(r.Components), len(c.Percent))
			continue
		}
		var sum float64
		for _, p := range c.Percent {
			sum += p
		}
		for i, k := range r.Components {
			// Mass % is printed; mole fractions in the collection carry its molar masses, some of which were revised since.
			if !(math.Abs(k.MassFraction-c.Percent[i]/sum) < 1e-6) || !(math.Abs(k.MoleFraction-c.Mole[i]) < 2e-4) {
				t.Errorf("%s, %s: mass fraction %.8f, want %.8f; mole fraction %.8f, want %.8f; tolerances 1e-6, 2e-4",
					r.Name, k.Name, k.MassFraction, c.Percent[i]/sum, k.MoleFraction, c.Mole[i])
			}
		}
	}
	t.Logf("%d blends compared with %s, %d named as missing", here, file, left)
}
