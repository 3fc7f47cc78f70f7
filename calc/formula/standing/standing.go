// Package standing holds the small equations of a standing pressure test with
// nitrogen: what an ideal gas would show, how far readings can be trusted, how fast gas
// is lost, and what the compressed gas could do.
//
// SI throughout: K, Pa absolute, m³, s, J. No labels, no units, no sentences.
package standing

import "math"

// Ideal returns the pressure of an ideal gas in a closed volume after a change
// of temperature: p₂ = p₁ T₂/T₁. Nitrogen at 4 MPa moves about 4 % more than
// this, because its molecules take up room.
func Ideal(p1, t1, t2 float64) float64 { return p1 * t2 / t1 }

// Doubt returns the expanded uncertainty (k = 2) of "measured less expected":
//
//	U = 2 √(Σ aᵢ²/3)
//
// with the greatest errors aᵢ: the gauge at the start (carried to the end by
// the ratio of pressures) and at the end, the temperature at the start and at
// the end (each times the slope dp/dT), and the weather, which moves the
// atmosphere that a gauge reads from. An error limit counts as a rectangular
// distribution. The two gauge errors count as independent, which errs on the
// safe side: they partly cancel on one gauge. Source: JCGM 100, 4.3.7 and 6.2.
func Doubt(gauge, ratio, slope, temperature, weather float64) float64 {
	sum := gauge*gauge*(1+ratio*ratio) + 2*slope*slope*temperature*temperature + weather*weather
	return 2 * math.Sqrt(sum/3)
}

// Throughput returns the rate at which gas is lost, Pa·m³/s: Δp V / t.
func Throughput(loss, volume, seconds float64) float64 { return loss * volume / seconds }

// What ASME PCC-2 uses for air and nitrogen.
const (
	k          = 1.4
	tnt        = 4266920.0 // J/kg
	scaled     = 20.0      // m/kg^(1/3), no harm from the blast
	smallLimit = 135.5e6   // J
	largeLimit = 271e6     // J
	foot       = 0.3048
)

// Energy returns what the gas would release if it expanded without heat from
// outside:
//
//	E = p V/(k−1) · [1 − (pₐ/p)^((k−1)/k)],  k = 1.4
//
// Source: ASME PCC-2, pneumatic test, appendix II, equation II-1.
func Energy(p, volume, atmosphere float64) float64 {
	return p * volume / (k - 1) * (1 - math.Pow(atmosphere/p, (k-1)/k))
}

// Isothermal returns the upper bound for the same gas that takes up heat while it
// expands: p V ln(p/pₐ).
func Isothermal(p, volume, atmosphere float64) float64 {
	return p * volume * math.Log(p/atmosphere)
}

// TNT returns the mass of the explosive with the same energy, kg.
// Source: ASME PCC-2, appendix II, equation II-3.
func TNT(energy float64) float64 { return energy / tnt }

// ScaledDistance returns R = 20 (2 TNT)^(1/3), m. Source: ASME PCC-2, appendix
// III, equation III-1 as later editions have it; the 2008 edition has no 2.
func ScaledDistance(energy float64) float64 { return scaled * math.Cbrt(2*TNT(energy)) }

// StandOff returns the distance for people, m: the greater of the scaled
// distance and 100 ft up to 135.5 MJ, 200 ft up to 271 MJ (the metric text says
// 30 m and 60 m, which is a little less). Source: ASME PCC-2, appendix III.
func StandOff(energy float64) float64 {
	r := ScaledDistance(energy)
	switch {
	case energy <= smallLimit:
		return math.Max(100*foot, r)
	case energy <= largeLimit:
		return math.Max(200*foot, r)
	}
	return r
}
