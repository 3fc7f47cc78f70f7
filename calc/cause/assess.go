package cause

import "math"

// Standing is what the evidence allows to be said of a cause.
type Standing string

// The standings. A cause is called one only with two independent facts for it
// and none against, probable with one. An improbability is called excluded only
// when one finding divides its odds by the factor of a strong fact; that need
// not be a measurement, so the report says which findings speak against it.
const (
	IsCause       Standing = "cause"
	Probable      Standing = "probable"
	Possible      Standing = "possible"
	Excluded      Standing = "excluded"
	NotDetermined Standing = "not determined"
)

// The thresholds of the words, editorial.
const (
	causeAt    = 0.80 // probability from which a cause with two facts is called the cause
	probableAt = 0.50
	possibleAt = 0.10
	excludedAt = 0.02
	factor     = 2.0  // a fact counts for a cause when it at least doubles the odds
	strong     = 5.0  // a finding excludes when it divides the odds by this
	odd        = 0.06 // a fact less probable than this beside the others is pointed out
	enough     = 0.02 // bits below which a check is not worth naming
)

// Assessment is the result for one set of facts.
type Assessment struct {
	Causes     []Judged   // in the order of the model
	Mechanisms []float64  // P(mechanism | facts)
	Together   []Together // the most probable sets, at most five
	Next       []Check    // checks worth making, best first
	Conflicts  []Conflict // facts that do not fit the others
	Entered    int        // facts given
	Impossible bool       // the facts contradict each other in this model: nothing else is filled
}

// Judged is what is known of one cause.
type Judged struct {
	P        float64
	Standing Standing
	For      []Weight // facts that raise it, strongest first
	Against  []Weight // facts that lower it, strongest first
	Missing  []int    // findings not looked at that would tell most about it
}

// Weight is one fact's effect on a cause: the factor on its odds, all other
// facts being known.
type Weight struct {
	Finding int
	Factor  float64
}

// Together is a set of causes and its probability.
type Together struct {
	Causes []int
	P      float64
}

// Check is a finding not looked at yet.
type Check struct {
	Finding        int
	Bits           float64 // expected information about the causes
	Score          float64 // bits for each minute, less for a risk
	P              float64 // that it will be there
	IfThere, IfNot int     // the cause that would then lead
	PThere, PNot   float64 // its probability then
}

// Conflict is a fact that the other facts make improbable.
type Conflict struct {
	Finding int
	P       float64
}

// riskFactor divides the score: a check on live parts must tell three times as
// much as a look to come first (editorial).
var riskFactor = [3]float64{1, 1.5, 3}

// Assess weighs the facts. facts must have one entry for each finding.
func Assess(m *Model, facts Facts) Assessment {
	e := newEngine(m)
	a := Assessment{Causes: make([]Judged, len(m.Causes))}
	for _, s := range facts {
		if s != Unknown {
			a.Entered++
		}
	}
	b, ok := e.given(facts)
	if !ok {
		a.Impossible = true
		return a
	}
	p := b.causes()
	a.Mechanisms = b.mechanisms()
	for i := range a.Causes {
		a.Causes[i].P = p[i]
	}
	b.weigh(&a, p)
	e.lookAhead(&a, b, facts, p)
	for i := range a.Causes {
		a.Causes[i].Standing = e.standing(&a.Causes[i])
	}
	a.Together = b.likeliest(5)
	return a
}

// odds of a probability, kept finite.
func odds(p float64) float64 {
	const least = 1e-12
	p = min(max(p, least), 1-least)
	return p / (1 - p)
}

// weigh takes each fact away in turn and notes what it does to every cause, and
// whether the others expected it.
func (b *belief) weigh(a *Assessment, p []float64) {
	for f, s := range b.facts {
		if s == Unknown {
			continue
		}
		others, ok := b.without(f)
		if !ok {
			continue
		}
		before := b.e.marginals(others)
		for i := range a.Causes {
			w := Weight{f, odds(p[i]) / odds(before[i])}
			switch {
			case w.Factor > 1.05:
				a.Causes[i].For = insert(a.Causes[i].For, w, 1)
			case w.Factor < 1/1.05:
				a.Causes[i].Against = insert(a.Causes[i].Against, w, -1)
			}
		}
		if a.Entered < 2 {
			continue
		}
		if expected := b.expected(f, others); expected < odd {
			a.Conflicts = append(a.Conflicts, Conflict{f, expected})
		}
	}
}

