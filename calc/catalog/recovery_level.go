package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/recovery"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

var (
	underUS      = []calc.When{{Input: "jurisdiction", Is: []string{"us"}}}
	levelUnits   = []string{"kPaa", "inHgv", "kPag", "barg", "mbar", "psia"}
	tableOfLevel = calc.Cite{Key: "cfr156", Locator: "table 1"}
)

// RecoveryLevel answers how far down a system must be pumped before it is opened.
var RecoveryLevel = &calc.Worksheet{
	ID:      "recovery-level",
	Title:   "Recovery level",
	Purpose: "How far down to recover before the system is opened, and whether the level holds.",
	Inputs: []calc.Input{
		{ID: "jurisdiction", Label: "Rules of", Kind: calc.Choice, Options: []calc.Option{
			{ID: "us", Label: "United States (40 CFR 82.156)"}, {ID: "eu", Label: "European Union"}, {ID: "uk", Label: "United Kingdom"}, {ID: "other", Label: "Elsewhere"}}},
		refrigerantInput(),
		{ID: "appliance", Label: "Appliance", When: underUS, Kind: calc.Choice, Default: "built", Options: []calc.Option{
			{ID: "built", Label: "Larger, or built on site"}, {ID: "small", Label: "Factory-sealed, 5 lb (2.3 kg) or less"}}},
		{ID: "charge", Label: "Full charge of the appliance, or of the part you isolate", When: underUS, Kind: calc.Quantity, Quantity: unit.Mass, Units: massUnits,
			Low: 0.01, High: 20000, BoundReason: "from a drinks cooler to a large chiller", Help: "The rule divides at 200 lb (90.7 kg)."},
		{ID: "machine", Label: "Recovery machine made", When: underUS, Kind: calc.Choice, Default: "since", Options: []calc.Option{
			{ID: "since", Label: "On or after 15 November 1993"}, {ID: "before", Label: "Before 15 November 1993"}}, Help: "On its rating plate."},
		{ID: "situation", Label: "Situation", When: underUS, Kind: calc.Choice, Default: "ordinary", Options: []calc.Option{
			{ID: "ordinary", Label: "Repair that opens the circuit, or disposal"},
			{ID: "leaking", Label: "A leak makes the level impossible, or would draw in air"},
			{ID: "minor", Label: "Not a major repair, and no evacuation afterwards"}},
			Help: "A compressor change is a major repair: choose the first."},
		{ID: "reached", Label: "Pressure when the machine stopped", Kind: calc.Quantity, Quantity: unit.Pressure, Units: levelUnits, Optional: true,
			Low: 100, High: 1.5e6, BoundReason: "from a deep vacuum to a system barely pumped", Help: "Gauge both sides. A closed valve hides pressure."},
		{ID: "after", Label: "Pressure after the wait", Kind: calc.Quantity, Quantity: unit.Pressure, Units: levelUnits, Optional: true,
			Low: 100, High: 1.5e6, BoundReason: "from a deep vacuum to a system barely pumped", Help: "Machine off, valves closed, oil warm."},
		{ID: "wait", Label: "Wait", Kind: calc.Quantity, Quantity: unit.Duration, Units: []string{"min", "h"}, Optional: true, Low: 0, High: 7 * 86400, BoundReason: "up to a week"},
		altitudeInput(),
	},
	Outputs: []calc.Output{
		{ID: "level", Label: "Recover down to", Quantity: unit.Pressure, Units: levelUnits, Main: true},
		{ID: "saturation", Label: "Pressure of its liquid at 40 °C (104 °F)", Quantity: unit.Pressure, Units: []string{"kPaa", "psia"}},
		{ID: "rise", Label: "Rise in the wait", Quantity: unit.PressureDifference, Units: []string{"kPa", "psi"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "level", Tone: calc.Info, Title: "The level to reach"},
		{ID: "practice-level", Tone: calc.Info, Title: "No number in this rule: a good-practice level"},
		{ID: "not-reached", Tone: calc.Stop, Title: "Not down to the level: go on recovering"},
		{ID: "rising", Tone: calc.Stop, Title: "Refrigerant is still coming out: recover again", Main: []string{"level", "rise"}},
		{ID: "settling", Tone: calc.Doubt, Title: "Not settled: wait longer", Main: []string{"level", "rise"}},
		{ID: "held", Tone: calc.Good, Title: "The level is reached and holds"},
	},
	Compute: recoveryLevel,
	Limits: []string{
		"Do not take the legal level as proof that no refrigerant is left. Oil keeps some.",
		"Do not use it for vehicle air conditioning, or where a permit or local rule asks for more.",
		"It sees only the part where the gauge is. Electronic valves chop a multi-split into closed sections.",
	},
	Cautions: []calc.Caution{{Signal: "WARNING", Hazard: "Refrigerant boils out of warm oil after the machine has stopped.",
		Consequence: "Gas and oil mist can burn in a torch flame, or strike you from an opened joint.",
		Avoid:       "Wait, read both sides again, evacuate, and fill with nitrogen to zero gauge before any flame."}},
	Sources: append([]string{"cfr156", "cfr156b", "cfr-82-152", "cfr-82-152-study", "gwtext", "eu573", "practice-53", "from-memory", "common-practice", "coolprop-8"}, equationKeys...),
	Example: []calc.Field{
		{Input: "jurisdiction", Text: "us"}, {Input: "refrigerant", Text: "R-410A"}, {Input: "appliance", Text: "built"}, {Input: "charge", Text: "42 lb"}, {Input: "machine", Text: "since"},
		{Input: "situation", Text: "ordinary"}, {Input: "reached", Text: "12 inHgv"}, {Input: "after", Text: "9 inHgv"}, {Input: "wait", Text: "10 min"},
	},
}

func recoveryLevel(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	if r.Has("after") && !r.Has("reached") {
		r.Refuse("reached", calc.Missing, "Pressure when the machine stopped is missing: the rise is counted from it.")
		return
	}
	lawful := r.Choice("jurisdiction") == "us"
	var limit float64
	if lawful {
		limit = levelUS(r, ref)
	} else {
		// −0.7 bar gauge is the deep end of the range that practice gives.
		limit = setLevel(r, math.Min(unit.StandardAtmosphere, r.Atmosphere())-70e3, "the deep end of −0.3 to −0.7 bar gauge", calc.Cite{Key: "common-practice"})
		switch r.Choice("jurisdiction") {
		case "eu":
			r.Step("Rule", "Regulation (EU) 2024/573: recovery by certified persons", "no pressure given", calc.Cite{Key: "eu573", Locator: "article 8"})
		case "uk":
			r.Step("Rule", "Regulation (EU) 517/2014 as kept in the UK: recovery by certified persons", "no pressure given", calc.Cite{Key: "from-memory", Locator: "article 8"})
		}
		r.Advise("National rules and the standard in force govern: ask for the level that they set.")
	}
	concludeLevel(r, limit, lawful)
	if lawful && r.Choice("situation") == "ordinary" {
		r.Advise("The legal level leaves gas in the pipes and oil. Before a flame, go to −0.3 to −0.7 bar gauge (9 to 21 in Hg vacuum), evacuate, and add nitrogen to zero gauge.")
	} else {
		r.Advise("Before a flame, evacuate, add nitrogen to zero gauge, and read both sides again.")
	}
}

func setLevel(r *calc.Run, p float64, formula string, cite calc.Cite) float64 {
	r.Set("level", p)
	r.Step("Recover down to", formula, r.OutputText("level"), cite)
	return p
}

// levelUS finds the row of the regulation's table.
func levelUS(r *calc.Run, ref *refrigerant.Refrigerant) float64 {
	zero := math.Min(unit.StandardAtmosphere, r.Atmosphere())
	switch {
	case r.Choice("appliance") == "small":
		return setLevel(r, recovery.Level(4, zero), "4 in Hg below 29.9; or by weight 90 % where its compressor runs, 80 % where not", calc.Cite{Key: "from-memory", Locator: "40 CFR 82.156(b)"})
	case r.Choice("situation") == "leaking":
		r.Advise("Isolate the leaking part. Recover all other parts to the full level of the table.")
		return setLevel(r, zero, "lowest that can be reached, and no higher than 0 psi gauge", calc.Cite{Key: "gwtext", Locator: "page 285"})
	case r.Choice("situation") == "minor":
		return setLevel(r, zero, "no higher than 0 psi gauge", calc.Cite{Key: "cfr156b", Locator: "82.156(a)(1)"})
	}
	large, since := r.Float("charge") >= recovery.LargeCharge, r.Choice("machine") == "since"
	low, high := recovery.VeryHigh, recovery.VeryHigh
	value := "no liquid: very high pressure"
	if b, err := ref.BubbleAtT(313.15); err == nil {
		r.Set("saturation", b.P)
		value = r.OutputText("saturation")
		// Equations, tables and batches differ by a percent or two at a class line.
		low, high = recovery.ClassOf(b.P*0.98), recovery.ClassOf(b.P*1.02)
	}
	names := [...]string{"low", "medium", "high", "very high"}
	r.Step("Pressure class", "low to 45, medium to 170, high to 355 psi absolute, from the liquid at 40 °C", value+": "+names[low], calc.Cite{Key: "cfr-82-152", Locator: "definitions"})
	one, other := recovery.Inches(low, large, since), recovery.Inches(high, large, since)
	inches := math.Max(one, other)
	if one != other {
		r.Warn(text.Say("{} lies within 2 % of a class line. The deeper level of {} and {} pressure is shown.", ref.Name, names[low], names[high]))
	}
	return setLevel(r, recovery.Level(inches, zero), text.Say("29.9 − {} in Hg; 200 lb {}", unit.Short(inches, 4), pick(large, "or more", "not reached")), tableOfLevel)
}

// pick chooses between two values.
func pick[T any](first bool, a, b T) T {
	if first {
		return a
	}
	return b
}

// enoughWait is the shortest wait that counts, s; practice waits 5 to 10 minutes.
const enoughWait = 300

func concludeLevel(r *calc.Run, limit float64, lawful bool) {
	level := r.OutputText("level")
	reached, after := r.Float("reached"), r.Float("after")
	rise := after - reached
	if r.Has("after") {
		r.Set("rise", rise)
		r.Step("Rise in the wait", "after − when the machine stopped", r.OutputText("rise"), calc.Cite{Key: "practice-53"})
	}
	// A gauge counts from 29.92 in Hg where the table says 29.9, 75 Pa apart: a reading at the level itself must count as reached.
	limit += math.Min(100, limit/100)
	switch {
	case !r.Has("reached") && lawful:
		r.Conclude("level", text.Say("Recover down to {}, stop the machine, wait a few minutes, and read again.", level))
	case !r.Has("reached"):
		r.Conclude("practice-level", text.Say("Good practice recovers to {} and sees it hold for 5 to 10 minutes with warm oil. The law of the place governs.", level))
	case reached > limit:
		r.Conclude("not-reached", text.Say("{} is above {}.", r.Given("reached"), level))
		r.Advise("Warm the accumulator, the separator and the sump. Frost marks liquid. Check that every valve is open.")
	case r.Has("after") && after > limit:
		r.Conclude("rising", text.Say("It came up to {}, above {}: liquid is left, or gas is leaving the oil.", r.Given("after"), level))
		r.Advise("Warm the oil, recover again, and repeat the wait.")
	case !r.Has("after") || !r.Has("wait") || r.Float("wait") < enoughWait:
		r.Conclude("settling", text.Say("{} is reached. Wait 5 to 10 minutes with the machine off, then enter the second reading and the wait.", level))
	// 10 kPa (0.1 bar) is what a service manifold shows for certain.
	case rise > 10e3:
		r.Conclude("settling", text.Say("It is below {}, but rose by {} in the wait. Recover again, so that the rise stays below 10 kPa (1.5 psi).", level, r.OutputText("rise")))
	default:
		r.Conclude("held", text.Say("After {} it stands at {}, at or below {}.", r.Given("wait"), r.Given("after"), level))
	}
}
