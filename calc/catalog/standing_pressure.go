package catalog

import (
	"changeout/calc"
	"changeout/calc/unit"
)

var (
	twoReadings = []calc.When{{Input: "entry", Is: []string{"two"}}}
	readingLog  = []calc.When{{Input: "entry", Is: []string{"log"}}}
	testUnits   = []string{"barg", "MPag", "kPag", "psig"}
)

// StandingPressure judges a standing pressure test with nitrogen.
var StandingPressure = &calc.Worksheet{
	ID:    "standing-pressure",
	Title: "Standing pressure test",
	Purpose: "Whether nitrogen stayed in: the pressure that real nitrogen should show after the change of temperature, " +
		"what the readings can prove, and what the compressed gas could do.",
	Inputs: standingInputs(),
	Outputs: []calc.Output{
		{ID: "expected", Label: "Expected if tight", Quantity: unit.Pressure, Units: testUnits, Main: true},
		{ID: "loss", Label: "Pressure missing at the end", Below: "Pressure gained at the end", Quantity: unit.PressureDifference, Units: []string{"kPa", "psi"}, Main: true},
		{ID: "doubt", Label: "Possible error of the readings (±)", Quantity: unit.PressureDifference, Units: []string{"kPa", "psi"}, Main: true},
		{ID: "ideal", Label: "Expected of an ideal gas", Quantity: unit.Pressure, Units: testUnits},
		{ID: "slope", Label: "Pressure for each kelvin (1.8 °F)", Quantity: unit.PressureDifference, Units: []string{"kPa", "psi"}},
		{ID: "hidden", Label: "A loss that could still hide", Quantity: unit.PressureDifference, Units: []string{"kPa", "psi"}},
		{ID: "leak-rate", Label: "Leak at test pressure", Quantity: unit.LeakRate},
		{ID: "hidden-rate", Label: "Leak at test pressure that could still hide", Quantity: unit.LeakRate},
		{ID: "energy", Label: "Stored energy", Quantity: unit.Energy, Units: []string{"kJ"}, Significant: 3},
		{ID: "stand-off", Label: "Distance for people while pressure is raised, plant standard", Quantity: unit.Length, Units: []string{"m", "ft"}, Significant: 2},
		{ID: "stage-1", Label: "Stage 1, at least 3 min", Quantity: unit.Pressure, Units: testUnits},
		{ID: "stage-2", Label: "Stage 2, 3 to 5 min", Quantity: unit.Pressure, Units: testUnits},
		{ID: "stage-3", Label: "Stage 3, the unit's limit", Quantity: unit.Pressure, Units: testUnits},
	},
	Verdicts: []calc.Verdict{
		{ID: "tight", Tone: calc.Good, Title: "No leak shown", Main: []string{"loss", "doubt", "hidden"}},
		{ID: "leak", Tone: calc.Stop, Title: "Leak", Main: []string{"loss", "doubt"}},
		{ID: "small-rise", Tone: calc.Stop, Title: "Leak: it rose too little", Main: []string{"loss", "expected"}},
		{ID: "cannot-tell", Tone: calc.Doubt, Title: "Cannot tell", Main: []string{"hidden", "loss", "doubt"}},
		{ID: "gained", Tone: calc.Doubt, Title: "Too high: the readings do not agree", Main: []string{"loss", "doubt"}},
		{ID: "over-limit", Tone: calc.Stop, Title: "Above the unit's limit: lower it now", Main: []string{"stand-off", "stage-3"}},
	},
	Compute: standingPressure,
	Limits: []string{
		"Do not use it before the gas has settled: 15 to 30 min after filling, out of the sun.",
		"Do not use it with refrigerant still inside, or with a regulator still connected.",
		"A closed valve hides half the system. Only the part with the gauge is tested.",
		"No pressure test sees a few grams a year. Bubble every joint as well.",
	},
	Cautions: []calc.Caution{
		{Signal: "DANGER", Hazard: "Oxygen, air or fuel gas as test gas explodes with oil.", Consequence: "The system bursts and kills.", Avoid: "Use dry nitrogen only, through a regulator with a relief valve."},
		{Signal: "WARNING", Hazard: "Compressed nitrogen holds energy. Above 100 kJ counts as highly hazardous.", Consequence: "A part that lets go can kill.",
			Avoid: "Stay within the maker's limit. Raise it in stages with people away. Never tighten a joint under pressure."},
	},
	Sources: []string{"span-jpcrd-2000", "practice-62", "practice-63", "gas-law-note", "en-837-1", "jcgm-100", "ul60335", "asme-pcc-2", "asme-pcc-2-later", "berkeley-energy", "makers-manual", "manual-2", "common-practice", "coolprop-8"},
	Example: []calc.Field{{Input: "entry", Text: "log"}, {Input: "log", Text: "hours;pressure_barg;temperature_C\n0;40.00;27\n4;39.42;23\n10;38.80;19\n14;38.62;18\n20;39.85;26"},
		{Input: "gauge-class", Text: "0.1 %"}, {Input: "gauge-range", Text: "60 barg"}, {Input: "temperature-error", Text: "0.5 K"}, {Input: "volume", Text: "60 L"}, {Input: "limit", Text: "41.5 barg"}},
}

