// Package viscosity gives the dynamic viscosity of refrigerants as liquid and as gas.
//
// Two kinds of numbers come out, and a caller must tell them apart. A Correlation is an equation published for one fluid and
// fitted to measurements of it; there is one for the fluids and blends of All. Estimate is the residual entropy scaling of
// Martinek et al. (2025): one form for every fluid, with parameters fitted to measurements of the pure fluids and none for
// blends. Everything else has no viscosity here.
//
// How good: a correlation is as good as its paper says, mostly 1 to 3 %. The estimate was measured against the correlations of
// nine fluids and four blends (estimate_test.go in the package refrigerant), between -40 °C, or 0.6 of the critical temperature
// if that is higher, and 0.95 of it: liquids are within 9 %, on average 3 %; saturated vapours within 14 % up to 0.9 of the
// critical temperature, 21 % at 0.95, on average 4 %; the blends within 7 %. One measurement of each fluid lies within 13 %
// of what is given here, most within 5 %. The critical enhancement is left out: it is felt within 1 % of the critical
// temperature only, where no states are given.
//
// Functions of temperature, K, molar density, mol/m³, and composition; viscosity in Pa s. Nothing here allocates.
package viscosity

import "errors"

// Errors of this package; with an error there is no number.
var (
	// ErrRange: temperature, density or pressure lies outside the range of the equation.
	ErrRange = errors.New("viscosity: outside the range of the equation")
	// ErrUnknown: a component has no parameters for the estimate.
	ErrUnknown = errors.New("viscosity: not known")
)

// All lists the published correlations.
var All = []*Correlation{
	&TanakaSotani1996,
	&HuberLaesecke2006,
	&Huber2003,                  // R-134a
	&Krauss1996,                 // R-152a
	&Meng2012,                   // R-E170
	&Vogel1998,
	&Vogel1999,
	&Vogel2000,                  // R-600a
	&Fenghour1995,
	&Huber2009,
	&LemmonJacobsen2004Nitrogen,
	&LemmonJacobsen2004Air,
	&LemmonJacobsen2004Oxygen,
	&LemmonJacobsen2004Argon,
	&LaeseckeMuzny2017,
	&Geller2000R404A,
	&Geller2000R407C,
	&Geller2000R410A,
	&Geller2000R507A,
}

// Lookup finds the published correlation of a fluid or blend by designation, "R-134a"; nil if there is none.
func Lookup(name string) *Correlation {
	for _, c := range All {
		if c.Name == name {
			return c
		}
	}
	return nil
}

// gasConstant is R, J/(mol K), exact since 2019.
const gasConstant = 8.31446261815324

// Air gives the viscosity of dry air, Pa s, at temperature T, K, and absolute pressure p, Pa: LemmonJacobsen2004Air at the
// density of the ideal gas, which from 200 K to 500 K up to 1 MPa changes the viscosity by less than 0.1 %.
func Air(T, p float64) (float64, error) {
	if !(T >= 200 && T <= 500 && p >= 0 && p <= 1e6) {
		return 0, ErrRange
	}
	return LemmonJacobsen2004Air.At(T, p/(gasConstant*T))
}
