package hold

import (
	"math"

	"changeout/calc/property/water"
)

// Analyse judges a hold.
//
// The pressures are brought to the temperature at isolation by the gas law, q = p T0/T, because the amount of gas, not its
// pressure, is what leaks. Then q(t) is explained by
//
//	q = q0 + s t ± A (1 - exp(-t/a)) + sum B (1 - exp(-t/b)) + sum C min(t, c)/c + M (psat(T)/psat(T0) - 1)
//
// with a steady inflow s (air into a vacuum is choked, so its rate does not depend on the pressure inside), evening out A,
// releases B and C, and water that follows the temperature M. Named models use one term of a kind and are compared by AICc.
// The bounds of s come from its profile over all terms at once (see mixture). For each confidence bound the allowances for the
// gauge's wander and the unmeasured temperature are added in quadrature. There is no published method for this test;
// the readings of the result follow common practice: straight means leak, flattening means moisture.
//
// Errors are of type *Error and name the row. A log that is valid but tells too little is not an error: the verdict is then
// Undetermined with reasons.
func Analyse(log Log, c Conditions) (Result, error) {
	r, err := validate(log, c)
	if err != nil {
		return Result{}, err
	}
	a := &analysis{cond: c, origin: log.Time[0]}
	a.limit = c.InflowLimit
	if a.limit == 0 {
		a.limit = (c.Limit - c.Target) / (12 * 3600)
	}
	a.prepare(&r)
	if a.pts.time != nil {
		a.fit()
	}
	a.judge()
	return a.res, nil
}

// analysis is the state passed between the steps.
type analysis struct {
	cond   Conditions
	origin float64
	limit  float64 // Pa/s
	res    Result

	seg       segment
	span      float64 // s of the hold
	ceiling   float64 // Pa, saturation pressure of water at the highest temperature known
	pts       points
	mean      float64   // Pa, mean pressure of the hold
	maximum   float64   // Pa, highest reading of the hold
	peak      float64   // Pa, highest reading of the log, over-range rows too
	sensitive float64   // 1/K
	noise     float64   // relative
	steps     []float64 // Pa, display step at each row of the hold
	be        belief

	z            float64  // multiple of the standard deviation for the bounds
	raw          Interval // Pa/s, inflow before it is clipped at zero
	seen         float64  // Pa/s, lower bound for calling a leak
	tail         float64  // Pa/s, upper bound when every rise slower than a quarter of the hold is taken for a leak
	statistical  float64  // Pa/s, upper half width from the fit alone
	fromDrift    float64  // Pa/s, one standard deviation
	fromTemp     float64  // Pa/s, one standard deviation
	inflate      float64  // factor on the variances that the fit asked for
	flexible     float64  // weighted sum of squares of the mixture
	risePressure float64  // Pa, fitted rise over the hold, at the reference temperature
}

// prepare cleans the log, finds the hold in it, and thins it.
func (a *analysis) prepare(r *rows) {
	res := &a.res
	res.Confidence = confidence
	res.InflowLimit = a.limit
	temp, kind := temperatures(r, a.cond)
	r.ambient = temp
	hottest, coldest := saturationFallback, saturationFallback
	if temp != nil {
		hottest, coldest = temp[0], temp[0]
		for _, t := range temp {
			hottest, coldest = max(hottest, t), min(coldest, t)
		}
	}
	a.ceiling = saturation(hottest)
	res.WaterSaturation = a.ceiling

	steps := displaySteps(r.pressure)
	marked := outliers(r, quantile(append([]float64(nil), steps...), 0.5))
	for i, m := range marked {
		if m {
			res.Outliers = append(res.Outliers, r.index[i])
		}
	}
	r.drop(marked)
	for _, p := range r.pressure {
		a.peak = max(a.peak, p)
	}
	if top, over := overRange(r, a.ceiling); over > 0 {
		res.Gauge.OverRange, res.Gauge.RowsOverRange = top, over
		*r = r.slice(0, r.len()-over)
	}

	a.seg = findHold(r, func(i, j int) float64 {
		if r.ambient == nil {
			return coolingUnknown(r.time[j] - r.time[i])
		}
		return min(1, saturation(r.ambient[j])/saturation(r.ambient[i])) * math.Exp(-waterPerKelvin*unmeasured(kind, r.time[j]-r.time[i], 0))
	})
	h := r.slice(a.seg.from, a.seg.to)
	n := h.len()
	if n == 0 {
		h = r.slice(0, 1)
		n = 1
	}
	a.span = h.time[n-1] - h.time[0]
	res.FirstRow, res.LastRow, res.RowsUsed = h.index[0], h.index[n-1], n
	res.Start, res.End = a.origin+h.time[0], a.origin+h.time[n-1]
	res.FirstPressure, res.LastPressure = h.pressure[0], h.pressure[n-1]
	for _, p := range h.pressure {
		a.mean += p / float64(n)
		a.maximum = max(a.maximum, p)
	}

	// Temperatures of the hold.
	tp := Temperature{Kind: kind, Reference: saturationFallback}
	if h.ambient != nil {
		tp.Start, tp.End, tp.Reference = h.ambient[0], h.ambient[n-1], h.ambient[0]
		lo, hi := tp.Start, tp.Start
		for _, t := range lagged(h.time, h.ambient, 600) { // evens out the flicker of the last digit
			lo, hi = min(lo, t), max(hi, t)
		}
		tp.Change = hi - lo
		coldest = lo
	}
	tp.Uncertain = unmeasured(kind, a.span, tp.Change)
	a.sensitive = sensitivity(tp.Reference)
	corrected := append([]float64(nil), h.pressure...)
	if h.ambient != nil {
		for i, t := range h.ambient {
			corrected[i] *= tp.Reference / t
		}
		tp.GasShift = h.pressure[n-1] - corrected[n-1]
	}
	res.Temperature = tp

	// Ice can be there when the coldest pipe may be below freezing. While ice sublimes it also cools itself, so a plateau near or
	// below the triple point is possible at any ambient; verdicts treats that.
	res.IcePossible = coldest < water.TripleTemperature+2
	if t, err := water.BoilingTemperature(max(res.LastPressure, 1e-3)); err == nil {
		res.BoilingAtLast = t
	}
	if n < MinRows || a.span < MinSpan {
		return
	}

	steps = displaySteps(h.pressure)
	a.steps = steps
	a.noise = scatter(h.time, h.pressure, steps)
	variance := readingVariance(h.pressure, steps, a.noise)
	res.Gauge.Step, res.Gauge.StepLow = steps[n-1], steps[0]
	for _, s := range steps {
		res.Gauge.StepLow = min(res.Gauge.StepLow, s)
	}
	res.Gauge.Noise = a.noise * (h.pressure[n-1] + noiseOffset)
	a.pts = thin(&h, h.ambient, corrected, variance)
}

