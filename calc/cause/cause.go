// Package cause weighs what was found at a failed compressor against the root
// causes that could have led to it.
//
// The model has three layers. Root causes (an airflow that is blocked, a
// sensor off its pipe) lead to mechanisms (liquid floodback, oil starvation),
// and both leave findings: a finding belongs either to root causes or to
// mechanisms. Every strength in the model is data that a company can tune; the
// package holds none.
//
// Probabilities combine as independent influences do (noisy-or; Pearl,
// Probabilistic Reasoning in Intelligent Systems, 1988, section 4.3.2). The
// inference is exact over all sets of at most MaxTogether root causes acting
// at once: Assess sums over the sets and over the mechanisms that each could
// set going. Nothing is sampled.
//
// The package knows no prose, no units and no files: Read takes the model and
// the findings as lines of text, Write gives the assessment back as lines.
package cause

// MaxTogether is how many root causes may act at once.
const MaxTogether = 3

// Limits of a model, which keep the time of an assessment bounded: the number
// of sets grows with the third power of the causes and the states of the
// mechanisms double with each one.
const (
	MaxCauses     = 40
	MaxMechanisms = 12
	MaxFindings   = 250
)

// Model is the causes, the mechanisms and the findings with their strengths.
type Model struct {
	Causes     []Cause
	Mechanisms []Mechanism
	Findings   []Finding
}

// Cause is a root cause.
type Cause struct {
	ID, Name string
	Prior    float64 // probability before anything is known of the case, 0 < Prior < 1
	Recurs   bool    // left alone, it would kill the next compressor too
	Leads    []Link  // to mechanisms
}

// Mechanism is a way in which a compressor is damaged.
type Mechanism struct{ ID, Name string }

// Link is a strength towards the item To of the other list: the probability
// that it follows when this alone acts.
type Link struct {
	To int
	P  float64
}

// Layer says what a finding is a sign of.
type Layer uint8

const (
	OfCauses     Layer = iota // signs of root causes: an airflow, a sensor against a probe
	OfMechanisms              // signs of mechanisms: a scored shaft, thin oil
)

// Finding is something that can be looked at.
type Finding struct {
	ID, Name string
	Layer    Layer
	Groups   []string // what it is about; findings that share a word are one fact: two readings of one gauge
	Leak     float64  // probability of it without any of its links, 0 < Leak < 1
	From     []Link   // the causes or mechanisms it is a sign of; P below Leak speaks against
	Minutes  float64  // that looking takes
	Risk     int      // 0 a look, 1 covers off or tools, 2 live parts, pressure or height
	Before   bool     // must be looked at before a part is condemned
}

// State is what is known of a finding.
type State int8

// The three states. Absent means looked for and not there; it is not the same
// as not looked at.
const (
	Unknown State = 0
	Present State = 1
	Absent  State = -1
)

// Facts is the state of every finding of a model, by its place there.
type Facts []State
