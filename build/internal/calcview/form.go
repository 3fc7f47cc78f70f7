// Package calcview shows the computation to the site: it turns a worksheet's
// declaration into the form that the templates draw, runs the worked examples,
// and computes the tables. It holds no arithmetic of its own; every number
// comes through calc.Evaluate or a property package.
package calcview

import (
	"html/template"
	"slices"
	"strconv"
	"strings"

	"changeout/build/internal/markup"
	"changeout/calc"
	"changeout/calc/property/refrigerant"
	"changeout/calc/property/refrigerant/facts"
	"changeout/calc/unit"
)

// Form is what components/worksheet/worksheet.tmpl draws; the comment at its
// head describes each field.
type Form struct {
	ID, Title, Purpose string
	Inputs             []Input
	Outputs            []Output
	Limits             []string
	Cautions           []Caution
	Sources            []SourceItem
	Example            *Example
	CasesURL, PageURL  string
	Heading            int
	Base               string
	Room               int // px that the form takes on a phone, about
}

// Input is one field of a form.
type Input struct {
	ID, FieldID, Label, Help, Bounds, Kind string
	Optional, Signed, Pad                  bool
	Default                                string
	Units                                  []Unit
	Options                                []Option
	Shelves                                []Shelf // the options of a long list, by group; then Options is empty
	Columns                                []Column
	When                                   string
}

// Unit is one unit of a field, with the default and the bounds written in it.
type Unit struct{ ID, Label, System, Default, Bounds string }

// Option is one value of a choice.
type Option struct{ ID, Label string }

// Shelf is a group of a long list of choices: id and label of each.
type Shelf struct {
	Label   string      `json:"label"`
	Options [][2]string `json:"options"`
}

// Column is one column of a series; ID is the header word in the text of a
// person who works in metric units, IP that of one who works in US units.
// Pad is what its boxes hold: number, signed, date, or "" for what no numeric
// pad can write.
type Column struct {
	ID     string `json:"id"`
	Label  string `json:"label"`
	Unit   string `json:"unit"`
	IP     string `json:"ip"`
	IPUnit string `json:"ipUnit"`
	Pad    string `json:"pad"`
}

// Output is one result with the units it can be shown in.
type Output struct {
	ID    string       `json:"id"`
	Label string       `json:"label"`
	Units []OutputUnit `json:"units"`
}

// OutputUnit is one of them.
type OutputUnit struct {
	ID     string `json:"id"`
	Label  string `json:"label"`
	System string `json:"system"`
}

// Caution is what components/caution/caution.tmpl draws.
type Caution struct {
	Word, Level, ID, Hazard, Consequence, Avoid string
	Symbol                                      template.HTML // none for a notice
}

// NewForm turns a declaration into a form. heading is 2 on the worksheet's own
// page and 3 inside another; base is the way to the site's root. Inside another
// page the sources and the worked example are left to the own page: a procedure
// with eight worksheets must stay light.
func NewForm(w *calc.Worksheet, heading int, base string) Form {
	f := Form{ID: w.ID, Title: w.Title, Purpose: w.Purpose, Limits: w.Limits, Heading: heading, Base: base,
		CasesURL: "about/checked.html#" + w.ID, Sources: sourceItems(w.ID+"-source-", w.Sources)}
	for i := range w.Inputs {
		f.Inputs = append(f.Inputs, newInput(w, &w.Inputs[i]))
	}
	for i := range w.Outputs {
		o := &w.Outputs[i]
		f.Outputs = append(f.Outputs, newOutput(o))
	}
	for i, c := range w.Cautions {
		caution := Caution{Word: c.Signal, Level: strings.ToLower(c.Signal), ID: w.ID + "-" + strconv.Itoa(i+1),
			Hazard: c.Hazard, Consequence: c.Consequence, Avoid: c.Avoid}
		if caution.Level != "notice" {
			caution.Symbol = markup.CautionSymbol
		}
		f.Cautions = append(f.Cautions, caution)
	}
	if heading > 2 {
		f.Room = room(f.Inputs)
		f.PageURL, f.CasesURL, f.Sources = "worksheets/"+w.ID+".html", "", nil
	} else {
		f.Example = newExample(w)
	}
	return f
}

