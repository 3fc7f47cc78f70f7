package hold

import (
	"math"
	"testing"
)

// conditions are the ones the worksheet passes when only a log is given: 500 and 1,000 micron, nothing known of the temperature.
func conditions() Conditions {
	return Conditions{AmbientStart: math.NaN(), AmbientEnd: math.NaN(), Target: 500 * micron, Limit: 1000 * micron}
}

func logOf(minutes []float64, step float64, curve func(m float64) float64) Log {
	var l Log
	for _, m := range minutes {
		v := curve(m)
		if step > 0 {
			v = math.Round(v/step) * step
		}
		l.Time = append(l.Time, m*60)
		l.Pressure = append(l.Pressure, v*micron)
	}
	return l
}

func spaced(from, to, step float64) []float64 {
	var v []float64
	for x := from; x <= to+1e-9; x += step {
		v = append(v, x)
	}
	return v
}

func levelling(start, rise, tau float64) func(float64) float64 {
	return func(m float64) float64 { return start + rise*(1-math.Exp(-m/tau)) }
}

func straight(start, rate float64) func(float64) float64 {
	return func(m float64) float64 { return start + rate*m }
}

// TestTypical holds the readings every technician knows (practice.md section I.6), as a person would write them down.
func TestTypical(t *testing.T) {
	sum := func(a, b func(float64) float64) func(float64) float64 {
		return func(m float64) float64 { return a(m) + b(m) }
	}
	cases := []struct {
		name    string
		minutes []float64
		step    float64
		curve   func(float64) float64
		want    []Verdict
	}{
		{"380 to 450 in two minutes, then level, half an hour", spaced(0, 30, 1), 1, levelling(380, 70, 2), []Verdict{Tight}},
		{"380 to 450, an hour, rows of five minutes, steps of 10", spaced(0, 60, 5), 10, levelling(380, 70, 2), []Verdict{Tight}},
		{"overnight, 380 to 520, rows of half an hour", spaced(0, 720, 30), 5, levelling(380, 140, 25), []Verdict{Tight}},
		{"380 to 900 at once, then flat half an hour", spaced(0, 30, 1), 1, levelling(380, 520, 1), []Verdict{Tight, Undetermined}},
		{"380 to 900 in a quarter of an hour, flat", spaced(0, 30, 1), 10, levelling(380, 520, 5), []Verdict{Tight, Undetermined}},
		{"380 to 1700, flat", spaced(0, 30, 1), 10, levelling(380, 1320, 5), []Verdict{Moisture}},
		{"380 to 1700, an hour, rows of five minutes, steps of 25", spaced(0, 60, 5), 25, levelling(380, 1320, 10), []Verdict{Moisture}},
		{"380 to 1700, overnight", spaced(0, 720, 15), 10, levelling(380, 1320, 60), []Verdict{Moisture}},
		{"60 micron a minute, straight", spaced(0, 30, 1), 10, straight(380, 60), []Verdict{Leak}},
		{"60 micron a minute, seven rows", spaced(0, 30, 5), 10, straight(380, 60), []Verdict{Leak}},
		{"10 micron a minute for an hour", spaced(0, 60, 5), 10, straight(380, 10), []Verdict{Leak}},
		{"2 micron a minute overnight", spaced(0, 720, 30), 10, straight(380, 2), []Verdict{Leak}},
		{"1 micron a minute overnight", spaced(0, 720, 30), 10, straight(380, 1), []Verdict{Leak}},
		{"20 micron a minute on top of moisture", spaced(0, 60, 1), 10, sum(levelling(380, 1000, 10), straight(0, 20)), []Verdict{LeakAndMoisture}},
		{"5 micron a minute on top of moisture, four hours", spaced(0, 240, 10), 10, sum(levelling(380, 800, 20), straight(0, 5)), []Verdict{LeakAndMoisture}},
		{"below the limit but measured", spaced(0, 720, 30), 1, straight(380, 0.45), []Verdict{Undetermined}},
		{"60 micron a minute, three rows only", []float64{0, 15, 30}, 0, straight(380, 60), []Verdict{Leak, Undetermined}},
		{"straight to above saturation, three rows", []float64{0, 200, 400}, 0, straight(380, 300), []Verdict{Leak}},
		{"a leak too slow for ten minutes", spaced(0, 10, 1), 1, straight(380, 2), []Verdict{Undetermined}},
	}
	for _, c := range cases {
		r, err := Analyse(logOf(c.minutes, c.step, c.curve), conditions())
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		ok := false
		for _, w := range c.want {
			ok = ok || r.Verdict == w
		}
		u := 60 / micron
		if !ok {
			t.Errorf("%s: got %s, want %v; reasons %v inflow %.3g %.3g %.3g micron/min", c.name, r.Verdict, c.want, r.Reasons, r.Inflow.Low*u, r.Inflow.Best*u, r.Inflow.High*u)
		}
		if r.Verdict == Undetermined && !(r.HoldNeeded > c.minutes[len(c.minutes)-1]*60) {
			t.Errorf("%s: undetermined with a hold needed of %g s, want more than the hold of %g s", c.name, r.HoldNeeded, c.minutes[len(c.minutes)-1]*60)
		}
		if len(r.Actions) == 0 || len(r.Reasons) == 0 {
			t.Errorf("%s: got %d reasons and %d actions, want some of each", c.name, len(r.Reasons), len(r.Actions))
		}
	}
}

