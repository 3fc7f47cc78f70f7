package hold

import "math"

// Thresholds of the verdict (judgement; see also assumptions.go).
const (
	clearShare    = 0.10        // the lower bound of an inflow that is called a leak, as a share of its best value
	measuredShare = 0.35        // of the limit: smaller inflows are not held against a hold that is bounded below the limit
	releaseScore  = 6.0         // AICc by which models with a release must beat those without
	releaseLeast  = 40 * micron // smaller releases are not named
	releaseShare  = 0.10        // of the rise
	moistureShare = 0.30        // largest share of the rise that an undetected inflow may have for "moisture"
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

	if a.seg.reopened {
		because(PumpReopened)
	}
	if res.Gauge.RowsOverRange > 0 {
		because(OverRange)
	}
	if a.pts.time == nil || len(res.Candidates) == 0 {
		if a.seg.pumping {
			because(PumpStillRunning)
		} else {
			because(TooFewRows)
		}
		do(RepeatHold)
		return
	}

	s := a.raw
	limit := a.limit
	// Significantly negative: something unknown pulls the pressure down, and as much again may hide an inflow.
	high := s.High + max(0, -s.Best-(s.High-s.Best)/2)
	seen := s.Low > 0 && s.Low > clearShare*s.Best
	release := a.releaseSeen()
	last := res.LastPressure
	saturated := release && math.Abs(res.Level.Best-a.ceiling) < nearSaturated*a.ceiling
	above := seen && a.maximum > 1.05*a.aboveWater()

	switch {
	case seen && s.Best >= limit:
		res.Verdict = Leak
		because(InflowSeen)
		if above {
			because(AboveSaturation)
		}
		do(FindLeak)
		if release {
			res.Verdict = LeakAndMoisture
			because(ReleaseSeen)
			do(DryAgain)
		}
		do(RepeatHold)
	case high < limit:
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
	level := max(last, res.Level.Best)
	switch {
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
		case !release && res.Equalisation > 0.5*(level-first) && res.EqualisationTime < 120:
			because(UnevenVacuum, LevelAboveLimit)
			do(PumpLonger, RepeatHold)
		case last < a.cond.Limit && !(res.Level.Low > a.cond.Limit):
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
	case seen:
		because(SmallInflowSeen)
		do(RepeatHold, HoldLonger)
	case release && res.Level.High >= a.cond.Limit && a.stillRising():
		because(LevelUncertain)
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

// stillRising tells whether the release is far from done: more than 10 % of the way to the limit is still to come.
func (a *analysis) stillRising() bool {
	return a.res.Level.High-a.res.LastPressure > 0.1*(a.cond.Limit-a.res.FirstPressure)
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
	if c.Release < releaseLeast || c.Release < releaseShare*math.Abs(a.risePressure) {
		return false
	}
	if c.ReleaseTime < 400 && c.Release < 300*micron {
		return false // evening out through a long pipe can do that
	}
	return without < 0 || a.res.Candidates[without].Score-c.Score > releaseScore
}

// moist tells whether the log shows moisture although the inflow is not bounded below the limit: a release is seen, the pressure
// passed the limit or will for certain, and the inflow that could hide in it is a small part of the rise.
func (a *analysis) moist(release bool, high float64) bool {
	res := &a.res
	if !release || !(res.LastPressure > a.cond.Limit || res.Level.Low > a.cond.Limit) {
		return false
	}
	if res.Inflow.Low > 0 || res.Candidates[0].Model.HasInflow() && res.Candidates[0].Inflow > a.limit {
		return false
	}
	return high*a.span < moistureShare*a.risePressure
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
	if res.RowsUsed < 8 {
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
	if a.statistical > half && res.Gauge.Noise > res.Gauge.Step/2 {
		because(GaugeTooNoisy)
	}
	do(HoldLonger)
	res.HoldNeeded = a.holdNeeded()
}