// beliefs sets the sizes of the priors for this hold.
func (a *analysis) beliefs() belief {
	tp := a.res.Temperature
	h := a.span / 3600
	n := len(a.pts.pressure)
	first, last := a.pts.pressure[0], a.pts.pressure[n-1]
	dip := 0.0
	for _, p := range a.pts.pressure[:n/2+1] {
		dip = max(dip, first-p)
	}
	dip = max(0, dip-a.res.Gauge.Step-3*a.noise*(first+noiseOffset))
	be := belief{
		fall:        equalisationShare*first + 2*dip + 2*micron,
		fallRate:    max(0, last-first) / a.span / 2,
		fallLongest: min(equalisationLongest, max(60, a.span/6)),
		slow:        slowActivity * a.ceiling / z99,
		all:         a.ceiling / z99,
		slowestRise: max(releaseLongest, 2*a.span),
	}
	if tp.Kind != TemperatureLogged && h > 1 {
		be.bow = min(bowRate*h, bowMost) * (1/tp.Reference + waterMean*waterPerKelvin) * a.mean
	}
	if (tp.Kind == TemperatureLogged || tp.Kind == TemperatureEnds) && tp.Change >= temperatureMatters {
		be.water = min(a.mean, a.ceiling)
	}
	return be
}

// fit runs the mixture, its bounds, and the named models.
func (a *analysis) fit() {
	res := &a.res
	a.be = a.beliefs()
	cols := columnsFor(&a.pts, a.be)
	m := newMixture(assemble(&a.pts, cols, a.be))
	if n := len(a.pts.time); n < noiseRows && n == res.RowsUsed {
		a.quieter(m)
		m = newMixture(assemble(&a.pts, cols, a.be))
	}
	dof := a.reweigh(m)
	m = newMixture(assemble(&a.pts, cols, a.be))
	a.flexible = m.chi

	// Few readings: Student's factor on the normal quantile (first term of the Cornish-Fisher expansion).
	a.z = z99 * (1 + (z99*z99+1)/(4*(noiseBelief+dof)))
	tp := res.Temperature
	a.fromDrift = (driftShare*math.Sqrt(min(a.span/3600, driftHours))*a.mean + driftOffset) / a.span
	a.fromTemp = tp.Uncertain / 2 * a.sensitive * a.mean / a.span
	extra := a.z * math.Hypot(a.fromDrift, a.fromTemp)
	guess := max(extra, a.noise*(a.mean+noiseOffset)/a.span)
	up := m.bound(+1, a.z, guess) - m.inflow
	down := m.inflow - m.bound(-1, a.z, guess)
	a.statistical = up
	late := m.late(a.span / 4)
	width := late.bound(+1, a.z, guess) - late.inflow
	if n := float64(res.RowsUsed); n < noiseRows {
		width *= 1 + fewRows/n // a gauge noisier than believed shows itself late in a few rows
	}
	width = zTight / z99 * math.Hypot(width, extra)
	a.tail = late.inflow + width
	if late.inflow < 0 {
		// Clearly negative: something unknown pulls the pressure down, and as much again may hide an inflow.
		a.tail += max(0, -late.inflow-width/2)
	}
	// Cooling that was measured may have taken away water vapour as fast as air came in. The bounds above believe in a typical share
	// of water; "tight" must hold even if all of the gas were water.
	a.tail = max(a.tail, late.inflow+late.hiddenByCooling(a.be.water)+width/2)
	less := zSeen / z99
	a.seen = m.inflow - math.Hypot(m.inflow-m.bound(-1, less*a.z, guess), less*extra)
	a.raw = Interval{Low: m.inflow - math.Hypot(down, extra), Best: m.inflow, High: m.inflow + math.Hypot(up, extra)}
	res.Inflow = Interval{Low: max(0, a.raw.Low), Best: max(0, a.raw.Best), High: max(0, a.raw.High)}
	if v := a.cond.Volume; v > 0 {
		res.Throughput = Interval{res.Inflow.Low * v, res.Inflow.Best * v, res.Inflow.High * v}
	}

	waterCol, most := -1, -1.0
	for j, c := range cols {
		if c.kind == waterColumn && c.norm > 0 {
			if m.x[j] > most {
				waterCol, most = j, m.x[j]
			}
			if m.x[j] > 0 {
				res.Temperature.WaterShift += m.x[j] / c.norm * c.values[len(c.values)-1]
			}
		}
	}
	f := newFitter(m.system, waterCol)
	res.Candidates = f.candidates()
	res.Level, res.LevelKnown = f.levels(a.z * a.z)
	if len(res.Candidates) > 0 {
		c := res.Candidates[0]
		res.Release, res.ReleaseTime = c.Release, c.ReleaseTime
		res.Equalisation, res.EqualisationTime = c.Equalisation, c.EqualisationTime
	}
	a.curve(m.fitted())
}