// The rate of a straight leak must be inside the bounds, and close: the rows are exact, so 3 % covers the display step.
func TestInflowValue(t *testing.T) {
	r, err := Analyse(logOf(spaced(0, 60, 1), 1, straight(300, 20)), Conditions{AmbientStart: 293.15, AmbientEnd: 293.15, Target: 500 * micron, Limit: 1000 * micron, Volume: 0.06})
	if err != nil {
		t.Fatal(err)
	}
	want := 20 * micron / 60
	if !(math.Abs(r.Inflow.Best-want) < 0.03*want) || !(r.Inflow.Low < want && want < r.Inflow.High) {
		t.Errorf("inflow got %v, want %g inside, tolerance 3 %%", r.Inflow, want)
	}
	if got := r.Throughput.Best; !(math.Abs(got-r.Inflow.Best*0.06) < 1e-15) {
		t.Errorf("throughput got %g, want %g", got, r.Inflow.Best*0.06)
	}
}

// The level of a clean exponential, and water's boiling point there (500 micron: 248.67 K, standards.md section 7).
func TestLevelValue(t *testing.T) {
	r, err := Analyse(logOf(spaced(0, 240, 5), 1, levelling(300, 200, 20)), conditions())
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(r.Level.Best-500*micron) < 5*micron) {
		t.Errorf("level got %.1f micron, want 500, tolerance 5", r.Level.Best/micron)
	}
	if !(math.Abs(r.BoilingAtLast-248.67) < 0.2) {
		t.Errorf("boiling point got %.2f K, want 248.67, tolerance 0.2 (the last pressure is fitted)", r.BoilingAtLast)
	}
}

// A leak must not hide behind cooling, nor warming look like a leak.
func TestTemperature(t *testing.T) {
	minutes := spaced(0, 480, 10)
	sat := func(c float64) float64 { return saturation(c + 273.15) }
	// Six kelvin of cooling overnight takes half of the 500 micron of water vapour and hides most of a leak of 0.75 micron/min.
	cool := func(m float64) float64 { return 24 - 9*m/480 }
	masked := logOf(minutes, 5, func(m float64) float64 { return 500*sat(cool(m))/sat(24) + 0.75*m })
	warm := func(m float64) float64 { return 15 + 9*m/480 }
	imitated := logOf(minutes, 5, func(m float64) float64 { return 500 * sat(warm(m)) / sat(15) })
	for _, c := range []struct {
		name   string
		log    Log
		at     func(float64) float64
		refuse []Verdict
	}{
		{"cooling over a leak", masked, cool, []Verdict{Tight}},
		{"warming without a leak", imitated, warm, []Verdict{Leak, LeakAndMoisture}},
	} {
		for _, logged := range []bool{true, false} {
			cond := conditions()
			l := c.log
			if logged {
				for _, m := range minutes {
					l.Ambient = append(l.Ambient, c.at(m)+273.15)
				}
			} else {
				cond.AmbientStart, cond.AmbientEnd = c.at(0)+273.15, c.at(480)+273.15
			}
			r, err := Analyse(l, cond)
			if err != nil {
				t.Fatal(err)
			}
			for _, v := range c.refuse {
				if r.Verdict == v {
					t.Errorf("%s (logged %v): got %s, must not be; inflow %v", c.name, logged, r.Verdict, r.Inflow)
				}
			}
		}
	}
	// Dry gas that only follows the gas law: 10 K moves 800 micron by 27. Logged, it is corrected and the inflow is near nothing.
	l := logOf(minutes, 0, func(m float64) float64 { return 800 * (288.15 + 10*m/480) / 288.15 })
	for _, m := range minutes {
		l.Ambient = append(l.Ambient, 288.15+10*m/480)
	}
	r, err := Analyse(l, conditions())
	if err != nil {
		t.Fatal(err)
	}
	if shift := r.Temperature.GasShift / micron; !(math.Abs(shift-800*10/288.15) < 0.01) {
		t.Errorf("gas shift got %.3f micron, want %.3f, tolerance 0.01", shift, 800*10/288.15)
	}
	if r.Verdict == Leak || r.Verdict == LeakAndMoisture {
		t.Errorf("gas law alone got %s", r.Verdict)
	}
}

