package cause

// Arrow is one step of the chain from a root cause to the failed part. It is
// proven when facts carry both of its ends: the cause and the mechanism, or the
// mechanism where the part itself is the other end.
type Arrow struct {
	Cause     int // from, or -1
	Mechanism int // to, or from when Cause is -1 (then the arrow goes to the part)
	P         float64
	Facts     []int // findings present that back it
	Proven    bool
}

// The weight from which a cause or a mechanism is drawn (editorial).
const (
	drawnCause     = 0.25
	drawnMechanism = 0.20
)

// Chain returns the arrows from the causes worth drawing to the mechanisms
// they lead to, and from those to the part. Without a fact there is no chain.
func Chain(m *Model, facts Facts, a *Assessment) []Arrow {
	if a.Impossible || a.Entered == 0 {
		return nil
	}
	var out []Arrow
	drawn := make([]bool, len(m.Mechanisms))
	for _, c := range byProbability(a) {
		j := &a.Causes[c]
		if j.P < drawnCause || j.Standing == NotDetermined || j.Standing == Excluded {
			continue
		}
		atCause := signs(m, facts, OfCauses, c)
		for _, l := range m.Causes[c].Leads {
			if a.Mechanisms[l.To] < drawnMechanism {
				continue
			}
			atMechanism := signs(m, facts, OfMechanisms, l.To)
			out = append(out, Arrow{Cause: c, Mechanism: l.To, P: min(j.P, a.Mechanisms[l.To]),
				Facts: merge(atCause, atMechanism), Proven: m.carried(atCause, c) && m.carried(atMechanism, l.To)})
			drawn[l.To] = true
		}
	}
	for k, d := range drawn {
		if d {
			at := signs(m, facts, OfMechanisms, k)
			out = append(out, Arrow{Cause: -1, Mechanism: k, P: a.Mechanisms[k], Facts: at, Proven: m.carried(at, k)})
		}
	}
	return out
}

// byProbability returns the places of the causes, the most probable first: what
// a drawing has no room for is then the least probable.
func byProbability(a *Assessment) []int {
	var order []int
	for c := range a.Causes {
		order = append(order, c)
		for i := c; i > 0 && a.Causes[order[i]].P > a.Causes[order[i-1]].P; i-- {
			order[i], order[i-1] = order[i-1], order[i]
		}
	}
	return order
}

// merge joins two lists of findings, each in the order of the model. No finding
// stands in both: they are of different layers.
func merge(a, b []int) []int {
	var out []int
	for len(a) > 0 && len(b) > 0 {
		if a[0] < b[0] {
			out, a = append(out, a[0]), a[1:]
		} else {
			out, b = append(out, b[0]), b[1:]
		}
	}
	return append(append(out, a...), b...)
}

// carried reports whether findings, signs of the item, carry it: one that
// points at it, or two independent ones. A winding fault follows from most of
// the mechanisms; alone it shows none of them.
func (m *Model) carried(findings []int, item int) bool {
	for _, f := range findings {
		if m.Findings[f].pointsAt(item) {
			return true
		}
	}
	return m.independent(findings) > 1
}

// pointsAt reports whether the finding speaks strongly for the item, and for no
// other of its layer half as much.
func (f *Finding) pointsAt(item int) bool {
	p, other := 0.0, 0.0
	for _, l := range f.From {
		if l.To == item {
			p = l.P
		} else {
			other = max(other, l.P)
		}
	}
	return p >= strong*f.Leak && (p >= factor*other || other <= f.Leak)
}

// signs returns the findings present that speak for an item.
func signs(m *Model, facts Facts, layer Layer, item int) []int {
	var out []int
	for f, s := range facts {
		if s != Present || m.Findings[f].Layer != layer {
			continue
		}
		for _, l := range m.Findings[f].From {
			if l.To == item && l.P >= factor*m.Findings[f].Leak {
				out = append(out, f)
			}
		}
	}
	return out
}
