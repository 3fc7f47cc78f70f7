package saturation

import "math"

func (s *Solver) Scratch(k Kind, T float64)          { s.lnT = math.Log(T); s.start(k, T) }
func (s *Solver) Newton(k Kind, p float64) bool      { return s.newton(k, p) }
