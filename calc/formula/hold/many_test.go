package hold

import "testing"

func TestMany(t *testing.T) {
	tot, right, clear, und, lt := 0, 0, 0, 0, 0
	w := map[string]int{}
	for s := uint64(1); s <= 6; s++ {
		y := simulate(t, tuned, s*1000, 800)
		tot += y.total
		right += y.right
		clear += y.clear
		und += y.clearUndetermined
		lt += y.leakTight
		for k, v := range y.wrong {
			w[k] += v
		}
	}
	t.Logf("right %.4f clear %d undet %d leaktight %d", float64(right)/float64(tot), clear, und, lt)
	for k, v := range w {
		t.Log(v, k)
	}
}
