package catalog

import (
	"changeout/calc"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Saturation looks up what a gauge and a thermometer mean for a refrigerant.
var Saturation = &calc.Worksheet{
	ID:    "saturation",
	Title: "Saturation",
	Purpose: "Pressure and temperature of a refrigerant where liquid and vapour meet: bubble and dew points, glide, densities, " +
		"and superheat or subcooling when you add a line temperature.",
	Inputs: []calc.Input{
		refrigerantInput(),
		{ID: "pressure", Label: "Pressure", Kind: calc.Quantity, Quantity: unit.Pressure, Units: pressureUnits, Optional: true,
			Low: lowestPressure, High: highestPressure, BoundReason: "from a deep vacuum to above any field gauge",
			Help: "Enter a pressure or a temperature, not both."},
		{ID: "temperature", Label: "Saturation temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: true,
			Low: 173.15, High: 473.15, BoundReason: "the refrigerant's own range is narrower and is checked next",
			Help: "To find the pressure that belongs to it."},
		{ID: "line-temperature", Label: "Line temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: true,
			Low: 173.15, High: 473.15, BoundReason: "the span of pipe thermometers",
			Help: "Measured on the pipe where the pressure was read. Gives superheat and subcooling."},
		altitudeInput(),
	},
	Outputs: []calc.Output{
		{ID: "superheat", Label: "Superheat, from dew", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
		{ID: "subcooling", Label: "Subcooling, from bubble", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
		{ID: "bubble-pressure", Label: "Bubble pressure", Quantity: unit.Pressure, Units: pressureUnits, Main: true},
		{ID: "dew-pressure", Label: "Dew pressure", Quantity: unit.Pressure, Units: pressureUnits, Main: true},
		{ID: "bubble-temperature", Label: "Bubble temperature", Quantity: unit.Temperature, Units: []string{"C", "F"}, Main: true},
		{ID: "dew-temperature", Label: "Dew temperature", Quantity: unit.Temperature, Units: []string{"C", "F"}, Main: true},
		{ID: "glide", Label: "Glide", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
		{ID: "liquid-density", Label: "Liquid density at bubble", Quantity: unit.Density, Units: []string{"kg/m3", "lb/ft3"}, Significant: 4},
		{ID: "vapour-density", Label: "Vapour density at dew", Quantity: unit.Density, Units: []string{"kg/m3", "lb/ft3"}, Significant: 4},
	},
	Verdicts: []calc.Verdict{
		{ID: "superheated", Tone: calc.Info, Title: "Superheated vapour in the line", Main: []string{"superheat", "dew-temperature", "dew-pressure", "bubble-temperature", "bubble-pressure"}},
		{ID: "subcooled", Tone: calc.Info, Title: "Subcooled liquid in the line", Main: []string{"subcooling", "bubble-temperature", "bubble-pressure", "dew-temperature", "dew-pressure"}},
		{ID: "two-phase", Tone: calc.Doubt, Title: "Liquid and vapour together, or readings that do not agree", Main: []string{"superheat", "subcooling"}},
	},
	Compute: saturation,
	Limits: []string{
		"Do not use it when the gas may be mixed, topped up with another gas, or holds air.",
		"Do not use it near the critical point. The worksheet stops there and says so.",
		"A leak can shift the composition of a blend with glide. Then bubble and dew no longer fit.",
		"Reading a pressure far from where the temperature is taken adds the pressure drop of the line.",
	},
	Cautions: []calc.Caution{{Signal: "WARNING",
		Hazard:      "Refrigerant leaves a gauge port as a cold jet under pressure.",
		Consequence: "It can freeze skin and eyes, and displace the air you breathe.",
		Avoid:       "Wear gloves and eye protection. Open ports slowly. Ventilate low rooms."}},
	Sources: append([]string{"ashrae-fundamentals", "practice-79", "manual-11", "common-practice"}, equationKeys...),
	Example: []calc.Field{{Input: "refrigerant", Text: "R-407C"}, {Input: "pressure", Text: "80 psig"}, {Input: "line-temperature", Text: "61 F"}},
}

func saturation(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	byPressure, byTemperature := r.Has("pressure"), r.Has("temperature")
	switch {
	case byPressure && byTemperature:
		r.Refuse("temperature", "both-given", "Pressure and saturation temperature are both given; clear one of them.")
		return
	case !byPressure && !byTemperature:
		r.Refuse("pressure", calc.Missing, "Pressure is missing: enter a pressure, or a saturation temperature instead.")
		return
	}
	var bubble, dew refrigerant.Point
	var ok bool
	if byPressure {
		bubble, dew, ok = saturationAtPressure(r, ref, r.Float("pressure"))
	} else {
		bubble, dew, ok = saturationAtTemperature(r, ref, r.Float("temperature"))
	}
	if !ok {
		return
	}
	r.Set("liquid-density", bubble.RhoLiquid)
	r.Set("vapour-density", dew.RhoVapor)
	if r.Has("line-temperature") {
		lineState(r, ref, bubble.T, dew.T)
	}
	if ref.ChargeAsLiquid {
		r.Advise(text.Say("Take superheat from the dew point and subcooling from the bubble point. Charge {} as liquid.", ref.Name))
	} else {
		r.Advise(ref.Name + " is a single substance: bubble and dew are the same, for superheat and for subcooling.")
	}
}

// saturationAtPressure sets the temperatures that belong to a pressure.
func saturationAtPressure(r *calc.Run, ref *refrigerant.Refrigerant, p float64) (bubble, dew refrigerant.Point, ok bool) {
	bubble, err1 := ref.BubbleAtP(p)
	dew, err2 := ref.DewAtP(p)
	if err := either(err1, err2); err != nil {
		refuseState(r, ref, "pressure", err)
		return bubble, dew, false
	}
	stepAbsolute(r, "pressure", p)
	r.Set("bubble-temperature", bubble.T)
	r.Set("dew-temperature", dew.T)
	r.Step("Bubble temperature: the liquid begins to boil", equilibriumFormula(ref), r.OutputText("bubble-temperature"), equationCite(ref))
	r.Step("Dew temperature: the last liquid is gone", equilibriumFormula(ref), r.OutputText("dew-temperature"), equationCite(ref))
	r.Set("glide", dew.T-bubble.T)
	stepGlide(r, bubble.T, dew.T)
	return bubble, dew, true
}

// saturationAtTemperature sets the pressures that belong to a temperature.
func saturationAtTemperature(r *calc.Run, ref *refrigerant.Refrigerant, t float64) (bubble, dew refrigerant.Point, ok bool) {
	bubble, err1 := ref.BubbleAtT(t)
	dew, err2 := ref.DewAtT(t)
	if err := either(err1, err2); err != nil {
		refuseState(r, ref, "temperature", err)
		return bubble, dew, false
	}
	r.Set("bubble-pressure", bubble.P)
	r.Set("dew-pressure", dew.P)
	r.Step("Bubble pressure: liquid at this temperature begins to boil", equilibriumFormula(ref), r.OutputText("bubble-pressure"), equationCite(ref))
	r.Step("Dew pressure: vapour at this temperature begins to condense", equilibriumFormula(ref), r.OutputText("dew-pressure"), equationCite(ref))
	if same, err := ref.DewAtP(bubble.P); err == nil {
		r.Set("glide", same.T-t)
		stepGlide(r, t, same.T)
	}
	return bubble, dew, true
}

func stepGlide(r *calc.Run, bubble, dew float64) {
	r.Step("Glide at this pressure", text.Say("glide = T dew − T bubble = {} − {}", r.Text(unit.Temperature, dew, "C", "F"), r.Text(unit.Temperature, bubble, "C", "F")),
		r.OutputText("glide"), calc.Cite{Key: "practice-79"})
}

// stepAbsolute shows how a gauge reading became absolute.
func stepAbsolute(r *calc.Run, input string, p float64) {
	stepAtmosphere(r)
	r.Step("Absolute pressure", "from "+r.Given(input), unit.Fixedf(p/1000, 2)+" kPa absolute", calc.Cite{Key: "common-practice"})
}

// stepAtmosphere shows the air pressure that the altitude stands for.
func stepAtmosphere(r *calc.Run) {
	r.Step("Local air pressure", "p air = 101 325 Pa × (1 − 2.25577×10⁻⁵ × altitude)^5.2559, altitude "+r.Given("altitude"),
		unit.Fixedf(r.Atmosphere()/1000, 2)+" kPa", calc.Cite{Key: "ashrae-fundamentals", Locator: "Psychrometrics, equation 3"})
}

// lineState judges what is in the pipe from its temperature.
func lineState(r *calc.Run, ref *refrigerant.Refrigerant, bubble, dew float64) {
	line := r.Float("line-temperature")
	show := func(t float64) string { return r.Text(unit.Temperature, t, "C", "F") }
	r.Set("superheat", line-dew)
	r.Set("subcooling", bubble-line)
	r.Step("Superheat, for vapour in the line", text.Say("T line − T dew = {} − {}", show(line), show(dew)), r.OutputText("superheat"), calc.Cite{Key: "practice-79"})
	r.Step("Subcooling, for liquid in the line", text.Say("T bubble − T line = {} − {}", show(bubble), show(line)), r.OutputText("subcooling"), calc.Cite{Key: "practice-79"})
	// Half a kelvin is what two good pipe thermometers disagree by; inside it neither state is proved.
	const doubt = 0.5
	switch {
	case line > dew+doubt:
		r.Conclude("superheated", text.Say("The line is {} above the dew point, so it holds vapour. Use the superheat; the subcooling is negative because there is no liquid.", r.OutputText("superheat")))
		// One manual flags suction superheat below this. That gauge and clamp together err by about as much: common practice, no source.
		const least = 2.0
		few := r.Text(unit.TemperatureDifference, least, "K", "F")
		r.Step("Superheat that is flagged as low", "in a suction line, below", few, calc.Cite{Key: "manual-11"})
		if line < dew+least {
			r.Warn(text.Say("Superheat under {} is no more than gauge and clamp can be wrong by: liquid may be in this line. Measure again before you rely on it.", few))
		}
	case line < bubble-doubt:
		r.Conclude("subcooled", text.Say("The line is {} below the bubble point, so it holds liquid. Use the subcooling; the superheat is negative because there is no vapour.", r.OutputText("subcooling")))
	default:
		r.Conclude("two-phase", "The line is between bubble and dew, or within half a kelvin of them. Both phases are in the pipe, or a reading is off: check the clamp, the gauge and the refrigerant.")
	}
}

// refuseState turns an engine error into a sentence with the range allowed.
func refuseState(r *calc.Run, ref *refrigerant.Refrigerant, input string, err error) {
	tMin, tMax := ref.Range()
	show := func(t float64) string { return r.Text(unit.Temperature, t, "C", "F") }
	sentence := text.Say("{} at {} is outside what is given here: saturation from {} to {}", ref.Name, r.Given(input), show(tMin), show(tMax))
	low, err1 := ref.DewAtT(tMin)
	high, err2 := ref.BubbleAtT(tMax)
	if either(err1, err2) == nil {
		sentence += text.Say(", that is {} to {}", r.Text(unit.Pressure, low.P, pressureUnits...), r.Text(unit.Pressure, high.P, pressureUnits...))
	}
	if err != refrigerant.ErrRange { // it is never wrapped; errors.Is would bring reflection to every phone
		sentence = text.Say("{} at {}: the equations gave no sure answer, so none is shown. Try a value a little away from it", ref.Name, r.Given(input))
	}
	r.Refuse(input, "outside-range", sentence+".")
}

func either(a, b error) error {
	if a != nil {
		return a
	}
	return b
}
