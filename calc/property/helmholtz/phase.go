package helmholtz

// MaxComponents bounds the number of components of a mixture; no refrigerant of ASHRAE 34 has more than six.
const MaxComponents = 6

// Phase is one homogeneous phase: its state, and what a model says of it. An algorithm sets T and Rho and asks the model
// to evaluate; everything else is the answer. A Phase owns the model's scratch memory, so that nothing is allocated
// while an iteration runs; it belongs to one model and one goroutine.
//
// The answer is the residual Helmholtz energy density divided by RT,
//
//	F(T, ρ₁…ρ_N) = ρ αʳ,
//
// with the derivatives that phase equilibrium needs. Then
//
//	ln f_i = ln(ρ_i R T) + Grad[i]              fugacity
//	p/(RT) = ρ + Σ ρ_i Grad[i] - F              pressure
type Phase struct {
	T   float64                // K
	Rho [MaxComponents]float64 // mol/m³ of each component

	F     float64
	Grad  [MaxComponents]float64                // ∂F/∂ρ_i
	Hess  [MaxComponents][MaxComponents]float64 // ∂²F/∂ρ_i∂ρ_j
	FT    float64                               // ∂F/∂T at constant densities
	GradT [MaxComponents]float64                // ∂²F/∂ρ_i∂T

	Total   Derivatives // of αʳ of the mixture at constant composition
	Density float64     // Σ ρ_i, mol/m³
	Delta   float64     // reduced density; above 1 a phase is liquid-like, below 1 gas-like

	Tau, LnTau float64 // reduced inverse temperature

	Isochore Isochore
	Pure     [MaxComponents]Isotherm
	Pair     [MaxComponents * (MaxComponents - 1) / 2]Isotherm
}