func standingInputs() []calc.Input {
	pressure := func(id, label, help string) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, When: twoReadings, Kind: calc.Quantity, Quantity: unit.Pressure, Units: testUnits,
			Low: 1.2e5, High: 8e6, BoundReason: "from just above the atmosphere to above any test pressure"}
	}
	temperature := func(id, label, help string, optional bool) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, When: twoReadings, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: optional,
			Low: 233.15, High: 343.15, BoundReason: "weather and sun on a pipe"}
	}
	return []calc.Input{
		{ID: "entry", Label: "Readings", Kind: calc.Choice, Default: "two", Options: []calc.Option{{ID: "two", Label: "Start and end"}, {ID: "log", Label: "A log of several"}}},
		pressure("start-pressure", "Pressure at the start", "After the gas has settled, cylinder disconnected."),
		temperature("start-temperature", "Pipe temperature at the start", "On the pipe, insulated, in the shade.", false),
		temperature("start-air", "Air temperature at the start", "In the shade. Far from the pipe's, neither is sure.", true),
		pressure("end-pressure", "Pressure at the end", "The same gauge."),
		temperature("end-temperature", "Pipe temperature at the end", "The same place.", false),
		temperature("end-air", "Air temperature at the end", "In the shade.", true),
		{ID: "hold", Label: "Time between", When: twoReadings, Kind: calc.Quantity, Quantity: unit.Duration, Units: []string{"h", "min"}, Low: 60, High: 30 * 86400, BoundReason: "a minute to a month"},
		{ID: "log", Label: "Log", When: readingLog, Kind: calc.Series, MinRows: 2, MaxRows: 2000, Help: "Time, pressure and pipe temperature, one row a reading.", Columns: []calc.Column{
			{ID: "time", Label: "Time", Names: []string{"time", "clock", "hours", "minutes", "elapsed"}, Quantity: unit.Duration, Units: []string{"h", "min", "s"}, Low: 0, High: 30 * 86400, Clock: true},
			{ID: "pressure", Label: "Pressure", Names: []string{"pressure", "gauge", "p"}, Quantity: unit.Pressure, Units: testUnits, Low: 1.2e5, High: 8e6},
			{ID: "temperature", Label: "Temperature", Names: []string{"temperature", "temp", "pipe", "t"}, Quantity: unit.Temperature, Units: []string{"C", "F"}, Low: 233.15, High: 343.15},
		}},
		{ID: "gauge-class", Label: "Gauge class", Kind: calc.Quantity, Quantity: unit.Fraction, Units: []string{"%"}, Low: 1e-4, High: 0.05, BoundReason: "classes of gauges", Help: "On the dial or data sheet: greatest error in % of full scale. A dial manifold is often 1 or 1.6."},
		{ID: "gauge-range", Label: "Full scale of the gauge", Kind: calc.Quantity, Quantity: unit.Pressure, Units: testUnits, Low: 2e5, High: 1e8, BoundReason: "gauges for this work"},
		{ID: "temperature-error", Label: "Greatest error of a temperature", Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Default: "1 K", Low: 0.05, High: 10, BoundReason: "from a laboratory probe to a guess", Help: "How far the gas may be from what you read."},
		{ID: "volume", Label: "Inside volume under test", Kind: calc.Quantity, Quantity: unit.Volume, Units: []string{"L", "ft3"}, Optional: true, Low: 1e-4, High: 20, BoundReason: "from a coil to a large plant", Help: "Pipes, coils and vessels. Gives leak rate and stored energy."},
		{ID: "limit", Label: "Highest test pressure of the unit", Kind: calc.Quantity, Quantity: unit.Pressure, Units: testUnits, Optional: true, Low: 2e5, High: 2e7, BoundReason: "nameplates and manuals", Help: "From the nameplate or manual; the lowest of all parts connected."},
		altitudeInput(),
	}
}
