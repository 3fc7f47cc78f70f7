package cause

import (
	"strconv"
	"strings"
)

// The model and the findings as lines of text, fields parted by tabs:
//
//	cause      id  name  prior  recurs|passes
//	mechanism  id  name
//	leads      cause  mechanism  probability
//	finding    id  name  causes|mechanisms  group,group,…  leak  minutes  risk  before|-
//	sign       finding  cause-or-mechanism  probability
//	fact       finding  present|absent
//
// An item stands before the lines that name it. The build writes the model's
// lines from the content; the page adds the facts.

// Fault is a line that cannot be read.
type Fault struct {
	Line int // from 1; 0 for the text as a whole
	What string
}

func (f *Fault) Error() string {
	if f.Line == 0 {
		return f.What
	}
	return "line " + strconv.Itoa(f.Line) + ": " + f.What
}

// Read reads a model and the facts. On a fault it gives nothing else.
func Read(text string) (*Model, Facts, *Fault) {
	m := &Model{}
	var facts Facts
	line := 0
	for l := range strings.SplitSeq(text, "\n") {
		line++
		if l == "" {
			continue
		}
		f := strings.Split(l, "\t")
		what := ""
		if f[0] == "fact" {
			for len(facts) < len(m.Findings) {
				facts = append(facts, Unknown)
			}
			what = readFact(m, facts, f)
		} else {
			what = m.readLine(f)
		}
		if what != "" {
			return nil, nil, &Fault{line, what}
		}
	}
	for len(facts) < len(m.Findings) {
		facts = append(facts, Unknown)
	}
	if len(m.Causes) == 0 || len(m.Findings) == 0 {
		return nil, nil, &Fault{0, "the cause model is empty"}
	}
	return m, facts, nil
}

func readFact(m *Model, facts Facts, f []string) string {
	if len(f) != 3 {
		return "a fact has a finding and a state"
	}
	i := m.Finding(f[1])
	if i < 0 {
		return "there is no finding " + f[1]
	}
	switch f[2] {
	case "present":
		facts[i] = Present
	case "absent":
		facts[i] = Absent
	default:
		return "a finding is present or absent, not " + f[2]
	}
	return ""
}

// fields is how many a line of each kind has.
var fields = []struct {
	kind string
	n    int
}{{"cause", 5}, {"mechanism", 3}, {"leads", 4}, {"finding", 9}, {"sign", 4}}

func (m *Model) readLine(f []string) string {
	for _, k := range fields {
		if k.kind == f[0] && k.n != len(f) {
			return f[0] + " has " + strconv.Itoa(len(f)-1) + " fields; " + strconv.Itoa(k.n-1) + " are needed"
		}
	}
	switch f[0] {
	case "cause":
		p, ok := probability(f[3])
		if !ok || p == 0 || m.Cause(f[1]) >= 0 || len(m.Causes) == MaxCauses {
			return "cause " + f[1] + " is a second one, one too many, or its prior is not between 0 and 1"
		}
		m.Causes = append(m.Causes, Cause{ID: f[1], Name: f[2], Prior: p, Recurs: f[4] == "recurs"})
	case "mechanism":
		if m.Mechanism(f[1]) >= 0 || len(m.Mechanisms) == MaxMechanisms {
			return "mechanism " + f[1] + " is a second one or one too many"
		}
		m.Mechanisms = append(m.Mechanisms, Mechanism{ID: f[1], Name: f[2]})
	case "leads":
		from, to := m.Cause(f[1]), m.Mechanism(f[2])
		p, ok := probability(f[3])
		if from < 0 || to < 0 || !ok {
			return "leads " + f[1] + " to " + f[2] + " names something unknown, or its strength is not between 0 and 1"
		}
		m.Causes[from].Leads = append(m.Causes[from].Leads, Link{to, p})
	case "finding":
		leak, ok := probability(f[5])
		minutes, err := strconv.ParseFloat(f[6], 64)
		risk, err2 := strconv.Atoi(f[7])
		if !ok || leak == 0 || err != nil || !(minutes >= 0 && minutes <= 1e5) || err2 != nil || risk < 0 || risk > 2 ||
			m.Finding(f[1]) >= 0 || len(m.Findings) == MaxFindings || f[3] != "causes" && f[3] != "mechanisms" {
			return "finding " + f[1] + " is a second one, one too many, or one of its figures cannot be read"
		}
		layer := OfCauses
		if f[3] == "mechanisms" {
			layer = OfMechanisms
		}
		m.Findings = append(m.Findings, Finding{ID: f[1], Name: f[2], Layer: layer, Groups: strings.Split(f[4], ","), Leak: leak, Minutes: minutes, Risk: risk, Before: f[8] == "before"})
	case "sign":
		i := m.Finding(f[1])
		if i < 0 {
			return "there is no finding " + f[1]
		}
		finding := &m.Findings[i]
		to := m.Cause(f[2])
		if finding.Layer == OfMechanisms {
			to = m.Mechanism(f[2])
		}
		p, ok := probability(f[3])
		if to < 0 || !ok {
			return "sign " + f[1] + " of " + f[2] + " names something unknown in its layer, or its strength is not between 0 and 1"
		}
		finding.From = append(finding.From, Link{to, p})
	default:
		return "“" + f[0] + "” is not a kind of line"
	}
	return ""
}

// probability reads a number from 0 to below 1. One is refused: nothing in the
// field is certain, and a certain sign could make a case impossible.
func probability(s string) (float64, bool) {
	p, err := strconv.ParseFloat(s, 64)
	return p, err == nil && p >= 0 && p < 1
}

// Cause returns the place of the cause with that id, or -1.
func (m *Model) Cause(id string) int {
	for i := range m.Causes {
		if m.Causes[i].ID == id {
			return i
		}
	}
	return -1
}

// Mechanism returns the place of the mechanism with that id, or -1.
func (m *Model) Mechanism(id string) int {
	for i := range m.Mechanisms {
		if m.Mechanisms[i].ID == id {
			return i
		}
	}
	return -1
}

// Finding returns the place of the finding with that id, or -1.
func (m *Model) Finding(id string) int {
	for i := range m.Findings {
		if m.Findings[i].ID == id {
			return i
		}
	}
	return -1
}
