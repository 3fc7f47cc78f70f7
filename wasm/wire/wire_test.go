package wire

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/unit"
)

// The samples are shared with the twin of this package, site/module/wire.ts.
const samples = "../../testdata/wire"

func read(t *testing.T, pattern string) map[string]string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(samples, pattern))
	if err != nil || len(names) == 0 {
		t.Fatalf("no samples %s in %s (%v)", pattern, samples, err)
	}
	texts := map[string]string{}
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(name)] = string(b)
	}
	return texts
}

// TestSamplesComeBack: what is read is written again byte for byte, so nothing
// in a sample is lost or taken for something else.
func TestSamplesComeBack(t *testing.T) {
	for name, text := range read(t, "*.request.txt") {
		if got := EncodeRequest(DecodeRequest(text)); got != text {
			t.Errorf("%s: got\n%q, want\n%q", name, got, text)
		}
	}
	for name, text := range read(t, "*.reply.txt") {
		if got := EncodeAnswer(DecodeAnswer(text)); got != text {
			t.Errorf("%s: got\n%q, want\n%q", name, got, text)
		}
	}
}

func TestSampleContents(t *testing.T) {
	requests, replies := read(t, "*.request.txt"), read(t, "*.reply.txt")
	req := DecodeRequest(requests["saturation.request.txt"])
	want := calc.Request{Worksheet: "saturation", System: unit.InchPound, Fields: []calc.Field{{Input: "refrigerant", Text: "R-407C"}, {Input: "pressure", Text: "80", Unit: "psig"},
		{Input: "line-temperature", Text: "61 F"}, {Input: "altitude"}}, OutUnits: []calc.Field{{Input: "glide", Unit: "F"}}}
	if !reflect.DeepEqual(req, want) {
		t.Errorf("saturation request: got %+v, want %+v", req, want)
	}
	hold := DecodeRequest(requests["hold.request.txt"])
	if got, want := hold.Fields[0].Text, "time\tvacuum\n0\t380\n5\t385\n10\t389\n"; got != want {
		t.Errorf("hold log: got %q, want %q", got, want)
	}
	if got, want := hold.Fields[3].Text, `a \ and a \n`; got != want {
		t.Errorf("backslashes: got %q, want %q", got, want)
	}
	a := DecodeAnswer(replies["problems.reply.txt"])
	if len(a.Problems) != 4 || len(a.Problems[0].Suggest) != 2 || len(a.Problems[1].Suggest) != 1 || len(a.Problems[2].Suggest) != 0 || a.Problems[2].Row != 0 || a.Problems[3].Row != 3 || a.Problems[3].Field != 2 {
		t.Fatalf("problems: got %+v", a.Problems)
	}
	if got, want := a.Problems[1].Sentence, "Hold log: column “a\tb\\c” gives no unit."; got != want {
		t.Errorf("sentence: got %q, want %q", got, want)
	}
	a = DecodeAnswer(replies["saturation.reply.txt"])
	if len(a.Outputs) != 2 || !a.Outputs[0].Main || a.Outputs[1].Main || a.Outputs[1].Value != 6.0123456789e-05 || a.Verdict == nil || a.Verdict.Tone != calc.Info || len(a.Steps) != 2 || a.Steps[1].Cite.Locator != "mixture model" {
		t.Errorf("saturation reply: got %+v", a)
	}
}

// TestUnknownLinesAreSkipped: a newer page can talk to an older module, and a
// damaged message is no crash.
func TestUnknownLinesAreSkipped(t *testing.T) {
	req := DecodeRequest("future\tthing\nworksheet\tsaturation\nin\n\nin\tpressure\n")
	if req.Worksheet != "saturation" || len(req.Fields) != 2 || req.Fields[1] != (calc.Field{Input: "pressure"}) {
		t.Errorf("got %+v", req)
	}
	a := DecodeAnswer("suggest\tx\ty\tz\nfuture\nwarning\tone\n")
	if len(a.Problems) != 0 || len(a.Warnings) != 1 {
		t.Errorf("got %+v", a)
	}
}

// TestAnswerComesBack: every part of an answer survives the way to the page.
func TestAnswerComesBack(t *testing.T) {
	awkward := "tab\there, line\nfeed, back\\slash, \\t and \\n as text, “quotes”, −40 °C, <svg>"
	a := calc.Answer{
		Outputs:  []calc.OutputValue{{ID: "x", Label: awkward, Value: -1.2345678901234567e-300, SIUnit: "Pa·m³/s", Text: awkward, Main: true}},
		Verdict:  &calc.VerdictValue{Verdict: calc.Verdict{ID: "tight", Tone: calc.Good, Title: awkward}, Sentence: awkward},
		Warnings: []string{awkward, ""}, Advice: []string{awkward},
		Steps:  []calc.Step{{Label: awkward, Formula: awkward, Value: awkward, Cite: calc.Cite{Key: "k", Locator: awkward}}},
		Charts: []calc.Chart{{Title: awkward, SVG: awkward}},
	}
	if got := DecodeAnswer(EncodeAnswer(a)); !reflect.DeepEqual(got, a) {
		t.Errorf("got %+v, want %+v", got, a)
	}
	p := calc.Answer{Problems: []calc.Problem{{Input: "log", Code: "bad-row", Sentence: awkward, Row: 3, Field: 2, Suggest: []calc.Suggestion{{Input: "log.columns", Label: awkward, Text: awkward}}}}}
	if got := DecodeAnswer(EncodeAnswer(p)); !reflect.DeepEqual(got, p) {
		t.Errorf("got %+v, want %+v", got, p)
	}
}

func FuzzRequest(f *testing.F) {
	f.Add("saturation", "pressure", "80 psig", "psig")
	f.Add("a\tb", "\\", "\\n\\\\t\n\t", "\\t")
	f.Fuzz(func(t *testing.T, id, input, text, u string) {
		want := calc.Request{Worksheet: id, Fields: []calc.Field{{Input: input, Text: text, Unit: u}}, OutUnits: []calc.Field{{Input: input, Unit: u}}}
		if got := DecodeRequest(EncodeRequest(want)); !reflect.DeepEqual(got, want) {
			t.Errorf("got %+v, want %+v", got, want)
		}
		DecodeRequest(text)
		DecodeAnswer(strings.Join([]string{id, input, text, u}, "\n"))
	})
}
