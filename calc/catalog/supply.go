package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/electrical"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Supply judges a three-phase supply.
var Supply = &calc.Worksheet{
	ID:      "supply",
	Title:   "Supply voltage and unbalance",
	Purpose: "Whether three phases are even enough to run on, what an uneven supply costs a motor, and whether the currents agree.",
	Inputs: []calc.Input{
		{ID: "load", Label: "What the supply feeds", Kind: calc.Choice,
			Options: []calc.Option{
				{ID: "inverter", Label: "An inverter unit"},
				{ID: "motor", Label: "A fixed-speed motor, direct", Aliases: []string{"fixed speed", "direct"}}}},
		{ID: "loaded", Label: "Measured while it runs", Kind: calc.Choice, Default: "yes",
			Help:    "A loose lug shows only when current flows.",
			Options: []calc.Option{{ID: "yes", Label: "Yes"}, {ID: "no", Label: "No, without load"}}},
		supplyVoltage("v12", "Voltage L1–L2", "Between phases, at the unit's terminals."),
		supplyVoltage("v23", "Voltage L2–L3", ""),
		supplyVoltage("v31", "Voltage L3–L1", ""),
		{ID: "rated", Label: "Rated voltage", Kind: calc.Quantity, Quantity: unit.Voltage, Units: []string{"V"}, Optional: true,
			Low: 100, High: 1000, BoundReason: "three-phase supplies below 1 kV", Help: "From the nameplate."},
		supplyCurrent("i1", "Current L1"), supplyCurrent("i2", "Current L2"), supplyCurrent("i3", "Current L3"),
	},
	Outputs: []calc.Output{
		{ID: "unbalance", Label: "Voltage unbalance", Quantity: unit.Fraction, Units: []string{"%"}, Significant: 3, Main: true},
		{ID: "mean", Label: "Mean voltage", Quantity: unit.Voltage, Units: []string{"V"}},
		{ID: "iec", Label: "Unbalance factor as IEC defines it", Quantity: unit.Fraction, Units: []string{"%"}, Significant: 3},
		{ID: "off-rated", Label: "Phase furthest from the rated voltage", Quantity: unit.Fraction, Units: []string{"%"}},
		{ID: "derating", Label: "Share of its power the motor may give", Quantity: unit.Fraction, Units: []string{"%"}},
		{ID: "rise", Label: "Extra temperature rise of the winding, about", Quantity: unit.Fraction, Units: []string{"%"}},
		{ID: "current-unbalance", Label: "Current unbalance", Quantity: unit.Fraction, Units: []string{"%"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "even", Tone: calc.Good, Title: "Supply is even"},
		{ID: "watch", Tone: calc.Doubt, Title: "Uneven: note it and tighten the lugs"},
		{ID: "correct", Tone: calc.Stop, Title: "Correct the supply first", Main: []string{"unbalance", "derating"}},
		{ID: "currents", Tone: calc.Doubt, Title: "Voltages are even, currents are not", Main: []string{"current-unbalance", "unbalance"}},
		{ID: "outside-band", Tone: calc.Stop, Title: "Outside ±10 % of the rating: do not start", Main: []string{"off-rated"}},
		{ID: "phase-lost", Tone: calc.Stop, Title: "A phase is missing: do not start"},
	},
	Compute: supply,
	Limits: []string{
		"Do not enter phase-to-neutral voltages: the definition is between phases.",
		"Do not use it on single-phase units.",
		"Readings that swing need a logger. One look shows one moment.",
		"Derating and extra warming are for motors fed direct. An inverter's rectifier keeps them from the compressor, not from itself.",
	},
	Cautions: []calc.Caution{{Signal: "DANGER", Hazard: "These readings are taken on live terminals.",
		Consequence: "Shock or arc flash kills.",
		Avoid:       "Only an authorised person measures, with gloves, face shield and a CAT III or IV meter."}},
	Sources: []string{"nema-mg-1", "etips", "imd", "sym", "practice-31", "practice-32", "easa", "iec-60034-26", "pillay-2001", "etbder", "ecm-current", "common-practice", "from-memory"},
	Example: []calc.Field{{Input: "load", Text: "inverter"}, {Input: "loaded", Text: "yes"}, {Input: "v12", Text: "398 V"}, {Input: "v23", Text: "412 V"}, {Input: "v31", Text: "396 V"},
		{Input: "rated", Text: "400 V"}, {Input: "i1", Text: "18.2 A"}, {Input: "i2", Text: "24.9 A"}, {Input: "i3", Text: "21.0 A"}},
}

func supplyVoltage(id, label, help string) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, Kind: calc.Quantity, Quantity: unit.Voltage, Units: []string{"V"},
		Low: 0, High: 1000, BoundReason: "three-phase supplies below 1 kV"}
}

