package hold

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestSort compares with the standard library's sort, which does not ship.
func TestSort(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for n := range 300 {
		v := make([]float64, n)
		for i := range v {
			v[i] = float64(r.IntN(1 + n/2))
		}
		want := slices.Clone(v)
		slices.Sort(want)
		sortFloats(v)
		if !slices.Equal(v, want) {
			t.Fatalf("%d values: got %v, want %v", n, v, want)
		}
		if got, want := distinctFloats(v), slices.Compact(want); !slices.Equal(got, want) {
			t.Fatalf("%d values: got distinct %v, want %v", n, got, want)
		}
	}
}
