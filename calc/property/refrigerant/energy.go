package refrigerant

import (
	"math"

	"changeout/calc/property/helmholtz"
	"changeout/calc/property/saturation"
	"changeout/calc/property/singlephase"
)

// AtPH gives the state at absolute pressure p, Pa, and enthalpy h, J/kg (zero as in Properties): liquid, vapour or both.
//
// Range: temperatures from the lower end of Range to Limits, pressures to Limits, without the surroundings of the critical
// point named at AtTP. Errors: ErrRange, ErrSolve.
func (r *Refrigerant) AtPH(p, h float64) (Properties, error) {
	e := r.engine
	if e.prepare() != nil {
		return Properties{}, ErrSolve
	}
	return e.atPValue(p, helmholtz.Enthalpy, h*e.molarMass+e.h0)
}

// AtPS gives the state at absolute pressure p, Pa, and entropy s, J/(kg K). Range and errors as AtPH.
func (r *Refrigerant) AtPS(p, s float64) (Properties, error) {
	e := r.engine
	if e.prepare() != nil {
		return Properties{}, ErrSolve
	}
	return e.atPValue(p, helmholtz.Entropy, s*e.molarMass+e.s0)
}

// AtPRho gives the state at absolute pressure p, Pa, and density rho, kg/m³: in a two-phase state that of the whole, mass over
// volume. Range and errors as AtPH. Water below 4 °C has two liquid states of one density; the warmer is given, or ErrSolve.
func (r *Refrigerant) AtPRho(p, rho float64) (Properties, error) {
	e := r.engine
	if e.prepare() != nil {
		return Properties{}, ErrSolve
	}
	if !(rho > 0) {
		return Properties{}, ErrRange
	}
	return e.atPValue(p, helmholtz.Volume, e.molarMass/rho)
}

// atPValue finds the state with the molar quantity want at the pressure p.
func (e *engine) atPValue(p float64, kind helmholtz.Quantity, want float64) (Properties, error) {
	if !(p > 0 && p <= e.maxP) || math.IsNaN(want) || math.IsInf(want, 0) {
		return Properties{}, ErrRange
	}
	w := e.take()
	defer e.pool.Put(w)
	dew := e.dew()
	switch {
	case p < e.low[dew]:
		return e.between(w, p, kind, want, e.tMin, e.maxT, Vapor)
	case p < e.low[saturation.Bubble]:
		// A blend between its lowest dew and its lowest bubble pressure: the vapour is given, the rest is below the range.
		d, err := w.saturation.AtP(dew, p, e.tMin, e.tMax)
		if err != nil {
			return Properties{}, ErrSolve
		}
		vapor, err := w.phase.AtTRho(d.T, d.RhoVapor)
		if err != nil {
			return Properties{}, ErrSolve
		}
		if want < value(&vapor, kind) {
			return Properties{}, ErrRange
		}
		return e.search(w, p, kind, want, vapor, d.T*(1-1e-9), e.maxT, Vapor)
	case p > e.high[saturation.Bubble] || p > e.high[dew]:
		if p >= 1.15*e.criticalP {
			return e.between(w, p, kind, want, e.tMin, e.maxT, 0)
		}
		// Beside the critical point: liquid on one side, hot gas on the other.
		q, err := e.between(w, p, kind, want, e.tMin, e.tMax, 0)
		if err != nil {
			q, err = e.between(w, p, kind, want, 1.05*e.criticalT, e.maxT, 0)
		}
		return q, err
	}
	b, err := w.saturation.AtP(saturation.Bubble, p, e.tMin, e.tMax)
	if err != nil {
		return Properties{}, ErrSolve
	}
	bubble := w.saturation.Edge(saturation.Bubble, &b)
	d := b
	dewEdge := w.saturation.Edge(saturation.Dew, &b)
	if len(e.z) > 1 {
		if d, err = w.saturation.AtP(saturation.Dew, p, e.tMin, e.tMax); err != nil {
			return Properties{}, ErrSolve
		}
		dewEdge = w.saturation.Edge(saturation.Dew, &d)
	}
	liquid, err := w.phase.AtTRho(b.T, b.RhoLiquid)
	if err != nil {
		return Properties{}, ErrSolve
	}
	vapor, err := w.phase.AtTRho(d.T, d.RhoVapor)
	if err != nil {
		return Properties{}, ErrSolve
	}
	lv, vv := value(&liquid, kind), value(&vapor, kind)
	switch {
	case want <= lv:
		return e.search(w, p, kind, want, liquid, e.tMin, b.T*(1+1e-9), Liquid)
	case want >= vv:
		return e.search(w, p, kind, want, vapor, d.T*(1-1e-9), e.maxT, Vapor)
	case len(e.z) == 1:
		x := (want - lv) / (vv - lv)
		return e.mixed(p, b.T, 1/((1-x)/liquid.Rho+x/vapor.Rho), (1-x)*liquid.H+x*vapor.H, (1-x)*liquid.S+x*vapor.S, x), nil
	}
	return e.split(w, kind, want, &bubble, &dewEdge, lv, vv)
}

