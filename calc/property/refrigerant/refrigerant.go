// Package refrigerant is the catalogue of refrigerants and the door to their properties.
//
// A Refrigerant joins what a standard says about it (designation, composition, safety class, concentration limits,
// global warming potential) with what its equations of state say (saturation, densities). Start at Lookup or All.
//
// Everything is SI: K, Pa absolute, kg/m³, kg/mol. Outside its range a function answers with an error, never with an
// extrapolated number. Below the range the equations were not fitted; above 0.98 of the critical temperature the two
// phases become alike and neither a gauge nor a technician can use the answer.
package refrigerant

import "errors"

// Read says how certain a printed fact is; the words are those of the bibliography.
type Read string

const (
	Printed   Read = "print"     // read in the source itself
	Secondary Read = "secondary" // read in a source that restates it
	Library   Read = "library"   // taken from a reference library, version named at the value
	Memory    Read = "memory"    // recalled: verify before use
	Computed  Read = "computed"  // computed here from values that carry their own mark
)

// Fact is one published number with its provenance. The zero Fact means "not known": test Known first.
type Fact struct {
	Value  float64
	Read   Read
	Source string // key of the bibliography
}

// Known tells whether the fact has a value.
func (f Fact) Known() bool { return f.Read != "" }

// GWP is a 100-year global warming potential relative to carbon dioxide, with the list it was taken from.
type GWP struct {
	Fact
	List string // "AR4", "AR5", "AR6" or "EU 2024/573"
}

// Component is one constituent of a refrigerant.
type Component struct {
	Name         string  // designation, "R-32"
	MassFraction float64 // kg/kg, nominal composition
	MoleFraction float64 // mol/mol, nominal composition
}

// Refrigerant is one entry of the catalogue. Its methods give the saturation states.
type Refrigerant struct {
	Name       string // designation as ASHRAE 34 writes it, "R-410A"
	Class      string // ASHRAE 34 safety class, "A1", "A2L"…; "" = not known
	ClassRead  Read
	ClassKey   string      // source key of the class
	Components []Component // one entry for a pure fluid
	RCL        Fact        // refrigerant concentration limit, kg/m³
	LFL        Fact        // lower flammability limit, kg/m³
	GWPs       []GWP
	// ChargeAsLiquid is true for a blend: vapour drawn from a cylinder has another composition than the liquid.
	ChargeAsLiquid bool
	MolarMass      float64 // kg/mol
	Critical       State   // critical point of the equation of state (blends: of the mixture model)

	engine *engine
}

// State names one temperature and pressure with its density.
type State struct {
	T   float64 // K
	P   float64 // Pa absolute
	Rho float64 // kg/m³
}

// Point is one saturation state.
//
// At a bubble point RhoLiquid is the liquid of the overall composition and RhoVapor the first vapour; at a dew point
// RhoVapor is the vapour of the overall composition and RhoLiquid the first drop. For a pure fluid the two coincide.
type Point struct {
	T         float64 // K
	P         float64 // Pa absolute
	RhoLiquid float64 // kg/m³
	RhoVapor  float64 // kg/m³
}

// Errors a property call can give. Test with errors.Is.
var (
	// ErrRange: the temperature or pressure lies outside the range in which this refrigerant's states are given.
	ErrRange = errors.New("refrigerant: outside the range of the equation of state")
	// ErrNotLiquid: the state asked for is not a liquid (pressure below the bubble pressure at that temperature).
	ErrNotLiquid = errors.New("refrigerant: not liquid at this temperature and pressure")
	// ErrSolve: the equations were not solved to tolerance. No number is given rather than a doubtful one.
	ErrSolve = errors.New("refrigerant: no converged state")
)
