package recovery

import "math"

const (
	psi  = 6894.757293168361
	inHg = 3386.389
	// StandardInHg is the atmosphere that the table of the regulation counts from, inches of mercury.
	StandardInHg = 29.9
	// LargeCharge divides the rows of the table: 200 lb, in kg.
	LargeCharge = 200 * 0.45359237
)

// Class is a pressure class of 40 CFR 82.152, by the saturation pressure of
// the liquid at 104 °F (40 °C).
type Class int

// The classes, by saturation pressure: to 45, to 170, to 355 psi absolute and above.
const (
	Low Class = iota
	Medium
	High
	VeryHigh
)

// ClassOf returns the class for a saturation pressure at 40 °C, Pa.
func ClassOf(p float64) Class {
	for c, limit := range [...]float64{45, 170, 355} {
		if p <= limit*psi {
			return Class(c)
		}
	}
	return VeryHigh
}

// Inches returns the row of 40 CFR 82.156 table 1: inches of mercury below a
// standard atmosphere of 29.9 in Hg. Low-pressure appliances have 25 mm Hg
// absolute instead.
func Inches(c Class, large, newMachine bool) float64 {
	row := 0 // very high, or high below 200 lb
	switch {
	case c == Low:
		return StandardInHg - 25/25.4
	case c == High && large:
		row = 1
	case c == Medium && !large:
		row = 1
	case c == Medium:
		row = 2
	}
	if newMachine {
		return [...]float64{0, 10, 15}[row]
	}
	return [...]float64{0, 4, 4}[row]
}

// Level returns the absolute pressure, Pa, that so many inches of mercury below the
// table's atmosphere are, and never more than the local atmosphere.
func Level(inches, atmosphere float64) float64 {
	if inches == 0 {
		return atmosphere // zero gauge: the 0.02 in Hg between the two atmospheres is no reading
	}
	return math.Min((StandardInHg-inches)*inHg, atmosphere)
}