// room is about how high a form will be on a phone, in px. A browser that does
// not hold the view still when something above it grows would jump without it.
func room(inputs []Input) int {
	const (
		frame  = 240 // choice of units, buttons
		perRow = 23  // a line of help
		letter = 40  // letters in it
	)
	high := frame
	for i := range inputs {
		in := &inputs[i]
		if !shownAtFirst(in, inputs) {
			continue
		}
		high += 45 + perRow*((len(in.Help)+letter-1)/letter)
		switch {
		case in.Kind == string(calc.Series):
			high += 560
		case in.Kind == string(calc.Choice) && len(in.Options) <= 4:
			high += 60 * len(in.Options)
		case in.Kind == string(calc.Choice):
			high += 60
		default:
			high += 120
		}
	}
	return high
}

// shownAtFirst reports whether the choices as they stand show the input.
func shownAtFirst(in *Input, all []Input) bool {
	for clause := range strings.SplitSeq(in.When, "&") {
		name, wanted, _ := strings.Cut(clause, "=")
		for i := range all {
			if all[i].ID == name && !slices.Contains(strings.Split(wanted, "|"), all[i].Default) {
				return false
			}
		}
	}
	return true
}

func newInput(w *calc.Worksheet, in *calc.Input) Input {
	v := Input{ID: in.ID, FieldID: w.ID + "-" + in.ID, Label: in.Label, Help: in.Help, Kind: string(in.Kind), Optional: in.Optional || in.Altitude, When: whenText(in.When)}
	switch in.Kind {
	case calc.Quantity:
		if in.Quantity.Calendar() {
			v.Kind, v.Bounds, v.Default = "date", Bounds(in), in.Default
			break
		}
		v.Units = units(in.Quantity, in.Units, in.Default)
		for i := range v.Units {
			v.Units[i].Bounds = boundsIn(in, in.Quantity.Unit(v.Units[i].ID)) + "."
		}
		v.Bounds = v.Units[0].Bounds
		v.Default = v.Units[0].Default
		v.Pad = in.Quantity != unit.TubeDiameter
		v.Signed = v.Pad && signed(in.Quantity, in.Units, in.Low)
	case calc.Choice:
		v.Default = in.Default
		if len(in.Options) > longList {
			if in.Default != "" {
				panic("a long list of choices with a default: " + w.ID + " " + in.ID) // the page would begin without it
			}
			v.Shelves = shelve(in.Options)
			break
		}
		for _, o := range in.Options {
			v.Options = append(v.Options, Option{ID: o.ID, Label: o.Label})
		}
	case calc.Series:
		v.Bounds = "At least " + strconv.Itoa(in.MinRows) + plural(" row", in.MinRows) + ", at most " + unit.Fixedf(float64(in.MaxRows), 0) + "."
		for _, c := range in.Columns {
			v.Columns = append(v.Columns, newColumn(&c))
		}
	}
	return v
}

// longList is the number of choices above which a list is grouped, and waits
// until somebody goes to it.
const longList = 30

// shelve groups a list of refrigerants: those met in air conditioning first.
func shelve(options []calc.Option) []Shelf {
	list := make([]Shelf, len(shelves))
	for i := range shelves {
		list[i].Label = shelves[i]
	}
	for _, o := range options {
		r, ok := refrigerant.Lookup(o.ID)
		if !ok {
			panic("a long list of choices that are no refrigerants: " + o.ID) // name their groups here
		}
		i := shelfOf(r.Name, facts.Of(r).Kind)
		list[i].Options = append(list[i].Options, [2]string{o.ID, o.Label})
	}
	return slices.DeleteFunc(list, func(s Shelf) bool { return s.Options == nil })
}

func newOutput(o *calc.Output) Output {
	v := Output{ID: o.ID, Label: o.Label}
	for _, u := range units(o.Quantity, o.Units, "") {
		v.Units = append(v.Units, OutputUnit{u.ID, u.Label, u.System})
	}
	return v
}

