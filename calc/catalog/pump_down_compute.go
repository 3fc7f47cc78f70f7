package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/vacuum"
	"changeout/calc/property/water"
	"changeout/calc/text"
	"changeout/calc/unit"
)

const micronPa = 101325.0 / 760000

// coreLength stands for the valve core and its ends, m.
const coreLength = 0.025

var partNames = [...]string{vacuum.Pump: "the pump", vacuum.Hose: "the hose", vacuum.Core: "the valve core", vacuum.Run: "the pipe run"}

// drying is one evacuation: the path, the volume and the water.
type drying struct {
	path           vacuum.Path
	volume, target float64
	water, t       float64
	saturation     float64 // Pa of water at t

	dry, fast, slow float64 // s, as run gives them
}

// slowest is where water that is held back leaves: at the target, or at its
// own pressure where that is lower.
func (d *drying) slowest() float64 { return math.Min(d.target, d.saturation) }

// run computes the pump-down of the dry gas, and the times for dry gas, for
// water at its saturation and for water that is held back.
func (d *drying) run() []vacuum.Sample {
	s := d.path.PumpDown(d.volume, unit.StandardAtmosphere, d.target)
	d.dry = s[len(s)-1].Time
	if d.water > 0 {
		d.fast = d.path.EvaporationTime(d.water, d.t, d.saturation)
		d.slow = d.path.EvaporationTime(d.water, d.t, d.slowest())
	}
	return s
}

func pumpDown(r *calc.Run) {
	d := drying{volume: r.Float("volume"), target: r.Float("target"), water: r.Float("water"), t: r.Float("temperature")}
	d.path = vacuum.Path{Hose: vacuum.Tube{Bore: r.Float("hose-bore"), Length: r.Float("hose-length")}, Ports: 1, Speed: r.Float("pump-speed"), Base: r.Float("pump-base")}
	if r.Choice("hoses") == "two" {
		d.path.Ports = 2
	}
	if r.Choice("cores") == "in" {
		d.path.Core = vacuum.Tube{Bore: r.Float("core-bore"), Length: coreLength}
	}
	if rows := r.Series("run"); rows != nil {
		for i, bore := range rows.Columns[0] {
			d.path.Run = append(d.path.Run, vacuum.Tube{Bore: bore, Length: rows.Columns[1][i]})
		}
	}
	d.saturation, _ = water.SaturationPressure(d.t)
	pressure := func(pa float64) string { return r.Text(unit.VacuumPressure, pa, "micron") }
	// Within 2 % of its base the pump moves next to nothing, and a gauge cannot tell.
	if lowest := 1.02 * d.path.Base; d.target < lowest {
		r.Refuse("target", "below-base", text.Say("Target: {} is not above the {} that the pump reaches alone; change the pump oil, or enter {} or more.",
			r.Given("target"), r.Given("pump-base"), pressure(math.Ceil(lowest/micronPa)*micronPa)))
		return
	} else if d.water > 0 && d.saturation < lowest {
		r.Refuse("temperature", "water-frozen-in", text.Say("Coldest pipe temperature: at {} ice holds only {}, which this pump cannot get below; warm the pipe.", r.Given("temperature"), pressure(d.saturation)))
		return
	}
	curve := d.run()
	end := &curve[len(curve)-1]
	share := d.path.Share(d.target)
	pumpDownSteps(r, &d, end, share)
	changes(r, &d)
	limit := partNames[end.Limit()]
	said := text.Say("At {} the far end gets {} of the pump's speed. What limits there is {}.", pressure(d.target), r.OutputText("share"), limit)
	switch {
	case share >= 0.5:
		r.Conclude("suits", said)
	case share >= 0.1:
		r.Conclude("throttled", said)
	default:
		r.Conclude("choked-off", said)
	}
	if d.path.Core.Length > 0 {
		r.Warn("No published figure for the passage of a core was found; the one used is an assumption. That a core hinders is sure, by how much is not.")
	}
	if end.Limit() == vacuum.Run {
		r.Advise("The pipes inside limit. Connect the pump at more ports, on the liquid side and on the gas side.")
	}
	r.Advise("Put the gauge at the far end. Prove dryness with an isolated hold, not with a time.")
	iceWarnings(r, &d, pressure)
	pumpDownChart(r, &d, curve, limit)
}

