package calc_test

import (
	"math"
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/unit"
)

// TestProblemSentences: every code that the door raises, with its whole
// sentence and what it suggests. The sentence names the input, what was given
// and what is allowed.
func TestProblemSentences(t *testing.T) {
	long := strings.Repeat("x", 50)
	for _, c := range []struct {
		words    []string
		system   unit.System
		input    string
		code     string
		sentence string
		suggest  string // input=text, joined by |
	}{
		{words: []string{"presure=5 kPaa", "pressure=5 kPaa"}, input: "presure", code: calc.UnknownInput, sentence: "Probe has no input “presure”; did you mean pressure?"},
		{words: []string{"volume=5", "pressure=5 kPaa"}, input: "volume", code: calc.UnknownInput, sentence: "Probe has no input “volume”; the inputs are method, pressure, altitude, mass, log."},
		{words: []string{"pressure.columns=x", "pressure=5 kPaa"}, input: "pressure.columns", code: calc.UnknownInput, sentence: "Probe has no input “pressure.columns”; the inputs are method, pressure, altitude, mass, log."},
		{words: []string{}, input: "pressure", code: calc.Missing, sentence: "Pressure is missing: enter −100 to 14\u202f800\u00a0kPa gauge."},
		{words: []string{"pressure=  "}, system: unit.InchPound, input: "pressure", code: calc.Missing, sentence: "Pressure is missing: enter −14.5 to 2160\u00a0psi gauge."},
		{words: []string{"method=rows"}, input: "log", code: calc.Missing, sentence: "Log is missing: enter at least 3 rows of Time and Pressure."},
		{words: []string{"pressure=high"}, input: "pressure", code: calc.NotANumber, sentence: "Pressure: “high” is not a number; enter −100 to 14\u202f800\u00a0kPa gauge."},
		{words: []string{"pressure:psig=high"}, input: "pressure", code: calc.NotANumber, sentence: "Pressure: “high” is not a number; enter −14.5 to 2160\u00a0psi gauge."},
		{words: []string{"pressure:psig= "}, input: "pressure", code: calc.Missing, sentence: "Pressure is missing: enter −14.5 to 2160\u00a0psi gauge."},
		{words: []string{"pressure=" + long}, input: "pressure", code: calc.NotANumber, sentence: "Pressure: “" + long[:39] + "…” is not a number; enter −100 to 14\u202f800\u00a0kPa gauge."},
		{words: []string{"pressure=1.2.3 psig"}, input: "pressure", code: calc.NotANumber, sentence: "Pressure: “1.2.3 psig” is not a number; enter −14.5 to 2160\u00a0psi gauge."},
		{words: []string{"pressure=1,234 psig"}, input: "pressure", code: calc.TwoWays, sentence: "Pressure: “1,234 psig” can mean 1.234 or 1234; choose one.", suggest: "pressure=1.234 psig|pressure=1234 psig"},
		{words: []string{"pressure:psig=1,234"}, input: "pressure", code: calc.TwoWays, sentence: "Pressure: “1,234” can mean 1.234 or 1234; choose one.", suggest: "pressure=1.234|pressure=1234"},
		{words: []string{"pressure=250 stone"}, input: "pressure", code: calc.UnknownUnit, sentence: "Pressure: the unit “stone” is not known here; use kPag, kPaa, psig, psia, inHgv."},
		{words: []string{"pressure=250 psi"}, input: "pressure", code: calc.VagueUnit, sentence: "Pressure: “250 psi” does not say gauge or absolute; write psig or psia.", suggest: "pressure=250 psig|pressure=250 psia"},
		{words: []string{"pressure=2,5 bar"}, input: "pressure", code: calc.VagueUnit, sentence: "Pressure: “2,5 bar” does not say gauge or absolute; write barg or bara.", suggest: "pressure=2,5 barg|pressure=2,5 bara"},
		{words: []string{"pressure:kPa=250"}, input: "pressure", code: calc.VagueUnit, sentence: "Pressure: “250” does not say gauge or absolute; write kPag or kPaa.", suggest: "pressure=250 kPag|pressure=250 kPaa"},
		{words: []string{"pressure=0.5 kPaa"}, input: "pressure", code: calc.TooLow, sentence: "Pressure: “0.5 kPaa” is too low; enter 1 to 15\u202f000\u00a0kPa absolute (no field gauge shows more)."},
		{words: []string{"pressure=3000 psig"}, input: "pressure", code: calc.TooHigh, sentence: "Pressure: “3000 psig” is too high; enter −14.5 to 2160\u00a0psi gauge (no field gauge shows more)."},
		{words: []string{"pressure=35 inHgv"}, input: "pressure", code: calc.TooHigh, sentence: "Pressure: “35 inHgv” is too high; enter −4390 to 29.6\u00a0in Hg vacuum (no field gauge shows more)."},
		{words: []string{"pressure=1e999 psig"}, input: "pressure", code: calc.TooHigh, sentence: "Pressure: “1e999 psig” is too large; enter −14.5 to 2160\u00a0psi gauge."},
		{words: []string{"pressure=5 kPaa", "mass=0 lb"}, input: "mass", code: calc.TooLow, sentence: "Mass: “0 lb” is too low; enter 1.11 to 4.4\u00a0lb."},
		{words: []string{"method=gage", "pressure=5 kPaa"}, input: "method", code: calc.UnknownChoice, sentence: "Method: “gage” is not in the list; choose “By gauge”, “By scale”, “By rows” or “Nothing”.", suggest: "method=gauge"},
		{words: []string{"method=telepathy"}, input: "method", code: calc.UnknownChoice, sentence: "Method: “telepathy” is not in the list; choose “By gauge”, “By scale”, “By rows” or “Nothing”."},
		{words: []string{"method=rows", "log=# only a comment"}, input: "log", code: calc.FewRows, sentence: "Log: no rows were found; enter at least 3 rows of Time and Pressure."},
		{words: []string{"method=rows", "log=minutes,micron\n0,300"}, input: "log", code: calc.FewRows, sentence: "Log: 1 row given; at least 3 are needed."},
		{words: []string{"method=rows", "log=1 1 / 2 1 / 3 1 / 4 1 / 5 1 / 6 1 / 7 1"}, input: "log", code: calc.ManyRows, sentence: "Log: 7 rows given; at most 6 are taken."},
		{words: []string{"method=rows", "log=minutes,kilos\n0,300\n1,300\n2,300"}, input: "log", code: calc.UnknownColumn, sentence: "Log: no column for pressure was found in “minutes, kilos”; a header such as “time_min,pressure_micron,size_mm” is understood."},
		{words: []string{"method=rows", "log=1,2,3,4\n1,2,3,4\n1,2,3,4"}, input: "log", code: calc.UnknownColumn, sentence: "Log: the rows hold 4 fields and no header; give a header such as “time_min,pressure_micron,size_mm”."},
		{words: []string{"method=rows", "log=1\n2\n3"}, input: "log", code: calc.UnknownColumn, sentence: "Log: no column for pressure was found in “1”; a header such as “time_min,pressure_micron,size_mm” is understood."},
		{words: []string{"method=rows", "log=time;vacuum\n0;300\n1;301\n2;302"}, input: "log", code: calc.ColumnUnit, sentence: "Log: column “time” gives no unit; it can be min, s, h. Choose one.",
			suggest: "log.columns=time:min,pressure:?|log.columns=time:s,pressure:?|log.columns=time:h,pressure:?"},
		{words: []string{"method=rows", "log=minutes,micron\n0,300\n1,low\n2,302"}, input: "log", code: calc.BadRow, sentence: "Log: row 2, pressure: “low” is not a number in micron."},
		{words: []string{"method=rows", "log=minutes,micron\n0,300\n1,\nx,302"}, input: "log", code: calc.BadRow, sentence: "Log: row 2, pressure: nothing is entered. 1 more field cannot be read either."},
		{words: []string{"method=rows", "log=minutes,micron\n0,300\n1,1e7\n2,302"}, input: "log", code: calc.BadRow, sentence: "Log: row 2, pressure: “1e7” is outside 0 to 900\u202f000\u00a0micron."},
		{words: []string{"method=rows", "log=minutes;micron\n0;1,300\n1;1,301\n2;1,302"}, input: "log", code: calc.BadRow, sentence: "Log: row 1, pressure: “1,300” can mean 1.3 or 1300; write it without the comma. 2 more fields cannot be read either."},
		{words: []string{"method=rows", "log=21:45,300\n21:46,301\nlate,302"}, input: "log", code: calc.BadRow, sentence: "Log: row 3, time: “late” is not a time of day such as 21:45."},
		{words: []string{"method=rows", "log=minutes,micron\n0,0,300,5\n1,0,301,5\n2,0,302,5"}, input: "log", code: calc.BadRow,
			sentence: "Log: row 1 has 4 fields where 2 are expected; if commas are decimal signs, part the fields with semicolons or tabs. 2 more fields cannot be read either."},
		{words: []string{"method=scale", "mass=1.25 kg"}, code: calc.NotFinite, sentence: "These inputs lead to no usable number for Mass. Check each input."},
		{words: []string{"method=nothing"}, input: "method", code: "nothing-to-do", sentence: "Method: nothing was asked.", suggest: "method=gauge"},
	} {
		a := askIn(c.system, c.words...)
		if len(a.Problems) == 0 {
			t.Errorf("%q: got outputs %v, want problem %s", c.words, a.Outputs, c.code)
			continue
		}
		p := a.Problems[0]
		var suggest []string
		for _, s := range p.Suggest {
			suggest = append(suggest, s.Input+"="+s.Text)
		}
		if p.Input != c.input || p.Code != c.code || p.Sentence != c.sentence || strings.Join(suggest, "|") != c.suggest {
			t.Errorf("%q:\n got  %s %s %q suggest %q\n want %s %s %q suggest %q", c.words, p.Input, p.Code, p.Sentence, strings.Join(suggest, "|"), c.input, c.code, c.sentence, c.suggest)
		}
		if len(a.Outputs) > 0 || a.Verdict != nil || len(a.Steps) > 0 {
			t.Errorf("%q: a refused run still gives outputs %v or a verdict", c.words, a.Outputs)
		}
	}
	known := []*calc.Worksheet{probe, {ID: "other"}}
	if got, want := calc.UnknownWorksheetSentence("prob", known), "There is no worksheet “prob”; did you mean probe?"; got != want {
		t.Errorf("unknown worksheet: got %q, want %q", got, want)
	}
	if got, want := calc.UnknownWorksheetSentence("hold log", known), "There is no worksheet “hold log”; there are probe, other."; got != want {
		t.Errorf("unknown worksheet: got %q, want %q", got, want)
	}
}

