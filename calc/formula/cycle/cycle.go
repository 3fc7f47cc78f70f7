// Package cycle holds the equations of the vapour-compression cycle as it is
// measured on a running machine, and of the check on a stopped one.
//
// SI throughout: K, Pa absolute, J/kg. No labels, no units, no sentences.
// Property values come from package refrigerant; the definitions are those of
// every textbook on refrigeration, as cited at each function.
package cycle

import "changeout/calc/property/refrigerant"

// Superheat returns T − T dew, K: how far a vapour at pressure p is above its
// dew point at that pressure. Negative: the pipe is colder than dry vapour can
// be. Source: practice-79 for the choice of the dew point.
func Superheat(line, dew float64) float64 { return line - dew }

// Subcooling returns T bubble − T, K: how far a liquid is below its bubble
// point. Negative: there is vapour in it, or a reading is off. Source:
// practice-79 for the choice of the bubble point.
func Subcooling(bubble, line float64) float64 { return bubble - line }

// MidPoint returns (T bubble + T dew) ÷ 2, K: one temperature for a coil in
// which a blend boils or condenses over its glide. For a pure fluid it is the
// saturation temperature. Source: practice-79.
func MidPoint(bubble, dew float64) float64 { return (bubble + dew) / 2 }

// Ratio returns the compression ratio p discharge ÷ p suction of absolute
// pressures, Pa, both above zero. Source: ASHRAE Handbook, by definition.
func Ratio(discharge, suction float64) float64 { return discharge / suction }

// Efficiency returns the isentropic efficiency of a compression without heat
// loss:
//
//	η = (h2s − h1) ÷ (h2 − h1)
//
// from the enthalpies, J/kg, before it, after an isentropic one and after the
// real one. ok is false where the gas left with no more enthalpy than it
// brought; no efficiency follows from that. Above 1 the compression lost heat,
// or liquid went in, or a reading is off. Source: cengel-boles.
func Efficiency(h1, h2s, h2 float64) (eta float64, ok bool) {
	if !(h2 > h1) || !(h2s > h1) {
		return 0, false
	}
	return (h2s - h1) / (h2 - h1), true
}

// Suction returns the gas that enters the compressor at temperature T, K, and
// pressure p, Pa. At the dew point and below it the reading does not fix the
// state; dry is then false and the state is dry vapour at the dew point, the
// least enthalpy that gas can have. Errors as refrigerant.AtTP.
func Suction(r *refrigerant.Refrigerant, T, p float64) (q refrigerant.Properties, dry bool, err error) {
	dew, err := r.DewAtP(p)
	if err != nil {
		return q, false, err
	}
	// A millikelvin keeps the search for a vapour away from the line itself.
	if !(T > dew.T+1e-3) {
		q, err = r.SaturatedVapor(dew.T)
		return q, false, err
	}
	q, err = r.AtTP(T, p)
	return q, true, err
}

// Ideal returns the state after an isentropic compression to pressure p, Pa.
// Errors as refrigerant.AtPS.
func Ideal(r *refrigerant.Refrigerant, suction refrigerant.Properties, p float64) (refrigerant.Properties, error) {
	return r.AtPS(p, suction.Entropy)
}

// Dome returns saturated liquid and saturated vapour from temperature T, K, up
// to the highest temperature at which the refrigerant's saturation is given.
// The points lie closer near the top, where the lines bend. States that were
// not found are left out.
func Dome(r *refrigerant.Refrigerant, T float64) (liquid, vapour []refrigerant.Properties) {
	const points = 12
	low, high := r.Range()
	T = max(T, low)
	for i := range points {
		left := 1 - float64(i)/(points-1)
		t := high - (high-T)*left*left
		if l, err := r.SaturatedLiquid(t); err == nil {
			liquid = append(liquid, l)
		}
		if v, err := r.SaturatedVapor(t); err == nil {
			vapour = append(vapour, v)
		}
	}
	return liquid, vapour
}
