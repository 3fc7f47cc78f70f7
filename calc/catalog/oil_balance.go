package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/oil"
	"changeout/calc/text"
	"changeout/calc/unit"
)

var oilUnits = []string{"L", "mL", "floz"}

// OilBalance answers how much oil a new compressor must hold.
var OilBalance = &calc.Worksheet{
	ID:      "oil-balance",
	Title:   "Oil balance",
	Purpose: "How much oil to take out of the new compressor or put in, from what was measured and what the maker gives.",
	Inputs: []calc.Input{
		{ID: "circuit", Label: "Circuit", Kind: calc.Choice, Options: []calc.Option{
			{ID: "known", Label: "One compressor, not washed"}, {ID: "washed", Label: "One compressor, circuit washed clean of oil"}, {ID: "several", Label: "Inverter multi-split, or several compressors"}}},
		{ID: "match", Label: "Oil in the new compressor", Kind: calc.Choice, Options: []calc.Option{
			{ID: "same", Label: "Same type as in the circuit"}, {ID: "different", Label: "Another type"}, {ID: "unknown", Label: "Not known"}}, Help: "Nameplate or manual of both."},
		oilVolume("factory", "Factory charge of the new compressor", "Nameplate or manual. What is in the shell now.", false),
		oilVolume("old-factory", "Factory charge of the old compressor", "If it differs from the new one.", true),
		oilVolume("drained", "Oil drained from the old compressor", "Shaken, all of it, foam gone: refrigerant in the oil makes it look like more.", true),
		oilVolume("vessels", "Oil taken out of vessels and traps", "Separators, accumulators, filter shells, low loops: measured.", true),
		oilVolume("shares", "Oil shares of the vessels", "From the unit's table.", true, calc.When{Input: "circuit", Is: []string{"washed"}}),
		oilVolume("length", "Extra oil for long pipes", "Only if the maker gives a rule.", true, calc.When{Input: "circuit", Is: []string{"washed"}}),
		oilVolume("table", "Oil for the new compressor by the unit's table", "The maker's figure comes before every sum.", true),
		oilVolume("sister", "Oil drained from a sister compressor", "Of the same size, to compare.", true, calc.When{Input: "circuit", Is: []string{"several"}}),
	},
	Outputs: []calc.Output{
		{ID: "hold", Label: "Oil the new compressor must hold", Quantity: unit.Volume, Units: oilUnits, Significant: 3, Main: true},
		{ID: "take-out", Label: "Take out", Quantity: unit.Volume, Units: oilUnits, Significant: 2, Main: true},
		{ID: "put-in", Label: "Put in", Quantity: unit.Volume, Units: oilUnits, Significant: 2, Main: true},
		{ID: "share", Label: "Drained, of the factory charge", Quantity: unit.Fraction, Units: percent, Significant: 3, Main: true},
		{ID: "missing", Label: "Left in the circuit, or lost", Quantity: unit.Volume, Units: oilUnits, Significant: 2},
		{ID: "sister-share", Label: "Sister, of the factory charge", Quantity: unit.Fraction, Units: percent, Significant: 3},
	},
	Verdicts: []calc.Verdict{
		{ID: "mismatch", Tone: calc.Stop, Title: "Oil types must match: do not fit it"},
		{ID: "measure", Tone: calc.Doubt, Title: "Measure the oil first"},
		{ID: "ask", Tone: calc.Doubt, Title: "Ask the maker for the unit's oil table"},
		{ID: "find-oil", Tone: calc.Stop, Title: "Find the missing oil first", Main: []string{"share", "missing"}},
		{ID: "too-much", Tone: calc.Stop, Title: "More oil than belongs there: find out why", Main: []string{"share"}},
		{ID: "take", Tone: calc.Good, Title: "Take oil out of the new compressor", Main: []string{"take-out", "hold"}},
		{ID: "put", Tone: calc.Good, Title: "Put oil in", Main: []string{"put-in", "hold"}},
		{ID: "leave", Tone: calc.Good, Title: "Leave the factory charge in", Main: []string{"hold", "share"}},
	},
	Compute: oilBalance,
	Limits: []string{
		"The unit's oil table governs. Several makers want the factory charge left in.",
		"The sum restores what was there. Oil lost by a leak, or taken out at an earlier change, stays missing.",
		"Do not add oil through the suction port of a running machine unless the maker gives a method.",
	},
	Cautions: []calc.Caution{{Signal: "WARNING", Hazard: "Drained oil can be acid, hot and foaming.", Consequence: "It can burn skin and eyes.",
		Avoid: "Zero pressure first. Wear acid-proof gloves and goggles. Let the shell cool."}},
	Sources: []string{"practice-98", "practice-101", "common-practice", "makers-manual"},
	Example: []calc.Field{{Input: "circuit", Text: "known"}, {Input: "match", Text: "same"}, {Input: "factory", Text: "2.0 L"}, {Input: "drained", Text: "1.4 L"}, {Input: "vessels", Text: "0.25 L"}},
}

func oilVolume(id, label, help string, optional bool, when ...calc.When) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, Optional: optional, When: when, Kind: calc.Quantity, Quantity: unit.Volume, Units: oilUnits,
		Low: pick(id == "factory" || id == "old-factory", 0.05e-3, 0), High: 50e-3, BoundReason: "compressors of this trade hold less"}
}

