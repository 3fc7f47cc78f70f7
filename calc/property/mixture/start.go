package mixture

import (
	"math"

	"changeout/calc/property/helmholtz"
)

// StartPressure gives a rough saturation pressure, Pa, of component i alone at T, K: from its auxiliary curve where that
// holds, continued with ln p linear in 1/T on both sides. Good for starting an iteration, for nothing else.
func (m *Model) StartPressure(i int, T float64) float64 {
	a := &m.fluids[i].VaporPressure
	switch high := m.startHigh(i); {
	case T > high:
		return alongLine(a, high, 0.95*high, T)
	case T < a.MinT:
		return alongLine(a, a.MinT, 1.05*a.MinT, T)
	}
	return a.Value(T)
}

// StartDensities gives rough saturation densities, mol/m³, of component i alone at T, K, where p is its StartPressure. Above
// 0.9 of the critical temperature the liquid of a component of a mixture is held: dissolved, it takes room as if it were liquid.
func (m *Model) StartDensities(i int, T, p float64) (liquid, vapor float64) {
	f := m.fluids[i]
	high := m.startHigh(i)
	switch {
	case T > high:
		z := f.VaporPressure.Value(high) / (f.VaporDensity.Value(high) * m.gas * high)
		vapor = p / (z * m.gas * T)
	case T < f.VaporDensity.MinT:
		vapor = p / (m.gas * T)
	default:
		vapor = f.VaporDensity.Value(T)
	}
	l := &f.LiquidDensity
	switch {
	case m.n > 1 && T > 0.9*l.Tr:
		liquid = l.Value(0.9 * l.Tr)
	case T < l.MinT:
		y0, y1 := l.Value(l.MinT), l.Value(1.05*l.MinT)
		liquid = y0 + (y1-y0)*(T-l.MinT)/(0.05*l.MinT)
	default:
		liquid = l.Value(min(T, high))
	}
	return liquid, vapor
}

// startHigh is the temperature up to which the auxiliary curves of component i are used as they are.
func (m *Model) startHigh(i int) float64 {
	if m.n > 1 {
		return 0.99 * m.fluids[i].VaporPressure.Tr
	}
	return 0.9999 * m.fluids[i].VaporPressure.Tr
}

// alongLine continues ln p linearly in 1/T through the points at t0 and t1.
func alongLine(a *helmholtz.Auxiliary, t0, t1, T float64) float64 {
	p0, p1 := a.Value(t0), a.Value(t1)
	slope := math.Log(p1/p0) / (1/t1 - 1/t0)
	return p0 * helmholtz.Exp(slope*(1/T-1/t0))
}
