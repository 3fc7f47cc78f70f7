package main

import "math"

// degree of the interpolation that stands in for the engine while coefficients are chosen.
const degree = 63

// interpolate gives the Chebyshev coefficients of the polynomial through f at the degree+1 Chebyshev points of [-1, 1].
func interpolate(f func(x float64) (float64, error)) ([]float64, error) {
	const n = degree + 1
	var y [n]float64
	for k := range y {
		v, err := f(math.Cos(math.Pi * (float64(k) + 0.5) / n))
		if err != nil {
			return nil, err
		}
		y[k] = v
	}
	c := make([]float64, n)
	for j := range c {
		for k := range y {
			c[j] += 2.0 / n * y[k] * math.Cos(math.Pi*float64(j)*(float64(k)+0.5)/n)
		}
	}
	c[0] /= 2
	return c, nil
}

// sum evaluates Σ c_k T_k(x) after Clenshaw.
func sum(c []float64, x float64) float64 {
	var a, b float64
	for k := len(c) - 1; k > 0; k-- {
		a, b = 2*x*a-b+c[k], a
	}
	return x*a - b + c[0]
}

// series is a curve as it is stored: whole coefficients of the step 2^-Bits.
type series struct {
	Bits  int
	Terms []int64
}

func (s series) floats() []float64 {
	c := make([]float64, len(s.Terms))
	for i, t := range s.Terms {
		c[i] = math.Ldexp(float64(t), -s.Bits)
	}
	return c
}

// quantise finds the shortest series that keeps within tolerance of the exact coefficients c everywhere on a grid.
func quantise(c []float64, tolerance float64) (best series, worst float64) {
	const grid = 400
	var want [grid + 1]float64
	var x [grid + 1]float64
	for i := range want {
		x[i] = math.Cos(math.Pi * float64(i) / grid)
		want[i] = sum(c, x[i])
	}
	size := math.MaxInt
	for bits := 20; bits <= 24; bits++ {
		s := series{Bits: bits}
		for k := range c {
			s.Terms = append(s.Terms, int64(math.Round(math.Ldexp(c[k], bits))))
		}
		for n := 4; n < len(c); n++ {
			t := series{bits, s.Terms[:n]}
			if len(encode(t)) >= size {
				break
			}
			f := t.floats()
			e := 0.0
			for i := range want {
				e = max(e, math.Abs(sum(f, x[i])-want[i]))
			}
			if e < tolerance {
				best, worst, size = t, e, len(encode(t))
				break
			}
		}
	}
	return best, worst
}

// encode writes whole numbers so that small ones take one byte: zigzag, then seven bits a byte, the high bit set on all but
// the last. The number of terms and the step come first.
func encode(s series) []byte {
	b := []byte{byte(len(s.Terms)), byte(s.Bits)}
	for _, t := range s.Terms {
		u := uint64(t<<1) ^ uint64(t>>63)
		for u >= 128 {
			b = append(b, byte(u)|128)
			u >>= 7
		}
		b = append(b, byte(u))
	}
	return b
}
