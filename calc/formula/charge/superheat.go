package charge

// SuperheatTarget returns the superheat that a fixed-orifice system should
// show at the compressor:
//
//	SH = (3 WB − 80 − DB) / 2      all in °F
//
// with the wet bulb of the air entering the indoor coil and the dry bulb of
// the air entering the outdoor coil, both in K; the result is a difference in
// K and may be negative. Common practice. Against a published charging table
// of 123 points its mean error is −0.4 K and its worst −4.2 and +2.3 K; between
// 24 and 38 °C outdoors and 17 and 22 °C wet bulb it is within −1.5 and +2.3 K.
func SuperheatTarget(wetBulb, dryBulb float64) float64 {
	wb, db := fahrenheit(wetBulb), fahrenheit(dryBulb)
	return (3*wb - 80 - db) / 2 * 5 / 9
}

func fahrenheit(k float64) float64 { return k*9/5 - 459.67 }

// Limits of charging by superheat and by subcooling. Sources: a state test
// protocol (practice-75) for the tolerances and the least superheat.
const (
	LeastSuperheatTarget = 5.0 * 5 / 9 // K: below it the charge is weighed in
	SuperheatTolerance   = 5.0 * 5 / 9 // K either side of the target
	SubcoolingTolerance  = 3.0 * 5 / 9 // K either side of the maker's value
)

// FirstStep returns the mass to add or take out before reading again: 2 % of
// the nameplate charge, at least 0.05 kg and at most 0.5 kg; kg. Common
// practice: small enough that no single step can overshoot the tolerance.
func FirstStep(nameplate float64) float64 {
	return min(0.5, max(0.05, 0.02*nameplate))
}
