// Package water gives the saturation line of ordinary water: the pressure at which ice
// sublimes or liquid boils at a temperature, and the temperature for a pressure.
//
// In an evacuated pipe this line decides what a plateau can mean: free water or ice holds
// the pressure at saturation until it is gone, and nothing made of water can push the
// pressure above it.
//
// All values are SI: K and Pa absolute. Nothing is extrapolated; outside a range the functions
// return ErrTemperature or ErrPressure.
package water

import "errors"

const (
	// TripleTemperature is the triple point of water, K (IAPWS R14-08, section 3).
	TripleTemperature = 273.16
	// TriplePressure is the pressure there, Pa (IAPWS R14-08, section 3).
	TriplePressure = 611.657
	// CriticalTemperature is the critical point of water, K (IAPWS R2-83).
	CriticalTemperature = 647.096
	// CriticalPressure is the pressure there, Pa (IAPWS R2-83).
	CriticalPressure = 22.064e6
	// SublimationLowest is the lower end of the sublimation equation, K (IAPWS R14-08, equation 6).
	SublimationLowest = 50.0
)

var (
	// ErrTemperature says that a temperature is outside the range of the equation asked for.
	ErrTemperature = errors.New("water: temperature outside the range of the equation")
	// ErrPressure says that a pressure is outside the range of the equation asked for.
	ErrPressure = errors.New("water: pressure outside the range of the equation")
)
