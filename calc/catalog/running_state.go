package catalog

import (
	"changeout/calc"
	"changeout/calc/unit"
)

// RunningState reads a running refrigerant circuit: what returns to the
// compressor, what leaves it, and what the heat exchangers do with it.
var RunningState = &calc.Worksheet{
	ID:    "running-state",
	Title: "Running state",
	Purpose: "What pressures and pipe temperatures say about a running compressor: superheat, subcooling, compression ratio, discharge superheat, " +
		"and whether liquid returns, the evaporator starves or the discharge overheats.",
	Inputs: []calc.Input{
		refrigerantInput(),
		{ID: "mode", Label: "Mode", Kind: calc.Choice, Default: "cooling", Options: []calc.Option{{ID: "cooling", Label: "Cooling"}, {ID: "heating", Label: "Heating"}}},
		{ID: "drive", Label: "Compressor", Kind: calc.Choice, Options: []calc.Option{{ID: "inverter", Label: "Inverter"}, {ID: "fixed", Label: "Fixed speed"}},
			Help: "An inverter's controller sets superheat and subcooling; its targets are in the maker's manual."},
		{ID: "steady", Label: "Steady for", Kind: calc.Quantity, Quantity: unit.Duration, Units: []string{"min", "h"}, Low: 0, High: 86400, BoundReason: "longer than a day says no more",
			Help: "Time since start, defrost, oil return or change of speed. Readings count from 15 min; inverter systems need about an hour in each mode."},
		sidePressure("suction-pressure", "Suction pressure", "At the suction service port.", 1e4, 5e6),
		pipeTemperature("suction-temperature", "Suction pipe temperature", "On the pipe at the compressor, clamped and insulated.", 213.15, 353.15),
		sidePressure("discharge-pressure", "Discharge pressure", "At the discharge service port, read at the same time.", 2e4, 8e6),
		pipeTemperature("discharge-temperature", "Discharge pipe temperature", "On the pipe within 15 cm of the compressor. The valve inside is hotter.", 233.15, 473.15),
		pipeTemperature("liquid-temperature", "Liquid pipe temperature", "Where liquid leaves the condenser.", 213.15, 373.15),
		airTemperature("outdoor-air", "Outdoor air on", "In the shade, into the outdoor coil."),
		airTemperature("indoor-return", "Indoor return air", "Into the indoor coil, mean of the running units."),
		airTemperature("indoor-supply", "Indoor supply air", "Out of the indoor coil."),
		{ID: "reading-error", Label: "Readings may be wrong by", Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Default: "1 K", Low: 0.1, High: 3,
			BoundReason: "a larger error leaves no room inside the bands", Help: "Probe and gauge together: 1 K for a good probe and a class 1 gauge."},
		altitudeInput(),
	},
	Outputs: runningOutputs,
	Verdicts: []calc.Verdict{
		{ID: "overheating", Tone: calc.Stop, Title: "Overheating", Main: []string{"discharge-superheat", "superheat", "ratio"}},
		{ID: "floodback", Tone: calc.Stop, Title: "Liquid returns to the compressor", Main: []string{"superheat", "discharge-superheat"}},
		{ID: "contradiction", Tone: calc.Doubt, Title: "The readings do not agree"},
		{ID: "starving", Tone: calc.Doubt, Title: "The evaporator starves", Main: []string{"superheat", "subcooling"}},
		{ID: "outside", Tone: calc.Doubt, Title: "Outside a general band"},
		{ID: "edge", Tone: calc.Doubt, Title: "At the end of a general band"},
		{ID: "not-enough", Tone: calc.Doubt, Title: "Not enough readings to judge"},
		{ID: "not-steady", Tone: calc.Doubt, Title: "Too early to judge"},
		{ID: "in-bands", Tone: calc.Info, Title: "Inside the general bands"},
	},
	Compute: runningState,
	Limits: []string{
		"The maker's values for this unit come before every band here.",
		"Do not use it during defrost, oil return, start-up or a change of speed.",
		"Do not charge an inverter multi-split by these readings: its controller sets them.",
		"Gas or liquid injected into the compressor makes the ideal compression and the efficiency meaningless.",
		"One pressure serves for the whole high side. Pressure lost between the ports counts as subcooling or superheat.",
		"Mixed gas, air, or a blend that has leaked does not follow these saturation lines. Near and above the critical point there is no answer.",
	},
	Cautions: []calc.Caution{
		{Signal: "WARNING", Hazard: "Refrigerant and oil leave a port as a jet under pressure.", Consequence: "It can freeze skin and blind.",
			Avoid: "Wear goggles and gloves. Open gauge valves slowly."},
		{Signal: "CAUTION", Hazard: "The discharge pipe is hot, and fans start by themselves.", Consequence: "Burns and cut fingers.",
			Avoid: "Clamp probes before the start. Keep hands and clothing clear."},
	},
	Sources: append([]string{"common-practice", "makers-manual", "ashrae-fundamentals", "cengel-boles", "practice-9", "practice-10", "practice-11", "practice-15", "practice-16", "practice-75", "practice-79",
		"manual-8", "manual-11", "manual-12", "manual-49", "manual-50"}, equationKeys...),
	Example: []calc.Field{
		{Input: "refrigerant", Text: "R-410A"}, {Input: "drive", Text: "inverter"}, {Input: "steady", Text: "60 min"},
		{Input: "suction-pressure", Text: "7.4 barg"}, {Input: "suction-temperature", Text: "3.5 C"}, {Input: "discharge-pressure", Text: "24.5 barg"},
		{Input: "discharge-temperature", Text: "52 C"}, {Input: "liquid-temperature", Text: "36 C"}, {Input: "outdoor-air", Text: "30 C"},
		{Input: "indoor-return", Text: "25 C"}, {Input: "indoor-supply", Text: "9 C"},
	},
}

var runningOutputs = []calc.Output{
	{ID: "superheat", Label: "Suction superheat, from dew", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
	{ID: "discharge-superheat", Label: "Discharge superheat, from dew", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
	{ID: "subcooling", Label: "Subcooling, from bubble", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
	{ID: "ratio", Label: "Compression ratio", Quantity: unit.Fraction, Units: []string{"1"}, Significant: 3, Main: true},
	{ID: "evaporating", Label: "Evaporating temperature, mid-point", Quantity: unit.Temperature, Units: []string{"C", "F"}},
	{ID: "condensing", Label: "Condensing temperature, mid-point", Quantity: unit.Temperature, Units: []string{"C", "F"}},
	{ID: "ideal-discharge", Label: "Discharge temperature of an ideal compression", Quantity: unit.Temperature, Units: []string{"C", "F"}},
	{ID: "efficiency", Label: "Implied isentropic efficiency", Quantity: unit.Fraction, Units: []string{"%"}},
	{ID: "condensing-difference", Label: "Condensing temperature less air", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
	{ID: "evaporating-difference", Label: "Air less evaporating temperature", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
	{ID: "air-change", Label: "Indoor air, change through the coil", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
}

func sidePressure(id, label, help string, low, high float64) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, Kind: calc.Quantity, Quantity: unit.Pressure, Units: pressureUnits,
		Low: low, High: high, BoundReason: "compressors of this trade run between these"}
}

func pipeTemperature(id, label, help string, low, high float64) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: true,
		Low: low, High: high, BoundReason: "the pipe of a running unit stays between these"}
}

func airTemperature(id, label, help string) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: true,
		Low: 233.15, High: 333.15, BoundReason: "the air that these units meet"}
}
