package fluid

import "changeout/calc/property/helmholtz"

// AkasakaLemmon2024 is the equation of state for R-1132(E) (trans-1,2-difluoroethene): Ryo Akasaka and Eric W.
// Lemmon, A Helmholtz Energy Equation of State for Calculations of Thermodynamic Properties of
// trans-1,2-Difluoroethene [R-1132(E)], International Journal of Thermophysics 45 (2024), doi
// 10.1007/s10765-024-03447-8.
var AkasakaLemmon2024 = helmholtz.Equation{
	Name: "R-1132(E)", CAS: "1630-78-0", Source: "akasaka-ijt-2024-r1132e",
	GasConstant: 8.314462618, MolarMass: 0.064035,
	ReducingT: 348.82, ReducingRho: 6793,
	CriticalT: 348.82, CriticalP: 5173700, CriticalRho: 6793,
	MinT: 240, MaxT: 400, MaxP: 6500000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.033144696, 1, 4, 0},
			{1.8996205, 0.32, 1, 0},
			{-2.19051728813, 0.71, 1, 0},
			{-0.8165909562367, 1.2, 2, 0},
			{0.22857476, 0.7, 3, 0},
			{-1.650708, 2.09, 1, 2},
			{-1.4409077, 2.24, 3, 2},
			{0.60536471, 1.17, 2, 1},
			{-0.66134087, 2.2, 2, 2},
			{-0.016787895, 0.823, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{0.31476822, 3.14, 1, 34.4, 1017, 1.0617, 0.9637},
			{-0.31991607, 4, 1, 34.28, 1009, 1.062, 0.9636},
			{2.2172762, 1.25, 1, 1.303, 1.011, 1.327, 0.8535},
			{-0.42786753, 1.476, 1, 1.855, 1.05, 1.05, 1.15},
			{-0.41335541, 1.5, 1, 1.29, 1.33, 1.157, 1.302},
			{0.13023087, 0.73, 1, 1.17, 1.61, 1.183, 1.54},
			{-0.30592804, 1.535, 1, 2.165, 0.8, 1.2, 0.786},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -8.596223247566009,
		A2:     6.440533955251798,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{4.896, 2.0927699099822257},
			{7.111, 6.4761194885614355},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 5173700, Tr: 348.82, MinT: 240, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.180377823189687, 1},
		{1.472354100239817, 1.5},
		{-3.3983617890948747, 2.95},
		{3.034633433716785, 5.8},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 6793, Tr: 348.82, MinT: 240, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{1.131854476313553, 0.293},
		{0.4168932831368899, 0.332},
		{4.13792874950683, 1.09},
		{-7.635583694878722, 1.55},
		{4.784010457127493, 1.9},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 6793, Tr: 348.82, MinT: 240, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-1.2334086828131732, 0.23},
		{-4.901403856265639, 0.824},
		{7.063613652530113, 2.72},
		{-291.7778908501901, 6},
		{343663.88153325015, 13},
	}},
}
