package hold

import (
	"math"
	"testing"
)

func TestProbe(t *testing.T) {
	mk := func(name string, f func(m float64) float64, step float64, mins ...float64) {
		var l Log
		for _, m := range mins {
			l.Time = append(l.Time, m*60)
			v := f(m)
			if step > 0 {
				v = math.Round(v/step) * step
			}
			l.Pressure = append(l.Pressure, v*micron)
		}
		r, err := Analyse(l, Conditions{AmbientStart: math.NaN(), AmbientEnd: math.NaN(), Target: 500 * micron, Limit: 1000 * micron})
		if err != nil {
			t.Log(name, err)
			return
		}
		u := 60 / micron
		b := "-"
		if len(r.Candidates) > 0 {
			b = r.Candidates[0].Model.ID()
		}
		t.Logf("%-34s %-18s inflow %.2f/%.2f/%.2f level %.0f/%.0f/%.0f best %s rel %.0f@%.0f reasons %v step %.1f noise %.2f need %.0f", name, r.Verdict, r.Inflow.Low*u, r.Inflow.Best*u, r.Inflow.High*u, r.Level.Low/micron, r.Level.Best/micron, r.Level.High/micron, b, r.Release/micron, r.ReleaseTime/60, r.Reasons, r.Gauge.Step/micron, r.Gauge.Noise/micron, r.HoldNeeded/60)
	}
	seq := func(a, b, s float64) []float64 {
		var o []float64
		for x := a; x <= b; x += s {
			o = append(o, x)
		}
		return o
	}
	for _, st := range []float64{0, 1, 10, 25} {
		mk("380-900 tau5 30min/1", func(m float64) float64 { return 380 + 520*(1-math.Exp(-m/5)) }, st, seq(0, 30, 1)...)
		mk("380-900 tau1 30min/1", func(m float64) float64 { return 380 + 520*(1-math.Exp(-m/1)) }, st, seq(0, 30, 1)...)
		mk("380-450 tau2 30min/1", func(m float64) float64 { return 380 + 70*(1-math.Exp(-m/2)) }, st, seq(0, 30, 1)...)
		mk("380-450 tau2 60min/5", func(m float64) float64 { return 380 + 70*(1-math.Exp(-m/2)) }, st, seq(0, 60, 5)...)
		mk("450 flat 30/5", func(m float64) float64 { return 450 }, st, seq(0, 30, 5)...)
		mk("450 flat 60/10", func(m float64) float64 { return 450 }, st, seq(0, 60, 10)...)
		mk("380-1700 tau5 30/1", func(m float64) float64 { return 380 + 1320*(1-math.Exp(-m/5)) }, st, seq(0, 30, 1)...)
		mk("380-1700 tau10 60/5", func(m float64) float64 { return 380 + 1320*(1-math.Exp(-m/10)) }, st, seq(0, 60, 5)...)
		mk("380-1700 tau10 30/5", func(m float64) float64 { return 380 + 1320*(1-math.Exp(-m/10)) }, st, seq(0, 30, 5)...)
		mk("380-1700 tau60 720/15", func(m float64) float64 { return 380 + 1320*(1-math.Exp(-m/60)) }, st, seq(0, 720, 15)...)
		mk("leak60 30/1", func(m float64) float64 { return 380 + 60*m }, st, seq(0, 30, 1)...)
		mk("leak60 30/5", func(m float64) float64 { return 380 + 60*m }, st, seq(0, 30, 5)...)
		mk("leak60 10/1", func(m float64) float64 { return 380 + 60*m }, st, seq(0, 10, 1)...)
		mk("leak60 3 rows", func(m float64) float64 { return 380 + 60*m }, st, 0, 15, 30)
		mk("leak10 60/5", func(m float64) float64 { return 380 + 10*m }, st, seq(0, 60, 5)...)
		mk("leak10 30/1", func(m float64) float64 { return 380 + 10*m }, st, seq(0, 30, 1)...)
		mk("leak5 60/1", func(m float64) float64 { return 380 + 5*m }, st, seq(0, 60, 1)...)
		mk("leak2 720/30", func(m float64) float64 { return 380 + 2*m }, st, seq(0, 720, 30)...)
		mk("leak1 720/30", func(m float64) float64 { return 380 + 1*m }, st, seq(0, 720, 30)...)
		mk("leak.3 720/30", func(m float64) float64 { return 380 + .3*m }, st, seq(0, 720, 30)...)
		mk("both 20+1000tau10 60/1", func(m float64) float64 { return 380 + 20*m + 1000*(1-math.Exp(-m/10)) }, st, seq(0, 60, 1)...)
		mk("both 5+800tau20 240/10", func(m float64) float64 { return 380 + 5*m + 800*(1-math.Exp(-m/20)) }, st, seq(0, 240, 10)...)
		mk("both 2+800tau60 720/30", func(m float64) float64 { return 380 + 2*m + 800*(1-math.Exp(-m/60)) }, st, seq(0, 720, 30)...)
	}
}
