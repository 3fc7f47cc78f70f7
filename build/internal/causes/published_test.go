package causes

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"changeout/calc/cause"
	"changeout/calc/source"
)

// published is one failure described in a public text.
type published struct {
	name, source, read, yes, no, expect string
}

func readPublished(t *testing.T) []published {
	t.Helper()
	f, err := os.Open("../../../testdata/published/causes/cases.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	r.LazyQuotes = true
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var cases []published
	for _, c := range rows[1:] {
		cases = append(cases, published{name: c[0], source: c[1], read: c[3], yes: c[5], no: c[6], expect: c[7]})
	}
	return cases
}

// place is where an item stands among others by probability, from 1.
func place(p []float64, i int) int {
	n := 1
	for k := range p {
		if k != i && p[k] >= p[i] {
			n++
		}
	}
	return n
}

func probabilities(a *cause.Assessment) []float64 {
	p := make([]float64, len(a.Causes))
	for i := range p {
		p[i] = a.Causes[i].P
	}
	return p
}

// TestPublishedFailures: what the text says was wrong stands where the row asks, first or among the first three.
func TestPublishedFailures(t *testing.T) {
	m := engine(t)
	cases := readPublished(t)
	if len(cases) < 30 {
		t.Fatalf("%d cases, want 30 or more", len(cases))
	}
	first, named := 0, 0
	for _, c := range cases {
		if s, ok := source.Lookup(c.source); !ok || string(s.Read) != c.read {
			t.Errorf("%s: source %s is known: %v, read %q, the row says %q", c.name, c.source, ok, s.Read, c.read)
		}
		facts := make(cause.Facts, len(m.Findings))
		for _, list := range []struct {
			ids   string
			state cause.State
		}{{c.yes, cause.Present}, {c.no, cause.Absent}} {
			for id := range strings.FieldsSeq(list.ids) {
				f := m.Finding(id)
				if f < 0 {
					t.Fatalf("%s: there is no check %s", c.name, id)
				}
				facts[f] = list.state
			}
		}
		a := cause.Assess(m, facts)
		causes := probabilities(&a)
		var told []string
		for want := range strings.SplitSeq(c.expect, ";") {
			id, within, _ := strings.Cut(strings.TrimSpace(want), " ")
			limit, err := strconv.Atoi(within)
			if err != nil {
				t.Fatalf("%s: expect %q", c.name, want)
			}
			p, i := causes, m.Cause(id)
			if i < 0 {
				p, i = a.Mechanisms, m.Mechanism(id)
			}
			if i < 0 {
				t.Fatalf("%s: there is no cause or mechanism %s", c.name, id)
			}
			got := place(p, i)
			if got > limit {
				t.Errorf("%s: %s stands at place %d with %.2f, want place %d; source %s", c.name, id, got, p[i], limit, c.source)
			}
			named++
			if got == 1 {
				first++
			}
			told = append(told, id+" "+strconv.FormatFloat(p[i], 'f', 2, 64))
		}
		best := largest(causes)
		t.Logf("%-24s %-44s leading %s %.2f, %s", c.name, strings.Join(told, ", "), m.Causes[best].ID, causes[best], a.Causes[best].Standing)
	}
	t.Logf("%d published failures, %d expectations, %d of them first", len(cases), named, first)
}
