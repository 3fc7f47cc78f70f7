package fluid

import "changeout/calc/property/helmholtz"

// AkasakaLemmon2022 is the equation of state for R-1233zd(E) (trans-1-chloro-3,3,3-trifluoropropene): Ryo
// Akasaka and Eric W. Lemmon, An International Standard Formulation for
// trans-1-Chloro-3,3,3-trifluoroprop-1-ene [R1233zd(E)] Covering Temperatures from the Triple-point Temperature
// to 450 K and Pressures up to 100 MPa, J. Phys. Chem. Ref. Data 51 (2022) 023101, doi 10.1063/5.0083026.
var AkasakaLemmon2022 = helmholtz.Equation{
	Name: "R-1233zd(E)", CAS: "102687-65-0", Source: "akasaka-jpcrd-2022-r1233zde",
	GasConstant: 8.314462618, MolarMass: 0.1304962,
	ReducingT: 438.86, ReducingRho: 3704,
	CriticalT: 438.86, CriticalP: 3582800, CriticalRho: 3704,
	MinT: 165.75, MaxT: 450, MaxP: 100000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.04394257, 1, 4, 0},
			{1.062919, 0.182, 1, 0},
			{-1.2879140374971, 0.865, 1, 0},
			{-0.8088618920845, 1.0924, 2, 0},
			{0.2372427, 0.49, 3, 0},
			{-1.9403, 1.958, 1, 2},
			{-2.831967, 2.05, 3, 2},
			{0.373421, 0.658, 2, 1},
			{-1.515798, 2.051, 2, 2},
			{-0.02755627, 0.862, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{4.24023, 1.852, 1, 1.532, 0.2912, 1.7171, 0.8834},
			{-0.03152671, 1.92, 2, 0.635, 0.6245, 0.63, 1.386},
			{-1.366494, 1.936, 3, 1.4056, 0.669, 0.7852, 0.5196},
			{2.647143, 1.515, 1, 1.451, 0.5798, 2.251, 1.133},
			{-2.325463, 2.668, 1, 1.395, 0.4643, 1.821, 0.9788},
			{-0.2541521, 1.755, 1, 2.259, 2.449, 2.074, 1.166},
			{0.1330834, 0.526, 1, 24.3, 1061.4, 1.0797, 0.9244},
			{-0.1569217, 2.98, 1, 23.6, 917.8, 1.084, 0.9372},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -17.291229931888,
		A2:     10.404947446884,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{13.7, 1.7340381898555348},
			{7.0974, 6.539670965683817},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3582800, Tr: 438.86, MinT: 165.75, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.4798, 1},
		{1.5791, 1.5},
		{-1.7959, 2.39},
		{-3.6716, 4.53},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3704, Tr: 438.86, MinT: 165.75, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{0.61448, 0.22},
		{2.6345, 0.55},
		{-1.316, 0.94},
		{0.86885, 1.4},
		{0.34071, 6.8},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3704, Tr: 438.86, MinT: 165.75, Terms: []helmholtz.AuxiliaryTerm{
		{-0.80785, 0.24},
		{-3.2355, 0.59},
		{-2.7567, 1},
		{-10.863, 2.2},
		{-33.456, 4.7},
		{-69.31, 9},
	}},
}
