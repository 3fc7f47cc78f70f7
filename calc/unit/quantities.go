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
	gravity     = 9.80665
	btu         = 1055.05585262 // international table
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
		// Two decimals of a kilogram or a pound: a technician's scale shows steps of 5 g or 0.01 lb (common practice, no source).
		{ID: "kg", Label: "kg", Factor: 1, System: SI, Decimals: 2},
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
		{ID: "kg/L", Label: "kg/L", Factor: 1e3, System: SI, Decimals: 3},
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
		{ID: "mL", Label: "mL", Factor: 1e-6, System: SI, Decimals: 0},
		{ID: "floz", Label: "fl oz", Factor: 231 * inch * inch * inch / 128, System: InchPound, Decimals: 1},
	}}

	// WaterCapacity is the volume of a cylinder, stamped in litres or as the mass of water that fills it (taken as 1 kg/L).
	WaterCapacity = &Quantity{ID: "water-capacity", Name: "a water capacity", Units: []Unit{
		{ID: "m3", Label: "m³", Factor: 1, System: Either, Decimals: 4},
		{ID: "L", Label: "L", Factor: 1e-3, System: SI, Decimals: 1, Aliases: []string{"litre", "litres", "liter", "liters"}},
		{ID: "kg", Label: "kg water", Factor: 1e-3, System: SI, Decimals: 1},
		{ID: "lb", Label: "lb water", Factor: pound / 1000, System: InchPound, Decimals: 1, Aliases: []string{"lbs"}},
	}}

	Duration = &Quantity{ID: "duration", Name: "a length of time", Units: []Unit{
		{ID: "s", Label: "s", Factor: 1, System: Either, Decimals: 0, Aliases: []string{"sec", "secs", "second", "seconds"}},
		{ID: "min", Label: "min", Factor: 60, System: Either, Decimals: 0, Aliases: []string{"minute", "minutes", "mins"}},
		{ID: "h", Label: "h", Factor: 3600, System: Either, Decimals: 1, Aliases: []string{"hour", "hours", "hr", "hrs"}},
		{ID: "d", Label: "days", Factor: 86400, System: Either, Decimals: 1, Aliases: []string{"day", "days"}},
	}}

	Fraction = &Quantity{ID: "fraction", Name: "a share", Units: []Unit{
		{ID: "1", Label: "", Factor: 1, System: Either, Decimals: 3},
		{ID: "%", Label: "%", Factor: 0.01, System: Either, Decimals: 1, Aliases: []string{"percent"}},
	}}

	Count = &Quantity{ID: "count", Name: "a whole number", Units: []Unit{
		{ID: "1", Label: "", Factor: 1, System: Either, Decimals: 0},
	}}
)

