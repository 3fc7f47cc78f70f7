package hold

import (
	"math"
)

// rows is the log while it is being cleaned. index keeps the row number in the log as given.
type rows struct {
	time, pressure, ambient []float64
	index                   []int
}

func (r *rows) len() int { return len(r.time) }

func (r *rows) slice(from, to int) rows {
	s := rows{time: r.time[from:to], pressure: r.pressure[from:to], index: r.index[from:to]}
	if r.ambient != nil {
		s.ambient = r.ambient[from:to]
	}
	return s
}

// drop removes the rows marked, in place.
func (r *rows) drop(marked []bool) {
	k := 0
	for i := range r.time {
		if marked[i] {
			continue
		}
		r.time[k], r.pressure[k], r.index[k] = r.time[i], r.pressure[i], r.index[i]
		if r.ambient != nil {
			r.ambient[k] = r.ambient[i]
		}
		k++
	}
	r.time, r.pressure, r.index = r.time[:k], r.pressure[:k], r.index[:k]
	if r.ambient != nil {
		r.ambient = r.ambient[:k]
	}
}

// validate checks the input and copies it. Times become seconds after the first row. A row that repeats the
// row before in time and pressure is left out; the same time with another pressure is an error.
func validate(log Log, c Conditions) (rows, error) {
	n := len(log.Time)
	switch {
	case len(log.Pressure) != n:
		return rows{}, &Error{Fault: LengthsDiffer, Value: float64(len(log.Pressure))}
	case log.Ambient != nil && len(log.Ambient) != n:
		return rows{}, &Error{Fault: LengthsDiffer, Value: float64(len(log.Ambient))}
	case n < MinRows:
		return rows{}, &Error{Fault: FewRows, Value: float64(n)}
	case n > MaxRows:
		return rows{}, &Error{Fault: ManyRows, Value: float64(n)}
	case !(c.Target > 0) || !(c.Limit > c.Target) || math.IsInf(c.Limit, 0):
		return rows{}, &Error{Fault: LimitOutside, Value: c.Limit}
	case !(c.InflowLimit >= 0) || math.IsInf(c.InflowLimit, 0):
		return rows{}, &Error{Fault: InflowOutside, Value: c.InflowLimit}
	case !(c.Volume >= 0) || math.IsInf(c.Volume, 0):
		return rows{}, &Error{Fault: VolumeOutside, Value: c.Volume}
	}
	for i, t := range [...]float64{c.AmbientStart, c.AmbientEnd} {
		if t == t && !(t >= MinAmbient && t <= MaxAmbient) {
			return rows{}, &Error{Fault: AmbientOutside, Row: i * n, Value: t}
		}
	}
	r := rows{time: make([]float64, 0, n), pressure: make([]float64, 0, n), index: make([]int, 0, n)}
	if log.Ambient != nil {
		r.ambient = make([]float64, 0, n)
	}
	last := math.Inf(-1)
	for i, t := range log.Time {
		p := log.Pressure[i]
		if t != t || math.IsInf(t, 0) {
			return rows{}, &Error{Fault: TimeNotFinite, Row: i + 1, Value: t}
		}
		if p != p || math.IsInf(p, 0) {
			return rows{}, &Error{Fault: PressureMissing, Row: i + 1, Value: p}
		}
		if p < 0 || p > MaxPressure {
			return rows{}, &Error{Fault: PressureOutside, Row: i + 1, Value: p}
		}
		if t == last && p == log.Pressure[i-1] {
			continue
		}
		if t <= last {
			return rows{}, &Error{Fault: TimeNotAfter, Row: i + 1, Value: t}
		}
		last = t
		if log.Ambient != nil {
			a := log.Ambient[i]
			if a == a && !(a >= MinAmbient && a <= MaxAmbient) {
				return rows{}, &Error{Fault: AmbientOutside, Row: i + 1, Value: a}
			}
			r.ambient = append(r.ambient, a)
		}
		r.time = append(r.time, t-log.Time[0])
		r.pressure = append(r.pressure, p)
		r.index = append(r.index, i)
	}
	if r.len() < MinRows {
		return rows{}, &Error{Fault: FewRows, Value: float64(r.len())}
	}
	if span := r.time[r.len()-1]; !(span >= MinSpan && span <= MaxSpan) {
		return rows{}, &Error{Fault: SpanOutside, Value: span}
	}
	return r, nil
}

