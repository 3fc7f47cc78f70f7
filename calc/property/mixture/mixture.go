// Package mixture is the multi-fluid mixture model: pure-fluid equations of state joined by reducing functions for
// temperature and density and, where data allowed it, by a departure function for a pair.
//
//	αʳ(τ, δ, x) = Σ x_i αʳ_i(τ, δ) + Σ_{i<j} x_i x_j F_ij αʳ_ij(τ, δ)
//	τ = Tr(x)/T,   δ = ρ/ρr(x)
//
// The reducing functions are those of GERG-2008 (Kunz and Wagner, J. Chem. Eng. Data 57 (2012) 3032), equations 16 and 17:
//
//	Y(x) = Σ x_i² Y_i + Σ_{i<j} 2 x_i x_j β γ Y_ij (x_i + x_j)/(β² x_i + x_j)
//
// with Y_ij = (T_i T_j)^½ for Tr and Y_ij = ⅛ (ρ_i^-⅓ + ρ_j^-⅓)³ for 1/ρr. Parameters in the form of Lemmon and Jacobsen
// (J. Phys. Chem. Ref. Data 33 (2004) 593) are converted when a model is built; the two forms agree exactly.
//
// A pure fluid is the mixture of one component, evaluated with its equation's own gas constant. A mixture uses one
// constant for all, that of CODATA 2018, as reference libraries do; a component's equation was fitted with a constant
// that may differ by some 1e-6, which the mixture parameters, fitted to some 1e-3, cannot see.
package mixture

import (
	"errors"
	"math"

	"changeout/calc/property/helmholtz"
)

// GasConstant of all mixtures, J/(mol K), CODATA 2018 (exact).
const GasConstant = 8.31446261815324

// Errors of New.
var (
	ErrComponents = errors.New("mixture: needs one to six components with positive mole fractions that sum to one")
	ErrPair       = errors.New("mixture: no published parameters for a pair of components")
)

// Model is a mixture of given components. It does not hold a composition: that is in the densities of a phase.
// A Model never changes after New and may be shared.
type Model struct {
	n                   int
	gas                 float64
	fluids              [helmholtz.MaxComponents]*helmholtz.Equation
	temperature, volume reducing
	pairs               []departurePair
	sources             []string
}

// departurePair is one pair i<j with a departure function.
type departurePair struct {
	i, j     int
	f        float64
	residual *helmholtz.Residual
}

// New joins the equations with the published parameters of every pair among them. ErrPair says that one is missing.
func New(fluids ...*helmholtz.Equation) (*Model, error) {
	n := len(fluids)
	if n < 1 || n > helmholtz.MaxComponents {
		return nil, ErrComponents
	}
	m := &Model{n: n, gas: GasConstant}
	if n == 1 {
		m.gas = fluids[0].GasConstant
	}
	for i, f := range fluids {
		m.fluids[i] = f
		m.cite(f.Source)
		m.temperature.y[i] = f.ReducingT
		m.volume.y[i] = 1 / f.ReducingRho
	}
	for i := 0; i < n; i++ {
		for j := i + 1; j < n; j++ {
			p, source, ok := find(fluids[i].CAS, fluids[j].CAS)
			if !ok {
				return nil, ErrPair
			}
			m.cite(source)
			ti, tj := fluids[i].ReducingT, fluids[j].ReducingT
			vi, vj := 1/fluids[i].ReducingRho, 1/fluids[j].ReducingRho
			c := math.Cbrt(vi) + math.Cbrt(vj)
			m.temperature.set(i, j, p.BetaT, p.GammaT*math.Sqrt(ti*tj))
			m.volume.set(i, j, p.BetaV, p.GammaV*c*c*c/8)
			if p.Xi != 0 || p.Zeta != 0 {
				// Lemmon and Jacobsen: Tr = Σ x_i T_i + Σ x_i x_j ξ, 1/ρr = Σ x_i v_i + Σ x_i x_j ζ. With Σ x = 1 the
				// linear sums are Σ x_i² Y_i + Σ x_i x_j (Y_i + Y_j), so that βγY_ij = (Y_i + Y_j + ξ)/2 and β = 1.
				m.temperature.set(i, j, 1, (ti+tj+p.Xi)/2)
				m.volume.set(i, j, 1, (vi+vj+p.Zeta)/2)
			}
			if p.Departure != nil && p.F != 0 {
				m.pairs = append(m.pairs, departurePair{i, j, p.F, p.Departure})
			}
		}
	}
	return m, nil
}

// cite adds a bibliography key once.
func (m *Model) cite(key string) {
	for _, k := range m.sources {
		if k == key {
			return
		}
	}
	m.sources = append(m.sources, key)
}

// Sources gives the bibliography keys of the equations and of the mixture parameters. The slice must not be changed.
func (m *Model) Sources() []string { return m.sources }

// Len gives the number of components.
func (m *Model) Len() int { return m.n }

// GasConstant gives R, J/(mol K).
func (m *Model) GasConstant() float64 { return m.gas }

// Fluid gives the equation of component i.
func (m *Model) Fluid(i int) *helmholtz.Equation { return m.fluids[i] }

// Reducing gives Tr, K, and ρr, mol/m³, at the composition x.
func (m *Model) Reducing(x []float64) (T, rho float64) {
	var xs [helmholtz.MaxComponents]float64
	copy(xs[:], x)
	var t, v reduced
	m.temperature.value(m.n, &xs, &t)
	m.volume.value(m.n, &xs, &v)
	return t.y, 1 / v.y
}
