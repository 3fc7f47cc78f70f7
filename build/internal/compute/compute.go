// Package compute is the command line's door to the worksheets: the same
// declarations, the same Evaluate and so the same answers as on the phone.
package compute

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"strings"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/unit"
)

// Failure is bad input: its sentence is all that a person needs.
type Failure struct{ Sentence string }

func (f Failure) Error() string { return f.Sentence }

// maxFile is the largest file that @file reads: 20,000 rows fit many times.
const maxFile = 8 << 20

// Run lists the worksheets, lists one worksheet's inputs or the options of one
// of them, or runs it. args are what stands after "compute". Nothing is written to out unless it succeeds.
func Run(args []string, out io.Writer) error {
	var words []string
	asJSON := false
	for _, a := range args {
		switch {
		case a == "-json" || a == "--json":
			asJSON = true
		case strings.HasPrefix(a, "-") && !strings.Contains(a, "="):
			return Failure{fmt.Sprintf("compute has no flag %q; it knows -json", a)}
		default:
			words = append(words, a)
		}
	}
	if len(words) == 0 {
		list(out)
		return nil
	}
	w := catalog.Lookup(words[0])
	if w == nil {
		return Failure{catalog.Unknown(words[0]).Problems[0].Sentence}
	}
	if len(words) == 1 {
		describe(out, w)
		return nil
	}
	if in := w.Input(words[1]); in != nil && in.Kind == calc.Choice && len(words) == 2 {
		describeInput(out, w, in)
		for _, o := range in.Options {
			fmt.Fprintf(out, "    %-18s %s\n", o.ID, o.Label)
		}
		return nil
	}
	fields, err := readFields(words[1:])
	if err != nil {
		return err
	}
	a := calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: fields})
	if len(a.Problems) > 0 {
		return Failure{sentence(a.Problems)}
	}
	if asJSON {
		return writeJSON(out, a)
	}
	writeText(out, a)
	return nil
}

// readFields reads key=value words; @file takes the value from a file.
func readFields(words []string) ([]calc.Field, error) {
	var fields []calc.Field
	for _, word := range words {
		key, value, ok := strings.Cut(word, "=")
		if !ok {
			return nil, Failure{fmt.Sprintf("%q is not understood; write an input as key=value", word)}
		}
		for _, f := range fields {
			if f.Input == key {
				return nil, Failure{fmt.Sprintf("%s is given twice; give it once", key)}
			}
		}
		if name, isFile := strings.CutPrefix(value, "@"); isFile {
			text, err := readFile(name)
			if err != nil {
				return nil, Failure{fmt.Sprintf("%s: the file %q cannot be read (%v); give a text file of rows", key, name, reason(err))}
			}
			value = text
		}
		fields = append(fields, calc.Field{Input: key, Text: value})
	}
	return fields, nil
}

func readFile(name string) (string, error) {
	f, err := os.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, maxFile+1))
	if err != nil {
		return "", err
	}
	if len(b) > maxFile {
		return "", errors.New("larger than 8 MB")
	}
	return string(b), nil
}

// reason is the cause of a file error without the path, which the sentence
// already names.
func reason(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}

// sentence joins the problems to one line, with what would settle each.
func sentence(problems []calc.Problem) string {
	parts := make([]string, len(problems))
	for i, p := range problems {
		parts[i] = p.Sentence
		for _, s := range p.Suggest {
			if strings.Contains(s.Input, ".") {
				parts[i] += fmt.Sprintf(" Add %s=%q for %s.", s.Input, s.Text, s.Label)
			}
		}
	}
	return strings.Join(parts, " ")
}

func list(out io.Writer) {
	for _, w := range catalog.All() {
		fmt.Fprintf(out, "%-20s %s\n", w.ID, w.Purpose)
	}
	fmt.Fprintln(out, "\ncompute NAME lists the inputs; compute NAME CHOICE lists what a choice takes; compute NAME key=value … runs it; -json writes one object.")
}

func describe(out io.Writer, w *calc.Worksheet) {
	fmt.Fprintf(out, "%s: %s\n%s\n\ninputs\n", w.ID, w.Title, w.Purpose)
	for i := range w.Inputs {
		describeInput(out, w, &w.Inputs[i])
	}
	fmt.Fprintln(out, "\noutputs")
	for _, o := range w.Outputs {
		fmt.Fprintf(out, "  %-20s %s, %s\n", o.ID, o.Label, o.Quantity.SIUnit().ID)
	}
	if len(w.Verdicts) > 0 {
		fmt.Fprintln(out, "\nverdicts")
		for _, v := range w.Verdicts {
			fmt.Fprintf(out, "  %-20s %s\n", v.ID, v.Title)
		}
	}
	fmt.Fprintln(out, "\ndo not use it when")
	for _, l := range w.Limits {
		fmt.Fprintf(out, "  %s\n", l)
	}
}

