package catalog

import (
	"math"

	"changeout/calc/property/refrigerant"
)

// nitrogenDensity gives the density of nitrogen, kg/m³.
func nitrogenDensity(t, p float64) (float64, bool) {
	n, ok := refrigerant.Lookup("R-728")
	if !ok {
		return 0, false
	}
	s, err := n.AtTP(t, p)
	return s.Rho, err == nil
}

// nitrogenPressure finds the pressure, Pa, at which nitrogen has a density, by
// the secant method on ρ/p, which varies slowly.
func nitrogenPressure(t, rho float64) (float64, bool) {
	p := rho * 296.8 * t // ideal gas
	last, lastP := 0.0, 0.0
	for range 30 {
		r, ok := nitrogenDensity(t, p)
		if !ok {
			return 0, false
		}
		off := r - rho
		if math.Abs(off) <= 1e-12*rho {
			return p, true
		}
		next := p * rho / r
		if lastP != 0 && off != last {
			next = p - off*(p-lastP)/(off-last)
		}
		if !(next > 0) {
			return 0, false
		}
		last, lastP = off, p
		if p = next; math.Abs(p-lastP) <= 1e-13*p {
			return p, true
		}
	}
	return 0, false
}
