package viscosity

import "math"

// Huber2009 is the correlation for R-718 (water and steam): IAPWS R12-08, equations 10 to 12 with tables 1 and 2, without the
// critical enhancement; the paper is M. L. Huber et al., J. Phys. Chem. Ref. Data 38 (2009) 101. With T̄ = T/647.096 K and
// ρ̄ = ρ/(322 kg/m³),
//
//	η = 100 µPa s √T̄ / Σ H_i T̄^-i  exp(ρ̄ Σ_i (1/T̄ - 1)^i Σ_j H_ij (ρ̄ - 1)^j).
var Huber2009 = Correlation{
	Name: "R-718", Source: "iapws-r12-08", MinT: 273.15, MaxT: 1173.15, MaxP: 100e6,
	Epsilon: 1,
	special: huber2009,
}

// waterTerms holds H_ij, i down and j across.
var waterTerms = [6][7]float64{
	{5.20094e-1, 2.22531e-1, -2.81378e-1, 1.61913e-1, -3.25372e-2, 0, 0},
	{8.50895e-2, 9.99115e-1, -9.06851e-1, 2.57399e-1, 0, 0, 0},
	{-1.08374, 1.88797, -7.72479e-1, 0, 0, 0, 0},
	{-2.89555e-1, 1.26613, -4.89837e-1, 0, 6.98452e-2, 0, -4.35673e-3},
	{0, 0, -2.57040e-1, 0, 0, 8.72102e-3, 0},
	{0, 1.20573e-1, 0, 0, 0, 0, -5.93264e-4},
}

func huber2009(T, rho float64) (dilute, residual float64) {
	const mass = 0.018015268 // kg/mol
	t, d := T/647.096, rho*mass/322
	dilute = 100 * math.Sqrt(t) / polynomial([]float64{1.67752, 2.20462, 0.6366564, -0.241605}, 1/t)
	var h float64
	for i := len(waterTerms) - 1; i >= 0; i-- {
		h = h*(1/t-1) + polynomial(waterTerms[i][:], d-1)
	}
	return dilute, dilute * (math.Exp(d*h) - 1)
}
