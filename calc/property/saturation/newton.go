package saturation

import (
	"math"

	"changeout/calc/property/helmholtz"
)

const (
	maxSteps = 40
	// A step this small in every logarithm ends the iteration: convergence is quadratic, so that some 1e-14 is left.
	tolerance = 1e-7
	// Rounding in the liquid's fugacity can keep a step above tolerance; a few steps below this are as good.
	noise = 1e-6
)

// newton iterates from the unknowns at hand; p > 0 makes the temperature an unknown. It tells whether a state was reached.
func (s *Solver) newton(kind Kind, p float64) bool {
	n := s.n
	size := n + 1
	if p > 0 {
		size++
	}
	quiet := 0
	for range maxSteps {
		if !s.evaluate() {
			return false
		}
		s.assemble(kind, p)
		if !eliminate(&s.jac, size) {
			return false
		}
		// Damping: a logarithm moves by at most limit, the temperature by at most 5 %.
		limit, most := 0.5, 0.0
		scale := 1.0
		for i := 0; i < size; i++ {
			d := math.Abs(s.jac[i][size])
			if !(d < 1e6) {
				return false
			}
			most = max(most, d)
			bound := limit
			switch {
			case i == 0 && kind == Bubble:
				bound = 0.2 // the density of a liquid
			case i == n+1:
				bound = 0.05
			}
			if d > bound {
				scale = min(scale, bound/d)
			}
		}
		s.lnKnown -= scale * s.jac[0][size]
		for i := 0; i < n; i++ {
			s.lnInc[i] -= scale * s.jac[1+i][size]
		}
		if p > 0 {
			s.lnT -= scale * s.jac[n+1][size]
		}
		if most < noise {
			quiet++
		}
		if most < tolerance || quiet >= 3 {
			// The pressure is taken along the step just made, which is as exact as another evaluation: what it leaves is
			// the square of the tolerance.
			if p == 0 {
				s.pressure -= scale * s.pressureStep(kind)
			}
			return s.sound(kind)
		}
	}
	return false
}

// evaluate brings both phases to the unknowns.
func (s *Solver) evaluate() bool {
	T := helmholtz.Exp(s.lnT)
	known := helmholtz.Exp(s.lnKnown)
	if !(T > 1 && T < 5000 && known > 1e-30 && known < 1e7) {
		return false
	}
	s.known.T, s.incipient.T = T, T
	var sum float64
	for i := 0; i < s.n; i++ {
		s.known.Rho[i] = s.z[i] * known
		r := helmholtz.Exp(s.lnInc[i])
		if !(r > 1e-200) {
			return false
		}
		s.incipient.Rho[i] = r
		sum += r
	}
	if !(sum < 1e7) {
		return false
	}
	s.model.Evaluate(&s.known)
	if s.n == 1 {
		// A pure fluid has the same τ in both phases: lend the second phase what the first has computed.
		s.incipient.Pure[0] = s.known.Pure[0]
	}
	s.model.Evaluate(&s.incipient)
	return true
}