// quieter lowers the noise of a log with few rows when the most flexible fit leaves less than believed: the belief counts as
// noiseBelief readings, the residuals as what the fit left free. The display step keeps its share. Such logs are not thinned, so points are rows.
func (a *analysis) quieter(m *mixture) {
	fit := m.fitted()
	n := len(fit)
	sum := noiseBelief * a.noise * a.noise
	for i := range fit {
		r := a.pts.pressure[i] - fit[i]
		s := a.pts.raw[i] + noiseOffset
		sum += max(0, r*r-a.steps[i]*a.steps[i]/12) / (s * s)
	}
	k := math.Sqrt(sum / (noiseBelief + max(0, float64(n-m.parameters()))))
	if k = max(k, 2*noiseLeast); k >= a.noise {
		return
	}
	a.noise = k
	more := modelShare * modelShare
	for i, v := range readingVariance(a.pts.raw, a.steps, k) {
		s := a.pts.raw[i] + noiseOffset
		a.pts.weight[i] = 1 / (v + more*s*s)
	}
	a.res.Gauge.Noise = k * (a.pts.raw[n-1] + noiseOffset)
}

// reweigh makes the weights honest after a first fit: points that stand out count less, and when the scatter about the most flexible
// fit is larger than the readings suggested, or consecutive residuals go the same way, all variances grow. It returns the degrees
// of freedom left.
func (a *analysis) reweigh(m *mixture) float64 {
	fit := m.fitted()
	n := len(fit)
	r := make([]float64, n)
	size := make([]float64, n)
	for i := range fit {
		r[i] = (a.pts.pressure[i] - fit[i]) * math.Sqrt(a.pts.weight[i])
		size[i] = math.Abs(r[i])
	}
	scale := max(1, quantile(size, 0.5)/0.6745)
	if n >= 8 {
		for i := range r {
			if limit := 3.5 * scale; math.Abs(r[i]) > limit {
				a.pts.weight[i] *= limit / math.Abs(r[i])
				r[i] = math.Copysign(limit, r[i])
			}
		}
	}
	sum, cross := 0.0, 0.0
	for i := range r {
		sum += r[i] * r[i]
		if i > 0 {
			cross += r[i] * r[i-1]
		}
	}
	dof := max(0, float64(n-m.parameters()))
	alike := 1.0
	if n >= 20 && sum > 0 {
		// Effective number of independent readings of a first-order autoregressive series.
		if rho := min(0.78, cross/sum); rho > 0.15 {
			alike = (1 + rho) / (1 - rho)
		}
	}
	a.inflate = max(1, (noiseBelief+sum*alike)/(noiseBelief+dof))
	for i := range a.pts.weight {
		a.pts.weight[i] /= a.inflate
	}
	return dof
}

// curve fills the chart and the smoothed first and last pressures.
func (a *analysis) curve(fit []float64) {
	res := &a.res
	p := &a.pts
	tp := res.Temperature
	res.Curve = make([]Point, len(fit))
	for i, q := range fit {
		if p.temp != nil {
			q *= p.temp[i] / tp.Reference
		}
		res.Curve[i] = Point{Time: res.Start + p.time[i], Measured: p.raw[i], Fit: max(0, q)}
	}
	n := len(fit)
	a.risePressure = fit[n-1] - fit[0]
	res.FirstPressure, res.LastPressure = res.Curve[0].Fit, res.Curve[n-1].Fit
	if t, err := water.BoilingTemperature(max(res.LastPressure, 1e-3)); err == nil {
		res.BoilingAtLast = t
	}
}
