package mixture

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"testing"

	"changeout/calc/property/fluid"
	"changeout/calc/property/helmholtz"
)

func model(t *testing.T, names ...string) *Model {
	t.Helper()
	var fs []*helmholtz.Equation
	for _, n := range names {
		f, ok := fluid.Lookup(n)
		if !ok {
			t.Fatalf("no fluid %s", n)
		}
		fs = append(fs, f)
	}
	m, err := New(fs...)
	if err != nil {
		t.Fatalf("%v: %v", names, err)
	}
	return m
}

func at(m *Model, T float64, rho ...float64) *helmholtz.Phase {
	ph := &helmholtz.Phase{T: T}
	copy(ph.Rho[:], rho)
	m.Evaluate(ph)
	return ph
}

// Gradient, Hessian and temperature derivatives of F(T, ρ⃗) against difference quotients.
func TestGradient(t *testing.T) {
	for _, c := range []struct {
		names []string
		T     float64
		rho   []float64
	}{
		{[]string{"R-134a"}, 300, []float64{11000}},
		{[]string{"R-32", "R-125"}, 280, []float64{30, 12}},
		{[]string{"R-32", "R-125", "R-134a"}, 320, []float64{4000, 1800, 5000}},
		{[]string{"R-32", "R-125", "R-1234yf", "R-134a", "R-1234ze(E)"}, 260, []float64{5200, 2300, 1800, 2200, 600}},
		{[]string{"R-744", "R-32", "R-1234yf"}, 310, []float64{700, 900, 2500}},
		{[]string{"R-290", "R-600a"}, 350, []float64{900, 1100}},
	} {
		m := model(t, c.names...)
		x := at(m, c.T, c.rho...)
		for k := range c.rho {
			h := 1e-5 * c.rho[k]
			up, down := append([]float64{}, c.rho...), append([]float64{}, c.rho...)
			up[k] += h
			down[k] -= h
			a, b := at(m, c.T, up...), at(m, c.T, down...)
			check := func(what string, got, want, size float64) {
				// Central differences at 1e-5: truncation 1e-10 and rounding 1e-11 of the size of the terms.
				if !(math.Abs(got-want) < 1e-7*size) {
					t.Errorf("%v: %s: got %.12g, difference quotient %.12g, difference %.2g, tolerance %.2g", c.names, what, got, want, got-want, 1e-7*size)
				}
			}
			check("∂F/∂ρ", x.Grad[k], (a.F-b.F)/(2*h), 1+math.Abs(x.Grad[k]))
			for l := range c.rho {
				// Times ρ, the Hessian is of order one to a hundred.
				check("∂²F/∂ρ∂ρ", x.Hess[k][l]*x.Density, (a.Grad[l]-b.Grad[l])/(2*h)*x.Density, 10+math.Abs(x.Hess[k][l]*x.Density))
				if x.Hess[k][l] != x.Hess[l][k] {
					t.Errorf("%v: Hessian not symmetric", c.names)
				}
			}
		}
		h := 1e-5 * c.T
		hot, cold := at(m, c.T+h, c.rho...), at(m, c.T-h, c.rho...)
		if want := (hot.F - cold.F) / (2 * h); !(math.Abs(x.FT-want) < 1e-6*(1+math.Abs(want))) {
			t.Errorf("%v: ∂F/∂T: got %.12g, difference quotient %.12g", c.names, x.FT, want)
		}
		for k := range c.rho {
			if want := (hot.Grad[k] - cold.Grad[k]) / (2 * h); !(math.Abs(x.GradT[k]-want) < 1e-6*(1+math.Abs(want))) {
				t.Errorf("%v: ∂²F/∂ρ∂T: got %.12g, difference quotient %.12g", c.names, x.GradT[k], want)
			}
		}
	}
}

// The order in which components are given does not matter, nor does splitting a component in two.
func TestOrder(t *testing.T) {
	a := at(model(t, "R-32", "R-1234yf", "R-134a"), 300, 3000, 2000, 1000)
	b := at(model(t, "R-134a", "R-32", "R-1234yf"), 300, 1000, 3000, 2000)
	// The same sums in another order: a few units in the last place.
	if !(math.Abs(a.F/b.F-1) < 1e-13) || !(math.Abs(a.Grad[0]/b.Grad[1]-1) < 1e-12) {
		t.Errorf("F: %.15g and %.15g, gradient %.15g and %.15g", a.F, b.F, a.Grad[0], b.Grad[1])
	}
}

// A pure fluid is the limit of a mixture: the trace component changes nothing.
func TestPureLimit(t *testing.T) {
	pure := at(model(t, "R-32"), 300, 15000)
	mix := at(model(t, "R-32", "R-125"), 300, 15000, 1e-9)
	if !(math.Abs(mix.F/pure.F-1) < 1e-11) {
		t.Errorf("F of the mixture %.15g, of the pure fluid %.15g", mix.F, pure.F)
	}
}

