package catalog

import (
	"changeout/calc"
	"changeout/calc/unit"
)

var (
	leakUS  = []calc.When{{Input: "jurisdiction", Is: []string{"us"}}}
	leakEU  = []calc.When{{Input: "jurisdiction", Is: []string{"eu", "uk"}}}
	leakLow = float64(unit.DayNumber(1990, 1, 1))
	leakEnd = float64(unit.DayNumber(2100, 1, 1))
)

// RefrigerantLog turns additions and recoveries into leak rates and duties.
var RefrigerantLog = &calc.Worksheet{
	ID:      "refrigerant-log",
	Title:   "Refrigerant log",
	Purpose: "What share of its charge a system loses in a year, what the rules make of it, and when the next leak check is due.",
	Inputs:  leakInputs(),
	Outputs: []calc.Output{
		{ID: "annualised", Label: "Leak rate, annualising", Quantity: unit.Fraction, Units: []string{"%"}, Main: true},
		{ID: "rolling", Label: "Leak rate, rolling average", Quantity: unit.Fraction, Units: []string{"%"}, Main: true},
		{ID: "trigger", Label: "Trigger rate", Quantity: unit.Fraction, Units: []string{"%"}},
		{ID: "repair-by", Label: "Repair by", Quantity: unit.Date, Units: []string{"d"}},
		{ID: "next-check", Label: "Next leak check by", Quantity: unit.Date, Units: []string{"d"}, Main: true},
		{ID: "co2e", Label: "CO₂-equivalent of the charge", Quantity: unit.CarbonMass, Units: []string{"t"}},
		{ID: "lost-co2e", Label: "CO₂-equivalent of what was lost in those 365 days", Quantity: unit.CarbonMass, Units: []string{"t"}},
		{ID: "keep-until", Label: "Keep the newest record until", Quantity: unit.Date, Units: []string{"d"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "over", Tone: calc.Stop, Title: "Over the trigger rate: repair it and prove the repair", Main: []string{"annualised", "rolling", "trigger", "repair-by"}},
		{ID: "check-due", Tone: calc.Stop, Title: "A leak check is overdue", Main: []string{"next-check", "annualised", "rolling"}},
		{ID: "leaking", Tone: calc.Doubt, Title: "It has lost refrigerant: find the leak and repair it", Main: []string{"annualised", "rolling"}},
		{ID: "no-loss", Tone: calc.Info, Title: "No loss that still counts in this log", Main: []string{"next-check", "annualised", "rolling"}},
	},
	Compute: refrigerantLog,
	Limits: []string{
		"An addition shows a loss only once somebody adds. A log without additions is no proof of a tight system.",
		"Leave out the first charge of a new or converted system, and seasonal additions that were recorded as such.",
		"Not for vehicles, or for equipment labelled as hermetically sealed: other limits hold there.",
		"States, countries and permits ask for more. The rule in force where the system stands governs.",
	},
	Cautions: []calc.Caution{{Signal: "WARNING", Hazard: "Leaked refrigerant gathers in low and closed rooms.",
		Consequence: "It pushes the air out, and some refrigerants burn.", Avoid: "Air the room and test the air before you look for the leak."}},
	Sources: []string{"cfr157", "cfr-82-152", "cfr-84-106", "part84-overview", "study608", "epaold", "epafact", "trin", "achrleak", "leak-rate-examples", "eu573", "eu-2024-590",
		"eusk", "netregs", "leak-check-20kg", "practice-110", "gwpcsv", "common-practice", "from-memory"},
	Example: []calc.Field{
		{Input: "jurisdiction", Text: "eu"}, {Input: "refrigerant", Text: "R-410A"}, {Input: "full", Text: "28.5 kg"}, {Input: "today", Text: "2026-11-25"},
		{Input: "log", Text: "date;added_kg;recovered_kg\n2025-03-14;2.4;0\n2025-11-02;1.8;0\n2026-09-08;0;24.1\n2026-09-11;28.5;0"},
		{Input: "detection", Text: "no"}, {Input: "last-check", Text: "2026-09-12"},
	},
}

func leakInputs() []calc.Input {
	date := func(id, label, help string, optional bool, when []calc.When) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, Optional: optional, When: when, Kind: calc.Quantity, Quantity: unit.Date, Units: []string{"d"},
			Low: leakLow, High: leakEnd, BoundReason: "the rules begin in these years"}
	}
	mass := func(id, label string, optional bool) calc.Column {
		return calc.Column{ID: id, Label: label, Names: []string{id}, Quantity: unit.Mass, Units: massUnits, Low: 0, High: 20000, Optional: optional}
	}
	return []calc.Input{
		{ID: "jurisdiction", Label: "Rules of", Kind: calc.Choice, Options: []calc.Option{
			{ID: "us", Label: "United States (40 CFR 82 and 84)"}, {ID: "eu", Label: "European Union (2024/573)"}, {ID: "uk", Label: "United Kingdom"}, {ID: "other", Label: "Elsewhere"}}},
		{ID: "appliance", Label: "Appliance", When: leakUS, Kind: calc.Choice, Options: []calc.Option{
			{ID: "light", Label: "Residential or light commercial air conditioning or heat pump"}, {ID: "comfort", Label: "Other comfort cooling, such as a chiller"},
			{ID: "commercial", Label: "Commercial refrigeration"}, {ID: "industrial", Label: "Industrial process refrigeration"}, {ID: "other", Label: "Other"}},
			Help: "Part 84 leaves the first kind out of leak repair. Ask which kind a multi-split is before you choose."},
		refrigerantInput(),
		{ID: "gwp", Label: "GWP from the label", Kind: calc.Quantity, Quantity: unit.Count, Units: []string{"1"}, Optional: true, Low: 0, High: 20000, BoundReason: "no refrigerant has more",
			Help: "Only if the label's value should be used, or none is held here."},
		{ID: "full", Label: "Full charge", Kind: calc.Quantity, Quantity: unit.Mass, Units: massUnits, Low: 0.1, High: 20000, BoundReason: "from a small split to a large chiller",
			Help: "Of one circuit: nameplates plus what the lines took. Write down how it was found."},
		{ID: "log", Label: "Additions and recoveries", Kind: calc.Series, MinRows: 1, MaxRows: 300, Columns: []calc.Column{
			{ID: "date", Label: "Date", Names: []string{"date", "day"}, Quantity: unit.Date, Units: []string{"d"}, Low: leakLow, High: leakEnd},
			mass("added", "Added", false), mass("recovered", "Recovered", true)},
			Help: "One row a visit, such as 2026-09-11 2.4 0. Without a heading masses are kg; for pounds put “date added_lb recovered_lb” first."},
		date("today", "Today", "", false, nil),
		date("verified", "Last successful test after a repair", "In normal running, with all known leaks closed. Losses up to then no longer count.", true, nil),
		{ID: "detection", Label: "Leak detection system that alarms", When: leakEU, Kind: calc.Choice, Default: "no", Options: []calc.Option{{ID: "no", Label: "No"}, {ID: "yes", Label: "Yes"}},
			Help: "Fixed, tested every 12 months."},
		date("last-check", "Last leak check", "", true, nil),
	}
}