func oilBalance(r *calc.Run) {
	factory, old, drained, vessels := r.Float("factory"), r.Float("old-factory"), r.Float("drained"), r.Float("vessels")
	if !r.Has("old-factory") {
		old = factory
	}
	r.Step("Oil type", "POE makes acid with water, PVE does not; types do not mix", pick(r.Choice("match") == "same", "same", "not the same, or not known"), calc.Cite{Key: "practice-101"})
	if r.Has("drained") {
		r.Set("share", drained/old)
		r.Step("Drained, of the factory charge", text.Say("{} ÷ factory; 50 to 120 % is a measure", r.Given("drained")), r.OutputText("share"), calc.Cite{Key: "common-practice"})
	}
	if r.Has("sister") {
		r.Set("sister-share", r.Float("sister")/old)
		r.Step("Sister, of the factory charge", r.Given("sister")+" ÷ factory", r.OutputText("sister-share"), calc.Cite{Key: "common-practice"})
		compareSisters(r, drained/old, r.Float("sister")/old)
	}
	total := oil.Balance(drained, vessels)
	found := total/old >= oil.LittleOil
	several := r.Choice("circuit") == "several"
	switch {
	case r.Choice("match") != "same":
		r.Conclude("mismatch", pick(r.Choice("match") == "different", "Two oil types in one circuit can spoil both.", "Read both nameplates or manuals before you fit it."))
		r.Advise("Ask the maker. Do not top up with another oil.")
	case r.Has("drained") && drained/old > oil.MuchOil:
		r.Conclude("too-much", text.Say("{} came out, more than 120 % of the factory charge. Refrigerant in the oil, or overfilling. No sum is made from it.", r.Given("drained")))
		r.Advise("Let the oil stand until the foam is gone and measure again. Ask what was added. Measure the sister.")
	case r.Choice("circuit") == "known" && total/old > oil.MuchOil:
		r.Conclude("too-much", "Compressor and vessels together gave more than 120 % of the factory charge: topped up before, or the vessels have shares of their own. Ask for the unit's oil table.")
	case r.Has("drained") && !found && r.Choice("circuit") != "washed":
		r.Conclude("find-oil", text.Say("Only {} of a factory charge was found. The rest comes back as a slug, or was lost.", unit.Significant(100*total/old, 2)+" %"))
		r.Advise("Open filter shells, accumulator and low points. Measure what you find and enter it.")
	case r.Has("table"):
		holdOil(r, r.Float("table"), factory, "the unit's table", "makers-manual")
	case several:
		r.Conclude("ask", "Several compressors share the oil: no sum replaces the unit's table.")
		r.Advise("Total = factory oil of all compressors + shares of separators and accumulators + the maker's extra for length.")
	case r.Choice("circuit") == "washed":
		if !r.Has("shares") {
			r.Conclude("ask", "The shares of separator and accumulator are missing: enter 0 if there are none.")
			return
		}
		holdOil(r, oil.Washed(factory, r.Float("shares"), r.Float("length")), factory, "factory charge + vessel shares + the maker's extra for length", "common-practice")
	case !r.Has("drained"):
		r.Conclude("measure", "Without the amount that came out there is no sum. Drain it into a jug; never guess.")
		r.Advise("Oil gone? Weigh the old compressor against its plate, or ask the maker.")
	default:
		holdOil(r, total, factory, "all that left: drained + vessels and traps", "practice-98")
		missing := old - total
		r.Set("missing", math.Max(0, missing))
		r.Step("Left in the circuit, or lost", "factory charge − all that left", r.OutputText("missing"), calc.Cite{Key: "practice-98"})
	}
}

// holdOil concludes from the amount that the new compressor must hold.
func holdOil(r *calc.Run, hold, factory float64, formula, key string) {
	r.Set("hold", hold)
	r.Step("Oil the new compressor must hold", formula, r.OutputText("hold"), calc.Cite{Key: key})
	change := hold - factory
	// What the jug leaves open is no reason to open the shell, but a table is exact.
	slack := pick(key == "makers-manual", 1e-9, oil.JugError)
	switch {
	case change < -slack*factory:
		r.Set("take-out", -change)
		r.Step("Take out", "factory charge − must hold", r.OutputText("take-out"), calc.Cite{Key: key})
		r.Conclude("take", text.Say("Take {} out; otherwise the oil left in the circuit is doubled. Too much oil slugs and foams.", r.OutputText("take-out")))
		r.Advise("Release the holding charge slowly first. Drain into a measured jug, nitrogen at hand, plugs back at once.")
	case change > slack*factory:
		r.Set("put-in", change)
		r.Step("Put in", "must hold − factory charge", r.OutputText("put-in"), calc.Cite{Key: key})
		r.Conclude("put", text.Say("Put {} in, from a fresh sealed can of the same type. Too little oil starves the bearings.", r.OutputText("put-in")))
	default:
		r.Conclude("leave", "What it must hold is what is in it, within what a jug can tell.")
	}
	r.Advise("Write type, batch and amounts into the job file.")
}

func compareSisters(r *calc.Run, one, sister float64) {
	if !r.Has("drained") {
		return
	}
	low, high := math.Min(one, sister), math.Max(one, sister)
	if low < oil.LittleOil || high > oil.MuchOil {
		r.Warn(text.Say("The pair is uneven: {} and {} of a factory charge. Check equalising line, oil-return capillary and solenoid before the start.", unit.Significant(100*one, 2)+" %", r.OutputText("sister-share")))
	}
}
