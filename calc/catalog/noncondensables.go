package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/cycle"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Noncondensables compares a stopped circuit's pressure with saturation.
var Noncondensables = &calc.Worksheet{
	ID:    "noncondensables",
	Title: "Non-condensables",
	Purpose: "Whether a stopped circuit holds air, nitrogen or a wrong gas: its equalised pressure against saturation at the temperature " +
		"of its liquid, with what gauge and thermometer leave open.",
	Inputs: []calc.Input{
		refrigerantInput(),
		{ID: "liquid", Label: "Liquid in the section", Kind: calc.Choice, Options: []calc.Option{{ID: "yes", Label: "Most of the charge, for certain"}, {ID: "unsure", Label: "Not sure, or a leak is known"}},
			Help: "Without liquid the pressure says nothing about saturation."},
		{ID: "section", Label: "Open section", Kind: calc.Choice, Options: []calc.Option{{ID: "outdoor", Label: "Outdoor unit alone, its valves closed"}, {ID: "whole", Label: "Whole circuit, all valves open"}},
			Help: "In an open circuit the liquid gathers at the coldest place and sets the pressure there."},
		{ID: "pressure", Label: "Standing pressure", Kind: calc.Quantity, Quantity: unit.Pressure, Units: pressureUnits,
			Low: lowestPressure, High: highestPressure, BoundReason: "from a deep vacuum to above any field gauge", Help: "Compressor off, high and low side equal."},
		standingTemperature("air-on", "Air onto the outdoor coil", "With the outdoor fan running and the coil in shade.", false, nil),
		standingTemperature("air-off", "Air off the outdoor coil", "Equal to air-on within 1 K when the coil has settled.", true, nil),
		standingTemperature("liquid-temperature", "Liquid pipe or coil bend", "Insulated probe on a part that holds liquid.", true, nil),
		standingTemperature("coldest", "Coldest indoor coil", "On the pipe, or the room air there.", false, []calc.When{{Input: "section", Is: []string{"whole"}}}),
		{ID: "gauge-class", Label: "Gauge class", Kind: calc.Quantity, Quantity: unit.Fraction, Units: []string{"%"}, Default: "1 %", Low: 0.0005, High: 0.05,
			BoundReason: "from a reference gauge to a worn one", Help: "Limit of error, per cent of full scale, as printed on the dial or in the manual."},
		{ID: "gauge-span", Label: "Gauge full scale", Kind: calc.Quantity, Quantity: unit.PressureDifference, Units: []string{"bar", "kPa", "psi"}, Default: "55 bar", Low: 5e5, High: 2e7,
			BoundReason: "gauges of this trade"},
		{ID: "thermometer", Label: "Thermometer error", Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Default: "0.5 K", Low: 0.05, High: 5,
			BoundReason: "a larger error decides nothing", Help: "Two good pipe probes differ by about half a kelvin."},
		altitudeInput(),
	},
	Outputs: []calc.Output{
		{ID: "excess", Label: "Pressure above saturation, bubble", Quantity: unit.PressureDifference, Units: []string{"kPa", "bar", "psi"}, Main: true},
		{ID: "excess-temperature", Label: "The same as a temperature", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
		{ID: "error", Label: "Error of the comparison, either side", Quantity: unit.PressureDifference, Units: []string{"kPa", "bar", "psi"}, Main: true},
		{ID: "most", Label: "Most that other gas can add", Quantity: unit.PressureDifference, Units: []string{"kPa", "bar", "psi"}},
		{ID: "bubble-pressure", Label: "Saturation pressure, bubble", Quantity: unit.Pressure, Units: pressureUnits},
		{ID: "dew-pressure", Label: "Saturation pressure, dew", Quantity: unit.Pressure, Units: pressureUnits},
	},
	Verdicts: []calc.Verdict{
		{ID: "suspect", Tone: calc.Stop, Title: "Air, or a wrong or mixed gas", Main: []string{"excess", "error"}},
		{ID: "no-sign", Tone: calc.Info, Title: "No sign of other gas", Main: []string{"most", "excess", "error"}},
		{ID: "below", Tone: calc.Doubt, Title: "Below saturation: this proves nothing", Main: []string{"excess", "error"}},
		{ID: "not-settled", Tone: calc.Doubt, Title: "Not settled"},
		{ID: "open", Tone: calc.Doubt, Title: "Cannot tell", Main: []string{"excess", "error"}},
	},
	Compute: noncondensables,
	Limits: []string{
		"Do not use it while the compressor runs, or before both sides are equal: closed electronic valves trap sections.",
		"Do not use it when no liquid is left, or when a closed section is packed full of liquid. Packed liquid also reads above saturation.",
		"Do not use it before the coil has settled, or with sun on the coil.",
		"Do not use it when the refrigerant is not known. A leaked blend has other saturation pressures.",
		"It cannot tell air from nitrogen or from another refrigerant, and it cannot see little of them.",
	},
	Cautions: []calc.Caution{
		{Signal: "WARNING", Hazard: "Refrigerant leaves a port as a jet under pressure.", Consequence: "It can freeze skin and blind.", Avoid: "Wear goggles and gloves. Open gauge valves slowly."},
		{Signal: "WARNING", Hazard: "Liquid shut in between two valves has no room to expand.", Consequence: "Warmth can burst the section.", Avoid: "Leave a gas space or a relief path in what you shut off."},
	},
	Sources: append([]string{"common-practice", "ashrae-fundamentals", "practice-79", "en-837-1", "jcgm-100"}, equationKeys...),
	Example: []calc.Field{
		{Input: "refrigerant", Text: "R-410A"}, {Input: "liquid", Text: "yes"}, {Input: "section", Text: "outdoor"}, {Input: "pressure", Text: "19.6 barg"},
		{Input: "air-on", Text: "28 C"}, {Input: "air-off", Text: "28.4 C"}, {Input: "liquid-temperature", Text: "28.2 C"}, {Input: "gauge-class", Text: "0.5 %"},
	},
}

func standingTemperature(id, label, help string, optional bool, when []calc.When) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, Optional: optional, When: when, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"},
		Low: 243.15, High: 333.15, BoundReason: "outdoor units stand between these"}
}