// So is its ideal part: the heat capacity of R-134a with a trace of R-32 is that of R-134a, although the two equations have
// other gas constants and reducing temperatures.
func TestTraceOfAnother(t *testing.T) {
	pure, mix := model(t, "R-134a"), model(t, "R-134a", "R-32")
	p, x := at(pure, 320, 40), at(mix, 320, 40, 40e-9)
	_, pt, ptt := pure.Ideal(p)
	_, xt, xtt := mix.Ideal(x)
	// Energies: per mole R times the derivative.
	if got, want := mix.GasConstant()*xtt, pure.GasConstant()*ptt; !(math.Abs(got/want-1) < 1e-8) {
		t.Errorf("R τ²α⁰_ττ: got %.12g, pure %.12g", got, want)
	}
	if got, want := mix.GasConstant()*xt, pure.GasConstant()*pt; !(math.Abs(got/want-1) < 1e-8) {
		t.Errorf("R τα⁰_τ: got %.12g, pure %.12g", got, want)
	}
}

// The conversion of Lemmon-Jacobsen parameters, against their own formulas: Tr = Σ xT + Σ xxξ, 1/ρr = Σ x/ρ + Σ xxζ.
func TestLemmonJacobsen(t *testing.T) {
	m := model(t, "R-32", "R-125", "R-134a")
	x := []float64{0.3, 0.5, 0.2}
	xi := map[[2]int]float64{{0, 1}: 28.95, {0, 2}: 7.909, {1, 2}: -0.4326}
	zeta := map[[2]int]float64{{0, 1}: -6.008e-6, {0, 2}: -2.039e-6, {1, 2}: -3.453e-7}
	var T, v float64
	for i := range x {
		T += x[i] * m.Fluid(i).ReducingT
		v += x[i] / m.Fluid(i).ReducingRho
		for j := i + 1; j < 3; j++ {
			T += x[i] * x[j] * xi[[2]int{i, j}]
			v += x[i] * x[j] * zeta[[2]int{i, j}]
		}
	}
	gotT, gotRho := m.Reducing(x)
	if !(math.Abs(gotT/T-1) < 1e-14) || !(math.Abs(gotRho*v-1) < 1e-14) {
		t.Errorf("reducing state: got %.15g K, %.15g mol/m³; want %.15g, %.15g; source lemmon-jacobsen-2004", gotT, gotRho, T, 1/v)
	}
}

func TestErrors(t *testing.T) {
	if _, err := New(); !errors.Is(err, ErrComponents) {
		t.Errorf("no component: %v", err)
	}
	helium, _ := fluid.Lookup("R-704")
	r32, _ := fluid.Lookup("R-32")
	if _, err := New(helium, r32); !errors.Is(err, ErrPair) {
		t.Errorf("pair without parameters: %v", err)
	}
}

// Every pair literal against the collection of published parameters, where that folder is present.
func TestPairsAgainstCollection(t *testing.T) {
	dir := os.Getenv("CHANGEOUT_SHARED")
	if dir == "" {
		dir = "/work/shared"
	}
	dir = filepath.Join(dir, "reference", "eos")
	raw, err := os.ReadFile(filepath.Join(dir, "binary_pairs.json"))
	if err != nil {
		t.Skipf("the collection of published parameters is not at %s (set CHANGEOUT_SHARED); the pairs were NOT compared with it. "+
			"The saturation tables of testdata still hold them to account", dir)
	}
	var collected []struct {
		CAS1, CAS2, Function, BibTeX     string
		BetaT, GammaT, BetaV, GammaV, Xi float64
		Zeta, F                          float64
	}
	if err := json.Unmarshal(raw, &collected); err != nil {
		t.Fatal(err)
	}
	if raw, err = os.ReadFile(filepath.Join(dir, "departure_functions.json")); err != nil {
		t.Fatal(err)
	}
	var functions []struct {
		Name       string
		N, T, D, L []float64
		Eta, Beta  []float64
	}
	if err := json.Unmarshal(raw, &functions); err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, list := range published {
		for _, p := range list.Pairs {
			count++
			found := false
			for _, c := range collected {
				if c.CAS1 != p.First || c.CAS2 != p.Second {
					continue
				}
				found = true
				got := [7]float64{p.BetaT, p.GammaT, p.BetaV, p.GammaV, p.Xi, p.Zeta, p.F}
				want := [7]float64{c.BetaT, c.GammaT, c.BetaV, c.GammaV, c.Xi, c.Zeta, c.F}
				if c.Function == "" {
					want[6] = 0
				}
				if got != want {
					t.Errorf("%s with %s: got %v, want %v (%s)", p.First, p.Second, got, want, c.BibTeX)
				}
				for _, f := range functions {
					if f.Name != c.Function {
						continue
					}
					if p.Departure == nil || len(p.Departure.Power) != len(f.N) {
						t.Errorf("%s: departure function missing or of another length", f.Name)
						continue
					}
					for i, n := range f.N {
						l := 0.0
						if len(f.L) > 0 {
							l = f.L[i]
						}
						if p.Departure.Power[i] != (helmholtz.Power{n, f.T[i], f.D[i], l}) {
							t.Errorf("%s, term %d: got %v", f.Name, i+1, p.Departure.Power[i])
						}
					}
				}
			}
			if !found {
				t.Errorf("%s with %s is not in the collection in this order", p.First, p.Second)
			}
		}
	}
	t.Logf("%d pairs compared with %s", count, dir)
}
