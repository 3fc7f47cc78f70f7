package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/standing"
	"changeout/calc/text"
	"changeout/calc/unit"
)

const (
	// weather is how far the atmosphere may move under a gauge in a day, Pa.
	weather = 1e3
	// shortestHold is the least hold that a verdict "no leak shown" needs, s:
	// one hour, as the product standard asks.
	shortestHold = 3600
	// sharpEnough is the loss, in kelvins of temperature error, that must be
	// excluded before a system passes. Three is about 1 % of the pressure; with a
	// 0.1 % gauge and 1 K it passes what practice passes (twice the resolution
	// and 1 K), and nothing that lost more.
	sharpEnough = 3
)

var nitrogenEquation = calc.Cite{Key: "span-jpcrd-2000", Locator: "equation of state"}

// standingReading is one row of the test.
type standingReading struct{ t, p, temperature float64 }

// standingTest is what the verdict is drawn from.
type standingTest struct {
	start, end           standingReading
	expected, u, missing float64
	slope, hidden        float64
}

func standingPressure(r *calc.Run) {
	rows, apart := standingReadings(r)
	for _, row := range rows {
		// A gauge driven past its end stands still, and a standing gauge looks like a tight system.
		if row.p > r.Float("gauge-range") {
			r.Refuse("gauge-range", calc.TooLow, text.Say("Full scale of the gauge: {} is below a reading of {}; enter the full scale of the gauge that was read.", r.Given("gauge-range"), r.Text(unit.Pressure, row.p, testUnits...)))
			return
		}
	}
	s := standingTest{start: rows[0], end: rows[len(rows)-1]}
	rho, ok := nitrogenDensity(s.start.temperature, s.start.p)
	low, ok1 := nitrogenPressure(s.end.temperature-0.5, rho)
	high, ok2 := nitrogenPressure(s.end.temperature+0.5, rho)
	var ok3 bool
	s.expected, ok3 = nitrogenPressure(s.end.temperature, rho)
	if !ok || !ok1 || !ok2 || !ok3 {
		r.Refuse("start-pressure", "outside-range", "Pressure at the start: the equation of nitrogen gave no sure answer here; check it and the temperatures.")
		return
	}
	if !(s.end.t-s.start.t >= 60) {
		r.Refuse("log", "too-short", "Log: the last reading does not come at least a minute after the first. If the test runs over night, write the date before each time.")
		return
	}
	s.slope = high - low
	gauge := r.Float("gauge-class") * (r.Float("gauge-range") - r.Atmosphere())
	off := math.Max(r.Float("temperature-error"), apart/2)
	s.u = standing.Doubt(gauge, s.expected/s.start.p, s.slope, off, weather)
	s.missing = s.expected - s.end.p
	// A reading above the expected one takes nothing off what could hide: it shows that something is off.
	s.hidden = s.u + math.Max(0, s.missing)
	setStanding(r, &s, rho, gauge, off)
	if apart > 2*r.Float("temperature-error") {
		r.Warn("Pipe and air are far apart, so the gas temperature is uncertain; half the difference was taken as its error. Read again in the shade or at dawn.")
	}
	over := standingStages(r, math.Max(s.start.p, s.end.p))
	standingEnergy(r, &s)
	concludeStanding(r, &s, over)
	if len(rows) > 2 {
		standingChart(r, rows, rho, s.u)
	}
}

// standingReadings gathers the readings, and the widest gap of pipe and air.
func standingReadings(r *calc.Run) (rows []standingReading, apart float64) {
	if log := r.Series("log"); log != nil {
		c := log.Columns
		for i := range log.Len() {
			rows = append(rows, standingReading{c[0][i], c[1][i], c[2][i]})
		}
		return rows, 0
	}
	rows = []standingReading{{0, r.Float("start-pressure"), r.Float("start-temperature")}, {r.Float("hold"), r.Float("end-pressure"), r.Float("end-temperature")}}
	for i, air := range [...]string{"start-air", "end-air"} {
		if r.Has(air) {
			apart = math.Max(apart, math.Abs(r.Float(air)-rows[i].temperature))
		}
	}
	return rows, apart
}

