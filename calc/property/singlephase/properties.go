package singlephase

import (
	"math"

	"changeout/calc/property/helmholtz"
)

// Properties of a homogeneous phase, molar and SI. Enthalpy and entropy count from the zero of the equations of state.
type Properties struct {
	T, P, Rho    float64 // K, Pa, mol/m³
	H, S         float64 // J/mol, J/(mol K)
	Cv, Cp       float64 // J/(mol K)
	Expansion    float64 // -∂ln ρ/∂T at constant pressure, 1/K
	SoundSquared float64 // w² M, J/mol: divide by the molar mass for the square of the speed of sound
}

// Properties gives the properties of the phase last evaluated, from the derivatives of α = α⁰ + αʳ:
//
//	h/(RT)  = 1 + τ(α⁰_τ + αʳ_τ) + δαʳ_δ
//	s/R     = τ(α⁰_τ + αʳ_τ) - α⁰ - αʳ
//	cv/R    = -τ²(α⁰_ττ + αʳ_ττ)
//	cp/R    = cv/R + (1 + δαʳ_δ - δταʳ_δτ)²/(1 + 2δαʳ_δ + δ²αʳ_δδ)
//	w²M/RT  = (1 + 2δαʳ_δ + δ²αʳ_δδ) cp/cv
//
// Source: Span, Multiparameter Equations of State, 2000, table 3.10 (locator from memory). Where the phase is not
// mechanically stable, cp and the speed of sound are not defined and come out infinite or negative; callers pass stable states.
func (s *Solver) Properties() Properties {
	a, at, att := s.model.Ideal(&s.Phase)
	d := &s.Phase.Total
	R := s.model.GasConstant()
	T := s.Phase.T
	cv := -(att + d.TT)
	k := 1 + 2*d.D + d.DD
	b := 1 + d.D - d.DT
	cp := cv + b*b/k
	return Properties{
		T: T, P: s.Pressure(), Rho: s.Phase.Density,
		H:  R * T * (1 + at + d.T + d.D),
		S:  R * (at + d.T - a - d.A),
		Cv: R * cv, Cp: R * cp,
		Expansion:    b / (k * T),
		SoundSquared: R * T * k * cp / cv,
	}
}

// finite tells whether all properties are numbers and the phase is stable.
func (p *Properties) finite() bool {
	return p.Cv > 0 && p.Cp > 0 && p.SoundSquared > 0 && !math.IsInf(p.Cp, 0) && !math.IsInf(p.SoundSquared, 0) &&
		!math.IsNaN(p.H) && !math.IsNaN(p.S)
}

// AtTP gives the properties at temperature T, K, and pressure p, Pa; start as for Density.
func (s *Solver) AtTP(T, p, start float64) (Properties, error) {
	rho, err := s.Density(T, p, start)
	if err != nil {
		return Properties{}, err
	}
	q, err := s.AtTRho(T, rho)
	if err != nil {
		return Properties{}, err
	}
	q.P = p
	return q, nil
}

// Of gives the properties of a phase of any composition at temperature T, K, from its component densities, mol/m³.
func (s *Solver) Of(T float64, rho *[helmholtz.MaxComponents]float64) Properties {
	s.Phase.T, s.Phase.Rho = T, *rho
	s.model.Evaluate(&s.Phase)
	return s.Properties()
}

// AtTRho gives the properties at temperature T, K, and density rho, mol/m³, of a stable phase.
func (s *Solver) AtTRho(T, rho float64) (Properties, error) {
	s.Set(T, rho)
	q := s.Properties()
	if !q.finite() {
		return Properties{}, ErrNotConverged
	}
	return q, nil
}

// Value picks the quantity, and its derivative with temperature at constant pressure: cp, cp/T or v times the expansion.
func (p *Properties) Value(q helmholtz.Quantity) (v, slope float64) {
	switch q {
	case helmholtz.Entropy:
		return p.S, p.Cp / p.T
	case helmholtz.Volume:
		return 1 / p.Rho, p.Expansion / p.Rho
	}
	return p.H, p.Cp
}

// AtPValue finds the state at pressure p, Pa, with the molar quantity want, by Newton's method in T from the state first, kept between tLow and tHigh, K, between which the phase must be the same and stable.
func (s *Solver) AtPValue(p float64, kind helmholtz.Quantity, want float64, first Properties, tLow, tHigh float64) (Properties, error) {
	q := first
	low, high := tLow, tHigh
	for range 60 {
		v, slope := q.Value(kind)
		d := want - v
		if d > 0 {
			low = max(low, q.T)
		} else {
			high = min(high, q.T)
		}
		T := q.T + d/slope
		if math.Abs(T-q.T) < 1e-11*q.T {
			return q, nil
		}
		if !(T > low && T < high) {
			T = (low + high) / 2
		}
		if !(high-low > 1e-12*q.T) {
			break // the state wanted is outside
		}
		// A liquid cooled at constant density would leave its branch: start from the density it expands or shrinks to, in
		// steps of at most a fifth of the density, because near the critical point expansion changes quickly.
		most := min(0.2/math.Abs(q.Expansion), 0.2*q.T)
		T = q.T + min(max(T-q.T, -most), most)
		next, err := s.AtTP(T, p, q.Rho*helmholtz.Exp(-q.Expansion*(T-q.T)))
		if err != nil {
			return Properties{}, err
		}
		q = next
	}
	return Properties{}, ErrNotConverged
}
