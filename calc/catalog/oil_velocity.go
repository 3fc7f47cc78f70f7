package catalog

import (
	"math"
	"strings"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/charge"
	"changeout/calc/formula/cycle"
	"changeout/calc/formula/oil"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

var (
	capacityUnits = []string{"kW", "ton", "Btu/h"}
	speedUnits    = []string{"m/s", "ft/min"}
)

// OilVelocity answers whether suction gas carries the oil home.
var OilVelocity = &calc.Worksheet{
	ID:      "oil-velocity",
	Title:   "Oil return velocity",
	Purpose: "How fast the suction gas flows, below which capacity it leaves oil behind, and what a wide filter shell does to it.",
	Inputs: []calc.Input{
		refrigerantInput(),
		{ID: "place", Label: "Line", Kind: calc.Choice, Options: []calc.Option{{ID: "level", Label: "Level, sloped with the flow"}, {ID: "riser", Label: "Riser, gas flows up"}}},
		{ID: "outside", Label: "Outside diameter of the tube", Kind: calc.Quantity, Quantity: unit.TubeDiameter, Units: boreUnits, Low: 5e-3, High: 0.15, BoundReason: "suction lines of this trade"},
		{ID: "wall", Label: "Wall", Kind: calc.Quantity, Quantity: unit.TubeDiameter, Units: boreUnits, Optional: true, Low: 0, High: 6e-3, BoundReason: "the thickest copper wall", Help: "Not needed for a standard tube. 0 if you entered the bore."},
		{ID: "shell", Label: "Bore of a filter shell in the line", Kind: calc.Quantity, Quantity: unit.TubeDiameter, Units: boreUnits, Optional: true, Low: 10e-3, High: 0.6, BoundReason: "shells of this trade"},
		{ID: "evaporating", Label: "Evaporating temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 223.15, High: 303.15, BoundReason: "from a freezer to a hot start", Help: "Dew temperature at suction pressure."},
		{ID: "superheat", Label: "Superheat in this line", Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Default: "5 K", Low: 0, High: 60, BoundReason: "hotter gas stops the machine"},
		{ID: "liquid", Label: "Liquid temperature before the valve", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 233.15, High: 343.15, BoundReason: "liquid lines of this trade"},
		{ID: "lowest", Label: "Lowest capacity", Kind: calc.Quantity, Quantity: unit.Power, Units: capacityUnits, Low: 50, High: 2e6, BoundReason: "systems of this trade", Help: "Heat taken up at the evaporator that this line serves, at the lowest compressor speed."},
		{ID: "full", Label: "Full capacity", Kind: calc.Quantity, Quantity: unit.Power, Units: capacityUnits, Low: 50, High: 2e6, BoundReason: "systems of this trade"},
	},
	Outputs: []calc.Output{
		{ID: "speed-low", Label: "Gas speed at the lowest capacity", Quantity: unit.Velocity, Units: speedUnits, Significant: 3, Main: true},
		{ID: "speed-full", Label: "Gas speed at full capacity", Quantity: unit.Velocity, Units: speedUnits, Significant: 3, Main: true},
		{ID: "asked", Label: "Speed asked for", Quantity: unit.Velocity, Units: speedUnits, Significant: 3, Main: true},
		{ID: "least", Label: "Smallest capacity with that speed", Quantity: unit.Power, Units: capacityUnits, Significant: 3, Main: true},
		{ID: "flooding", Label: "Oil runs down the riser below", Quantity: unit.Velocity, Units: speedUnits, Significant: 3},
		{ID: "flooding-capacity", Label: "Capacity at that speed", Quantity: unit.Power, Units: capacityUnits, Significant: 3},
		{ID: "flow", Label: "Mass flow at full capacity", Quantity: unit.MassFlow, Units: []string{"kg/s", "kg/h", "lb/h"}, Significant: 3},
		{ID: "density", Label: "Gas density", Quantity: unit.Density, Units: []string{"kg/m3", "lb/ft3"}, Significant: 3},
		{ID: "shell-speed", Label: "Gas speed in the shell, full capacity", Quantity: unit.Velocity, Units: speedUnits, Significant: 2, Main: true},
		{ID: "ratio", Label: "Area ratio, shell to pipe", Quantity: unit.Fraction, Units: []string{"1"}, Significant: 3},
	},
	Verdicts: []calc.Verdict{
		{ID: "shell", Tone: calc.Stop, Title: "The shell traps oil", Main: []string{"shell-speed", "speed-full"}},
		{ID: "never", Tone: calc.Stop, Title: "Too slow even at full capacity", Main: []string{"speed-full", "asked"}},
		{ID: "short", Tone: calc.Stop, Title: "Too slow at low capacity", Main: []string{"speed-low", "asked", "least"}},
		{ID: "between", Tone: calc.Doubt, Title: "The guides differ at low capacity", Main: []string{"speed-low", "asked", "least"}},
		{ID: "fast", Tone: calc.Doubt, Title: "Carries oil, but fast: noise and pressure loss", Main: []string{"speed-full"}},
		{ID: "carried", Tone: calc.Good, Title: "Fast enough at every capacity", Main: []string{"speed-low", "asked", "least"}},
	},
	Compute: oilVelocity,
	Limits: []string{
		"The maker's piping table comes first. Inverter multi-splits also run oil-return cycles; units without power defeat them.",
		"Heating: enter the heat that the outdoor coil takes up, not the heat delivered.",
		"Do not use it for liquid or discharge lines, or for wet gas.",
		"Cold oil without refrigerant in it is thick and needs more speed.",
	},
	Cautions: []calc.Caution{hotAndJet},
	Sources:  append([]string{"jacobs-1976", "manual-17", "practice-80", "practice-47", "ashrae-refrigeration", "astm-b280", "common-practice", "makers-manual", "from-memory", "coolprop-8"}, equationKeys...),
	Example: []calc.Field{{Input: "refrigerant", Text: "R-410A"}, {Input: "place", Text: "riser"}, {Input: "outside", Text: "28.6 mm"}, {Input: "shell", Text: "120 mm"}, {Input: "evaporating", Text: "5 C"}, {Input: "superheat", Text: "6 K"},
		{Input: "liquid", Text: "35 C"}, {Input: "lowest", Text: "6 kW"}, {Input: "full", Text: "28 kW"}},
}

func oilVelocity(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	bore, ok := suctionBore(r)
	if !ok {
		return
	}
	show := func(q *unit.Quantity, v float64, units []string) string { return r.Text(q, v, units...) }
	speed := func(v float64) string { return show(unit.Velocity, v, speedUnits) }
	T, superheat, low, full := r.Float("evaporating"), r.Float("superheat"), r.Float("lowest"), r.Float("full")
	if low > full*(1+1e-9) {
		r.Refuse("lowest", "order", text.Say("Lowest capacity: {} is more than the full capacity of {}; change one of them.", r.Given("lowest"), r.Given("full")))
		return
	}
	dew, err := ref.DewAtT(T)
	if err != nil {
		refuseState(r, ref, "evaporating", err)
		return
	}
	gas, _, err := cycle.Suction(ref, T+superheat, dew.P)
	if err != nil {
		refuseState(r, ref, "evaporating", err)
		return
	}
	liquid, err := ref.SaturatedLiquid(r.Float("liquid"))
	if err != nil {
		refuseState(r, ref, "liquid", err)
		return
	}
	rise := gas.Enthalpy - liquid.Enthalpy
	if !(rise > 1e4) {
		r.Refuse("liquid", calc.TooHigh, text.Say("Liquid temperature before the valve: {} leaves nothing to evaporate; enter less.", r.Given("liquid")))
		return
	}
	flow := oil.MassFlow(full, rise)
	at := func(d float64) float64 { return oil.Velocity(flow, gas.Rho, d) } // at full capacity
	fast := at(bore)
	slow := fast * low / full
	r.Set("density", gas.Rho)
	r.Set("flow", flow)
	r.Set("speed-full", fast)
	r.Set("speed-low", slow)
	r.Step("Gas density", text.Say("ρ at {} dew and {} superheat", r.Given("evaporating"), r.Given("superheat")), r.OutputText("density"), equationCite(ref))
	r.Step("Enthalpy taken up", "h suction − h liquid at "+r.Given("liquid"), show(unit.SpecificEnthalpy, rise, []string{"kJ/kg", "Btu/lb"}), equationCite(ref))
	r.Step("Mass flow at full capacity", "Q ÷ Δh, Q = "+r.Given("full"), r.OutputText("flow"), equationCite(ref))
	r.Step("Gas speed at full capacity", "ṁ ÷ (ρ π d²/4)", r.OutputText("speed-full"), calc.Cite{Key: "common-practice"})
	r.Step("Gas speed at the lowest capacity", text.Say("the same × {} ÷ {}", r.Given("lowest"), r.Given("full")), r.OutputText("speed-low"), calc.Cite{Key: "common-practice"})

	riser := r.Choice("place") == "riser"
	asked := func(d float64) float64 {
		if riser {
			return math.Max(oil.RiserSpeed, oil.Flooding(gas.Rho, d))
		}
		return oil.LevelSpeed
	}
	need, floor := asked(bore), oil.LevelSpeed
	if riser {
		v := oil.Flooding(gas.Rho, bore)
		floor = math.Max(oil.RiserLeast, v)
		r.Set("flooding", v)
		r.Set("flooding-capacity", full*v/fast)
		r.Step("Oil runs down the riser below", "0.85² √((ρl − ρ) g d ÷ ρ), ρl = 1000 kg/m³", r.OutputText("flooding"), calc.Cite{Key: "jacobs-1976"})
		r.Step("A general table for risers", "at least", speed(oil.RiserLeast), calc.Cite{Key: "practice-80"})
	}
	r.Set("asked", need)
	r.Set("least", full*need/fast)
	r.Step("Speed asked for", pick(riser, "8 m/s in a riser, up to 12; more where oil would still run down", "4 m/s in a level line"), r.OutputText("asked"), calc.Cite{Key: "manual-17"})
	r.Step("Smallest capacity with that speed", "full capacity × asked ÷ speed at full", r.OutputText("least"), calc.Cite{Key: "common-practice"})
	r.Step("Speeds of suction gas, handbook", "4.5 to 20 m/s", speed(oil.Fastest)+" at most", calc.Cite{Key: "ashrae-refrigeration"})

	power := axisUnit(r, unit.Power, capacityUnits)
	velocity := axisUnit(r, unit.Velocity, speedUnits)
	drawing := chart.Chart{XTitle: "capacity, " + power.Label, YTitle: velocity.Label}
	line := func(d float64, class, name string) {
		drawing.Lines = append(drawing.Lines, chart.Line{Class: class, Name: name, X: []float64{low / power.Factor, full / power.Factor}, Y: []float64{at(d) * low / full / velocity.Factor, at(d) / velocity.Factor}})
	}
	smaller, larger := charge.Neighbours(bore)
	for _, tube := range []charge.Tube{smaller, larger} {
		if tube.Outside > 0 && full > low {
			d := tube.Bore()
			line(d, "co-chart__line", show(unit.TubeDiameter, tube.Outside, boreUnits))
			r.Step(text.Say("Tube {} instead", show(unit.TubeDiameter, tube.Outside, boreUnits)), text.Say("speed {} to {}", speed(at(d)*low/full), speed(at(d))),
				text.Say("enough from {}", r.Text(unit.Power, full*asked(d)/at(d), capacityUnits...)), calc.Cite{Key: "astm-b280"})
		}
	}
	trap, ok := shellSpeed(r, bore, fast)
	if !ok {
		return
	}
	concludeOilSpeed(r, slow, fast, need, floor, trap)
	if full > low {
		line(bore, "co-chart__fit", "this pipe")
		drawing.Levels = []chart.Level{{Class: "co-chart__limit", Label: "asked for " + r.OutputText("asked"), Y: need / velocity.Factor}}
		if riser {
			drawing.Levels = append(drawing.Levels, chart.Level{Class: "co-chart__target", Label: "oil runs down " + r.OutputText("flooding"), Y: oil.Flooding(gas.Rho, bore) / velocity.Factor})
		}
		drawing.Label = text.Say("Gas speed from {} to {} against capacity; {} is asked for. {}.", r.OutputText("speed-low"), r.OutputText("speed-full"), r.OutputText("asked"), r.VerdictTitle())
		if svg := drawing.SVG(); svg != "" {
			r.Chart("Gas speed and capacity, for this pipe and the next tube sizes", svg)
		}
	}
}

// suctionBore finds the bore from the outside diameter.
func suctionBore(r *calc.Run) (float64, bool) {
	outside := r.Float("outside")
	bore := outside - 2*r.Float("wall")
	if !r.Has("wall") {
		tube, ok := charge.StandardTube(outside)
		if !ok {
			r.Refuse("wall", calc.Missing, text.Say("Wall is missing: {} is not a standard tube here; enter its wall, or 0 if you entered the bore.", r.Given("outside")))
			return 0, false
		}
		bore = tube.Bore()
	}
	if bore < 3e-3 {
		r.Refuse("wall", calc.TooHigh, text.Say("Wall: {} leaves no bore in a tube of {}; enter less.", r.Given("wall"), r.Given("outside")))
		return 0, false
	}
	r.Step("Bore", "outside diameter − 2 walls", r.Text(unit.TubeDiameter, bore, boreUnits...), calc.Cite{Key: "astm-b280"})
	return bore, true
}

// shellSpeed sets what a shell does; trap is true where oil falls out in it.
func shellSpeed(r *calc.Run, bore, fast float64) (trap, ok bool) {
	if !r.Has("shell") {
		return false, true
	}
	ratio := oil.Spread(r.Float("shell"), bore)
	if ratio <= 1 {
		r.Refuse("shell", calc.TooLow, text.Say("Bore of a filter shell: {} is not wider than the pipe; enter more, or leave it out.", r.Given("shell")))
		return false, false
	}
	r.Set("ratio", ratio)
	r.Set("shell-speed", fast/ratio)
	r.Step("Area ratio, shell to pipe", "(shell bore ÷ pipe bore)²", r.OutputText("ratio"), calc.Cite{Key: "common-practice"})
	r.Step("Gas speed in the shell, full capacity", "speed in the pipe ÷ ratio", r.OutputText("shell-speed"), calc.Cite{Key: "practice-47"})
	return fast/ratio < oil.LevelSpeed, true
}

func concludeOilSpeed(r *calc.Run, slow, fast, need, floor float64, trap bool) {
	from := text.Say("It needs {} or more for {}", r.OutputText("least"), r.OutputText("asked"))
	id, line := "carried", from+"."
	switch {
	case fast < floor:
		id, line = "never", text.Say("{} at full capacity: oil stays in this line.", r.OutputText("speed-full"))
	case slow < floor:
		id, line = "short", text.Say("{}. At the lowest capacity it has {}: oil collects, and may come back as a slug.", from, r.OutputText("speed-low"))
	case slow < need:
		id, line = "between", from+"; another table is content with 5 m/s (1000 ft/min)."
	case fast > oil.Fastest:
		id = "fast"
	}
	if trap {
		r.Conclude("shell", text.Say("The gas slows to {} in it, and oil falls out. An outlet above the bottom fills the shell to its lip first.", r.OutputText("shell-speed")))
		r.Advise("Take out a clean-up shell that has done its work. If one must stay: outlet at the bottom.")
		if id != "carried" {
			r.Warn("The line itself: " + line)
		}
	} else {
		r.Conclude(id, line)
	}
	if id == "never" || id == "short" || id == "between" {
		r.Advise("Compare with the maker's piping table. Let the oil-return cycle run; avoid long running at the lowest speed.")
		if r.Choice("place") == "riser" {
			r.Advise("A trap at the foot and every further 4 m, a narrower riser, or a double riser.")
		}
	}
}

// axisUnit is the unit that the person would expect on an axis.
func axisUnit(r *calc.Run, q *unit.Quantity, offered []string) *unit.Unit {
	_, label, _ := strings.Cut(r.Text(q, 0, offered...), "\u00a0")
	for _, id := range offered {
		if u := q.Unit(id); u.Label == label {
			return u
		}
	}
	return q.Unit(offered[0])
}
