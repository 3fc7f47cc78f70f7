package hold

import "math"

// In the named models evening out is faster than equalisationTypical and a release slower (common practice: the jump in the first
// minutes is evening out). The bound on the inflow does not depend on that line.

// fitter fits the named models by variable projection: amplitudes by least squares for each choice of time constants, time
// constants by a scan of the grid and then golden sections.
type fitter struct {
	*system
	nuisance []int // columns of the temperature, part of every model
	one      int
	line     int
	fast     []int // rise columns up to equalisationTypical
	slow     []int // rise columns above
	ramps    []int
	freeRows int
	small    [9]*program // one of each size, used again and again
}

func newFitter(s *system, water int) *fitter {
	f := &fitter{system: s, freeRows: len(s.pts.time)}
	for j, c := range s.cols {
		if c.norm == 0 {
			continue
		}
		switch c.kind {
		case constant:
			f.one = j
		case inflow:
			f.line = j
		case bow:
			f.nuisance = append(f.nuisance, j)
		case waterColumn:
			if j == water {
				f.nuisance = append(f.nuisance, j)
			}
		case rise:
			if c.tau <= equalisationTypical {
				f.fast = append(f.fast, j)
			} else {
				f.slow = append(f.slow, j)
			}
		case ramp:
			f.ramps = append(f.ramps, j)
		}
	}
	return f
}

// trial is one choice of columns with its solution.
type trial struct {
	chi   float64
	amp   [8]float64 // in the order of cols
	cols  [8]int
	count int
}

// onGrid solves for the columns given, all of the system.
func (f *fitter) onGrid(cols ...int) trial {
	var t trial
	m := len(cols)
	t.count = copy(t.cols[:], cols)
	q := f.small[m]
	if q == nil {
		q = newProgram(m)
		f.small[m] = q
	}
	var b, x [8]float64
	n := len(f.cols)
	for i, a := range cols {
		for j, c := range cols {
			q.g[i*m+j] = f.g[a*n+c] + f.prior[a*n+c]
		}
		k := f.cols[a].kind
		q.free[i] = k == constant || k == bow || (k == rise && f.cols[a].tau <= equalisationTypical)
		b[i] = f.b[a] + f.priorB[a]
	}
	t.chi = f.yy + f.priorC + q.solve(b[:m], x[:m])
	for i, a := range cols {
		t.amp[i] = x[i] / f.cols[a].norm
	}
	return t
}

// named fits one model. ok is false when the log has too few points for it.
func (f *fitter) named(model Model) (Candidate, bool) {
	hasInflow := model.HasInflow()
	hasFast := model == Equalisation || model == EqualisationLevelling || model == EqualisationInflow || model == EqualisationInflowLevelling
	hasSlow := model.HasRelease() && model != Plateau
	k := 1 + len(f.nuisance)
	if hasInflow {
		k++
	}
	if hasFast {
		k += 2
	}
	if hasSlow || model == Plateau {
		k += 2
	}
	if f.freeRows-k-1 < 1 || (hasFast && len(f.fast) == 0) || (hasSlow && len(f.slow) == 0) || (model == Plateau && len(f.ramps) == 0) {
		return Candidate{}, false
	}
	base := append([]int{f.one}, f.nuisance...)
	if hasInflow {
		base = append(base, f.line)
	}
	fast, slow := []int{-1}, []int{-1}
	if hasFast {
		fast = f.fast
	}
	if hasSlow {
		slow = f.slow
	}
	if model == Plateau {
		slow = f.ramps
	}
	best := trial{chi: math.Inf(1)}
	bestFast, bestSlow := -1, -1
	for _, a := range fast {
		for _, b := range slow {
			cols := base
			if a >= 0 {
				cols = append(cols, a)
			}
			if b >= 0 {
				if a >= 0 && f.cols[b].tau < 2*f.cols[a].tau {
					continue
				}
				cols = append(cols, b)
			}
			if t := f.onGrid(cols...); t.chi < best.chi {
				best, bestFast, bestSlow = t, a, b
			}
		}
	}
	if math.IsInf(best.chi, 1) {
		return Candidate{}, false
	}
	c := Candidate{Model: model, Parameters: k}
	r := f.refine(base, bestFast, bestSlow, model == Plateau, best)
	c.Start = r.amp[0]
	at := len(base)
	if hasInflow {
		c.Inflow = r.amp[at-1]
	}
	if bestFast >= 0 {
		c.Equalisation, c.EqualisationTime = r.amp[at], r.fastTau
		at++
	}
	if bestSlow >= 0 {
		c.Release, c.ReleaseTime = r.amp[at], r.slowTau
		if model == Plateau {
			c.Release *= r.slowTau
		}
	}
	dof := float64(f.freeRows - k)
	c.Residual = math.Sqrt(r.chi / dof)
	c.Score = r.chi + 2*float64(k) + 2*float64(k)*float64(k+1)/(dof-1)
	return c, true
}

