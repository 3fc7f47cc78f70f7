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

// Flash finds the equilibrium at the pressure of the bubble state a and the dew state b whose molar enthalpy, entropy or
// volume is want; va and vb are those of a and b, va < want < vb. The unknowns are ln ρ_i' and ln ρ_i” of every component,
// ln T and the vapour fraction v, starting on the straight line between a and b; the conditions are equal fugacities, both
// pressures, the balance of the components and the quantity
//
//	z_i = (1 - v) x_i + v y_i,     want = (1 - v) q' + v q”.
//
// Where that start is too far off (a wide glide is far from straight) it walks from a in steps.
func (s *Solver) Flash(quantity helmholtz.Quantity, want float64, a, b *Split, va, vb float64) (Split, error) {
	n := s.n
	s.quantity, s.span = quantity, vb-va
	t := (want - va) / s.span
	if !(t >= 0 && t <= 1) {
		return Split{}, ErrNotConverged
	}
	var u unknowns
	for i := 0; i < n; i++ {
		u[i] = (1-t)*math.Log(a.Liquid[i]) + t*math.Log(b.Liquid[i])
		u[n+i] = (1-t)*math.Log(a.Gas[i]) + t*math.Log(b.Gas[i])
	}
	u[2*n] = (1-t)*math.Log(a.T) + t*math.Log(b.T)
	u[2*n+1] = t
	st, err := s.flashFrom(&u, a.P, want)
	if err == nil {
		return st, nil
	}
	for i := 0; i < n; i++ {
		u[i], u[n+i] = math.Log(a.Liquid[i]), math.Log(a.Gas[i])
	}
	u[2*n], u[2*n+1] = math.Log(a.T), 0
	const steps = 16
	for k := 1; k <= steps; k++ {
		if st, err = s.flashFrom(&u, a.P, va+(want-va)*float64(k)/steps); err != nil {
			return Split{}, err
		}
	}
	return st, nil
}

// unknowns of Flash in the order of its comment.
type unknowns [2*maxN + 2]float64

// flashFrom iterates from u, which it moves to the solution.
func (s *Solver) flashFrom(u *unknowns, p, want float64) (Split, error) {
	n := s.n
	size := 2*n + 2
	liquid, gas := &s.known, &s.incipient
	for range 30 {
		T := helmholtz.Exp(u[2*n])
		if !(T > 1 && T < 5000) {
			break
		}
		liquid.T, gas.T = T, T
		for i := 0; i < n; i++ {
			liquid.Rho[i], gas.Rho[i] = helmholtz.Exp(u[i]), helmholtz.Exp(u[n+i])
			if !(liquid.Rho[i] > 1e-200 && liquid.Rho[i] < 1e7 && gas.Rho[i] > 1e-200 && gas.Rho[i] < 1e7) {
				return Split{}, ErrNotConverged
			}
		}
		s.model.Evaluate(liquid)
		s.model.Evaluate(gas)
		s.assembleFlash(p, u[2*n+1], want)
		if !eliminate(&s.jac, size) {
			break
		}
		most := 0.0
		for i := 0; i < size; i++ {
			most = max(most, math.Abs(s.jac[i][size]))
		}
		if !(most < 1e3) {
			break
		}
		scale := min(1, 0.3/most)
		for i := 0; i < size; i++ {
			u[i] -= scale * s.jac[i][size]
		}
		if most < tolerance {
			v := u[2*n+1]
			if !(v > -1e-9 && v < 1+1e-9 && s.soundPair(liquid, gas)) {
				break
			}
			// The last step is taken without another look: what it leaves is the square of the tolerance.
			st := Split{T: helmholtz.Exp(u[2*n]), P: p, Vapor: min(max(v, 0), 1)}
			for i := 0; i < n; i++ {
				st.Liquid[i], st.Gas[i] = helmholtz.Exp(u[i]), helmholtz.Exp(u[n+i])
			}
			return st, nil
		}
	}
	return Split{}, ErrNotConverged
}

