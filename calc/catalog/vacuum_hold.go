package catalog

import (
	"changeout/calc"
	"changeout/calc/formula/hold"
	"changeout/calc/unit"
)

// VacuumHold judges an isolated vacuum hold from its log.
var VacuumHold = &calc.Worksheet{
	ID:    "vacuum-hold",
	Title: "Vacuum hold",
	Purpose: "Judges a log of time and pressure after the pump is valved off: tight, moist, leaking, both, or not yet certain. " +
		"It says how certain, and what to do next.",
	Inputs: append([]calc.Input{
		{ID: "log", Label: "Hold log", Kind: calc.Series, MinRows: hold.MinRows, MaxRows: hold.MaxRows,
			Help: "Readings after isolation, gauge on the system side at the far end. Type rows, paste text, or open a CSV file with minutes,micron and, if you have it, ambient_C.",
			Columns: []calc.Column{
				{ID: "time", Label: "Time", Names: []string{"time", "t", "clock", "elapsed", "timestamp", "date", "datetime"}, Quantity: unit.Duration,
					Units: []string{"min", "s", "h"}, Low: -1e9, High: 1e9, Clock: true},
				{ID: "pressure", Label: "Pressure", Names: []string{"pressure", "vacuum", "p", "gauge", "reading"}, Quantity: unit.VacuumPressure,
					Units: []string{"micron", "Pa", "mbar", "torr", "kPa"}, Low: 0, High: hold.MaxPressure},
				{ID: "ambient", Label: "Ambient", Names: []string{"ambient", "temperature", "temp", "air", "tamb"}, Quantity: unit.Temperature,
					Units: []string{"C", "F", "K"}, Low: hold.MinAmbient, High: hold.MaxAmbient, Optional: true},
			}},
		ambientInput("ambient-start", "Ambient at the start"),
		ambientInput("ambient-end", "Ambient at the end"),
		{ID: "target", Label: "Target", Kind: calc.Quantity, Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa", "mbar", "torr"}, Default: "500 micron",
			Low: 1, High: 700, BoundReason: "above 5000 micron water still boils at room temperature", Help: "The pressure to reach before isolating. The maker's figure governs."},
		{ID: "limit", Label: "Limit", Kind: calc.Quantity, Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa", "mbar", "torr"}, Default: "1000 micron",
			Low: 2, High: 1400, BoundReason: "above 10 000 micron a hold shows nothing about dryness", Help: "The pressure that the hold must stay below. The maker's figure governs."},
		{ID: "leak-limit", Label: "Accepted steady rise", Kind: calc.Quantity, Quantity: unit.PressureRate, Units: []string{"micron/min", "Pa/h"}, Optional: true,
			Low: 1e-5, High: 1, BoundReason: "a larger rise is a leak on any system",
			Help: "If empty: the rise that would take the system from target to limit in 12 hours."},
		{ID: "volume", Label: "System volume", Kind: calc.Quantity, Quantity: unit.Volume, Units: []string{"L", "m3", "ft3"}, Optional: true,
			Low: 1e-4, High: 20, BoundReason: "from a cooler to a large plant", Help: "Turns the rise into a leak rate."},
	}, lossInputs()...),
	Outputs: []calc.Output{
		{ID: "leak-rise", Label: "Steady rise, best estimate", Quantity: unit.PressureRate, Units: []string{"micron/min"}, Significant: 2, Main: true},
		{ID: "leak-rise-low", Label: "Steady rise, at least", Quantity: unit.PressureRate, Units: []string{"micron/min"}, Significant: 2},
		{ID: "leak-rise-high", Label: "Steady rise, at most", Quantity: unit.PressureRate, Units: []string{"micron/min"}, Significant: 2, Main: true},
		{ID: "leak-rise-limit", Label: "Steady rise accepted", Quantity: unit.PressureRate, Units: []string{"micron/min"}, Significant: 2},
		{ID: "leak-rate", Label: "Leak rate, best estimate", Quantity: unit.LeakRate, Units: []string{"Pa·m³/s"}, Significant: 2},
		{ID: "leak-rate-high", Label: "Leak rate, at most", Quantity: unit.LeakRate, Units: []string{"Pa·m³/s"}, Significant: 2},
		{ID: "loss-low", Label: "Loss when running, at least", Quantity: unit.MassPerTime, Units: []string{"kg/year", "lb/year"}, Significant: 2},
		{ID: "loss-high", Label: "Loss when running, at most", Quantity: unit.MassPerTime, Units: []string{"kg/year", "lb/year"}, Significant: 2},
		{ID: "level", Label: "Level it tends to, without a leak", Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa"}, Significant: 3},
		{ID: "last-pressure", Label: "Last pressure", Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa"}, Significant: 3},
		{ID: "hold-limit", Label: "Limit to stay below", Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa"}, Significant: 3},
		{ID: "boiling-point", Label: "Water boils or sublimes there at", Quantity: unit.Temperature, Units: []string{"C", "F"}},
		{ID: "water-saturation", Label: "Saturation pressure of water at the ambient (at 20 °C if none)", Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa"}, Significant: 3},
		{ID: "hold-needed", Label: "Hold needed to tell", Quantity: unit.Duration, Units: spans, Significant: 2},
		{ID: "repeat-if-leak", Label: "A repeat should end near, if it leaks", Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa"}, Significant: 2},
		{ID: "repeat-if-moist", Label: "A repeat should end below, if it was moisture", Quantity: unit.VacuumPressure, Units: []string{"micron", "Pa"}, Significant: 2},
	},
	Verdicts: holdVerdicts,
	Compute:  vacuumHold,
	Limits: []string{
		"A vacuum hold does not replace the pressure test with nitrogen. Vacuum can pull a defect shut.",
		"A gauge on the pump reads the pump. The log must come from the far end of the system.",
		"Below freezing, ice holds a low pressure. A good reading can then hide it.",
		"Without an ambient, ice is not ruled out, so no log is called tight and dry.",
		"A valve left shut hides a part of the system from the gauge.",
		"The loss when running is a span of two laws of flow. A leak in liquid, or one that pressure opens, loses more.",
	},
	Cautions: []calc.Caution{
		{Signal: "WARNING", Hazard: "In deep vacuum the motor windings can arc.", Consequence: "The arc destroys the motor and can blow a terminal out.",
			Avoid: "Never energise a compressor, nor test its insulation, while the system is under vacuum."},
		{Signal: "NOTICE", Hazard: "Pressure destroys a vacuum gauge.", Consequence: "It then reads wrong without showing it.",
			Avoid: "Isolate or remove the gauge before you break the vacuum."},
	},
	Sources: append(append([]string{"common-practice", "makers-manual", "practice-67", "practice-35", "wagner-pruss-2002", "iapws-r14-08", "ul60335", "ufgs1", "leak-flow-table", "from-memory"},
		viscosityKeys()...), equationKeys...),
	Example: []calc.Field{{Input: "log", Text: exampleHold}, {Input: "ambient-start", Text: "21 C"}, {Input: "ambient-end", Text: "20 C"}, {Input: "volume", Text: "45 L"},
		{Input: "refrigerant", Text: "R-410A"}, {Input: "running-pressure", Text: "1.4 MPag"}},
}

// holdVerdicts are the five judgements of package hold.
var holdVerdicts = []calc.Verdict{
	{ID: string(hold.Tight), Tone: calc.Good, Title: "Tight and dry", Main: []string{"leak-rise-high", "leak-rise-limit"}},
	{ID: string(hold.Moisture), Tone: calc.Stop, Title: "Moist: dry it again", Main: []string{"level", "last-pressure", "hold-limit"}},
	{ID: string(hold.Leak), Tone: calc.Stop, Title: "Leak: find it", Main: []string{"leak-rise-low", "leak-rise-high", "last-pressure"}},
	{ID: string(hold.LeakAndMoisture), Tone: calc.Stop, Title: "Leak and moisture", Main: []string{"leak-rise-low", "leak-rise-high"}},
	{ID: string(hold.Undetermined), Tone: calc.Doubt, Title: "Not yet certain", Main: []string{"hold-needed", "leak-rise-high", "last-pressure"}},
}

// exampleHold is an invented log: a system that is tight but moist.
const exampleHold = `# invented for this example
minutes,micron
0,310
1,395
2,452
4,560
6,655
8,741
10,815
15,973
20,1096
30,1267
40,1372
50,1436
60,1476
75,1508
90,1524`

func ambientInput(id, label string) calc.Input {
	return calc.Input{ID: id, Label: label, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: true,
		Low: hold.MinAmbient, High: hold.MaxAmbient, BoundReason: "from the coldest roof to a pipe in the sun",
		Help: "In the shade beside the pipes. A change of temperature moves the reading; without it no hold is called tight."}
}
