// Package causes reads the cause model of the handbook: root causes, mechanisms, checks and what each check says.
//
// The model is content. It stands in tables of ordinary pages below content/causes, so that people read it, the check
// judges its links and sources like those of any page, and a company's layer may replace a page of it. [Read] gathers the
// tables, says what is wrong with file and line, and gives a [Model]; [Model.Data] writes what the phone loads.
//
// table.go reads tables, read.go their rows, strength.go and worksheet.go single cells; lines.go writes, view.go draws.
package causes

import "changeout/calc"

// Folder is where the pages of the model lie in the content tree.
const Folder = "causes/"

// Model is everything that the pages say, in the order of their tables.
type Model struct {
	Causes     []Cause
	Mechanisms []Mechanism
	Places     []Place
	Checks     []Check
}

// Cause is a root cause.
type Cause struct {
	ID, Name string
	Prior    float64 // probability in a failure of which nothing is known
	Again    bool    // left alone, it kills the next compressor too
	Removes  string  // what removes it, plain text
	Page     string  // address of the page that says how, from the site's root; or ""
	Leads    []Weight
}

// Mechanism is a way in which the part is damaged.
type Mechanism struct{ ID, Name, Means string }

// Place is a heading under which checks stand.
type Place struct{ ID, Title string }

// Check is a question with the answers yes, no and not looked at.
type Check struct {
	ID        string
	Place     int
	Question  string
	Statement string   // what a yes means, for lists and reports
	Facts     []string // checks that share one of these are one fact; the first says what it is
	How       string   // words of the link
	Page      string   // address of the step or page that says how, from the site's root
	Minutes   float64
	Risk      int  // 0 look, 1 tools, 2 danger
	Before    bool // do it before a part is condemned
	From      *Answerer

	Mechanisms bool // the weights are of mechanisms; otherwise of causes
	Leak       float64
	Weights    []Weight
}

// Weight is a strength towards a cause or a mechanism.
type Weight struct {
	To string
	P  float64
}

// Answerer is a worksheet that answers a check by itself: by a limit on one output, or by its verdict.
type Answerer struct {
	Worksheet *calc.Worksheet

	Output  *calc.Output // nil when the verdict answers
	Above   bool         // yes above the limit, else below
	Limit   float64      // in SI
	Unit    string       // the unit in which the page states the limit
	YesOnly bool         // a value on the other side of the limit proves no “no”
	Not     []string     // verdicts with which the output says nothing

	Yes, No []string // verdicts; with any other the check stays open
}

// risks are the words of the column Effort, by risk.
var risks = []string{"look", "tools", "danger"}
