package hold

import "math"

// Thresholds of the verdict (judgement; see also assumptions.go).
const (
	clearShare    = 0.10        // the lower bound of an inflow that is called a leak, as a share of its best value
	measuredShare = 0.35        // of the limit: smaller inflows are not held against a hold that is bounded below the limit
	releaseScore  = 6.0         // AICc by which models with a release must beat those without
	inflowScore   = 0.5         // AICc by which a model with an inflow may trail
	releaseLeast  = 40 * micron // smaller releases are not named
	releaseShare  = 0.10        // of the rise
	moistureShare = 0.40        // largest share of the rise that the bound on the inflow may have for "moisture"
	moistureLeak  = 0.04        // largest share of the rise that the inflow of the best model with one may have
	moistureSmall = 0.12        // a bound below this share settles it whatever the models say
	moistureNext  = 0.20        // the same when the best model of all has none
	tightLeast    = 20 * 60.0   // s, shortest hold that can be tight: twice the longest evening out, which can hide an inflow
	poorFit       = 10.0        // factor on the variances above which no explanation is said to fit
	aboveShare    = 1.15        // of the saturation pressure of water: above it the gas is not water
	nearSaturated = 0.06        // relative: the level counts as saturation
)

// judge turns the numbers into a verdict, reasons and actions.
func (a *analysis) judge() {
	res := &a.res
	res.Verdict = Undetermined
	because := func(r ...Reason) { res.Reasons = append(res.Reasons, r...) }
	do := func(x ...Action) {
		for _, n := range x {
			seen := false
			for _, o := range res.Actions {
				seen = seen || o == n
			}
			if !seen {
				res.Actions = append(res.Actions, n)
			}
		}
	}
	defer a.repeat()
	defer func() {
		// Where a slow release is not told from a leak, the bound that counts is the one that takes it for a leak.
		if res.Verdict == Tight || res.Verdict == Undetermined {
			res.Inflow.High = max(res.Inflow.High, a.tail)
			res.Throughput.High = res.Inflow.High * a.cond.Volume
		}
	}()

	if a.seg.reopened {
		because(PumpReopened)
	}
	if res.Gauge.RowsOverRange > 0 {
		because(OverRange)
	}
	// Through the saturation pressure of water, and on: neither water nor what is left of the refrigerant can do that.
	if a.peak > aboveShare*a.aboveWater() && res.LastRow > res.FirstRow && a.maximum > 2*res.FirstPressure {
		res.Verdict = Leak
		because(AboveSaturation)
		do(FindLeak, RepeatHold)
		return
	}
	if a.pts.time == nil || len(res.Candidates) == 0 {
		if a.seg.pumping {
			because(PumpStillRunning)
		} else {
			because(TooFewRows)
		}
		do(RepeatHold)
		res.HoldNeeded = a.holdNeeded()
		return
	}

	s := a.raw
	limit := a.limit
	high := max(0, s.High)
	seen := a.seen > 0 && a.seen > clearShare*s.Best && a.inflowPreferred()
	release := a.releaseSeen()
	last := res.LastPressure
	saturated := release && math.Abs(res.Level.Best-a.ceiling) < nearSaturated*a.ceiling

	switch {
	case seen && s.Best >= limit:
		res.Verdict = Leak
		because(InflowSeen)
		do(FindLeak)
		if release {
			res.Verdict = LeakAndMoisture
			because(ReleaseSeen)
			do(DryAgain)
		}
		do(RepeatHold)
	case high < limit && a.tail < limit:
		a.bounded(release, saturated, because, do)
	case a.moist(release, high):
		res.Verdict = Moisture
		because(ReleaseSeen, LevelAboveLimit)
		if saturated {
			because(AtSaturation)
		}
		because(InflowUnbounded)
		do(WarmPipe, DryAgain, RepeatHold)
	default:
		a.doubt(release, seen, high, because, do)
	}
	if res.IcePossible || (last < 611 && saturated) {
		res.IcePossible = true
		because(IcePossible)
		if res.Verdict == Tight {
			// Ice holds a low pressure however long one waits, so dryness is not shown.
			res.Verdict, res.Actions = Undetermined, nil
			do(WarmPipe, RepeatHold)
		}
		do(WarmPipe)
	}
}

