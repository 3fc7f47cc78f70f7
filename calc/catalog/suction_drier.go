package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/drier"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

var dropUnits = []string{"kPa", "bar", "mbar", "psi", "inH2O"}

// SuctionDrier answers what a filter-drier in the suction line costs, and
// whether it stays, gets new cores or comes out.
var SuctionDrier = &calc.Worksheet{
	ID:      "suction-drier",
	Title:   "Suction drier",
	Purpose: "What the pressure drop of a suction filter-drier costs, and whether to keep it, change its cores or take it out.",
	Inputs: []calc.Input{
		refrigerantInput(),
		{ID: "evaporating", Label: "Evaporating temperature", Kind: calc.Quantity, Quantity: unit.Temperature, Units: celsius, Low: 223.15, High: 303.15,
			BoundReason: "from a freezer to a hot start", Help: "Dew temperature at the pressure before the drier."},
		{ID: "duty", Label: "Why it is there", Kind: calc.Choice, Options: []calc.Option{
			{ID: "temporary", Label: "Clean-up under way"}, {ID: "left", Label: "Left in after a finished clean-up"}, {ID: "permanent", Label: "The maker requires it"}}},
		dropInput("drop", "Pressure drop now", "One gauge moved between its two ports, or a differential gauge.", false),
		{ID: "load", Label: "Load while reading", Kind: calc.Choice, Options: []calc.Option{
			{ID: "full", Label: "Full, steady 15 min or more"}, {ID: "part", Label: "Part load, or not steady"}}, Help: "A plugged core passes at low speed."},
		dropInput("first", "First reading, when new", "Missing: zero is taken.", true),
		{ID: "cooler", Label: "Gas temperature drop across it", Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Optional: true, Low: 0, High: 30,
			BoundReason: "more is a closed valve"},
		dropInput("maker", "Filter maker's limit", "From its sheet, for this refrigerant and temperature. It comes first.", true),
		{ID: "acid", Label: "Acid tests since it was fitted", When: []calc.When{{Input: "duty", Is: []string{"temporary"}}}, Kind: calc.Choice, Options: []calc.Option{
			{ID: "none", Label: "None yet"}, {ID: "one", Label: "Last one negative"}, {ID: "two", Label: "Last two negative, 24 to 48 h or more apart"}, {ID: "positive", Label: "Last one positive"}}},
		{ID: "trend", Label: "Drop since the visit before", When: []calc.When{{Input: "duty", Is: []string{"temporary"}}}, Kind: calc.Choice, Options: []calc.Option{
			{ID: "steady", Label: "Steady"}, {ID: "climbing", Label: "Climbing"}, {ID: "unknown", Label: "No earlier reading"}}},
		{ID: "age", Label: "Time since it was fitted", When: []calc.When{{Input: "duty", Is: []string{"temporary"}}}, Kind: calc.Quantity, Quantity: unit.Duration, Units: []string{"d", "h"}, Optional: true,
			Low: 0, High: 86400 * 3660, BoundReason: "up to ten years"},
	},
	Outputs: []calc.Output{
		{ID: "loss", Label: "Saturation loss", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Significant: 2, Main: true},
		{ID: "cost", Label: "Capacity cost, at least", Quantity: unit.Fraction, Units: percent, Significant: 2, Main: true},
		{ID: "rise", Label: "Rise since new", Quantity: unit.PressureDifference, Units: dropUnits},
		{ID: "rise-loss", Label: "Saturation loss added since new", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Significant: 2},
	},
	Verdicts: []calc.Verdict{
		{ID: "change", Tone: calc.Stop, Title: "Change the cores, or take them out"},
		{ID: "remove", Tone: calc.Stop, Title: "Take the shell out, pipe straight through"},
		{ID: "repeat", Tone: calc.Doubt, Title: "Not judged: read again at full load"},
		{ID: "not-yet", Tone: calc.Doubt, Title: "Keep it for now: test again"},
		{ID: "keep", Tone: calc.Info, Title: "Inside the published limits"},
	},
	Compute: suctionDrier,
	Limits: []string{
		"The 14 kPa (2 psi) is for air conditioning. Colder suction bears less: use the filter maker's sheet.",
		"Do not use it for a liquid drier.",
		"The cost holds the evaporating temperature and the displacement. Lost pumping at the higher ratio comes on top.",
	},
	Cautions: []calc.Caution{hotAndJet},
	Sources:  append([]string{"practice-48", "manual-31", "fen-driers", "practice-80", "practice-47", "common-practice", "makers-manual", "coolprop-8"}, equationKeys...),
	Example: []calc.Field{{Input: "refrigerant", Text: "R-410A"}, {Input: "evaporating", Text: "5 C"}, {Input: "duty", Text: "temporary"}, {Input: "drop", Text: "24 kPa"},
		{Input: "load", Text: "full"}, {Input: "first", Text: "9 kPa"}, {Input: "cooler", Text: "1.2 K"}, {Input: "maker", Text: "50 kPa"}, {Input: "acid", Text: "one"}, {Input: "trend", Text: "steady"}, {Input: "age", Text: "2 d"}},
}

// hotAndJet is the caution of whoever puts a gauge on a running machine.
var hotAndJet = calc.Caution{Signal: "WARNING", Hazard: "Refrigerant and oil leave a port as a jet; discharge pipes are hot.", Consequence: "Frozen skin, blinding, burns.",
	Avoid: "Wear goggles and gloves. Open slowly. Keep hoses off hot pipes."}

func dropInput(id, label, help string, optional bool) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, Optional: optional, Kind: calc.Quantity, Quantity: unit.PressureDifference, Units: dropUnits,
		Low: 0, High: 5e5, BoundReason: "more stops the machine"}
}

