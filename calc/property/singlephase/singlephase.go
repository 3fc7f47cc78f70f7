// Package singlephase gives the properties of one homogeneous phase, and its density at given temperature and pressure.
//
// Like the saturation solver it knows a substance only by the Helmholtz energy of a phase.
package singlephase

import (
	"errors"
	"math"

	"changeout/calc/property/helmholtz"
)

// Model is what the solver may know of a substance.
type Model interface {
	Len() int
	GasConstant() float64
	Evaluate(*helmholtz.Phase)
	// Ideal gives α⁰, τα⁰_τ and τ²α⁰_ττ of a phase that was evaluated.
	Ideal(*helmholtz.Phase) (a, at, att float64)
}

// ErrNotConverged says that no density was found. No number comes with it.
var ErrNotConverged = errors.New("singlephase: no density at this temperature and pressure")

// Solver holds a model, a composition and the memory of a solve. It belongs to one goroutine at a time.
type Solver struct {
	model Model
	n     int
	z     [helmholtz.MaxComponents]float64
	// Phase is the state last evaluated; after a successful solve it is the answer with all its derivatives.
	Phase helmholtz.Phase
}

// New prepares a solver for the mole fractions z, which must be positive and sum to one.
func New(m Model, z []float64) *Solver {
	s := &Solver{model: m, n: m.Len()}
	copy(s.z[:], z)
	return s
}

// Set evaluates the phase at temperature T, K, and density rho, mol/m³.
func (s *Solver) Set(T, rho float64) {
	s.Phase.T = T
	for i := 0; i < s.n; i++ {
		s.Phase.Rho[i] = s.z[i] * rho
	}
	s.model.Evaluate(&s.Phase)
}

// Pressure gives p, Pa, of the phase last evaluated:
//
//	p = ρRT (1 + δ αʳ_δ).
func (s *Solver) Pressure() float64 {
	return s.Phase.Density * s.model.GasConstant() * s.Phase.T * (1 + s.Phase.Total.D)
}

// Stiffness gives ρ ∂p/∂ρ, Pa, at constant temperature; it is positive where the phase is mechanically stable.
func (s *Solver) Stiffness() float64 {
	d := &s.Phase.Total
	return s.Phase.Density * s.model.GasConstant() * s.Phase.T * (1 + 2*d.D + d.DD)
}

// Density gives the density, mol/m³, at temperature T, K, and absolute pressure p, Pa, by Newton's method in ln ρ from the
// density start, which must lie on the stable branch wanted (the saturated liquid below the critical temperature, for
// instance). A step leaves neither the branch nor a tenth of the density; it is halved where the phase would be unstable.
func (s *Solver) Density(T, p, start float64) (float64, error) {
	if !(T > 0) || !(p > 0) || !(start > 0) || math.IsInf(T, 0) || math.IsInf(p, 0) {
		return 0, ErrNotConverged
	}
	rho := start
	s.Set(T, rho)
	for range 100 {
		k := s.Stiffness()
		if !(k > 0) {
			return 0, ErrNotConverged
		}
		step := (p - s.Pressure()) / k
		if math.Abs(step) < 1e-13 {
			return rho, nil
		}
		small := math.Abs(step) < 1e-9
		step = min(max(step, -0.1), 0.1)
		next := rho * helmholtz.Exp(step)
		s.Set(T, next)
		for tries := 0; !(s.Stiffness() > 0); tries++ {
			if tries == 30 {
				return 0, ErrNotConverged
			}
			step /= 2
			next = rho * helmholtz.Exp(step)
			s.Set(T, next)
		}
		rho = next
		if small {
			return rho, nil
		}
	}
	return 0, ErrNotConverged
}