// TestAllProblemsAtOnce: a person should not have to fix one field at a time.
func TestAllProblemsAtOnce(t *testing.T) {
	a := ask("pressure=x", "mass=y", "altitude=z")
	if len(a.Problems) != 3 {
		t.Errorf("got %d problems %v, want 3", len(a.Problems), a.Problems)
	}
}

// near checks one output in SI. 1e-12 relative allows some thousand rounding
// errors of a conversion.
func near(t *testing.T, a calc.Answer, id string, want float64, source string) {
	t.Helper()
	for _, p := range a.Problems {
		t.Errorf("%s: refused: %s", id, p.Sentence)
	}
	for _, o := range a.Outputs {
		if o.ID == id {
			if d := o.Value - want; !(math.Abs(d) <= 1e-12*math.Abs(want)) {
				t.Errorf("%s: got %.15g, want %.15g, difference %g, tolerance %g (%s)", id, o.Value, want, d, 1e-12*math.Abs(want), source)
			}
			return
		}
	}
	t.Errorf("%s was not set (%s)", id, source)
}

func text(a calc.Answer, id string) string {
	for _, o := range a.Outputs {
		if o.ID == id {
			return o.Text
		}
	}
	return ""
}

func TestUnitsWin(t *testing.T) {
	const psi = 6894.757293168361
	near(t, ask("pressure:kPaa=250 psia"), "absolute", 250*psi, "the unit in the text wins")
	near(t, ask("pressure:kPaa=250"), "absolute", 250e3, "the unit beside it")
	near(t, ask("pressure=250"), "absolute", 101325+250e3, "default unit of the metric family")
	near(t, askIn(unit.InchPound, "pressure=250"), "absolute", 101325+250*psi, "default unit of the inch-pound family")
	near(t, ask("pressure=250", "mass=2 lb"), "absolute", 101325+250*psi, "the family of a unit typed elsewhere")
	near(t, ask("pressure=29.5 inHgv"), "absolute", 101325-29.5*3386.389, "counted downwards")
	if a := ask("pressure=500 micron"); len(a.Problems) == 0 || a.Problems[0].Code != calc.TooLow {
		t.Errorf("500 micron: got %v, want %s", a, calc.TooLow)
	}
}

