package electrical

import "math"

// StoredEnergy returns ½ C V², J, of a capacitor of c F charged to v V.
func StoredEnergy(c, v float64) float64 { return c * v * v / 2 }

// DischargeTime returns the seconds in which a capacitor of c F falls from
// the voltage from to the voltage to through r Ω:
//
//	t = R C ln(from/to)
//
// 0 when from is not above to. It holds for a plain resistor; a switched
// supply that feeds on the link stops drawing at a low voltage.
func DischargeTime(r, c, from, to float64) float64 {
	return r * c * math.Log(max(from, to)/to)
}

// VoltageAfter returns the voltage left t s after the voltage from:
// from × exp(−t/(R C)).
func VoltageAfter(r, c, from, t float64) float64 { return from * math.Exp(-t/(r*c)) }
