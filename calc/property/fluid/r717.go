package fluid

import "changeout/calc/property/helmholtz"

// Gao2020 is the equation of state for R-717 (ammonia): K. Gao, J. Wu, I. H. Bell and E. W. Lemmon,
// Thermodynamic Properties of Ammonia for Temperatures from the Melting Line to 725 K and Pressures to 1000
// MPa, J. Phys. Chem. Ref. Data 49 (2020) 013102, doi 10.1063/1.5128269.
//
// Volume, page and DOI are from memory.
var Gao2020 = helmholtz.Equation{
	Name: "R-717", CAS: "7664-41-7", Source: "gao-jpcrd-2020",
	GasConstant: 8.3144598, MolarMass: 0.01703052,
	ReducingT: 405.56, ReducingRho: 13696,
	CriticalT: 405.56, CriticalP: 11363391.162815327, CriticalRho: 13696,
	MinT: 195.49, MaxT: 725, MaxP: 1000000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.006132232, 1, 4, 0},
			{1.7395866, 0.382, 1, 0},
			{-2.2261792, 1, 1, 0},
			{-0.30127553, 1, 2, 0},
			{0.08967023, 0.677, 3, 0},
			{-0.076387037, 2.915, 3, 2},
			{-0.84063963, 3.51, 2, 2},
			{-0.27026327, 1.063, 3, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{6.212578, 0.655, 1, 0.42776, 1.708, 1.036, -0.0726},
			{-5.7844357, 1.3, 1, 0.6424, 1.4865, 1.2777, -0.1274},
			{2.4817542, 3.1, 1, 0.8175, 2.0915, 1.083, 0.7527},
			{-2.3739168, 1.4395, 2, 0.7995, 2.43, 1.2906, 0.57},
			{0.01493697, 1.623, 2, 0.91, 0.488, 0.928, 2.2},
			{-3.7749264, 0.643, 1, 0.3574, 1.1, 0.934, -0.243},
			{0.0006254348, 1.13, 3, 1.21, 0.85, 0.919, 2.96},
			{-1.7359e-5, 4.5, 3, 4.14, 1.14, 1.852, 3.02},
			{-0.13462033, 1, 1, 22.56, 945.64, 1.05897, 0.9574},
			{0.07749072839, 4, 1, 22.68, 993.85, 1.05277, 0.9576},
		},
		GaoB: []helmholtz.GaoB{ // n, t, d, η, β, γ, ε, b
			{-1.6909858, 4.3315, 1, 2.8452, 0.3696, 1.108, 0.4478, 1.244},
			{0.93739074, 4.015, 1, 2.8342, 0.2962, 1.313, 0.44689, 0.6826},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -6.59406093943886,
		A2:     5.60101151987913,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{2.224, 4.0585856593352405},
			{3.148, 9.776605187888352},
			{0.9579, 17.829667620080876},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 11365000, Tr: 405.56, MinT: 195.495, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.2257, 1},
		{1.4263, 1.5},
		{-0.59642, 2},
		{-2.798, 3.6},
		{-3.7869, 15.5},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 13696, Tr: 405.56, MinT: 195.495, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.447, 0.384},
		{5.8341, 1.65},
		{-25.944, 2.2},
		{53.383, 2.75},
		{-54.411, 3.35},
		{22.771, 4},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 13696, Tr: 405.56, MinT: 195.495, Terms: []helmholtz.AuxiliaryTerm{
		{-0.053296, 0.14},
		{-3.4589, 0.44},
		{-6.7572, 1.314},
		{-17.26, 3.225},
		{-43.12, 6.4},
		{-115.18, 14},
	}},
}
