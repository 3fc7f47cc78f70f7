package hold

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestDebug2(t *testing.T) {
	for _, i := range []int{0} {
		_ = i
		r := rand.New(rand.NewPCG(2000, uint64(193)))
		w := draw(tuned, r, kinds[193%len(kinds)])
		log, c, _, _ := w.record(r)
		t.Log(w.leak*60/micron, w.hold/60, w.noise)
		if len(log.Time) < 25 {
			for k := range log.Time {
				t.Logf("   %.1f  %.0f", log.Time[k]/60, log.Pressure[k]/micron)
			}
		}
		rr, _ := validate(log, c)
		a := &analysis{cond: c}
		a.limit = 1
		a.prepare(&rr)
		t.Log(i, a.seg, a.res.RowsUsed, "noise", a.noise)
		a.be = a.beliefs()
		cols := columnsFor(&a.pts, a.be)
		m := newMixture(assemble(&a.pts, cols, a.be))
		a.quieter(m)
		t.Log(a.noise, m.parameters())
		m = newMixture(assemble(&a.pts, cols, a.be))
		a.reweigh(m)
		t.Log("noise", a.noise, "inflate", a.inflate, "be", a.be.fall/micron, a.be.fallRate*60/micron, a.be.slow/micron, a.be.bow/micron, a.be.water/micron, "sigma micron", 1/math.Sqrt(a.pts.weight[0])/micron, 1/math.Sqrt(a.pts.weight[len(a.pts.weight)-1])/micron)
		m = newMixture(assemble(&a.pts, cols, a.be))
		dump := func(x []float64) {
			for j, v := range x {
				if v != 0 {
					t.Logf("  kind %d tau %.0f s amp %.1f micron", cols[j].kind, cols[j].tau, v/cols[j].norm/micron)
				}
			}
		}
		t.Log("best", m.inflow*60/micron, m.chi)
		dump(m.x)
		x := append([]float64(nil), m.x...)
		b := make([]float64, len(x))
		for _, s := range []float64{.5, 0} {
			t.Log("at", s, m.at(s*m.inflow, x, b)-m.chi)
			dump(x)
		}
	}
}
