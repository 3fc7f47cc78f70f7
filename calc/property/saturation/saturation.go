// Package saturation solves for the bubble point and the dew point of a mixture of fixed composition, and for the
// saturation state of a pure fluid, which is the mixture of one component.
//
// It knows a substance only as a Model. The equations are solved in the densities, without any density iteration inside:
// unknown are the logarithms of the density of the phase whose composition is given, of every component density in the
// other phase, and, where the pressure is given, of the temperature. The conditions are
//
//	ln f_i' = ln f_i''   for every component,     p' = p'',     and p = p given.
//
// The Jacobian is analytic, from the Hessian of the Helmholtz energy density. Isochoric phase equilibrium in this form:
// Deiters and Bell, AIChE Journal 65 (2019) e16730; Bell and Deiters, AIChE Journal 64 (2018) 2745 (citations from memory).
//
// A solve allocates nothing, takes a bounded number of steps and ends in a state or an error, never in a NaN.
package saturation

import (
	"errors"
	"math"

	"changeout/calc/property/helmholtz"
	"changeout/calc/property/table"
)

// Model is what the solver may know of a substance.
type Model interface {
	// Len gives the number of components.
	Len() int
	// GasConstant gives R, J/(mol K).
	GasConstant() float64
	// Evaluate fills a phase from its temperature and densities.
	Evaluate(*helmholtz.Phase)
	// StartPressure and StartDensities give rough saturation values of component i alone, see mixture.Model.
	StartPressure(i int, T float64) float64
	StartDensities(i int, T, p float64) (liquid, vapor float64)
	// IdealOf gives the ideal part of component i at T, see mixture.Model.
	IdealOf(i int, T float64) (a, at, att float64)
}

// ErrNotConverged says that no state was found. No number comes with it.
var ErrNotConverged = errors.New("saturation: no converged state")

// Kind says which phase has the given composition.
type Kind uint8

const (
	Bubble Kind = iota // the liquid; the vapour is incipient
	Dew                // the vapour; the liquid is incipient
)

// State is a saturation state. Densities are molar, mol/m³.
type State struct {
	T, P                float64
	RhoLiquid, RhoVapor float64
	Incipient           [helmholtz.MaxComponents]float64 // mole fractions of the incipient phase
}

// Solver holds a model, a composition and the memory of a solve. It belongs to one goroutine at a time.
type Solver struct {
	model Model
	n     int
	z     [maxN]float64 // mole fractions given
	lnZ   [maxN]float64
	tRef  float64 // K, where solving is easy: some 0.75 of the critical temperature

	known, incipient helmholtz.Phase
	lnKnown          float64
	lnInc            [maxN]float64
	lnT              float64
	jac              matrix
	rough            rough
	quantity         helmholtz.Quantity // that Flash looks for
	span             float64            // its scale
	pressure         float64            // p/(RT) of the vapour, mol/m³
	slope            [maxN + 1]float64  // its derivatives with ln ρ of the known phase, or with ln ρ_i of the incipient one
}

const maxN = helmholtz.MaxComponents

// matrix is an augmented matrix, large enough for the 2N+2 unknowns of Flash.
type matrix [2*maxN + 2][2*maxN + 3]float64

// New prepares a solver for the mole fractions z, which must be positive and sum to one. tRef, K, is a temperature at
// which saturation is easy to find; continuation starts there when a solve from scratch fails.
func New(m Model, z []float64, tRef float64) *Solver {
	s := &Solver{model: m, n: m.Len(), tRef: tRef}
	copy(s.z[:], z)
	for i := 0; i < s.n; i++ {
		s.lnZ[i] = math.Log(s.z[i])
	}
	return s
}

// AtT gives the bubble or dew point at temperature T, K.
func (s *Solver) AtT(kind Kind, T float64) (State, error) {
	if !(T > 0) || math.IsInf(T, 0) {
		return State{}, ErrNotConverged
	}
	s.lnT = math.Log(T)
	s.start(kind, T)
	if s.newton(kind, 0) {
		return s.state(kind, T, 0), nil
	}
	return s.continued(kind, T)
}

// AtP gives the bubble or dew point at absolute pressure p, Pa, looked for between tLow and tHigh, K.
func (s *Solver) AtP(kind Kind, p, tLow, tHigh float64) (State, error) {
	if !(p > 0) || math.IsInf(p, 0) || !(tLow < tHigh) {
		return State{}, ErrNotConverged
	}
	T := s.roughT(kind, math.Log(p), tLow, tHigh)
	s.lnT = math.Log(T)
	s.start(kind, T)
	if s.newton(kind, p) {
		if t := helmholtz.Exp(s.lnT); t > 0.9*tLow && t < 1.1*tHigh {
			return s.state(kind, t, p), nil
		}
	}
	return s.bracketed(kind, p, T, tLow, tHigh)
}

