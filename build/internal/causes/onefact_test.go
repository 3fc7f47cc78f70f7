package causes

import (
	"strings"
	"testing"

	"changeout/calc/cause"
)

// given answers checks with yes.
func given(t *testing.T, m *cause.Model, yes string) cause.Facts {
	t.Helper()
	facts := make(cause.Facts, len(m.Findings))
	for id := range strings.FieldsSeq(yes) {
		f := m.Finding(id)
		if f < 0 {
			t.Fatalf("there is no check %s", id)
		}
		facts[f] = cause.Present
	}
	return facts
}

// TestOneEventIsOneFact: findings of one event, one reading or one part never name a cause together, nor do two that were
// only told. A technician was told “Cause” by the first row, with nothing seen on the dead compressor.
func TestOneEventIsOneFact(t *testing.T) {
	m := engine(t)
	for _, c := range []struct{ yes, of, why string }{
		{"failed-before burnt-before", "contamination", "both describe the same earlier failure"},
		{"failed-before burnt-before not-cleaned", "contamination", "all three describe the same earlier failure"},
		{"failed-before burnt-before not-cleaned within-a-year", "contamination", "all four were told, nothing was seen"},
		{"dropped within-hours", "part", "both were told"},
		{"vacuum-run within-hours", "vacuum-start", "both were told"},
		{"opened no-nitrogen within-a-year", "scale", "all three were told"},
		{"fan-motor fan-slow", "outdoor-fan", "one fan seen twice"},
		{"sensor-off sensor-differs", "sensor", "one sensor seen twice"},
		{"valve-dead valve-passes", "valve", "one valve seen twice"},
		{"suction-shell oil-in-shell", "oil-trapped", "one shell seen twice"},
		{"heater-dead cold-shell-rest", "heater", "a dead heater leaves the shell cold"},
		{"flakes screens-blocked", "scale", "one strainer seen twice"},
		{"burn-two motor-fault", "supply", "one winding, measured and seen"},
	} {
		a := cause.Assess(m, given(t, m, c.yes))
		j := a.Causes[m.Cause(c.of)]
		t.Logf("%-55s %s %.2f, %s", c.yes, c.of, j.P, j.Standing)
		for i := range a.Causes {
			if a.Causes[i].Standing == cause.IsCause {
				t.Errorf("%s: %s is called the cause with %.2f, want probable at most: %s", c.yes, m.Causes[i].ID, a.Causes[i].P, c.why)
			}
		}
	}
	// One thing seen on the machine beside what was told is a second fact.
	for _, c := range []struct{ yes, of string }{
		{"failed-before burnt-before not-cleaned acid-test sister-dirty", "contamination"},
		{"vacuum-run arc-marks", "vacuum-start"},
		{"power-off heater-dead", "heater"},
		{"no-nitrogen flakes", "scale"},
	} {
		a := cause.Assess(m, given(t, m, c.yes))
		if j := a.Causes[m.Cause(c.of)]; j.Standing != cause.IsCause {
			t.Errorf("%s: %s is %s with %.2f, want the cause", c.yes, c.of, j.Standing, j.P)
		}
	}
}

// TestArrowNeedsASpecificFact: a winding fault follows from six mechanisms, so alone it shows none of the arrows to the
// failed part; a second fact that points at the mechanism does.
func TestArrowNeedsASpecificFact(t *testing.T) {
	m := engine(t)
	proven := func(yes, mechanism string) (proven, drawn bool) {
		facts := given(t, m, yes)
		a := cause.Assess(m, facts)
		for _, r := range cause.Chain(m, facts, &a) {
			if r.Cause < 0 && m.Mechanisms[r.Mechanism].ID == mechanism {
				return r.Proven, true
			}
		}
		return false, false
	}
	if got, drawn := proven("oil-alarms oil-in-shell motor-fault", "oil-starvation"); got || !drawn {
		t.Errorf("a winding fault alone: drawn %v, proven %v; want an open arrow", drawn, got)
	}
	if got, drawn := proven("oil-alarms oil-in-shell motor-fault wear-even", "oil-starvation"); !got || !drawn {
		t.Errorf("with even wear: drawn %v, proven %v; want a proven arrow", drawn, got)
	}
}
