package curve_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"changeout/calc/property/curve"
	"changeout/calc/property/refrigerant"
)

// offered are the refrigerants that have curves: all but the gases that are no charge (see build/internal/curves).
func offered(t testing.TB) (list []*refrigerant.Refrigerant, curves []*curve.Curve) {
	t.Helper()
	for _, r := range refrigerant.All() {
		c, ok := curve.Lookup(r.Name)
		if want := r.Critical.T > 213.15 || r.Name == "R-728"; ok != want {
			t.Errorf("%s: curves found: %v, want %v", r.Name, ok, want)
		}
		if ok {
			list, curves = append(list, r), append(curves, c)
		}
	}
	if len(list) < 150 {
		t.Fatalf("%d refrigerants with curves, want 150", len(list))
	}
	return list, curves
}

// off is the relative difference; NaN counts as infinite.
func off(got, want float64) float64 {
	if d := math.Abs(got/want - 1); d >= 0 {
		return d
	}
	return math.Inf(1)
}

// The curves against the equations, away from the grid on which they were measured when they were made: at random temperatures,
// seeded, and at both ends. Fails when an equation, a composition or the data change without the other.
func TestAgainstEquations(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 12))
	list, curves := offered(t)
	names := [4]string{"bubble pressure", "dew pressure", "liquid density", "vapour density"}
	var worst [4]float64
	var at [4]string
	for i, r := range list {
		c := curves[i]
		low, high := r.Range()
		if !(c.TMin >= low && c.TMax <= high && high-c.TMax < 0.002) {
			t.Errorf("%s: curves from %v to %v K, equations from %v to %v K", r.Name, c.TMin, c.TMax, low, high)
		}
		for k := range 40 {
			T := c.TMin + (c.TMax-c.TMin)*[]float64{0, 1, rnd.Float64()}[min(k, 2)]
			b, err1 := r.BubbleAtT(T)
			d, err2 := r.DewAtT(T)
			if err := errors.Join(err1, err2); err != nil {
				t.Fatalf("%s at %v K: %v", r.Name, T, err)
			}
			for j, f := range []func(float64) (float64, error){c.BubbleP, c.DewP, c.LiquidDensity, c.VaporDensity} {
				want := []float64{b.P, d.P, b.RhoLiquid, d.RhoVapor}[j]
				got, err := f(T)
				diff := off(got, want)
				// What the issue asks for, and what a technician's gauge cannot see by a factor of a thousand.
				if err != nil || !(diff < curve.Tolerance) {
					t.Errorf("%s %s at %.2f K: got %.10g, %v; want %.10g, relative difference %.2g, tolerance %.0e; source: the equations of state in package refrigerant",
						r.Name, names[j], T, got, err, want, diff, curve.Tolerance)
				}
				if diff > worst[j] {
					worst[j], at[j] = diff, r.Name
				}
			}
		}
	}
	for j, w := range worst {
		t.Logf("worst %s: %.2g (%s)", names[j], w, at[j])
	}
}

// T(p(T)) comes back, pressures and the vapour's density rise with temperature, the liquid's falls, dew is not above bubble.
func TestMonotoneAndBack(t *testing.T) {
	list, curves := offered(t)
	worst := 0.0
	for i, c := range curves {
		blend := len(list[i].Components) > 1
		const steps = 400
		var last [4]float64
		for k := 0; k <= steps; k++ {
			T := c.TMin + (c.TMax-c.TMin)*float64(k)/steps
			var v [4]float64
			var err [4]error
			v[0], err[0] = c.BubbleP(T)
			v[1], err[1] = c.DewP(T)
			v[2], err[2] = c.LiquidDensity(T)
			v[3], err[3] = c.VaporDensity(T)
			if e := errors.Join(err[:]...); e != nil {
				t.Fatalf("%s at %v K: %v", c.Name, T, e)
			}
			// Water is densest at 277 K, the one liquid here that expands when it cools.
			falls := v[2] < last[2] || c.Name == "R-718" && T < 285
			if k > 0 && !(v[0] > last[0] && v[1] > last[1] && v[3] > last[3] && falls) {
				t.Errorf("%s at %v K: %v after %v: not monotone", c.Name, T, v, last)
			}
			// An azeotrope touches: the two pressures may cross by their tolerance.
			if !(v[1] <= v[0]*(1+2*curve.Tolerance)) || !blend && v[0] != v[1] {
				t.Errorf("%s at %v K: dew pressure %v, bubble pressure %v", c.Name, T, v[1], v[0])
			}
			last = v
			for j, f := range []func(float64) (float64, error){c.BubbleT, c.DewT} {
				got, err := f(v[j])
				diff := off(got, T)
				worst = max(worst, diff)
				if err != nil || !(diff < 1e-9) {
					t.Errorf("%s: T %v -> p %v -> T %v, %v; relative difference %.2g, tolerance 1e-9", c.Name, T, v[j], got, err, diff)
				}
			}
		}
	}
	t.Logf("worst return of T: relative %.2g", worst)
}