func noncondensables(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	low, high, given := math.Inf(1), math.Inf(-1), 0
	for _, id := range []string{"air-on", "air-off", "liquid-temperature", "coldest"} {
		if r.Has(id) {
			low, high, given = math.Min(low, r.Float(id)), math.Max(high, r.Float(id)), given+1
		}
	}
	T, spread := (low+high)/2, high-low
	p := r.Float("pressure")
	gauge := r.Float("gauge-class") * r.Float("gauge-span")
	s, err := cycle.AtRest(ref, p, T, gauge, r.Float("thermometer")+spread/2)
	if err != nil {
		refuseState(r, ref, "air-on", err)
		return
	}
	if p-r.Atmosphere() > r.Float("gauge-span") {
		r.Refuse("gauge-span", calc.TooLow, text.Say("Gauge full scale: {} is below the reading of {}; enter the full scale of the gauge that was read.", r.Given("gauge-span"), r.Given("pressure")))
		return
	}
	bar := func(v float64) string { return r.Text(unit.PressureDifference, v, "kPa", "bar", "psi") }
	kelvin := func(v float64) string { return r.Text(unit.TemperatureDifference, v, "K", "F") }
	practice := calc.Cite{Key: "common-practice"}
	stepAbsolute(r, "pressure", p)
	r.Step("Temperature of the liquid", text.Say("middle of the temperatures given, which differ by {}", kelvin(spread)), r.Text(unit.Temperature, T, "C", "F"), practice)
	r.Set("bubble-pressure", s.Bubble)
	r.Set("dew-pressure", s.Dew)
	r.Step("Bubble pressure: liquid of the full blend", equilibriumFormula(ref), r.OutputText("bubble-pressure"), equationCite(ref))
	r.Step("Dew pressure: the last drop of liquid", equilibriumFormula(ref), r.OutputText("dew-pressure"), equationCite(ref))
	r.Set("excess", s.Excess)
	r.Step("Pressure above saturation", "p − p bubble, because the liquid has the composition of the blend", r.OutputText("excess"), calc.Cite{Key: "practice-79"})
	if b, err := ref.BubbleAtP(p); err == nil {
		r.Set("excess-temperature", b.T-T)
		r.Step("As a temperature", text.Say("T bubble(p) − T = {} − {}", r.Text(unit.Temperature, b.T, "C", "F"), r.Text(unit.Temperature, T, "C", "F")), r.OutputText("excess-temperature"), equationCite(ref))
	}
	r.Step("Error of the gauge", text.Say("class × full scale = {} × {}", r.Given("gauge-class"), r.Given("gauge-span")), bar(gauge), calc.Cite{Key: "en-837-1", Locator: "accuracy classes"})
	r.Set("error", s.Error)
	r.Step("Error of the comparison", text.Say("√(gauge² + thermometer²), temperature known within {}", kelvin(r.Float("thermometer")+spread/2)), r.OutputText("error"), calc.Cite{Key: "jcgm-100"})
	r.Step("Rule", "up to 30 kPa (0.3 bar, 5 psi) is scatter, above 70 kPa (0.7 bar, 10 psi) is suspect", r.OutputText("excess"), practice)
	most := s.Excess + s.Error
	liquid := r.Choice("liquid") == "yes"
	if liquid && most > 0 {
		r.Set("most", most)
		r.Step("Most that other gas can add", "excess + error", r.OutputText("most"), practice)
	}
	settled := given > 1 && spread <= cycle.StandingSettled
	switch {
	case given < 2:
		r.Conclude("not-settled", "One temperature does not show that the coil has settled. Measure air-off or the liquid pipe too.")
		r.Advise("Run the outdoor fan, compressor locked out, until air-on and air-off agree within 0.5 to 1 K.")
	case !settled:
		r.Conclude("not-settled", text.Say("The temperatures differ by {}, more than {}. The liquid's own temperature is not known.", kelvin(spread), kelvin(cycle.StandingSettled)))
		r.Advise("Wait, in shade, with the outdoor fan on. If indoors is colder, test the outdoor unit alone.")
	case s.Excess > cycle.StandingSuspect && s.Excess > s.Error:
		r.Conclude("suspect", text.Say("The pressure is {} above saturation, more than the error of {} and the rule of {} allow.", bar(s.Excess), bar(s.Error), bar(cycle.StandingSuspect)))
		r.Advise("Check the refrigerant's name and the gauge zero. Then treat the gas as mixed: recover all of it into its own cylinder, find the way in, evacuate.")
		r.Advise("Do not vent it and do not top it up. A section packed full of liquid reads high too: rule that out first.")
	case s.Excess < -math.Max(cycle.StandingScatter, s.Error):
		between := ""
		if s.Dew < s.Bubble && p > s.Dew {
			between = " For this blend little liquid, or a leaked composition, lies between dew and bubble."
		}
		r.Conclude("below", text.Say("The pressure is {} below saturation. Liquid is missing, colder elsewhere, or the refrigerant is another one; other gas can hide below it.{}", bar(-s.Excess), between))
		r.Advise("Compare all ports. If all are low, expect a lost charge: find the leak, and weigh what comes out.")
	case liquid && math.Abs(s.Excess) <= cycle.StandingScatter && most <= cycle.StandingSuspect:
		r.Conclude("no-sign", text.Say("The pressure agrees with saturation. Up to {} of other gas could still be there unseen.", bar(most)))
		r.Advise("Write pressure, temperatures and gauge down. A running head pressure that is too high has another cause first.")
	case !liquid:
		r.Conclude("open", "Without liquid for certain, refrigerant and other gas can add up to any pressure up to this one.")
		r.Advise("Recover and weigh. Less than the design charge with a pressure near saturation suggests other gas.")
	default:
		r.Conclude("open", text.Say("The difference is {}, with an error of {} either side: too near the limits to judge.", bar(s.Excess), bar(s.Error)))
		r.Advise("Settle longer, zero or change the gauge, and read again.")
	}
	if len(ref.Components) > 1 {
		r.Advise("Bubble counts while most of the charge is liquid. The vapour line, dew, lies lower and would make air out of sound gas.")
	}
}
