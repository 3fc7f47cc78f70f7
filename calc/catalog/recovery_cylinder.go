package catalog

import (
	"changeout/calc"
	"changeout/calc/unit"
)

var massUnits = []string{"kg", "g", "lb", "oz"}

// RecoveryCylinder answers how much more a recovery cylinder may hold.
var RecoveryCylinder = &calc.Worksheet{
	ID:    "recovery-cylinder",
	Title: "Recovery cylinder",
	Purpose: "How much more a recovery cylinder may hold, what the scale may show, and when it would be full of liquid. " +
		"It refuses a cylinder that is out of test, too weak, or held another gas.",
	Inputs: cylinderInputs(),
	Outputs: []calc.Output{
		{ID: "room", Label: "Room left", Quantity: unit.Mass, Units: []string{"kg", "lb"}, Main: true},
		{ID: "gross-limit", Label: "Stop when the scale shows", Quantity: unit.Mass, Units: []string{"kg", "lb"}, Main: true},
		{ID: "allowed", Label: "Most it may hold", Quantity: unit.Mass, Units: []string{"kg", "lb"}},
		{ID: "guideline", Label: "Guideline: 80 % at 25 °C (77 °F)", Quantity: unit.Mass, Units: []string{"kg", "lb"}},
		{ID: "old-rule", Label: "Old label rule: 0.8 × water capacity", Quantity: unit.Mass, Units: []string{"kg", "lb"}},
		{ID: "liquid-full", Label: "Full of liquid at", Quantity: unit.Temperature, Units: []string{"C", "F"}},
		{ID: "guideline-full", Label: "At the guideline mass, full of liquid at", Quantity: unit.Temperature, Units: []string{"C", "F"}},
		{ID: "rating-needed", Label: "Lowest mark that suits the refrigerant", Quantity: unit.Pressure, Units: []string{"barg", "MPag", "kPag", "psig"}},
		{ID: "due", Label: "Next test due", Quantity: unit.Date, Units: []string{"d"}},
		{ID: "cylinders", Label: "Cylinders like this, this one first", Quantity: unit.Count, Units: []string{"1"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "room", Tone: calc.Good, Title: "There is room", Main: []string{"gross-limit", "room"}},
		{ID: "full", Tone: calc.Stop, Title: "Full: change the cylinder", Main: []string{"room", "gross-limit"}},
		{ID: "warm", Tone: calc.Stop, Title: "Too full for that temperature", Main: []string{"gross-limit", "allowed"}},
		{ID: "overfilled", Tone: calc.Stop, Title: "Overfilled: danger of bursting", Main: []string{"gross-limit", "guideline"}},
	},
	Compute: recoveryCylinder,
	Limits: []string{
		"Do not use it for a single-use cylinder. It must never be filled again.",
		"Do not use it for mixed or unknown refrigerant, or for a cylinder with dents, rust or a damaged valve.",
		"The guideline is for non-flammable gas. A flammable one also needs a cylinder marked for it.",
		"Oil and air that come along take room too. A lower mark on the cylinder governs.",
	},
	Cautions: []calc.Caution{{Signal: "DANGER", Hazard: "A cylinder full of liquid has no room to expand.",
		Consequence: "A few kelvin more can burst it and kill.",
		Avoid:       "Fill by weight on a scale. Keep it below 48 °C (118 °F). Never heat it with a flame."}},
	Sources: append([]string{"ahri-k", "achrcyl", "traincyl", "cfr304c", "cfr304a", "cfr-173-304", "cfr180", "gwtext", "recovery-tank", "adr-tanks", "practice-96", "common-practice", "coolprop-8"}, equationKeys...),
	Example: []calc.Field{
		{Input: "refrigerant", Text: "R-410A"}, {Input: "contents", Text: "same"}, {Input: "water-capacity", Text: "47.6 lb"}, {Input: "tare", Text: "27.5 lb"},
		{Input: "gross", Text: "41 lb"}, {Input: "warmest", Text: "122 F"}, {Input: "to-recover", Text: "60 lb"}, {Input: "marking", Text: "service"},
		{Input: "rating", Text: "400 psig"}, {Input: "last-test", Text: "2024-03-01"}, {Input: "interval", Text: "5"}, {Input: "today", Text: "2026-11-25"},
	},
}

func cylinderInputs() []calc.Input {
	mass := func(id, label, help string, optional bool) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, Kind: calc.Quantity, Quantity: unit.Mass, Units: massUnits, Optional: optional,
			Low: 0.1, High: 2000, BoundReason: "from a small cylinder to a ton tank"}
	}
	date := func(id, label, help string) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, Kind: calc.Quantity, Quantity: unit.Date, Units: []string{"d"},
			Low: float64(unit.DayNumber(1990, 1, 1)), High: float64(unit.DayNumber(2099, 12, 31)), BoundReason: "cylinders in use now"}
	}
	return []calc.Input{
		refrigerantInput(),
		{ID: "contents", Label: "In the cylinder now", Kind: calc.Choice, Help: "One cylinder, one refrigerant. Mixed gas cannot be used again.", Options: []calc.Option{
			{ID: "empty", Label: "Nothing: emptied and evacuated"}, {ID: "same", Label: "The same refrigerant"}, {ID: "other", Label: "Another refrigerant, or not known"}}},
		{ID: "water-capacity", Label: "Water capacity", Kind: calc.Quantity, Quantity: unit.WaterCapacity, Units: []string{"L", "kg", "lb"},
			Low: 0.5e-3, High: 1, BoundReason: "from a small cylinder to a ton tank", Help: "Stamped WC on the collar, in pounds or kilograms of water or in litres."},
		mass("tare", "Tare", "Stamped TW: the empty cylinder with its valve.", false),
		mass("gross", "On the scale now", "With the hose hanging free.", false),
		{ID: "warmest", Label: "Warmest it can get", Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Default: "55 C",
			Low: 298.15, High: 338.15, BoundReason: "the guideline counts from 25 °C; above 65 °C no cylinder belongs anywhere", Help: "In the van, in the sun. The transport rule counts with 55 °C (131 °F)."},
		mass("to-recover", "Still to recover", "From the charge table or the nameplate. Gives the number of cylinders.", true),
		{ID: "ratio", Label: "Filling ratio stamped or on the label", Kind: calc.Quantity, Quantity: unit.Density, Units: []string{"kg/L", "lb/ft3"}, Optional: true,
			Low: 100, High: 2000, BoundReason: "ratios of refrigerants", Help: "European cylinders: kilograms for each litre. It governs if it is lower."},
		{ID: "marking", Label: "The pressure mark is", Kind: calc.Choice, Options: []calc.Option{
			{ID: "service", Label: "Service pressure (DOT)", Aliases: []string{"dot"}}, {ID: "test", Label: "Test pressure (UN or European, PH)", Aliases: []string{"un"}}},
			Help: "DOT-4BA400 has a service pressure of 400 psi."},
		{ID: "rating", Label: "Pressure mark", Kind: calc.Quantity, Quantity: unit.Pressure, Units: []string{"barg", "MPag", "kPag", "psig"},
			Low: 5e5, High: 15e6, BoundReason: "marks of refrigerant cylinders", Help: "On the collar."},
		date("last-test", "Last test", "Stamped month and year: enter the first day of that month."),
		{ID: "interval", Label: "Test interval", Kind: calc.Choice, Default: "5", Options: []calc.Option{{ID: "5", Label: "5 years"}, {ID: "10", Label: "10 years"}},
			Help: "5 years is the US rule of the trade. 10 only where your law allows it for this cylinder."},
		date("today", "Today", "Year, month, day."),
	}
}