func pumpDownSteps(r *calc.Run, d *drying, end *vacuum.Sample, share float64) {
	p := func(pa float64) string { return r.Text(unit.VacuumPressure, pa, "micron") }
	knudsen := calc.Cite{Key: "vacuum-fundamentals", Locator: "equation 1.26"}
	r.Set("share", share)
	r.Set("hose-mean", end.HoseMean())
	r.Set("hose-conductance", d.path.Hose.Conductance(end.HoseMean()))
	r.Set("pump-reading", end.P[vacuum.Pump])
	r.Step("Mean pressure in the hose, solved", text.Say("(p1 + p2)/2 = ({} + {})/2, so that hose and pump pass the same gas", p(end.P[vacuum.Hose]), p(end.P[vacuum.Pump])), r.OutputText("hose-mean"), knudsen)
	r.Step("Conductance of the hose at that pressure", "C = 1350 d⁴ p/l + 121 d³/l × (1 + 192 d p)/(1 + 237 d p), in m and Pa", r.OutputText("hose-conductance"), knudsen)
	r.Step("Share at the far end", text.Say("S far/S = q/(p S), q = S (p2 − p base), p2 − p base = {} micron", unit.Significant((end.P[vacuum.Pump]-d.path.Base)/micronPa, 3)), r.OutputText("share"),
		calc.Cite{Key: "practice-108", Locator: "pump and path in series"})
	for _, at := range [...]struct {
		id     string
		micron float64
	}{{"share-10000", 10000}, {"share-2000", 2000}, {"share-500", 500}, {"share-200", 200}} {
		r.Set(at.id, d.path.Share(at.micron*micronPa))
	}
	r.Set("time-dry", d.dry)
	r.Step("Time for dry gas", text.Say("t = ∫ V dp/q(p) from the atmosphere to {}; at most 160 steps; turbulent and choked flow near the atmosphere", p(d.target)), r.OutputText("time-dry"),
		calc.Cite{Key: "gas-dynamics", Locator: "Blasius friction, choked flow"})
	if d.water == 0 {
		return
	}
	r.Set("time-water-low", d.fast)
	r.Set("time-water-high", d.slow)
	r.Step("Water holds, at this temperature", "saturation pressure", p(d.saturation), waterCite(d.t))
	gas := calc.Cite{Key: "ideal-gas-law"}
	r.Step("Time for free, warm water", "m R T/(S far p), p = saturation", r.OutputText("time-water-low"), gas)
	r.Step("Time for water that leaves only at the target", text.Say("m R T/(S far p), p = {}", p(d.slowest())), r.OutputText("time-water-high"), gas)
	const heat = 2.45e6 // J/kg at 20 °C
	r.Step("Heat that the metal must give meanwhile", "m × 2.45 MJ/kg ÷ the shorter time", r.Text(unit.Power, d.water*heat/d.fast, "W"), calc.Cite{Key: "coolprop-8", Locator: "water at 20 °C, HEOS 8.0.0"})
}

// hoseBores are the bores of the hoses that the trade uses, m.
var hoseBores = [...]float64{4.8e-3, 7.9e-3, 11e-3, 19e-3}

