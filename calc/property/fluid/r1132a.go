package fluid

import "changeout/calc/property/helmholtz"

// Akasaka2026 is the equation of state for R-1132a (1,1-difluoroethene): Ryo Akasaka, Robert E. Low and Eric W.
// Lemmon, A Fundamental Equation of State for 1,1-Difluoroethene (R-1132a), International Journal of
// Thermophysics 47 (2026) 128, doi 10.1007/s10765-026-03794-8.
var Akasaka2026 = helmholtz.Equation{
	Name: "R-1132a", CAS: "75-38-7", Source: "akasaka-ijt-2026-r1132a",
	GasConstant: 8.314462618, MolarMass: 0.0640340864,
	ReducingT: 302.62, ReducingRho: 6510,
	CriticalT: 302.62, CriticalP: 4460494.408005374, CriticalRho: 6510,
	MinT: 111, MaxT: 400, MaxP: 30000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.0313181, 1, 4, 0},
			{0.7213967, 0.143, 1, 0},
			{0.1902012, 0.336, 2, 0},
			{0.0562612, 0.13, 3, 0},
			{-0.46220008385, 1, 1, 0},
			{-0.81782202222, 1.06, 2, 0},
		},
		Damped: []helmholtz.Damped{ // n, t, d, l, γ
			{-0.7436092, 1.29, 1, 1, 1.147},
			{-0.26903, 0.95, 1, 2, 0.9776},
			{-0.0883704, 5.738, 1, 3, 0.6937},
			{-0.0486345, 3.74, 2, 3, 0.389},
			{-0.0173098, 3.92, 3, 3, 0.373},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{-0.212, 1.17, 1, 0.53, 0, 1, 0.99},
			{-0.01, 1.2, 2, 0.3, 0, 1, 0.6},
			{-0.03, 1.1, 1, 0.552, 0, 1, 0.2},
			{-0.3435674, 1.45, 1, 1.154, 2.27, 1.35, -0.3},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -7.144967936410219,
		A2:     5.594245679502968,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{2.38, 2.1479082677945938},
			{9.45, 5.287158813032846},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 4460490, Tr: 302.62, MinT: 111, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.1905, 1},
		{4.2052, 1.5},
		{-3.7118, 1.8},
		{-10.196, 5.7},
		{8.2891, 6.2},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 6510, Tr: 302.62, MinT: 111, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{13.078, 0.56},
		{-27.352, 0.77},
		{50.703, 1.14},
		{-58.059, 1.41},
		{24.547, 1.63},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 6510, Tr: 302.62, MinT: 111, Terms: []helmholtz.AuxiliaryTerm{
		{-3.7298, 0.45},
		{-8.6869, 1.63},
		{-21.676, 4},
		{-49.333, 7.78},
		{-214.2, 18.3},
	}},
}
