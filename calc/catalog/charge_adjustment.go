package catalog

import (
	"changeout/calc"
	"changeout/calc/unit"
)

// ChargeAdjustment answers how much refrigerant to add or to take out.
var ChargeAdjustment = &calc.Worksheet{
	ID:    "charge-adjustment",
	Title: "Charge adjustment",
	Purpose: "How much refrigerant to add or take out. By weight for every system; by readings only for single splits, " +
		"where superheat or subcooling is a sign of charge.",
	Inputs:   chargeInputs(),
	Outputs:  chargeOutputs,
	Verdicts: chargeVerdicts,
	Compute:  chargeAdjustment,
	Limits: []string{
		"The unit's own charge table overrides every factor here.",
		"Do not trim an inverter multi-split by readings: its controller sets superheat and subcooling.",
		"Do not charge by readings before airflow is proved, or before 15 minutes of steady running.",
		"Do not top up a leak. Find it, repair it, and weigh in the whole charge.",
		"The room check is the bare formula of one edition. The rest of the standard, the unit's manual and the local code govern.",
	},
	Cautions: []calc.Caution{
		{Signal: "WARNING", Hazard: "A closed section full of liquid has no room to expand.",
			Consequence: "A rise of temperature can burst it.",
			Avoid:       "Never close two valves on liquid. Keep a relief path while you charge."},
		{Signal: "WARNING", Hazard: "Refrigerant that leaks into a small room displaces air, and some refrigerants burn.",
			Consequence: "People can suffocate or be burned.",
			Avoid:       "Keep the total charge below the limit for the smallest room. Local codes govern."},
		{Signal: "WARNING", Hazard: "Liquid refrigerant boils on skin.", Consequence: "It freezes skin and can blind.",
			Avoid: "Wear goggles and insulated gloves. Let hoses empty into the unit before you open them."},
	},
	Sources: append([]string{"makers-manual", "common-practice", "manual-44", "manual-45", "manual-46", "manual-47", "manual-48", "astm-b280", "ashrae-34", "a15int4", "a15g", "vrf", "imc", "practice-75",
		"practice-76", "practice-77", "ashrae-fundamentals", "from-memory", "iect", "iecp", "gg2-areas", "r32-cap-manual", "a2l-charge-page"}, equationKeys...),
	Example: []calc.Field{
		{Input: "system", Text: "inverter-multi-split"}, {Input: "method", Text: "weight"}, {Input: "refrigerant", Text: "R-410A"},
		{Input: "nameplate", Text: "9.4 kg"}, {Input: "lines", Text: "size_mm;length_m;factor_kg/m\n6.35;12;0.022\n9.52;28;0.061"},
		{Input: "indoor-units", Text: "count;extra_kg\n6;0.1\n2;0.25"}, {Input: "already", Text: "0 kg"}, {Input: "recovered", Text: "9.1 kg"}, {Input: "room-volume", Text: "60 m3"},
	},
}

var (
	byWeight       = []calc.When{{Input: "method", Is: []string{"weight"}}}
	byReadings     = []calc.When{{Input: "method", Is: []string{"readings"}}}
	singleSplit    = append(byReadings[:1:1], calc.When{Input: "system", Is: []string{"single-split-fixed", "single-split-valve"}})
	fixedOrifice   = append(byReadings[:1:1], calc.When{Input: "system", Is: []string{"single-split-fixed"}})
	expansionValve = append(byReadings[:1:1], calc.When{Input: "system", Is: []string{"single-split-valve"}})
)