// changes computes each single change to the set-up, records it and advises
// the best one.
func changes(r *calc.Run, d *drying) {
	now := d.dry + d.slow
	best, bestName := now, ""
	try := func(name string, change func(w *vacuum.Path)) {
		other := *d
		change(&other.path)
		other.run()
		t := other.dry + other.slow
		said := unit.SpanText(t)
		if before := unit.SpanText(now); said != before {
			said += " instead of " + before
		} else {
			said += ", as it is now"
		}
		r.Step("If you change one thing: "+name, "the same sum, dry gas and water at the target", said, calc.Cite{Key: "vacuum-fundamentals", Locator: "equation 1.26"})
		if t < best {
			best, bestName = t, name
		}
	}
	if d.path.Core.Length > 0 {
		try("take the cores out", func(w *vacuum.Path) { w.Core = vacuum.Tube{} })
	}
	for _, bore := range hoseBores {
		if bore > 1.2*d.path.Hose.Bore {
			try("a hose of "+r.Text(unit.TubeDiameter, bore, boreUnits...)+" bore", func(w *vacuum.Path) { w.Hose.Bore = bore })
			break
		}
	}
	try("a hose half as long", func(w *vacuum.Path) { w.Hose.Length /= 2 })
	if d.path.Ports < 2 {
		try("a second hose on a second port", func(w *vacuum.Path) { w.Ports = 2 })
	}
	try("a pump twice as fast", func(w *vacuum.Path) { w.Speed *= 2 })
	r.Set("best-time", best)
	if best > 0.95*now {
		r.Advise("No single change gains more than a twentieth of the time.")
	} else {
		r.Advise(text.Say("Change first: {}. The time then falls from {} to {}.", bestName, unit.SpanText(now), unit.SpanText(best)))
	}
}

func iceWarnings(r *calc.Run, d *drying, p func(float64) string) {
	if d.t < water.TripleTemperature {
		r.Warn(text.Say("At this temperature water is ice. It gives off vapour slowly and holds no more than {}: a good reading can hide it. Warm the pipe above 10 °C.", p(d.saturation)))
	}
	if d.water == 0 {
		return
	}
	if d.target >= d.saturation {
		r.Warn(text.Say("The target is above the {} that water holds here. Reaching it shows nothing about water.", p(d.saturation)))
	} else if d.t >= water.TripleTemperature && d.target < water.TriplePressure {
		r.Warn("Water that the metal does not warm cools as it boils. Below 4588 micron (611.7 Pa) it freezes. Find cold spots and warm them.")
	}
}

// timeAxis gives the seconds of a step of a chart's axis of time, and its title:
// the unit that unit.SpanText writes such a time in.
func timeAxis(span float64) (float64, string) {
	switch {
	case span > 48*3600:
		return 86400, "days"
	case span > 2*3600:
		return 3600, "hours"
	}
	return 60, "minutes"
}

// micronText writes a pressure as the chart's axis does.
func micronText(pa float64) string { return unit.Significant(pa/micronPa, 3) + " micron" }

func pumpDownChart(r *calc.Run, d *drying, curve []vacuum.Sample, limit string) {
	fast := d.fast
	perTime, timeTitle := timeAxis(curve[len(curve)-1].Time + fast)
	far := chart.Line{Class: "co-chart__fit", Name: "far end"}
	near := chart.Line{Class: "co-chart__line", Name: "at the pump"}
	pause := 0.0
	for i := range curve {
		s := &curve[i]
		if pause == 0 && fast > 0 && s.Far() < d.saturation {
			a := d.path.AtFar(d.saturation)
			for _, wait := range [...]float64{0, fast} {
				far.X, far.Y = append(far.X, (s.Time+wait)/perTime), append(far.Y, d.saturation/micronPa)
				near.X, near.Y = append(near.X, (s.Time+wait)/perTime), append(near.Y, a.P[vacuum.Pump]/micronPa)
			}
			pause = fast
		}
		x := (s.Time + pause) / perTime
		far.X, far.Y = append(far.X, x), append(far.Y, s.Far()/micronPa)
		near.X, near.Y = append(near.X, x), append(near.Y, s.P[vacuum.Pump]/micronPa)
	}
	c := chart.Chart{Label: text.Say("Pressure in micron over {}, at the far end and at the pump. At the target {} limits.", timeTitle, limit),
		XTitle: timeTitle, YTitle: "micron", LogY: true, Words: "limit at the target: " + limit, Lines: []chart.Line{near, far},
		Levels: []chart.Level{{Class: "co-chart__target", Label: "target " + micronText(d.target), Y: d.target / micronPa}}}
	if d.water > 0 {
		c.Levels = append(c.Levels, chart.Level{Class: "co-chart__limit", Label: "boils at " + micronText(d.saturation), Y: d.saturation / micronPa})
	}
	if svg := c.SVG(); svg != "" {
		r.Chart("Pressure over time, at the far end and at the pump", svg)
	}
}