// overRange finds a gauge that has reached the top of its range: from some row on, nearly all readings are exactly the highest of the
// log, above 10,000 micron, and the pressure climbed into it. A plateau near the saturation pressure of water is taken for it only when the
// reading is a multiple of 500 micron. It returns the reading and the number of rows to leave out, zero when none.
func overRange(r *rows, saturation float64) (top float64, count int) {
	n := r.len()
	for _, p := range r.pressure {
		top = max(top, p)
	}
	if top < 10000*micron {
		return 0, 0
	}
	if k := top / (500 * micron); math.Abs(top-saturation) < 0.05*saturation && math.Abs(k-math.Round(k)) > 1e-6 {
		return 0, 0
	}
	from := 0
	for r.pressure[from] != top {
		from++
	}
	count = n - from
	same := 0
	for _, p := range r.pressure[from:] {
		if p == top {
			same++
		} else if p < 0.98*top {
			return 0, 0
		}
	}
	if count < 3 || float64(same) < 0.8*float64(count) || from < MinRows {
		return 0, 0
	}
	// It climbed: over as many rows before it, and at least three, the pressure rose by more than 5 %.
	if r.pressure[max(0, from-max(3, count/2))] > 0.95*top {
		return 0, 0
	}
	return top, count
}

// outliers marks single readings, and pairs, that stand out on one side of both their neighbours by more than six
// times the typical scatter, three display steps and a quarter of the reading: glitches, noughts, a slip of the pen. Smaller ones are left to the
// robust weights of the fit. A monotonic curve is never marked, however bent. At most a twentieth of the rows, the worst first.
func outliers(r *rows, step float64) []bool {
	n := r.len()
	marked := make([]bool, n)
	if n < 6 {
		return marked
	}
	stride := 1 + n/sampleRows
	d := make([]float64, 0, n/stride+1)
	for i := 1; i+1 < n; i += stride {
		d = append(d, math.Abs(beyond(r.pressure[i], r.pressure[i-1], r.pressure[i+1])))
	}
	scatter := 1.5 * quantile(d, 0.75)
	type suspect struct {
		row, width int
		size       float64
	}
	var found []suspect
	for i := 1; i+1 < n; i++ {
		a := r.pressure[i-1]
		if math.Abs(r.pressure[i]-a) < 0.2*a {
			continue
		}
		for width := 1; width <= 2 && i+width < n; width++ {
			b := r.pressure[i+width]
			limit := max(6*scatter, 3*step, 0.25*max(a, b))
			least, side := math.Inf(1), 0.0
			for k := i; k < i+width; k++ {
				e := beyond(r.pressure[k], a, b)
				if e*side < 0 {
					e = 0
				}
				side = e
				least = min(least, math.Abs(e))
			}
			if least > limit {
				found = append(found, suspect{i, width, least / limit})
			}
		}
	}
	sortBy(len(found), func(i, j int) bool {
		if found[i].size != found[j].size {
			return found[i].size > found[j].size
		}
		return found[i].row < found[j].row
	}, func(i, j int) { found[i], found[j] = found[j], found[i] })
	left := max(1, n/20)
	for _, f := range found {
		if f.width > left || f.width > 1 && left < 2 {
			continue
		}
		for k := f.row; k < f.row+f.width; k++ {
			if !marked[k] {
				marked[k] = true
				left--
			}
		}
	}
	return marked
}

// beyond is how far p lies outside the span between a and b, signed; zero inside.
func beyond(p, a, b float64) float64 {
	if hi := max(a, b); p > hi {
		return p - hi
	}
	if lo := min(a, b); p < lo {
		return p - lo
	}
	return 0
}

// quantile sorts v and returns its q-quantile; zero for an empty v.
func quantile(v []float64, q float64) float64 {
	if len(v) == 0 {
		return 0
	}
	sortFloats(v)
	return v[int(q*float64(len(v)-1)+0.5)]
}