// refined is a trial with time constants off the grid.
type refined struct {
	trial
	fastTau, slowTau float64
}

// refine improves the time constants one after the other by golden section in their logarithm.
func (f *fitter) refine(base []int, fast, slow int, isRamp bool, start trial) refined {
	r := refined{trial: start}
	if fast < 0 && slow < 0 {
		return r
	}
	if fast >= 0 {
		r.fastTau = f.cols[fast].tau
	}
	if slow >= 0 {
		r.slowTau = f.cols[slow].tau
	}
	extra := &offGrid{f: f, base: base, hasFast: fast >= 0, hasSlow: slow >= 0, ramp: isRamp}
	rounds := 1
	if fast >= 0 && slow >= 0 {
		rounds = 2
	}
	for k := range rounds {
		width := math.Log(1.25) / float64(k+1)
		if slow >= 0 {
			low, high := equalisationTypical, 0.0
			if isRamp {
				low, high = 0, f.pts.time[len(f.pts.time)-1]
			} else {
				high = f.cols[f.slow[len(f.slow)-1]].tau
			}
			r.slowTau = golden(r.slowTau, width, low, high, func(tau float64) float64 { return extra.solve(r.fastTau, tau).chi })
		}
		if fast >= 0 {
			r.fastTau = golden(r.fastTau, width, equalisationShortest, equalisationTypical, func(tau float64) float64 { return extra.solve(tau, r.slowTau).chi })
		}
	}
	r.trial = extra.solve(r.fastTau, r.slowTau)
	return r
}

// golden minimises fn over ln(tau) within width of the start and the bounds.
func golden(tau, width, low, high float64, fn func(float64) float64) float64 {
	const g = 0.6180339887498949
	a, b := math.Log(max(low, tau*math.Exp(-width), 1e-3)), math.Log(min(high, tau*math.Exp(width)))
	if !(b > a) {
		return tau
	}
	c, d := b-g*(b-a), a+g*(b-a)
	fc, fd := fn(math.Exp(c)), fn(math.Exp(d))
	for range 10 {
		if fc < fd {
			b, d, fd = d, c, fc
			c = b - g*(b-a)
			fc = fn(math.Exp(c))
		} else {
			a, c, fc = c, d, fd
			d = a + g*(b-a)
			fd = fn(math.Exp(d))
		}
	}
	return math.Exp((a + b) / 2)
}

// offGrid solves for the base columns and one or two curves with any time constants.
type offGrid struct {
	f                *fitter
	base             []int
	hasFast, hasSlow bool
	ramp             bool
	u, v             []float64
	uTau, vTau       float64 // time constants u and v hold
	q                *program
}

