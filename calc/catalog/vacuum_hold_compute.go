package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/hold"
	"changeout/calc/text"
	"changeout/calc/unit"
)

func vacuumHold(r *calc.Run) {
	rows := r.Series("log")
	log := hold.Log{Time: rows.Columns[0], Pressure: rows.Columns[1], Ambient: rows.Columns[2]}
	given := hold.Conditions{AmbientStart: math.NaN(), AmbientEnd: math.NaN(), Target: r.Float("target"), Limit: r.Float("limit"),
		InflowLimit: r.Float("leak-limit"), Volume: r.Float("volume")}
	if r.Has("ambient-start") {
		given.AmbientStart = r.Float("ambient-start")
	}
	if r.Has("ambient-end") {
		given.AmbientEnd = r.Float("ambient-end")
	}
	res, err := hold.Analyse(log, given)
	if err != nil {
		refuseHold(r, err)
		return
	}
	// The bound on the rise allows for a drift that nobody measured. But below freezing ice holds a low pressure, and without an
	// ambient nobody knows whether it is: dryness is not shown.
	if res.Verdict == hold.Tight && res.Temperature.Kind == hold.TemperatureNone {
		res.Verdict, res.Actions = hold.Undetermined, []hold.Action{hold.LogTemperature}
	}
	holdOutputs(r, &res)
	holdSteps(r, &res)
	if fitted(&res) && !lossAtRunning(r, &res, negligible(&res)) {
		return
	}
	r.Conclude(string(res.Verdict), holdSentence(r, &res, rows.Len()))
	ambientWarning(r, &res)
	// practice-67 calls a hold tight and dry up to 1000 micron; the limit entered may be higher.
	if res.Verdict == hold.Tight && res.LastPressure > 133.3 {
		r.Step("Level of a dry hold", "a training page", "500 to 1000 micron", calc.Cite{Key: "practice-67"})
		r.Warn("It is dry by the limit entered only. Above 1000 micron a training page takes it as still moist: go deeper if you can.")
	}
	for _, reason := range res.Reasons {
		if s := reasonWarning(r, &res, reason); s != "" {
			r.Warn(s)
		}
	}
	for _, a := range res.Actions {
		if s := actionSentence(r, &res, a); s != "" {
			r.Advise(s)
		}
	}
	holdChart(r, &res)
}

// fitted tells whether there were rows enough to fit a rate to.
func fitted(res *hold.Result) bool { return len(res.Candidates) > 0 }

func refuseHold(r *calc.Run, err error) {
	e, ok := err.(*hold.Error) // errors.As would bring reflection to every phone
	if !ok {
		r.Refuse("log", calc.BadRow, "Hold log: the log cannot be judged.")
		return
	}
	column, trouble := 0, ""
	switch e.Fault {
	case hold.TimeNotAfter:
		trouble = "is not later than the row before it; each time must be later than the last."
	case hold.SpanOutside:
		r.Refuse("log", calc.FewRows, text.Say("Hold log: the rows span {}; a hold needs from 1 min to 14 days.", unit.SpanText(e.Value)))
		return
	case hold.LimitOutside:
		r.Refuse("limit", calc.TooLow, text.Say("Limit: {} is not above the target of {}; enter a limit above the target.", r.Given("limit"), r.Given("target")))
		return
	case hold.PressureOutside, hold.PressureMissing:
		column, trouble = 1, "has no usable pressure; enter 0 to 120 000 Pa absolute."
	case hold.AmbientOutside:
		column, trouble = 2, "has an ambient outside −50 to 80 °C."
	case hold.FewRows:
		r.Refuse("log", calc.FewRows, text.Say("Hold log: too few rows; at least {} are needed.", unit.Fixedf(hold.MinRows, 0)))
		return
	default:
		trouble = "cannot be used."
	}
	r.RefuseRow("log", calc.BadRow, text.Say("Hold log: row {} {}", unit.Fixedf(float64(e.Row), 0), trouble), e.Row, column)
}

