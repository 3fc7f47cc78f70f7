package causes

import (
	"slices"
	"testing"
	"time"

	"changeout/calc/cause"
)

// TestOneAnswer asks every check alone, with a yes and with a no.
//
// With little entered no cause is named: nothing and any single answer end in no cause, and no single answer makes one
// certain (0.75 is the odds of three to one that the weights were tuned to stay under).
//
// More evidence for a cause never lowers it: what a check speaks for rises with a yes and falls with a no; what it speaks
// against falls with a yes. A link counts when it moves the odds by half, three times towards a mechanism: the limit to
// three causes at once couples them by less than that.
func TestOneAnswer(t *testing.T) {
	m := engine(t)
	facts := make(cause.Facts, len(m.Findings))
	base := cause.Assess(m, facts)
	for i := range base.Causes {
		if base.Causes[i].Standing != cause.NotDetermined {
			t.Errorf("nothing entered: %s is %s, want not determined", m.Causes[i].ID, base.Causes[i].Standing)
		}
	}
	probable, tried := 0, 0
	for f := range m.Findings {
		x := &m.Findings[f]
		var answers [2]cause.Assessment
		for k, s := range []cause.State{cause.Present, cause.Absent} {
			facts[f] = s
			answers[k] = cause.Assess(m, facts)
			for i := range answers[k].Causes {
				j := &answers[k].Causes[i]
				if j.Standing == cause.IsCause || !(j.P < 0.75) {
					t.Errorf("%s %d alone: %s is %s with %.2f, want at most probable, under 0.75", x.ID, s, m.Causes[i].ID, j.Standing, j.P)
				}
				if j.Standing == cause.Probable {
					probable++
				}
			}
		}
		facts[f] = cause.Unknown
		for _, l := range x.From {
			y, n, b := answers[0].Causes, answers[1].Causes, base.Causes
			yes, no, open := 0.0, 0.0, 0.0
			if x.Layer == cause.OfMechanisms {
				yes, no, open = answers[0].Mechanisms[l.To], answers[1].Mechanisms[l.To], base.Mechanisms[l.To]
			} else {
				yes, no, open = y[l.To].P, n[l.To].P, b[l.To].P
			}
			switch {
			case l.P >= 1.5*x.Leak && x.Layer == cause.OfCauses || l.P >= 3*x.Leak:
				if !(yes > open && no < open) {
					t.Errorf("%s speaks for %d: no %.4f, not looked %.4f, yes %.4f; want them in this order", x.ID, l.To, no, open, yes)
				}
			case l.P <= x.Leak/1.5:
				if !(yes < open) {
					t.Errorf("%s speaks against %d: not looked %.4f, yes %.4f; want it lower", x.ID, l.To, open, yes)
				}
			default:
				continue
			}
			tried++
		}
	}
	if tried < 200 {
		t.Errorf("%d links tried, want 200 or more", tried)
	}
	t.Logf("%d checks and %d links; %d single answers make a cause probable, none a cause", len(m.Findings), tried, probable)
}

// TestStandingsNeedFacts: in simulated cases a cause is called one only with two findings that speak for it and share no
// fact, of which one at least was seen or measured.
func TestStandingsNeedFacts(t *testing.T) {
	m := engine(t)
	s := newSimulator(m, 31)
	for range 25 {
		_, facts := s.draw(0.25)
		a := cause.Assess(m, facts)
		for i := range a.Causes {
			j := &a.Causes[i]
			var groups [][]string
			seen, apart := false, false
			for _, w := range j.For {
				if w.Factor < 2 {
					continue
				}
				g := m.Findings[w.Finding].Groups
				seen = seen || !slices.Contains(g, "told")
				for _, other := range groups {
					apart = apart || !slices.ContainsFunc(g, func(word string) bool { return slices.Contains(other, word) })
				}
				groups = append(groups, g)
			}
			if j.Standing == cause.IsCause && !(seen && apart) {
				t.Errorf("%s is called the cause with %q", m.Causes[i].ID, groups)
			}
		}
	}
}

// TestTime: an assessment of a full sheet. Half a second here leaves a slow phone, about ten times slower, within some
// seconds; measured are some hundredths.
func TestTime(t *testing.T) {
	m := engine(t)
	s := newSimulator(m, 37)
	_, facts := s.draw(0.5)
	best := time.Hour
	for range 5 {
		start := time.Now()
		cause.Assess(m, facts)
		best = min(best, time.Since(start))
	}
	t.Logf("an assessment with half of %d checks answered took %v", len(m.Findings), best.Round(time.Millisecond))
	if best > 500*time.Millisecond {
		t.Errorf("got %v, want under 500 ms", best)
	}
}
