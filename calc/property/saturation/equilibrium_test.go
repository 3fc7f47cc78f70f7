package saturation_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"changeout/calc/property/helmholtz"
	"changeout/calc/property/mixture"
	"changeout/calc/property/refrigerant"
	"changeout/calc/property/saturation"
)

// equilibrium tells by how much the logarithms of the fugacities of two phases differ at the most, and by how much their
// pressures differ from p: of the vapour relative to p, of the liquid relative to ρRT, of which it is a small difference.
func equilibrium(m *mixture.Model, T, p float64, liquid, gas *[helmholtz.MaxComponents]float64) (fugacity, vapor, dense float64) {
	var l, g helmholtz.Phase
	l.T, g.T, l.Rho, g.Rho = T, T, *liquid, *gas
	m.Evaluate(&l)
	m.Evaluate(&g)
	for i := range m.Len() {
		fugacity = max(fugacity, math.Abs(math.Log(l.Rho[i]/g.Rho[i])+l.Grad[i]-g.Grad[i]))
	}
	rt := m.GasConstant() * T
	pl, pg := l.Density*rt*(1+l.Total.D), g.Density*rt*(1+g.Total.D)
	return fugacity, math.Abs(pg/p - 1), math.Abs(pl-p) / (l.Density * rt)
}

// Equality of fugacities and of pressure at random bubble points, dew points and states between, of every blend of the
// catalogue; and of a state between, the balance of the components and the enthalpy, entropy or volume asked for.
func TestEquilibriumOfEveryBlend(t *testing.T) {
	rnd := rand.New(rand.NewPCG(31, 32))
	var worst [5]float64
	states := 0
	for _, r := range refrigerant.All() {
		n := len(r.Components)
		if n == 1 {
			continue
		}
		names, z := make([]string, n), make([]float64, n)
		for i, c := range r.Components {
			names[i], z[i] = c.Name, c.MoleFraction
		}
		m := blend(t, names...)
		s := saturation.New(m, z, 0.75*r.Critical.T)
		low, high := r.Range()
		pLow, pHigh, err := r.PressureRange()
		if err != nil {
			t.Fatal(err)
		}
		for range 12 {
			p := pLow * math.Pow(pHigh/pLow, rnd.Float64())
			b, err1 := s.AtP(saturation.Bubble, p, low, high)
			d, err2 := s.AtP(saturation.Dew, p, low, high)
			if err := errors.Join(err1, err2); err != nil {
				t.Errorf("%s: bubble and dew point at %v Pa: %v", r.Name, p, err)
				continue
			}
			bubble, dew := s.Edge(saturation.Bubble, &b), s.Edge(saturation.Dew, &d)
			quantity := helmholtz.Quantity(rnd.IntN(3))
			vb, vd := molar(m, quantity, bubble.T, &bubble.Liquid), molar(m, quantity, dew.T, &dew.Gas)
			want := vb + (vd-vb)*rnd.Float64()
			mid, err := s.Flash(quantity, want, &bubble, &dew, vb, vd)
			if err != nil {
				t.Errorf("%s at %v Pa: quantity %d of %v between %v and %v: %v", r.Name, b.P, quantity, want, vb, vd, err)
				continue
			}
			states += 3
			for _, st := range []*saturation.Split{&bubble, &dew, &mid} {
				f, v, l := equilibrium(m, st.T, b.P, &st.Liquid, &st.Gas)
				worst[0], worst[1], worst[2] = max(worst[0], f), max(worst[1], v), max(worst[2], l)
				// ln f is a sum of terms of some ten to a hundred, and the last step leaves the square of 1e-7: 3e-11. The pressure of
				// the vapour likewise. In a liquid, a step of 1e-14 in ln ρ times its stiffness of some 100 ρRT.
				if !(f < 3e-11) || !(v < 3e-11) || !(l < 3e-12) {
					t.Errorf("%s at %v K, %v Pa, vapour %v: ln f differs by %.2g, tolerance 3e-11; pressure of the vapour by %.2g, tolerance 3e-11, of the liquid by %.2g of ρRT, tolerance 3e-12",
						r.Name, st.T, b.P, st.Vapor, f, v, l)
				}
			}
			got := (1-mid.Vapor)*molar(m, quantity, mid.T, &mid.Liquid) + mid.Vapor*molar(m, quantity, mid.T, &mid.Gas)
			diff := math.Abs(got-want) / (vd - vb)
			worst[3] = max(worst[3], diff)
			if !(diff < 1e-10) {
				t.Errorf("%s at %v Pa: quantity %d is %v, want %v, difference %.2g of its change on boiling, tolerance 1e-10", r.Name, b.P, quantity, got, want, diff)
			}
			var sl, sg float64
			for i := range n {
				sl += mid.Liquid[i]
				sg += mid.Gas[i]
			}
			for i := range n {
				sum := (1-mid.Vapor)*mid.Liquid[i]/sl + mid.Vapor*mid.Gas[i]/sg
				worst[4] = max(worst[4], math.Abs(sum-z[i]))
				if !(math.Abs(sum-z[i]) < 1e-12) {
					t.Errorf("%s at %v Pa: mole fraction of %s in both phases together %v, want %v, tolerance 1e-12", r.Name, b.P, names[i], sum, z[i])
				}
			}
		}
	}
	t.Logf("%d states; worst: ln f %.2g, pressure of vapour %.2g, of liquid %.2g of ρRT, quantity %.2g, balance %.2g", states, worst[0], worst[1], worst[2], worst[3], worst[4])
	if states < 3000 {
		t.Errorf("only %d states", states)
	}
}

// molar gives the molar quantity of a phase by the formulas of package singlephase, written again from α: h = u + p/ρ, s = (u - a)/T.
func molar(m *mixture.Model, quantity helmholtz.Quantity, T float64, rho *[helmholtz.MaxComponents]float64) float64 {
	ph := helmholtz.Phase{T: T, Rho: *rho}
	m.Evaluate(&ph)
	a, at, _ := m.Ideal(&ph)
	R := m.GasConstant()
	u := R * T * (at + ph.Total.T)
	switch quantity {
	case helmholtz.Enthalpy:
		return u + R*T*(1+ph.Total.D)
	case helmholtz.Entropy:
		return u/T - R*(a+ph.Total.A)
	}
	return 1 / ph.Density
}