func value(q *singlephase.Properties, kind helmholtz.Quantity) float64 {
	v, _ := q.Value(kind)
	return v
}

// between searches a single phase between two temperatures, K, starting in the middle. phase 0: decide from the result.
func (e *engine) between(w *workspace, p float64, kind helmholtz.Quantity, want, tLow, tHigh float64, phase Phase) (Properties, error) {
	if !(tLow < tHigh) {
		return Properties{}, ErrRange
	}
	T := (tLow + tHigh) / 2
	rho, _, err := e.startTP(w, T, p)
	if err != nil {
		return Properties{}, err
	}
	first, err := w.phase.AtTP(T, p, rho)
	if err != nil {
		return Properties{}, ErrSolve
	}
	return e.search(w, p, kind, want, first, tLow, tHigh, phase)
}

// search runs the search for a temperature and tells a state outside from one that was not found.
func (e *engine) search(w *workspace, p float64, kind helmholtz.Quantity, want float64, first singlephase.Properties, tLow, tHigh float64, phase Phase) (Properties, error) {
	q, err := w.phase.AtPValue(p, kind, want, first, tLow, tHigh)
	if err != nil {
		// Not found: outside, if it lies beyond what either end has.
		if low, ok := e.valueAt(w, tLow, p, kind); ok && want < low {
			return Properties{}, ErrRange
		}
		if high, ok := e.valueAt(w, tHigh, p, kind); ok && want > high {
			return Properties{}, ErrRange
		}
		return Properties{}, ErrSolve
	}
	if phase == 0 {
		switch {
		case q.T >= e.criticalT && p >= e.criticalP:
			phase = Supercritical
		case q.T < e.criticalT:
			phase = Liquid
		default:
			phase = Vapor
		}
	}
	return e.properties(&q, phase), nil
}

// valueAt gives the quantity of the single phase at T and p.
func (e *engine) valueAt(w *workspace, T, p float64, kind helmholtz.Quantity) (float64, bool) {
	rho, _, err := e.startTP(w, T, p)
	if err != nil {
		return 0, false
	}
	q, err := w.phase.AtTP(T, p, rho)
	return value(&q, kind), err == nil
}

// split finds the two-phase state of a blend. Each phase has its own composition and stays in contact with the other: that is
// what a pipe or a closed vessel holds once it has settled, not a leak that lets one phase go.
func (e *engine) split(w *workspace, kind helmholtz.Quantity, want float64, bubble, dew *saturation.Split, lv, vv float64) (Properties, error) {
	st, err := w.saturation.Flash(kind, want, bubble, dew, lv, vv)
	if err != nil {
		return Properties{}, ErrSolve
	}
	l, g := w.phase.Of(st.T, &st.Liquid), w.phase.Of(st.T, &st.Gas)
	var ml, mg float64 // molar masses of the phases
	for i, fl := range e.fluids {
		ml += st.Liquid[i] / l.Rho * fl.MolarMass
		mg += st.Gas[i] / g.Rho * fl.MolarMass
	}
	x := st.Vapor
	return e.mixed(st.P, st.T, 1/((1-x)/l.Rho+x/g.Rho), (1-x)*l.H+x*g.H, (1-x)*l.S+x*g.S, x*mg/((1-x)*ml+x*mg)), nil
}

// mixed makes the properties of a two-phase state from molar ones and the mass fraction of vapour.
func (e *engine) mixed(p, T, rho, h, s, vapor float64) Properties {
	m := e.molarMass
	return Properties{T: T, P: p, Rho: rho * m, Enthalpy: (h - e.h0) / m, Entropy: (s - e.s0) / m, Vapor: vapor, Phase: TwoPhase}
}
