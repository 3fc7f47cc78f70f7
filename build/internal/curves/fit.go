package main

import (
	"math"

	"changeout/calc/property/curve"
)

// degree of the interpolation that stands in for the engine while coefficients are chosen.
const degree = 63

// node gives the Chebyshev points of [-1, 1], k = 0 to degree.
func node(k int) float64 { return math.Cos(math.Pi * (float64(k) + 0.5) / (degree + 1)) }

// interpolate gives the Chebyshev coefficients of the polynomial with the values y at the nodes.
func interpolate(y *[degree + 1]float64) []float64 {
	c := make([]float64, len(y))
	for j := range c {
		for k := range y {
			c[j] += 2 / float64(len(y)) * y[k] * math.Cos(math.Pi*float64(j)*(float64(k)+0.5)/float64(len(y)))
		}
	}
	c[0] /= 2
	return c
}

// sum evaluates Σ c_k T_k(x) after Clenshaw.
func sum(c []float64, x float64) float64 {
	var a, b float64
	for k := len(c) - 1; k > 0; k-- {
		a, b = 2*x*a-b+c[k], a
	}
	return x*a - b + c[0]
}

// series is a curve as it is stored: whole coefficients in units of 2^-bits.
type series struct {
	bits  int
	terms []int64
}

func (s series) floats() []float64 {
	c := make([]float64, len(s.terms))
	for i, t := range s.terms {
		c[i] = math.Ldexp(float64(t), -s.bits)
	}
	return c
}

const (
	lowBits, highBits = 20, 24
	maxTerms          = len(curve.Typical[0])
)

// quantise finds the series of a kind that is shortest when written and keeps within tolerance of the exact coefficients c
// everywhere on a grid.
func quantise(c []float64, tolerance float64, kind int) (best series, ok bool) {
	const grid = 400
	var x, want [grid + 1]float64
	for i := range want {
		x[i] = math.Cos(math.Pi * float64(i) / grid)
		want[i] = sum(c, x[i])
	}
	size := math.MaxInt
	for bits := lowBits; bits <= highBits; bits++ {
		s := series{bits: bits}
		for k := range c {
			s.terms = append(s.terms, int64(math.Round(math.Ldexp(c[k], bits))))
		}
		for n := 4; n <= maxTerms; n++ {
			t := series{bits, s.terms[:n]}
			length := len(encode(t, kind))
			if length >= size {
				break
			}
			f := t.floats()
			worst := 0.0
			for i := range want {
				worst = max(worst, math.Abs(sum(f, x[i])-want[i]))
			}
			if worst < tolerance {
				best, size, ok = t, length, true
				break
			}
		}
	}
	return best, ok
}
