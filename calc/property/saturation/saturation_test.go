package saturation_test

import (
	"errors"
	"math"
	"testing"

	"changeout/calc/property/fluid"
	"changeout/calc/property/helmholtz"
	"changeout/calc/property/mixture"
	"changeout/calc/property/saturation"
)

func blend(t *testing.T, names ...string) *mixture.Model {
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
	return m
}

// The conditions themselves, evaluated afresh: fugacity of every component and pressure equal in both phases.
func TestEquilibrium(t *testing.T) {
	for _, c := range []struct {
		names []string
		z     []float64
		t0    float64
	}{
		{[]string{"R-290"}, []float64{1}, 280},
		{[]string{"R-32", "R-1234yf"}, []float64{0.83, 0.17}, 265},
		{[]string{"R-744", "R-32", "R-1234yf"}, []float64{0.06, 0.36, 0.58}, 270},
		{[]string{"R-32", "R-125", "R-1234yf", "R-134a", "R-1234ze(E)"}, []float64{0.43, 0.187, 0.151, 0.178, 0.054}, 265},
	} {
		m := blend(t, c.names...)
		s := saturation.New(m, c.z, c.t0)
		for _, kind := range []saturation.Kind{saturation.Bubble, saturation.Dew} {
			for T := 230.0; T < 340; T += 11 {
				st, err := s.AtT(kind, T)
				if err != nil {
					t.Errorf("%v kind %d at %v K: %v", c.names, kind, T, err)
					continue
				}
				known, inc := &helmholtz.Phase{T: T}, &helmholtz.Phase{T: T}
				rhoKnown, rhoInc := st.RhoLiquid, st.RhoVapor
				if kind == saturation.Dew {
					rhoKnown, rhoInc = rhoInc, rhoKnown
				}
				for i := range c.z {
					known.Rho[i], inc.Rho[i] = c.z[i]*rhoKnown, st.Incipient[i]*rhoInc
				}
				m.Evaluate(known)
				m.Evaluate(inc)
				for i := range c.z {
					a, b := math.Log(known.Rho[i])+known.Grad[i], math.Log(inc.Rho[i])+inc.Grad[i]
					// ln f is a sum of terms up to some hundred: 1e-11 is rounding.
					if !(math.Abs(a-b) < 1e-11) {
						t.Errorf("%v kind %d at %v K: ln f of %s: %.15g and %.15g, difference %.2g, tolerance 1e-11", c.names, kind, T, c.names[i], a, b, a-b)
					}
				}
				for _, ph := range []*helmholtz.Phase{known, inc} {
					p := ph.Density * m.GasConstant() * T * (1 + ph.Total.D)
					// The last step leaves 1e-14 in ln ρ, which the stiffness of a liquid turns into some 1e-11 of the pressure; and the
					// pressure of a liquid is a difference of large numbers.
					tol := 2e-10*st.P + 1e-13*ph.Density*m.GasConstant()*T
					if !(math.Abs(p-st.P) < tol) {
						t.Errorf("%v kind %d at %v K: pressure of a phase %.12g, of the state %.12g, tolerance %.2g", c.names, kind, T, p, st.P, tol)
					}
				}
			}
		}
	}
}

// The jacobian is right if Newton's method converges quadratically: from a state 2 % off, few steps are needed. A wrong
// derivative shows as a solve that fails or falls back, which is far slower; the count of model calls tells.
func TestFewEvaluations(t *testing.T) {
	c := &counter{Model: blend(t, "R-32", "R-125", "R-1234yf", "R-134a", "R-1234ze(E)")}
	s := saturation.New(c, []float64{0.43, 0.187, 0.151, 0.178, 0.054}, 265)
	solves := 0
	for T := 220.0; T < 345; T++ {
		for _, kind := range []saturation.Kind{saturation.Bubble, saturation.Dew} {
			st, err := s.AtT(kind, T)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := s.AtP(kind, st.P, 200, 350); err != nil {
				t.Fatal(err)
			}
			solves += 2
		}
	}
	per := float64(c.calls) / float64(solves)
	t.Logf("%.1f phase evaluations a solve", per)
	// Two phases, seven steps and the last look make 16.
	if !(per < 20) {
		t.Errorf("%.1f phase evaluations a solve, want below 20", per)
	}
}

type counter struct {
	*mixture.Model
	calls int
}

func (c *counter) Evaluate(ph *helmholtz.Phase) {
	c.calls++
	c.Model.Evaluate(ph)
}

// broken is a model that answers nonsense: the solver must end in an error all the same.
type broken struct {
	*mixture.Model
	value float64
}

func (b broken) Evaluate(ph *helmholtz.Phase) {
	b.Model.Evaluate(ph)
	ph.F, ph.Grad[0], ph.Hess[0][0], ph.GradT[0] = b.value, b.value, b.value, b.value
}

func TestBrokenModel(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), 0, -1e300, 1e300} {
		s := saturation.New(broken{blend(t, "R-32", "R-125"), v}, []float64{0.7, 0.3}, 260)
		for _, kind := range []saturation.Kind{saturation.Bubble, saturation.Dew} {
			st, err := s.AtT(kind, 300)
			if err == nil && (math.IsNaN(st.P) || !(st.P > 0)) {
				t.Errorf("model answers %v: got %+v without error", v, st)
			}
			st, err = s.AtP(kind, 1e6, 200, 340)
			if err == nil && (math.IsNaN(st.P) || !(st.P > 0)) {
				t.Errorf("model answers %v: got %+v without error", v, st)
			}
		}
	}
	s := saturation.New(blend(t, "R-32", "R-125"), []float64{0.7, 0.3}, 260)
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -5, 1e-300, 1e300} {
		if st, err := s.AtT(saturation.Bubble, x); !errors.Is(err, saturation.ErrNotConverged) || st != (saturation.State{}) {
			t.Errorf("T=%v: got %+v, %v", x, st, err)
		}
		if st, err := s.AtP(saturation.Dew, x, 200, 340); !errors.Is(err, saturation.ErrNotConverged) || st != (saturation.State{}) {
			t.Errorf("p=%v: got %+v, %v", x, st, err)
		}
	}
}
