package unit

// Conversion factors. The inch, the pound, the torr and the standard
// atmosphere are exact by definition; the pound-force uses standard gravity.
const (
	inch        = 0.0254
	foot        = 0.3048
	pound       = 0.45359237
	ounce       = pound / 16
	psi         = 6894.757293168361
	torr        = 101325.0 / 760
	micron      = torr / 1000
	cubicFoot   = foot * foot * foot
	fahrenheitK = 5.0 / 9
)

// The quantities that worksheets use.
var (
	Temperature = &Quantity{ID: "temperature", Name: "a temperature", Units: []Unit{
		{ID: "K", Label: "K", Factor: 1, System: Either, Decimals: 2},
		{ID: "C", Label: "°C", Factor: 1, Offset: 273.15, System: SI, Decimals: 1, Aliases: []string{"degc", "celsius"}},
		{ID: "F", Label: "°F", Factor: fahrenheitK, Offset: 459.67, System: InchPound, Decimals: 1, Aliases: []string{"degf", "fahrenheit"}},
	}}

	// TemperatureDifference has no offset: 10 K is 18 °F.
	TemperatureDifference = &Quantity{ID: "temperature-difference", Name: "a temperature difference", Units: []Unit{
		{ID: "K", Label: "K", Factor: 1, System: SI, Decimals: 1, Aliases: []string{"c"}},
		{ID: "F", Label: "°F", Factor: fahrenheitK, System: InchPound, Decimals: 1, Aliases: []string{"degf", "r"}},
	}}

	// Pressure is absolute inside. Its units always say gauge or absolute.
	Pressure = &Quantity{ID: "pressure", Name: "a pressure", Units: []Unit{
		{ID: "Pa", Label: "Pa absolute", Factor: 1, System: Either, Decimals: 0},
		{ID: "kPag", Label: "kPa gauge", Factor: 1e3, Datum: Gauge, System: SI, Decimals: 1},
		{ID: "kPaa", Label: "kPa absolute", Factor: 1e3, System: SI, Decimals: 1},
		{ID: "barg", Label: "bar gauge", Factor: 1e5, Datum: Gauge, System: SI, Decimals: 2},
		{ID: "bara", Label: "bar absolute", Factor: 1e5, System: SI, Decimals: 2},
		{ID: "MPag", Label: "MPa gauge", Factor: 1e6, Datum: Gauge, System: SI, Decimals: 3},
		{ID: "MPaa", Label: "MPa absolute", Factor: 1e6, System: SI, Decimals: 3},
		{ID: "psig", Label: "psi gauge", Factor: psi, Datum: Gauge, System: InchPound, Decimals: 1},
		{ID: "psia", Label: "psi absolute", Factor: psi, System: InchPound, Decimals: 1},
		{ID: "inHgv", Label: "in Hg vacuum", Factor: pascalInHg, Datum: Suction, System: InchPound, Decimals: 1},
		{ID: "micron", Label: "micron", Factor: micron, System: Either, Decimals: 0, Aliases: []string{"microns", "um", "umhg"}},
		{ID: "mbar", Label: "mbar absolute", Factor: 100, System: Either, Decimals: 2, Aliases: []string{"hpa"}},
		{ID: "torr", Label: "torr", Factor: torr, System: Either, Decimals: 2, Aliases: []string{"mmhg"}},
	}, Vague: []Vague{
		{ID: "kPa", Ask: "gauge or absolute", Mean: []string{"kPag", "kPaa"}},
		{ID: "bar", Ask: "gauge or absolute", Mean: []string{"barg", "bara"}},
		{ID: "MPa", Ask: "gauge or absolute", Mean: []string{"MPag", "MPaa"}},
		{ID: "psi", Ask: "gauge or absolute", Mean: []string{"psig", "psia"}},
		{ID: "inHg", Ask: "inches of mercury below the atmosphere", Mean: []string{"inHgv"}},
	}}

	// VacuumPressure is what an absolute vacuum gauge shows.
	VacuumPressure = &Quantity{ID: "vacuum-pressure", Name: "an absolute vacuum pressure", Units: []Unit{
		{ID: "Pa", Label: "Pa", Factor: 1, System: Either, Decimals: 1, Aliases: []string{"pascal", "pascals"}},
		{ID: "micron", Label: "micron", Factor: micron, System: Either, Decimals: 0, Aliases: []string{"microns", "um", "umhg", "mtorr", "millitorr"}},
		{ID: "mbar", Label: "mbar", Factor: 100, System: Either, Decimals: 3, Aliases: []string{"hpa", "millibar"}},
		{ID: "torr", Label: "torr", Factor: torr, System: Either, Decimals: 3, Aliases: []string{"mmhg"}},
		{ID: "kPa", Label: "kPa", Factor: 1e3, System: Either, Decimals: 4, Aliases: []string{"kpaa"}},
	}}

	// PressureRate is a steady rise of pressure.
	PressureRate = &Quantity{ID: "pressure-rate", Name: "a rate of pressure rise", Units: []Unit{
		{ID: "Pa/s", Label: "Pa/s", Factor: 1, System: Either, Decimals: Scientific},
		{ID: "micron/min", Label: "micron/min", Factor: micron / 60, System: Either, Decimals: 2},
		{ID: "Pa/h", Label: "Pa/h", Factor: 1.0 / 3600, System: Either, Decimals: 1},
	}}

	// LeakRate is a throughput of gas: pressure times volume over time.
	LeakRate = &Quantity{ID: "leak-rate", Name: "a leak rate", Units: []Unit{
		{ID: "Pa·m³/s", Label: "Pa·m³/s", Factor: 1, System: Either, Decimals: Scientific, Aliases: []string{"pam3/s"}},
		{ID: "mbar·L/s", Label: "mbar·L/s", Factor: 0.1, System: Either, Decimals: Scientific, Aliases: []string{"mbarl/s"}},
	}}

	Length = &Quantity{ID: "length", Name: "a length", Units: []Unit{
		{ID: "m", Label: "m", Factor: 1, System: SI, Decimals: 2, Aliases: []string{"metre", "metres", "meter", "meters"}},
		{ID: "mm", Label: "mm", Factor: 1e-3, System: SI, Decimals: 2},
		{ID: "ft", Label: "ft", Factor: foot, System: InchPound, Decimals: 1, Aliases: []string{"feet", "foot"}},
		{ID: "in", Label: "in", Factor: inch, System: InchPound, Decimals: 3, Aliases: []string{"inch", "inches"}},
	}}

	// TubeDiameter is a length written as tube sizes are.
	TubeDiameter = &Quantity{ID: "tube-diameter", Name: "a tube diameter", Units: []Unit{
		{ID: "m", Label: "m", Factor: 1, System: Either, Decimals: 5},
		{ID: "mm", Label: "mm", Factor: 1e-3, System: SI, Decimals: 2},
		{ID: "in", Label: "in", Factor: inch, System: InchPound, Decimals: 3, Aliases: []string{"inch", "inches", "\""}},
	}}

	Mass = &Quantity{ID: "mass", Name: "a mass", Units: []Unit{
		{ID: "kg", Label: "kg", Factor: 1, System: SI, Decimals: 3},
		{ID: "g", Label: "g", Factor: 1e-3, System: SI, Decimals: 0},
		{ID: "lb", Label: "lb", Factor: pound, System: InchPound, Decimals: 2, Aliases: []string{"lbs"}},
		{ID: "oz", Label: "oz", Factor: ounce, System: InchPound, Decimals: 1},
	}}

	MassPerLength = &Quantity{ID: "mass-per-length", Name: "a mass for each length of line", Units: []Unit{
		{ID: "kg/m", Label: "kg/m", Factor: 1, System: SI, Decimals: 4},
		{ID: "g/m", Label: "g/m", Factor: 1e-3, System: SI, Decimals: 1},
		{ID: "lb/ft", Label: "lb/ft", Factor: pound / foot, System: InchPound, Decimals: 4},
		{ID: "oz/ft", Label: "oz/ft", Factor: ounce / foot, System: InchPound, Decimals: 3},
	}}

	Density = &Quantity{ID: "density", Name: "a density", Units: []Unit{
		{ID: "kg/m3", Label: "kg/m³", Factor: 1, System: SI, Decimals: 2},
		{ID: "lb/ft3", Label: "lb/ft³", Factor: pound / cubicFoot, System: InchPound, Decimals: 3},
	}}

	// Concentration is refrigerant in room air.
	Concentration = &Quantity{ID: "concentration", Name: "a concentration in room air", Units: []Unit{
		{ID: "kg/m3", Label: "kg/m³", Factor: 1, System: SI, Decimals: 3},
		{ID: "g/m3", Label: "g/m³", Factor: 1e-3, System: SI, Decimals: 0},
		{ID: "lb/1000ft3", Label: "lb/1000 ft³", Factor: pound / (1000 * cubicFoot), System: InchPound, Decimals: 1},
	}}

	Volume = &Quantity{ID: "volume", Name: "a volume", Units: []Unit{
		{ID: "m3", Label: "m³", Factor: 1, System: SI, Decimals: 3},
		{ID: "L", Label: "L", Factor: 1e-3, System: SI, Decimals: 1, Aliases: []string{"litre", "litres", "liter", "liters"}},
		{ID: "ft3", Label: "ft³", Factor: cubicFoot, System: InchPound, Decimals: 2},
	}}

	Duration = &Quantity{ID: "duration", Name: "a length of time", Units: []Unit{
		{ID: "s", Label: "s", Factor: 1, System: Either, Decimals: 0, Aliases: []string{"sec", "secs", "second", "seconds"}},
		{ID: "min", Label: "min", Factor: 60, System: Either, Decimals: 0, Aliases: []string{"minute", "minutes", "mins"}},
		{ID: "h", Label: "h", Factor: 3600, System: Either, Decimals: 1, Aliases: []string{"hour", "hours", "hr", "hrs"}},
	}}

	Fraction = &Quantity{ID: "fraction", Name: "a share", Units: []Unit{
		{ID: "1", Label: "", Factor: 1, System: Either, Decimals: 3},
		{ID: "%", Label: "%", Factor: 0.01, System: Either, Decimals: 1, Aliases: []string{"percent"}},
	}}

	Count = &Quantity{ID: "count", Name: "a whole number", Units: []Unit{
		{ID: "1", Label: "", Factor: 1, System: Either, Decimals: 0},
	}}
)

// All lists the quantities, for tests and for the page of units.
func All() []*Quantity {
	return []*Quantity{Temperature, TemperatureDifference, Pressure, VacuumPressure, PressureRate, LeakRate, Length,
		TubeDiameter, Mass, MassPerLength, Density, Concentration, Volume, Duration, Fraction, Count}
}

// StandardAtmosphere is the standard sea-level pressure, Pa.
const StandardAtmosphere = 101325.0
