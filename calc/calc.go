// Package calc says what a worksheet is and runs it.
//
// A worksheet is one Go value, a Worksheet: its inputs, outputs, verdicts,
// limits, cautions, sources and the function that computes. The form on the
// phone, the command line, the worked example printed in the handbook and the
// tests are all read from that one value.
//
// Evaluate is the only door: it turns the text that a person typed into SI
// numbers, judges the bounds, runs the worksheet and writes the answers back
// in the person's units. No other code parses a number or compares it with a
// bound, so the phone, the command line and the build cannot disagree.
//
// To read the package, start at Worksheet, then Evaluate, then Run. To add a
// worksheet, see the recipe in DEVELOPERS.md.
//
// What ships to the phone links this package, so nothing here may reach fmt,
// encoding/json, html/template, os, net or embed; a test holds that.
package calc

import "changeout/calc/unit"

// Worksheet is the one declaration that every reader shares.
type Worksheet struct {
	ID       string // as typed on the command line, used in addresses
	Title    string
	Purpose  string // one or two sentences: what it answers
	Inputs   []Input
	Outputs  []Output
	Verdicts []Verdict
	Compute  func(*Run)
	Limits   []string  // when not to use it
	Cautions []Caution // what could hurt while getting or using the numbers
	Sources  []string  // bibliography keys; steps may cite only these
	Example  []Field   // the worked example printed in the handbook
}

// Kind is the kind of an input.
type Kind string

const (
	Quantity Kind = "quantity" // a number with a unit
	Choice   Kind = "choice"   // one of a list
	Series   Kind = "series"   // rows of numbers: a log, a list of line lengths
)

// Input is one thing that a person enters.
type Input struct {
	ID       string
	Label    string
	Help     string
	Kind     Kind
	Optional bool
	When     []When // asked only when all of these hold
	Default  string // text with its unit, as a person would type it

	// Quantity: what it measures, the units offered (the first metric one and
	// the first inch-pound one are the defaults of their families) and the
	// closed range allowed, in SI, with the reason for it.
	Quantity    *unit.Quantity
	Units       []string
	Low, High   float64
	BoundReason string
	Altitude    bool // this input is the site altitude that sets the local atmosphere

	Options []Option // Choice
	Listed  string   // Choice: the place that lists all options, when they are too many for a sentence

	Columns []Column // Series
	MinRows int
	MaxRows int
}

// When is a condition: a choice has one of these values.
type When struct {
	Input string
	Is    []string
}

// Option is one value of a choice.
type Option struct {
	ID      string
	Label   string
	Aliases []string
}

// Column is one column of a series.
type Column struct {
	ID       string
	Label    string
	Names    []string // header words that mean this column, folded
	Quantity *unit.Quantity
	Units    []string // offered; the first is what a bare number means when no header says otherwise
	Low      float64
	High     float64
	Optional bool
	Clock    bool // may be written as a time of day; the series starts at zero
}

// Output is one number that comes out.
type Output struct {
	ID          string
	Label       string
	Quantity    *unit.Quantity
	Units       []string // the first metric one and the first inch-pound one are the defaults of their families
	Significant int      // figures shown; 0 leaves it to the unit's decimals
	Main        bool     // shown large, unless the verdict names others
	Below       string   // label of a value below zero, which is then shown without its sign; "" where the sign is shown
}

// Tone says how a verdict is to be taken.
type Tone string

const (
	Good  Tone = "good"  // go on
	Stop  Tone = "stop"  // do not go on
	Doubt Tone = "doubt" // not settled
	Info  Tone = "info"  // neither
)

// Verdict is a judgement that a worksheet can reach.
type Verdict struct {
	ID    string
	Tone  Tone
	Title string
	Main  []string // the outputs that prove it or that it asks for, shown large, the first one first; nil for those marked Main
}

// Caution is a safety message: hazard, consequence, how to avoid it.
type Caution struct {
	Signal      string // DANGER, WARNING, CAUTION or NOTICE as ANSI Z535 defines them
	Hazard      string
	Consequence string
	Avoid       string
}

// Cite is a place in a source.
type Cite struct {
	Key     string
	Locator string
}

// Input returns the declared input with that id, or nil.
func (w *Worksheet) Input(id string) *Input {
	for i := range w.Inputs {
		if w.Inputs[i].ID == id {
			return &w.Inputs[i]
		}
	}
	return nil
}

// Output returns the declared output with that id, or nil.
func (w *Worksheet) Output(id string) *Output {
	for i := range w.Outputs {
		if w.Outputs[i].ID == id {
			return &w.Outputs[i]
		}
	}
	return nil
}

// Verdict returns the declared verdict with that id, or nil.
func (w *Worksheet) Verdict(id string) *Verdict {
	for i := range w.Verdicts {
		if w.Verdicts[i].ID == id {
			return &w.Verdicts[i]
		}
	}
	return nil
}