func supplyCurrent(id, label string) calc.Input {
	return calc.Input{ID: id, Label: label, Kind: calc.Quantity, Quantity: unit.Current, Units: []string{"A"}, Optional: true,
		Low: 0, High: 2000, BoundReason: "clamp meters end here"}
}

// Limits of unbalance and of the rated voltage.
const (
	unbalanceDesigned, unbalanceCorrect, unbalanceStop = 0.01, 0.02, 0.05
	currentUnbalance, ratedBand                        = 0.10, 0.10
	slack                                              = 1e-9 // so that a value at the very limit is not above it
)

func supply(r *calc.Run) {
	v12, v23, v31 := r.Float("v12"), r.Float("v23"), r.Float("v31")
	mean, u := electrical.Unbalance(v12, v23, v31)
	if mean < 50 {
		r.Refuse("v12", calc.TooLow, "Voltage L1–L2: the mean of the three readings is below 50 V, so there is no supply to judge; measure with the power on.")
		return
	}
	// Between phase and neutral a reading is 1/√3 of the rating, 42 % low; a supply that low would not run anything.
	if r.Has("rated") && math.Abs(max(v12, v23, v31)/r.Float("rated")-1/math.Sqrt(3)) < 0.08 {
		r.Refuse("v12", "phase-to-neutral", text.Say("Voltage L1–L2: {} on a rating of {} looks like a reading from phase to neutral; enter the voltages between phases.", r.Given("v12"), r.Given("rated")))
		return
	}
	n := 0
	for _, id := range []string{"i1", "i2", "i3"} {
		if r.Has(id) {
			n++
		}
	}
	if n != 0 && n != 3 {
		r.Refuse("i1", calc.Missing, text.Say("Current L1: {} of the three currents is given; enter all three or none.", unit.Fixedf(float64(n), 0)))
		return
	}
	volts := func(v float64) string { return r.Text(unit.Voltage, v, "V") }
	r.Set("mean", mean)
	r.Set("unbalance", u)
	r.Step("Mean voltage", text.Say("({} + {} + {}) ÷ 3", volts(v12), volts(v23), volts(v31)), r.OutputText("mean"), calc.Cite{Key: "etips"})
	r.Step("Voltage unbalance", "largest difference from the mean ÷ mean", r.OutputText("unbalance"), calc.Cite{Key: "nema-mg-1"})
	if factor, ok := electrical.NegativeSequence(v12, v23, v31); ok {
		r.Set("iec", factor)
		r.Step("IEC factor, equal or up to 15 % larger", "negative over positive sequence, from the triangle of the three", r.OutputText("iec"), calc.Cite{Key: "iec-60034-26"})
	}
	off := supplyRated(r, v12, v23, v31)
	if r.Choice("load") == "motor" {
		supplyMotor(r, u)
	}
	uneven := n == 3 && supplyCurrents(r, u)
	if r.Choice("loaded") == "no" {
		r.Warn("Measured without load. A loose joint shows only when current flows: measure again while it runs.")
	}
	judgeSupply(r, min(v12, v23, v31)/mean, u, off, uneven)
}

// supplyRated compares each phase with the rated voltage and returns by what
// share the furthest is off.
func supplyRated(r *calc.Run, v ...float64) float64 {
	if !r.Has("rated") {
		r.Warn("The rated voltage is missing, so the ±10 % band was not checked.")
		return 0
	}
	off := 0.0
	for _, x := range v {
		if d := x/r.Float("rated") - 1; math.Abs(d) > math.Abs(off) {
			off = d
		}
	}
	r.Set("off-rated", off)
	r.Step("Furthest from the rating", "V ÷ rated − 1, band ±10 %", r.OutputText("off-rated"), calc.Cite{Key: "easa"})
	return math.Abs(off)
}

