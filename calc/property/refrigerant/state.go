package refrigerant

import (
	"errors"
	"math"

	"changeout/calc/property/saturation"
	"changeout/calc/property/singlephase"
)

// Properties of one state, per kilogram. Enthalpy and entropy count from the reference state of the trade (IIR): 200 kJ/kg
// and 1 kJ/(kg K) for saturated liquid (of a blend: at the bubble point) at 0 °C. Where a refrigerant has no liquid at 0 °C
// they count from the zero of its equation of state. Differences are what counts; they do not depend on the zero.
type Properties struct {
	T, P, Rho  float64 // K, Pa absolute, kg/m³
	Enthalpy   float64 // J/kg
	Entropy    float64 // J/(kg K)
	Cp, Cv     float64 // J/(kg K); 0 in a two-phase state, where they are not defined
	SoundSpeed float64 // m/s; 0 in a two-phase state
	// Vapor is the mass of vapour per mass of refrigerant in a two-phase state, 0 for a liquid and 1 for a vapour.
	Vapor float64
	Phase Phase
}

// Phase tells what a state is.
type Phase uint8

const (
	Liquid   Phase = iota + 1
	TwoPhase       // liquid and vapour in equilibrium
	Vapor
	Supercritical // above the critical temperature and pressure
)

// ErrTwoPhase: temperature and pressure do not fix the state, because liquid and vapour are present together.
var ErrTwoPhase = errors.New("refrigerant: liquid and vapour together at this temperature and pressure")

// SaturatedLiquid gives the liquid at its bubble point at temperature T, K. Errors as BubbleAtT.
func (r *Refrigerant) SaturatedLiquid(T float64) (Properties, error) {
	b, err := r.BubbleAtT(T)
	if err != nil {
		return Properties{}, err
	}
	return r.engine.at(&b, b.RhoLiquid, Liquid)
}

// SaturatedVapor gives the vapour at its dew point at temperature T, K. Errors as DewAtT.
func (r *Refrigerant) SaturatedVapor(T float64) (Properties, error) {
	d, err := r.DewAtT(T)
	if err != nil {
		return Properties{}, err
	}
	return r.engine.at(&d, d.RhoVapor, Vapor)
}

// Limits gives the highest temperature, K, and pressure, Pa, at which single-phase states are given: the lowest of the upper
// limits of the component equations.
func (r *Refrigerant) Limits() (maxT, maxP float64) { return r.engine.maxT, r.engine.maxP }

// AtTP gives the homogeneous state at temperature T, K, and absolute pressure p, Pa.
//
// Range: from the lower end of Range to Limits. Around the critical point, where saturation is not given (from the upper end
// of Range to 1.05 of the critical temperature, between the highest dew pressure given and 1.15 of the critical pressure) the
// answer is ErrRange. Errors: ErrRange, ErrTwoPhase between dew and bubble pressure, ErrSolve.
func (r *Refrigerant) AtTP(T, p float64) (Properties, error) {
	e := r.engine
	if e.prepare() != nil {
		return Properties{}, ErrSolve
	}
	if !(T >= e.tMin*(1-1e-12) && T <= e.maxT && p > 0 && p <= e.maxP) || e.nearCritical(T, p) {
		return Properties{}, ErrRange
	}
	w := e.take()
	defer e.pool.Put(w)
	rho, phase, err := e.startTP(w, T, p)
	if err != nil {
		return Properties{}, err
	}
	q, err := w.phase.AtTP(T, p, rho)
	if err != nil {
		return Properties{}, ErrSolve
	}
	return e.properties(&q, phase), nil
}

// nearCritical tells whether T, p is in the region around the critical point that is left out.
func (e *engine) nearCritical(T, p float64) bool {
	return T > e.tMax && T < 1.05*e.criticalT && p > e.high[e.dew()] && p < 1.15*e.criticalP
}

// startTP finds the phase at T and p and a density, mol/m³, from which its own can be found.
func (e *engine) startTP(w *workspace, T, p float64) (rho float64, phase Phase, err error) {
	gas := p / (e.model.GasConstant() * T)
	if T > e.tMax*(1+1e-12) {
		switch {
		case T >= e.criticalT && p >= e.criticalP:
			phase = Supercritical
		case T < e.criticalT && p >= e.criticalP:
			phase = Liquid
		default:
			phase = Vapor
		}
		if p > e.criticalP {
			// Dense: start from the side of the liquid, where Newton's method does not meet the flat part of the isotherm.
			return 2.2 * e.criticalRho, phase, nil
		}
		return gas, phase, nil
	}
	d, err := w.saturation.AtT(e.dew(), T)
	if err != nil {
		return 0, 0, ErrSolve
	}
	if p <= d.P {
		return min(gas/0.9, d.RhoVapor), Vapor, nil
	}
	b := d
	if len(e.z) > 1 {
		if b, err = w.saturation.AtT(saturation.Bubble, T); err != nil {
			return 0, 0, ErrSolve
		}
	}
	if p >= b.P {
		return b.RhoLiquid, Liquid, nil
	}
	return 0, 0, ErrTwoPhase
}

// dew is the kind of solve for a dew point: a pure fluid has one saturation state, solved one way.
func (e *engine) dew() saturation.Kind {
	if len(e.z) == 1 {
		return saturation.Bubble
	}
	return saturation.Dew
}

// at gives the properties of the saturated phase of density rho, kg/m³, at a saturation point. The pressure is the point's: read
// back from a cold liquid it would be rounding and nothing else.
func (e *engine) at(point *Point, rho float64, phase Phase) (Properties, error) {
	w := e.take()
	q, err := w.phase.AtTRho(point.T, rho/e.molarMass)
	e.pool.Put(w)
	if err != nil {
		return Properties{}, ErrSolve
	}
	q.P = point.P
	return e.properties(&q, phase), nil
}

// properties converts to mass and to the reference state.
func (e *engine) properties(q *singlephase.Properties, phase Phase) Properties {
	m := e.molarMass
	p := Properties{T: q.T, P: q.P, Rho: q.Rho * m, Enthalpy: (q.H - e.h0) / m, Entropy: (q.S - e.s0) / m,
		Cp: q.Cp / m, Cv: q.Cv / m, SoundSpeed: math.Sqrt(q.SoundSquared / m), Phase: phase}
	if phase == Vapor {
		p.Vapor = 1
	}
	return p
}