func (o *offGrid) solve(fastTau, slowTau float64) trial {
	f := o.f
	p := f.pts
	n := len(f.cols)
	nb := len(o.base)
	m := nb
	if o.q == nil {
		o.u, o.v = make([]float64, len(p.time)), make([]float64, len(p.time))
		size := nb
		if o.hasFast {
			size++
		}
		if o.hasSlow {
			size++
		}
		o.q = newProgram(size)
		for i, a := range o.base {
			for j, c := range o.base {
				o.q.g[i*size+j] = f.g[a*n+c] + f.prior[a*n+c]
			}
			k := f.cols[a].kind
			o.q.free[i] = k == constant || k == bow
		}
	}
	size := o.q.n
	var b, x, norm [8]float64
	for i, a := range o.base {
		b[i] = f.b[a] + f.priorB[a]
		norm[i] = f.cols[a].norm
	}
	put := func(curve []float64, free bool) {
		s := 0.0
		for i, v := range curve {
			s += p.weight[i] * v * v
		}
		if !(s > 0) {
			s = 1e-300
		}
		norm[m] = math.Sqrt(s)
		d := 0.0
		for i, v := range curve {
			d += p.weight[i] * v * p.pressure[i]
		}
		b[m] = d / norm[m]
		for j, a := range o.base {
			d := 0.0
			for i, v := range f.cols[a].values {
				d += p.weight[i] * v * curve[i]
			}
			d /= norm[m] * norm[j]
			o.q.g[m*size+j], o.q.g[j*size+m] = d, d
		}
		if m > nb {
			d := 0.0
			for i, v := range curve {
				d += p.weight[i] * v * o.u[i]
			}
			d /= norm[m] * norm[nb]
			o.q.g[m*size+nb], o.q.g[nb*size+m] = d, d
		}
		o.q.g[m*size+m] = 1 + 1e-11
		o.q.free[m] = free
		m++
	}
	if o.hasFast {
		if o.uTau != fastTau {
			o.uTau = fastTau
			exponential(p.time, fastTau, o.u)
		}
		put(o.u, true)
	}
	if o.hasSlow {
		if o.vTau != slowTau {
			o.vTau = slowTau
			if o.ramp {
				for i, t := range p.time {
					o.v[i] = min(t, slowTau)
				}
			} else {
				exponential(p.time, slowTau, o.v)
			}
		}
		put(o.v, false)
	}
	t := trial{count: m}
	t.chi = f.yy + f.priorC + o.q.solve(b[:m], x[:m])
	for i := range m {
		t.amp[i] = x[i] / norm[i]
	}
	return t
}

// candidates fits all named models and orders them by score, best first. Weights are Akaike weights.
func (f *fitter) candidates() []Candidate {
	var list []Candidate
	for m := Steady; m <= EqualisationInflowLevelling; m++ {
		c, ok := f.named(m)
		if !ok || math.IsNaN(c.Score) || math.IsInf(c.Score, 0) {
			continue
		}
		at := len(list)
		for at > 0 && list[at-1].Score > c.Score {
			at--
		}
		list = append(list, Candidate{})
		copy(list[at+1:], list[at:])
		list[at] = c
	}
	sum := 0.0
	for i := range list {
		list[i].Weight = math.Exp(-(list[i].Score - list[0].Score) / 2)
		sum += list[i].Weight
	}
	for i := range list {
		list[i].Weight /= sum
	}
	return list
}

// levels returns the level the pressure tends to without an inflow: best and the range over all release time constants that fit nearly
// as well (sum of squares within grow of the best). known is false when the slowest release is among them: then High is only the highest tried.
func (f *fitter) levels(grow float64) (Interval, bool) {
	base := append([]int{f.one}, f.nuisance...)
	best := math.Inf(1)
	type found struct{ chi, level, tau float64 }
	var all []found
	try := func(fast int) {
		for _, b := range f.slow {
			cols := base
			if fast >= 0 {
				cols = append(cols, fast)
			}
			t := f.onGrid(append(cols, b)...)
			level := t.amp[0] + t.amp[len(cols)]
			if fast >= 0 {
				level += t.amp[len(base)]
			}
			all = append(all, found{t.chi, level, f.cols[b].tau})
			best = min(best, t.chi)
		}
	}
	try(-1)
	for k := 0; k < len(f.fast); k += 2 {
		try(f.fast[k])
	}
	if len(all) == 0 {
		return Interval{}, false
	}
	l, known := Interval{Low: math.Inf(1), High: math.Inf(-1)}, true
	for _, a := range all {
		if a.chi == best {
			l.Best = max(0, a.level)
		}
	}
	slowest := f.cols[f.slow[len(f.slow)-1]].tau
	for _, a := range all {
		if a.chi <= best+grow {
			l.Low, l.High = min(l.Low, a.level), max(l.High, a.level)
			if a.tau > 0.7*slowest && a.level > l.Best*1.02 {
				known = false
			}
		}
	}
	l.Low, l.High = max(0, l.Low), max(0, l.High)
	return l, known
}
