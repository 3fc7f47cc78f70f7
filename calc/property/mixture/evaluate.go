package mixture

import (
	"math"

	"changeout/calc/property/helmholtz"
)

// Evaluate fills ph from ph.T and ph.Rho. Every density must be positive and T positive; the caller sees to that.
//
// With s = αʳ at fixed τ and δ, and F = ρ s(x; τ(T, ρ⃗), δ(ρ⃗)), the chain rule gives gradient and Hessian in the component
// densities. Below, r_k = ρ ∂ln τ/∂ρ_k and e_k = ρ ∂ln δ/∂ρ_k, which are numbers of order one.
func (m *Model) Evaluate(ph *helmholtz.Phase) {
	n := m.n
	if n == 1 {
		m.evaluatePure(ph)
		return
	}
	var x [maxN]float64
	rho := 0.0
	for i := 0; i < n; i++ {
		rho += ph.Rho[i]
	}
	for i := 0; i < n; i++ {
		x[i] = ph.Rho[i] / rho
	}
	ph.Density = rho
	var rt, rv reduced
	m.temperature.value(n, &x, &rt)
	m.volume.value(n, &x, &rv)
	tau, delta := rt.y/ph.T, rho*rv.y
	ph.Delta = delta
	if tau != ph.Tau {
		ph.Tau, ph.LnTau = tau, math.Log(tau)
	}
	ph.Isochore.Set(delta)

	// s and its derivatives, and those of its components: s = Σ x_k a_k + Σ_{k<l} x_k x_l F_kl a_kl.
	// ∂(ρ s)/∂ρ_k at fixed τ, δ is a_k + (departure) =: c[k], with its own derivatives in τ and δ.
	var c [maxN]helmholtz.Derivatives
	var s helmholtz.Derivatives
	var cross [maxN][maxN]float64 // F_kl a_kl
	for k := 0; k < n; k++ {
		r := &m.fluids[k].Residual
		r.Prepare(&ph.Pure[k], tau, ph.LnTau)
		r.Evaluate(&ph.Pure[k], &ph.Isochore, &c[k])
		s.Add(x[k], &c[k])
	}
	var e float64 // Σ_{k<l} x_k x_l F_kl a_kl
	var grad [maxN]float64
	if len(m.pairs) > 0 {
		var d, sum helmholtz.Derivatives
		for p := range m.pairs {
			pair := &m.pairs[p]
			pair.residual.Prepare(&ph.Pair[p], tau, ph.LnTau)
			pair.residual.Evaluate(&ph.Pair[p], &ph.Isochore, &d)
			i, j, f := pair.i, pair.j, pair.f
			sum.Add(f*x[i]*x[j], &d)
			c[i].Add(f*x[j], &d)
			c[j].Add(f*x[i], &d)
			grad[i] += f * x[j] * d.A
			grad[j] += f * x[i] * d.A
			cross[i][j] = f * d.A
		}
		for k := 0; k < n; k++ {
			c[k].Add(-1, &sum)
		}
		s.Add(1, &sum)
		e = sum.A
	}

	ph.Total = s
	ph.F = rho * s.A
	ph.FT = -rho * s.T / ph.T
	var r, g [maxN]float64
	for k := 0; k < n; k++ {
		r[k] = rt.grad[k]/rt.y - 2
		g[k] = rv.grad[k]/rv.y - 1
		ph.Grad[k] = c[k].A + s.T*r[k] + s.D*g[k]
		ph.GradT[k] = -(c[k].T + (s.TT+s.T)*r[k] + s.DT*g[k]) / ph.T
	}
	for k := 0; k < n; k++ {
		for l := k; l < n; l++ {
			rkl := (rt.hess[k][l]-2*rt.grad[k]-2*rt.grad[l])/rt.y + 6
			gkl := (rv.hess[k][l]-rv.grad[k]-rv.grad[l])/rv.y + 2
			h := cross[k][l] - grad[k] - grad[l] + 2*e +
				c[k].T*r[l] + c[l].T*r[k] + c[k].D*g[l] + c[l].D*g[k] +
				s.TT*r[k]*r[l] + s.DT*(r[k]*g[l]+r[l]*g[k]) + s.DD*g[k]*g[l] +
				s.T*rkl + s.D*gkl
			h /= rho
			ph.Hess[k][l], ph.Hess[l][k] = h, h
		}
	}
}

// evaluatePure is Evaluate for one component, where the reducing state is fixed and F = ρ αʳ(τ, δ) has three derivatives.
func (m *Model) evaluatePure(ph *helmholtz.Phase) {
	f := m.fluids[0]
	rho := ph.Rho[0]
	ph.Density = rho
	ph.Delta = rho / f.ReducingRho
	if tau := f.ReducingT / ph.T; tau != ph.Tau {
		ph.Tau, ph.LnTau = tau, math.Log(tau)
	}
	ph.Isochore.Set(ph.Delta)
	f.Residual.Prepare(&ph.Pure[0], ph.Tau, ph.LnTau)
	s := &ph.Total
	f.Residual.Evaluate(&ph.Pure[0], &ph.Isochore, s)
	ph.F = rho * s.A
	ph.FT = -rho * s.T / ph.T
	ph.Grad[0] = s.A + s.D
	ph.GradT[0] = -(s.T + s.DT) / ph.T
	ph.Hess[0][0] = (2*s.D + s.DD) / rho
}