func TestGaugeFollowsAltitude(t *testing.T) {
	// Standard atmosphere at 1500 m by the ASHRAE equation: 84.556 kPa (ASHRAE
	// Fundamentals, Psychrometrics, table 1: 84.556 kPa at 1500 m; from memory).
	if got, want := calc.AtmosphereAt(1500), 84556.0; !(math.Abs(got-want) <= 1) {
		t.Errorf("atmosphere at 1500 m: got %.2f, want %.0f, difference %.2g, tolerance 1 Pa (ASHRAE Fundamentals, printed to 1 Pa)", got, want, got-want)
	}
	near(t, ask("altitude=1500 m", "pressure=0 kPag"), "absolute", calc.AtmosphereAt(1500), "gauge zero at altitude")
	near(t, ask("pressure=0 psig", "altitude=1500 m"), "absolute", calc.AtmosphereAt(1500), "whatever the order of the fields")
	near(t, ask("altitude=5000 ft", "pressure=100 kPaa"), "absolute", 100e3, "absolute does not move")
	if got, want := text(ask("altitude=1500 m", "pressure=100 kPag"), "absolute"), "184.6\u00a0kPa absolute"; got != want {
		t.Errorf("text at altitude: got %q, want %q", got, want)
	}
}

func TestDefaultsAndConditions(t *testing.T) {
	near(t, ask("pressure=100 kPag"), "absolute", 201325, "method and altitude take their defaults")
	if a := ask("method=scale"); len(a.Problems) > 0 || len(a.Outputs) > 0 || a.Verdict == nil {
		t.Errorf("method scale: got %+v, want no question for the pressure and no outputs", a)
	}
	// What does not apply is not judged: the form keeps what was typed there.
	if a := ask("method=scale", "pressure=nonsense"); len(a.Problems) > 0 {
		t.Errorf("an input that does not apply was judged: %v", a.Problems)
	}
	if a := ask("METHOD=scale", "pressure=5 kPaa"); len(a.Problems) != 1 {
		t.Errorf("input ids are exact: got %v", a.Problems)
	}
	for _, spelling := range []string{"Gauge", "by gauge", "MANIFOLD", " ga-uge "} {
		near(t, ask("method="+spelling, "pressure=5 kPaa"), "absolute", 5e3, "choice spelled "+spelling)
	}
}