func describeInput(out io.Writer, w *calc.Worksheet, in *calc.Input) {
	fmt.Fprintf(out, "  %-20s %s", in.ID, in.Label)
	switch in.Kind {
	case calc.Choice:
		if in.Listed != "" {
			fmt.Fprintf(out, ": one of %d, %s to %s; compute %s %s lists them", len(in.Options), in.Options[0].ID, in.Options[len(in.Options)-1].ID, w.ID, in.ID)
			break
		}
		ids := make([]string, len(in.Options))
		for i, o := range in.Options {
			ids[i] = o.ID
		}
		fmt.Fprintf(out, ": one of %s", strings.Join(ids, ", "))
	case calc.Quantity:
		fmt.Fprintf(out, ", in %s: %s", strings.Join(in.Units, " "), boundsText(in))
	case calc.Series:
		fmt.Fprintf(out, ": @file.csv or rows parted by \" / \", %d to %d rows of ", in.MinRows, in.MaxRows)
		for i, c := range in.Columns {
			if i > 0 {
				fmt.Fprint(out, ", ")
			}
			fmt.Fprintf(out, "%s (%s", strings.ToLower(c.Label), strings.Join(c.Units, " "))
			if c.Optional {
				fmt.Fprint(out, ", optional")
			}
			fmt.Fprint(out, ")")
		}
	}
	switch {
	case in.Default != "":
		fmt.Fprintf(out, "; default %s", in.Default)
	case in.Optional:
		fmt.Fprint(out, "; optional")
	}
	for i, c := range in.When {
		joint := "; only when "
		if i > 0 {
			joint = " and "
		}
		fmt.Fprintf(out, "%s%s is %s", joint, c.Input, strings.Join(c.Is, " or "))
	}
	fmt.Fprintln(out)
}

func boundsText(in *calc.Input) string {
	env := unit.Env{Atmosphere: unit.StandardAtmosphere}
	u := calc.DefaultUnit(in.Quantity, in.Units, unit.SI)
	s := unit.Short(u.FromSI(in.Low, env), 4) + " to " + unit.Short(u.FromSI(in.High, env), 4) + " " + u.ID
	if in.BoundReason != "" {
		s += " (" + in.BoundReason + ")"
	}
	return s
}

func writeText(out io.Writer, a calc.Answer) {
	if v := a.Verdict; v != nil {
		fmt.Fprintf(out, "%s (%s)\n%s\n\n", v.Title, v.ID, v.Sentence)
	}
	for _, o := range a.Outputs {
		fmt.Fprintf(out, "%-46s %s\n", o.Label, o.Text)
	}
	section := func(title string, lines []string) {
		if len(lines) == 0 {
			return
		}
		fmt.Fprintf(out, "\n%s\n", title)
		for _, l := range lines {
			fmt.Fprintf(out, "  %s\n", l)
		}
	}
	section("warnings", a.Warnings)
	section("next", a.Advice)
	if len(a.Steps) > 0 {
		fmt.Fprintln(out, "\nworking")
		for _, s := range a.Steps {
			fmt.Fprintf(out, "  %s: %s = %s [%s]\n", s.Label, s.Formula, s.Value, strings.TrimSpace(s.Cite.Key+" "+s.Cite.Locator))
		}
	}
}

// The one object that -json prints.
type jsonAnswer struct {
	Worksheet string                `json:"worksheet"`
	Outputs   map[string]jsonOutput `json:"outputs"`
	Verdict   string                `json:"verdict"`
	Warnings  []string              `json:"warnings"`
	Steps     []jsonStep            `json:"steps"`
}

type jsonOutput struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
	Text  string  `json:"text"`
}

type jsonStep struct {
	Label   string `json:"label"`
	Formula string `json:"formula"`
	Value   string `json:"value"`
	Source  string `json:"source"`
	Locator string `json:"locator,omitempty"`
}

func writeJSON(out io.Writer, a calc.Answer) error {
	j := jsonAnswer{Worksheet: a.Worksheet, Outputs: map[string]jsonOutput{}, Warnings: a.Warnings, Steps: []jsonStep{}}
	if j.Warnings == nil {
		j.Warnings = []string{}
	}
	for _, o := range a.Outputs {
		if math.IsNaN(o.Value) || math.IsInf(o.Value, 0) {
			return Failure{o.Label + " has no finite value"}
		}
		j.Outputs[o.ID] = jsonOutput{o.Value, o.SIUnit, o.Text}
	}
	if a.Verdict != nil {
		j.Verdict = a.Verdict.ID
	}
	for _, s := range a.Steps {
		j.Steps = append(j.Steps, jsonStep{s.Label, s.Formula, s.Value, s.Cite.Key, s.Cite.Locator})
	}
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	return e.Encode(j)
}