func suctionDrier(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	T, drop, first := r.Float("evaporating"), r.Float("drop"), r.Float("first")
	if dew, err := ref.DewAtT(T); err != nil {
		refuseState(r, ref, "evaporating", err)
		return
	} else if worst := math.Max(drop, first); worst >= dew.P/2 {
		r.Refuse(pick(drop >= first, "drop", "first"), calc.TooHigh, text.Say("Pressure drop: {} is half the suction pressure of {} or more; enter less, or check the readings.", r.Text(unit.PressureDifference, worst), kilopascal(dew.P)))
		return
	}
	loss, kept, err1 := drier.Loss(ref, T, drop)
	before, _, err2 := drier.Loss(ref, T, first)
	if err := either(err1, err2); err != nil {
		refuseState(r, ref, "evaporating", err)
		return
	}
	kelvins := func(v float64) string { return r.Text(unit.TemperatureDifference, v, "K", "F") }
	kpa := func(v float64) string { return r.Text(unit.PressureDifference, v, dropUnits...) }
	r.Set("loss", loss)
	r.Set("cost", 1-kept)
	r.Set("rise", drop-first)
	r.Set("rise-loss", loss-before)
	r.Step("Saturation loss", text.Say("T − T dew(p dew − drop), {} and {}", r.Given("evaporating"), r.Given("drop")), r.OutputText("loss"), equationCite(ref))
	r.Step("Capacity cost, fixed displacement", "1 − ρ(p − drop, h) ÷ ρ(p, h), h of dry vapour", r.OutputText("cost"), equationCite(ref))
	r.Step("The same by a rule", "3 to 5 % for each kelvin", text.Say("{} to {} %", unit.Significant(3*loss, 2), unit.Significant(5*loss, 2)), calc.Cite{Key: "practice-80"})

	over := ""
	limit := func(label string, value, most float64, show func(float64) string, key string, binds bool) {
		word := "inside"
		if value > most*(1+1e-9) {
			word = "over"
			if binds && over == "" {
				over = text.Say("{}: {} is over {}.", label, show(value), show(most))
			} else if !binds {
				r.Warn(text.Say("{}: {} is over {}, though inside the maker's limit.", label, show(value), show(most)))
			}
		}
		r.Step(label, text.Say("{}, at most {}", show(value), show(most)), word, calc.Cite{Key: key})
	}
	free := !r.Has("maker")
	if free && T < freezing {
		r.Warn("The 14 kPa (2 psi) is for air conditioning. So cold, get the filter maker's sheet.")
	} else if !free {
		limit("Filter maker's limit", drop, r.Float("maker"), kpa, "makers-manual", true)
	}
	limit("Drop, air conditioning", drop, drier.Drop, kpa, "practice-48", free)
	if r.Has("cooler") {
		limit("Gas temperature drop", r.Float("cooler"), drier.WarmDrop, kelvins, "practice-48", free)
	}
	limit("Loss added since new", loss-before, drier.RiseSpent, kelvins, "fen-driers", free)
	if r.Has("first") {
		limit("Rise since the first reading", drop-first, drier.FirstHour, kpa, "manual-31", true)
	}
	concludeDrier(r, over)
}

func concludeDrier(r *calc.Run, over string) {
	acid, climbing := r.Choice("acid"), r.Choice("trend") == "climbing"
	temporary := r.Choice("duty") == "temporary"
	cost := text.Say(" It costs {}, at least {} of capacity.", r.OutputText("loss"), r.OutputText("cost"))
	out := false
	switch {
	case r.Choice("duty") == "left":
		out = true
		r.Conclude("remove", "A shell left in slows the gas, holds oil and sheds desiccant dust."+cost)
	case acid == "positive":
		r.Conclude("change", "Acid is still there. Change cores and oil, and start the count of tests again.")
	case acid == "two" && climbing:
		r.Conclude("change", "The drop still climbs, so carbon is moving: one more set of cores before it comes out."+cost)
	case acid == "two" && (over != "" || r.Choice("trend") == "steady" && r.Choice("load") == "full"):
		out = true
		r.Conclude("remove", "Two negative tests: its work is done."+cost)
	case over != "":
		r.Conclude("change", over+cost)
	case r.Choice("load") == "part":
		r.Conclude("repeat", "A low reading at part load proves nothing.")
	case temporary:
		r.Conclude("not-yet", pick(acid == "two", "Two negative tests, but no proof that the drop is steady: read it again.", "It comes out after two negative tests, 24 to 48 h or more apart.")+cost)
	default:
		r.Conclude("keep", pick(r.Has("maker"), "The maker's limit holds.", "No published limit is passed; get the filter maker's sheet.")+cost)
		r.Advise("Felt or pleated core only, outlet at the bottom: a wide shell holds oil.")
	}
	if out {
		r.Advise("Isolate, recover, and read zero on both sides of the shell. Cut it out cold: its oil and gas burn in a flame.")
	}
	if temporary {
		if !out {
			r.Advise("Test while it runs after 24 to 72 h, and again 24 to 48 h or more later. Tag the shell with the date it comes out.")
		}
		r.Step("When it comes out", "sources: within 3 days; the tests decide", "two negative tests", calc.Cite{Key: "practice-48"})
		r.Step("When it comes out, another source", "after a week or more; the tests decide", "two negative tests", calc.Cite{Key: "practice-47"})
		if r.Float("age") > 7*86400 {
			r.Warn("It has been in for more than a week. A forgotten clean-up shell is what fails the next compressor.")
		}
	}
}