// TestBounds: the closed range holds, there and just outside, in every unit.
func TestBounds(t *testing.T) {
	for _, c := range []struct{ text, code string }{
		{"0.5 kg", ""}, {"500 g", ""}, {"1.1023113109244 lb", ""}, {"0.4999 kg", calc.TooLow}, {"1.1022 lb", calc.TooLow},
		{"2 kg", ""}, {"2.0001 kg", calc.TooHigh}, {"4.4093 lb", calc.TooHigh}, {"−1 kg", calc.TooLow},
	} {
		a := ask("method=scale", "mass="+c.text)
		code := ""
		if len(a.Problems) > 0 {
			code = a.Problems[0].Code
		}
		if code != c.code {
			t.Errorf("mass %s: got %q, want %q", c.text, code, c.code)
		}
	}
}

func TestAnswersInThePersonsUnits(t *testing.T) {
	for _, c := range []struct {
		system unit.System
		words  []string
		id     string
		want   string
	}{
		{unit.Either, []string{"pressure=100 psia"}, "absolute", "100.0\u00a0psi absolute"},
		{unit.Either, []string{"pressure=100 psig"}, "absolute", "114.7\u00a0psi absolute"},
		{unit.SI, []string{"pressure=100 psig"}, "absolute", "790.8\u00a0kPa absolute"},
		{unit.InchPound, []string{"pressure=100 kPaa"}, "absolute", "100.0\u00a0kPa absolute"},
		{unit.Either, []string{"method=scale", "mass=32 oz"}, "mass", "2.00\u00a0lb"},
		{unit.Either, []string{"pressure=5 kPaa", "mass=1234 g"}, "mass", "1.23\u00a0kg"},
	} {
		if got := text(askIn(c.system, c.words...), c.id); got != c.want {
			t.Errorf("%s %q: got %q, want %q", c.system, c.words, got, c.want)
		}
	}
	a := calc.Evaluate(probe, calc.Request{Fields: []calc.Field{{Input: "pressure", Text: "100 kPaa"}}, OutUnits: []calc.Field{{Input: "absolute", Unit: "psia"}}})
	if got, want := text(a, "absolute"), "14.5\u00a0psi absolute"; got != want {
		t.Errorf("wanted unit: got %q, want %q", got, want)
	}
	if a := ask("pressure=5 kPaa", "mass=1 kg"); len(a.Outputs) != 2 || a.Outputs[0].ID != "absolute" {
		t.Errorf("outputs %v, want them in the order declared", a.Outputs)
	}
}

