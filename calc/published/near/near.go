// Package near is how the tests of the equations compare a figure with one from
// outside. It never ships.
package near

import (
	"math"
	"testing"
)

// Value fails the test unless got is within tolerance of want. It prints both,
// the difference, the tolerance and the source; NaN is near nothing.
func Value(t testing.TB, what string, got, want, tolerance float64, source string) {
	t.Helper()
	if d := math.Abs(got - want); !(d <= tolerance) {
		t.Errorf("%s: got %.8g, want %.8g, difference %.2g, tolerance %.2g (%s)", what, got, want, d, tolerance, source)
	}
}
