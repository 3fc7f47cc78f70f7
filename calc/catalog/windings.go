package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/electrical"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Windings judges three winding resistances against each other.
var Windings = &calc.Worksheet{
	ID:      "windings",
	Title:   "Winding resistance",
	Purpose: "Whether the three motor windings agree, with the lead error taken off and every reading brought to 20 °C.",
	Inputs: []calc.Input{
		{ID: "earth", Label: "Each terminal to the bare shell, highest ohm range", Kind: calc.Choice, Default: "untested",
			Help: "Scrape the paint off first. This does not replace the insulation test.",
			Options: []calc.Option{
				{ID: "ol", Label: "Open (OL) on all three", Aliases: []string{"open"}},
				{ID: "reading", Label: "A terminal shows a reading"},
				{ID: "untested", Label: "Not tested"}}},
		{ID: "open", Label: "Pairs that show open (OL)", When: noneOpen[:1], Kind: calc.Choice, Default: "none",
			Options: []calc.Option{
				{ID: "none", Label: "None"},
				{ID: "one", Label: "One pair", Aliases: []string{"1"}},
				{ID: "two", Label: "Two pairs", Aliases: []string{"2"}},
				{ID: "three", Label: "All three pairs", Aliases: []string{"3", "all"}}}},
		windingInput("uv", "Reading U–V", "Motor leads off the inverter, link measured dead. Lead error still in it. Shows OL: say so above."),
		windingInput("vw", "Reading V–W", ""),
		windingInput("wu", "Reading W–U", ""),
		{ID: "lead", Label: "Meter with its leads together", When: noneOpen, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"ohm"},
			Optional: true, Low: 0, High: 5, BoundReason: "more is a bad lead or an empty battery", Help: "0 after a zero, and for four-wire. It is taken off each reading."},
		{ID: "digit", Label: "Last digit of the meter on this range", When: noneOpen, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"ohm"},
			Low: 1e-6, High: 10, BoundReason: "from a bridge to a coarse range", Help: "A reading of 0.8 has a last digit of 0.1 Ω; 0.82 has 0.01 Ω."},
		windingTemperature("temperature", "Shell temperature", false),
		windingTemperature("temperature-vw", "Shell temperature at V–W, if it changed", true),
		windingTemperature("temperature-wu", "Shell temperature at W–U, if it changed", true),
		{ID: "limit", Label: "Maker's limit of unbalance", When: noneOpen, Kind: calc.Quantity, Quantity: unit.Fraction, Units: []string{"%"}, Optional: true,
			Low: 0.001, High: 0.2, BoundReason: "a limit outside these would be a misprint", Help: "The maker's limit comes first. Empty: 2 and 5 %, as the trade uses."},
		{ID: "maker", Label: "Maker's resistance between terminals at 20 °C", When: noneOpen, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"ohm"}, Optional: true,
			Low: 1e-3, High: 1000, BoundReason: "motors of this trade lie between"},
	},
	Outputs: []calc.Output{
		{ID: "imbalance", Label: "Unbalance", Quantity: unit.Fraction, Units: []string{"%"}, Main: true},
		{ID: "doubt", Label: "Of which the meter's last digit may make, up or down", Quantity: unit.Fraction, Units: []string{"%"}},
		{ID: "uv-20", Label: "U–V at 20 °C", Quantity: unit.Resistance, Units: []string{"ohm"}, Significant: 4},
		{ID: "vw-20", Label: "V–W at 20 °C", Quantity: unit.Resistance, Units: []string{"ohm"}, Significant: 4},
		{ID: "wu-20", Label: "W–U at 20 °C", Quantity: unit.Resistance, Units: []string{"ohm"}, Significant: 4},
		{ID: "mean-20", Label: "Mean at 20 °C", Quantity: unit.Resistance, Units: []string{"ohm"}, Significant: 4},
		{ID: "maker-difference", Label: "Mean against the maker's value", Quantity: unit.Fraction, Units: []string{"%"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "balanced", Tone: calc.Good, Title: "Windings agree"},
		{ID: "recheck", Tone: calc.Doubt, Title: "Measure again"},
		{ID: "cannot-tell", Tone: calc.Doubt, Title: "Cannot tell with this reading"},
		{ID: "unbalanced", Tone: calc.Stop, Title: "Windings do not agree"},
		{ID: "short", Tone: calc.Stop, Title: "Short in a winding"},
		{ID: "open", Tone: calc.Stop, Title: "Open circuit"},
		{ID: "earth-fault", Tone: calc.Stop, Title: "Earth fault"},
	},
	Compute: windings,
	Limits: []string{
		"Do not use it with the motor connected to the inverter, or with readings through a contactor.",
		"Do not use it on single-phase motors with start and run windings.",
		"Equal windings do not prove the insulation, the magnets or the bearings.",
		"Unequal inductance of a permanent-magnet motor is no fault: it changes with the rotor's position.",
	},
	Cautions: []calc.Caution{deadFirst,
		{Signal: "WARNING", Hazard: "A damaged terminal can blow out of a shell under pressure.",
			Consequence: "Hot oil and refrigerant can burn or blind.",
			Avoid:       "Measure at the inverter end of the cable. Keep the terminal cover on."}},
	Sources: []string{"makers-manual", "common-practice", "iec-60228", "ohmmeter-tc", "ecm-current", "manual-13"},
	Example: []calc.Field{{Input: "earth", Text: "ol"}, {Input: "uv", Text: "0.95 ohm"}, {Input: "vw", Text: "0.96 ohm"}, {Input: "wu", Text: "1.04 ohm"},
		{Input: "lead", Text: "0.13 ohm"}, {Input: "digit", Text: "0.01 ohm"}, {Input: "temperature", Text: "34 C"}},
}