// TestVerdictNamesTheMain: the outputs that a verdict calls main come first and
// are the only main ones; where none of them was set, those declared stay.
func TestVerdictNamesTheMain(t *testing.T) {
	w := &calc.Worksheet{ID: "main", Inputs: []calc.Input{{ID: "case", Label: "Case", Kind: calc.Choice, Options: []calc.Option{{ID: "proof", Label: "Proof"}, {ID: "none", Label: "None"}}}},
		Outputs:  []calc.Output{{ID: "a", Label: "A", Quantity: unit.Mass, Main: true}, {ID: "b", Label: "B", Below: "Less", Quantity: unit.Mass, Units: []string{"kg"}}, {ID: "c", Label: "C", Quantity: unit.Mass}},
		Verdicts: []calc.Verdict{{ID: "proof", Main: []string{"b", "c"}}, {ID: "none", Main: []string{"c"}}},
		Compute: func(r *calc.Run) {
			r.Set("a", 1)
			r.Set("b", -2.347)
			r.Conclude(r.Choice("case"), "")
		}}
	for choice, want := range map[string]string{"proof": "Less 2.35\u00a0kg main|A 1.00\u00a0kg|", "none": "A 1.00\u00a0kg main|Less 2.35\u00a0kg|"} {
		got := ""
		for _, o := range calc.Evaluate(w, calc.Request{Fields: []calc.Field{{Input: "case", Text: choice}}}).Outputs {
			got += o.Label + " " + o.Text
			if o.Main {
				got += " main"
			}
			got += "|"
			if o.ID == "b" && o.Value != -2.347 {
				t.Errorf("%s: a value shown without its sign is %v inside, want -2.347", choice, o.Value)
			}
		}
		if got != want {
			t.Errorf("%s: got %q, want %q", choice, got, want)
		}
	}
}