// newColumn names a column in the first unit offered and in the first US one.
// A column with one unit needs none in its name.
func newColumn(c *calc.Column) Column {
	name := func(id string) (header, label string) {
		if len(c.Units) == 1 {
			return c.ID, c.Quantity.Unit(id).Label
		}
		return c.ID + "_" + id, c.Quantity.Unit(id).Label
	}
	v := Column{Label: c.Label, Pad: "number"}
	switch {
	case c.Quantity.Calendar():
		v.Pad = "date"
	case c.Clock || c.Quantity == unit.TubeDiameter:
		v.Pad = ""
	case signed(c.Quantity, c.Units, c.Low):
		v.Pad = "signed"
	}
	v.ID, v.Unit = name(c.Units[0])
	if ip := calc.DefaultUnit(c.Quantity, c.Units, unit.InchPound); ip.ID != c.Units[0] && ip.System == unit.InchPound {
		v.IP, v.IPUnit = name(ip.ID)
	}
	return v
}

// signed reports whether a value may be below zero in one of the units offered.
// Inches of mercury below the atmosphere are written without a sign.
func signed(q *unit.Quantity, offered []string, low float64) bool {
	for _, u := range units(q, offered, "") {
		if u := q.Unit(u.ID); u.Datum != unit.Suction && u.FromSI(low, unit.Env{Atmosphere: unit.StandardAtmosphere}) < 0 {
			return true
		}
	}
	return false
}

func plural(s string, n int) string {
	if n == 1 {
		return s
	}
	return s + "s"
}

// whenText joins the conditions of an input: "method=weight&system=a|b".
func whenText(conditions []calc.When) string {
	parts := make([]string, len(conditions))
	for i, c := range conditions {
		parts[i] = c.Input + "=" + strings.Join(c.Is, "|")
	}
	return strings.Join(parts, "&")
}

// units lists the units offered, the default of the metric family first, each
// with the declared default written in it.
func units(q *unit.Quantity, offered []string, standard string) []Unit {
	first := calc.DefaultUnit(q, offered, unit.SI)
	list := []*unit.Unit{first}
	if len(offered) == 0 {
		for i := range q.Units {
			offered = append(offered, q.Units[i].ID)
		}
	}
	for _, id := range offered {
		if u := q.Unit(id); u != first {
			list = append(list, u)
		}
	}
	env := unit.Env{Atmosphere: unit.StandardAtmosphere}
	n := unit.ParseNumber(standard)
	var out []Unit
	for _, u := range list {
		v := Unit{ID: u.ID, Label: u.Label, System: string(u.System)}
		if standard != "" {
			si := q.Unit(n.Rest).ToSI(n.Value, env)
			v.Default = strconv.FormatFloat(u.FromSI(si, env), 'g', 6, 64)
		}
		out = append(out, v)
	}
	return out
}

// Bounds says what range an input takes, in its metric and its inch-pound
// default unit.
func Bounds(in *calc.Input) string {
	text := func(u *unit.Unit) string { return boundsIn(in, u) }
	metric := calc.DefaultUnit(in.Quantity, in.Units, unit.SI)
	imperial := calc.DefaultUnit(in.Quantity, in.Units, unit.InchPound)
	if imperial == metric {
		return text(metric) + "."
	}
	return text(metric) + ", or " + text(imperial) + "."
}

// boundsIn says the range of an input in a unit.
func boundsIn(in *calc.Input, u *unit.Unit) string {
	return u.Range(in.Low, in.High, unit.Env{Atmosphere: unit.StandardAtmosphere})
}

// Example is a worked example as the handbook prints it.
type Example struct {
	Inputs                     []Entry
	Outputs                    []Pair
	Verdict, VerdictText, Tone string
	Steps                      []Step
	Warnings, Advice           []string
	Chart                      template.HTML
	ChartTitle                 string
}

// Pair is a label and what belongs to it.
type Pair struct{ Label, Text string }

