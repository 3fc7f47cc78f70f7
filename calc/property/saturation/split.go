package saturation

import (
	"math"

	"changeout/calc/property/helmholtz"
)

// Split is a state of two phases in equilibrium, of a mixture of the overall composition of the solver. Densities are those
// of the components in each phase, mol/m³.
type Split struct {
	T, P        float64
	Vapor       float64 // moles of vapour per mole of mixture
	Liquid, Gas [maxN]float64
}

// Edge gives a bubble or dew state as the split it is the limit of.
func (s *Solver) Edge(kind Kind, st *State) Split {
	e := Split{T: st.T, P: st.P}
	if kind == Dew {
		e.Vapor = 1
	}
	for i := 0; i < s.n; i++ {
		e.Liquid[i], e.Gas[i] = s.z[i]*st.RhoLiquid, st.Incipient[i]*st.RhoVapor
		if kind == Dew {
			e.Liquid[i], e.Gas[i] = st.Incipient[i]*st.RhoLiquid, s.z[i]*st.RhoVapor
		}
	}
	return e
}

// Split finds the equilibrium with the given molar vapour fraction at the pressure of a and b, two states at that pressure
// (the edges, to begin with) whose vapour fractions lie on either side of it. The unknowns are ln ρ_i' and ln ρ_i” of every
// component and ln T, starting on the straight line between a and b; the conditions are equal fugacities, both pressures,
// and the balance of the components
//
//	z_i = (1 - vapour) x_i + vapour y_i.
//
// Where that start is too far off (a wide glide is far from straight) it walks from a in steps.
func (s *Solver) Split(a, b *Split, vapor float64) (Split, error) {
	n := s.n
	t := 0.5
	if a.Vapor != b.Vapor {
		t = (vapor - a.Vapor) / (b.Vapor - a.Vapor)
	}
	var u [2*maxN + 1]float64
	for i := 0; i < n; i++ {
		u[i] = (1-t)*math.Log(a.Liquid[i]) + t*math.Log(b.Liquid[i])
		u[n+i] = (1-t)*math.Log(a.Gas[i]) + t*math.Log(b.Gas[i])
	}
	u[2*n] = (1-t)*math.Log(a.T) + t*math.Log(b.T)
	st, err := s.splitFrom(&u, a.P, vapor)
	if err == nil {
		return st, nil
	}
	for i := 0; i < n; i++ {
		u[i], u[n+i] = math.Log(a.Liquid[i]), math.Log(a.Gas[i])
	}
	u[2*n] = math.Log(a.T)
	const steps = 16
	for k := 1; k <= steps; k++ {
		if st, err = s.splitFrom(&u, a.P, a.Vapor+(vapor-a.Vapor)*float64(k)/steps); err != nil {
			return Split{}, err
		}
	}
	return st, nil
}

// splitFrom iterates from the unknowns u, which it moves to the solution.
func (s *Solver) splitFrom(u *[2*maxN + 1]float64, p, vapor float64) (Split, error) {
	n := s.n
	size := 2*n + 1
	liquid, gas := &s.known, &s.incipient
	for range 30 {
		T := math.Exp(u[2*n])
		if !(T > 1 && T < 5000) {
			return Split{}, ErrNotConverged
		}
		liquid.T, gas.T = T, T
		for i := 0; i < n; i++ {
			liquid.Rho[i], gas.Rho[i] = math.Exp(u[i]), math.Exp(u[n+i])
			if !(liquid.Rho[i] > 1e-200 && liquid.Rho[i] < 1e7 && gas.Rho[i] > 1e-200 && gas.Rho[i] < 1e7) {
				return Split{}, ErrNotConverged
			}
		}
		s.model.Evaluate(liquid)
		s.model.Evaluate(gas)
		s.assembleSplit(p, vapor)
		if !eliminate(&s.jac, size) {
			return Split{}, ErrNotConverged
		}
		most := 0.0
		for i := 0; i < size; i++ {
			most = max(most, math.Abs(s.jac[i][size]))
		}
		if !(most < 1e3) {
			return Split{}, ErrNotConverged
		}
		scale := min(1, 0.3/most)
		for i := 0; i < size; i++ {
			u[i] -= scale * s.jac[i][size]
		}
		if most < tolerance {
			if !(liquid.Delta > 1.2 && gas.Delta < 0.76 && s.stiffness(liquid) > 0 && s.stiffness(gas) > 0) {
				return Split{}, ErrNotConverged
			}
			// The last step is taken without another look: what it leaves is the square of the tolerance.
			st := Split{T: math.Exp(u[2*n]), P: p, Vapor: vapor}
			for i := 0; i < n; i++ {
				st.Liquid[i], st.Gas[i] = math.Exp(u[i]), math.Exp(u[n+i])
			}
			return st, nil
		}
	}
	return Split{}, ErrNotConverged
}

// assembleSplit writes Jacobian and residuals of Split into the augmented matrix.
func (s *Solver) assembleSplit(p, vapor float64) {
	n := s.n
	a := &s.jac
	last := 2*n + 1
	l, g := &s.known, &s.incipient
	T := l.T
	want := p / (s.model.GasConstant() * T)
	for i := range a[:last] {
		for j := range a[i][:last+1] {
			a[i][j] = 0
		}
	}
	for i := 0; i < n; i++ {
		for j := 0; j < n; j++ {
			a[i][j] = l.Hess[i][j] * l.Rho[j]
			a[i][n+j] = -g.Hess[i][j] * g.Rho[j]
		}
		a[i][i]++
		a[i][n+i]--
		a[i][2*n] = T * (l.GradT[i] - g.GradT[i])
		a[i][last] = math.Log(l.Rho[i]/g.Rho[i]) + l.Grad[i] - g.Grad[i]
	}
	for k, ph := range [2]*helmholtz.Phase{l, g} {
		row, at := n+k, n*k
		pt := -ph.FT
		for j := 0; j < n; j++ {
			var h float64
			for i := 0; i < n; i++ {
				h += ph.Rho[i] * ph.Hess[i][j]
			}
			a[row][at+j] = ph.Rho[j] * (1 + h) / want
			pt += ph.Rho[j] * ph.GradT[j]
		}
		a[row][2*n] = (T*pt + want) / want
		a[row][last] = reducedPressure(ph, n)/want - 1
	}
	for i := 0; i < n-1; i++ {
		x, y := l.Rho[i]/l.Density, g.Rho[i]/g.Density
		for j := 0; j < n; j++ {
			a[n+2+i][j] = (1 - vapor) * x * l.Rho[j] / l.Density
			a[n+2+i][n+j] = vapor * y * g.Rho[j] / g.Density
		}
		a[n+2+i][i] -= (1 - vapor) * x
		a[n+2+i][n+i] -= vapor * y
		a[n+2+i][last] = s.z[i] - (1-vapor)*x - vapor*y
	}
}