// assembleFlash writes Jacobian and residuals of Flash into the augmented matrix.
func (s *Solver) assembleFlash(p, v, want float64) {
	n := s.n
	a := &s.jac
	last := 2*n + 2
	l, g := &s.known, &s.incipient
	T := l.T
	pr := p / (s.model.GasConstant() * T)
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
	for i := 0; i < n-1; i++ {
		x, y := l.Rho[i]/l.Density, g.Rho[i]/g.Density
		row := &a[n+2+i]
		for j := 0; j < n; j++ {
			row[j] = (1 - v) * x * l.Rho[j] / l.Density
			row[n+j] = v * y * g.Rho[j] / g.Density
		}
		row[i] -= (1 - v) * x
		row[n+i] -= v * y
		row[2*n+1] = x - y
		row[last] = s.z[i] - (1-v)*x - v*y
	}
	var ideal [3][maxN]float64
	if s.quantity != helmholtz.Volume {
		for i := 0; i < n; i++ {
			ideal[0][i], ideal[1][i], ideal[2][i] = s.model.IdealOf(i, T)
		}
	}
	row := &a[2*n+1]
	row[last] = -want / s.span
	for k, ph := range [2]*helmholtz.Phase{l, g} {
		at := n * k
		part := (1 - v) / s.span
		if k == 1 {
			part = v / s.span
		}
		var h [maxN]float64 // ∂(p/RT)/∂ρ_j
		pt := -ph.FT        // ∂(p/RT)/∂T
		for j := 0; j < n; j++ {
			h[j] = 1
			for i := 0; i < n; i++ {
				h[j] += ph.Rho[i] * ph.Hess[i][j]
			}
			a[n+k][at+j] = ph.Rho[j] * h[j] / pr
			pt += ph.Rho[j] * ph.GradT[j]
		}
		pk := reducedPressure(ph, n)
		a[n+k][2*n] = (T*pt + pr) / pr
		a[n+k][last] = pk/pr - 1
		q, slope := s.value(ph, &ideal, &h, pk, pt, &row[2*n], part)
		for j := 0; j < n; j++ {
			row[at+j] = part * slope[j]
		}
		row[2*n+1] += q / s.span * float64(2*k-1)
		row[last] += part * q
	}
}

// value gives the molar quantity of a phase and its derivatives with ln ρ_j, and adds part times that with ln T to slopeT.
// h and pt are the derivatives of pk = p/(RT) with ρ_j and T. Per volume, with F as in helmholtz.Phase and α⁰_i the ideal part
// of component i,
//
//	enthalpy  H = RT [Σ ρ_i τα⁰_iτ - T F_T + p/(RT)]
//	entropy   S = R [Σ ρ_i (τα⁰_iτ - α⁰_i) - F - T F_T]
func (s *Solver) value(ph *helmholtz.Phase, ideal *[3][maxN]float64, h *[maxN]float64, pk, pt float64, slopeT *float64, part float64) (q float64, slope [maxN]float64) {
	n, rho, T, R := s.n, ph.Density, ph.T, s.model.GasConstant()
	if s.quantity == helmholtz.Volume {
		for j := 0; j < n; j++ {
			slope[j] = -ph.Rho[j] / (rho * rho)
		}
		return 1 / rho, slope
	}
	w := -T * ph.FT
	wT := -rho * ph.Total.TT // R T ∂w/∂T is the heat capacity at constant volume, per volume
	for i := 0; i < n; i++ {
		w += ph.Rho[i] * ideal[1][i]
		wT -= ph.Rho[i] * ideal[2][i]
	}
	f := R
	if s.quantity == helmholtz.Enthalpy {
		f *= T
		w += pk
		wT += pk + T*pt
	} else {
		w -= ph.F
		for i := 0; i < n; i++ {
			w -= ph.Rho[i] * (ideal[0][i] + math.Log(ph.Rho[i]))
		}
	}
	q = w / rho
	for j := 0; j < n; j++ {
		d := ideal[1][j] - T*ph.GradT[j]
		if s.quantity == helmholtz.Enthalpy {
			d += h[j]
		} else {
			d -= ideal[0][j] + math.Log(ph.Rho[j]) + 1 + ph.Grad[j]
		}
		slope[j] = f * ph.Rho[j] / rho * (d - q)
	}
	*slopeT += part * f * wT / rho
	return f * q, slope
}