var chargeOutputs = []calc.Output{
	{ID: "adjustment", Label: "Still to add", Below: "To take out", Quantity: unit.Mass, Units: []string{"kg", "lb"}, Main: true},
	{ID: "total-charge", Label: "Total charge by calculation", Quantity: unit.Mass, Units: []string{"kg", "lb"}, Main: true},
	{ID: "line-charge", Label: "In the liquid lines", Quantity: unit.Mass, Units: []string{"kg", "lb"}},
	{ID: "recovered-share", Label: "Recovered, against the calculation", Quantity: unit.Fraction, Units: []string{"%"}},
	{ID: "smallest-area", Label: "Smallest room: floor area", Quantity: unit.Area, Units: []string{"m2", "ft2"}},
	{ID: "smallest-volume", Label: "Smallest room: volume", Quantity: unit.Volume, Units: []string{"m3", "ft3"}},
	{ID: "room-allowance", Label: "Most that the smallest room may receive", Quantity: unit.Mass, Units: []string{"kg", "lb"}},
	{ID: "room-concentration", Label: "Concentration if all of it leaked there", Quantity: unit.Concentration, Units: []string{"g/m3", "lb/1000ft3"}},
	{ID: "target-superheat", Label: "Superheat target", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
	{ID: "superheat", Label: "Superheat measured", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
	{ID: "subcooling", Label: "Subcooling measured", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
	{ID: "difference", Label: "Measured less target", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
	{ID: "first-step", Label: "First step", Quantity: unit.Mass, Units: []string{"g", "oz", "kg", "lb"}, Significant: 2, Main: true},
}

var chargeVerdicts = []calc.Verdict{
	{ID: "add", Tone: calc.Info, Title: "Add refrigerant", Main: []string{"adjustment", "first-step", "total-charge", "superheat", "subcooling"}},
	{ID: "take-out", Tone: calc.Info, Title: "Take refrigerant out", Main: []string{"adjustment", "first-step", "total-charge", "superheat", "subcooling"}},
	{ID: "as-calculated", Tone: calc.Good, Title: "Charge as calculated", Main: []string{"total-charge", "adjustment"}},
	{ID: "leave", Tone: calc.Good, Title: "Leave the charge as it is", Main: []string{"superheat", "subcooling", "difference"}},
	{ID: "room-limit", Tone: calc.Stop, Title: "Too much for the smallest room: do not charge", Main: []string{"total-charge", "room-allowance", "smallest-area"}},
	{ID: "room-first", Tone: calc.Doubt, Title: "Check the smallest room first", Main: []string{"total-charge", "smallest-area"}},
	{ID: "weigh-in", Tone: calc.Stop, Title: "Do not charge by readings: weigh the charge in", Main: []string{"target-superheat"}},
}

func chargeInputs() []calc.Input {
	mass := func(id, label, help string, optional bool, low float64) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, When: byWeight, Kind: calc.Quantity, Quantity: unit.Mass, Units: massUnits,
			Optional: optional, Low: low, High: 1000, BoundReason: "larger plants are not charged from a worksheet"}
	}
	inputs := []calc.Input{
		{ID: "system", Label: "System", Kind: calc.Choice, Options: []calc.Option{
			{ID: "inverter-multi-split", Label: "Inverter multi-split", Aliases: []string{"multi-split"}},
			{ID: "single-split-fixed", Label: "Single split, fixed orifice or capillary", Aliases: []string{"fixed"}},
			{ID: "single-split-valve", Label: "Single split, thermostatic or electronic valve", Aliases: []string{"valve"}},
		}, Help: "An inverter single split with the maker's subcooling target counts as a valve system."},
		{ID: "method", Label: "Method", Kind: calc.Choice, Default: "weight", Options: []calc.Option{
			{ID: "weight", Label: "By weight"}, {ID: "readings", Label: "By readings"}},
			Help: "By weight is right for every system. Readings only correct the last part of a single split."},
		refrigerantInput(),
		mass("nameplate", "Nameplate charge", "The factory charge of the outdoor unit. With several modules: of the first.", false, 0.05),
		pieceInput("modules", "Further outdoor modules", "One row a kind: how many, and the nameplate charge of one."),
		lineInput(),
		{ID: "liquid-temperature", Label: "Liquid temperature for the estimate", Help: "Only for lines without the maker's factor.", When: byWeight, Kind: calc.Quantity,
			Quantity: unit.Temperature, Units: []string{"C", "F"}, Default: "40 C", Low: 253.15, High: 333.15, BoundReason: "liquid lines run between these"},
		pieceInput("indoor-units", "Indoor units", "One row a kind: how many, and the extra of one from the unit's table."),
		mass("indoor-extra", "Extra for indoor units, as a sum", "In place of the rows, or on top of them. Enter 0 if the table gives none.", true, 0),
		mass("branch-extra", "Extra for branch boxes and outdoor units", "From the unit's table.", true, 0),
		mass("allowance", "Line allowance inside the nameplate charge", "Mass the factory already put in for a first length of line. It is taken off.", true, 0),
		mass("already", "Already in the system", "Weighed in since the vacuum, or left in. After a vacuum it is 0.", false, 0),
		mass("recovered", "Recovered before the repair", "By weight. It is compared with the calculation.", true, 0),
	}
	inputs = append(inputs, roomInputs()...)
	inputs = append(inputs, calc.Input{ID: "airflow-proved", Label: "Airflow proved and 15 minutes steady", When: singleSplit, Kind: calc.Choice, Options: []calc.Option{
		{ID: "yes", Label: "Yes"}, {ID: "no", Label: "No"}}, Help: "At least 300 cfm per ton (40 L/s per kW), or a temperature-split test passed."})
	return append(inputs, readingInputs()...)
}

func lineInput() calc.Input {
	return calc.Input{ID: "lines", Label: "Liquid lines", When: byWeight, Kind: calc.Series, MinRows: 1, MaxRows: 60, Optional: true,
		Help: "Liquid lines only, one row a size: outside diameter, length, and the maker's factor if you have it. Gas lines are not counted.",
		Columns: []calc.Column{
			{ID: "size", Label: "Outside diameter", Names: []string{"size", "od", "diameter", "tube"}, Quantity: unit.TubeDiameter, Units: []string{"mm", "in"}, Low: 3e-3, High: 60e-3},
			{ID: "length", Label: "Length", Names: []string{"length", "run"}, Quantity: unit.Length, Units: []string{"m", "ft"}, Low: 0.1, High: 1000},
			{ID: "factor", Label: "Maker's factor", Names: []string{"factor"}, Quantity: unit.MassPerLength, Units: []string{"kg/m", "g/m", "lb/ft", "oz/ft"}, Low: 1e-3, High: 3, Optional: true},
		}}
}

// pieceInput asks for equal pieces: a count, and the charge of one.
func pieceInput(id, label, help string) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, When: byWeight, Kind: calc.Series, MinRows: 1, MaxRows: 60, Optional: true,
		Columns: []calc.Column{
			{ID: "count", Label: "How many", Names: []string{"count", "number"}, Quantity: unit.Count, Units: []string{"1"}, Low: 1, High: 200},
			{ID: "extra", Label: "Charge of one", Names: []string{"extra", "charge", "mass"}, Quantity: unit.Mass, Units: massUnits, Low: 0, High: 200},
		}}
}