// deadFirst stands on every worksheet whose readings are taken behind the
// inverter's cover.
var deadFirst = calc.Caution{Signal: "DANGER",
	Hazard:      "The link capacitors stay charged after the power is off, and a fan that turns can charge them again.",
	Consequence: "The charge kills.",
	Avoid:       "Isolate, lock, wait the marked time, measure 50 V DC or less, and unplug the fans."}

var noneOpen = []calc.When{{Input: "earth", Is: []string{"ol", "untested"}}, {Input: "open", Is: []string{"none"}}}

func windingInput(id, label, help string) calc.Input {
	return calc.Input{ID: id, Label: label, Help: help, When: noneOpen, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"ohm"},
		Low: 0, High: 1000, BoundReason: "compressor motors read from tenths of an ohm to a few hundred"}
}

func windingTemperature(id, label string, optional bool) calc.Input {
	in := calc.Input{ID: id, Label: label, When: noneOpen, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: optional,
		Low: 253.15, High: 373.15, BoundReason: "the line for copper is trusted between these"}
	if !optional {
		in.Help = "Measured on the shell. After a stop wait hours: the winding is hotter than the shell."
	}
	return in
}

// Bands where the maker gives none: a trade article asks for 2 % of the
// average; that a turn is suspect above 5 % is common practice.
const windingsAgree, windingsSuspect = 0.02, 0.05

func windings(r *calc.Run) {
	if r.Choice("earth") == "reading" {
		r.Step("Terminal to shell", "open on the ohm range when sound", "a reading", calc.Cite{Key: "manual-13"})
		r.Conclude("earth-fault", "A terminal reads to the shell on the ohm range. A sound winding reads open there.")
		r.Advise("Take the cable off at the compressor after recovery and repeat at the bare terminals: the cable may be the fault. Do not start it.")
		return
	}
	if r.Choice("earth") == "untested" {
		r.Warn("The earth fault was not tested: measure each terminal to the bare shell.")
	}
	if open := r.Choice("open"); open != "none" {
		windingsOpen(r, open)
		return
	}
	var r20 [3]float64
	ids := [3]string{"uv", "vw", "wu"}
	names := [3]string{"U–V", "V–W", "W–U"}
	lead, digit := r.Float("lead"), r.Float("digit")
	if !r.Has("lead") {
		r.Warn("No lead error was taken off. Touch the leads together, or zero the meter: leads of 0.3 Ω hide the fault of a 0.8 Ω motor.")
	}
	for i, id := range ids {
		net := r.Float(id) - lead
		if net < -digit {
			r.Refuse("lead", calc.TooHigh, text.Say("Meter with its leads together: {} is more than the reading {}, {}; measure both again.", r.Given("lead"), names[i], r.Given(id)))
			return
		}
		t := r.Float("temperature")
		if i > 0 && r.Has("temperature-"+id) {
			t = r.Float("temperature-" + id)
		}
		r20[i] = electrical.CopperAt20(max(0, net), t)
		r.Set(id+"-20", r20[i])
		r.Step(names[i]+" at 20 °C", text.Say("(R − leads) × 254.5 ÷ (234.5 + t) = ({} − {}) × 254.5 ÷ (234.5 + {})", ohms(r, r.Float(id)), ohms(r, lead), unit.Fixedf(t-273.15, 1)),
			r.OutputText(id+"-20"), calc.Cite{Key: "iec-60228", Locator: "copper"})
	}
	mean, imbalance := electrical.Unbalance(r20[0], r20[1], r20[2])
	doubt := electrical.RoundingDoubt(digit, mean)
	if !(doubt < 0.5) {
		r.Conclude("cannot-tell", text.Say("The readings are no more than two of the meter's last digits, {}. A sound inverter motor and a short look the same here.", ohms(r, digit)))
		r.Advise("Use a four-wire or zeroed low-ohm meter that shows thousandths of an ohm.")
		return
	}
	r.Set("mean-20", mean)
	r.Set("imbalance", imbalance)
	r.Set("doubt", doubt)
	r.Step("Mean at 20 °C", "sum ÷ 3", r.OutputText("mean-20"), calc.Cite{Key: "common-practice"})
	r.Step("Unbalance", text.Say("largest difference from the mean ÷ mean, mean {}", r.OutputText("mean-20")), r.OutputText("imbalance"), calc.Cite{Key: "ecm-current"})
	r.Step("What the last digit can make of it", text.Say("⅔ × digit ÷ (mean − digit), digit {}", ohms(r, digit)), r.OutputText("doubt"), calc.Cite{Key: "common-practice", Locator: "arithmetic of rounding"})
	if r.Has("maker") {
		compareWindings(r, mean)
	}
	judgeWindings(r, r20, mean, imbalance, doubt)
}

