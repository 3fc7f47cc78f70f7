package helmholtz

import "math"

// Auxiliary is a curve along the phase boundary of a pure fluid,
//
//	y = Y exp(u) or Y (1 + u),   u = Σ n (1-T/Tr)^e, multiplied by Tr/T where OverT is set.
//
// Outside MinT…Tr it is not defined; Value says how it is continued. Iterations start from it; no answer comes from it.
type Auxiliary struct {
	Y     float64 // reducing value, Pa or mol/m³
	Tr    float64 // K
	MinT  float64 // K
	OverT bool
	Plain bool // y = Y (1 + u)
	Terms []AuxiliaryTerm
}

// AuxiliaryTerm is one term of an Auxiliary, {n, e}. Single precision is ample for a start, and half the size on the wire.
type AuxiliaryTerm [2]float32

// Value evaluates the curve at T, held to the curve's own range.
func (a *Auxiliary) Value(T float64) float64 {
	T = max(T, a.MinT)
	theta := 1 - T/a.Tr
	if theta <= 0 {
		theta = 1e-12
	}
	lnTheta := math.Log(theta)
	var u float64
	for i := range a.Terms {
		u += float64(a.Terms[i][0]) * Exp(float64(a.Terms[i][1])*lnTheta)
	}
	if a.OverT {
		u *= a.Tr / T
	}
	if a.Plain {
		return a.Y * (1 + u)
	}
	return a.Y * Exp(u)
}