// Free water: a straight rise that stops at the saturation pressure of water at the temperature.
func TestPlateauAtSaturation(t *testing.T) {
	cond := conditions()
	cond.AmbientStart, cond.AmbientEnd = 278.15, 278.15
	top := saturation(278.15) / micron
	r, err := Analyse(logOf(spaced(0, 240, 5), 10, func(m float64) float64 { return math.Min(400+100*m, top) }), cond)
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, x := range r.Reasons {
		found = found || x == AtSaturation
	}
	if r.Verdict != Moisture || !found {
		t.Errorf("got %s %v, want moisture with AtSaturation", r.Verdict, r.Reasons)
	}
}

// Inside the log: pump rows, an opened pump, a nought, the top of the range.
func TestBadRows(t *testing.T) {
	tight := levelling(380, 70, 3)
	minutes := spaced(0, 120, 2)

	pump := logOf(minutes, 1, tight)
	for i, p := range []float64{5000, 2500, 1200, 600} {
		pump.Pressure[i] = p * micron
	}
	r, err := Analyse(pump, conditions())
	if err != nil {
		t.Fatal(err)
	}
	if r.FirstRow < 3 || r.FirstRow > 5 || r.Verdict != Tight {
		t.Errorf("pump rows: first row %d, verdict %s; want 3 to 5 and tight", r.FirstRow, r.Verdict)
	}

	falling, err := Analyse(logOf(spaced(0, 30, 1), 1, func(m float64) float64 { return 400 + 20000*math.Exp(-m/6) }), conditions())
	if err != nil {
		t.Fatal(err)
	}
	if falling.Verdict != Undetermined {
		t.Errorf("pump running all along: got %s, want undetermined", falling.Verdict)
	}

	nought := logOf(minutes, 1, tight)
	nought.Pressure[20] = 0
	nought.Pressure[40] *= 4
	r, err = Analyse(nought, conditions())
	if err != nil {
		t.Fatal(err)
	}
	if r.Verdict != Tight || len(r.Outliers) != 2 || r.Outliers[0] != 20 || r.Outliers[1] != 40 {
		t.Errorf("outliers: got %s %v, want tight and rows 20 and 40", r.Verdict, r.Outliers)
	}

	opened := logOf(minutes, 1, straight(380, 10))
	for i := 40; i < 44; i++ {
		opened.Pressure[i] = 200 * micron
	}
	for i := 44; i < len(minutes); i++ {
		opened.Pressure[i] = (200 + 10*(minutes[i]-minutes[43])) * micron
	}
	r, err = Analyse(opened, conditions())
	if err != nil {
		t.Fatal(err)
	}
	if r.Verdict == Tight || r.Reasons[0] != PumpReopened || r.LastRow > 40 {
		t.Errorf("pump opened: got %s %v rows %d to %d, want the first part, a leak or undetermined", r.Verdict, r.Reasons, r.FirstRow, r.LastRow)
	}

	over := logOf(minutes, 10, func(m float64) float64 { return math.Min(12000, 400+200*m) })
	r, err = Analyse(over, conditions())
	if err != nil {
		t.Fatal(err)
	}
	if r.Verdict != Leak || r.Gauge.RowsOverRange < 25 || !(math.Abs(r.Gauge.OverRange-12000*micron) < 1e-9) {
		t.Errorf("over range: got %s, %d rows at %g; want leak, the rows from 58 min on at 12,000 micron", r.Verdict, r.Gauge.RowsOverRange, r.Gauge.OverRange/micron)
	}
}

// The display step must be found where it changes with the level.
func TestDisplaySteps(t *testing.T) {
	var p []float64
	for v := 200.0; v < 3000; v += 7.3 {
		s := 5.0
		if v > 1000 {
			s = 50
		}
		p = append(p, math.Round(v/s)*s*micron)
	}
	steps := displaySteps(p)
	if got, want := steps[0]/micron, 5.0; !(math.Abs(got-want) < 1e-9) {
		t.Errorf("low step got %g want %g", got, want)
	}
	if got, want := steps[len(steps)-1]/micron, 50.0; !(math.Abs(got-want) < 1e-9) {
		t.Errorf("high step got %g want %g", got, want)
	}
	if s := displaySteps([]float64{1.23456, 2.34567, 3.45678, 4.1, 5.987654}); s[0] != 0 {
		t.Errorf("raw values: step got %g want 0", s[0])
	}
}