// supplyMotor says what the unbalance costs a motor that is fed direct.
func supplyMotor(r *calc.Run, u float64) {
	share, ok := electrical.Derating(u)
	if !ok {
		r.Warn("Above 5 % the motor should not run at all: no derating is given.")
		return
	}
	r.Set("derating", share)
	r.Set("rise", electrical.ExtraRise(u))
	r.Step("Share of its power", "read off the derating curve", r.OutputText("derating"), calc.Cite{Key: "etbder"})
	r.Step("Extra temperature rise", "about 2 × (unbalance in %)², in %", r.OutputText("rise"), calc.Cite{Key: "practice-31", Locator: "3 % gives about 20, 5 % gives 50"})
}

// supplyCurrents judges the currents and reports whether they are uneven in a
// way that the voltages do not explain.
func supplyCurrents(r *calc.Run, u float64) bool {
	mean, iu := electrical.Unbalance(r.Float("i1"), r.Float("i2"), r.Float("i3"))
	if mean < 0.1 {
		r.Warn("The currents are too small to judge.")
		return false
	}
	r.Set("current-unbalance", iu)
	r.Step("Current unbalance", "largest difference from the mean ÷ mean", r.OutputText("current-unbalance"), calc.Cite{Key: "practice-31"})
	if iu <= currentUnbalance+slack {
		return false
	}
	if r.Choice("load") == "inverter" {
		r.Warn("A rectifier makes a small voltage unbalance into a large current unbalance, most of all at part load. By itself it condemns nothing; a phase near zero is a blown fuse or rectifier.")
		return min(r.Float("i1"), r.Float("i2"), r.Float("i3")) < 0.2*mean
	}
	if u > 0 && iu <= 10*u {
		r.Warn("Current unbalance of 6 to 10 times the voltage unbalance is what a motor does on this supply. Cure the voltage first.")
	}
	return true
}

func judgeSupply(r *calc.Run, lowest, u, off float64, uneven bool) {
	share := r.OutputText("unbalance")
	switch {
	// A lost phase leaves two readings at half the third, or less.
	case lowest < 0.8:
		r.Conclude("phase-lost", "The readings are too far apart for three live phases: a fuse, a contact or a line is open, or one reading was taken to neutral.")
		r.Advise("Do not start. Isolate, prove dead, and follow the phase from the meter to the terminals.")
		return
	case off > ratedBand+slack:
		r.Conclude("outside-band", text.Say("A phase is {} off the rated voltage; the usual band is ±10 %.", r.OutputText("off-rated")))
		r.Advise("Find the voltage drop, or call the utility. Check the taps of the transformer.")
		return
	case u > unbalanceStop+slack:
		r.Conclude("correct", text.Say("{} is above 5 %, where no motor should run.", share))
	case u > unbalanceCorrect+slack:
		r.Conclude("correct", text.Say("{} is above 2 %, which is to be corrected.", share))
	case uneven:
		r.Conclude("currents", text.Say("Voltage unbalance is {}, current unbalance {}. The fault is behind the terminals, or in one joint.", share, r.OutputText("current-unbalance")))
		if r.Choice("load") == "motor" {
			r.Advise("Isolate, move all three lines one terminal on, and measure again. If the high leg stays with the line, it is the supply; if it stays with the motor, it is the motor.")
		} else {
			r.Advise("Isolate, prove dead, and check the fuses, the filter and the rectifier of the weak phase.")
		}
		return
	case u > unbalanceDesigned+slack:
		r.Conclude("watch", text.Say("{} is above the 1 % that motors are designed for, and not above 2 %.", share))
	default:
		sentence := text.Say("{} is not above 1 %.", share)
		if r.Choice("loaded") == "no" {
			sentence += " That proves nothing under load."
		}
		r.Conclude("even", sentence)
		return
	}
	r.Advise("Isolate, prove dead, and tighten every lug from the supply to the unit. Move single-phase loads to another phase. If it stays, call the utility.")
}