// The quantities of electrical readings, of flow, of air and of energy.
var (
	// PressureDifference has no datum: 10 kPa is 1.45 psi wherever it is read.
	PressureDifference = &Quantity{ID: "pressure-difference", Name: "a pressure difference", Units: []Unit{
		{ID: "Pa", Label: "Pa", Factor: 1, System: Either, Decimals: 0},
		{ID: "kPa", Label: "kPa", Factor: 1e3, System: SI, Decimals: 1},
		{ID: "bar", Label: "bar", Factor: 1e5, System: SI, Decimals: 3},
		{ID: "mbar", Label: "mbar", Factor: 100, System: SI, Decimals: 1},
		{ID: "psi", Label: "psi", Factor: psi, System: InchPound, Decimals: 2},
		{ID: "inH2O", Label: "in H₂O", Factor: 249.08891, System: InchPound, Decimals: 2, Aliases: []string{"inwc", "inwg", "inh2o"}},
	}}

	Voltage = &Quantity{ID: "voltage", Name: "a voltage", Units: []Unit{
		{ID: "V", Label: "V", Factor: 1, System: Either, Decimals: 1, Aliases: []string{"volt", "volts"}},
		{ID: "kV", Label: "kV", Factor: 1e3, System: Either, Decimals: 3},
	}}
	Current = &Quantity{ID: "current", Name: "a current", Units: []Unit{
		{ID: "A", Label: "A", Factor: 1, System: Either, Decimals: 2, Aliases: []string{"amp", "amps"}},
		{ID: "mA", Label: "mA", Factor: 1e-3, System: Either, Decimals: 1},
	}}
	Resistance = &Quantity{ID: "resistance", Name: "a resistance", Units: []Unit{
		{ID: "ohm", Label: "Ω", Factor: 1, System: Either, Decimals: 3, Aliases: []string{"ohms", "Ω", "ω", "r"}},
		{ID: "kohm", Label: "kΩ", Factor: 1e3, System: Either, Decimals: 3, Aliases: []string{"k", "kiloohm"}},
		{ID: "Mohm", Label: "MΩ", Factor: 1e6, System: Either, Decimals: 2, Aliases: []string{"meg", "megohm", "megohms"}},
		{ID: "Gohm", Label: "GΩ", Factor: 1e9, System: Either, Decimals: 3, Aliases: []string{"gigohm"}},
	}}
	Capacitance = &Quantity{ID: "capacitance", Name: "a capacitance", Units: []Unit{
		{ID: "F", Label: "F", Factor: 1, System: Either, Decimals: 6},
		{ID: "uF", Label: "µF", Factor: 1e-6, System: Either, Decimals: 0, Aliases: []string{"mfd"}},
		{ID: "mF", Label: "mF", Factor: 1e-3, System: Either, Decimals: 3},
	}}
	Frequency = &Quantity{ID: "frequency", Name: "a frequency", Units: []Unit{
		{ID: "Hz", Label: "Hz", Factor: 1, System: Either, Decimals: 1},
		{ID: "rpm", Label: "rpm", Factor: 1.0 / 60, System: Either, Decimals: 0, Aliases: []string{"r/min"}},
	}}
	Energy = &Quantity{ID: "energy", Name: "an energy", Units: []Unit{
		{ID: "J", Label: "J", Factor: 1, System: Either, Decimals: 1},
		{ID: "kJ", Label: "kJ", Factor: 1e3, System: SI, Decimals: 1},
		{ID: "ftlbf", Label: "ft·lbf", Factor: foot * pound * gravity, System: InchPound, Decimals: 0},
	}}
	Power = &Quantity{ID: "power", Name: "a power", Units: []Unit{
		{ID: "W", Label: "W", Factor: 1, System: Either, Decimals: 0},
		{ID: "kW", Label: "kW", Factor: 1e3, System: SI, Decimals: 2},
		{ID: "ton", Label: "tons", Factor: 12000 * btu / 3600, System: InchPound, Decimals: 2, Aliases: []string{"tons", "tr"}},
		{ID: "Btu/h", Label: "Btu/h", Factor: btu / 3600, System: InchPound, Decimals: 0, Aliases: []string{"btuh"}},
		{ID: "hp", Label: "hp", Factor: 550 * foot * pound * gravity, System: InchPound, Decimals: 2},
	}}

	// VolumeFlow is air through a coil or gas into a pump.
	VolumeFlow = &Quantity{ID: "volume-flow", Name: "a volume flow", Units: []Unit{
		{ID: "m3/s", Label: "m³/s", Factor: 1, System: SI, Decimals: 4},
		{ID: "m3/h", Label: "m³/h", Factor: 1.0 / 3600, System: SI, Decimals: 1},
		{ID: "L/s", Label: "L/s", Factor: 1e-3, System: SI, Decimals: 1},
		{ID: "L/min", Label: "L/min", Factor: 1e-3 / 60, System: SI, Decimals: 1, Aliases: []string{"lpm"}},
		{ID: "cfm", Label: "cfm", Factor: cubicFoot / 60, System: InchPound, Decimals: 1, Aliases: []string{"ft3/min"}},
		{ID: "cfh", Label: "ft³/h", Factor: cubicFoot / 3600, System: InchPound, Decimals: 1, Aliases: []string{"ft3/h", "scfh"}},
	}}
	MassFlow = &Quantity{ID: "mass-flow", Name: "a mass flow", Units: []Unit{
		{ID: "kg/s", Label: "kg/s", Factor: 1, System: SI, Decimals: 4},
		{ID: "kg/h", Label: "kg/h", Factor: 1.0 / 3600, System: SI, Decimals: 1},
		{ID: "lb/h", Label: "lb/h", Factor: pound / 3600, System: InchPound, Decimals: 1},
	}}
	// MassPerTime is a slow loss of refrigerant.
	MassPerTime = &Quantity{ID: "mass-per-time", Name: "a loss of mass over time", Units: []Unit{
		{ID: "kg/s", Label: "kg/s", Factor: 1, System: Either, Decimals: Scientific},
		{ID: "g/year", Label: "g/year", Factor: 1e-3 / 31557600, System: SI, Decimals: 1, Aliases: []string{"g/a"}},
		{ID: "kg/year", Label: "kg/year", Factor: 1.0 / 31557600, System: SI, Decimals: 3},
		{ID: "oz/year", Label: "oz/year", Factor: ounce / 31557600, System: InchPound, Decimals: 2},
		{ID: "lb/year", Label: "lb/year", Factor: pound / 31557600, System: InchPound, Decimals: 2},
	}}
	Velocity = &Quantity{ID: "velocity", Name: "a velocity", Units: []Unit{
		{ID: "m/s", Label: "m/s", Factor: 1, System: SI, Decimals: 2},
		{ID: "ft/min", Label: "ft/min", Factor: foot / 60, System: InchPound, Decimals: 0, Aliases: []string{"fpm"}},
	}}
	SpecificEnthalpy = &Quantity{ID: "specific-enthalpy", Name: "a specific enthalpy", Units: []Unit{
		{ID: "J/kg", Label: "J/kg", Factor: 1, System: Either, Decimals: 0},
		{ID: "kJ/kg", Label: "kJ/kg", Factor: 1e3, System: SI, Decimals: 1},
		{ID: "Btu/lb", Label: "Btu/lb", Factor: btu / pound, System: InchPound, Decimals: 1},
	}}
	HumidityRatio = &Quantity{ID: "humidity-ratio", Name: "a humidity ratio", Units: []Unit{
		{ID: "kg/kg", Label: "kg/kg", Factor: 1, System: Either, Decimals: 5},
		{ID: "g/kg", Label: "g/kg", Factor: 1e-3, System: SI, Decimals: 1},
		{ID: "gr/lb", Label: "gr/lb", Factor: 1.0 / 7000, System: InchPound, Decimals: 0},
	}}
	Area = &Quantity{ID: "area", Name: "an area", Units: []Unit{
		{ID: "m2", Label: "m²", Factor: 1, System: SI, Decimals: 2},
		{ID: "ft2", Label: "ft²", Factor: foot * foot, System: InchPound, Decimals: 1},
	}}
	Viscosity = &Quantity{ID: "viscosity", Name: "a viscosity", Units: []Unit{
		{ID: "Pas", Label: "Pa·s", Factor: 1, System: Either, Decimals: Scientific},
		{ID: "uPas", Label: "µPa·s", Factor: 1e-6, System: Either, Decimals: 1},
		{ID: "cP", Label: "mPa·s", Factor: 1e-3, System: Either, Decimals: 3, Aliases: []string{"mpas"}},
	}}
	// CarbonMass is a mass of carbon dioxide that warms as much.
	CarbonMass = &Quantity{ID: "carbon-mass", Name: "a CO₂-equivalent mass", Units: []Unit{
		{ID: "kg", Label: "kg CO₂e", Factor: 1, System: Either, Decimals: 0},
		{ID: "t", Label: "t CO₂e", Factor: 1e3, System: Either, Decimals: 2, Aliases: []string{"tonne", "tonnes"}},
	}}
	// AcidNumber is base needed to neutralise the acid in oil.
	AcidNumber = &Quantity{ID: "acid-number", Name: "an acid number", Units: []Unit{
		{ID: "mgKOH/g", Label: "mg KOH/g", Factor: 1, System: Either, Decimals: 2},
	}}
	// MassShare is a small share by mass, such as water in oil.
	MassShare = &Quantity{ID: "mass-share", Name: "a share by mass", Units: []Unit{
		{ID: "kg/kg", Label: "kg/kg", Factor: 1, System: Either, Decimals: 6},
		{ID: "ppm", Label: "ppm", Factor: 1e-6, System: Either, Decimals: 0, Aliases: []string{"mg/kg"}},
	}}
)

// All lists the quantities, for tests and for the page of units.
func All() []*Quantity {
	return []*Quantity{Temperature, TemperatureDifference, Pressure, VacuumPressure, PressureRate, LeakRate, Length,
		TubeDiameter, Mass, MassPerLength, Density, Concentration, Volume, Duration, Fraction, Count,
		PressureDifference, Voltage, Current, Resistance, Capacitance, Frequency, Energy, Power, VolumeFlow, MassFlow, MassPerTime,
		Velocity, SpecificEnthalpy, HumidityRatio, Area, Viscosity, CarbonMass, AcidNumber, MassShare, WaterCapacity, Date}
}

// StandardAtmosphere is the standard sea-level pressure, Pa.
const StandardAtmosphere = 101325.0
