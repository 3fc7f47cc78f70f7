package catalog

import (
	"changeout/calc"
	"changeout/calc/unit"
)

var (
	vacuumUnits = []string{"micron", "Pa", "mbar", "torr"}
	boreUnits   = []string{"mm", "in"}
	celsius     = []string{"C", "F"}
	spans       = []string{"min", "h", "d"}
	percent     = []string{"%"}
)

// PumpDown answers how long a pump needs and what holds it back.
var PumpDown = &calc.Worksheet{
	ID:      "pump-down",
	Title:   "Pump-down",
	Purpose: "How much of the pump's speed reaches the far end, and how long the evacuation takes at least. What to change first to make it faster.",
	Inputs: []calc.Input{
		{ID: "volume", Label: "System volume", Kind: calc.Quantity, Quantity: unit.Volume, Units: []string{"L", "m3", "ft3"}, Low: 1e-4, High: 20,
			BoundReason: "from a cooler to a large plant", Help: "Pipes, coils, vessels and shells. If unknown, use the charge in kg: about 2 to 4 L for each."},
		{ID: "run", Label: "Pipe run to the far end", Kind: calc.Series, Optional: true, MinRows: 1, MaxRows: 12,
			Help: "The smallest pipes between the ports and the far end, from the far end on: inside bore and length, one row a size.",
			Columns: []calc.Column{
				{ID: "bore", Label: "Bore", Names: []string{"bore", "id", "size", "diameter"}, Quantity: unit.TubeDiameter, Units: boreUnits, Low: 1e-3, High: 0.11},
				{ID: "length", Label: "Length", Names: []string{"length", "run"}, Quantity: unit.Length, Units: []string{"m", "ft"}, Low: 0.1, High: 1000},
			}},
		{ID: "hose-bore", Label: "Bore of the hose", Kind: calc.Quantity, Quantity: unit.TubeDiameter, Units: boreUnits, Low: 2e-3, High: 80e-3,
			BoundReason: "from the finest hose to a pump's own inlet", Help: "The inside. A ¼ in charging hose has about 4.8 mm, a ⅜ in hose 7.9 mm."},
		{ID: "hose-length", Label: "Length of the hose", Kind: calc.Quantity, Quantity: unit.Length, Units: []string{"m", "ft"}, Low: 0.1, High: 30,
			BoundReason: "longer hoses are not used to evacuate"},
		{ID: "hoses", Label: "Hoses", Kind: calc.Choice, Default: "one", Options: []calc.Option{
			{ID: "one", Label: "One", Aliases: []string{"1"}}, {ID: "two", Label: "Two alike, each on its own port", Aliases: []string{"2"}}}},
		{ID: "cores", Label: "Valve cores", Kind: calc.Choice, Default: "out", Options: []calc.Option{
			{ID: "out", Label: "Taken out"}, {ID: "in", Label: "Left in"}}},
		{ID: "core-bore", Label: "Free passage of the core", When: []calc.When{{Input: "cores", Is: []string{"in"}}}, Kind: calc.Quantity, Quantity: unit.TubeDiameter, Units: boreUnits,
			Default: "2 mm", Low: 0.5e-3, High: 5e-3, BoundReason: "a port is no wider",
			Help: "No published figure was found. It is taken as a tube of this bore, 25 mm long."},
		{ID: "pump-speed", Label: "Pump speed", Kind: calc.Quantity, Quantity: unit.VolumeFlow, Units: []string{"m3/h", "L/min", "cfm"}, Low: 1e-4, High: 0.1,
			BoundReason: "from a hand-carried to a trailer pump", Help: "From the nameplate, free air displacement."},
		{ID: "pump-base", Label: "Lowest pressure of the pump alone", Kind: calc.Quantity, Quantity: unit.VacuumPressure, Units: vacuumUnits, Default: "50 micron",
			Low: 1e-3, High: 1000, BoundReason: "a pump above 7500 micron is worn out", Help: "Measured on the closed pump with its own gauge. A sound pump reaches 50 to 100 micron."},
		{ID: "target", Label: "Target at the far end", Kind: calc.Quantity, Quantity: unit.VacuumPressure, Units: vacuumUnits, Default: "500 micron",
			Low: 0.1, High: 20e3, BoundReason: "below, no field gauge reads; above, water stays liquid up to 60 °C"},
		{ID: "water", Label: "Water to remove", Kind: calc.Quantity, Quantity: unit.Mass, Units: []string{"g", "kg", "oz", "lb"}, Default: "0 g", Low: 0, High: 10,
			BoundReason: "drain more than that", Help: "Worksheet “Moisture in” estimates it."},
		{ID: "temperature", Label: "Coldest pipe temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Default: "20 C",
			Low: 223.15, High: 353.15, BoundReason: "from the coldest roof to a warmed pipe", Help: "Where water can stand."},
	},
	Outputs: []calc.Output{
		{ID: "share", Label: "Share of the pump's speed at the far end, at the target", Quantity: unit.Fraction, Units: percent, Significant: 2, Main: true},
		{ID: "time-dry", Label: "Time for dry gas, at least", Quantity: unit.Duration, Units: spans, Significant: 2, Main: true},
		{ID: "time-water-low", Label: "Added by the water, at least", Quantity: unit.Duration, Units: spans, Significant: 2},
		{ID: "time-water-high", Label: "Added, if the water leaves only at the target", Quantity: unit.Duration, Units: spans, Significant: 2, Main: true},
		{ID: "best-time", Label: "Time with the best single change", Quantity: unit.Duration, Units: spans, Significant: 2},
		{ID: "hose-mean", Label: "Mean pressure in the hose, at the target", Quantity: unit.VacuumPressure, Units: vacuumUnits, Significant: 3},
		{ID: "hose-conductance", Label: "Conductance of a hose there", Quantity: unit.VolumeFlow, Units: []string{"L/s", "cfm"}, Significant: 3},
		{ID: "pump-reading", Label: "A gauge at the pump then reads", Quantity: unit.VacuumPressure, Units: vacuumUnits, Significant: 2},
		{ID: "share-10000", Label: "Share at 10 000 micron", Quantity: unit.Fraction, Units: percent, Significant: 2},
		{ID: "share-2000", Label: "Share at 2000 micron", Quantity: unit.Fraction, Units: percent, Significant: 2},
		{ID: "share-500", Label: "Share at 500 micron", Quantity: unit.Fraction, Units: percent, Significant: 2},
		{ID: "share-200", Label: "Share at 200 micron", Quantity: unit.Fraction, Units: percent, Significant: 2},
	},
	Verdicts: []calc.Verdict{
		{ID: "suits", Tone: calc.Good, Title: "The path suits the pump", Main: []string{"time-dry", "time-water-high", "share"}},
		{ID: "throttled", Tone: calc.Doubt, Title: "The path throttles the pump", Main: []string{"share", "time-dry", "time-water-high"}},
		{ID: "choked-off", Tone: calc.Stop, Title: "Change the path before you pump", Main: []string{"share"}},
	},
	Compute: pumpDown,
	Limits: []string{
		"Every time is a lower bound. Oil, moisture in it, bends and valves add to it.",
		"A time proves nothing. Only the isolated hold shows dryness.",
		"The tube formula is for lengths above 20 bores. Shorter tubes pass a little less.",
		"It counts all of the gas at the far end, and air at 20 °C in the tubes.",
	},
	Cautions: []calc.Caution{
		{Signal: "WARNING", Hazard: "In deep vacuum the motor windings can arc.", Consequence: "The arc destroys the motor and can blow a terminal out.",
			Avoid: "Never energise a compressor, nor test its insulation, while the system is under vacuum."},
		{Signal: "WARNING", Hazard: "A core tool opened under pressure throws the core out.", Consequence: "It can strike you, and gas freezes skin.",
			Avoid: "Read zero on both sides before you take a core out."},
	},
	Sources: []string{"vacuum-fundamentals", "vacuum-conductance", "practice-108", "practice-73", "gas-dynamics", "vacuum-sizing", "wagner-pruss-2002", "iapws-r14-08", "ideal-gas-law", "coolprop-8",
		"common-practice", "from-memory"},
	Example: []calc.Field{{Input: "volume", Text: "60 L"}, {Input: "run", Text: "bore_mm length_m\n14 15"}, {Input: "hose-bore", Text: "4.8 mm"}, {Input: "hose-length", Text: "1.5 m"},
		{Input: "hoses", Text: "one"}, {Input: "cores", Text: "in"}, {Input: "core-bore", Text: "2 mm"}, {Input: "pump-speed", Text: "10.2 m3/h"}, {Input: "pump-base", Text: "50 micron"},
		{Input: "target", Text: "500 micron"}, {Input: "water", Text: "5 g"}, {Input: "temperature", Text: "15 C"}},
}
