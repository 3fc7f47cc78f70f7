package hold

import "math"

// holdNeeded estimates the total hold (s) that should tell, from this log's own scatter; 0 when this hold told, at most 24 h: beyond that
// repeating after more pumping tells more. Rounded up to quarter hours.
//
// Two things can be missing. A bound too wide shrinks with the length T of the hold: the drift and the display step as 1/T, the scatter
// at least as fast, the unmeasured temperature as its allowance. And a slow release with time constant b bends away from a straight
// leak s t by s t²/(8 b) in the middle, which must stand out of the scatter.
func (a *analysis) holdNeeded() float64 {
	res := &a.res
	const most = 24 * 3600.0
	need := max(1.5*a.span, 1800)
	s := max(res.Inflow.Best, 0)
	if s < a.limit {
		room := 0.9 * max(a.limit-s, 0.2*a.limit)
		for need < most {
			k := need / a.span
			tp := res.Temperature
			temp := unmeasured(tp.Kind, need, tp.Change) / 2 * a.sensitive * a.mean / need
			if math.Hypot(a.statistical/k, a.z*math.Hypot(a.fromDrift/k, temp)) < room {
				break
			}
			need *= 1.15
		}
	} else if len(a.pts.time) > 0 {
		sigma := a.noise*(a.mean+noiseOffset) + res.Gauge.Step/3
		bend := 10 * sigma / math.Sqrt(float64(min(len(a.pts.time), 60)))
		need = max(need, math.Sqrt(8*releaseLongest*bend/s))
	}
	if res.ReleaseTime > 0 && res.Release > releaseLeast {
		need = max(need, min(4*res.ReleaseTime, most))
	}
	return min(most, math.Ceil(need/900)*900)
}

// repeat says what a second hold from the same first pressure and of the same length should show.
func (a *analysis) repeat() {
	res := &a.res
	p := &res.Repeat
	rate := max(res.Inflow.Best, 0)
	p.Inflow = rate
	p.IfLeak = res.FirstPressure + max(res.Equalisation, 0) + rate*a.span
	p.IfRelease = res.LastPressure
	switch res.Verdict {
	case Tight:
		p.Kind = RepeatNothing
	case Leak:
		p.Kind = RepeatSameSlope
	case Moisture:
		p.Kind = RepeatLowerLevel
	default:
		p.Kind = RepeatEither
	}
}
