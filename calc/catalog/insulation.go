package catalog

import (
	"changeout/calc"
	"changeout/calc/formula/electrical"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Insulation judges the resistance from a winding to the shell.
var Insulation = &calc.Worksheet{
	ID:      "insulation",
	Title:   "Insulation resistance",
	Purpose: "What an insulation reading of a compressor motor is worth: against the maker's limit first, else against bands with their sources.",
	Inputs: []calc.Input{
		{ID: "connected", Label: "What is still connected to the motor leads", Kind: calc.Choice,
			Options: []calc.Option{
				{ID: "nothing", Label: "Nothing: U, V, W are off the inverter"},
				{ID: "inverter", Label: "The inverter or its board"}}},
		{ID: "shell", Label: "Pressure in the shell", When: motorAlone[:1], Kind: calc.Choice,
			Options: []calc.Option{
				{ID: "above", Label: "Above atmospheric, or 0 gauge with nitrogen"},
				{ID: "vacuum", Label: "Vacuum"},
				{ID: "unknown", Label: "Not known"}}},
		{ID: "state", Label: "State of the shell", When: motorAlone, Kind: calc.Choice,
			Help: "Liquid refrigerant and refrigerant in the oil lower the reading. Heat drives them off.",
			Options: []calc.Option{
				{ID: "cold", Label: "Cold, or stood without heater"},
				{ID: "warmed", Label: "Warmed by its heater for 4 h or more"},
				{ID: "recovered", Label: "Warmed, recovered, vacuum broken with nitrogen"}}},
		{ID: "shown", Label: "What the tester shows", When: motorAlone, Kind: calc.Choice, Default: "value",
			Options: []calc.Option{
				{ID: "value", Label: "A value"},
				{ID: "over", Label: "Above its range (enter the top of the range)"}}},
		{ID: "reading", Label: "Lowest reading, phase to shell, after 60 s", When: motorAlone, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"Mohm", "kohm", "Gohm"},
			Low: 0, High: 1e12, BoundReason: "field testers end below this"},
		{ID: "reading-10s", Label: "The same after 10 s", When: motorAlone, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"Mohm", "kohm", "Gohm"}, Optional: true,
			Low: 1e3, High: 1e12, BoundReason: "field testers show no less and no more"},
		{ID: "test-voltage", Label: "Test voltage", When: motorAlone, Kind: calc.Quantity, Quantity: unit.Voltage, Units: []string{"V"},
			Low: 50, High: 1000, BoundReason: "insulation testers for windings below 1 kV", Help: "250 or 500 V DC, unless the maker says otherwise. The ohm range of a meter is no insulation test."},
		{ID: "running-voltage", Label: "Motor's rated voltage", When: motorAlone, Kind: calc.Quantity, Quantity: unit.Voltage, Units: []string{"V"}, Optional: true,
			Low: 100, High: 1000, BoundReason: "windings below 1 kV"},
		{ID: "temperature", Label: "Shell temperature", When: motorAlone, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"},
			Low: 243.15, High: 393.15, BoundReason: "shells in the field lie between"},
		{ID: "limit", Label: "Maker's least resistance", When: motorAlone, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"Mohm", "kohm"}, Optional: true,
			Low: 1e4, High: 1e9, BoundReason: "makers' limits lie between", Help: "From the unit's manual. Makers differ by a factor of 50, so ask for it first."},
		{ID: "limit-temperature", Label: "Temperature the limit is stated for", When: motorAlone, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: true,
			Low: 283.15, High: 333.15, BoundReason: "the temperature rule is trusted between these", Help: "Empty if the manual names none."},
	},
	Outputs: []calc.Output{
		{ID: "as-read", Label: "Insulation as read", Quantity: unit.Resistance, Units: []string{"Mohm"}, Significant: 3, Main: true},
		{ID: "at-40", Label: "Brought to 40 °C, halving for every 10 K", Quantity: unit.Resistance, Units: []string{"Mohm"}, Significant: 3},
		{ID: "at-limit", Label: "Brought to the limit's temperature", Quantity: unit.Resistance, Units: []string{"Mohm"}, Significant: 3},
		{ID: "ratio", Label: "60 s reading over 10 s reading", Quantity: unit.Fraction, Units: []string{"1"}, Significant: 3},
	},
	Verdicts: []calc.Verdict{
		{ID: "not-valid", Tone: calc.Stop, Title: "This reading does not count"},
		{ID: "maker-met", Tone: calc.Good, Title: "Meets the maker's limit"},
		{ID: "accept", Tone: calc.Good, Title: "Accept, by common practice"},
		{ID: "retest", Tone: calc.Doubt, Title: "Low: warm the shell and repeat"},
		{ID: "still-low", Tone: calc.Doubt, Title: "Still low: not settled"},
		{ID: "cannot-tell", Tone: calc.Doubt, Title: "Cannot tell from this reading"},
		{ID: "fault-likely", Tone: calc.Stop, Title: "Fault to earth likely: do not start"},
		{ID: "failed", Tone: calc.Stop, Title: "Insulation failed"},
	},
	Compute: insulation,
	Limits: []string{
		"Never test insulation through an inverter or a board: the tester destroys it. Fan motors with electronics inside must not see a tester either.",
		"Never test or energise a compressor under vacuum.",
		"Do not condemn on one reading. A compressor full of liquid refrigerant reads low.",
		"The temperature rule knows no refrigerant and no moisture. It only compares visits of the same machine.",
		"The polarisation index over 10 minutes is left out: in small random-wound motors the charging current ends within 2 to 3 minutes.",
	},
	Cautions: []calc.Caution{deadFirst,
		{Signal: "WARNING", Hazard: "In a vacuum the test voltage can arc inside the compressor, and a damaged terminal can blow out under pressure.",
			Consequence: "The arc ruins sound windings; hot oil and gas can burn or blind.",
			Avoid:       "Test above atmospheric pressure, at the inverter end of the cable, with the terminal cover on."},
		{Signal: "WARNING", Hazard: "The tester puts up to 1000 V on the leads, and the winding keeps it.",
			Consequence: "Shock can injure.",
			Avoid:       "Keep hands off, and let the tester discharge the winding before you touch it."}},
	Sources: []string{"makers-manual", "common-practice", "from-memory", "ieee-43", "easa43", "insulation-page", "ir-meter", "practice-34", "practice-35", "manual-19", "manual-20", "manual-21", "manual-22", "manual-23"},
	Example: []calc.Field{{Input: "connected", Text: "nothing"}, {Input: "shell", Text: "above"}, {Input: "state", Text: "cold"}, {Input: "shown", Text: "value"},
		{Input: "reading", Text: "0.8 Mohm"}, {Input: "test-voltage", Text: "500 V"}, {Input: "temperature", Text: "18 C"}},
}