// negligible gives a rise, and nothing for what is below a thousandth of the
// accepted rise, which is rounding of the fit.
func negligible(res *hold.Result) func(float64) float64 {
	return func(v float64) float64 {
		if math.Abs(v) < res.InflowLimit/1000 {
			return 0
		}
		return v
	}
}

func holdOutputs(r *calc.Run, res *hold.Result) {
	rise := negligible(res)
	setFinite := func(id string, v float64) {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			r.Set(id, v)
		}
	}
	setFinite("leak-rise-limit", res.InflowLimit)
	if fitted(res) {
		setFinite("leak-rise", rise(res.Inflow.Best))
		setFinite("leak-rise-low", rise(res.Inflow.Low))
		setFinite("leak-rise-high", res.Inflow.High)
	}
	if fitted(res) && r.Has("volume") {
		setFinite("leak-rate", rise(res.Inflow.Best)*r.Float("volume"))
		setFinite("leak-rate-high", res.Throughput.High)
	}
	// A level means something only where the rise ends.
	if res.LevelKnown && res.Verdict != hold.Leak && res.Verdict != hold.LeakAndMoisture {
		setFinite("level", res.Level.Best)
	}
	setFinite("last-pressure", res.LastPressure)
	if res.Verdict == hold.Moisture {
		r.Set("hold-limit", r.Float("limit"))
	}
	setFinite("boiling-point", res.BoilingAtLast)
	setFinite("water-saturation", res.WaterSaturation)
	if res.HoldNeeded > 0 {
		setFinite("hold-needed", res.HoldNeeded)
	}
	if !fitted(res) {
		return
	}
	switch res.Repeat.Kind {
	case hold.RepeatEither:
		setFinite("repeat-if-leak", res.Repeat.IfLeak)
		setFinite("repeat-if-moist", res.Repeat.IfRelease)
	case hold.RepeatSameSlope:
		setFinite("repeat-if-leak", res.Repeat.IfLeak)
	case hold.RepeatLowerLevel:
		setFinite("repeat-if-moist", res.Repeat.IfRelease)
	}
}

