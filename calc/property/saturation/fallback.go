package saturation

import "math"

// continued walks from tRef, where a solve from scratch works, to T in steps that start from the state before.
func (s *Solver) continued(kind Kind, T float64) (State, error) {
	t := s.tRef
	s.lnT = math.Log(t)
	s.start(kind, t)
	if !s.newton(kind, 0) {
		return State{}, ErrNotConverged
	}
	step := (T - t) / 4
	for range 80 {
		lnKnown, lnInc := s.lnKnown, s.lnInc
		next := t + step
		if math.Abs(T-t) <= math.Abs(step) {
			next = T
		}
		// The vapour's densities follow ln p, which moves with 1/T; Newton does the rest.
		s.lnT = math.Log(next)
		if s.newton(kind, 0) {
			if next == T {
				return s.state(kind, T, 0), nil
			}
			t = next
			step *= 1.3
			continue
		}
		s.lnKnown, s.lnInc = lnKnown, lnInc
		step /= 2
		if math.Abs(step) < 1e-4*s.tRef {
			break
		}
	}
	return State{}, ErrNotConverged
}

// bracketed finds T for a pressure by secants in ln p over 1/T, each point a solve at a temperature. T is a first guess.
func (s *Solver) bracketed(kind Kind, p, T, tLow, tHigh float64) (State, error) {
	lnp := math.Log(p)
	low, high := 0.98*tLow, 1.02*tHigh
	slope := 0.0 // d ln p / d(1/T)
	var lastX, lastF float64
	for i := range 60 {
		st, err := s.AtT(kind, T)
		if err != nil {
			if i > 0 {
				return State{}, err
			}
			T = s.tRef
			continue
		}
		x, f := 1/T, math.Log(st.P)-lnp
		if math.Abs(f) < 1e-13 {
			return st, nil
		}
		if f > 0 {
			high = min(high, T)
		} else {
			low = max(low, T)
		}
		if lastX != 0 && lastX != x {
			slope = (f - lastF) / (x - lastX)
		}
		if !(slope < 0) {
			slope = -10 * T // the slope of Trouton's rule
		}
		lastX, lastF = x, f
		next := 1 / (x - f/slope)
		if math.Abs(next-T) < 1e-13*T {
			return st, nil
		}
		if !(next > low && next < high) {
			next = (low + high) / 2
			if high-low < 1e-12*T {
				return State{}, ErrNotConverged
			}
		}
		T = next
	}
	return State{}, ErrNotConverged
}
