// Package moistair gives the state of moist air from what a technician reads:
// dry bulb with relative humidity or wet bulb.
//
// Air and water vapour are taken as ideal gases, as the ASHRAE Handbook,
// Fundamentals, chapter Psychrometrics does; the saturation pressure of water
// and ice is that of package water (IAPWS). W is the humidity ratio, kg of
// water for each kg of dry air; enthalpy and volume are for each kg of dry air,
// enthalpy from dry air and liquid water at 0 °C. The factor by which air
// raises the vapour pressure of water, below 0.5 %, is left out, as there.
//
// SI: K, Pa absolute, J/kg, m³/kg. Range 200 K to 373 K and pressures above the
// saturation pressure of water; outside it the functions return NaN.
package moistair

import (
	"math"

	"changeout/calc/property/water"
)

const (
	zero  = 273.15
	ratio = 0.621945 // molar mass of water ÷ that of dry air; equation 20
)

// ofVapour returns W for a partial pressure of water vapour:
//
//	W = 0.621945 pw/(p − pw)
//
// Source: ASHRAE Fundamentals, Psychrometrics, equation 20.
func ofVapour(pw, p float64) float64 {
	if !(pw < p) {
		return math.NaN()
	}
	return ratio * pw / (p - pw)
}

// Saturated returns W of saturated air at T, over ice below 0.01 °C.
// Source: ASHRAE Fundamentals, Psychrometrics, equation 21.
func Saturated(T, p float64) float64 { return Relative(T, 1, p) }

// Relative returns W at the dry bulb T and the relative humidity rh, 0 to 1:
// pw = rh pws(T). Source: ASHRAE Fundamentals, Psychrometrics, equation 22.
func Relative(T, rh, p float64) float64 {
	pws, err := water.SaturationPressure(T)
	if err != nil {
		return math.NaN()
	}
	return ofVapour(rh*pws, p)
}

// WetBulb returns W at the dry bulb T and the wet bulb w, with t and w in °C:
//
//	W = ((2501 − 2.326 w) Ws(w) − 1.006 (t − w)) / (2501 + 1.86 t − 4.186 w)
//	W = ((2830 − 0.24 w) Ws(w) − 1.006 (t − w)) / (2830 + 1.86 t − 2.1 w)   below 0 °C
//
// A wet bulb too low for the dry bulb gives W below zero; the caller refuses
// it. Source: ASHRAE Fundamentals, Psychrometrics, equations 33 and 35.
func WetBulb(T, w, p float64) float64 {
	ws := Saturated(w, p)
	t, w := T-zero, w-zero
	if w >= 0 {
		return ((2501-2.326*w)*ws - 1.006*(t-w)) / (2501 + 1.86*t - 4.186*w)
	}
	return ((2830-0.24*w)*ws - 1.006*(t-w)) / (2830 + 1.86*t - 2.1*w)
}

// Enthalpy returns h = 1006 t + W (2 501 000 + 1860 t), t in °C.
// Source: ASHRAE Fundamentals, Psychrometrics, equation 30.
func Enthalpy(T, W float64) float64 {
	t := T - zero
	return 1006*t + W*(2501e3+1860*t)
}

// Volume returns v = 287.042 T (1 + 1.607858 W)/p for each kg of dry air.
// Source: ASHRAE Fundamentals, Psychrometrics, equation 26.
func Volume(T, W, p float64) float64 { return 287.042 * T * (1 + 1.607858*W) / p }

// Apparatus returns the apparatus dew point of a coil: where the straight line
// from the air on (T1, W1) through the air off (T2, W2) first meets saturation,
// not colder than low. ok is false where it does not: the coil is dry, or the
// readings are off. Source: the coil line of the psychrometric chart.
func Apparatus(T1, W1, T2, W2, low, p float64) (T float64, ok bool) {
	slope := (W1 - W2) / (T1 - T2)
	above := func(T float64) bool { return W2+slope*(T-T2) >= Saturated(T, p) }
	const step = 0.25
	for T = T2; T > low; T -= step {
		if above(T) {
			return T, true
		}
		if !above(math.Max(T-step, low)) {
			continue
		}
		return Bisect(math.Max(T-step, low), T, func(T float64) bool { return !above(T) }), true
	}
	return low, false
}

// Bisect returns where a condition that fails at low and holds at high begins
// to hold; high if it never does.
func Bisect(low, high float64, holds func(float64) bool) float64 {
	for range 50 {
		if middle := (low + high) / 2; holds(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}
