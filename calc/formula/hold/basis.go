package hold

import "math"

// A fit is a sum of columns with amplitudes: given the time constants every model is linear (variable projection, Golub and
// Pereyra 1973), so a model is a choice of columns.
type columnKind uint8

const (
	constant    columnKind = iota // 1
	inflow                        // t: a choked leak, constant inflow
	bow                           // sin(pi t / span): temperature between its known ends
	waterColumn                   // psat(T)/psat(T start) - 1: water vapour that follows the temperature
	rise                          // 1 - exp(-t/tau), amplitude not negative: release, or evening out upward
	fall                          // the same, negative: evening out downward
	ramp                          // min(t, tau): straight rise that stops
)

type column struct {
	kind   columnKind
	tau    float64
	values []float64
	norm   float64 // weighted length
}

// exponential fills out with 1 - exp(-t/tau). The plain difference is exact enough: t/tau is never below 1e-6 where it matters.
func exponential(t []float64, tau float64, out []float64) []float64 {
	rate := 1 / tau
	for i, v := range t {
		out[i] = 1 - math.Exp(-v*rate)
	}
	return out
}

// system holds the weighted normal matrix of all columns on the points.
type system struct {
	pts    *points
	cols   []column
	g      []float64 // n × n, unit diagonal
	b      []float64
	yy     float64
	prior  []float64 // n × n addition to g from what is believed about amplitudes
	priorB []float64
	priorC float64
}

// belief holds the sizes of the priors, Pa. See assumptions.go.
type belief struct {
	fall        float64 // spread of the falling part, Pa
	fallRate    float64 // addition to it per time constant, Pa/s
	fallLongest float64 // s
	slow        float64 // spread of the sum of slow releases
	all         float64 // spread of the sum of all releases above equalisationLongest
	bow         float64 // spread of the bow; 0 leaves it out
	water       float64 // typical pressure for the water that follows the temperature; 0 leaves it out
	slowestRise float64 // s
}

// columnsFor lists the columns for the points. Time constants lie on a logarithmic grid of ratio 1.22: a mixture of two neighbours
// imitates any time constant between them within 0.2 % of the amplitude.
func columnsFor(p *points, be belief) []column {
	n := len(p.time)
	span := p.time[n-1]
	cols := make([]column, 0, 64)
	add := func(k columnKind, tau float64) []float64 {
		v := make([]float64, n)
		cols = append(cols, column{kind: k, tau: tau, values: v})
		return v
	}
	one := add(constant, 0)
	line := add(inflow, 0)
	for i, t := range p.time {
		one[i], line[i] = 1, t
	}
	if be.bow > 0 {
		v := add(bow, 0)
		for i, t := range p.time {
			v[i] = math.Sin(math.Pi * t / span)
		}
	}
	if be.water > 0 {
		for _, lag := range [...]float64{1, 1200, 3600} {
			if lag > 1 && lag > 0.7*span {
				continue
			}
			temp := lagged(p.time, p.temp, lag)
			v := add(waterColumn, lag)
			ref := saturation(temp[0])
			for i, t := range temp {
				v[i] = saturation(t)/ref - 1
			}
		}
	}
	// The shortest time constant the rows can show.
	gap := span
	for i := 1; i < n; i++ {
		gap = min(gap, p.time[i]-p.time[i-1])
	}
	shortest := max(equalisationShortest, gap/4)
	for tau := shortest; tau < be.slowestRise*1.0001; tau *= 1.22 {
		exponential(p.time, tau, add(rise, tau))
	}
	for tau := shortest; tau < be.fallLongest*1.0001; tau *= 1.6 {
		v := exponential(p.time, tau, add(fall, tau))
		for i := range v {
			v[i] = -v[i]
		}
	}
	if n >= 8 {
		for _, f := range [...]float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6} {
			v := add(ramp, f*span)
			for i, t := range p.time {
				v[i] = min(t, f*span)
			}
		}
	}
	return cols
}

// assemble computes the normal matrix and the priors.
func assemble(p *points, cols []column, be belief) *system {
	n := len(cols)
	s := &system{pts: p, cols: cols, g: make([]float64, n*n), b: make([]float64, n), prior: make([]float64, n*n), priorB: make([]float64, n)}
	m := len(p.time)
	weighted := make([]float64, m*n)
	for i, y := range p.pressure {
		s.yy += p.weight[i] * y * y
	}
	for j := range cols {
		v := cols[j].values
		sum := 0.0
		for i, x := range v {
			sum += p.weight[i] * x * x
		}
		cols[j].norm = math.Sqrt(sum)
		if !(cols[j].norm > 1e-12) {
			cols[j].norm = 0
			continue
		}
		f := 1 / cols[j].norm
		wj := weighted[j*m : j*m+m]
		for i, x := range v {
			wj[i] = f * p.weight[i] * x
		}
		b := 0.0
		for i, x := range wj {
			b += x * p.pressure[i]
		}
		s.b[j] = b
		for k := 0; k < j; k++ {
			if cols[k].norm == 0 {
				continue
			}
			d := 0.0
			vk := cols[k].values
			for i, x := range wj {
				d += x * vk[i]
			}
			d /= cols[k].norm
			s.g[j*n+k], s.g[k*n+j] = d, d
		}
		s.g[j*n+j] = 1 + 1e-11
	}
	size := func(c column) float64 { // Pa that an amplitude of one stands for
		if c.kind == ramp {
			return c.tau / c.norm
		}
		return 1 / c.norm
	}
	if be.fall > 0 { // in units of its own spread
		own := func(c column) float64 {
			return 1 / c.norm / ((be.fall + be.fallRate*min(c.tau, equalisationTypical)) * min(1, equalisationTypical/c.tau))
		}
		s.group(1, 0, own, func(c column) bool { return c.kind == fall })
	}
	s.group(be.slow, 0, size, func(c column) bool { return c.kind == rise && c.tau > slowRelease })
	s.group(be.all, 0, size, func(c column) bool { return c.kind == ramp || c.kind == rise && c.tau > equalisationLongest })
	s.group(be.bow, 0, size, func(c column) bool { return c.kind == bow })
	s.group(be.water*waterSpread, be.water*waterMean, size, func(c column) bool { return c.kind == waterColumn })
	return s
}

// group adds the belief that the sum of the members' sizes is mean with a spread.
func (s *system) group(spread, mean float64, size func(column) float64, member func(column) bool) {
	if !(spread > 0) {
		return
	}
	n := len(s.cols)
	any := false
	for j, c := range s.cols {
		if c.norm == 0 || !member(c) {
			continue
		}
		any = true
		a := size(c) / spread
		s.priorB[j] += a * mean / spread
		for k, d := range s.cols {
			if d.norm != 0 && member(d) {
				s.prior[j*n+k] += a * size(d) / spread
			}
		}
	}
	if any {
		s.priorC += mean * mean / (spread * spread)
	}
}
