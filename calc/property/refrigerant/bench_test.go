package refrigerant_test

import "testing"

// Each benchmark walks through the temperatures of the trade, so that nothing is solved twice from the same start.
func benchmark(b *testing.B, name string, atP, dew bool) {
	r := mustLookup(b, name)
	var ps [64]float64
	for i := range ps {
		p, err := r.BubbleAtT(235 + float64(i))
		if err != nil {
			b.Fatal(err)
		}
		ps[i] = p.P
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		var err error
		switch {
		case atP && dew:
			_, err = r.DewAtP(ps[i%len(ps)])
		case atP:
			_, err = r.BubbleAtP(ps[i%len(ps)])
		case dew:
			_, err = r.DewAtT(235 + float64(i%len(ps)))
		default:
			_, err = r.BubbleAtT(235 + float64(i%len(ps)))
		}
		if err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSaturationR134a(b *testing.B)    { benchmark(b, "R-134a", false, false) }
func BenchmarkSaturationAtPR134a(b *testing.B) { benchmark(b, "R-134a", true, false) }
func BenchmarkSaturationR1234yf(b *testing.B)  { benchmark(b, "R-1234yf", false, false) }
func BenchmarkBubbleR410A(b *testing.B)        { benchmark(b, "R-410A", false, false) }
func BenchmarkBubbleR454B(b *testing.B)        { benchmark(b, "R-454B", false, false) }
func BenchmarkBubbleR448A(b *testing.B)        { benchmark(b, "R-448A", false, false) }
func BenchmarkDewR448A(b *testing.B)           { benchmark(b, "R-448A", false, true) }
func BenchmarkBubbleAtPR448A(b *testing.B)     { benchmark(b, "R-448A", true, false) }
func BenchmarkDewAtPR448A(b *testing.B)        { benchmark(b, "R-448A", true, true) }
func BenchmarkLiquidDensityR410A(b *testing.B) {
	r := mustLookup(b, "R-410A")
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := r.LiquidDensity(270+float64(i%40), 3.5e6); err != nil {
			b.Fatal(err)
		}
	}
}

// The flash of a blend inside the two-phase region, where it takes longest.
func BenchmarkFlashPHR448A(b *testing.B) {
	r := mustLookup(b, "R-448A")
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := r.AtPH(1e6, 250e3+1e3*float64(i%100)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkVaporTPR410A(b *testing.B) {
	r := mustLookup(b, "R-410A")
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if _, err := r.AtTP(300+float64(i%40), 1e6); err != nil {
			b.Fatal(err)
		}
	}
}