// bounded decides when the inflow is bounded below the limit: the level decides.
func (a *analysis) bounded(release, saturated bool, because func(...Reason), do func(...Action)) {
	res := &a.res
	last := res.LastPressure
	because(InflowBelowLimit)
	s := a.raw
	// Measured: the best value stands out of what the allowances blur, whether a slow release or an inflow makes it.
	seen := s.Best > measuredShare*a.limit && s.Best > s.High-s.Best
	level := max(last, a.later())
	switch {
	case seen && a.maximum < a.cond.Limit:
		because(SmallInflowSeen)
		do(RepeatHold, HoldLonger)
	case level >= a.cond.Limit || a.maximum >= a.cond.Limit:
		first := res.FirstPressure
		switch {
		case saturated:
			res.Verdict = Moisture
			because(AtSaturation, LevelAboveLimit)
			do(WarmPipe, DryAgain, RepeatHold)
		case level < a.cond.Limit:
			because(LevelUncertain)
			do(HoldLonger, RepeatHold)
		case first >= a.cond.Limit && a.risePressure < 0.2*first:
			because(NotPumpedDown)
			do(PumpLonger, RepeatHold)
		case !release && res.Equalisation > 0.5*(level-first) && res.EqualisationTime < 120 && a.pts.time[1] <= 150:
			because(UnevenVacuum, LevelAboveLimit)
			do(PumpLonger, RepeatHold)
		case last < a.cond.Limit && a.maximum < a.cond.Limit && !(res.Level.Low > a.cond.Limit):
			because(LevelUncertain)
			do(HoldLonger)
		default:
			res.Verdict = Moisture
			because(LevelAboveLimit)
			if release {
				because(ReleaseSeen)
			}
			do(WarmPipe, DryAgain, RepeatHold)
		}
	case a.seg.reopened:
		// After a fall in the middle nobody knows whether the pump is valved off: a flat reading may be the pump's.
		do(RepeatHold)
	case a.seg.pumping && !a.seg.abrupt && a.risePressure < max(5*micron, 0.03*res.FirstPressure, res.Gauge.Step):
		// Pumped down, then flat: isolation shows itself by some rise, or by a fall that stops at once. Otherwise the pump may still be on.
		because(PumpStillRunning)
		do(RepeatHold)
	case a.stillFalling(), a.span < tightLeast:
		because(InflowUnbounded)
		do(HoldLonger)
	default:
		res.Verdict = Tight
		because(LevelBelowLimit)
		do(Charge)
	}
	if res.Verdict == Undetermined {
		res.HoldNeeded = a.holdNeeded()
	}
}

// stillFalling tells whether a short hold fell by more than 5 %, and 2 % of it in its second half: while the pressure evens out
// downward it hides an inflow. Over longer holds the fits see through it, and cooling is what makes a pressure fall.
func (a *analysis) stillFalling() bool {
	first := a.res.FirstPressure
	if a.span > 2*3600 || a.risePressure > -0.05*first {
		return false
	}
	middle := a.res.LastPressure
	for i, t := range a.pts.time {
		if t >= a.span/2 {
			middle = a.res.Curve[i].Fit
			break
		}
	}
	return middle-a.res.LastPressure > 0.02*first
}

// later is the pressure (Pa) 12 h after the end of the log if the best explanation without an inflow goes on.
func (a *analysis) later() float64 {
	for _, c := range a.res.Candidates {
		if !c.Model.HasInflow() {
			if c.Model == Plateau || c.ReleaseTime == 0 {
				return a.res.LastPressure
			}
			return a.res.LastPressure + c.Release*(math.Exp(-a.span/c.ReleaseTime)-math.Exp(-(a.span+12*3600)/c.ReleaseTime))
		}
	}
	return a.res.LastPressure
}

