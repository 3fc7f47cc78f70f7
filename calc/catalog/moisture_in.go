package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/moisture"
	"changeout/calc/property/water"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// MoistureIn estimates the water that entered an open line.
var MoistureIn = &calc.Worksheet{
	ID:      "moisture-in",
	Title:   "Moisture in",
	Purpose: "How much water the air may have brought in while the circuit was open: at least, at most, and what it means for the oil and the drier.",
	Inputs: []calc.Input{
		{ID: "open-time", Label: "Open for", Kind: calc.Quantity, Quantity: unit.Duration, Units: []string{"min", "h", "d"}, Low: 1, High: 90 * 86400,
			BoundReason: "after three months take the oil as saturated", Help: "From the cut to the cap or the braze."},
		{ID: "air", Label: "Air temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 273.15, High: 323.15,
			BoundReason: "below freezing the air carries little; above 50 °C nobody works"},
		{ID: "humidity", Label: "Relative humidity", Kind: calc.Quantity, Quantity: unit.Fraction, Units: percent, Low: 0, High: 1, BoundReason: "0 to saturated", Help: "If unknown, 100 % is the safe side."},
		{ID: "bore", Label: "Bore of the open line", Kind: calc.Quantity, Quantity: unit.TubeDiameter, Units: boreUnits, Low: 1e-3, High: 0.11, BoundReason: "from a capillary to a suction header"},
		{ID: "length", Label: "From the opening to the oil or the drier", Kind: calc.Quantity, Quantity: unit.Length, Units: []string{"m", "ft"}, Low: 0.05, High: 500,
			BoundReason: "from an open shell to the far end"},
		{ID: "ends", Label: "Openings", Kind: calc.Choice, Default: "two", Options: []calc.Option{
			{ID: "one", Label: "One; the rest closed", Aliases: []string{"1"}}, {ID: "two", Label: "Two or more; air can blow through", Aliases: []string{"2"}}}},
		{ID: "volume", Label: "Volume behind the opening", Kind: calc.Quantity, Quantity: unit.Volume, Units: []string{"L", "m3", "ft3"}, Default: "50 L", Low: 0, High: 20,
			BoundReason: "up to a large plant", Help: "It breathes when the pipe warms and cools."},
		{ID: "swing", Label: "Pipe warmer or colder than the air by", Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Default: "10 K", Low: 0, High: 60,
			BoundReason: "from the shade to a roof in the sun", Help: "Also how far the pipe warms and cools in a day."},
		{ID: "oil", Label: "Oil in the open part", Kind: calc.Quantity, Quantity: unit.Mass, Units: []string{"kg", "lb"}, Low: 0.05, High: 200, BoundReason: "from one small shell to a large plant",
			Help: "About 1 kg for each litre. Count the oil that will run in it."},
		{ID: "drier", Label: "Water that the new drier can hold", Kind: calc.Quantity, Quantity: unit.Mass, Units: []string{"g", "oz"}, Optional: true, Low: 1e-4, High: 5,
			BoundReason: "from the smallest shell to a row of cores", Help: "From its data sheet, for this refrigerant at the liquid temperature."},
	},
	Outputs: []calc.Output{
		{ID: "water-low", Label: "Water in, at least", Quantity: unit.Mass, Units: []string{"g", "oz"}, Significant: 2, Main: true},
		{ID: "water-high", Label: "Water in, at most", Quantity: unit.Mass, Units: []string{"g", "oz"}, Significant: 2, Main: true},
		{ID: "oil-low", Label: "Added to the oil, at least", Quantity: unit.MassShare, Units: []string{"ppm"}, Significant: 2},
		{ID: "oil-high", Label: "Added to the oil, at most", Quantity: unit.MassShare, Units: []string{"ppm"}, Significant: 2, Main: true},
		{ID: "drier-use", Label: "Share of the drier, at most", Quantity: unit.Fraction, Units: percent, Significant: 2},
		{ID: "air-water", Label: "Water in the air", Quantity: unit.Concentration, Units: []string{"g/m3", "lb/1000ft3"}, Significant: 3},
		{ID: "air-moved", Label: "Air that may have moved in", Quantity: unit.Volume, Units: []string{"L", "m3", "ft3"}, Significant: 2},
	},
	Verdicts: []calc.Verdict{
		{ID: "small", Tone: calc.Good, Title: "Little water: a normal evacuation and a new drier", Main: []string{"oil-high", "water-high"}},
		{ID: "uncertain", Tone: calc.Doubt, Title: "It may be wet: dry with nitrogen breaks", Main: []string{"oil-low", "oil-high"}},
		{ID: "wet", Tone: calc.Stop, Title: "Take it as wet", Main: []string{"oil-low", "water-low"}},
	},
	Compute: moistureIn,
	Limits: []string{
		"Not for rain, wet pipes, a flooded trench or a cooler that leaks water. Then the water cannot be estimated.",
		"The upper figure rests on assumed draught and warmth. It is an order of size, not a measurement.",
		"Where more air passed than oil and drier could dry, there is no upper figure: nobody knows how much water stayed.",
		"Oil standing open in a can or a shell takes water from the room itself. That is not in the figures.",
		"It replaces no oil sample. Only a laboratory tells the water in the oil.",
	},
	Cautions: []calc.Caution{{Signal: "WARNING", Hazard: "An open line can still give off refrigerant from the oil.", Consequence: "It displaces air, and some refrigerants burn.",
		Avoid: "Keep the room aired and flames away until the line is closed."}},
	Sources: []string{"massman-1998", "crank-diffusion", "epstein-1988", "wagner-pruss-2002", "coolprop-8", "vacuum-tip", "ideal-gas-law", "tw", "cho", "poe-acid", "poe-uptake",
		"common-practice", "from-memory"},
	Example: []calc.Field{{Input: "open-time", Text: "4 h"}, {Input: "air", Text: "28 C"}, {Input: "humidity", Text: "70 %"}, {Input: "bore", Text: "25.3 mm"}, {Input: "length", Text: "6 m"},
		{Input: "ends", Text: "one"}, {Input: "volume", Text: "80 L"}, {Input: "swing", Text: "10 K"}, {Input: "oil", Text: "6 kg"}, {Input: "drier", Text: "20 g"}},
}

