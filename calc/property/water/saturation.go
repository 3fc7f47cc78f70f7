package water

import "math"

// LiquidPressure returns the pressure (Pa) at which liquid water boils at temperature t (K).
//
//	ln(p/pc) = (Tc/T) (a1 v + a2 v^1.5 + a3 v^3 + a4 v^3.5 + a5 v^4 + a6 v^7.5),  v = 1 - T/Tc
//
// Range 273.16 K to 647.096 K, otherwise ErrTemperature. Source: W. Wagner and A. Pruss,
// J. Phys. Chem. Ref. Data 22 (1993) 783, equation 1, repeated as equation 2.5a of their paper of 2002;
// IAPWS supplementary release SR1-86 (1992).
func LiquidPressure(t float64) (float64, error) {
	if !(t >= TripleTemperature && t <= CriticalTemperature) {
		return math.NaN(), ErrTemperature
	}
	return liquid(t), nil
}

// IcePressure returns the pressure (Pa) at which ordinary ice (ice Ih) sublimes at temperature t (K).
//
//	ln(p/pt) = (1/h) (a1 h^b1 + a2 h^b2 + a3 h^b3),  h = T/273.16 K, pt = 611.657 Pa
//
// Range 50 K to 273.16 K, otherwise ErrTemperature. Source: IAPWS R14-08(2011), equation 6.
func IcePressure(t float64) (float64, error) {
	if !(t >= SublimationLowest && t <= TripleTemperature) {
		return math.NaN(), ErrTemperature
	}
	return ice(t), nil
}

// SaturationPressure returns the saturation pressure of water (Pa) at temperature t (K): over ice below
// the triple point (273.16 K), over liquid from there on. Range 50 K to 647.096 K, otherwise ErrTemperature.
//
// Supercooled liquid, which holds a slightly higher pressure than ice, is not covered.
func SaturationPressure(t float64) (float64, error) {
	if t < TripleTemperature {
		return IcePressure(t)
	}
	return LiquidPressure(t)
}

// BoilingTemperature returns the temperature (K) at which water boils at pressure p (Pa absolute), or,
// below the triple-point pressure of 611.657 Pa, the temperature at which ice sublimes.
// It inverts LiquidPressure and IcePressure to within a few units in the last place.
//
// Range: from the sublimation pressure at 50 K to the critical pressure 22.064 MPa, otherwise ErrPressure.
func BoilingTemperature(p float64) (float64, error) {
	if !(p >= ice(SublimationLowest) && p <= CriticalPressure) {
		return math.NaN(), ErrPressure
	}
	if p < TriplePressure {
		return invert(ice, p, SublimationLowest, TripleTemperature), nil
	}
	return invert(liquid, p, TripleTemperature, CriticalTemperature), nil
}

func liquid(t float64) float64 {
	v := 1 - t/CriticalTemperature
	if v < 0 {
		v = 0
	}
	r := math.Sqrt(v)
	v2 := v * v
	v3 := v2 * v
	s := -7.85951783*v + 1.84408259*v*r - 11.7866497*v3 + 22.6807411*v3*r - 15.9618719*v2*v2 + 1.80122502*v3*v3*v*r
	return CriticalPressure * math.Exp(CriticalTemperature/t*s)
}

func ice(t float64) float64 {
	h := t / TripleTemperature
	s := -21.2144006*math.Pow(h, 0.00333333333) + 27.3203819*math.Pow(h, 1.20666667) - 6.10598130*math.Pow(h, 1.70333333)
	return TriplePressure * math.Exp(s/h)
}

// invert solves f(t) = p on [low, high] by the Illinois form of the secant method in ln p against 1/T,
// in which a vapour-pressure line is almost straight. The bracket never breaks, so it cannot diverge.
func invert(f func(float64) float64, p, low, high float64) float64 {
	target := math.Log(p)
	x0, x1 := 1/low, 1/high
	y0, y1 := math.Log(f(low))-target, math.Log(f(high))-target
	if y0 >= 0 {
		return low
	}
	if y1 <= 0 {
		return high
	}
	side := 0
	for range 100 {
		x := (x0*y1 - x1*y0) / (y1 - y0)
		y := math.Log(f(1/x)) - target
		if math.Abs(y) < 1e-15*math.Max(1, math.Abs(target)) || math.Abs(x1-x0) < 4e-16*x {
			return 1 / x
		}
		if y < 0 {
			x0, y0 = x, y
			if side == -1 {
				y1 /= 2
			}
			side = -1
		} else {
			x1, y1 = x, y
			if side == 1 {
				y0 /= 2
			}
			side = 1
		}
	}
	return 1 / ((x0*y1 - x1*y0) / (y1 - y0))
}
