package charge

import (
	"math"
	"testing"
)

// TestNeighbours: ASTM B280 sizes by outside diameter in inches.
func TestNeighbours(t *testing.T) {
	for _, c := range []struct{ bore, smaller, larger float64 }{{1.025, 0.875, 1.375}, {1.1, 1.125, 1.375}, {0.19, 0, 0.3125}, {3, 1.625, 0}} {
		s, l := Neighbours(c.bore * 0.0254)
		if !(math.Abs(s.Outside-c.smaller*0.0254) < 1e-9) || !(math.Abs(l.Outside-c.larger*0.0254) < 1e-9) {
			t.Errorf("bore %v in: got %v and %v m, want %v and %v in (astm-b280)", c.bore, s.Outside, l.Outside, c.smaller, c.larger)
		}
	}
}