func readingInputs() []calc.Input {
	gauge := func(id, label, help string, when []calc.When) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, When: when, Kind: calc.Quantity, Quantity: unit.Pressure, Units: pressureUnits,
			Low: lowestPressure, High: highestPressure, BoundReason: "from a deep vacuum to above any field gauge"}
	}
	temperature := func(id, label, help string, when []calc.When, low, high float64, reason string) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, When: when, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"},
			Low: low, High: high, BoundReason: reason}
	}
	return []calc.Input{
		temperature("indoor-wet-bulb", "Indoor wet bulb", "Air that enters the indoor coil.", fixedOrifice, 283.15, 303.15, "comfort cooling"),
		temperature("outdoor-dry-bulb", "Outdoor dry bulb", "Air that enters the outdoor coil.", fixedOrifice, 288.15, 323.15, "the rule was made for cooling weather"),
		gauge("suction-pressure", "Suction pressure", "At the outdoor unit's gas service port.", fixedOrifice),
		temperature("suction-temperature", "Suction line temperature", "On the pipe beside that port, insulated from the air.", fixedOrifice, 233.15, 333.15, "suction lines run between these"),
		gauge("liquid-pressure", "Liquid pressure", "At the liquid service port.", expansionValve),
		temperature("liquid-line-temperature", "Liquid line temperature", "On the pipe beside that port.", expansionValve, 253.15, 353.15, "liquid lines run between these"),
		{ID: "target-subcooling", Label: "Maker's subcooling target", When: expansionValve, Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K", "F"},
			Low: 1, High: 20, BoundReason: "makers' targets lie between these", Help: "From the unit's nameplate or manual. Without it, weigh the charge in."},
		{ID: "unit-charge", Label: "Nameplate charge", When: singleSplit, Kind: calc.Quantity, Quantity: unit.Mass, Units: []string{"kg", "g", "lb", "oz"},
			Optional: true, Low: 0.05, High: 1000, BoundReason: "larger plants are not charged from a worksheet", Help: "Sets the size of the first step."},
		altitudeInput(),
	}
}