// releaseSeen tells whether the curve flattens in a way that evening out does not explain.
func (a *analysis) releaseSeen() bool {
	with, without := -1, -1
	for i, c := range a.res.Candidates {
		if c.Model.HasRelease() {
			if with < 0 {
				with = i
			}
		} else if without < 0 {
			without = i
		}
	}
	if with < 0 {
		return false
	}
	c := a.res.Candidates[with]
	shown := c.Release
	if c.Model != Plateau {
		shown *= -math.Expm1(-a.span / c.ReleaseTime)
	}
	if shown < releaseLeast || shown < releaseShare*math.Abs(a.risePressure) {
		return false
	}
	if c.ReleaseTime < 400 && c.Release < 300*micron {
		return false // evening out through a long pipe can do that
	}
	return without < 0 || a.res.Candidates[without].Score-c.Score > releaseScore
}

// inflowPreferred tells whether the named models agree: the best one with an inflow is not clearly worse than the best one.
func (a *analysis) inflowPreferred() bool {
	for _, c := range a.res.Candidates {
		if c.Model.HasInflow() {
			return c.Score-a.res.Candidates[0].Score < inflowScore
		}
	}
	return false
}

// moist tells whether the log shows moisture although the inflow is not bounded below the limit: a release is seen, the pressure
// passed the limit or will for certain, and the inflow that could hide in it is a small part of the rise.
func (a *analysis) moist(release bool, high float64) bool {
	res := &a.res
	if !release || !(res.LastPressure > a.cond.Limit || res.Level.Low > a.cond.Limit) {
		return false
	}
	if a.seen > 0 || high*a.span > moistureShare*a.risePressure {
		return false
	}
	if high*a.span < moistureSmall*a.risePressure {
		return true
	}
	for i, c := range res.Candidates {
		if c.Model.HasInflow() {
			return i > 0 && c.Inflow*a.span < moistureNext*a.risePressure || c.Inflow*a.span < moistureLeak*a.risePressure
		}
	}
	return true
}

// aboveWater is the pressure that water cannot pass, Pa. With no temperature given it is taken at 40 °C.
func (a *analysis) aboveWater() float64 {
	if a.res.Temperature.Kind == TemperatureNone {
		return saturation(313.15)
	}
	return a.ceiling
}

// doubt names what stands in the way.
func (a *analysis) doubt(release, seen bool, high float64, because func(...Reason), do func(...Action)) {
	res := &a.res
	s := a.raw
	because(InflowUnbounded)
	if a.seg.pumping {
		because(PumpStillRunning)
	}
	half := a.limit / 2
	if s.Best >= a.limit || release {
		because(SlowReleaseOrLeak)
		do(HoldLonger, RepeatHold)
	}
	if release {
		because(ReleaseSeen)
	}
	if res.LastPressure > a.cond.Limit {
		because(LevelAboveLimit)
	}
	if res.RowsUsed < EnoughRows {
		because(TooFewRows)
		do(WriteMoreRows)
	}
	if a.z*a.fromTemp > half {
		if res.Temperature.Kind == TemperatureNone || res.Temperature.Kind == TemperatureConstant {
			because(TemperatureUnknown)
			do(LogTemperature)
		} else {
			because(TemperatureMoved)
			do(HoldLonger, RepeatHold)
		}
	} else if a.be.water > 0 && res.Temperature.Change*waterPerKelvin*a.mean/a.span > half {
		because(TemperatureMoved)
		do(HoldLonger, RepeatHold)
	}
	if res.Gauge.Step/a.span > half {
		because(GaugeTooCoarse)
		do(FinerGauge)
	}
	if a.inflate > poorFit {
		because(PoorFit)
	}
	if a.statistical > half && res.Gauge.Noise > res.Gauge.Step/2 {
		because(GaugeTooNoisy)
	}
	do(HoldLonger)
	res.HoldNeeded = a.holdNeeded()
}