// muchWater is the share of water in oil above which no figure is shown: twice what
// open esters took up in 72 h (poe-uptake), so a larger one is no state of the oil.
const muchWater = 0.01

// draught is the pressure of wind of 3 m/s on an opening, Pa: ρ v²/2.
const draught = 5.4

func moistureIn(r *calc.Run) {
	s, t, bore, length := r.Float("open-time"), r.Float("air"), r.Float("bore"), r.Float("length")
	saturated, _ := water.SaturationPressure(math.Max(t, water.TripleTemperature))
	c := moisture.VapourDensity(saturated*r.Float("humidity"), t)
	d := moisture.Diffusivity(t, unit.StandardAtmosphere)
	r.Set("air-water", c)
	r.Step("Water in the air", "c = φ p saturation/(R T)", r.OutputText("air-water"), calc.Cite{Key: "wagner-pruss-2002", Locator: "equation 2.5"})
	r.Step("Diffusivity of water vapour in air", "D = 0.2178 cm²/s × (T/273.15)^1.81", unit.Significant(d*1e4, 3)+" cm²/s", calc.Cite{Key: "massman-1998"})
	low := moisture.Diffused(c, d, bore, length, s)
	r.Set("water-low", low)
	r.Step("Water in, at least", "Fick's law in still air, oil or drier taking all at the depth l", r.OutputText("water-low"), calc.Cite{Key: "crank-diffusion", Locator: "plane sheet"})

	practice := calc.Cite{Key: "common-practice"}
	swing := r.Float("swing")
	// One breath for the first warming or cooling, and one more for each day.
	breaths := r.Float("volume") * swing / t * (1 + s/86400)
	var flow float64
	if r.Choice("ends") == "two" {
		flow = moisture.Draught(bore, length, draught)
		r.Step("Draught through the line", "v = Δp d²/(32 η l), Δp = 5.4 Pa of a 3 m/s wind (assumed)", r.Text(unit.VolumeFlow, flow, "L/min", "cfm"), practice)
	} else {
		flow = moisture.Exchange(bore, swing, t)
		r.Step("Air trading places in the opening", "Q = 0.1 √(g d⁵ ΔT/T), the most that was found", r.Text(unit.VolumeFlow, flow, "L/min", "cfm"), calc.Cite{Key: "epstein-1988"})
	}
	air := flow*s + breaths
	r.Set("air-moved", air)
	r.Step("Air that may have moved in", "Q × time + V ΔT/T × (1 + days)", r.OutputText("air-moved"), calc.Cite{Key: "ideal-gas-law"})
	high := low + air*c
	carried := r.Text(unit.Mass, high, "g", "oz")
	judgeMoisture(r, low, high, moistureHeld(r, low, high, carried))
}