// Outside the range there is an error and no number.
func TestOutside(t *testing.T) {
	_, curves := offered(t)
	for _, c := range curves {
		for _, T := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, c.TMin * 0.9999, c.TMax * 1.0001, 1e300} {
			for j, f := range []func(float64) (float64, error){c.BubbleP, c.DewP, c.LiquidDensity, c.VaporDensity} {
				if v, err := f(T); !errors.Is(err, curve.ErrRange) || v != 0 {
					t.Errorf("%s, function %d at %v K: got %v, %v; want ErrRange", c.Name, j, T, v, err)
				}
			}
		}
		low, _ := c.DewP(c.TMin)
		high, _ := c.BubbleP(c.TMax)
		for _, p := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1e5, low * 0.9999, high * 1.0001, 1e300, 5e-324} {
			for j, f := range []func(float64) (float64, error){c.BubbleT, c.DewT} {
				if v, err := f(p); !errors.Is(err, curve.ErrRange) || v != 0 {
					t.Errorf("%s, function %d at %v Pa: got %v, %v; want ErrRange", c.Name, j, p, v, err)
				}
			}
		}
	}
	for _, name := range []string{"", "R-", "r-32", "R-438A", "R-704"} {
		if c, ok := curve.Lookup(name); ok {
			t.Errorf("Lookup(%q): got curves of %s, want none", name, c.Name)
		}
	}
}

func TestNoAllocation(t *testing.T) {
	c, _ := curve.Lookup("R-448A")
	n := testing.AllocsPerRun(100, func() {
		p, _ := c.DewP(280)
		c.DewT(p)
		c.BubbleT(p)
		c.VaporDensity(280)
		c.LiquidDensity(280)
	})
	if n != 0 {
		t.Errorf("%v allocations in five answers, want none", n)
	}
}

func FuzzCurve(f *testing.F) {
	_, curves := offered(f)
	f.Add(uint8(60), 300.0, 1e6)
	f.Add(uint8(7), math.NaN(), math.Inf(1))
	f.Add(uint8(149), 198.15, 5e-324)
	f.Fuzz(func(t *testing.T, i uint8, T, p float64) {
		c := curves[int(i)%len(curves)]
		for _, f := range []func(float64) (float64, error){c.BubbleP, c.DewP, c.LiquidDensity, c.VaporDensity} {
			if v, err := f(T); (err == nil) != (v > 0) || math.IsInf(v, 0) || v != v {
				t.Errorf("%s at %v K: %v, %v", c.Name, T, v, err)
			}
		}
		for _, f := range []func(float64) (float64, error){c.BubbleT, c.DewT} {
			if v, err := f(p); err == nil && !(v > c.TMin*(1-1e-9) && v < c.TMax*(1+1e-9)) || err != nil && v != 0 {
				t.Errorf("%s at %v Pa: %v, %v", c.Name, p, v, err)
			}
		}
	})
}

var sink float64

func benchmark(b *testing.B, f func(c *curve.Curve) func(float64) (float64, error), from, step float64) {
	c, _ := curve.Lookup("R-448A")
	g := f(c)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		v, err := g(from + step*float64(i&63))
		if err != nil {
			b.Fatal(err)
		}
		sink += v
	}
}

func BenchmarkCurveDewP(b *testing.B) {
	benchmark(b, func(c *curve.Curve) func(float64) (float64, error) { return c.DewP }, 235, 1)
}

func BenchmarkCurveDewT(b *testing.B) {
	benchmark(b, func(c *curve.Curve) func(float64) (float64, error) { return c.DewT }, 3e5, 2e4)
}

func BenchmarkCurveVaporDensity(b *testing.B) {
	benchmark(b, func(c *curve.Curve) func(float64) (float64, error) { return c.VaporDensity }, 235, 1)
}
