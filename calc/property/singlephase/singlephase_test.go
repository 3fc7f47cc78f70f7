package singlephase_test

import (
	"errors"
	"math"
	"testing"

	"changeout/calc/property/fluid"
	"changeout/calc/property/helmholtz"
	"changeout/calc/property/mixture"
	"changeout/calc/property/singlephase"
)

func solver(t *testing.T, z []float64, names ...string) *singlephase.Solver {
	t.Helper()
	var fs []*helmholtz.Equation
	for _, n := range names {
		f, ok := fluid.Lookup(n)
		if !ok {
			t.Fatal(n)
		}
		fs = append(fs, f)
	}
	m, err := mixture.New(fs...)
	if err != nil {
		t.Fatal(err)
	}
	return singlephase.New(m, z)
}

// A density found gives the pressure back, in the vapour, the liquid and the dense region.
func TestDensity(t *testing.T) {
	for _, c := range []struct {
		what        string
		s           *singlephase.Solver
		T, p, start float64
	}{
		{"vapour", solver(t, []float64{1}, "R-134a"), 300, 3e5, 120},
		{"liquid", solver(t, []float64{1}, "R-134a"), 300, 3e6, 11700},
		{"cold stiff liquid", solver(t, []float64{1}, "R-290"), 120, 1e5, 15500},
		{"dense gas", solver(t, []float64{1}, "R-744"), 320, 12e6, 20000},
		{"blend", solver(t, []float64{0.7, 0.3}, "R-32", "R-125"), 280, 5e6, 15000},
	} {
		rho, err := c.s.Density(c.T, c.p, c.start)
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		c.s.Set(c.T, rho)
		// The last step in ln ρ is below 1e-9 and convergence is quadratic; a cold liquid multiplies what is left, and rounding,
		// by its stiffness over the pressure, some 1e4.
		if got := c.s.Pressure(); !(math.Abs(got/c.p-1) < 1e-10) {
			t.Errorf("%s: density %v gives pressure %.12g, want %.12g, relative difference %.2g, tolerance 1e-10", c.what, rho, got, c.p, got/c.p-1)
		}
	}
}

func TestErrors(t *testing.T) {
	s := solver(t, []float64{1}, "R-134a")
	for _, c := range [][3]float64{{math.NaN(), 1e5, 40}, {300, math.NaN(), 40}, {300, 1e5, math.NaN()}, {300, 0, 40}, {-1, 1e5, 40}, {300, 1e5, 0},
		{math.Inf(1), 1e5, 40}, {300, math.Inf(1), 40}, {300, 1e5, 5000} /* inside the spinodal */} {
		if rho, err := s.Density(c[0], c[1], c[2]); !errors.Is(err, singlephase.ErrNotConverged) || rho != 0 {
			t.Errorf("Density(%v): got %v, %v; want an error", c, rho, err)
		}
	}
	if q, err := s.AtTRho(300, 5000); !errors.Is(err, singlephase.ErrNotConverged) || q != (singlephase.Properties{}) {
		t.Errorf("unstable state: got %+v, %v; want an error", q, err)
	}
}

// An ideal gas at the low density end: cp - cv = R, h independent of density, w² = cp/cv RT/M.
func TestIdealGas(t *testing.T) {
	for _, f := range fluid.All {
		s := solver(t, []float64{1}, f.Name)
		T := 0.5 * (f.CriticalT + math.Min(f.MaxT, 1.5*f.CriticalT))
		q, err := s.AtTRho(T, 1e-3)
		if err != nil {
			t.Errorf("%s: %v", f.Name, err)
			continue
		}
		// The virial terms at 1e-3 mol/m³ are some 1e-6.
		if !(math.Abs((q.Cp-q.Cv)/f.GasConstant-1) < 1e-5) || !(math.Abs(q.SoundSquared/(f.GasConstant*T*q.Cp/q.Cv)-1) < 1e-5) {
			t.Errorf("%s at %v K: cp-cv %v, w²M %v; want R %v and RT cp/cv", f.Name, T, q.Cp-q.Cv, q.SoundSquared, f.GasConstant)
		}
		// Heat capacity of a gas of these molecules: between that of a monatomic gas and 60 R.
		if cp := q.Cp / f.GasConstant; !(cp > 2.499 && cp < 60) {
			t.Errorf("%s at %v K: cp⁰/R = %v", f.Name, T, cp)
		}
	}
}
