package helmholtz

import "math"

// exp is the one exponential of the package, so that a faster one could be put in its place and measured.
func exp(x float64) float64 { return math.Exp(x) }
