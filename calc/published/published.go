// Package published reads the check values of testdata/published/worksheets
// and holds answers against them. The tests, the module's tests and the page
// "How each worksheet was checked" all read the same rows through it.
//
// It is never linked into the module: it may use the whole standard library.
package published

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"path"
	"strconv"
	"strings"

	"changeout/calc"
	"changeout/calc/unit"
)

// Case is one published value: what goes in, which output to look at, what it
// should be and where that comes from.
type Case struct {
	Name      string
	Inputs    []calc.Field
	Output    string // an output id, or "verdict", or "problem"
	Expected  string // a number in Unit, a verdict id, or a problem code
	Unit      string
	Tolerance float64 // in Unit
	Source    string  // bibliography key
	Locator   string
	Read      string // print, secondary, library, memory, practice, computed
	File      string
	Line      int
}

// columns is the header that every file must have.
var columns = []string{"case", "inputs", "output", "expected", "unit", "tolerance", "source", "locator", "read"}

// Load reads the cases of one worksheet from DIR/worksheets/ID.csv. Inputs are
// written "refrigerant=R-410A; pressure=250 psig"; in a series " / " parts the
// rows.
func Load(dir fs.FS, worksheet string) ([]Case, error) {
	name := path.Join("worksheets", worksheet+".csv")
	f, err := dir.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	r.FieldsPerRecord = len(columns)
	header, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if strings.Join(header, ",") != strings.Join(columns, ",") {
		return nil, fmt.Errorf("%s: the header must be %s", name, strings.Join(columns, ","))
	}
	var cases []Case
	for {
		rec, err := r.Read()
		if err != nil {
			if errors.Is(err, io.EOF) {
				return cases, nil
			}
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		line, _ := r.FieldPos(0)
		c := Case{Name: rec[0], Inputs: Fields(rec[1]), Output: rec[2], Expected: rec[3], Unit: rec[4], Source: rec[6], Locator: rec[7], Read: rec[8], File: name, Line: line}
		if rec[5] != "" {
			if c.Tolerance, err = strconv.ParseFloat(rec[5], 64); err != nil {
				return nil, fmt.Errorf("%s:%d: tolerance %q is not a number", name, line, rec[5])
			}
		}
		cases = append(cases, c)
	}
}

// Fields reads "input=text; input=text".
func Fields(s string) []calc.Field {
	var fields []calc.Field
	for part := range strings.SplitSeq(s, ";") {
		id, text, ok := strings.Cut(part, "=")
		if ok {
			fields = append(fields, calc.Field{Input: strings.TrimSpace(id), Text: strings.TrimSpace(text)})
		}
	}
	return fields
}

// Key joins fields to one text: cases with the same inputs share a run.
func Key(fields []calc.Field) string {
	var b strings.Builder
	for _, f := range fields {
		b.WriteString(f.Input + "=" + f.Text + ";")
	}
	return b.String()
}

// Result is a case beside what was computed.
type Result struct {
	Case
	Got        string
	Difference string
	OK         bool
	Why        string // set when OK is false
}

// Check holds an answer against a case. A NaN never passes.
func Check(w *calc.Worksheet, c Case, a calc.Answer) Result {
	r := Result{Case: c}
	fail := func(format string, args ...any) Result {
		r.Why = fmt.Sprintf("%s:%d %s: got %s, want %s %s within %g, difference %s (source %s %s): ", c.File, c.Line, c.Name, r.Got, c.Expected, c.Unit, c.Tolerance, r.Difference, c.Source, c.Locator) + fmt.Sprintf(format, args...)
		return r
	}
	if c.Output == "problem" {
		for _, p := range a.Problems {
			r.Got = p.Code
			if p.Code == c.Expected {
				r.OK = true
				return r
			}
		}
		return fail("no problem with that code")
	}
	if len(a.Problems) > 0 {
		r.Got = a.Problems[0].Sentence
		return fail("the worksheet refused")
	}
	if c.Output == "verdict" {
		if a.Verdict != nil {
			r.Got = a.Verdict.ID
		}
		if r.OK = r.Got == c.Expected; !r.OK {
			return fail("another verdict")
		}
		return r
	}
	out := w.Output(c.Output)
	if out == nil {
		return fail("no output %s", c.Output)
	}
	want, err := strconv.ParseFloat(c.Expected, 64)
	u := out.Quantity.Unit(c.Unit)
	if err != nil || u == nil {
		return fail("expected value or unit cannot be read")
	}
	env := unit.Env{Atmosphere: atmosphere(c.Inputs)}
	for _, o := range a.Outputs {
		if o.ID != c.Output {
			continue
		}
		got := u.FromSI(o.Value, env)
		r.Got = strconv.FormatFloat(got, 'g', 8, 64)
		r.Difference = strconv.FormatFloat(got-want, 'g', 2, 64)
		if r.OK = math.Abs(got-want) <= c.Tolerance; !r.OK {
			return fail("outside the tolerance")
		}
		return r
	}
	return fail("the output was not set")
}

// atmosphere returns the local air pressure that a case's altitude implies.
func atmosphere(fields []calc.Field) float64 {
	for _, f := range fields {
		if f.Input == "altitude" {
			n := unit.ParseNumber(f.Text)
			if u := unit.Length.Unit(n.Rest); u != nil {
				return calc.AtmosphereAt(u.ToSI(n.Value, unit.Env{}))
			}
		}
	}
	return unit.StandardAtmosphere
}
