package catalog

import (
	"changeout/calc"
	"changeout/calc/property/water"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// WaterPoint answers what a vacuum reading means for water, both ways.
var WaterPoint = &calc.Worksheet{
	ID:      "water-point",
	Title:   "Water point",
	Purpose: "The temperature at which water boils or ice turns to vapour at a vacuum reading, or the pressure for a temperature. What it means for your pipes.",
	Inputs: []calc.Input{
		{ID: "pressure", Label: "Vacuum reading", Kind: calc.Quantity, Quantity: unit.VacuumPressure, Units: append(vacuumUnits, "kPa"), Optional: true,
			Low: 0.1, High: 140e3, BoundReason: "from the lowest field reading to above the atmosphere", Help: "Absolute, at the far end. Enter a reading or a water temperature, not both."},
		{ID: "temperature", Label: "Water temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Optional: true,
			Low: 198.15, High: 373.15, BoundReason: "from the coldest ice on a site to the boiling point in open air", Help: "To find the pressure that belongs to it."},
		{ID: "pipe", Label: "Coldest pipe temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Optional: true,
			Low: 223.15, High: 353.15, BoundReason: "from the coldest roof to a warmed pipe", Help: "Measured, where water could stand. Without it the ambient will do, less a few kelvin in the shade."},
	},
	Outputs: []calc.Output{
		{ID: "boiling-point", Label: "Water boils or ice turns to vapour at", Quantity: unit.Temperature, Units: celsius, Main: true},
		{ID: "saturation", Label: "Water holds", Quantity: unit.VacuumPressure, Units: vacuumUnits, Significant: 4, Main: true},
		{ID: "pipe-saturation", Label: "Free water or ice in the coldest pipe would hold", Quantity: unit.VacuumPressure, Units: vacuumUnits, Significant: 4},
		{ID: "margin", Label: "Coldest pipe above that point", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "liquid", Tone: calc.Info, Title: "Water boils as a liquid here"},
		{ID: "frozen", Tone: calc.Doubt, Title: "Below the freezing pressure: water can be ice"},
		{ID: "water-stays", Tone: calc.Stop, Title: "Water can stay in the coldest pipe", Main: []string{"pipe-saturation", "boiling-point", "saturation"}},
		{ID: "ice-can-hide", Tone: calc.Stop, Title: "Ice can hide behind this reading", Main: []string{"pipe-saturation", "boiling-point", "saturation"}},
		{ID: "water-leaves", Tone: calc.Info, Title: "Free water does not stay in the warm pipe", Main: []string{"pipe-saturation", "boiling-point", "saturation"}},
	},
	Compute: waterPoint,
	Limits: []string{
		"It is for free water and ice. Water bound in oil holds a lower pressure and leaves slowly.",
		"A gauge at the pump reads the pump. Use the reading of the far end.",
		"A reading with the pump running is lower than what the water holds. Isolate first.",
	},
	Cautions: []calc.Caution{{Signal: "NOTICE", Hazard: "Pressure destroys a vacuum gauge.", Consequence: "It then reads wrong without showing it.",
		Avoid: "Isolate or remove the gauge before you break the vacuum."}},
	Sources: []string{"iapws-r14-08", "wagner-pruss-2002", "if97", "coolprop-8", "practice-67", "common-practice"},
	Example: []calc.Field{{Input: "pressure", Text: "1500 micron"}, {Input: "pipe", Text: "12 C"}},
}

func waterPoint(r *calc.Run) {
	byPressure := r.Has("pressure")
	if byPressure == r.Has("temperature") {
		if byPressure {
			r.Refuse("temperature", "both-given", "Vacuum reading and water temperature are both given; clear one of them.")
		} else {
			r.Refuse("pressure", calc.Missing, "Vacuum reading is missing: enter a reading, or a water temperature instead.")
		}
		return
	}
	var p, t float64
	if byPressure {
		p = r.Float("pressure")
		t, _ = water.BoilingTemperature(p)
		r.Set("boiling-point", t)
		r.Step(pointName(t), "p saturation(T) = "+r.Given("pressure"), r.OutputText("boiling-point"), waterCite(t))
	} else {
		t = r.Float("temperature")
		p, _ = water.SaturationPressure(t)
		r.Set("saturation", p)
		r.Step("Saturation pressure of water", "p saturation("+r.Given("temperature")+")", r.OutputText("saturation"), waterCite(t))
	}
	if !r.Has("pipe") {
		if t < water.TripleTemperature {
			r.Conclude("frozen", "Below 4588 micron (611.7 Pa) there is no liquid water, only ice and vapour. Ice leaves slowly.")
			r.Advise("Measure the coldest pipe and warm it above 10 °C, so that ice cannot hide.")
		} else {
			r.Conclude("liquid", "Free water warmer than this point boils; colder water stays.")
			r.Advise("Enter the coldest pipe temperature to see what it means for this system.")
		}
		return
	}
	judgePipe(r, p, t, r.Float("pipe"))
}

func pointName(t float64) string {
	if t < water.TripleTemperature {
		return "Ice turns to vapour at"
	}
	return "Water boils at"
}

func waterCite(t float64) calc.Cite {
	if t < water.TripleTemperature {
		return calc.Cite{Key: "iapws-r14-08", Locator: "equation 6"}
	}
	return calc.Cite{Key: "wagner-pruss-2002", Locator: "equation 2.5"}
}

// judgePipe compares the point with the coldest pipe.
func judgePipe(r *calc.Run, p, t, pipe float64) {
	hold, _ := water.SaturationPressure(pipe)
	r.Set("pipe-saturation", hold)
	r.Set("margin", pipe-t)
	r.Step("Free water or ice in the coldest pipe would hold", "p saturation("+r.Given("pipe")+")", r.OutputText("pipe-saturation"), waterCite(pipe))
	r.Step("Coldest pipe above the point", "T pipe − T", r.OutputText("margin"), calc.Cite{Key: "common-practice"})
	holds, at := r.OutputText("pipe-saturation"), r.Text(unit.VacuumPressure, p, "micron")
	// Two kelvin is what a pipe thermometer and a gauge together can be out by.
	const doubt = 2
	switch {
	case pipe <= water.TripleTemperature:
		r.Conclude("ice-can-hide", text.Say("The pipe is at freezing or below, where ice holds only {}. A reading of {} does not show that it is gone.", holds, at))
		r.Advise("Warm the whole pipe above 10 °C, then pull and hold again.")
	case pipe < t+doubt:
		r.Conclude("water-stays", text.Say("Water in the coldest pipe holds {}. At {} it does not boil, or hardly.", holds, at))
		r.Advise("Pull lower or warm the pipe. A target of 500 micron leaves a margin in any pipe above freezing.")
	default:
		r.Conclude("water-leaves", text.Say("Free water in the coldest pipe would hold {}. An isolated, steady {} is therefore no puddle.", holds, at))
		r.Advise("A steady reading at this level comes from water in the oil, refrigerant leaving the oil, or a spot colder than the one you measured. Feel for cold spots and warm them.")
		if t < water.TripleTemperature {
			r.Warn("A spot that boiling has chilled can be ice, whatever the rest of the pipe measures.")
		}
	}
}
