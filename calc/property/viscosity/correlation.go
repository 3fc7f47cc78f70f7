package viscosity

import "math"

// Correlation is one published equation for the viscosity of one fluid,
//
//	η = η⁰(T) (1 + B(T) ρ) + Σ n τ^t δ^d exp(-δ^l) + Δη,   τ = Tr/T,   δ = ρ/ρr,
//
// the exponential absent for l = 0. Coefficients give µPa s, as in the papers.
//
// The gas at zero density is one of three:
//
//	η⁰ = Chapman √(1000 M T) / (σ² exp(Σ Collision_i (ln T*)^i)),   T* = T/Epsilon, σ in nm
//	η⁰ = Σ Dilute_i T^i
//	η⁰ = 0.026692 √(1000 M T) / (σ² Ω(T*)),   Ω after Neufeld, Janzen and Aziz, J. Chem. Phys. 57 (1972) 1100
//
// The second viscosity virial coefficient is B = N σ³ Σ b T*^t, N the number of Avogadro. The last term rises as the fluid
// approaches close packing at the reduced density δ₀ (modified Batschinski and Hildebrand),
//
//	Δη = Free δ (1/(δ₀-δ) - 1/δ₀),   or without the factor δ where FreeConstant is set,
//	δ₀ = (Packed_0 + Packed_1 τ^(-1/2)) / (1 + PackedDenominator_0 τ^-1 + PackedDenominator_1 τ^-2).
//
// Coefficients were read in the fluid files of CoolProp 8.0.0 and are compared with it by testdata/reference/viscosity.py.
// The limits are those of the paper as recalled, or of the equation of state if they are narrower.
type Correlation struct {
	Name       string  // designation, "R-134a"
	Source     string  // key of the bibliography
	MinT, MaxT float64 // K
	MaxP       float64 // Pa

	MolarMass      float64 // kg/mol, the value of the paper
	Sigma, Epsilon float64 // nm, K
	Chapman        float64
	Collision      []float64
	Dilute         []float64
	Virial         [][2]float64 // b, t

	ReducingT, ReducingRho float64      // K, mol/m³
	Residual               [][4]float64 // n, t, d, l

	Free                      float64
	Packed, PackedDenominator [2]float64
	FreeConstant              bool

	// special replaces η⁰ and what follows the virial term where a paper has its own form: it gives both, µPa s.
	special func(T, rho float64) (dilute, residual float64)
}

// Covers tells whether temperature T, K, and absolute pressure p, Pa, lie in the range of the correlation.
func (c *Correlation) Covers(T, p float64) bool {
	return T >= c.MinT && T <= c.MaxT && p >= 0 && p <= c.MaxP
}

// At gives the viscosity, Pa s, at temperature T, K, and density rho, mol/m³. It knows no pressure: ask Covers.
//
// Errors: ErrRange for T outside MinT to MaxT, for a density that is negative or near close packing, and for NaN.
func (c *Correlation) At(T, rho float64) (float64, error) {
	if !(T >= c.MinT && T <= c.MaxT && rho >= 0) {
		return 0, ErrRange
	}
	star := T / c.Epsilon
	ln := math.Log(star)
	var dilute, residual float64
	switch {
	case c.special != nil:
		dilute, residual = c.special(T, rho)
	case c.Dilute != nil:
		dilute, residual = polynomial(c.Dilute, T), c.residual(T, rho)
	default:
		k, s := c.Chapman, 0.0
		if k != 0 {
			s = math.Exp(polynomial(c.Collision, ln))
		} else {
			k = 0.026692
			s = 1.16145*math.Exp(-0.14874*ln) + 0.52487*math.Exp(-0.7732*star) + 2.16178*math.Exp(-2.43787*star)
		}
		dilute, residual = k*math.Sqrt(1e3*c.MolarMass*T)/(c.Sigma*c.Sigma*s), c.residual(T, rho)
	}
	var b float64
	for i := range c.Virial {
		b += c.Virial[i][0] * math.Exp(c.Virial[i][1]*ln)
	}
	b *= avogadro * 1e-27 * c.Sigma * c.Sigma * c.Sigma
	return checked(1e-6 * (dilute*(1+b*rho) + residual))
}

// residual gives the terms after the virial term, µPa s; NaN near close packing.
func (c *Correlation) residual(T, rho float64) float64 {
	tau, delta := c.ReducingT/T, rho/c.ReducingRho
	if delta == 0 {
		return 0
	}
	lnTau, lnDelta := math.Log(tau), math.Log(delta)
	var sum float64
	for i := range c.Residual {
		r := &c.Residual[i]
		u := r[1]*lnTau + r[2]*lnDelta
		if r[3] != 0 {
			u -= math.Exp(r[3] * lnDelta)
		}
		sum += r[0] * math.Exp(u)
	}
	if c.Free == 0 {
		return sum
	}
	full := (c.Packed[0] + c.Packed[1]/math.Sqrt(tau)) / (1 + (c.PackedDenominator[0]+c.PackedDenominator[1]/tau)/tau)
	if !(delta < 0.98*full) {
		return math.NaN()
	}
	f := c.Free * (1/(full-delta) - 1/full)
	if !c.FreeConstant {
		f *= delta
	}
	return sum + f
}

// polynomial gives Σ a_i x^i.
func polynomial(a []float64, x float64) float64 {
	var v float64
	for i := len(a) - 1; i >= 0; i-- {
		v = v*x + a[i]
	}
	return v
}

// checked lets through what can be the viscosity, Pa s, of a gas or of a liquid that flows. The bounds are wide: hydrogen near
// its boiling point has 1e-6, and no refrigerant in a field plant reaches 0.1.
func checked(v float64) (float64, error) {
	if !(v > 1e-6 && v < 0.1) {
		return 0, ErrRange
	}
	return v, nil
}
