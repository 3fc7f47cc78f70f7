package calc

import "math"

// AtmosphereAt returns the standard atmospheric pressure at an altitude:
//
//	p = 101325 (1 − 2.25577e-5 Z)^5.2559
//
// Z in metres, from −5,000 to 11,000; p in Pa. The weather moves the real
// pressure by about ±3 %. Source: ASHRAE Handbook Fundamentals, chapter
// Psychrometrics, equation 3, from the U.S. Standard Atmosphere.
func AtmosphereAt(altitude float64) float64 {
	return 101325 * math.Pow(1-2.25577e-5*altitude, 5.2559)
}
