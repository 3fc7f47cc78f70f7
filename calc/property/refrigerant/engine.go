package refrigerant

import (
	"sync"

	"changeout/calc/property/fluid"
	"changeout/calc/property/helmholtz"
	"changeout/calc/property/mixture"
	"changeout/calc/property/saturation"
	"changeout/calc/property/singlephase"
)

// engine joins a refrigerant to the property packages. It is built at the first question, not with the catalogue: a phone
// opens one refrigerant out of many.
type engine struct {
	z          []float64 // mole fractions
	molarMass  float64   // kg/mol
	tMin, tMax float64   // K
	maxT, maxP float64   // K, Pa, upper limits of the component equations
	fluids     []*helmholtz.Equation
	// Critical point: K, Pa, mol/m³.
	criticalT, criticalP, criticalRho float64

	once  sync.Once
	model *mixture.Model
	err   error
	// Pressure range of bubble and dew point, Pa.
	low, high [2]float64
	h0, s0    float64   // molar enthalpy and entropy taken as zero
	pool      sync.Pool // of *workspace
}

// workspace is the memory of one caller.
type workspace struct {
	saturation *saturation.Solver
	phase      *singlephase.Solver
}

// newEngine looks the components up. The catalogue is fixed, so an unknown component is a mistake in it, found by a test.
func newEngine(names []string, z []float64, critical State, tMin float64) *engine {
	e := &engine{z: z, tMin: tMin, maxT: 1e4, maxP: 1e9, criticalT: critical.T, criticalP: critical.P}
	e.tMax = maxReducedT * critical.T
	if len(names) == 1 {
		e.tMax = maxReducedTPure * critical.T
	}
	for i, name := range names {
		f, ok := fluid.Lookup(name)
		if !ok {
			panic("refrigerant: unknown component " + name)
		}
		e.fluids = append(e.fluids, f)
		e.molarMass += z[i] * f.MolarMass
		e.tMin = max(e.tMin, f.MinT)
		e.maxT = min(e.maxT, f.MaxT)
		e.maxP = min(e.maxP, f.MaxP)
	}
	e.criticalRho = critical.Rho / e.molarMass
	return e
}

// prepare builds the model once and measures the pressure range. Inlined, each caller would carry a copy of its body.
//
//go:noinline
func (e *engine) prepare() error {
	e.once.Do(func() {
		if e.model, e.err = mixture.New(e.fluids...); e.err != nil {
			return
		}
		w := e.take()
		defer e.pool.Put(w)
		for _, kind := range []saturation.Kind{saturation.Bubble, saturation.Dew} {
			a, err := w.saturation.AtT(kind, e.tMin)
			if err != nil {
				e.err = err
				return
			}
			b, err := w.saturation.AtT(kind, e.tMax)
			if err != nil {
				e.err = err
				return
			}
			e.low[kind], e.high[kind] = a.P, b.P
		}
		e.err = e.reference(w)
	})
	return e.err
}

// reference sets the zero of enthalpy and entropy, see Properties.
func (e *engine) reference(w *workspace) error {
	const T, h, s = 273.15, 200e3, 1e3
	if !e.within(T) {
		return nil
	}
	st, err := w.saturation.AtT(saturation.Bubble, T)
	if err != nil {
		return err
	}
	q, err := w.phase.AtTRho(T, st.RhoLiquid)
	if err != nil {
		return err
	}
	e.h0, e.s0 = q.H-h*e.molarMass, q.S-s*e.molarMass
	return nil
}

// take gives a workspace that the caller must put back into the pool.
func (e *engine) take() *workspace {
	if w, ok := e.pool.Get().(*workspace); ok {
		return w
	}
	return &workspace{
		saturation: saturation.New(e.model, e.z, 0.75*e.tMax/maxReducedT),
		phase:      singlephase.New(e.model, e.z),
	}
}

// within tells whether T lies in the range; a limit that went through a unit conversion still counts as inside.
func (e *engine) within(T float64) bool {
	return T >= e.tMin*(1-1e-12) && T <= e.tMax*(1+1e-12)
}

// atT solves at a temperature within the range.
func (e *engine) atT(kind saturation.Kind, T float64) (Point, error) {
	if !e.within(T) {
		return Point{}, ErrRange
	}
	if e.prepare() != nil {
		return Point{}, ErrSolve
	}
	w := e.take()
	st, err := w.saturation.AtT(kind, T)
	e.pool.Put(w)
	if err != nil {
		return Point{}, ErrSolve
	}
	return e.point(kind, &st), nil
}

// atP solves at a pressure within the range.
func (e *engine) atP(kind saturation.Kind, p float64) (Point, error) {
	if e.prepare() != nil {
		return Point{}, ErrSolve
	}
	if !(p >= e.low[kind]*(1-1e-12) && p <= e.high[kind]*(1+1e-12)) {
		return Point{}, ErrRange
	}
	w := e.take()
	st, err := w.saturation.AtP(kind, p, e.tMin, e.tMax)
	e.pool.Put(w)
	// The limits in pressure belong to those in temperature; a solution elsewhere is another root.
	if err != nil || st.T < e.tMin*(1-1e-9) || st.T > e.tMax*(1+1e-9) {
		return Point{}, ErrSolve
	}
	return e.point(kind, &st), nil
}

// point converts to mass densities. The incipient phase has its own composition and so its own molar mass.
func (e *engine) point(kind saturation.Kind, st *saturation.State) Point {
	var m float64
	for i, f := range e.fluids {
		m += st.Incipient[i] * f.MolarMass
	}
	liquid, vapor := e.molarMass, m
	if kind == saturation.Dew {
		liquid, vapor = m, e.molarMass
	}
	return Point{T: st.T, P: st.P, RhoLiquid: st.RhoLiquid * liquid, RhoVapor: st.RhoVapor * vapor}
}
