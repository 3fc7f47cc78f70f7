package helmholtz

import (
	"math"
	"math/rand/v2"
	"testing"
)

// every holds one term of each kind, with numbers of the size met in equations of state.
var every = map[string]Residual{
	"power":       {Power: []Power{{0.5, -0.5, 2, 0}, {-1.2, 1.5, 1, 0}, {0.33, 3, 2, 1}, {-0.08, 5, 4, 2}, {0.01, 22, 3, 6}}},
	"damped":      {Damped: []Damped{{-1.6, 3, 2, 2, 1.21}, {0.34, 4, 0, 2, 1.21}, {-0.7, 1.29, 1, 1, 1.147}}},
	"double":      {Double: []Double{{5.28, 0.669, 1, 0, 0}, {-1.53, 4.5, 2, 2, 1.7}, {0.02, 24, 5, 3, 6}}},
	"gaussian":    {Gaussian: []Gaussian{{2.2, 1.236, 1, 1.307, 1.16, 1.3, 0.853}, {-0.3, 2, 3, 28, 1000, 1.062, 0.96}}},
	"gaob":        {GaoB: []GaoB{{-1.69, 4.33, 1, 2.8452, 0.3696, 1.108, 0.4478, 1.244}, {0.937, 4.015, 1, 2.8342, 0.2962, 1.313, 0.44689, 0.6826}}},
	"nonanalytic": {NonAnalytic: []NonAnalytic{{-0.67, 3.5, 0.875, 0.3, 0.7, 0.3, 10, 275}, {0.055, 3, 0.875, 0.3, 0.7, 1, 12.5, 275}}},
}

func evaluate(r *Residual, tau, delta float64) Derivatives {
	var iso Isotherm
	var chore Isochore
	var d Derivatives
	r.Prepare(&iso, tau, math.Log(tau))
	chore.Set(delta)
	r.Evaluate(&iso, &chore, &d)
	return d
}

// Each derivative against the difference quotient of the one below it.
func TestDerivatives(t *testing.T) {
	for name, r := range every {
		for _, at := range [][2]float64{{0.8, 0.02}, {1.05, 0.7}, {1.02, 1.1}, {1.3, 2.4}, {2.2, 3}} {
			tau, delta := at[0], at[1]
			const h = 1e-5
			d := evaluate(&r, tau, delta)
			up, down := evaluate(&r, tau, delta*(1+h)), evaluate(&r, tau, delta*(1-h))
			hot, cold := evaluate(&r, tau*(1+h), delta), evaluate(&r, tau*(1-h), delta)
			for _, c := range []struct {
				what      string
				got, want float64
			}{
				// x ∂f/∂x by central difference; D itself is δ α_δ, so δ ∂D/∂δ = D + DD.
				{"D", d.D, (up.A - down.A) / (2 * h)},
				{"T", d.T, (hot.A - cold.A) / (2 * h)},
				{"DD", d.D + d.DD, (up.D - down.D) / (2 * h)},
				{"DT", d.DT, (hot.D - cold.D) / (2 * h)},
				{"DT other way", d.DT, (up.T - down.T) / (2 * h)},
				{"TT", d.T + d.TT, (hot.T - cold.T) / (2 * h)},
			} {
				// Truncation is h² times a third derivative: for bells of width 0.03 that is some 1e-5 of the largest term.
				size := math.Abs(d.A) + math.Abs(d.D) + math.Abs(d.T) + math.Abs(d.DD) + math.Abs(d.DT) + math.Abs(d.TT)
				if tol := 1e-5*size + 1e-12; !(math.Abs(c.got-c.want) < tol) {
					t.Errorf("%s at τ=%v δ=%v: %s: got %.12g, difference quotient %.12g, difference %.2g, tolerance %.2g",
						name, tau, delta, c.what, c.got, c.want, c.got-c.want, tol)
				}
			}
		}
	}
}

func TestExp(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	worst := 0.0
	for range 200000 {
		x := (rnd.Float64() - 0.5) * 1390
		if rnd.IntN(2) == 0 {
			x = (rnd.Float64() - 0.5) * 20
		}
		got, want := Exp(x), math.Exp(x)
		diff := math.Abs(got/want - 1)
		worst = max(worst, diff)
		// math.Exp is good to one unit in the last place (2.2e-16), ours to two.
		if !(diff < 6e-16) {
			t.Fatalf("Exp(%v): got %v, want %v, relative difference %.2g, tolerance 6e-16", x, got, want, diff)
		}
	}
	t.Logf("worst relative difference from math.Exp: %.2g", worst)
	for _, x := range []float64{0, 1, -1, 700, -700, 709.7, -745, -1e300, 1e300, math.Inf(1), math.Inf(-1)} {
		if got, want := Exp(x), math.Exp(x); got != want && !(math.Abs(got/want-1) < 6e-16) {
			t.Errorf("Exp(%v): got %v, want %v", x, got, want)
		}
	}
	if !math.IsNaN(Exp(math.NaN())) {
		t.Error("Exp(NaN) is not NaN")
	}
}

// The ideal part: derivatives against difference quotients, and cp⁰/R = 1 - τ² α⁰_ττ of a plain polynomial.
func TestIdeal(t *testing.T) {
	d := Ideal{A1: 1.2, A2: -3, LogTau: 3.1, OffsetA1: 0.2, OffsetA2: -0.7, Power: []IdealPower{{-0.3, -0.5}, {0.02, -3}},
		Einstein: []Einstein{{5, 2.2}, {0.9, 12}}, HeatCapacity: []HeatCapacity{{2.0, 0}, {0.05, 1}, {-4e-5, 2}, {0.7, 0.33}, {3, -1}}, HeatCapacityT0: 273.15}
	const Tr, h = 400, 1e-5
	for _, T := range []float64{200, 300, 450} {
		_, at, att := d.Evaluate(T, Tr)
		// τ(1+h) is T/(1+h)
		hi, hit, _ := d.Evaluate(T/(1+h), Tr)
		lo, lot, _ := d.Evaluate(T/(1-h), Tr)
		if want := (hi - lo) / (2 * h); !(math.Abs(at-want) < 1e-8*(1+math.Abs(want))) {
			t.Errorf("τα_τ at %v K: got %.12g, difference quotient %.12g", T, at, want)
		}
		if want := (hit-lot)/(2*h) - at; !(math.Abs(att-want) < 1e-7*(1+math.Abs(want))) {
			t.Errorf("τ²α_ττ at %v K: got %.12g, difference quotient %.12g", T, att, want)
		}
	}
	p := Ideal{LogTau: -1, HeatCapacity: []HeatCapacity{{4, 0}, {0.01, 1}}, HeatCapacityT0: 300}
	if _, _, att := p.Evaluate(350, Tr); !(math.Abs(1-att-(4+0.01*350)) < 1e-12) {
		t.Errorf("cp⁰/R: got %v, want %v", 1-att, 4+0.01*350)
	}
}
