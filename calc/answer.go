package calc

import "changeout/calc/unit"

// Field is what a person entered for one input: text, and a unit chosen
// beside it. A unit inside the text wins over the one beside it.
type Field struct {
	Input string
	Text  string
	Unit  string
}

// Request asks for one run of a worksheet.
type Request struct {
	Worksheet string
	System    unit.System // the family of units preferred for the answers; Either follows the inputs
	Fields    []Field
	OutUnits  []Field // output id and the unit wanted for it
}

// Answer is what a run gives: either problems, or outputs and all that goes
// with them.
type Answer struct {
	Worksheet string
	Problems  []Problem
	Outputs   []OutputValue
	Verdict   *VerdictValue
	Warnings  []string
	Advice    []string // what to do next
	Steps     []Step
	Charts    []Chart
}

// OutputValue is one output in SI and as shown.
type OutputValue struct {
	ID     string
	Label  string
	Value  float64
	SIUnit string
	Text   string
	Main   bool
}

// VerdictValue is the verdict reached, with the sentence that explains it.
type VerdictValue struct {
	Verdict
	Sentence string
}

// Step is one line of the working, recorded by the run that made the number.
type Step struct {
	Label   string
	Formula string // symbols, then the numbers put in
	Value   string
	Cite    Cite
}

// Chart is a drawing with a title that says what it shows.
type Chart struct {
	Title string
	SVG   string
}

// Problem is one thing that the person has to put right, as a sentence that
// names the input, what was given and what is allowed.
type Problem struct {
	Input    string
	Code     string
	Sentence string
	Suggest  []Suggestion

	// Series: the row counted from 1, without header, comments and blank lines,
	// and the field in it counted from 1; 0 when the problem has none.
	Row, Field int
}

// Suggestion is a text that would settle a problem if put into an input.
type Suggestion struct {
	Input string
	Label string
	Text  string
}

// The codes of problems that the door itself raises.
const (
	UnknownWorksheet = "unknown-worksheet"
	UnknownInput     = "unknown-input"
	Missing          = "missing"
	NotANumber       = "not-a-number"
	TwoWays          = "two-readings"
	UnknownUnit      = "unknown-unit"
	VagueUnit        = "gauge-or-absolute"
	TooLow           = "too-low"
	TooHigh          = "too-high"
	UnknownChoice    = "unknown-choice"
	FewRows          = "too-few-rows"
	ManyRows         = "too-many-rows"
	UnknownColumn    = "unknown-column"
	ColumnUnit       = "column-unit"
	BadRow           = "bad-row"
	NotFinite        = "not-finite"
)
