package electrical

// copperZero is the temperature, K, at which the straight line through
// copper's resistance reaches zero: −234.5 °C.
const copperZero = 273.15 - 234.5

// CopperAt20 brings a copper winding's resistance to 20 °C:
//
//	R20 = R × (234.5 + 20) / (234.5 + t),  t in °C
//
// with r in Ω and t in K. The line holds from about −20 to 100 °C. Source:
// IEC 60228 as restated on a public page, which gives 234.5 for copper; the
// rotating-machine standard uses 235, which differs by 0.03 % over 40 K.
func CopperAt20(r, t float64) float64 { return r * (293.15 - copperZero) / (t - copperZero) }

// Star returns the three phase resistances of a star whose pairs measure uv,
// vw and wu, Ω. A delta motor has the same pairs as some star, so the phase
// that stands apart names the terminal to look at in either.
func Star(uv, vw, wu float64) (u, v, w float64) {
	return (uv + wu - vw) / 2, (uv + vw - wu) / 2, (vw + wu - uv) / 2
}

// RoundingDoubt returns by how much a percent imbalance of three readings may
// be wrong because the meter rounds to its last digit:
//
//	(2/3 × ½ + 1/3 × ½ + 1/3 × ½) × digit / (mean − digit)
//
// Each reading may be off by half a digit, and the lead error that was taken
// off by half a digit more. Both in Ω; the result is a fraction, +Inf unless
// mean is above digit. Plain arithmetic; the meter's own error is not in it.
func RoundingDoubt(digit, mean float64) float64 {
	return 2.0 / 3 * digit / max(0, mean-digit)
}
