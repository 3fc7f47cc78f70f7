package published

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"changeout/calc"
	"changeout/calc/unit"
)

var sheet = &calc.Worksheet{ID: "probe", Title: "Probe", Outputs: []calc.Output{{ID: "pressure", Label: "Pressure", Quantity: unit.Pressure}, {ID: "mass", Label: "Mass", Quantity: unit.Mass}}}

func answer(id string, v float64) calc.Answer {
	return calc.Answer{Outputs: []calc.OutputValue{{ID: id, Value: v}}}
}

// TestCheck: a case passes inside its tolerance and only there, and says why not.
func TestCheck(t *testing.T) {
	mass := Case{Output: "mass", Expected: "2", Unit: "lb", Tolerance: 0.01, Source: "s", Locator: "l", File: "f", Line: 7}
	gauge := Case{Output: "pressure", Expected: "0", Unit: "kPag", Tolerance: 0.01, Inputs: []calc.Field{{Input: "altitude", Text: "1500 m"}}}
	verdict, problem := Case{Output: "verdict", Expected: "tight"}, Case{Output: "problem", Expected: "too-low"}
	judged := calc.Answer{Verdict: &calc.VerdictValue{Verdict: calc.Verdict{ID: "tight"}}}
	refused := calc.Answer{Problems: []calc.Problem{{Code: "missing", Sentence: "A."}, {Code: "too-low", Sentence: "B."}}}
	for i, c := range []struct {
		c    Case
		a    calc.Answer
		want bool
	}{
		{mass, answer("mass", 2*0.45359237), true}, {mass, answer("mass", 2.009*0.45359237), true}, {mass, answer("mass", 2.011*0.45359237), false},
		{mass, answer("mass", math.NaN()), false}, {mass, answer("mass", math.Inf(1)), false}, {mass, answer("pressure", 1), false}, {mass, refused, false}, {mass, calc.Answer{}, false},
		{gauge, answer("pressure", calc.AtmosphereAt(1500)), true}, {gauge, answer("pressure", 101325), false},
		{verdict, judged, true}, {Case{Output: "verdict", Expected: "leak"}, judged, false}, {verdict, calc.Answer{}, false},
		{problem, refused, true}, {Case{Output: "problem", Expected: "bad-row"}, refused, false}, {problem, judged, false},
		{Case{Output: "nothing", Expected: "1"}, answer("mass", 1), false}, {Case{Output: "mass", Expected: "x", Unit: "kg", Tolerance: 1}, answer("mass", 1), false}, {Case{Output: "mass", Expected: "1", Unit: "psi", Tolerance: 1}, answer("mass", 1), false},
		{Case{Output: "mass", Expected: "NaN", Unit: "kg", Tolerance: 1}, answer("mass", 1), false},
	} {
		r := Check(sheet, c.c, c.a)
		if r.OK != c.want || (r.Why == "") != c.want {
			t.Errorf("%d: got %v (%s), want %v", i, r.OK, r.Why, c.want)
		}
	}
	why := Check(sheet, mass, answer("mass", 1)).Why
	for _, part := range []string{"f:7", "2.2046226", "want 2 lb", "within 0.01", "0.2", "source s l"} {
		if !strings.Contains(why, part) {
			t.Errorf("the reason %q lacks %q", why, part)
		}
	}
}

func TestLoad(t *testing.T) {
	const header = "case,inputs,output,expected,unit,tolerance,source,locator,read\n"
	load := func(text string) ([]Case, error) {
		return Load(fstest.MapFS{"worksheets/probe.csv": {Data: []byte(text)}}, "probe")
	}
	cases, err := load("# why\n" + header + "one,\"a=1,5 kg; log=0 1 / 2 3\",mass,1.5,kg,0.1,s,l,print\ntwo,a=1,verdict,tight,,,s,l,memory\n")
	if err != nil || len(cases) != 2 {
		t.Fatalf("got %v, %v", cases, err)
	}
	if c := cases[0]; c.Name != "one" || len(c.Inputs) != 2 || c.Inputs[0] != (calc.Field{Input: "a", Text: "1,5 kg"}) || c.Inputs[1].Text != "0 1 / 2 3" || c.Tolerance != 0.1 || c.Line != 3 || c.Read != "print" {
		t.Errorf("got %+v", c)
	}
	for _, bad := range []string{"", "case,inputs\n", header + "one,a=1,mass,1\n", header + "one,a=1,mass,1,kg,wide,s,l,print\n", header + "one,\"a=1\n"} {
		if got, err := load(bad); err == nil {
			t.Errorf("%q: got %v, want an error", bad, got)
		}
	}
	if _, err := Load(fstest.MapFS{}, "probe"); err == nil {
		t.Error("a missing file was taken for an empty one")
	}
}