// Entry is one input of a worked example. A series has its rows under their
// titles; where they are many, Text says how many, and they are folded.
type Entry struct {
	Label, Text string
	Heads       []string
	Rows        [][]string
}

// Step is one line of working.
type Step struct{ Label, Formula, Value, SourceKey, Locator string }

// newExample runs the declared example. A worksheet whose own example fails is
// a mistake that the catalogue's tests catch; the form then prints none.
func newExample(w *calc.Worksheet) *Example {
	if len(w.Example) == 0 {
		return nil
	}
	a := calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: w.Example})
	if len(a.Problems) > 0 {
		return nil
	}
	e := &Example{Warnings: a.Warnings, Advice: a.Advice}
	for _, f := range w.Example {
		in := w.Input(f.Input)
		entry := Entry{Label: in.Label}
		if in.Kind == calc.Series {
			entry.fill(in, f.Text)
		} else {
			entry.Text = exampleText(in, f)
		}
		e.Inputs = append(e.Inputs, entry)
	}
	for _, o := range a.Outputs {
		e.Outputs = append(e.Outputs, Pair{Label: o.Label, Text: o.Text})
	}
	if v := a.Verdict; v != nil {
		e.Verdict, e.VerdictText, e.Tone = v.Title, v.Sentence, string(v.Tone)
	}
	for _, s := range a.Steps {
		e.Steps = append(e.Steps, Step{Label: s.Label, Formula: s.Formula, Value: s.Value, SourceKey: s.Cite.Key, Locator: s.Cite.Locator})
	}
	if len(a.Charts) > 0 {
		e.Chart, e.ChartTitle = template.HTML(a.Charts[0].SVG), a.Charts[0].Title // package chart escapes its text
	}
	return e
}

const shortSeries = 8 // rows that need no fold

// fill puts the rows of a series under the titles that the form shows. The
// first line of an example names the columns: size_mm, or the unit alone.
func (e *Entry) fill(in *calc.Input, text string) {
	for l := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		if strings.HasPrefix(l, "#") {
			continue
		}
		cells := strings.FieldsFunc(l, func(r rune) bool { return strings.ContainsRune(";,\t ", r) })
		if e.Heads == nil {
			for _, h := range cells {
				e.Heads = append(e.Heads, columnTitle(in, h))
			}
			continue
		}
		for i := range cells {
			cells[i] = minus(cells[i])
		}
		e.Rows = append(e.Rows, cells)
	}
	if len(e.Rows) > shortSeries {
		_, unit, _ := strings.Cut(e.Heads[0], ", ")
		e.Text = strings.TrimSpace(strconv.Itoa(len(e.Rows)) + " rows, " + e.Rows[0][0] + " to " + e.Rows[len(e.Rows)-1][0] + " " + unit)
	}
}

// columnTitle is the label of the column that a header word means, with its unit.
func columnTitle(in *calc.Input, header string) string {
	name, id, named := strings.Cut(header, "_")
	if !named {
		id = header // minutes, micron
	}
	for _, c := range in.Columns {
		u := c.Quantity.Unit(id)
		if name != c.ID && !slices.Contains(c.Names, name) && (named || u == nil) {
			continue
		}
		if u == nil || u.Label == "" {
			return c.Label
		}
		return c.Label + ", " + u.Label
	}
	return header
}

func exampleText(in *calc.Input, f calc.Field) string {
	switch in.Kind {
	case calc.Choice:
		for _, o := range in.Options {
			if o.ID == f.Text {
				return o.Label
			}
		}
	case calc.Series:
		var lines []string
		for l := range strings.SplitSeq(f.Text, "\n") {
			if !strings.HasPrefix(l, "#") {
				lines = append(lines, l)
			}
		}
		return strings.Join(lines, " / ")
	case calc.Quantity:
		if in.Quantity.Calendar() {
			return f.Text
		}
		n := unit.ParseNumber(f.Text)
		if u := in.Quantity.Unit(n.Rest); u != nil {
			return minus(strings.TrimSpace(strings.TrimSuffix(f.Text, n.Rest))) + " " + u.Label
		}
	}
	return f.Text
}
