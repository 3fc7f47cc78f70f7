package mixture

import (
	"math"

	"changeout/calc/property/helmholtz"
)

// Ideal gives α⁰ of the mixture and its derivatives τ α⁰_τ and τ² α⁰_ττ at the state of ph, which must have been evaluated:
//
//	α⁰ = Σ x_i (R_i/R α⁰_i(T) + ln(x_i ρ/ρr_i)),
//
// each component with its own equation and reducing state. R_i/R keeps the heat capacity of each component as published,
// whatever gas constant its equation was fitted with. The logarithm of x_i is the entropy of mixing.
func (m *Model) Ideal(ph *helmholtz.Phase) (a, at, att float64) {
	for i := 0; i < m.n; i++ {
		f := m.fluids[i]
		x := ph.Rho[i] / ph.Density
		b, bt, btt := f.Ideal.Evaluate(ph.T, f.ReducingT)
		k := x * f.GasConstant / m.gas
		a += k*b + x*math.Log(ph.Rho[i]/f.ReducingRho)
		at += k * bt
		att += k * btt
	}
	return a, at, att
}
