package catalog

import (
	"changeout/calc"
	"changeout/calc/unit"
)

var (
	airUnits   = []string{"m3/h", "L/s", "m3/s", "cfm"}
	powerUnits = []string{"kW", "ton", "Btu/h"}
	degrees    = []string{"K", "F"}
)

// Airflow judges the air of an indoor coil and says what less of it does to
// the evaporating temperature.
var Airflow = &calc.Worksheet{
	ID:    "airflow",
	Title: "Airflow",
	Purpose: "How much of its rated air an indoor coil gets, and what heat that air gives off. How far evaporating temperature and pressure fall " +
		"with less air: at the speed that the compressor has, and when an inverter holds its capacity.",
	Inputs: []calc.Input{
		refrigerantInput(),
		{ID: "unit", Label: "Unit", Kind: calc.Choice, Options: []calc.Option{{ID: "running", Label: "Running in cooling, steady"}, {ID: "stopped", Label: "Fan only"}},
			Help: "With the fan alone, nameplate values stand in for the readings."},
		{ID: "flow-by", Label: "Airflow from", Kind: calc.Choice, Default: "flow", Options: []calc.Option{
			{ID: "flow", Label: "Hood, traverse or fan table"}, {ID: "face", Label: "Face velocity and area"}, {ID: "rise", Label: "Heater and temperature rise"}}},
		{ID: "flow", Label: "Airflow", When: []calc.When{{Input: "flow-by", Is: []string{"flow"}}}, Kind: calc.Quantity, Quantity: unit.VolumeFlow, Units: airUnits, Low: 0.01, High: 30,
			BoundReason: "from the smallest indoor unit to a large air handler", Help: "From the fan table: at the measured static pressure and fan speed."},
		{ID: "velocity", Label: "Mean face velocity", When: []calc.When{{Input: "flow-by", Is: []string{"face"}}}, Kind: calc.Quantity, Quantity: unit.Velocity, Units: []string{"m/s", "ft/min"}, Low: 0.1, High: 10,
			BoundReason: "coils and filters work between these", Help: "Mean of a grid of at least 16 points."},
		{ID: "area", Label: "Face area", When: []calc.When{{Input: "flow-by", Is: []string{"face"}}}, Kind: calc.Quantity, Quantity: unit.Area, Units: []string{"m2", "ft2"}, Low: 0.01, High: 20,
			BoundReason: "faces of indoor units", Help: "The open face that the velocity was read over."},
		{ID: "heater", Label: "Heater power", When: []calc.When{{Input: "flow-by", Is: []string{"rise"}}}, Kind: calc.Quantity, Quantity: unit.Power, Units: []string{"kW", "W", "Btu/h"}, Low: 100, High: 500e3,
			BoundReason: "electric heaters of indoor units", Help: "Measured, cooling off. With the fan's power if the fan is between the probes."},
		{ID: "rise", Label: "Temperature rise by the heater", When: []calc.When{{Input: "flow-by", Is: []string{"rise"}}}, Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: degrees, Low: 2, High: 60,
			BoundReason: "less cannot be read well", Help: "Out of sight of the heater."},
		{ID: "rated-flow", Label: "Rated airflow", Kind: calc.Quantity, Quantity: unit.VolumeFlow, Units: airUnits, Low: 0.01, High: 30,
			BoundReason: "from the smallest indoor unit to a large air handler", Help: "From the data of the unit, at its fan setting."},
		{ID: "humidity-by", Label: "Humidity read as", Kind: calc.Choice, Default: "relative", Options: []calc.Option{{ID: "relative", Label: "Relative humidity", Aliases: []string{"RH"}}, {ID: "wet-bulb", Label: "Wet bulb", Aliases: []string{"WB"}}}},
		{ID: "air-on", Label: "Air on", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 268.15, High: 323.15,
			BoundReason: "indoor coils cool air between these", Help: "Into the coil. With the fan only: the air of the nameplate capacity, often 27 °C with 19 °C wet bulb."},
		{ID: "on-relative", Label: "Air on, relative humidity", When: []calc.When{{Input: "humidity-by", Is: []string{"relative"}}}, Kind: calc.Quantity, Quantity: unit.Fraction, Units: percent, Low: 0.01, High: 1, BoundReason: "a share of saturation"},
		{ID: "on-wet", Label: "Air on, wet bulb", When: []calc.When{{Input: "humidity-by", Is: []string{"wet-bulb"}}}, Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 258.15, High: 323.15,
			BoundReason: "not above the dry bulb", Help: "Wet wick in moving air."},
		{ID: "air-off", Label: "Air off", When: []calc.When{{Input: "unit", Is: []string{"running"}}}, Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 268.15, High: 323.15,
			BoundReason: "indoor coils cool air between these", Help: "Out of the coil, mixed, before any heater."},
		{ID: "off-relative", Label: "Air off, relative humidity", When: []calc.When{{Input: "unit", Is: []string{"running"}}, {Input: "humidity-by", Is: []string{"relative"}}}, Kind: calc.Quantity, Quantity: unit.Fraction, Units: percent, Low: 0.01, High: 1, BoundReason: "a share of saturation"},
		{ID: "off-wet", Label: "Air off, wet bulb", When: []calc.When{{Input: "unit", Is: []string{"running"}}, {Input: "humidity-by", Is: []string{"wet-bulb"}}}, Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 258.15, High: 323.15,
			BoundReason: "not above the dry bulb", Help: "Wet wick in moving air."},
		{ID: "suction-pressure", Label: "Suction pressure", When: []calc.When{{Input: "unit", Is: []string{"running"}}}, Kind: calc.Quantity, Quantity: unit.Pressure, Units: pressureUnits, Low: 1e4, High: 5e6,
			BoundReason: "compressors of this trade run between these", Help: "Read together with the air."},
		{ID: "suction-temperature", Label: "Suction pipe temperature", When: []calc.When{{Input: "unit", Is: []string{"running"}}}, Optional: true, Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 213.15, High: 353.15,
			BoundReason: "the pipe of a running unit stays between these", Help: "Where the pressure is read. For the superheat."},
		{ID: "rated-capacity", Label: "Rated cooling capacity", When: []calc.When{{Input: "unit", Is: []string{"stopped"}}}, Kind: calc.Quantity, Quantity: unit.Power, Units: powerUnits, Low: 500, High: 1e6,
			BoundReason: "from the smallest indoor unit to a large air handler"},
		{ID: "rated-evaporating", Label: "Evaporating temperature at rated airflow", When: []calc.When{{Input: "unit", Is: []string{"stopped"}}}, Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Default: "7 C", Low: 263.15, High: 293.15,
			BoundReason: "comfort cooling is designed between these", Help: "From the maker; 7 °C is usual."},
		{ID: "if-flow", Label: "What if the airflow is", Kind: calc.Quantity, Quantity: unit.Fraction, Units: percent, Default: "50 %", Low: 0.2, High: 1.5,
			BoundReason: "the model is not for less", Help: "Share of the rated airflow."},
		altitudeInput(),
	},
	Outputs: airflowOutputs,
	Verdicts: []calc.Verdict{
		{ID: "freezing", Tone: calc.Stop, Title: "The coil runs below freezing", Main: []string{"evaporating", "share"}},
		{ID: "floodback", Tone: calc.Stop, Title: "Liquid may return to the compressor", Main: []string{"superheat", "share"}},
		{ID: "clean-first", Tone: calc.Stop, Title: "Clean before the compressor runs at full speed", Main: []string{"share", "evaporating"}},
		{ID: "contradiction", Tone: calc.Doubt, Title: "The readings do not agree", Main: []string{"share", "evaporating"}},
		{ID: "clean-before", Tone: calc.Doubt, Title: "Clean before commissioning", Main: []string{"share", "evaporating"}},
		{ID: "clean-next", Tone: calc.Info, Title: "Clean at the next visit", Main: []string{"share", "evaporating"}},
		{ID: "enough", Tone: calc.Good, Title: "Enough air", Main: []string{"share", "evaporating"}},
	},
	Compute: airflow,
	Limits: []string{
		"A field reading of airflow errs by 5 to 10 %. Near a limit take the worse side.",
		"It is for one coil. On a multi-split the curves hold if every running unit lost the same share.",
		"The curves take dirt as loss of air only, air as even, and the condensing pressure as steady. Below half of the air they are a rough guide.",
		"Against published curves down to half of the air, the capacity comes out 2 points too high to 7 too low, the temperature mostly too low.",
		"Do not use it in heating, in defrost, before 15 min of steady running, or with ice on the coil.",
		"The airflow is taken at the air-on state. The maker's values come first.",
	},
	Cautions: []calc.Caution{
		{Signal: "DANGER", Hazard: "Fans start by themselves, and a heater section is live.", Consequence: "Shock kills; blades cut fingers.", Avoid: "Place probes with the unit isolated and proved dead. Keep hands and clothing clear."},
		{Signal: "WARNING", Hazard: "Refrigerant leaves a gauge port as a jet under pressure.", Consequence: "It can freeze skin and blind.", Avoid: "Wear goggles and gloves. Open gauge valves slowly."},
	},
	Sources: append([]string{"common-practice", "makers-manual", "ashrae-fundamentals", "psychrolib", "practice-9", "practice-10", "practice-11", "practice-21", "practice-28", "practice-79", "practice-89",
		"wetter-coil", "lbl-buildings"}, equationKeys...),
	Example: []calc.Field{
		{Input: "refrigerant", Text: "R-410A"}, {Input: "unit", Text: "running"}, {Input: "flow-by", Text: "flow"}, {Input: "flow", Text: "1180 m3/h"}, {Input: "rated-flow", Text: "1900 m3/h"},
		{Input: "humidity-by", Text: "relative"}, {Input: "air-on", Text: "26 C"}, {Input: "on-relative", Text: "52 %"}, {Input: "air-off", Text: "11 C"}, {Input: "off-relative", Text: "92 %"},
		{Input: "suction-pressure", Text: "7.6 barg"}, {Input: "suction-temperature", Text: "6 C"}, {Input: "if-flow", Text: "50 %"},
	},
}

