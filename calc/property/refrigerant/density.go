package refrigerant

import "changeout/calc/property/saturation"

// LiquidDensity gives the density, kg/m³, of the liquid at temperature T, K, and absolute pressure p, Pa: saturated at the
// bubble pressure, compressed above it.
//
// Errors: ErrRange for T outside Range or p above the limit of the equations; ErrNotLiquid for p below the bubble pressure
// at T; ErrSolve where no state was found.
func (r *Refrigerant) LiquidDensity(T, p float64) (float64, error) {
	e := r.engine
	if !e.within(T) || !(p <= e.maxP) {
		return 0, ErrRange
	}
	b, err := e.atT(saturation.Bubble, T)
	if err != nil {
		return 0, err
	}
	// A bubble pressure handed back to us must count as liquid in spite of rounding.
	if !(p >= b.P*(1-1e-9)) {
		return 0, ErrNotLiquid
	}
	w := e.take()
	rho, err := w.phase.Density(T, p, b.RhoLiquid/e.molarMass)
	e.pool.Put(w)
	if err != nil {
		return 0, ErrSolve
	}
	return rho * e.molarMass, nil
}
