// Package curve gives saturation pressure, temperature and densities from curves fitted to the equations of state of package
// refrigerant. A curve takes a quarter of a microsecond where the equations take ten to a hundred; it is for answers that
// need thousands of points. Where a few are needed, ask package refrigerant.
//
// With s = √(1 - T/Tc), brought to x in [-1, 1] over the range of the curve, four quantities are sums of Chebyshev polynomials,
//
//	ln p'     bubble pressure, Pa           ln ρ'            density of the liquid at the bubble point, kg/m³
//	ln p"/p'  dew over bubble pressure      ln (ρ" T/p')     density of the vapour at the dew point, kg/m³
//
// the third absent for a pure fluid. Near the critical point s, unlike T, keeps all four smooth. Every pressure and density
// is within Tolerance of the equations; the worst error found stands beside each curve in data.go.
//
// The range is from 198.15 K (-75 °C), half the critical temperature or the lower end of the equations, to 0.99 of the
// critical temperature for a pure fluid and 0.98 for a blend, which are the upper ends of package refrigerant.
package curve

import (
	"errors"
	"math"

	"changeout/calc/property/helmholtz"
	"changeout/calc/property/table"
)

//go:generate go run changeout/build/internal/curves -write

// Tolerance bounds the relative difference of pressures and densities from the equations of state.
const Tolerance = 1e-6

// ErrRange: the temperature or pressure lies outside the range of the curve.
var ErrRange = errors.New("curve: outside the range of the curve")

// Curve holds the curves of one refrigerant. It never changes and may be shared. No method allocates.
type Curve struct {
	Name            string
	TMin, TMax      float64 // K, range
	critical        float64 // K, the Tc in s
	middle, half    float64 // s = middle + half x
	liquid, vapor   series
	bubble, dew     series         // ln of the pressure, Pa
	bubbleAt, dewAt [nodes]float64 // the same at even steps of x from -1 (hot) to 1 (cold)
}

// nodes of the table from which the search for a temperature starts.
const nodes = 12

// series is a polynomial in x, unpacked from the sum of Chebyshev polynomials: Σ even_k x^2k + x Σ odd_k x^2k. Two short chains
// of multiplications run side by side where Clenshaw's rule would be one long chain. Powers lose some 1e-12 here, no more,
// because the coefficients of a smooth curve fall faster than those of the polynomials grow.
type series struct {
	n         int // terms in each half
	even, odd [maxTerms / 2]float64
}

// at evaluates the series.
func (s *series) at(x float64) float64 {
	u := x * x
	var e, o float64
	for k := min(s.n, maxTerms/2) - 1; k >= 0; k-- {
		e, o = e*u+s.even[k], o*u+s.odd[k]
	}
	return e + x*o
}

// slope evaluates the series and its derivative.
func (s *series) slope(x float64) (y, d float64) {
	u := x * x
	var e, o, de, do float64
	for k := min(s.n, maxTerms/2) - 1; k >= 0; k-- {
		de, do = de*u+e, do*u+o
		e, o = e*u+s.even[k], o*u+s.odd[k]
	}
	return e + x*o, 2*x*de + o + 2*u*do
}

// x brings a temperature to the variable of the series. A limit that went through a unit conversion counts as inside.
func (c *Curve) x(T float64) (float64, error) {
	if !(T >= c.TMin*(1-1e-12) && T <= c.TMax*(1+1e-12)) {
		return 0, ErrRange
	}
	return (math.Sqrt(1-T/c.critical) - c.middle) / c.half, nil
}

// BubbleP gives the pressure, Pa absolute, at which liquid of temperature T, K, begins to boil.
func (c *Curve) BubbleP(T float64) (float64, error) { return c.value(T, &c.bubble) }

// DewP gives the pressure, Pa absolute, at which vapour of temperature T, K, begins to condense.
func (c *Curve) DewP(T float64) (float64, error) { return c.value(T, &c.dew) }

// LiquidDensity gives the density, kg/m³, of liquid at its bubble point at temperature T, K.
func (c *Curve) LiquidDensity(T float64) (float64, error) { return c.value(T, &c.liquid) }

// VaporDensity gives the density, kg/m³, of vapour at its dew point at temperature T, K.
func (c *Curve) VaporDensity(T float64) (float64, error) {
	x, err := c.x(T)
	if err != nil {
		return 0, err
	}
	return helmholtz.Exp(c.vapor.at(x)) / T, nil
}

func (c *Curve) value(T float64, s *series) (float64, error) {
	x, err := c.x(T)
	if err != nil {
		return 0, err
	}
	return helmholtz.Exp(s.at(x)), nil
}

// BubbleT gives the temperature, K, at which liquid begins to boil at pressure p, Pa absolute. It inverts BubbleP to 1e-10.
func (c *Curve) BubbleT(p float64) (float64, error) { return c.temperature(p, &c.bubble, &c.bubbleAt) }

// DewT gives the temperature, K, at which vapour begins to condense at pressure p, Pa absolute. It inverts DewP to 1e-10.
func (c *Curve) DewT(p float64) (float64, error) { return c.temperature(p, &c.dew, &c.dewAt) }

func (c *Curve) temperature(p float64, s *series, at *[nodes]float64) (float64, error) {
	// A pressure computed at the end of the range counts as inside: 1e-12 of T is some 1e-11 of p.
	lnP := math.Log(p)
	if !(lnP >= at[nodes-1]-1e-10 && lnP <= at[0]+1e-10) {
		return 0, ErrRange
	}
	x := 2.0/(nodes-1)*table.Position(at[:], lnP) - 1
	// The table leaves some 1e-3, and each step of Newton's method squares that: a step of 3e-6 leaves 1e-11.
	for range 8 {
		y, d := s.slope(x)
		step := (y - lnP) / d
		x -= step
		if math.Abs(step) < 3e-6 {
			break
		}
	}
	v := c.middle + c.half*x
	return c.critical * (1 - v*v), nil
}
