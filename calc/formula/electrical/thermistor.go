package electrical

import "math"

// Thermistor is the B law of a negative-temperature-coefficient sensor:
//
//	R = R0 × exp(B × (1/T − 1/T0)),  T in K
//
// with R0 Ω at T0 K and B in K. It is exact at T0 and at the second
// temperature that B was taken at, and a straight line between them in ln R
// against 1/T: see LawMisfit.
type Thermistor struct{ R0, T0, B float64 }

// Resistance returns Ω at t K.
func (s Thermistor) Resistance(t float64) float64 { return s.R0 * math.Exp(s.B*(1/t-1/s.T0)) }

// Temperature returns K at r Ω.
func (s Thermistor) Temperature(r float64) float64 { return 1 / (1/s.T0 + math.Log(r/s.R0)/s.B) }

// Slope returns by what share the resistance falls for each kelvin at t K:
// B/T².
func (s Thermistor) Slope(t float64) float64 { return s.B / (t * t) }

// Between returns the B law through two points of a table.
func Between(t1, r1, t2, r2 float64) Thermistor {
	return Thermistor{R0: r1, T0: t1, B: math.Log(r1/r2) / (1/t1 - 1/t2)}
}

// LawMisfit returns the share by which a printed table of the same R0 and B
// may miss the B law at t K:
//
//	0.5 % + 2 % × ((t − t0)/25 K)²
//
// and no more than 10 %. It covers two tables printed in service manuals from
// −20 to 50 °C; hotter it is a guess on the wide side.
func LawMisfit(t, t0 float64) float64 {
	k := (t - t0) / 25
	return min(0.1, 0.005+0.02*k*k)
}
