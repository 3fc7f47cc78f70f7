package cause

import "math/bits"

// engine holds what an assessment needs of the model, once for all facts.
type engine struct {
	m         *Model
	influence []influence
	sets      []set
	states    int // in all sets
}

// set is one combination of root causes.
type set struct {
	causes uint64
	prior  float64
	states []state // the mechanisms it can set going, each combination with its probability
}

// state is a combination of mechanisms and its probability in a set.
type state struct {
	mechanisms uint64
	p          float64
}

func newEngine(m *Model) *engine {
	e := &engine{m: m}
	for i := range m.Findings {
		e.influence = append(e.influence, newInfluence(&m.Findings[i]))
	}
	e.enumerate(0, 0, 0)
	return e
}

// enumerate adds the set and every larger one that adds causes from place on.
func (e *engine) enumerate(causes uint64, size, place int) {
	prior := 1.0
	quiet := make([]float64, len(e.m.Mechanisms)) // probability that the mechanism stays away
	for i := range quiet {
		quiet[i] = 1
	}
	for i := range e.m.Causes {
		c := &e.m.Causes[i]
		if causes>>i&1 == 0 {
			prior *= 1 - c.Prior
			continue
		}
		prior *= c.Prior
		for _, l := range c.Leads {
			quiet[l.To] *= 1 - l.P
		}
	}
	states := []state{{0, 1}}
	for k, q := range quiet {
		if q == 1 {
			continue
		}
		for _, s := range states[:len(states):len(states)] {
			states = append(states, state{s.mechanisms | 1<<k, s.p * (1 - q)})
		}
		for i := range states[:len(states)/2] {
			states[i].p *= q
		}
	}
	e.sets = append(e.sets, set{causes, prior, states})
	e.states += len(states)
	if size == MaxTogether {
		return
	}
	for i := place; i < len(e.m.Causes); i++ {
		e.enumerate(causes|1<<i, size+1, i+1)
	}
}

// belief is the distribution over sets, and over the states of each, given
// facts.
type belief struct {
	e       *engine
	facts   Facts
	set     []float64   // P(set | facts)
	state   [][]float64 // P(state | set, facts)
	direct  []float64   // prior times the likelihood of the facts at the causes, for each set
	reached []float64   // likelihood of the facts at the mechanisms, for each combination of them
}

// given weighs every set with the facts. It reports false when the facts are
// impossible in this model.
func (e *engine) given(facts Facts) (*belief, bool) {
	b := &belief{e: e, facts: facts, set: make([]float64, len(e.sets)), state: make([][]float64, len(e.sets)), direct: make([]float64, len(e.sets))}
	b.reached = e.atMechanisms(facts, -1)
	all := make([]float64, e.states)
	for n := range e.sets {
		s := &e.sets[n]
		w := s.prior
		for i, f := range facts {
			if f != Unknown && e.m.Findings[i].Layer == OfCauses {
				w *= e.influence[i].likelihood(s.causes, f)
			}
		}
		states := all[:len(s.states):len(s.states)]
		all = all[len(s.states):]
		sum := 0.0
		for k, st := range s.states {
			states[k] = st.p * b.reached[st.mechanisms]
			sum += states[k]
		}
		if sum > 0 {
			for k := range states {
				states[k] /= sum
			}
		}
		b.state[n] = states
		b.direct[n] = w
		b.set[n] = w * sum
	}
	return b, normalise(b.set)
}

// without returns P(set | facts but one), from what is known already.
func (b *belief) without(fact int) ([]float64, bool) {
	e := b.e
	p := make([]float64, len(e.sets))
	in, s := &e.influence[fact], b.facts[fact]
	if e.m.Findings[fact].Layer == OfCauses {
		for n := range p {
			l := in.likelihood(e.sets[n].causes, s)
			if !(l > 0) { // cannot be divided out again
				others := append(Facts(nil), b.facts...)
				others[fact] = Unknown
				o, ok := e.given(others)
				return o.set, ok
			}
			p[n] = b.set[n] / l
		}
		return p, normalise(p)
	}
	reached := e.atMechanisms(b.facts, fact)
	for n := range p {
		for _, st := range e.sets[n].states {
			p[n] += st.p * reached[st.mechanisms]
		}
		p[n] *= b.direct[n]
	}
	return p, normalise(p)
}

// atMechanisms returns the likelihood of the facts at the mechanisms, without
// one of them, for each combination of mechanisms.
func (e *engine) atMechanisms(facts Facts, without int) []float64 {
	reached := make([]float64, 1<<len(e.m.Mechanisms))
	for k := range reached {
		reached[k] = 1
	}
	for i, s := range facts {
		if s == Unknown || i == without || e.m.Findings[i].Layer != OfMechanisms {
			continue
		}
		for k := range reached {
			reached[k] *= e.influence[i].likelihood(uint64(k), s)
		}
	}
	return reached
}

// normalise divides by the sum, and reports false when there is none.
func normalise(p []float64) bool {
	total := 0.0
	for _, w := range p {
		total += w
	}
	if !(total > 0) {
		return false
	}
	for n := range p {
		p[n] /= total
	}
	return true
}

// marginals returns the probability of every cause from those of the sets.
func (e *engine) marginals(set []float64) []float64 {
	p := make([]float64, len(e.m.Causes))
	for n, w := range set {
		for c := e.sets[n].causes; c != 0; c &= c - 1 {
			p[bits.TrailingZeros64(c)] += w
		}
	}
	return p
}

// causes returns P(cause | facts) for every cause.
func (b *belief) causes() []float64 { return b.e.marginals(b.set) }

// mechanisms returns P(mechanism | facts) for every mechanism.
func (b *belief) mechanisms() []float64 {
	p := make([]float64, len(b.e.m.Mechanisms))
	for n, w := range b.set {
		for k, st := range b.e.sets[n].states {
			for i := range p {
				if st.mechanisms>>i&1 != 0 {
					p[i] += w * b.state[n][k]
				}
			}
		}
	}
	return p
}

// finding returns P(finding present | set, facts) for every set, and its mean.
func (b *belief) finding(i int) (each []float64, mean float64) {
	in := &b.e.influence[i]
	each = make([]float64, len(b.set))
	layer := b.e.m.Findings[i].Layer
	var byState []float64
	if layer == OfMechanisms {
		byState = make([]float64, len(b.reached))
		for k := range byState {
			byState[k] = in.present(uint64(k))
		}
	}
	for n := range b.set {
		if layer == OfCauses {
			each[n] = in.present(b.e.sets[n].causes)
		} else {
			for k, st := range b.e.sets[n].states {
				each[n] += b.state[n][k] * byState[st.mechanisms]
			}
		}
		mean += b.set[n] * each[n]
	}
	return each, mean
}

// after returns P(cause | facts and the finding in that state).
func (b *belief) after(each []float64, s State) []float64 {
	p := make([]float64, len(b.set))
	for n, w := range b.set {
		l := each[n]
		if s == Absent {
			l = 1 - l
		}
		p[n] = w * l
	}
	if !normalise(p) {
		return b.causes()
	}
	return b.e.marginals(p)
}