func holdSteps(r *calc.Run, res *hold.Result) {
	pressure := func(pa float64) string { return r.Text(unit.VacuumPressure, pa, "micron") }
	rate := func(v float64) string { return r.Text(unit.PressureRate, v, "micron/min") }
	practice := calc.Cite{Key: "common-practice"}
	r.Step("Rows judged", rowsOver(res), pressure(res.FirstPressure)+" to "+pressure(res.LastPressure), practice)
	if !fitted(res) {
		// No gauge, no rate.
	} else if res.Gauge.Step > 0 {
		r.Step("Gauge", "scatter of the readings, and display step found in the log", text.Say("{} scatter, {} steps", pressure(res.Gauge.Noise), pressure(res.Gauge.Step)), practice)
	} else {
		r.Step("Gauge", "scatter of the readings around a smooth curve", pressure(res.Gauge.Noise)+" scatter", practice)
	}
	drift, water := "no drift taken off", "the ambient"
	if fitted(res) {
		drift += ", " + r.Text(unit.TemperatureDifference, res.Temperature.Uncertain, "K", "F") + " allowed for"
	}
	switch t := res.Temperature; t.Kind {
	case hold.TemperatureNone:
		water = taken(r, res) + ", no ambient entered"
		r.Step("Gas temperature", "no ambient entered", drift, practice)
	case hold.TemperatureConstant:
		r.Step("Gas temperature", "one ambient entered: "+taken(r, res), drift, practice)
	default:
		r.Step("Gas temperature", text.Say("p ∝ T: from {} to {}", r.Text(unit.Temperature, t.Start, "C", "F"), r.Text(unit.Temperature, t.End, "C", "F")), pressure(t.GasShift)+" taken off the last reading", practice)
	}
	for i, c := range ranked(res.Candidates) {
		if i == 4 {
			break
		}
		mark := ""
		if i == 0 {
			mark = ", chosen"
		}
		r.Step("Explanation: "+modelNames[c.Model]+mark, text.Say("weighted misfit {}, about 1 fits to the noise; a lower score is better", unit.Significant(c.Residual, 3)), "score "+unit.Fixedf(c.Score, 1), practice)
	}
	if fitted(res) {
		r.Step("Steady rise", "fitted slope after the other parts", r.OutputText("leak-rise"), practice)
		sure := unit.Fixedf(100*res.Confidence, 0) + " % sure, "
		r.Step("Steady rise, at least", sure+"the lower bound", r.OutputText("leak-rise-low"), practice)
		r.Step("Steady rise, at most", sure+"the upper bound", r.OutputText("leak-rise-high"), practice)
	}
	r.Step("Accepted rise", "stated, or (limit − target) ÷ 12 h", r.OutputText("leak-rise-limit"), practice)
	r.Step("Last pressure", "end of the curve through the readings", r.OutputText("last-pressure"), practice)
	for _, s := range [...][3]string{{"level", "Level it tends to", "end of the part that levels off"}, {"hold-limit", "Limit to stay below", "as entered"}, {"hold-needed", "Hold needed to tell", "time until the bounds would settle it"}} {
		if value := r.OutputText(s[0]); value != "" {
			r.Step(s[1], s[2], value, practice)
		}
	}
	if fitted(res) && r.Has("volume") {
		r.Step("Leak rate", text.Say("rise × volume = {} × {}", rate(res.Inflow.Best), r.Given("volume")), r.OutputText("leak-rate"), practice)
	}
	r.Step("Water at the last pressure", "saturation line of water, ice below 0.01 °C", r.OutputText("boiling-point"), calc.Cite{Key: "iapws-r14-08"})
	r.Step("Free water would hold", "saturation pressure at "+water, r.OutputText("water-saturation"), calc.Cite{Key: "wagner-pruss-2002", Locator: "equation 2.5"})
}

// ranked orders the explanations by their score, best first. Scores that agree
// within rounding are ordered by name, so that every machine shows one order.
func ranked(candidates []hold.Candidate) []hold.Candidate {
	list := append([]hold.Candidate{}, candidates...)
	for i := range list {
		for j := i; j > 0 && list[j].Model < list[j-1].Model && list[j].Score-list[j-1].Score < 1e-6; j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
	return list
}

func holdChart(r *calc.Run, res *hold.Result) {
	u := calc.DefaultUnit(unit.VacuumPressure, []string{"micron"}, unit.SI)
	var env unit.Env
	perTime, timeTitle := timeAxis(res.End - res.Start)
	data := chart.Line{Class: "co-chart__data", Name: "as read", Dots: true}
	fit := chart.Line{Class: "co-chart__fit", Name: "fit"}
	for _, p := range res.Curve {
		x := (p.Time - res.Start) / perTime
		data.X, data.Y = append(data.X, x), append(data.Y, u.FromSI(p.Measured, env))
		fit.X, fit.Y = append(fit.X, x), append(fit.Y, u.FromSI(p.Fit, env))
	}
	title := r.VerdictTitle()
	c := chart.Chart{Label: text.Say("Hold log: pressure in micron over {}, with the fitted curve and the limit. {}.", timeTitle, title),
		XTitle: timeTitle, YTitle: "micron", Words: title, Lines: []chart.Line{fit, data},
		Levels: []chart.Level{{Class: "co-chart__limit", Label: "limit " + micronText(r.Float("limit")), Y: u.FromSI(r.Float("limit"), env)},
			{Class: "co-chart__target", Label: "target " + micronText(r.Float("target")), Y: u.FromSI(r.Float("target"), env)}}}
	if svg := c.SVG(); svg != "" {
		r.Chart("The log and the limit", svg)
	}
}
