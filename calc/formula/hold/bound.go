package hold

import "math"

// mixture is the most general explanation that physics leaves open: evening out of either sign, any number of releases with time
// constants up to releaseLongest, straight rises that stop, water that follows the temperature, and a steady inflow. Its
// profile over the inflow, with everything else refitted each time, gives the inflow that the log allows. With amplitudes of
// one sign the problem is convex, so the bounds are exact for this family; a leak is the limit of an endless time constant.
type mixture struct {
	*system
	q      *program
	x      []float64 // amplitudes of the unit columns at the best inflow
	line   int       // column of the inflow
	chi    float64   // weighted sum of squares with the priors, at the best inflow
	inflow float64   // Pa/s
	b      []float64
}

func newMixture(s *system) *mixture {
	n := len(s.cols)
	m := &mixture{system: s, q: newProgram(n), x: make([]float64, n), b: make([]float64, n)}
	for i := range s.g {
		m.q.g[i] = s.g[i] + s.prior[i]
	}
	for j, c := range s.cols {
		m.q.free[j] = c.kind == constant || c.kind == inflow || c.kind == bow
		m.q.off[j] = c.norm == 0
		m.b[j] = s.b[j] + s.priorB[j]
		if c.kind == inflow {
			m.line = j
		}
	}
	m.chi = s.yy + s.priorC + m.q.solve(m.b, m.x)
	m.inflow = m.x[m.line] / s.cols[m.line].norm
	return m
}

// at returns the weighted sum of squares with the inflow held at rate (Pa/s); x starts from and receives the amplitudes.
func (m *mixture) at(rate float64, x, b []float64) float64 {
	n := len(m.cols)
	norm := m.cols[m.line].norm
	a := rate * norm
	for j := range b {
		b[j] = m.b[j] - a*m.q.g[j*n+m.line]
	}
	x[m.line] = 0
	m.q.off[m.line] = true
	f := m.yy + m.priorC - 2*a*m.b[m.line] + a*a*m.q.g[m.line*n+m.line] + m.q.solve(b, x)
	m.q.off[m.line] = false
	return f
}

// bound finds the inflow above (side +1) or below (side -1) the best at which the sum of squares has grown by z².
func (m *mixture) bound(side, z, step float64) float64 {
	x := append([]float64(nil), m.x...)
	b := make([]float64, len(m.b))
	root := func(d float64) float64 { return math.Sqrt(max(0, m.at(m.inflow+side*d, x, b)-m.chi)) - z }
	lo, flo := 0.0, -z
	hi := step
	fhi := root(hi)
	for k := 0; fhi < 0 && k < 60; k++ {
		lo, flo = hi, fhi
		hi *= 2
		fhi = root(hi)
	}
	for k := 0; k < 12 && hi-lo > 0.01*hi; k++ {
		d := lo + (hi-lo)*min(0.9, max(0.1, -flo/(fhi-flo)))
		f := root(d)
		if math.Abs(f) < 0.01 {
			return m.inflow + side*d
		}
		if f < 0 {
			lo, flo = d, f
		} else {
			hi, fhi = d, f
		}
	}
	return m.inflow + side*hi
}

// late returns the mixture without the releases slower than longest (s): what they would explain is then counted as inflow.
func (m *mixture) late(longest float64) *mixture {
	n := len(m.cols)
	l := &mixture{system: m.system, q: newProgram(n), x: make([]float64, n), b: m.b, line: m.line}
	copy(l.q.g, m.q.g)
	copy(l.q.free, m.q.free)
	for j, c := range m.cols {
		l.q.off[j] = m.q.off[j] || (c.kind == rise || c.kind == ramp) && c.tau > max(longest, equalisationTypical)
	}
	l.chi = m.yy + m.priorC + l.q.solve(l.b, l.x)
	l.inflow = l.x[l.line] / m.cols[m.line].norm
	return l
}

// hiddenByCooling is the inflow (Pa/s) that could hide behind the measured cooling beyond what the fit already puts down to it, if all of
// the gas, pressure Pa of it, were water: the steepest fall of the water columns along the hold, as straight lines by least squares.
func (m *mixture) hiddenByCooling(pressure float64) float64 {
	steepest, fitted := 0.0, 0.0
	var sw, st, stt float64
	for i, t := range m.pts.time {
		w := m.pts.weight[i]
		sw, st, stt = sw+w, st+w*t, stt+w*t*t
	}
	for j, c := range m.cols {
		if c.kind != waterColumn || c.norm == 0 {
			continue
		}
		var sv, stv float64
		for i, v := range c.values {
			w := m.pts.weight[i]
			sv, stv = sv+w*v, stv+w*v*m.pts.time[i]
		}
		slope := (sw*stv - st*sv) / (sw*stt - st*st)
		steepest = max(steepest, -slope*pressure)
		fitted -= slope * m.x[j] / c.norm
	}
	return max(0, steepest-max(0, fitted))
}

// fitted returns the mixture on the points, at the best inflow.
func (m *mixture) fitted() []float64 {
	out := make([]float64, len(m.pts.time))
	for j, c := range m.cols {
		if m.x[j] == 0 || c.norm == 0 {
			continue
		}
		a := m.x[j] / c.norm
		for i, v := range c.values {
			out[i] += a * v
		}
	}
	return out
}

// parameters counts the columns in use.
func (m *mixture) parameters() int {
	k := 0
	for _, v := range m.x {
		if v != 0 {
			k++
		}
	}
	return k
}
