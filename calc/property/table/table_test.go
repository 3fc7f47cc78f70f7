package table

import (
	"math"
	"testing"
)

// A straight table is found exactly, inside and a little outside; a curved one at its entries, and in order between them.
func TestPosition(t *testing.T) {
	var line, curved []float64
	for k := range 12 {
		line = append(line, 5-0.25*float64(k))
		curved = append(curved, 16-math.Exp(0.2*float64(k)))
	}
	for v := 5.2; v > 2; v -= 0.07 {
		// Rounding of a sum of four products near 1.
		if got, want := Position(line, v), (5-v)/0.25; !(math.Abs(got-want) < 1e-9) {
			t.Errorf("Position of %v: got %v, want %v, tolerance 1e-9", v, got, want)
		}
	}
	last := -1.0
	for k := range curved {
		if got := Position(curved, curved[k]); !(math.Abs(got-float64(k)) < 1e-12) {
			t.Errorf("Position of entry %d: got %v, tolerance 1e-12", k, got)
		}
		for _, part := range []float64{0, 0.3, 0.6} {
			at := float64(k) + part
			got := Position(curved, 16-math.Exp(0.2*at))
			// The inverse of this table is 5 ln(16-y); a cubic through entries a step apart follows it to
			// some 1e-3, at the ends to 0.03.
			if !(got > last) || !(math.Abs(got-at) < 0.04) {
				t.Errorf("Position at %v: got %v after %v, tolerance 0.04", at, got, last)
			}
			last = got
		}
	}
}
