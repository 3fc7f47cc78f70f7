package electrical

import "math"

// Unbalance returns the mean of three values and the largest deviation from
// it as a fraction of it:
//
//	u = max |x − mean| / mean
//
// NEMA MG 1 defines voltage unbalance so, from voltages between lines; the
// trade uses the same sum for currents and for winding resistance. NaN for a
// mean of zero. Source: NEMA MG 1, 12.45 and 20.24, as restated.
func Unbalance(a, b, c float64) (mean, unbalance float64) {
	mean = (a + b + c) / 3
	largest := max(math.Abs(a-mean), math.Abs(b-mean), math.Abs(c-mean))
	return mean, largest / mean
}

// NegativeSequence returns the negative-sequence over the positive-sequence
// voltage of three voltages between lines, and false where the three cannot
// close a triangle. With the sum of squares S and the triangle's area A:
//
//	U1² = S/6 + 2A/√3,  U2² = S/6 − 2A/√3,  factor = U2 / U1
//
// written so that nearly equal voltages lose no digits. This is the unbalance
// factor of IEC 60034-26. It equals NEMA's figure or exceeds it by up to 15 %.
func NegativeSequence(ab, bc, ca float64) (factor float64, ok bool) {
	x, y, z := ab*ab, bc*bc, ca*ca
	sum := x + y + z
	spread := (x-y)*(x-y) + (y-z)*(y-z) + (z-x)*(z-x)
	area16 := sum*sum - 2*(x*x+y*y+z*z)
	if !(area16 > 0) {
		return 0, false
	}
	positive := sum/6 + math.Sqrt(area16)/(2*math.Sqrt(3))
	return math.Sqrt(spread/18) / positive, true
}

// ExtraRise returns how much more a motor winding warms for a voltage
// unbalance, as a fraction of its normal temperature rise:
//
//	2 u² with u in percent, in percent
//
// for u as a fraction, up to 0.05. A rule of common practice that meets the
// figures printed in the trade: 3 % gives 18 %, 5 % gives 50 %.
func ExtraRise(u float64) float64 { return 200 * u * u }

// derating is the share of rated power against unbalance, read off the curve
// of NEMA MG 1 by an engineering reference site.
var derating = [...]struct{ unbalance, factor float64 }{
	{0.005, 1}, {0.015, 0.97}, {0.02, 0.95}, {0.025, 0.93}, {0.03, 0.89}, {0.035, 0.85}, {0.04, 0.82}, {0.045, 0.78}, {0.05, 0.76},
}

// Derating returns the share of its rated power that a motor may give at a
// voltage unbalance, and false above 5 %, where the motor should not run.
// Straight lines join the points.
func Derating(u float64) (factor float64, ok bool) {
	last := derating[0]
	if u <= last.unbalance {
		return 1, true
	}
	for _, p := range derating[1:] {
		if u <= p.unbalance {
			return last.factor + (p.factor-last.factor)*(u-last.unbalance)/(p.unbalance-last.unbalance), true
		}
		last = p
	}
	return 0, false
}
