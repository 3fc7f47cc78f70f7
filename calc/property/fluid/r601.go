package fluid

import "changeout/calc/property/helmholtz"

// Thol2019 is the equation of state for R-601 (pentane): M. Thol, T. Uhde, E.W. Lemmon and R. Span, Fundamental
// Equations of State for Hydrocarbons. Part I. n-Pentane, Fluid Phase Equilib. (2019).
var Thol2019 = helmholtz.Equation{
	Name: "R-601", CAS: "109-66-0", Source: "thol-fpe-2019-alkanes-pentane",
	GasConstant: 8.3144598, MolarMass: 0.07214878,
	ReducingT: 469.7, ReducingRho: 3210,
	CriticalT: 469.70000000000005, CriticalP: 3367518.9947363394, CriticalRho: 3215.5775884221466,
	MinT: 143.47, MaxT: 650, MaxP: 780000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.042952795, 1, 4, 0},
			{2.4923999, 0.367, 1, 0},
			{-2.603872, 0.704, 1, 0},
			{-0.83829913, 1.04, 2, 0},
			{0.19223378, 0.494, 3, 0},
			{-3.0778196, 1.34, 1, 2},
			{-0.000324816, 0.688, 1, 3},
			{-1.6781976, 1.688, 3, 2},
			{0.6416425, 0.88, 2, 1},
			{-1.7300934, 1.357, 2, 2},
			{-0.017585046, 1.021, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{4.5708883, 0.979, 1, 1.01, 0.583, 1.06, 0.927},
			{-0.0758188, 2.966, 1, 4.77, 31.6, 1.37, 0.968},
			{-0.62122633, 1.35, 3, 1.13, 0.52, 1.09, 0.735},
			{-0.42413043, 0.664, 2, 1.08, 0.654, 1.19, 1.196},
			{-2.0418443, 0.937, 2, 1.12, 0.75, 0.83, 0.617},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     8.509252832282648,
		A2:     0.06430584062033375,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{6.618, 0.3278688524590164},
			{15.97, 2.8188205237385566},
			{15.29, 5.607834788162657},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3367500, Tr: 469.7, MinT: 143.47, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.3342, 1},
		{2.043, 1.5},
		{-2.196, 2.26},
		{-6.3246, 5.5},
		{5.429, 7.1},
		{-2.821, 11},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3210, Tr: 469.7, MinT: 143.47, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{3.5771, 0.43},
		{-4.653, 0.83},
		{8.517, 1.25},
		{-7.831, 1.72},
		{3.3029, 2.24},
		{0.5782, 17.5},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3210, Tr: 469.7, MinT: 143.47, Terms: []helmholtz.AuxiliaryTerm{
		{-3.5333, 0.428},
		{-8.4246, 1.484},
		{-25.474, 3.87},
		{-57.24, 7.86},
		{-34.6, 15.98},
		{-111.9, 17.33},
	}},
}
