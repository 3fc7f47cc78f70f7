package refrigerant

import "changeout/calc/property/viscosity"

// Viscosity is the dynamic viscosity of one state, with what stands behind it.
type Viscosity struct {
	Value float64 // Pa s
	// Estimated is false where a correlation published for this refrigerant gave the value, and true where it comes from
	// residual entropy scaling. An estimate must be shown as one, with EstimateMethod and its error.
	Estimated bool
	Source    string // key of the bibliography
}

// EstimateMethod names what stands behind an estimated value.
const EstimateMethod = "residual entropy scaling"

// Bounds of the relative error of an estimated viscosity between -40 °C and 0.95 of the critical temperature, as measured
// against correlations and measurements in the tests. The worst liquid is R-23 against one measurement, the worst gas R-134a
// close to 0.95; typical are 3 % and 4 %.
const (
	EstimateErrorLiquid = 0.13
	EstimateErrorGas    = 0.21
)

// ErrNoViscosity: no correlation was published for the refrigerant, and a component has no parameters for an estimate.
var ErrNoViscosity = viscosity.ErrUnknown

// Viscosity gives the dynamic viscosity at a state that another method gave: liquid, vapour or supercritical. A published
// correlation is used in its range of temperature and pressure, an estimate otherwise; see the package viscosity for the
// equations, their sources and how good they are. Near the end of a correlation's range the two differ by some percent, so
// that the value can step there.
//
// Errors: ErrTwoPhase for a state with liquid and vapour, ErrRange outside both ranges (also for NaN), ErrNoViscosity, ErrSolve.
func (r *Refrigerant) Viscosity(p Properties) (out Viscosity, err error) {
	e := r.engine
	maxT, maxP := r.Limits()
	if p.Phase == TwoPhase {
		return Viscosity{}, ErrTwoPhase
	}
	if !(p.T >= e.tMin*(1-1e-12) && p.T <= maxT && p.P > 0 && p.P <= maxP && p.Rho > 0) {
		return Viscosity{}, ErrRange
	}
	rho := p.Rho / e.molarMass
	if c := viscosity.Lookup(r.Name); c != nil && c.Covers(p.T, p.P) {
		out = Viscosity{Source: c.Source}
		out.Value, err = c.At(p.T, rho)
	} else {
		out = Viscosity{Estimated: true, Source: viscosity.EstimateSource}
		out.Value, err = r.estimate(p.T, rho)
	}
	if err == viscosity.ErrRange {
		err = ErrRange
	}
	return out, err
}

// estimate gives the estimated viscosity, Pa s, at temperature T, K, and density rho, mol/m³.
func (r *Refrigerant) estimate(T, rho float64) (float64, error) {
	e := r.engine
	if e.prepare() != nil {
		return 0, ErrSolve
	}
	w := e.take()
	w.phase.Set(T, rho)
	s := w.phase.Phase.Total.A - w.phase.Phase.Total.T // -s_r/R = αʳ - τ αʳ_τ
	e.pool.Put(w)
	return viscosity.Estimate(e.fluids, e.z, T, rho, s)
}
