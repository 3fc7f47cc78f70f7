package fluid

import "changeout/calc/property/helmholtz"

// Lemmon2013 is the equation of state for R-1270 (propene): E.W. Lemmon, U. Overhoff, M.O. McLinden and W.
// Wagner, Equation of state for propylene, Personal communication with Eric Lemmon (2010).
var Lemmon2013 = helmholtz.Equation{
	Name: "R-1270", CAS: "115-07-1", Source: "lemmon-propylene-2013",
	GasConstant: 8.314472, MolarMass: 0.04207974,
	ReducingT: 364.211, ReducingRho: 5457,
	CriticalT: 364.211, CriticalP: 4555000, CriticalRho: 5457,
	MinT: 87.953, MaxT: 575, MaxP: 1000000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.04341002, 1, 4, 0},
			{1.136592, 0.205, 1, 0},
			{-0.8528611, 0.56, 1, 0},
			{0.5216669, 0.676, 2, 0},
			{-1.382953, 1, 2, 0},
			{0.1214347, 0.5, 3, 0},
			{-0.5984662, 1, 1, 1},
			{-1.391883, 1.94, 1, 2},
			{-1.008434, 2, 3, 2},
			{0.1961249, 1, 2, 1},
			{-0.360693, 2.66, 2, 2},
			{-0.002407175, 0.83, 8, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{0.7432121, 1.6, 1, 1.07, 0.77, 1.21, 0.78},
			{0.1475162, 2.5, 1, 0.66, 0.83, 1.08, 0.82},
			{-0.02503391, 3, 2, 1.2, 0.607, 0.83, 1.94},
			{-0.2734409, 2.5, 3, 1.12, 0.4, 0.56, 0.69},
			{0.006378889, 2.72, 3, 1.47, 0.66, 1.22, 1.96},
			{0.0150294, 4, 2, 1.93, 0.07, 1.81, 1.3},
			{-0.03162971, 4, 1, 3.3, 3.1, 1.54, 0.38},
			{-0.04107194, 1, 2, 15.4, 387, 1.12, 0.91},
			{-1.190241, 4, 3, 6, 41, 1.4, 0.7},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:       4.9916462,
		A2:       -0.1709449,
		LogTau:   3,
		OffsetA1: -10.1739741651451,
		OffsetA2: 4.53493517654279,
		Einstein: []helmholtz.Einstein{ // n, θ
			{1.544, 0.8895942187358427},
			{4.013, 2.671528317376466},
			{8.923, 5.304617378387802},
			{6.02, 11.85301926630442},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 4555000, Tr: 364.211, MinT: 87.953, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-6.15754746767542, 0.985},
		{0.8043847738472081, 1.914},
		{-2.629218877933464, 3.354},
		{-20.055797246021456, 8.871},
		{23.93889034404838, 9.472},
		{-5.927221357425409, 12.201},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 5457, Tr: 364.211, MinT: 87.953, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{1.1500616940414559, 0.286},
		{0.7037673936905474, 0.521},
		{0.6950815609799416, 0.701},
		{1.8850870474961088, 5.657},
		{-2.1702211585216302, 6.864},
		{2.21238242151199, 15.279},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 5457, Tr: 364.211, MinT: 87.953, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-5.13562614673855, 0.42},
		{4.2053374767917395, 0.56},
		{-8.021462611933476, 1.051},
		{4.971018368148577, 1.479},
		{-4.664302402572978, 3.598},
		{-1.7964631156271889, 16.862},
	}},
}
