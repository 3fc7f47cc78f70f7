package cause

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
)

// randomModel is a model with every feature: signs for, signs against, causes
// that share mechanisms. Invented; nothing outside stands behind its figures.
func randomModel(r *rand.Rand, causes, mechanisms, findings int) *Model {
	m := &Model{}
	for k := range mechanisms {
		m.Mechanisms = append(m.Mechanisms, Mechanism{ID: "m" + strconv.Itoa(k), Name: "mechanism"})
	}
	for i := range causes {
		c := Cause{ID: "c" + strconv.Itoa(i), Name: "cause", Prior: 0.02 + 0.2*r.Float64()}
		for k := range mechanisms {
			if r.IntN(3) == 0 {
				c.Leads = append(c.Leads, Link{k, 0.1 + 0.8*r.Float64()})
			}
		}
		m.Causes = append(m.Causes, c)
	}
	for f := range findings {
		x := Finding{ID: "f" + strconv.Itoa(f), Name: "finding", Groups: []string{"g" + strconv.Itoa(f%5), "h" + strconv.Itoa(f%7)}, Layer: Layer(f % 2), Leak: 0.02 + 0.2*r.Float64(), Minutes: 1 + 20*r.Float64(), Risk: f % 3}
		n := causes
		if x.Layer == OfMechanisms {
			n = mechanisms
		}
		for i := range n {
			if r.IntN(3) == 0 {
				x.From = append(x.From, Link{i, 0.9 * r.Float64()})
			}
		}
		m.Findings = append(m.Findings, x)
	}
	return m
}

func randomFacts(r *rand.Rand, m *Model, share float64) Facts {
	facts := make(Facts, len(m.Findings))
	for i := range facts {
		if r.Float64() < share {
			facts[i] = State(1 - 2*r.IntN(2))
		}
	}
	return facts
}

// brute sums over every set and every combination of mechanisms without any
// of the engine's preparation: the definition, written out.
func brute(m *Model, facts Facts) (causes, mechanisms []float64) {
	causes, mechanisms, total := sums(m, facts)
	for i := range causes {
		causes[i] /= total
	}
	for j := range mechanisms {
		mechanisms[j] /= total
	}
	return causes, mechanisms
}

func total(m *Model, facts Facts) float64 {
	_, _, total := sums(m, facts)
	return total
}

func sums(m *Model, facts Facts) (causes, mechanisms []float64, total float64) {
	causes, mechanisms = make([]float64, len(m.Causes)), make([]float64, len(m.Mechanisms))
	for s := range 1 << len(m.Causes) {
		if bits.OnesCount(uint(s)) > MaxTogether {
			continue
		}
		for k := range 1 << len(m.Mechanisms) {
			p := 1.0
			for i, c := range m.Causes {
				if s>>i&1 == 1 {
					p *= c.Prior
				} else {
					p *= 1 - c.Prior
				}
			}
			for j := range m.Mechanisms {
				away := 1.0
				for i, c := range m.Causes {
					for _, l := range c.Leads {
						if s>>i&1 == 1 && l.To == j {
							away *= 1 - l.P
						}
					}
				}
				if k>>j&1 == 1 {
					p *= 1 - away
				} else {
					p *= away
				}
			}
			for f, state := range facts {
				if state == Unknown {
					continue
				}
				acting := s
				if m.Findings[f].Layer == OfMechanisms {
					acting = k
				}
				leak, damp := m.Findings[f].Leak, 1.0
				away := 1 - leak
				for _, l := range m.Findings[f].From {
					if acting>>l.To&1 == 1 {
						if l.P >= leak {
							away *= 1 - (l.P-leak)/(1-leak)
						} else {
							damp *= l.P / leak
						}
					}
				}
				there := (1 - away) * damp
				if state == Present {
					p *= there
				} else {
					p *= 1 - there
				}
			}
			total += p
			for i := range causes {
				if s>>i&1 == 1 {
					causes[i] += p
				}
			}
			for j := range mechanisms {
				if k>>j&1 == 1 {
					mechanisms[j] += p
				}
			}
		}
	}
	return causes, mechanisms, total
}

