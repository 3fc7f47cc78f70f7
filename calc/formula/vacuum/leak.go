package vacuum

import "math"

// Leak is a leak of air from the atmosphere into a vacuum, and the vapour that
// leaves through the same hole when the system runs.
type Leak struct {
	Air       float64 // Pa·m³/s of air into the vacuum
	Outside   float64 // Pa, the atmosphere
	Inside    float64 // Pa absolute at the leak when running; above Outside
	MolarMass float64 // kg/mol of the vapour
	Viscosity float64 // Pa·s of the vapour
	Density   float64 // kg/m³ of the vapour at Inside
}

// airMolarMass is that of dry air, kg/mol; leakT the temperature taken for the
// air, K; gasConstant CODATA 2018, J/(mol K).
const (
	airMolarMass = 0.0289652
	leakT        = 293.15
	gasConstant  = 8.314462618
)

// Molecular returns the mass flow, kg/s, when the hole is so fine that the
// molecules meet only its walls:
//
//	m/m air = √(M/M air) (p1 - p2)/p2
//
// It is the low estimate. Source: key leak-flow-table.
func (l *Leak) Molecular() float64 {
	air := l.Air * airMolarMass / (gasConstant * leakT)
	return air * math.Sqrt(l.MolarMass/airMolarMass) * (l.Inside - l.Outside) / l.Outside
}

// Viscous returns the mass flow, kg/s, through a long fine hole in which
// friction of the gas rules:
//
//	q/q air = (η air/η) (p1² - p2²)/p2²,   m = q ρ1/p1
//
// The density at the inside pressure makes it an upper figure for a real
// vapour. It is the high estimate. Source: key leak-flow-table.
func (l *Leak) Viscous() float64 {
	q := l.Air * airViscosity / l.Viscosity * (l.Inside*l.Inside - l.Outside*l.Outside) / (l.Outside * l.Outside)
	return q * l.Density / l.Inside
}