func setStanding(r *calc.Run, s *standingTest, rho, gauge, off float64) {
	difference := func(p float64) string { return r.Text(unit.PressureDifference, p, "kPa", "psi") }
	temperature := func(t float64) string { return r.Text(unit.Temperature, t, "C", "F") }
	pressure := func(p float64) string { return r.Text(unit.Pressure, p, testUnits...) }
	r.Set("expected", s.expected)
	r.Set("ideal", standing.Ideal(s.start.p, s.start.temperature, s.end.temperature))
	r.Set("slope", s.slope)
	r.Set("loss", s.missing)
	r.Set("doubt", s.u)
	r.Set("hidden", s.hidden)
	r.Step("Density at the start; it stays if the system is tight", text.Say("ρ({}, {})", temperature(s.start.temperature), pressure(s.start.p)), r.Text(unit.Density, rho, "kg/m3", "lb/ft3"), nitrogenEquation)
	r.Step("Expected if tight", text.Say("p({}, ρ), real nitrogen", temperature(s.end.temperature)), r.OutputText("expected"), nitrogenEquation)
	r.Step("Expected of an ideal gas, to compare", "p₁ T₂ ÷ T₁, absolute", r.OutputText("ideal"), calc.Cite{Key: "practice-63"})
	missing, formula, a, b := "Missing", "expected − read = {} − {}", r.OutputText("expected"), pressure(s.end.p)
	if s.missing < 0 {
		missing, formula, a, b = "Gained", "read − expected = {} − {}", b, a
	}
	r.Step(missing, text.Say(formula, a, b), r.OutputText("loss"), calc.Cite{Key: "practice-62"})
	r.Step("Greatest error of the gauge", text.Say("class × full scale = {} × {}", r.Given("gauge-class"), r.Given("gauge-range")), difference(gauge), calc.Cite{Key: "en-837-1", Locator: "table 11"})
	r.Step("What the readings leave open", text.Say("2 √(Σ a²/3): gauge {} twice, {} twice at {} each kelvin, weather {}", difference(gauge), r.Text(unit.TemperatureDifference, off, "K", "F"), r.OutputText("slope"), difference(weather)), r.OutputText("doubt"), calc.Cite{Key: "jcgm-100", Locator: "4.3.7, 6.2"})
	r.Step("A loss that could still hide", "left open + missing", r.OutputText("hidden"), calc.Cite{Key: "common-practice"})
}

// standingStages sets the stages from the unit's limit and reports whether the
// test went above it.
func standingStages(r *calc.Run, highest float64) bool {
	if !r.Has("limit") {
		r.Warn("The test stages are not shown: the unit's highest test pressure is missing. Look it up before you raise the pressure.")
		return false
	}
	limit := r.Float("limit")
	for i, gauge := range [...]float64{0.3e6, 1.5e6, math.Inf(1)} {
		id := "stage-" + string(rune('1'+i))
		r.Set(id, math.Min(limit, unit.StandardAtmosphere+gauge))
		r.Step("Stage "+string(rune('1'+i)), [...]string{"0.3 MPa gauge, gross leaks", "1.5 MPa gauge, larger leaks", "the unit's limit"}[i], r.OutputText(id), calc.Cite{Key: [...]string{"manual-2", "manual-2", "makers-manual"}[i], Locator: "pressure test"})
	}
	return highest > limit*(1+1e-9)
}

// standingEnergy sets the stored energy and the distance.
func standingEnergy(r *calc.Run, s *standingTest) {
	if !r.Has("volume") {
		r.Warn("Leak rate and stored energy are not shown: the volume is missing.")
		return
	}
	v, p := r.Float("volume"), math.Max(s.start.p, s.end.p)
	e := standing.Energy(p, v, r.Atmosphere())
	r.Set("energy", e)
	r.Set("stand-off", standing.StandOff(e))
	r.Step("Stored energy, isentropic", "p V ÷ (k − 1) × (1 − (pₐ/p)^((k−1)/k)), k = 1.4; isothermal bound p V ln(p/pₐ) = "+r.Text(unit.Energy, standing.Isothermal(p, v, r.Atmosphere()), "kJ"), r.OutputText("energy"), calc.Cite{Key: "asme-pcc-2", Locator: "equation II-1"})
	r.Step("Distance", text.Say("20 (2 TNT)^⅓ = {} with TNT = E ÷ 4.267 MJ/kg; never below 30 m (100 ft)", r.Text(unit.Length, standing.ScaledDistance(e), "m", "ft")), r.OutputText("stand-off"), calc.Cite{Key: "asme-pcc-2-later", Locator: "equation III-1"})
	if e > 100e3 {
		r.Warn(text.Say("{} is stored, as in {} of TNT: highly hazardous (above 100 kJ). The rule for plants keeps people {} away while pressure is raised. Come close only after it has stood.", r.OutputText("energy"), r.Text(unit.Mass, standing.TNT(e), "g", "oz"), r.OutputText("stand-off")))
	}
	seconds := s.end.t - s.start.t
	if s.missing > s.u {
		r.Set("leak-rate", standing.Throughput(s.missing, v, seconds))
		r.Step("Leak at test pressure", "missing × V ÷ time", r.OutputText("leak-rate"), calc.Cite{Key: "common-practice"})
	} else {
		r.Set("hidden-rate", standing.Throughput(s.hidden, v, seconds))
		r.Step("Leak that could still hide", "(missing + left open) × V ÷ time", r.OutputText("hidden-rate"), calc.Cite{Key: "common-practice"})
	}
}

