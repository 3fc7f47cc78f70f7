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
		b, bt, btt := m.IdealOf(i, ph.T)
		x := ph.Rho[i] / ph.Density
		a += x * (b + math.Log(ph.Rho[i]))
		at += x * bt
		att += x * btt
	}
	return a, at, att
}

// IdealOf gives the part of component i alone, without its density: α⁰ = Σ x_i (a_i + ln ρ_i), ρ_i in mol/m³.
func (m *Model) IdealOf(i int, T float64) (a, at, att float64) {
	f := m.fluids[i]
	a, at, att = f.Ideal.Evaluate(T, f.ReducingT)
	k := f.GasConstant / m.gas
	return k*a - math.Log(f.ReducingRho), k * at, k * att
}