var airflowOutputs = []calc.Output{
	{ID: "share", Label: "Share of the rated airflow", Quantity: unit.Fraction, Units: percent, Significant: 3, Main: true},
	{ID: "capacity", Label: "Heat taken from the air", Quantity: unit.Power, Units: powerUnits, Significant: 3, Main: true},
	{ID: "sensible", Label: "Sensible part", Quantity: unit.Power, Units: powerUnits, Significant: 3},
	{ID: "latent", Label: "Latent part", Quantity: unit.Power, Units: powerUnits, Significant: 3},
	{ID: "bypass", Label: "Bypass factor", Quantity: unit.Fraction, Units: []string{"1"}, Significant: 2},
	{ID: "surface", Label: "Coil surface, mean", Quantity: unit.Temperature, Units: celsius},
	{ID: "evaporating", Label: "Evaporating temperature at this airflow", Quantity: unit.Temperature, Units: celsius, Main: true},
	{ID: "evaporating-rated", Label: "At rated airflow, same compressor speed", Quantity: unit.Temperature, Units: celsius},
	{ID: "frost-speed", Label: "Freezing is reached at, same compressor speed", Quantity: unit.Fraction, Units: percent, Significant: 2, Main: true},
	{ID: "frost-capacity", Label: "Freezing is reached at, capacity held", Quantity: unit.Fraction, Units: percent, Significant: 2, Main: true},
	{ID: "superheat", Label: "Suction superheat, from dew", Quantity: unit.TemperatureDifference, Units: degrees},
	{ID: "superheat-heat", Label: "Part of the heat that makes this superheat", Quantity: unit.Fraction, Units: percent, Significant: 2},
	{ID: "superheat-air", Label: "Loss of air that uses it up if the valve stands still", Quantity: unit.Fraction, Units: percent, Significant: 2},
	{ID: "if-speed", Label: "What if, same speed: evaporating temperature", Quantity: unit.Temperature, Units: celsius},
	{ID: "if-speed-pressure", Label: "What if, same speed: suction pressure", Quantity: unit.Pressure, Units: pressureUnits},
	{ID: "if-speed-capacity", Label: "What if, same speed: capacity, of that at rated airflow", Quantity: unit.Fraction, Units: percent, Significant: 3},
	{ID: "if-held", Label: "What if, capacity held: evaporating temperature", Quantity: unit.Temperature, Units: celsius},
	{ID: "if-held-pressure", Label: "What if, capacity held: suction pressure", Quantity: unit.Pressure, Units: pressureUnits},
}