// assemble writes the Jacobian and the residuals into the augmented matrix. Columns: ln ρ of the known phase, ln ρ_i of
// the incipient phase, ln T. Rows: fugacities, equality of pressure, the pressure given.
func (s *Solver) assemble(kind Kind, p float64) {
	n := s.n
	a := &s.jac
	last := n + 1
	if p > 0 {
		last++
	}
	k, c := &s.known, &s.incipient
	T := k.T
	pk, pc := reducedPressure(k, n), reducedPressure(c, n)
	vapor := pc
	if kind == Dew {
		vapor = pk
	}
	// The rows of pressure are divided by the vapour's p/(RT), or by its density where that is not positive.
	weight := vapor
	if !(weight > 0) {
		weight = k.Density
		if kind == Bubble {
			weight = c.Density
		}
	}
	var pkRho, pkT, pcT float64
	for i := 0; i < n; i++ {
		var h float64
		for j := 0; j < n; j++ {
			h += k.Hess[i][j] * k.Rho[j]
			a[i][1+j] = -c.Hess[i][j] * c.Rho[j]
		}
		a[i][1+i]--
		a[i][0] = 1 + h
		pkRho += k.Rho[i] * (1 + h)
		pkT += k.Rho[i] * k.GradT[i]
		pcT += c.Rho[i] * c.GradT[i]
		if p > 0 {
			a[i][n+1] = T * (k.GradT[i] - c.GradT[i])
		}
		a[i][last] = s.lnZ[i] + s.lnKnown - s.lnInc[i] + k.Grad[i] - c.Grad[i]
	}
	pkT -= k.FT
	pcT -= c.FT
	a[n][0] = pkRho / weight
	s.pressure = vapor
	s.slope[0] = pkRho
	for j := 0; j < n; j++ {
		var h float64
		for i := 0; i < n; i++ {
			h += c.Rho[i] * c.Hess[i][j]
		}
		s.slope[1+j] = c.Rho[j] * (1 + h)
		a[n][1+j] = -s.slope[1+j] / weight
	}
	a[n][last] = (pk - pc) / weight
	if p > 0 {
		a[n][n+1] = T * (pkT - pcT) / weight
		// The pressure given is compared with that of the vapour: p/(RT) of it in the row, and RT moves with T.
		want := p / (s.model.GasConstant() * T)
		for j := 0; j <= n; j++ {
			a[n+1][j] = 0
		}
		if kind == Dew {
			a[n+1][0] = pkRho / weight
			a[n+1][n+1] = (T*pkT + want) / weight
		} else {
			for j := 0; j < n; j++ {
				a[n+1][1+j] = -a[n][1+j]
			}
			a[n+1][n+1] = (T*pcT + want) / weight
		}
		a[n+1][last] = (vapor - want) / weight
	}
}

// pressureStep gives the change of the vapour's p/(RT) over the step in the last column, at constant temperature.
func (s *Solver) pressureStep(kind Kind) float64 {
	last := s.n + 1
	if kind == Dew {
		return s.slope[0] * s.jac[0][last]
	}
	var d float64
	for j := 1; j <= s.n; j++ {
		d += s.slope[j] * s.jac[j][last]
	}
	return d
}

// eliminate solves the system in place by Gauss elimination with row pivoting; the solution replaces the last column.
// It tells whether the matrix was regular.
func eliminate(a *matrix, n int) bool {
	for c := 0; c < n; c++ {
		best := c
		for r := c + 1; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[best][c]) {
				best = r
			}
		}
		if !(math.Abs(a[best][c]) > 0) {
			return false
		}
		if best != c {
			a[best], a[c] = a[c], a[best]
		}
		inv := 1 / a[c][c]
		for r := c + 1; r < n; r++ {
			f := a[r][c] * inv
			if f == 0 {
				continue
			}
			for j := c + 1; j <= n; j++ {
				a[r][j] -= f * a[c][j]
			}
		}
	}
	for r := n - 1; r >= 0; r-- {
		v := a[r][n]
		for j := r + 1; j < n; j++ {
			v -= a[r][j] * a[j][n]
		}
		a[r][n] = v / a[r][r]
		if math.IsNaN(a[r][n]) {
			return false
		}
	}
	return true
}

// sound tells whether the solution is a liquid and a vapour, each mechanically stable, at a positive pressure. Newton's
// method can also end in two equal phases (the trivial solution), on the unstable branch, or, near the critical point of a
// blend, in two dense phases. At 0.98 of its critical temperature (a pure fluid: 0.99) every substance of the catalogue but
// helium has a reduced vapour density below 0.67 and a reduced liquid density above 1.34; helium 0.74 and 1.26.
func (s *Solver) sound(kind Kind) bool {
	liquid, vapor := &s.known, &s.incipient
	if kind == Dew {
		liquid, vapor = vapor, liquid
	}
	return reducedPressure(vapor, s.n) > 0 && s.soundPair(liquid, vapor)
}

func (s *Solver) soundPair(liquid, vapor *helmholtz.Phase) bool {
	return liquid.Delta > 1.2 && vapor.Delta < 0.76 && s.stiffness(liquid) > 0 && s.stiffness(vapor) > 0
}

// stiffness is ρ ∂(p/RT)/∂ρ at constant composition and temperature.
func (s *Solver) stiffness(ph *helmholtz.Phase) float64 {
	var sum float64
	for i := 0; i < s.n; i++ {
		var h float64
		for j := 0; j < s.n; j++ {
			h += ph.Hess[i][j] * ph.Rho[j]
		}
		sum += ph.Rho[i] * (1 + h)
	}
	return sum
}
