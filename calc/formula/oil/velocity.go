// Package oil holds the small equations about the oil of a circuit: whether
// the gas carries it home, what its acid asks for, and how much of it goes
// back with a new compressor.
//
// SI throughout: m, m/s, kg/s, W, J/kg, m³; acid numbers in mg KOH for each
// gram of oil, as every source prints them. No labels, no units, no sentences.
package oil

import "math"

// MassFlow returns the refrigerant, kg/s, that carries a capacity in W:
//
//	ṁ = Q ÷ (h suction − h liquid)
//
// with the enthalpies in J/kg. The rise must be above zero.
func MassFlow(capacity, rise float64) float64 { return capacity / rise }

// Velocity returns the mean speed, m/s, of a mass flow, kg/s, of gas of a
// density, kg/m³, in a bore, m:
//
//	v = ṁ ÷ (ρ π d²/4)
func Velocity(flow, density, bore float64) float64 {
	return flow / (density * math.Pi * bore * bore / 4)
}

// LiquidDensity is taken for the oil film with the refrigerant dissolved in
// it, kg/m³. Oils alone have 900 to 1000. With it, Flooding gives a
// handbook's row of minimum capacities, as recalled, within 2 %; the
// square root makes 10 % of it 5 % of the answer.
const LiquidDensity = 1000

// Flooding returns the speed of the gas, m/s, below which an oil film runs
// down a vertical riser:
//
//	√j* = 0.85, so v = 0.7225 √((ρl − ρ) g d ÷ ρ)
//
// with the gas density ρ, kg/m³, below that of the liquid, and the bore d, m.
// Source: jacobs-1976, from memory.
func Flooding(density, bore float64) float64 {
	return 0.85 * 0.85 * math.Sqrt((LiquidDensity-density)*9.80665*bore/density)
}

// Speeds of suction gas, m/s, that sources ask for.
const (
	LevelSpeed = 4.0  // level line, at least: manual-17, practice-80
	RiserLeast = 5.0  // riser, at least: practice-80
	RiserSpeed = 8.0  // riser, at least: manual-17
	Fastest    = 20.0 // above it noise and pressure loss: practice-80, ashrae-refrigeration
)

// Spread returns how many times wider the one bore is than the other, by
// area: (wide ÷ narrow)². The speed falls by the same factor.
func Spread(wide, narrow float64) float64 { return wide / narrow * (wide / narrow) }
