package cause

import (
	"strconv"
	"strings"
)

// Answer reads a model with facts, assesses it and writes what came out; a text
// that cannot be read comes back as a problem.
func Answer(text string) string {
	m, facts, fault := Read(text)
	if fault != nil {
		var w lines
		w.line("problem", "The cause data cannot be read: "+fault.Error()+".")
		return w.b.String()
	}
	a := Assess(m, facts)
	return Write(m, facts, &a)
}

// Write gives an assessment as lines of text, fields parted by tabs:
//
//	judged    cause  probability  standing  recurs|passes
//	for       cause  finding  factor
//	against   cause  finding  factor
//	missing   cause  finding
//	together  probability  cause,cause,…
//	next      finding  bits  score  probability  cause-if-there  probability  cause-if-not  probability  before|-
//	conflict  finding  probability
//	mechanism mechanism  probability
//	arrow     cause|-  mechanism  probability  proven|open  finding,finding,…
//	drawing   svg
//	problem   sentence
func Write(m *Model, facts Facts, a *Assessment) string {
	var w lines
	if a.Impossible {
		w.line("problem", "These findings contradict each other. Look at each of them again.")
		return w.b.String()
	}
	id := func(f int) string { return m.Findings[f].ID }
	causeID := func(c int) string {
		if c < 0 {
			return "-"
		}
		return m.Causes[c].ID
	}
	for i := range a.Causes {
		j, c := &a.Causes[i], &m.Causes[i]
		w.line("judged", c.ID, share(j.P), string(j.Standing), pick(c.Recurs, "recurs", "passes"))
		for _, x := range j.For {
			w.line("for", c.ID, id(x.Finding), share(x.Factor))
		}
		for _, x := range j.Against {
			w.line("against", c.ID, id(x.Finding), share(x.Factor))
		}
		for _, f := range j.Missing {
			w.line("missing", c.ID, id(f))
		}
	}
	for _, t := range a.Together {
		ids := make([]string, len(t.Causes))
		for k, c := range t.Causes {
			ids[k] = m.Causes[c].ID
		}
		w.line("together", share(t.P), strings.Join(ids, ","))
	}
	for _, n := range a.Next {
		w.line("next", id(n.Finding), share(n.Bits), share(n.Score), share(n.P), causeID(n.IfThere), share(n.PThere),
			causeID(n.IfNot), share(n.PNot), pick(m.Findings[n.Finding].Before, "before", "-"))
	}
	for _, c := range a.Conflicts {
		w.line("conflict", id(c.Finding), share(c.P))
	}
	for k, p := range a.Mechanisms {
		w.line("mechanism", m.Mechanisms[k].ID, share(p))
	}
	arrows := Chain(m, facts, a)
	for _, r := range arrows {
		ids := make([]string, len(r.Facts))
		for k, f := range r.Facts {
			ids[k] = id(f)
		}
		w.line("arrow", causeID(r.Cause), m.Mechanisms[r.Mechanism].ID, share(r.P), pick(r.Proven, "proven", "open"), strings.Join(ids, ","))
	}
	if len(arrows) > 0 {
		w.line("drawing", Draw(m, facts, arrows))
	}
	return w.b.String()
}

type lines struct{ b strings.Builder }

func (w *lines) line(fields ...string) {
	for i, f := range fields {
		if i > 0 {
			w.b.WriteByte('\t')
		}
		w.b.WriteString(f)
	}
	w.b.WriteByte('\n')
}

func share(p float64) string { return strconv.FormatFloat(p, 'g', 4, 64) }

func pick(b bool, yes, no string) string {
	if b {
		return yes
	}
	return no
}
