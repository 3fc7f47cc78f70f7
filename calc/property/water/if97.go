package water

import "math"

// Region 4 of IAPWS-IF97, the industrial formulation: a second, independent equation for the same
// line, kept to check the first. The two agree within 0.03 % between 273.16 K and the critical point.

// if97 holds n1 to n10 of IAPWS R7-97(2012), Table 34; index 0 is unused so that indices match the print.
var if97 = [...]float64{0,
	0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
	0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3}

// SaturationPressureIF97 returns the saturation pressure (Pa) over liquid at t (K).
//
//	p = 1 MPa [2C / (-B + sqrt(B² - 4AC))]^4,  A, B, C quadratics in v = T + n9/(T - n10)
//
// Range 273.15 K to 647.096 K, otherwise ErrTemperature. Source: IAPWS R7-97(2012), equation 30.
func SaturationPressureIF97(t float64) (float64, error) {
	if !(t >= 273.15 && t <= CriticalTemperature) {
		return math.NaN(), ErrTemperature
	}
	n := &if97
	v := t + n[9]/(t-n[10])
	a := v*v + n[1]*v + n[2]
	b := n[3]*v*v + n[4]*v + n[5]
	c := n[6]*v*v + n[7]*v + n[8]
	x := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return 1e6 * x * x * x * x, nil
}

// SaturationTemperatureIF97 returns the boiling temperature (K) at p (Pa absolute), the exact inverse of
// SaturationPressureIF97.
//
//	T = [n10 + D - sqrt((n10 + D)² - 4 (n9 + n10 D))] / 2,  D from E, F, G quadratics in (p / 1 MPa)^(1/4)
//
// Range 611.213 Pa to 22.064 MPa, otherwise ErrPressure. Source: IAPWS R7-97(2012), equation 31.
func SaturationTemperatureIF97(p float64) (float64, error) {
	if !(p >= 611.213 && p <= CriticalPressure) {
		return math.NaN(), ErrPressure
	}
	n := &if97
	b := math.Sqrt(math.Sqrt(p / 1e6))
	e := b*b + n[3]*b + n[6]
	f := n[1]*b*b + n[4]*b + n[7]
	g := n[2]*b*b + n[5]*b + n[8]
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	s := n[10] + d
	return (s - math.Sqrt(s*s-4*(n[9]+n[10]*d))) / 2, nil
}
