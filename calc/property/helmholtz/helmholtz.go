// Package helmholtz evaluates fundamental equations of state written as a reduced Helmholtz energy.
//
// Such an equation gives the molar Helmholtz energy a of a fluid as a function of two reduced variables,
//
//	a/(RT) = α⁰(τ, δ) + αʳ(τ, δ),   τ = Tr/T,   δ = ρ/ρr,
//
// α⁰ for the ideal gas and αʳ for the departure from it. Every other property is a derivative of these two, so this
// package holds nothing but the kinds of terms found in the literature with their exact derivatives. What a derivative
// means (pressure, fugacity, enthalpy) is the business of the packages that import this one.
//
// The general form and the names of the derivatives follow Span, "Multiparameter Equations of State", Springer 2000.
package helmholtz

// Equation is one published equation of state for a pure fluid. All quantities are SI and molar.
type Equation struct {
	Name        string  // designation used by the catalogue, "R-134a"
	CAS         string  // registry number, by which mixture parameters find their components
	Source      string  // key of the publication in the collection the coefficients were checked against
	GasConstant float64 // J/(mol K), the value the equation was fitted with
	MolarMass   float64 // kg/mol

	// Reducing state. It is the equation's own and may differ from the critical point.
	ReducingT   float64 // K
	ReducingRho float64 // mol/m³

	// Critical point as published.
	CriticalT   float64 // K
	CriticalP   float64 // Pa
	CriticalRho float64 // mol/m³

	MinT float64 // K, triple point or lower limit of the equation
	MaxT float64 // K, upper limit of the equation
	MaxP float64 // Pa, upper limit of the equation

	Residual Residual
	Ideal    Ideal

	// Auxiliary curves; they start iterations and are never an answer.
	VaporPressure, LiquidDensity, VaporDensity Auxiliary
}

// Derivatives holds a reduced Helmholtz energy and its derivatives, each multiplied by the powers of δ and τ that make
// it a plain sum over terms:
//
//	A = α, D = δ α_δ, T = τ α_τ, DD = δ² α_δδ, DT = δτ α_δτ, TT = τ² α_ττ.
type Derivatives struct {
	A, D, T, DD, DT, TT float64
}

// Add adds w times d.
func (s *Derivatives) Add(w float64, d *Derivatives) {
	s.A += w * d.A
	s.D += w * d.D
	s.T += w * d.T
	s.DD += w * d.DD
	s.DT += w * d.DT
	s.TT += w * d.TT
}
