package recovery

import "math"

// Share is the part of a cylinder's volume that liquid may fill.
// Source: AHRI Guideline K, filling formula, as a trade article restates it.
const Share = 0.80

// WaterDensity turns a water capacity stamped as a mass into a volume. The
// stamp means water near 15 °C, 999 kg/m³; 1000 makes the cylinder 0.1 %
// smaller, which is the safe side.
const WaterDensity = 1000.0

// Fill returns the mass that a cylinder may hold:
//
//	m = 0.80 V ρ
//
// with the volume V in m³ and the density ρ of the liquid in kg/m³. The
// guideline takes ρ at 25 °C (77 °F); a warmer liquid is lighter, and the
// density at the warmest temperature keeps a fifth of the cylinder free there.
func Fill(volume, density float64) float64 { return Share * volume * density }

// Needed returns how many cylinders alike take a mass, when the first has only
// the room given left. A first cylinder without room does not count.
func Needed(mass, room, each float64) int {
	n := 0
	// A thousandth of a kilogram is below what any scale shows.
	if room > 1e-3 {
		n, mass = 1, mass-room
	}
	if mass > 1e-3 {
		n += int(math.Ceil((mass - 1e-3) / each))
	}
	return n
}

// LiquidFull finds the temperature between low and high at which a liquid of
// falling density reaches the density given, by bisection to 0.005 K. Above
// that temperature a closed cylinder has no vapour space left. It reports
// false when the liquid is denser than that over the whole range, or when
// density gives no answer.
func LiquidFull(density func(t float64) (float64, bool), want, low, high float64) (float64, bool) {
	if rho, ok := density(high); !ok || rho > want {
		return 0, false
	}
	for high-low > 0.005 {
		middle := (low + high) / 2
		rho, ok := density(middle)
		if !ok {
			return 0, false
		}
		if rho > want {
			low = middle
		} else {
			high = middle
		}
	}
	return low, true // the cooler end is the safe side
}

// ServicePressure returns the service pressure, Pa above the atmosphere, that a
// cylinder needs for a vapour pressure at 55 °C given the same way:
//
//	p service = p(55 °C) / 1.25
//
// Source: 49 CFR 173.304a(c), pressure at 55 °C at most 5/4 of the service
// pressure.
func ServicePressure(at55 float64) float64 { return at55 / 1.25 }

// Between finds the vapour pressure at T between two states of the curve, with
// ln p straight in 1/T, as Clausius and Clapeyron have it. Over the last fiftieth below the
// critical point the error is below 0.3 %.
func Between(t, t1, p1, t2, p2 float64) float64 {
	return p1 * math.Exp(math.Log(p2/p1)*(1/t1-1/t)/(1/t1-1/t2))
}
