// Package table finds places in short tables of numbers; iterations start from them.
package table

// Position tells where in a falling table of at least four entries v lies, in steps from the first entry, by a cubic through
// the four entries around it. Outside the table it continues the cubic. No two entries may be equal.
func Position(y []float64, v float64) float64 {
	k := 1
	for k < len(y)-3 && y[k+1] > v {
		k++
	}
	a, b, c, d := y[k-1], y[k], y[k+1], y[k+2]
	va, vb, vc, vd := v-a, v-b, v-c, v-d
	return float64(k-1)*vb*vc*vd/((a-b)*(a-c)*(a-d)) + float64(k)*va*vc*vd/((b-a)*(b-c)*(b-d)) +
		float64(k+1)*va*vb*vd/((c-a)*(c-b)*(c-d)) + float64(k+2)*va*vb*vc/((d-a)*(d-b)*(d-c))
}
