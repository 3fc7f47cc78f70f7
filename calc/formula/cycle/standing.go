package cycle

import (
	"math"

	"changeout/calc/property/refrigerant"
)

// Limits of the check for gas that does not condense, Pa above saturation, and
// of how far the coil's temperatures may differ, K. Common practice.
const (
	StandingScatter = 0.3e5 // within it the difference is what instruments disagree by
	StandingSuspect = 0.7e5 // above it: air, or a wrong or mixed gas
	StandingSettled = 1.0
)

// Standing is a stopped circuit held against saturation.
type Standing struct {
	Bubble, Dew float64 // Pa: saturation pressures at the temperature
	Excess      float64 // Pa: pressure less bubble pressure
	Error       float64 // Pa: what gauge and thermometer leave open, either side
}

// AtRest compares the standing pressure p, Pa, with saturation at temperature
// T, K:
//
//	excess = p − p bubble(T)
//	error  = √(gauge² + thermometer²)
//	thermometer = (p bubble(T + u) − p bubble(T − u)) ÷ 2
//
// gauge is the limit of error of the gauge, Pa, and u that of the temperature,
// K. The liquid of a circuit with its charge in has the composition of the
// blend, so it exerts the bubble pressure; other gases add their own (Dalton).
// Limits of independent errors add as squares (jcgm-100). Errors as BubbleAtT.
func AtRest(r *refrigerant.Refrigerant, p, T, gauge, u float64) (s Standing, err error) {
	b, err1 := r.BubbleAtT(T)
	d, err2 := r.DewAtT(T)
	warm, err3 := r.BubbleAtT(T + u)
	cold, err4 := r.BubbleAtT(T - u)
	for _, e := range []error{err1, err2, err3, err4} {
		if e != nil {
			return s, e
		}
	}
	return Standing{Bubble: b.P, Dew: d.P, Excess: p - b.P, Error: math.Hypot(gauge, (warm.P-cold.P)/2)}, nil
}
