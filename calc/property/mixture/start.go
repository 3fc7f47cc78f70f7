package mixture

import (
	"math"

	"changeout/calc/property/helmholtz"
)

// Start gives rough saturation values of component i alone at T, K: pressure, Pa, and densities, mol/m³. They come from
// the auxiliary curves where those hold and are continued where they do not: ln p linear in 1/T on both sides, the liquid
// density held above 0.9 of the critical temperature (a dissolved light component takes room as if it were liquid).
// Good for starting an iteration, for nothing else.
func (m *Model) Start(i int, T float64) (p, rhoLiquid, rhoVapor float64) {
	f := m.fluids[i]
	a := &f.VaporPressure
	high := 0.9999 * a.Tr
	if m.n > 1 {
		high = 0.99 * a.Tr
	}
	switch {
	case T > high:
		p = alongLine(a, high, 0.95*high, T)
		rhoVapor = p / (m.gas * T) * (f.VaporDensity.Value(high) * m.gas * high / a.Value(high))
	case T < a.MinT:
		p = alongLine(a, a.MinT, 1.05*a.MinT, T)
		rhoVapor = p / (m.gas * T)
	default:
		p = a.Value(T)
		rhoVapor = f.VaporDensity.Value(T)
	}
	l := &f.LiquidDensity
	switch {
	case m.n > 1 && T > 0.9*l.Tr:
		rhoLiquid = l.Value(0.9 * l.Tr)
	case T < l.MinT:
		y0, y1 := l.Value(l.MinT), l.Value(1.05*l.MinT)
		rhoLiquid = y0 + (y1-y0)*(T-l.MinT)/(0.05*l.MinT)
	default:
		rhoLiquid = l.Value(min(T, high))
	}
	return p, rhoLiquid, rhoVapor
}

// alongLine continues ln p linearly in 1/T through the points at t0 and t1.
func alongLine(a *helmholtz.Auxiliary, t0, t1, T float64) float64 {
	p0, p1 := a.Value(t0), a.Value(t1)
	slope := math.Log(p1/p0) / (1/t1 - 1/t0)
	return p0 * math.Exp(slope*(1/T-1/t0))
}
