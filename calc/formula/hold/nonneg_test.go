package hold

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The solver must reach the minimum that trying every subset of columns finds. Random problems, fixed seed. It stops when no column
// gains more than 0.01, so the objective may be that much above.
func TestProgramAgainstSubsets(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 300 {
		n := 3 + r.IntN(4)
		rows := n + 6
		a := make([][]float64, n)
		y := make([]float64, rows)
		for i := range y {
			y[i] = 10 * r.NormFloat64()
		}
		for j := range a {
			a[j] = make([]float64, rows)
			norm := 0.0
			for i := range a[j] {
				a[j][i] = r.NormFloat64() + float64(j%2)
				norm += a[j][i] * a[j][i]
			}
			for i := range a[j] {
				a[j][i] /= math.Sqrt(norm)
			}
		}
		build := func(cols []int) (*program, []float64) {
			q := newProgram(len(cols))
			b := make([]float64, len(cols))
			for i, c := range cols {
				for k, d := range cols {
					for row := range y {
						q.g[i*len(cols)+k] += a[c][row] * a[d][row]
					}
				}
				for row := range y {
					b[i] += a[c][row] * y[row]
				}
			}
			return q, b
		}
		all := make([]int, n)
		for j := range all {
			all[j] = j
		}
		q, b := build(all)
		q.free[0] = true
		x := make([]float64, n)
		got := q.solve(b, x)
		best := math.Inf(1)
		for mask := 1; mask < 1<<n; mask += 2 { // column 0 is always in
			var cols []int
			for j := range n {
				if mask>>j&1 == 1 {
					cols = append(cols, j)
				}
			}
			s, sb := build(cols)
			for k := range cols {
				s.free[k] = true
			}
			sx := make([]float64, len(cols))
			f := s.solve(sb, sx)
			ok := true
			for k := 1; k < len(cols); k++ {
				ok = ok && sx[k] >= 0
			}
			if ok {
				best = math.Min(best, f)
			}
		}
		if !(math.Abs(got-best) < 0.02*float64(n)) {
			t.Fatalf("objective got %.6f, want %.6f, tolerance %.2f", got, best, 0.02*float64(n))
		}
		for j := 1; j < n; j++ {
			if x[j] < 0 {
				t.Fatalf("amplitude %d got %g, want not negative", j, x[j])
			}
		}
	}
}

// The named models must find the time constants of exact curves.
func TestNamedModels(t *testing.T) {
	for _, c := range []struct {
		name         string
		curve        func(float64) float64
		model        Model
		release, tau float64 // micron, min
		inflow       float64 // micron/min
	}{
		{"levelling", levelling(300, 900, 25), Levelling, 900, 25, 0},
		{"straight", straight(300, 12), Inflow, 0, 0, 12},
		{"both", func(m float64) float64 { return levelling(300, 900, 15)(m) + 4*m }, InflowLevelling, 900, 15, 4},
	} {
		r, err := Analyse(logOf(spaced(0, 240, 1), 0.1, c.curve), conditions())
		if err != nil {
			t.Fatal(err)
		}
		b := r.Candidates[0]
		if b.Model != c.model {
			t.Errorf("%s: model got %s, want %s", c.name, b.Model.ID(), c.model.ID())
		}
		// Exact curves in steps of 0.1 micron: 2 % is the resolution of the search in the time constant.
		if !(math.Abs(b.Release/micron-c.release) <= 0.02*c.release+1e-9) || !(math.Abs(b.ReleaseTime/60-c.tau) <= 0.02*c.tau+1e-9) || !(math.Abs(b.Inflow*60/micron-c.inflow) <= 0.02*c.inflow+1e-9) {
			t.Errorf("%s: release got %.1f want %.1f micron, time constant got %.2f want %.2f min, inflow got %.3f want %.3f micron/min, tolerance 2 %%",
				c.name, b.Release/micron, c.release, b.ReleaseTime/60, c.tau, b.Inflow*60/micron, c.inflow)
		}
	}
}