var motorAlone = []calc.When{{Input: "connected", Is: []string{"nothing"}}, {Input: "shell", Is: []string{"above", "unknown"}}}

// Bands as read, where the maker gives no limit: common practice, with one
// maker's 0.1 MΩ as the end.
const insulationAccept, insulationGone = 10e6, 0.1e6

// The temperature rule is trusted between these, K.
const ruleColdest, ruleHottest = 283.15, 333.15

func insulation(r *calc.Run) {
	if r.Choice("connected") == "inverter" {
		r.Step("Connected", "U, V, W off the inverter", "not so", calc.Cite{Key: "manual-19"})
		r.Conclude("not-valid", "The reading was taken with the inverter connected. It shows the board, and the tester may have destroyed it.")
		r.Advise("Disconnect U, V and W at the inverter and test the motor alone. Test the power module in the diode range before you use it again.")
		return
	}
	if r.Choice("shell") == "vacuum" {
		r.Step("Shell", "above atmospheric pressure", "vacuum", calc.Cite{Key: "practice-35"})
		r.Conclude("not-valid", "The shell was under vacuum, where the test voltage can arc. Do not test again until the vacuum is broken.")
		r.Advise("Break the vacuum with dry nitrogen to 0 gauge, then test.")
		return
	}
	if r.Choice("shell") == "unknown" {
		r.Step("Shell", "above atmospheric pressure", "not known", calc.Cite{Key: "manual-23", Locator: "arcing in a vacuum"})
		r.Warn("The shell pressure is not known. Read the gauge: under vacuum neither test nor energise it.")
	}
	insulationVoltage(r)
	read := r.Float("reading")
	r.Set("as-read", read)
	over, word := r.Choice("shown") == "over", "lowest phase to shell"
	if over {
		word = "at least, the top of the range"
	}
	r.Step("As read", text.Say("{}, 60 s at {}", word, r.Given("test-voltage")), r.OutputText("as-read"), calc.Cite{Key: "common-practice"})
	insulationAt40(r, read)
	if !over && r.Has("reading-10s") {
		ratio := read / r.Float("reading-10s")
		r.Set("ratio", ratio)
		r.Step("60 s over 10 s", "must be 1 or more", r.OutputText("ratio"), calc.Cite{Key: "manual-19"})
		if ratio < 1 && read >= insulationGone {
			insulationLow(r, "The reading falls while the voltage stands: current finds a way through moisture, dirt or refrigerant.")
			return
		}
	}
	if r.Has("limit") {
		insulationByMaker(r, read, over)
		return
	}
	insulationByBands(r, read, over)
}