// start sets the unknowns from Raoult's law and the saturation curves of the components.
func (s *Solver) start(kind Kind, T float64) {
	var p, v, z float64 // pressure; molar volume of the liquid; compressibility factor of the vapour
	var y, pi, li, vi [maxN]float64
	rt := s.model.GasConstant() * T
	for i := 0; i < s.n; i++ {
		pi[i] = s.model.StartPressure(i, T)
		li[i], vi[i] = s.model.StartDensities(i, T, pi[i])
		if kind == Bubble {
			p += s.z[i] * pi[i]
		} else {
			p += s.z[i] / pi[i]
		}
	}
	if kind == Dew {
		p = 1 / p
	}
	for i := 0; i < s.n; i++ {
		liquid, vapor := s.z[i], s.z[i]
		if kind == Bubble {
			y[i] = s.z[i] * pi[i] / p
			vapor = y[i]
		} else {
			y[i] = s.z[i] * p / pi[i]
			liquid = y[i]
		}
		v += liquid / li[i]
		z += vapor * pi[i] / (rt * vi[i])
	}
	liquid, vapor := 1/v, p/(rt*min(max(z, 0.3), 1))
	known, inc := liquid, vapor
	if kind == Dew {
		known, inc = vapor, liquid
	}
	s.lnKnown = math.Log(known)
	for i := 0; i < s.n; i++ {
		s.lnInc[i] = math.Log(inc * y[i])
	}
}

// roughPressure is the pressure of Raoult's law.
func (s *Solver) roughPressure(kind Kind, T float64) float64 {
	var sum float64
	for i := 0; i < s.n; i++ {
		p := s.model.StartPressure(i, T)
		if kind == Bubble {
			sum += s.z[i] * p
		} else {
			sum += s.z[i] / p
		}
	}
	if kind == Dew {
		return 1 / sum
	}
	return sum
}

// rough is a table of ln p by Raoult's law at even steps of 1/T, along which vapour pressure is nearly straight. It is made
// at the first question for a range of temperatures and turns a pressure into a first guess of T for next to nothing.
type rough struct {
	tLow, tHigh float64
	lnP         [2][roughNodes]float64 // bubble, dew; from tHigh down to tLow
	made        [2]bool
}

const roughNodes = 12

// roughT inverts the table by a cubic through the four nodes around the pressure.
func (s *Solver) roughT(kind Kind, lnP, tLow, tHigh float64) float64 {
	r := &s.rough
	if r.tLow != tLow || r.tHigh != tHigh {
		*r = rough{tLow: tLow, tHigh: tHigh}
	}
	step := (1/tLow - 1/tHigh) / (roughNodes - 1)
	points := &r.lnP[kind]
	if !r.made[kind] {
		for k := range points {
			points[k] = math.Log(s.roughPressure(kind, 1/(1/tHigh+float64(k)*step)))
		}
		r.made[kind] = true
	}
	at := table.Position(points[:], lnP)
	return min(max(1/(1/tHigh+at*step), tLow), tHigh)
}

// state reads the result out of the unknowns. A pressure not given (0) is that of the vapour, which suffers less from rounding.
func (s *Solver) state(kind Kind, T, p float64) State {
	st := State{T: T, P: p}
	if p == 0 {
		st.P = s.model.GasConstant() * T * s.pressure
	}
	var sum float64
	for i := 0; i < s.n; i++ {
		st.Incipient[i] = helmholtz.Exp(s.lnInc[i])
		sum += st.Incipient[i]
	}
	for i := 0; i < s.n; i++ {
		st.Incipient[i] /= sum
	}
	st.RhoLiquid, st.RhoVapor = helmholtz.Exp(s.lnKnown), sum
	if kind == Dew {
		st.RhoLiquid, st.RhoVapor = st.RhoVapor, st.RhoLiquid
	}
	return st
}

// reducedPressure is p/(RT), mol/m³.
func reducedPressure(ph *helmholtz.Phase, n int) float64 {
	p := ph.Density - ph.F
	for i := 0; i < n; i++ {
		p += ph.Rho[i] * ph.Grad[i]
	}
	return p
}
