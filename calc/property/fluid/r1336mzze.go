package fluid

import "changeout/calc/property/helmholtz"

// Akasaka2023 is the equation of state for R-1336mzz(E) (trans-1,1,1,4,4,4-hexafluoro-2-butene): Ryo Akasaka,
// Marcia L. Huber, Luke Simoni and Eric W. Lemmon, A Helmholtz Energy Equation of State for
// trans-1,1,1,4,4,4-Hexafluoro-2-butene [R-1336mzz(E)], International Journal of Thermophysics 44 (2023)
// 1003-1013, doi 10.1007/s10765-022-03143-5.
var Akasaka2023 = helmholtz.Equation{
	Name: "R-1336mzz(E)", CAS: "66711-86-2", Source: "akasaka-ijt-2023",
	GasConstant: 8.314462618, MolarMass: 0.1640491,
	ReducingT: 403.53, ReducingRho: 3129,
	CriticalT: 403.53, CriticalP: 2779002.2154927077, CriticalRho: 3129,
	MinT: 200.15, MaxT: 410, MaxP: 5700000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.08297005, 1, 4, 0},
			{1.1213658, 0.117, 1, 0},
			{-2.0279038680756, 1, 1, 0},
			{-0.3486706213113, 1, 2, 0},
			{0.13227952, 0.413, 3, 0},
			{-1.3751844, 2.44, 1, 2},
			{-1.3939029, 2.51, 3, 2},
			{0.11190839, 0.535, 2, 1},
			{-0.90635088, 1.927, 2, 2},
			{-0.050014594, 1.186, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{1.7953748, 0.876, 1, 1.234, 1.237, 1.21, 1.23},
			{2.0579712, 1.23, 1, 1.34, 0.384, 2, 0.751},
			{-1.0433081, 0.875, 3, 1.13, 1.24, 1.216, 0.522},
			{-1.2459808, 0.5181, 2, 1.15, 0.46, 2.27, 0.32},
			{-0.49712249, 0.86, 2, 1.3, 1.326, 1.26, 1.22},
		},
	},
	Ideal: helmholtz.Ideal{
		LogTau: 3,
		Power: []helmholtz.IdealPower{ // n, t
			{-17.583859885194016, 0},
			{11.524417012948918, 1},
		},
		Einstein: []helmholtz.Einstein{ // n, θ
			{15.891, 1.3629717740936238},
			{14.143, 8.609025351275},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 2779000, Tr: 403.53, MinT: 100, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-8.2611, 1},
		{3.9076, 1.5},
		{-3.9675, 1.88},
		{-6.1565, 4.47},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3129, Tr: 403.53, MinT: 100, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.1958, 0.347},
		{6.4706, 1.42},
		{-13.191, 1.82},
		{7.7906, 2.232},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3129, Tr: 403.53, MinT: 100, Terms: []helmholtz.AuxiliaryTerm{
		{-3.1511, 0.387},
		{-9.2173, 1.34},
		{-32.976, 3.77},
		{-86.791, 7.85},
	}},
}