// insulationVoltage warns about a test voltage that is too low to tell or too
// high for the winding.
func insulationVoltage(r *calc.Run) {
	v := r.Float("test-voltage")
	if v < 250 {
		r.Warn("Below 250 V the test shows only gross faults. Use 250 or 500 V, or what the maker says.")
	}
	switch {
	case r.Has("running-voltage") && v > 2*r.Float("running-voltage"):
		r.Step("Highest test voltage", "about twice the running voltage, "+r.Given("running-voltage"), r.Text(unit.Voltage, 2*r.Float("running-voltage"), "V"), calc.Cite{Key: "practice-35"})
		r.Warn("The test voltage is more than twice the running voltage. Use less, unless the maker says so.")
	case v > 500:
		r.Warn("Above 500 V only if the maker says so.")
	}
}

// insulationAt40 sets the reading brought to 40 °C, where the rule may be used.
func insulationAt40(r *calc.Run, read float64) {
	t := r.Float("temperature")
	if t < ruleColdest || t > ruleHottest {
		r.Warn("Not brought to 40 °C: the rule is trusted for 10 to 60 °C only. Compare with visits at the same temperature.")
		return
	}
	at40 := electrical.InsulationAt(read, t, 313.15)
	r.Set("at-40", at40)
	r.Step("Brought to 40 °C", "R × 0.5^((40 − t) ÷ 10), t = "+r.Given("temperature"), r.OutputText("at-40"), calc.Cite{Key: "ieee-43", Locator: "thermoplastic rule"})
	r.Step("By the flatter curve for thermosetting insulation", "R × exp(4230 (1/313 K − 1/T))", r.Text(unit.Resistance, electrical.ThermosettingAt(read, t, 313.15), "Mohm"),
		calc.Cite{Key: "from-memory", Locator: "IEEE 43-2013"})
	r.Step("Least in that standard, 40 °C", "random-wound motors, not written for motors in refrigerant", "5 MΩ", calc.Cite{Key: "practice-34"})
}

// insulationByMaker holds the reading against the maker's limit. Where the
// limit names a temperature, the lower of the reading and the corrected
// reading must meet it: the rule may not turn a fail into a pass.
func insulationByMaker(r *calc.Run, read float64, over bool) {
	limit, worst := r.Float("limit"), read
	if r.Has("limit-temperature") {
		if t := r.Float("temperature"); t < ruleColdest || t > ruleHottest {
			r.Warn("The limit names a temperature, but the shell is outside 10 to 60 °C. The reading was compared as it is.")
		} else {
			corrected := electrical.InsulationAt(read, t, r.Float("limit-temperature"))
			r.Set("at-limit", corrected)
			r.Step("At the limit's temperature", "R × 0.5^((t limit − t) ÷ 10), t limit = "+r.Given("limit-temperature"), r.OutputText("at-limit"), calc.Cite{Key: "ieee-43", Locator: "thermoplastic rule"})
			worst = min(read, corrected)
		}
	}
	value := r.Text(unit.Resistance, worst, "Mohm")
	r.Step("Maker's limit", "the lower of as read and corrected, "+value, r.Given("limit"), calc.Cite{Key: "makers-manual"})
	switch {
	case worst >= limit:
		r.Conclude("maker-met", text.Say("{} meets the maker's {}.", value, r.Given("limit")))
		r.Advise("Write down value, voltage, seconds, shell temperature and state. A trend tells more than one reading.")
	case over:
		r.Conclude("cannot-tell", text.Say("The tester's range ends below the maker's {}. Use a tester with a higher range.", r.Given("limit")))
	case r.Choice("state") == "recovered":
		r.Conclude("failed", text.Say("{} is below the maker's {} with the shell warm and empty.", value, r.Given("limit")))
		insulationProve(r)
	case read < insulationGone:
		insulationFault(r)
	default:
		insulationLow(r, text.Say("{} is below the maker's {}.", value, r.Given("limit")))
	}
}

