package catalog

import (
	"changeout/calc"
	"changeout/calc/formula/oil"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// AcidResult turns what the tests and the eyes found into a clean-up class.
var AcidResult = &calc.Worksheet{
	ID:      "acid-result",
	Title:   "Acid result",
	Purpose: "Which clean-up the acid tests, the oil's look and the stubs ask for, what to do next, and when to test again.",
	Inputs: []calc.Input{
		{ID: "oil-type", Label: "Oil type", Kind: calc.Choice, Options: []calc.Option{{ID: "poe", Label: "POE"}, {ID: "pve", Label: "PVE"}, {ID: "mineral", Label: "Mineral or alkylbenzene", Aliases: []string{"ab", "mo"}}, {ID: "unknown", Label: "Other, mixed or not known"}}},
		{ID: "vapour", Label: "Vapour test", Kind: calc.Choice, Default: "none", Options: []calc.Option{{ID: "none", Label: "Not made"}, {ID: "negative", Label: "Negative"}, {ID: "faint", Label: "Faint"}, {ID: "positive", Label: "Positive"}}},
		{ID: "ran", Label: "When the vapour was tested", When: []calc.When{{Input: "vapour", Is: []string{"negative"}}}, Kind: calc.Choice, Options: []calc.Option{{ID: "running", Label: "Running, or just stopped"}, {ID: "stopped", Label: "Stopped for hours or longer"}},
			Help: "Acid rides in oil mist. A negative on standing gas proves little."},
		{ID: "oil", Label: "Oil test", Kind: calc.Choice, Default: "none", Options: []calc.Option{{ID: "none", Label: "Not made"}, {ID: "negative", Label: "Negative"}, {ID: "borderline", Label: "Borderline"}, {ID: "positive", Label: "Positive"}}},
		{ID: "kit", Label: "Kit and sample", When: []calc.When{{Input: "oil", Is: []string{"negative", "borderline", "positive"}}}, Kind: calc.Choice, Options: []calc.Option{{ID: "right", Label: "Kit suits this oil, fresh sample"}, {ID: "wrong", Label: "Kit for another oil, or not known"}, {ID: "stale", Label: "Sample old, or stood open"}}},
		{ID: "acid-number", Label: "Acid number from a laboratory", Kind: calc.Quantity, Quantity: unit.AcidNumber, Units: []string{"mgKOH/g"}, Optional: true, Low: 0, High: 50, BoundReason: "more is no oil"},
		{ID: "look", Label: "Oil", Kind: calc.Choice, Options: []calc.Option{{ID: "clear", Label: "Clear, pale or slightly yellow, no burnt smell"}, {ID: "brown", Label: "Brown, darkened"}, {ID: "black", Label: "Black, sludge or burnt smell"},
			{ID: "green", Label: "Green or blue tint"}, {ID: "milky", Label: "Milky, foam that stays"}, {ID: "unseen", Label: "Not seen"}}, Help: "Shake before you sample: mud lies at the bottom. Smell at arm's length."},
		{ID: "stub", Label: "Suction stub and old drier", Kind: calc.Choice, Options: []calc.Option{{ID: "clean", Label: "Clean"}, {ID: "stain", Label: "Light stain"}, {ID: "soot", Label: "Soot or carbon"}, {ID: "unseen", Label: "Not seen, circuit closed"}}},
		{ID: "sediment", Label: "Sediment", Kind: calc.Choice, Default: "none", Options: []calc.Option{{ID: "none", Label: "None"}, {ID: "metal", Label: "Metal glitter"}, {ID: "flakes", Label: "Black flakes, not metal"}}},
	},
	Outputs: []calc.Output{
		{ID: "first", Label: "First repeat test, after running", Quantity: unit.Duration, Units: []string{"h", "d"}, Significant: 2, Main: true},
		{ID: "last", Label: "Last repeat test, after", Quantity: unit.Duration, Units: []string{"d", "h"}, Significant: 2, Main: true},
		{ID: "limit", Label: "Acid number, limit for this oil", Quantity: unit.AcidNumber, Units: []string{"mgKOH/g"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "severe", Tone: calc.Stop, Title: "Severe: full clean-up"},
		{ID: "residual", Tone: calc.Stop, Title: "Residual acid: clean up as mild, find the water"},
		{ID: "mild", Tone: calc.Stop, Title: "Mild clean-up"},
		{ID: "suspect", Tone: calc.Doubt, Title: "Suspect: new oil and drier, test again"},
		{ID: "again", Tone: calc.Doubt, Title: "Not decidable: test again"},
		{ID: "none", Tone: calc.Good, Title: "No acid found"},
	},
	Compute: acidResult,
	Limits: []string{
		"The test kit's and the compressor maker's limits come first. No society publishes one.",
		"One compressor proves nothing about its sisters: run it for each.",
		"A go/no-go kit turns at one number only. Read which in its instructions.",
	},
	Cautions: []calc.Caution{{Signal: "WARNING", Hazard: "Oil and gas from a burnt compressor carry acid and poison.", Consequence: "They can burn eyes, skin and lungs.",
		Avoid: "Wear acid-proof gloves and goggles. Ventilate, or wear a mask. Open ports slowly."}},
	Sources: []string{"practice-40", "practice-41", "practice-42", "manual-15", "manual-32", "manual-51", "cho", "achracid", "common-practice", "makers-manual"},
	Example: []calc.Field{{Input: "oil-type", Text: "poe"}, {Input: "vapour", Text: "faint"}, {Input: "oil", Text: "positive"}, {Input: "kit", Text: "right"}, {Input: "acid-number", Text: "0.24 mgKOH/g"},
		{Input: "look", Text: "brown"}, {Input: "stub", Text: "stain"}},
}

func acidResult(r *calc.Run) {
	mineral := r.Choice("oil-type") == "mineral"
	ester := !mineral && r.Choice("oil-type") != "unknown"
	watch, limit, key := oil.MineralLimit, oil.MineralLimit, "practice-40"
	if ester {
		watch, limit, key = oil.EsterWatch, oil.EsterLimit, "manual-51"
	}
	r.Set("limit", limit)
	formula := "mineral oil: above it, severe"
	switch r.Choice("oil-type") {
	case "unknown":
		formula = "oil not known: the lowest limit counts"
	case "poe", "pve":
		formula = "from 0.10 test again, above 0.19 change oil and driers" + pick(r.Choice("oil-type") == "pve", "; PVE has no number of its own", "")
	}
	r.Step("Acid number, limit for this oil", formula, r.OutputText("limit"), calc.Cite{Key: key})

	worst, best := oil.Unknown, oil.Bad
	take := func(label string, level oil.Level, why, key string) {
		r.Step(label, why, [...]string{"does not count", "negative", "borderline", "positive"}[level+1], calc.Cite{Key: key})
		if level == oil.Unknown {
			r.Warn(label + ": " + why + ".")
			return
		}
		worst, best = max(worst, level), min(best, level)
	}
	// A bad sample or a still gas can hide acid; it cannot unmake a positive.
	level := map3(r.Choice("vapour"), "negative", "faint", "positive")
	switch {
	case level == oil.Unknown:
	case level == oil.Fine && r.Choice("ran") == "stopped":
		take("Vapour test", oil.Unknown, "a negative on standing gas proves nothing", "common-practice")
	case level == oil.Fine && !mineral:
		take("Vapour test", oil.Unknown, "a negative can miss the weak acids that stay in this oil", "achracid")
	default:
		take("Vapour test", level, "as read", "practice-42")
	}
	level = map3(r.Choice("oil"), "negative", "borderline", "positive")
	switch {
	case level == oil.Unknown:
	case level == oil.Fine && r.Choice("kit") != "right":
		take("Oil test", oil.Unknown, "a negative from a wrong kit or an old sample proves nothing", "achracid")
	default:
		take("Oil test", level, "as read", "practice-42")
		if r.Choice("kit") != "right" {
			r.Warn("The oil test counts until a fresh sample in the right kit says otherwise.")
		}
	}
	over := false
	if r.Has("acid-number") {
		number := r.Float("acid-number")
		over = number > limit
		take("Acid number", oil.Number(number, watch, limit), text.Say("{}, against the limit", r.Given("acid-number")), key)
	}
	look, stub := oil.Middling, map3(r.Choice("stub"), "clean", "stain", "soot")
	switch r.Choice("look") {
	case "clear":
		look = oil.Fine
	case "black":
		look = oil.Bad
	case "milky", "unseen":
		look = oil.Unknown
	}
	class := oil.Classify(worst, look, stub)
	if over && !ester {
		class = oil.Severe // the army manual's limit is one of a severe burnout
	}
	r.Step("Class", "the mildest row of the table that covers all findings", [...]string{"not decidable", "none", "suspect", "mild", "residual", "severe"}[class],
		calc.Cite{Key: "practice-40", Locator: "signs of severity; rows common practice"})
	acidConflicts(r, worst, best, look, stub)
	concludeAcid(r, class, worst, look, stub)
}

// map3 turns three words into levels; any other is unknown.
func map3(s string, fine, middling, bad string) oil.Level {
	switch s {
	case fine:
		return oil.Fine
	case middling:
		return oil.Middling
	case bad:
		return oil.Bad
	}
	return oil.Unknown
}

// acidConflicts says which findings do not go together; the worse one counted.
func acidConflicts(r *calc.Run, worst, best, look, stub oil.Level) {
	if worst > best && best == oil.Fine {
		r.Warn("The tests disagree. The worse one counts. Repeat with a fresh sample.")
	}
	if worst == oil.Fine && (look == oil.Bad || stub == oil.Bad) {
		r.Warn("A negative test does not fit black oil or soot. The worse finding counts. Test a shaken, fresh sample.")
	}
	if worst == oil.Fine && r.Choice("look") == "green" {
		r.Warn("A green tint is copper salt from acid and water; the negative test does not fit. Repeat it.")
	}
	if look == oil.Fine && stub == oil.Bad {
		r.Warn("Clear oil above soot: shake the compressor and sample again.")
	}
	if r.Choice("look") == "milky" {
		r.Advise("Milky oil holds refrigerant or water. Warm it and look again.")
	}
	switch r.Choice("sediment") {
	case "metal":
		r.Advise("Metal glitter is bearing wear: find the oil or liquid cause.")
	case "flakes":
		r.Advise("Black flakes are brazing scale: clean all strainers.")
	}
}

func concludeAcid(r *calc.Run, class oil.Class, test, look, stub oil.Level) {
	open := stub == oil.Unknown || look == oil.Unknown
	repeat := func(first, last float64, key string) {
		r.Set("first", first)
		r.Set("last", last)
		r.Step("First repeat test, after running", "by the class", r.OutputText("first"), calc.Cite{Key: key})
		r.Step("Last repeat test, after", "by the class", r.OutputText("last"), calc.Cite{Key: "common-practice"})
	}
	const hour, day = 3600.0, 86400.0
	atLeast := pick(open, " At least this: soot or black oil, not yet seen, makes it severe.", "")
	switch class {
	case oil.None:
		r.Conclude("none", "Test, oil and stub agree. Standard work.")
		r.Advise("Fit a new liquid drier if the design has one.")
	case oil.Undecided:
		r.Conclude("again", pick(test == oil.Unknown, "No test that counts was made. Test fresh oil with a kit for this oil.", "The test found no acid, but oil or stub has not been seen. Look when the circuit is open."))
		r.Advise("No oil access: test the oil when the compressor comes out. Do not run a failed compressor for a test.")
	case oil.Suspect:
		repeat(24*hour, 3*day, "common-practice")
		r.Conclude("suspect", "The oil is discoloured without proof of acid."+atLeast)
		r.Advise("Change the oil in all compressors and fit a new drier. Test again after 24 to 72 h.")
	case oil.Mild, oil.Residual:
		repeat(24*hour, 14*day, "common-practice")
		if class == oil.Mild {
			r.Conclude("mild", "Some acid or stain, no sign of severity that counts."+atLeast)
		} else {
			r.Conclude("residual", "Acid in clear oil is organic acid that water made, or the rest of an earlier failure.")
			r.Advise("Find where the water came in. Have the oil's water measured.")
		}
		r.Advise("Recover, and keep the refrigerant apart if in doubt. Change the compressor. Change dark oil in its sisters.")
		r.Advise("Fit an oversized liquid drier, two-way on a reversible circuit. Sweep with nitrogen. Make a triple evacuation.")
		r.Advise("Test while it runs after 24 h, and again after 1 to 2 weeks.")
	case oil.Severe:
		repeat(24*hour, 30*day, "common-practice")
		r.Conclude("severe", pick(look == oil.Bad || stub == oil.Bad, "Black oil, burnt smell or soot: the products were pumped round.",
			pick(open, "Acid, and oil or stub not seen: severe until both are seen clean.", "Acid, with a sign of severity.")))
		r.Advise("Recover through a filter-drier into a cylinder marked for burnt refrigerant. It never goes back.")
		r.Advise("Remove all driers. Clean or replace valves, strainers, separators and accumulators. Drain the traps. Change the oil in all compressors.")
		r.Advise("Fit an oversized liquid drier. Fit a temporary suction drier only if the maker allows it.")
		r.Step("First look at the oil", "after 2 to 4 h of running, then daily until clear", "change oil and cores while dirty", calc.Cite{Key: "manual-32"})
		r.Advise("Look at the oil after 2 to 4 h, then daily until clear. Test for acid after 24 to 72 h.")
		r.Advise("After two negative tests, 24 to 48 h or more apart, the suction drier comes out. Test again after 1 to 2 weeks and 1 month.")
	}
	if class != oil.None && class != oil.Undecided {
		r.Step("Sister compressors", "the oil of all decides the size of the repair", "sample each", calc.Cite{Key: "manual-15"})
		if r.Has("acid-number") && test == oil.Middling {
			r.Advise("An acid number between the lines: one manual samples again after 1000 h.")
		}
	}
}