func ohms(r *calc.Run, v float64) string { return r.Text(unit.Resistance, v, "ohm") }

// windingsOpen judges readings of which some are open.
func windingsOpen(r *calc.Run, open string) {
	r.Step("Pairs that read open", "one broken lead or phase opens two pairs", open, calc.Cite{Key: "common-practice"})
	switch open {
	case "one":
		r.Conclude("cannot-tell", "One open pair alone cannot be: a broken lead opens two pairs. A probe had no contact.")
		r.Advise("Measure all three pairs again on clean metal.")
	case "two":
		r.Conclude("open", "The lead or the phase that the two open pairs share is open.")
		r.Advise("Check its plug and its joint first. After recovery measure at the compressor's own terminals before you condemn it.")
	default:
		r.Conclude("open", "All three pairs are open: a plug that is off, an internal protector, or a failed motor.")
		r.Advise("Let the shell cool for hours, look at the plug, then measure again. An open protector is not an open winding.")
	}
}

// compareWindings holds the mean against the maker's value.
func compareWindings(r *calc.Run, mean float64) {
	d := mean/r.Float("maker") - 1
	r.Set("maker-difference", d)
	r.Step("Against the maker's value", "mean ÷ maker's − 1, maker's "+r.Given("maker"), r.OutputText("maker-difference"), calc.Cite{Key: "makers-manual"})
	// Makers print their own tolerance; a tenth covers those seen and the shell thermometer.
	if math.Abs(d) > 0.1 {
		r.Warn("The mean is more than 10 % off the maker's value. Check the lead error, the temperature, and that this is the right motor.")
	}
}

// judgeWindings holds the imbalance, with what the meter leaves open, against
// the maker's limit or the fallback bands.
func judgeWindings(r *calc.Run, r20 [3]float64, mean, imbalance, doubt float64) {
	agree, suspect, whose := windingsAgree, windingsSuspect, "no maker's limit was given: 2 % agrees, above 5 % is suspect, as the trade uses"
	if r.Has("limit") {
		agree, suspect, whose = r.Float("limit"), r.Float("limit"), "maker's limit "+r.Given("limit")
	}
	share := func(v float64) string { return r.Text(unit.Fraction, v, "%") }
	span := text.Say("The unbalance is {} to {} ({}).", share(max(0, imbalance-doubt)), share(imbalance+doubt), whose)
	switch {
	case imbalance-doubt > suspect:
		windingsApart(r, r20, span)
	case imbalance+doubt <= agree:
		r.Conclude("balanced", span)
		r.Advise("Go on to the insulation test. Write down the three values at 20 °C: they are the baseline of the next visit.")
	case doubt > agree:
		r.Conclude("cannot-tell", span+text.Say(" The meter is too coarse for this motor."))
		// Half the band may go to rounding: digit = ¾ × band × mean, and down to the next power of ten.
		r.Advise(text.Say("Use a four-wire or zeroed low-ohm meter with a last digit of {} Ω or finer.", unit.Short(math.Pow(10, math.Floor(math.Log10(0.75*agree*mean))), 1)))
	default:
		r.Conclude("recheck", span)
		r.Advise("Clean the contacts, zero the leads, let the shell settle at one temperature, and measure again. Swap the probes once.")
	}
}

// windingsApart names the phase that stands apart.
func windingsApart(r *calc.Run, r20 [3]float64, span string) {
	u, v, w := electrical.Star(r20[0], r20[1], r20[2])
	phases, names := [3]float64{u, v, w}, [3]string{"U", "V", "W"}
	mean, odd := (u+v+w)/3, 0
	for i, p := range phases {
		if math.Abs(p-mean) > math.Abs(phases[odd]-mean) {
			odd = i
		}
	}
	others := (u + v + w - phases[odd]) / 2
	r.Step("As a star", "U = (UV + WU − VW) ÷ 2, and so on", text.Say("U {}, V {}, W {}", ohms(r, u), ohms(r, v), ohms(r, w)), calc.Cite{Key: "common-practice", Locator: "arithmetic"})
	if phases[odd] < others/2 {
		r.Conclude("short", text.Say("{} Phase {} has less than half the resistance of the others: shorted turns, or a short in the cable.", span, names[odd]))
	} else if phases[odd] < others {
		r.Conclude("unbalanced", text.Say("{} Phase {} is low: shorted turns are likely.", span, names[odd]))
	} else {
		r.Conclude("unbalanced", text.Say("{} Phase {} is high: a poor joint, a loose plug, broken strands, or shorted turns in the other two.", span, names[odd]))
	}
	r.Advise("Look at plug, joint and cable first. Repeat now, and at the compressor's own terminals after recovery, before you condemn it.")
}