// insulationByBands uses the fallback bands.
func insulationByBands(r *calc.Run, read float64, over bool) {
	r.Step("Bands where the maker gives none", "accept from 10 MΩ; 1 to 10 warm and repeat; below 1 in doubt", "common practice", calc.Cite{Key: "common-practice"})
	r.Step("Makers elsewhere", "large chiller 50 MΩ; hermetic handbook 2; inverter split 1; scroll bulletin 0.5 can do", "they differ", calc.Cite{Key: insulationSource(read), Locator: "motor tests"})
	value := r.OutputText("as-read")
	switch {
	case read >= insulationAccept:
		r.Conclude("accept", text.Say("{} is 10 MΩ or more. No maker's limit was given: this band is common practice.", value))
		if t := r.Float("temperature"); t >= ruleColdest && t <= ruleHottest && electrical.InsulationAt(read, t, 313.15) < 5e6 {
			r.Warn("By the halving rule it would be below 5 MΩ at 40 °C. Repeat it with the shell warm, and compare.")
		}
		r.Advise("Ask for the maker's limit. Write down value, voltage, seconds, shell temperature and state.")
	case over:
		r.Conclude("cannot-tell", "The tester's range ends below 10 MΩ. Use a tester with a higher range.")
	case read < insulationGone && r.Choice("state") == "recovered":
		r.Conclude("failed", text.Say("{} is below 0.1 MΩ with the shell warm and empty.", value))
		insulationProve(r)
	case read < insulationGone:
		insulationFault(r)
	default:
		insulationLow(r, text.Say("{} is below 10 MΩ, and no maker's limit was given.", value))
	}
}

// insulationSource is the manual whose limit is nearest to a reading.
func insulationSource(read float64) string {
	switch {
	case read >= 10e6:
		return "manual-19"
	case read >= 2e6:
		return "manual-20"
	case read >= 1e6:
		return "manual-21"
	case read >= insulationGone:
		return "practice-35"
	}
	return "manual-22"
}

func insulationLow(r *calc.Run, sentence string) {
	if r.Choice("state") == "cold" {
		r.Conclude("retest", sentence+" A cold shell with refrigerant in its oil reads low; this does not condemn the motor.")
	} else {
		r.Conclude("still-low", sentence+" It stayed low with the shell warm.")
	}
	insulationNext(r)
}

func insulationNext(r *calc.Run) {
	if r.Choice("state") == "cold" {
		r.Advise("Test the inverter before power returns for the heater: a shorted link can burst. Warm the shell for 4 to 12 h, with U, V and W off and insulated. Isolate, prove dead, and repeat.")
	} else {
		r.Advise("Test oil for acid and moisture, ask the maker for the limit, and repeat after recovery. Do not start it before that is settled.")
	}
}

func insulationFault(r *calc.Run) {
	r.Conclude("fault-likely", text.Say("{} is below 0.1 MΩ, where one inverter unit's manual replaces the motor. Liquid refrigerant can still be the reason.", r.OutputText("as-read")))
	r.Advise("Do not start it. Warm the shell, repeat, and prove it at the bare terminals after recovery before you condemn the motor.")
}

func insulationProve(r *calc.Run) {
	r.Advise("Repeat once at the bare, dry terminals with the cable off. If it is the same, replace the compressor, and find the cause first.")
}