// expected is the probability of a fact given the others.
func (b *belief) expected(fact int, others []float64) float64 {
	in, s := &b.e.influence[fact], b.facts[fact]
	p := 0.0
	if b.e.m.Findings[fact].Layer == OfCauses {
		for n, w := range others {
			p += w * in.likelihood(b.e.sets[n].causes, s)
		}
		return p
	}
	reached := b.e.atMechanisms(b.facts, fact)
	here := make([]float64, len(reached))
	for k := range here {
		here[k] = reached[k] * in.likelihood(uint64(k), s)
	}
	for n, w := range others {
		sum, with := 0.0, 0.0
		for _, st := range b.e.sets[n].states {
			sum += st.p * reached[st.mechanisms]
			with += st.p * here[st.mechanisms]
		}
		if sum > 0 {
			p += w * with / sum
		}
	}
	return p
}

// insert keeps a short list sorted by the factor: downwards for sign 1, upwards
// for sign -1.
func insert(list []Weight, w Weight, sign float64) []Weight {
	i := len(list)
	for i > 0 && sign*(w.Factor-list[i-1].Factor) > 0 {
		i--
	}
	list = append(list, w)
	copy(list[i+1:], list[i:])
	list[i] = w
	return list
}

// standing chooses the word for a cause.
func (e *engine) standing(j *Judged) Standing {
	var count []int
	for _, w := range j.For {
		if w.Factor >= factor {
			count = append(count, w.Finding)
		}
	}
	independent := e.m.independent(count)
	contrary := len(j.Against) > 0 && j.Against[0].Factor <= 1/factor
	switch {
	case j.P >= causeAt && independent >= 2 && !contrary:
		return IsCause
	case j.P >= probableAt && independent >= 1:
		return Probable
	case j.P <= excludedAt && len(j.Against) > 0 && j.Against[0].Factor <= 1/strong:
		return Excluded
	case j.P >= possibleAt && independent >= 1:
		return Possible
	}
	return NotDetermined
}

// independent is how many independent facts the findings are, as far as the
// words ask: none, one, or two and more. Two findings are two facts only when
// no word of their groups is the same.
func (m *Model) independent(findings []int) int {
	for k, f := range findings {
		for _, o := range findings[:k] {
			if !m.Findings[f].shares(&m.Findings[o]) {
				return 2
			}
		}
	}
	return min(len(findings), 1)
}

// shares reports whether two findings are about the same thing.
func (f *Finding) shares(o *Finding) bool {
	for _, g := range f.Groups {
		for _, h := range o.Groups {
			if g == h {
				return true
			}
		}
	}
	return false
}

// lookAhead finds the checks worth making and what each cause still lacks.
//
// The information of a check is the mutual information between its outcome and
// the set of causes: H(outcome) - E[H(outcome | set)], in bits.
func (e *engine) lookAhead(a *Assessment, b *belief, facts Facts, p []float64) {
	tell := make([][]Weight, len(p)) // Factor holds the bits about that cause alone
	for f := range facts {
		if facts[f] != Unknown {
			continue
		}
		each, mean := b.finding(f)
		bits := entropy(mean)
		for n, w := range b.set {
			if w > 0 {
				bits -= w * entropy(each[n])
			}
		}
		there, not := b.after(each, Present), b.after(each, Absent)
		for i := range p {
			// what the check would tell about this cause alone
			own := entropy(p[i]) - mean*entropy(there[i]) - (1-mean)*entropy(not[i])
			if own > enough/4 {
				tell[i] = insert(tell[i], Weight{f, own}, 1)
			}
		}
		finding := &e.m.Findings[f]
		if !(bits >= enough) && !finding.Before {
			continue
		}
		c := Check{Finding: f, Bits: max(bits, 0), P: mean}
		c.Score = c.Bits / max(finding.Minutes, 1) / riskFactor[min(max(finding.Risk, 0), 2)]
		c.IfThere, c.PThere = largest(there)
		c.IfNot, c.PNot = largest(not)
		a.Next = append(a.Next, c)
		for i := len(a.Next) - 1; i > 0 && a.Next[i].Score > a.Next[i-1].Score; i-- {
			a.Next[i], a.Next[i-1] = a.Next[i-1], a.Next[i]
		}
	}
	for i := range tell {
		for _, w := range tell[i][:min(3, len(tell[i]))] {
			a.Causes[i].Missing = append(a.Causes[i].Missing, w.Finding)
		}
	}
}

func largest(p []float64) (int, float64) {
	best, most := -1, math.Inf(-1)
	for i, v := range p {
		if v > most {
			best, most = i, v
		}
	}
	return best, most
}

// likeliest returns the most probable sets.
func (b *belief) likeliest(n int) []Together {
	var out []Together
	for k, w := range b.set {
		if len(out) == n && w <= out[n-1].P {
			continue
		}
		t := Together{P: w}
		for i := range b.e.m.Causes {
			if b.e.sets[k].causes>>i&1 != 0 {
				t.Causes = append(t.Causes, i)
			}
		}
		out = append(out, t)
		for i := len(out) - 1; i > 0 && out[i].P > out[i-1].P; i-- {
			out[i], out[i-1] = out[i-1], out[i]
		}
		if len(out) > n {
			out = out[:n]
		}
	}
	return out
}