func concludeStanding(r *calc.Run, s *standingTest, over bool) {
	read := r.Text(unit.Pressure, s.end.p, testUnits...)
	expected, u := r.OutputText("expected"), r.OutputText("doubt")
	short := s.end.t-s.start.t < shortestHold
	switch {
	case over:
		r.Conclude("over-limit", text.Say("The readings are above the unit's limit of {}. Lower the pressure slowly, outdoors, from a distance, and have the parts examined.", r.Given("limit")))
		return
	case s.missing > s.u && s.end.temperature > s.start.temperature && s.end.p > s.start.p:
		r.Conclude("small-rise", text.Say("It rose to {}, but warming alone makes {}. {} is missing, more than the readings leave open (±{}).", read, expected, r.OutputText("loss"), u))
	case s.missing > s.u:
		r.Conclude("leak", text.Say("{} is missing: {} read, {} expected. That is more than the readings leave open (±{}).", r.OutputText("loss"), read, expected, u))
	case s.missing < -s.u:
		r.Conclude("gained", text.Say("{} is more than temperature explains ({} ± {}). Gas came in, or a reading is wrong, so tightness is not shown.", read, expected, u))
		r.Advise("Disconnect the nitrogen, check that its valve does not pass, let the temperature settle, and start again.")
		return
	case s.hidden > sharpEnough*s.slope:
		r.Conclude("cannot-tell", text.Say("{} read, {} expected, ±{}: a loss of {} could hide in this. Use a better gauge or steadier temperature, and read again.", read, expected, u, r.OutputText("hidden")))
		r.Advise("Read at dawn or in steady shade, insulate the probe on the pipe, and use a digital gauge of 0.1 % or better.")
		return
	case short:
		r.Conclude("cannot-tell", text.Say("{} read, {} expected, ±{}, but the hold is shorter than an hour. Go on and read again.", read, expected, u))
		return
	default:
		r.Conclude("tight", text.Say("{} read, {} expected, ±{}. A loss up to {} could still hide, so bubble every joint before you vent.", read, expected, u, r.OutputText("hidden")))
		r.Advise("Hidden or long pipe, or many joints: hold 24 h. All joints in sight and bubbled: one hour can be defended. The manual governs.")
		return
	}
	r.Advise("Find it with bubbles, sound or trace gas; divide the system if you must. Release the pressure before you repair.")
}

// standingChart draws the change of pressure that was read over the change that
// a tight system would show, with the band that the readings leave open.
func standingChart(r *calc.Run, rows []standingReading, rho, u float64) {
	name := "kPa"
	if one := r.Text(unit.PressureDifference, 0, "kPa", "psi"); len(one) > 3 && one[len(one)-3:] == "psi" {
		name = "psi"
	}
	scale := unit.PressureDifference.Unit(name).Factor
	data := chart.Line{Class: "co-chart__data", Name: "as read", Dots: true}
	fit := chart.Line{Class: "co-chart__line"}
	band := chart.Line{Class: "co-chart__band", Name: "tight: inside"}
	var lower []float64
	step := (len(rows) + 99) / 100
	for i, row := range rows {
		if i%step != 0 && i != len(rows)-1 {
			continue
		}
		p, ok := nitrogenPressure(row.temperature, rho)
		if !ok {
			continue
		}
		hours, tight := (row.t-rows[0].t)/3600, (p-rows[0].p)/scale
		data.X, data.Y = append(data.X, hours), append(data.Y, (row.p-rows[0].p)/scale)
		fit.X, fit.Y = append(fit.X, hours), append(fit.Y, tight)
		band.X, band.Y, lower = append(band.X, hours), append(band.Y, tight+u/scale), append(lower, tight-u/scale)
	}
	for i := len(lower) - 1; i >= 0; i-- { // back along its lower edge
		band.X, band.Y = append(band.X, band.X[i]), append(band.Y, lower[i])
	}
	c := chart.Chart{Label: text.Say("Change of pressure in {} over hours: points as read, and the band in which a tight system would show them. {}.", name, r.VerdictTitle()),
		XTitle: "hours", YTitle: "change, " + name, Words: r.VerdictTitle(), Lines: []chart.Line{band, fit, data}}
	if svg := c.SVG(); svg != "" {
		r.Chart("Read and expected", svg)
	}
}