// moistureHeld sets the upper figures and says in words what the oil may gain.
// Air that blows through for hours carries more water past than oil and drier can hold;
// what stayed of it is not known, so then there is no figure.
func moistureHeld(r *calc.Run, low, high float64, carried string) (most string) {
	practice := calc.Cite{Key: "common-practice"}
	oil, drier := r.Float("oil"), r.Float("drier")
	r.Set("oil-low", low/oil)
	r.Step("Added to the oil, at least", "water at least ÷ oil", r.OutputText("oil-low"), practice)
	hold := oil*muchWater + drier
	r.Step("The most that oil and drier can hold", "1 % of the oil, twice what open esters took up in 72 h, and the drier", r.Text(unit.Mass, hold, "g", "oz"), calc.Cite{Key: "poe-uptake"})
	most = "more than it can hold"
	if high > hold {
		r.Step("Water carried by that air", "diffusion + air × c; how much of it stayed is not known", carried, practice)
		r.Step("Water in, at most", "not known", "more than oil and drier can hold", practice)
		r.Warn(text.Say("No upper figure: about {} of air may have passed, with more water in it than oil and drier hold. How much stayed nobody knows. Look for liquid water.", r.OutputText("air-moved")))
		return most
	}
	r.Set("water-high", high)
	r.Step("Water in, at most", "diffusion + air × c, all of it kept", r.OutputText("water-high"), practice)
	if high/oil <= muchWater {
		r.Set("oil-high", high/oil)
		most = r.OutputText("oil-high")
	}
	r.Step("Added to the oil, at most", "water ÷ oil", most, practice)
	if r.Has("drier") {
		r.Set("drier-use", high/drier)
		r.Step("Share of the drier", "water at most ÷ what the drier holds", r.OutputText("drier-use"), practice)
	}
	return most
}

// judgeMoisture compares with what POE may hold. New oil may hold 50 ppm; acid
// was reported to form from 75 ppm on, so 25 ppm is the room there is.
func judgeMoisture(r *calc.Run, low, high float64, most string) {
	const room = 25e-6
	oil := r.Float("oil")
	full := r.Has("drier") && high > r.Float("drier")
	added := text.Say("{} to {}", r.OutputText("oil-low"), most)
	r.Step("Room in POE", "75 ppm, where acid was reported to begin, − 50 ppm that new oil may hold", "25 ppm", calc.Cite{Key: "poe-acid"})
	r.Step("Aim in service", "POE kept below", "50 ppm", calc.Cite{Key: "tw", Locator: "page 1388"})
	r.Step("Upper limit in a chiller manual", "POE", "150 ppm", calc.Cite{Key: "cho"})
	switch {
	case high <= room*oil && !full:
		r.Conclude("small", text.Say("The oil may gain {}, within the 25 ppm that new oil has room for.", added))
		r.Advise("Fit a new drier last, evacuate, and prove it with two holds.")
	case low <= room*oil:
		r.Conclude("uncertain", text.Say("The oil may gain {}. New oil has room for 25 ppm.", added))
		r.Advise("Fit a new drier last. Do nitrogen breaks, warm the oil, and hold twice. Sample the oil after some days.")
	default:
		r.Conclude("wet", text.Say("Even in still air the oil gains {}. New oil has room for 25 ppm.", added))
		r.Advise("Change the oil that stood open. Fit a large new drier, do nitrogen breaks, hold twice, and plan a second drier and an oil sample.")
	}
	if full {
		r.Warn("More water may have come in than the drier holds. Fit a larger one, or plan to change it.")
	}
	r.Warn("POE that stands open takes water directly: esters of its kind reached 0.45 to 0.50 % (4500 to 5000 ppm) in 72 h at 20 °C. Vacuum alone does not take it out again.")
	if r.OutputText("water-high") != "" {
		r.Advise("Put the upper figure into “Pump-down” to see what drying it by vacuum would take.")
	}
	r.Advise("Next time cap the line at once and keep a little nitrogen flowing.")
}