// TestExact compares with the definition written out. Both are double
// precision sums of at most some thousand terms: 1e-10 is generous.
func TestExact(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for n := range 60 {
		m := randomModel(r, 3+r.IntN(5), 1+r.IntN(4), 4+r.IntN(8))
		facts := randomFacts(r, m, 0.6)
		a := Assess(m, facts)
		causes, mechanisms := brute(m, facts)
		for i := range causes {
			if d := math.Abs(a.Causes[i].P - causes[i]); !(d < 1e-10) {
				t.Errorf("model %d cause %d: got %.12f, want %.12f, difference %.2g, the definition written out", n, i, a.Causes[i].P, causes[i], d)
			}
		}
		for j := range mechanisms {
			if d := math.Abs(a.Mechanisms[j] - mechanisms[j]); !(d < 1e-10) {
				t.Errorf("model %d mechanism %d: got %.12f, want %.12f, difference %.2g, the definition written out", n, j, a.Mechanisms[j], mechanisms[j], d)
			}
		}
	}
}

// TestExpected: how far the other facts expect a fact is P(all) / P(others),
// by the definition written out.
func TestExpected(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 20))
	for range 30 {
		m := randomModel(r, 5, 3, 8)
		facts := randomFacts(r, m, 0.6)
		b, _ := newEngine(m).given(facts)
		for f, s := range facts {
			if s == Unknown {
				continue
			}
			others, _ := b.without(f)
			got := b.expected(f, others)
			fewer := append(Facts(nil), facts...)
			fewer[f] = Unknown
			if want := total(m, facts) / total(m, fewer); !(math.Abs(got-want) < 1e-10) {
				t.Errorf("finding %d: got %.12f, want %.12f, P(all)/P(others)", f, got, want)
			}
		}
	}
}

// TestBayes is the textbook case of one cause and one sign: a test that finds
// 90 % of what 1 % have and errs on 9 % of the others leaves 9.17 %
// (0.009 / (0.009 + 0.0891)), the worked example of Bayes' theorem in its usual
// form; the arithmetic is printed here, not taken from the engine.
func TestBayes(t *testing.T) {
	m := &Model{
		Causes:   []Cause{{ID: "c", Name: "c", Prior: 0.01}},
		Findings: []Finding{{ID: "f", Name: "f", Groups: []string{"g"}, Leak: 0.09, Minutes: 1, From: []Link{{0, 0.9}}}},
	}
	got := Assess(m, Facts{Present}).Causes[0].P
	if want := 0.009 / (0.009 + 0.0891); !(math.Abs(got-want) < 1e-12) {
		t.Errorf("got %.6f, want %.6f", got, want)
	}
	// Absent is not unknown.
	if unknown, absent := Assess(m, Facts{Unknown}).Causes[0].P, Assess(m, Facts{Absent}).Causes[0].P; !(unknown == 0.01) || !(absent < 0.0012) {
		t.Errorf("got %.5f not looked at and %.5f absent, want 0.01 and 0.001 / (0.001 + 0.9009)", unknown, absent)
	}
}

// TestMoreEvidence: a finding that only one cause explains never lowers that
// cause when present and never raises it when absent, whatever else is known.
func TestMoreEvidence(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 200 {
		m := randomModel(r, 6, 3, 9)
		c := r.IntN(6)
		leak := 0.05 + 0.1*r.Float64()
		m.Findings = append(m.Findings, Finding{ID: "own", Name: "own", Groups: []string{"own"}, Leak: leak, From: []Link{{c, leak + (1-leak)*0.9*r.Float64()}}})
		facts := randomFacts(r, m, 0.5)
		own := len(facts) - 1
		var p [3]float64
		for i, s := range []State{Absent, Unknown, Present} {
			facts[own] = s
			p[i] = Assess(m, facts).Causes[c].P
		}
		if !(p[0] <= p[1]+1e-12 && p[1] <= p[2]+1e-12) {
			t.Errorf("cause %d: absent %.6f, unknown %.6f, present %.6f; want no decrease", c, p[0], p[1], p[2])
		}
	}
}

// TestOrder: the order of findings and causes in the model changes nothing.
func TestOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	m := randomModel(r, 7, 4, 12)
	facts := randomFacts(r, m, 0.7)
	want := Assess(m, facts)
	for range 20 {
		order := r.Perm(len(m.Findings))
		shuffled := &Model{Causes: m.Causes, Mechanisms: m.Mechanisms}
		var f Facts
		for _, i := range order {
			shuffled.Findings = append(shuffled.Findings, m.Findings[i])
			f = append(f, facts[i])
		}
		got := Assess(shuffled, f)
		for i := range want.Causes {
			if d := math.Abs(got.Causes[i].P - want.Causes[i].P); !(d < 1e-12) || got.Causes[i].Standing != want.Causes[i].Standing {
				t.Errorf("cause %d: got %v %s, want %v %s", i, got.Causes[i].P, got.Causes[i].Standing, want.Causes[i].P, want.Causes[i].Standing)
			}
		}
	}
}

