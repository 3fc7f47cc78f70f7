package refrigerant

import "changeout/calc/property/saturation"

// Range gives the temperatures, K, between which saturation states are given: from the triple point, or the highest triple
// point among the components, to 0.98 of the critical temperature (0.99 for a pure fluid). Blends begin at lowestBlendT or above.
func (r *Refrigerant) Range() (tMin, tMax float64) { return r.engine.tMin, r.engine.tMax }

// PressureRange gives the absolute pressures, Pa, between which both bubble and dew points are given.
func (r *Refrigerant) PressureRange() (pMin, pMax float64, err error) {
	if r.engine.prepare() != nil {
		return 0, 0, ErrSolve
	}
	e := r.engine
	return max(e.low[0], e.low[1]), min(e.high[0], e.high[1]), nil
}

// BubbleAtT gives the state at temperature T, K, at which the liquid of the overall composition begins to boil.
//
// Method: equality of the fugacities of every component and of pressure, from the Helmholtz energy equations of state (see
// the packages fluid and mixture). Errors: ErrRange outside Range (also for NaN), ErrSolve where no state was found.
func (r *Refrigerant) BubbleAtT(T float64) (Point, error) { return r.engine.atT(saturation.Bubble, T) }

// DewAtT gives the state at temperature T, K, at which the vapour of the overall composition begins to condense. For a pure
// fluid it is the bubble point. Method and errors as BubbleAtT.
func (r *Refrigerant) DewAtT(T float64) (Point, error) { return r.engine.atT(r.engine.dew(), T) }

// BubbleAtP gives the bubble point at absolute pressure p, Pa. Method and errors as BubbleAtT.
func (r *Refrigerant) BubbleAtP(p float64) (Point, error) { return r.engine.atP(saturation.Bubble, p) }

// DewAtP gives the dew point at absolute pressure p, Pa. Method and errors as BubbleAtT.
func (r *Refrigerant) DewAtP(p float64) (Point, error) { return r.engine.atP(r.engine.dew(), p) }

// Glide gives how much warmer the dew point is than the bubble point at absolute pressure p, Pa, in K; 0 for a pure fluid.
// Errors as BubbleAtP.
func (r *Refrigerant) Glide(p float64) (float64, error) {
	b, err := r.BubbleAtP(p)
	if err != nil {
		return 0, err
	}
	d, err := r.DewAtP(p)
	if err != nil {
		return 0, err
	}
	return d.T - b.T, nil
}

// HeatOfVaporization gives the heat, J/kg, that turns liquid at its bubble point into vapour at its dew point at absolute
// pressure p, Pa: h" - h'. Of a blend it holds the heat that warms the refrigerant through its glide. Errors as BubbleAtP.
func (r *Refrigerant) HeatOfVaporization(p float64) (float64, error) {
	b, err := r.BubbleAtP(p)
	if err != nil {
		return 0, err
	}
	d, err := r.DewAtP(p)
	if err != nil {
		return 0, err
	}
	l, err := r.engine.at(&b, b.RhoLiquid, Liquid)
	if err != nil {
		return 0, err
	}
	v, err := r.engine.at(&d, d.RhoVapor, Vapor)
	if err != nil {
		return 0, err
	}
	return v.Enthalpy - l.Enthalpy, nil
}

// NormalBoiling gives the bubble point at 101,325 Pa. ErrRange: no liquid at that pressure (carbon dioxide).
func (r *Refrigerant) NormalBoiling() (Point, error) { return r.BubbleAtP(101325) }

// Sources gives the bibliography keys of the equations of state and mixture parameters behind the numbers, the equations of the
// components first. It is empty only where the catalogue is wrong, which a test excludes.
func (r *Refrigerant) Sources() []string {
	if r.engine.prepare() != nil {
		return nil
	}
	return r.engine.model.Sources()
}
