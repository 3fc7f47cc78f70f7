package cause

import "math"

// influence is what one finding says, prepared for a sum over many sets: for
// every parent the factor it multiplies the chance of absence with (a sign), or
// the chance of presence (a sign against).
type influence struct {
	parent []int
	miss   []float64 // (1-P)/(1-Leak) for P >= Leak, else 1
	damp   []float64 // P/Leak for P < Leak, else 1
	leak   float64
}

func newInfluence(f *Finding) influence {
	in := influence{leak: f.Leak}
	for _, l := range f.From {
		miss, damp := 1.0, 1.0
		if l.P >= f.Leak {
			miss = (1 - l.P) / (1 - f.Leak)
		} else {
			damp = l.P / f.Leak
		}
		in.parent = append(in.parent, l.To)
		in.miss = append(in.miss, miss)
		in.damp = append(in.damp, damp)
	}
	return in
}

// present is the probability of the finding when exactly the parents in the
// bit set act: (1 - (1-Leak)·∏miss)·∏damp. With one parent it is that
// parent's P, with none it is Leak.
func (in *influence) present(acting uint64) float64 {
	miss, damp := 1-in.leak, 1.0
	for i, p := range in.parent {
		if acting>>p&1 != 0 {
			miss *= in.miss[i]
			damp *= in.damp[i]
		}
	}
	return (1 - miss) * damp
}

// likelihood is the probability of the state.
func (in *influence) likelihood(acting uint64, s State) float64 {
	switch s {
	case Present:
		return in.present(acting)
	case Absent:
		return 1 - in.present(acting)
	}
	return 1
}

// entropy of a yes-or-no in bits.
func entropy(p float64) float64 {
	if !(p > 0 && p < 1) {
		return 0
	}
	return -p*math.Log2(p) - (1-p)*math.Log2(1-p)
}
