// Package wire is the text that passes between the page and the module.
//
// A message is lines; a line is fields parted by TAB. In a field a backslash
// escapes: \t is TAB, \n is a line feed, \\ is a backslash.
//
// Request:
//
//	worksheet  id
//	system     si | ip            (optional)
//	in         input id  text  unit id
//	out        output id unit id
//
// Reply:
//
//	problem    input id  code  sentence  [row  field]  (of a series, counted from 1; field 0: the row as a whole)
//	suggest    input id  label text to put there   (belongs to the problem before it)
//	output     id  label  SI value  SI unit  text  main|""
//	verdict    id  tone  title  sentence
//	warning    sentence
//	advice     sentence
//	step       label  formula  value  source key  locator
//	chart      title  svg
//
// The twin of this package is site/module/wire.ts; both are tested against the
// samples in testdata/wire.
package wire

import (
	"strconv"
	"strings"

	"changeout/calc"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// DecodeRequest reads a request. Lines it does not know are skipped, so that a
// newer page can talk to an older module.
func DecodeRequest(message string) calc.Request {
	var req calc.Request
	for line := range strings.SplitSeq(message, "\n") {
		f := fields(line)
		switch f[0] {
		case "worksheet":
			req.Worksheet = at(f, 1)
		case "system":
			req.System = unit.System(at(f, 1))
		case "in":
			req.Fields = append(req.Fields, calc.Field{Input: at(f, 1), Text: at(f, 2), Unit: at(f, 3)})
		case "out":
			req.OutUnits = append(req.OutUnits, calc.Field{Input: at(f, 1), Unit: at(f, 2)})
		}
	}
	return req
}

// EncodeRequest writes a request; tests and benchmarks use it in place of the
// page.
func EncodeRequest(req calc.Request) string {
	var b strings.Builder
	line(&b, "worksheet", req.Worksheet)
	if req.System != unit.Either {
		line(&b, "system", string(req.System))
	}
	for _, f := range req.Fields {
		line(&b, "in", f.Input, f.Text, f.Unit)
	}
	for _, f := range req.OutUnits {
		line(&b, "out", f.Input, f.Unit)
	}
	return b.String()
}

// EncodeAnswer writes a reply.
func EncodeAnswer(a calc.Answer) string {
	var b strings.Builder
	for _, p := range a.Problems {
		if p.Row > 0 {
			line(&b, "problem", p.Input, p.Code, p.Sentence, strconv.Itoa(p.Row), strconv.Itoa(p.Field))
		} else {
			line(&b, "problem", p.Input, p.Code, p.Sentence)
		}
		for _, s := range p.Suggest {
			line(&b, "suggest", s.Input, s.Label, s.Text)
		}
	}
	for _, o := range a.Outputs {
		main := ""
		if o.Main {
			main = "main"
		}
		line(&b, "output", o.ID, o.Label, strconv.FormatFloat(o.Value, 'g', -1, 64), o.SIUnit, o.Text, main)
	}
	if v := a.Verdict; v != nil {
		line(&b, "verdict", v.ID, string(v.Tone), v.Title, v.Sentence)
	}
	for _, w := range a.Warnings {
		line(&b, "warning", w)
	}
	for _, w := range a.Advice {
		line(&b, "advice", w)
	}
	for _, s := range a.Steps {
		line(&b, "step", s.Label, s.Formula, s.Value, s.Cite.Key, s.Cite.Locator)
	}
	for _, c := range a.Charts {
		line(&b, "chart", c.Title, c.SVG)
	}
	return b.String()
}

// DecodeAnswer reads a reply; tests that run the module use it.
func DecodeAnswer(message string) calc.Answer {
	var a calc.Answer
	for l := range strings.SplitSeq(message, "\n") {
		f := fields(l)
		switch f[0] {
		case "problem":
			p := calc.Problem{Input: at(f, 1), Code: at(f, 2), Sentence: at(f, 3)}
			p.Row, _ = strconv.Atoi(at(f, 4))
			p.Field, _ = strconv.Atoi(at(f, 5))
			a.Problems = append(a.Problems, p)
		case "suggest":
			if n := len(a.Problems); n > 0 {
				a.Problems[n-1].Suggest = append(a.Problems[n-1].Suggest, calc.Suggestion{Input: at(f, 1), Label: at(f, 2), Text: at(f, 3)})
			}
		case "output":
			v, _ := strconv.ParseFloat(at(f, 3), 64)
			a.Outputs = append(a.Outputs, calc.OutputValue{ID: at(f, 1), Label: at(f, 2), Value: v, SIUnit: at(f, 4), Text: at(f, 5), Main: at(f, 6) == "main"})
		case "verdict":
			a.Verdict = &calc.VerdictValue{Verdict: calc.Verdict{ID: at(f, 1), Tone: calc.Tone(at(f, 2)), Title: at(f, 3)}, Sentence: at(f, 4)}
		case "warning":
			a.Warnings = append(a.Warnings, at(f, 1))
		case "advice":
			a.Advice = append(a.Advice, at(f, 1))
		case "step":
			a.Steps = append(a.Steps, calc.Step{Label: at(f, 1), Formula: at(f, 2), Value: at(f, 3), Cite: calc.Cite{Key: at(f, 4), Locator: at(f, 5)}})
		case "chart":
			a.Charts = append(a.Charts, calc.Chart{Title: at(f, 1), SVG: at(f, 2)})
		}
	}
	return a
}

func line(b *strings.Builder, fields ...string) {
	for i, f := range fields {
		if i > 0 {
			b.WriteByte('\t')
		}
		b.WriteString(text.Swap(f, "\\", "\\\\", "\t", "\\t", "\n", "\\n"))
	}
	b.WriteByte('\n')
}

func fields(line string) []string {
	f := strings.Split(line, "\t")
	for i := range f {
		f[i] = text.Swap(f[i], "\\\\", "\\", "\\t", "\t", "\\n", "\n")
	}
	return f
}

func at(f []string, i int) string {
	if i < len(f) {
		return f[i]
	}
	return ""
}