// TestInformation: the information a check is said to bring is the expected
// drop of the entropy over sets, computed here by asking twice.
func TestInformation(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	spread := func(b *belief) float64 {
		h := 0.0
		for _, p := range b.set {
			if p > 0 {
				h -= p * math.Log2(p)
			}
		}
		return h
	}
	for range 20 {
		m := randomModel(r, 6, 3, 10)
		facts := randomFacts(r, m, 0.4)
		a := Assess(m, facts)
		e := newEngine(m)
		now, _ := e.given(facts)
		for _, c := range a.Next {
			facts[c.Finding] = Present
			there, _ := e.given(facts)
			facts[c.Finding] = Absent
			not, _ := e.given(facts)
			facts[c.Finding] = Unknown
			want := spread(now) - c.P*spread(there) - (1-c.P)*spread(not)
			if !(math.Abs(c.Bits-want) < 1e-9) {
				t.Errorf("finding %d: got %.9f bits, want %.9f", c.Finding, c.Bits, want)
			}
			if there, not := there.causes(), not.causes(); !(math.Abs(there[c.IfThere]-c.PThere) < 1e-9) || !(math.Abs(not[c.IfNot]-c.PNot) < 1e-9) {
				t.Errorf("finding %d: what each outcome would say differs from asking it", c.Finding)
			}
		}
	}
}

// asLines writes a model as Read takes it.
func asLines(m *Model, facts Facts) string {
	var w lines
	num := func(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
	for _, c := range m.Causes {
		w.line("cause", c.ID, c.Name, num(c.Prior), pick(c.Recurs, "recurs", "passes"))
	}
	for _, k := range m.Mechanisms {
		w.line("mechanism", k.ID, k.Name)
	}
	for _, c := range m.Causes {
		for _, l := range c.Leads {
			w.line("leads", c.ID, m.Mechanisms[l.To].ID, num(l.P))
		}
	}
	for _, f := range m.Findings {
		w.line("finding", f.ID, f.Name, pick(f.Layer == OfCauses, "causes", "mechanisms"), strings.Join(f.Groups, ","), num(f.Leak), num(f.Minutes), strconv.Itoa(f.Risk), pick(f.Before, "before", "-"))
		for _, l := range f.From {
			to := ""
			if f.Layer == OfCauses {
				to = m.Causes[l.To].ID
			} else {
				to = m.Mechanisms[l.To].ID
			}
			w.line("sign", f.ID, to, num(l.P))
		}
	}
	for i, s := range facts {
		if s != Unknown {
			w.line("fact", m.Findings[i].ID, pick(s == Present, "present", "absent"))
		}
	}
	return w.b.String()
}

// TestThereAndBack: a model written as lines and read again gives the same
// assessment, to the bit.
func TestThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	m := randomModel(r, 8, 4, 14)
	facts := randomFacts(r, m, 0.6)
	a := Assess(m, facts)
	m2, facts2, fault := Read(asLines(m, facts))
	if fault != nil {
		t.Fatal(fault)
	}
	b := Assess(m2, facts2)
	if got, want := Write(m2, facts2, &b), Write(m, facts, &a); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// FuzzRead: any text ends in an assessment with finite figures or in a fault.
func FuzzRead(f *testing.F) {
	r := rand.New(rand.NewPCG(15, 16))
	m := randomModel(r, 5, 3, 8)
	f.Add(asLines(m, randomFacts(r, m, 0.5)))
	f.Add("cause\tc\tn\t0.5\trecurs\nfinding\tf\tn\tcauses\tg\t0.1\t5\t0\t-\nsign\tf\tc\t0\nfact\tf\tpresent\n")
	f.Add("fact\tx\tpresent")
	f.Add("cause\tc\tn\tNaN\trecurs\n")
	f.Fuzz(func(t *testing.T, s string) {
		m, facts, fault := Read(s)
		if fault != nil {
			return
		}
		a := Assess(m, facts)
		if out := Write(m, facts, &a); strings.Contains(out, "NaN") || strings.Contains(out, "Inf") {
			t.Errorf("not finite: %s", out)
		}
	})
}

func BenchmarkAssess(b *testing.B) {
	r := rand.New(rand.NewPCG(17, 18))
	m := randomModel(r, 20, 9, 70)
	for i := range m.Causes { // a cause sets one to three mechanisms going
		m.Causes[i].Leads = m.Causes[i].Leads[:min(len(m.Causes[i].Leads), 1+i%3)]
	}
	facts := randomFacts(r, m, 0.25)
	for b.Loop() {
		Assess(m, facts)
	}
}
