package hold

import (
	"math/rand/v2"
	"testing"
)

func benchmarkRows(b *testing.B, rows int) {
	r := rand.New(rand.NewPCG(1, 2))
	w := draw(tuned, r, "leak-and-moist")
	w.hold = float64(rows-1) * 2
	w.times = every(w.hold, 2)
	w.pumpRows, w.spike, w.reopen = 0, false, false
	log, c, _, _ := w.record(r)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Analyse(log, c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAnalyse20000(b *testing.B) { benchmarkRows(b, 20000) }
func BenchmarkAnalyse240(b *testing.B)   { benchmarkRows(b, 240) }
func BenchmarkAnalyse31(b *testing.B)    { benchmarkRows(b, 31) }
