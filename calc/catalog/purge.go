package catalog

import (
	"math"
	"strconv"

	"changeout/calc"
	"changeout/calc/formula/charge"
	"changeout/calc/formula/purge"
	"changeout/calc/text"
	"changeout/calc/unit"
)

var flowUnits = []string{"L/min", "m3/h", "cfh", "cfm"}

// Purge answers how long to sweep a pipe with nitrogen before brazing.
var Purge = &calc.Worksheet{
	ID:      "purge",
	Title:   "Nitrogen purge",
	Purpose: "How long to sweep the pipe before the torch is lit, and how much air is then left. How much nitrogen goes, and what stays in the cylinder.",
	Inputs: []calc.Input{
		{ID: "far-end", Label: "Far end", Kind: calc.Choice, Options: []calc.Option{
			{ID: "open", Label: "Open, with a stream to feel"}, {ID: "closed", Label: "Closed, or a valve on the way is shut"}},
			Help: "Nitrogen cannot push air out of a dead end."},
		{ID: "lines", Label: "Tubes on the way", Kind: calc.Series, MinRows: 1, MaxRows: 60, Help: "All tube between the nitrogen and the exit, one row a size. Give the bore only for tube that is not standard.",
			Columns: []calc.Column{
				{ID: "size", Label: "Outside diameter", Names: []string{"size", "od", "diameter", "tube"}, Quantity: unit.TubeDiameter, Units: []string{"mm", "in"}, Low: 3e-3, High: 110e-3},
				{ID: "length", Label: "Length", Names: []string{"length", "run"}, Quantity: unit.Length, Units: []string{"m", "ft"}, Low: 0.1, High: 1000},
				{ID: "bore", Label: "Bore", Names: []string{"bore", "id", "inside"}, Quantity: unit.TubeDiameter, Units: []string{"mm", "in"}, Low: 1e-3, High: 109e-3, Optional: true},
			}},
		{ID: "extra", Label: "Coils, headers and vessels on the way", Kind: calc.Quantity, Quantity: unit.Volume, Units: []string{"L", "ft3"}, Optional: true,
			Low: 0, High: 2, BoundReason: "a large circuit", Help: "Their inside volume."},
		{ID: "flow", Label: "Flow while purging", Kind: calc.Quantity, Quantity: unit.VolumeFlow, Units: flowUnits, Low: 1e-5, High: 5e-3, BoundReason: "what a nitrogen flowmeter shows", Help: "At the flowmeter. A regulator alone does not show flow."},
		{ID: "changes", Label: "Volume changes", Kind: calc.Choice, Default: "5", Options: []calc.Option{{ID: "3", Label: "3"}, {ID: "5", Label: "5"}, {ID: "10", Label: "10"}}, Help: "Five is common practice."},
		{ID: "trickle", Label: "Flow while brazing", Kind: calc.Quantity, Quantity: unit.VolumeFlow, Units: flowUnits, Default: "5 L/min", Low: 5e-6, High: 1e-3, BoundReason: "a stream that does not cool the joint", Help: "2 to 5 L/min is common practice."},
		{ID: "brazing", Label: "Time at that flow", Kind: calc.Quantity, Quantity: unit.Duration, Units: []string{"min", "h"}, Default: "30 min", Low: 0, High: 86400, BoundReason: "up to a day", Help: "Until the joint is cold to the hand."},
		{ID: "cylinder", Label: "Nitrogen cylinder, water capacity", Kind: calc.Quantity, Quantity: unit.WaterCapacity, Units: []string{"L", "kg", "lb"}, Optional: true, Low: 0.5e-3, High: 0.2, BoundReason: "cylinders that people move", Help: "Stamped on the shoulder: 10, 20 or 50 L."},
		{ID: "cylinder-pressure", Label: "Cylinder pressure", Kind: calc.Quantity, Quantity: unit.Pressure, Units: []string{"barg", "MPag", "kPag", "psig"}, Optional: true, Low: 2e5, High: 35e6, BoundReason: "cylinders are filled to 300 bar at most", Help: "High-pressure gauge of the regulator, gas at rest."},
		{ID: "cylinder-temperature", Label: "Cylinder temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Default: "20 C", Low: 243.15, High: 333.15, BoundReason: "weather"},
		{ID: "room-volume", Label: "Volume of the closed room", Kind: calc.Quantity, Quantity: unit.Volume, Units: []string{"m3", "ft3"}, Optional: true, Low: 1, High: 1e6, BoundReason: "from a cupboard to a hall", Help: "Only where the nitrogen stays in a room, shaft or pit."},
		altitudeInput(),
	},
	Outputs: []calc.Output{
		{ID: "time", Label: "Purge for", Quantity: unit.Duration, Units: []string{"min"}, Significant: 2, Main: true},
		{ID: "oxygen", Label: "Oxygen left in the pipe, mixed", Quantity: unit.Fraction, Units: []string{"%"}, Significant: 2, Main: true},
		{ID: "volume", Label: "Inside volume", Quantity: unit.Volume, Units: []string{"L", "ft3"}},
		{ID: "gas", Label: "Nitrogen used (21 °C, 1 atm)", Quantity: unit.Volume, Units: []string{"L", "ft3"}, Significant: 3},
		{ID: "mass", Label: "Nitrogen used", Quantity: unit.Mass, Units: []string{"kg", "lb"}},
		{ID: "cylinder-holds", Label: "In the cylinder now (21 °C, 1 atm)", Quantity: unit.Volume, Units: []string{"m3", "ft3"}},
		{ID: "cylinder-left", Label: "Cylinder pressure afterwards", Quantity: unit.Pressure, Units: []string{"barg", "MPag", "kPag", "psig"}},
		{ID: "room-oxygen", Label: "Oxygen in the room, no ventilation", Quantity: unit.Fraction, Units: []string{"%"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "purge", Tone: calc.Good, Title: "Purge, then lower to a trickle"},
		{ID: "thin", Tone: calc.Doubt, Title: "Fewer changes than practice asks", Main: []string{"oxygen", "time"}},
		{ID: "cylinder-short", Tone: calc.Stop, Title: "Not enough nitrogen: change the cylinder first", Main: []string{"gas", "cylinder-holds"}},
		{ID: "dead-end", Tone: calc.Stop, Title: "A dead end cannot be purged", Main: []string{"oxygen"}},
	},
	Compute: nitrogenPurge,
	Limits: []string{
		"Do not use it where a branch or a closed valve makes a dead end. Each open branch needs its own stream.",
		"Do not use it with a loose hose at the entry. It draws air in all the time.",
		"It proves nothing by itself: feel the stream at the exit.",
	},
	Cautions: []calc.Caution{
		{Signal: "DANGER", Hazard: "Oxygen in a pipe with oil burns like an explosive.", Consequence: "The pipe bursts and kills.", Avoid: "Connect nitrogen only, through a regulator. Read the label on the cylinder."},
		{Signal: "WARNING", Hazard: "Nitrogen pushes the air out of pits, shafts and closets.", Consequence: "A person faints without a warning sign.", Avoid: "Lead the exit outside. Air the place. Do not work alone there."},
	},
	Sources: []string{"astm-b280", "etb280", "dilution", "gas-scf", "gas-cylinder", "span-jpcrd-2000", "bnl-oxygen", "coolprop-8", "common-practice"},
	Example: []calc.Field{{Input: "far-end", Text: "open"}, {Input: "lines", Text: "size_mm;length_m\n28.6;30\n15.88;30"}, {Input: "extra", Text: "8 L"}, {Input: "flow", Text: "20 L/min"}, {Input: "changes", Text: "5"},
		{Input: "trickle", Text: "5 L/min"}, {Input: "brazing", Text: "45 min"}, {Input: "cylinder", Text: "10 L"}, {Input: "cylinder-pressure", Text: "120 barg"}, {Input: "cylinder-temperature", Text: "15 C"}, {Input: "room-volume", Text: "40 m3"}},
}

// The reference state of gas volumes in the trade, 70 °F and 1 atm.
const referenceT = 294.261

func nitrogenPurge(r *calc.Run) {
	volume, ok := purgeVolume(r)
	if !ok {
		return
	}
	changes, _ := strconv.Atoi(r.Choice("changes"))
	n, flow := float64(changes), r.Float("flow")
	time, left := purge.Time(n, volume, flow), purge.Remaining(n)
	// The flowmeter sees gas near the local atmosphere.
	local, _ := nitrogenDensity(referenceT, r.Atmosphere())
	standard, ok := nitrogenDensity(referenceT, unit.StandardAtmosphere)
	if !ok {
		return
	}
	trickle := r.Float("trickle") * r.Float("brazing")
	mass := (n*volume + trickle) * local
	dead := r.Choice("far-end") == "closed"
	if dead {
		left = purge.Air // air stays where nothing leaves
	} else {
		r.Set("time", time)
	}
	r.Set("oxygen", left)
	r.Set("volume", volume)
	r.Set("gas", mass/standard)
	r.Set("mass", mass)
	r.Step("Inside volume", "sum of π d²/4 × length, and the extra", r.OutputText("volume"), calc.Cite{Key: "astm-b280"})
	if !dead {
		r.Step("Purge for", text.Say("N V / Q = {} × {} ÷ {}", r.Choice("changes"), r.OutputText("volume"), r.Given("flow")), r.OutputText("time"), calc.Cite{Key: "common-practice"})
	}
	r.Step("Oxygen left, if the gas mixes fully", pick(dead, "nothing leaves a dead end", "20.95 % × e^(−N)"), r.OutputText("oxygen"), calc.Cite{Key: "dilution", Locator: "room purge equation"})
	r.Step("Nitrogen used (21 °C, 1 atm)", text.Say("purge N V + trickle {} × {}", r.Given("trickle"), r.Given("brazing")), r.OutputText("gas"), calc.Cite{Key: "span-jpcrd-2000"})
	enough, ok := purgeCylinder(r, mass, standard)
	if !ok {
		return
	}
	concludePurge(r, changes, enough)
	purgeRoom(r, mass/local)
}

// purgeVolume sums the tubes.
func purgeVolume(r *calc.Run) (float64, bool) {
	rows := r.Series("lines")
	sum := r.Float("extra")
	for i := range rows.Len() {
		size, bore := rows.Columns[0][i], math.NaN()
		if rows.Columns[2] != nil {
			bore = rows.Columns[2][i]
		}
		row := text.Say("Tube {}, {}", strconv.Itoa(i+1), r.Text(unit.TubeDiameter, size, "mm", "in"))
		if math.IsNaN(bore) {
			tube, ok := charge.StandardTube(size)
			if !ok {
				r.RefuseRow("lines", "unknown-tube", row+": this is not a standard tube size; enter its bore in a third column.", i+1, 0)
				return 0, false
			}
			bore = tube.Bore()
		}
		if bore >= size {
			r.RefuseRow("lines", "bore", row+": the bore must be smaller than the outside diameter.", i+1, 2)
			return 0, false
		}
		v := purge.Volume(bore, rows.Columns[1][i])
		r.Step(row, text.Say("π d²/4 × L, bore {}, length {}", r.Text(unit.TubeDiameter, bore, "mm", "in"), r.Text(unit.Length, rows.Columns[1][i], "m", "ft")), r.Text(unit.Volume, v, "L", "ft3"), calc.Cite{Key: "astm-b280"})
		sum += v
	}
	return sum, true
}

// Pressure, Pa above the atmosphere, that should stay in a cylinder so that no air gets in.
const keepInCylinder = 2e5

// purgeCylinder finds what stays in the cylinder; enough is true when none was given.
func purgeCylinder(r *calc.Run, used, standard float64) (enough, ok bool) {
	if r.Has("cylinder") != r.Has("cylinder-pressure") {
		missing, label := "cylinder", "Nitrogen cylinder, water capacity"
		if r.Has("cylinder") {
			missing, label = "cylinder-pressure", "Cylinder pressure"
		}
		r.Refuse(missing, calc.Missing, label+" is missing: volume and pressure belong together; enter it, or clear the other.")
		return false, false
	}
	if !r.Has("cylinder") {
		r.Warn("The cylinder was not checked: its volume and pressure are missing.")
		return true, true
	}
	t, v := r.Float("cylinder-temperature"), r.Float("cylinder")
	rho, ok1 := nitrogenDensity(t, r.Float("cylinder-pressure"))
	least, ok2 := nitrogenDensity(t, r.Atmosphere()+keepInCylinder)
	if !ok1 || !ok2 {
		r.Refuse("cylinder-pressure", "outside-range", "Cylinder pressure: the equation of nitrogen gave no sure answer here; check it and the temperature.")
		return false, false
	}
	r.Set("cylinder-holds", rho*v/standard)
	r.Step("In the cylinder now (21 °C, 1 atm)", text.Say("V ρ(T, p) ÷ ρ(21 °C, 1 atm) = {} × {} ÷ {}", r.Given("cylinder"), r.Text(unit.Density, rho, "kg/m3", "lb/ft3"), r.Text(unit.Density, standard, "kg/m3", "lb/ft3")), r.OutputText("cylinder-holds"), calc.Cite{Key: "span-jpcrd-2000"})
	after := rho - used/v
	if after < least {
		return false, true
	}
	p, ok := nitrogenPressure(t, after)
	if ok {
		r.Set("cylinder-left", p)
		r.Step("Cylinder pressure afterwards", "p(T, ρ − used ÷ V), real nitrogen", r.OutputText("cylinder-left"), calc.Cite{Key: "span-jpcrd-2000"})
	}
	return true, true
}

func concludePurge(r *calc.Run, changes int, enough bool) {
	switch {
	case r.Choice("far-end") == "closed":
		r.Conclude("dead-end", "No air can leave, so the joint will scale inside however long the nitrogen runs. Open the path first.")
		r.Advise("Open electronic valves in the maker's service mode, and make an exit at the far end.")
		return
	case !enough:
		r.Conclude("cylinder-short", text.Say("The job takes {} and the cylinder would fall below 2 bar gauge. A stream that ends halfway lets air in to hot copper.", r.OutputText("gas")))
	case changes < 5:
		r.Conclude("thin", text.Say("{} leaves up to {} oxygen. Five volume changes are common practice.", r.OutputText("time"), r.OutputText("oxygen")))
	default:
		r.Conclude("purge", text.Say("After {} at most {} oxygen is left. Then lower the flow to {} and check the exit again.", r.OutputText("time"), r.OutputText("oxygen"), r.Given("trickle")))
	}
	r.Advise("Keep the exit open the whole time: a closed end builds pressure and blows the filler out.")
	r.Advise("Keep the trickle until the joint is cold to the hand.")
}

// purgeRoom warns where the nitrogen would make the air of a room unsafe.
func purgeRoom(r *calc.Run, nitrogen float64) {
	if !r.Has("room-volume") {
		return
	}
	x := purge.Room(nitrogen, r.Float("room-volume"))
	r.Set("room-oxygen", x)
	r.Step("Oxygen in the room, no ventilation", "20.95 % × (1 − nitrogen ÷ room)", r.OutputText("room-oxygen"), calc.Cite{Key: "bnl-oxygen"})
	if x < 0.195 {
		r.Warn("The nitrogen alone could bring the room below 19.5 % oxygen, where air counts as deficient. Lead the exit outside and ventilate.")
	}
}
