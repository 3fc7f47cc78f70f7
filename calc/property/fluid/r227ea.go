package fluid

import "changeout/calc/property/helmholtz"

// LemmonSpan2015R227ea is the equation of state for R-227ea (1,1,1,2,3,3,3-heptafluoropropane): Eric W. Lemmon
// and Roland Span, Thermodynamic Properties of R-227ea, R-365mfc, R-115, and R13I1, J. Chem. Eng. Data (2016),
// doi 10.1021/acs.jced.5b00684.
var LemmonSpan2015R227ea = helmholtz.Equation{
	Name: "R-227ea", CAS: "431-89-0", Source: "lemmon-jced-2016-365227",
	GasConstant: 8.3144621, MolarMass: 0.17002886,
	ReducingT: 374.9, ReducingRho: 3495,
	CriticalT: 374.90000000000003, CriticalP: 2925242.2339447653, CriticalRho: 3495,
	MinT: 146.35, MaxT: 475, MaxP: 60000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{2.024341, 0.34, 1, 0},
			{-2.60593, 0.77, 1, 0},
			{0.4957216, 0.36, 2, 0},
			{-0.824082, 0.9, 2, 0},
			{0.06543703, 1, 4, 0},
			{-1.02461, 2.82, 1, 1},
			{0.6247065, 2.1, 3, 1},
			{0.2997521, 0.9, 6, 1},
			{-0.353917, 1.13, 6, 1},
			{-1.232043, 3.8, 2, 2},
			{-0.8824483, 2.75, 3, 2},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{0.1349661, 1.5, 1, 0.83, 1.72, 0.414, 1.13},
			{-0.2662928, 2.5, 2, 2.19, 5.2, 1.051, 0.71},
			{0.1764733, 2.5, 1, 2.44, 2.31, 1.226, 1.2},
			{0.01536163, 5.4, 1, 3.65, 1.02, 1.7, 1.7},
			{-0.004667185, 4, 4, 8.88, 5.63, 0.904, 0.546},
			{-11.70854, 1, 2, 8.23, 50.9, 1.42, 0.896},
			{0.9114512, 3.5, 1, 2.01, 1.56, 0.926, 0.747},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -15.8291124137,
		A2:     11.0879509962,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{11.43, 1.07495332088557},
			{12.83, 3.809015737530008},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 2925000, Tr: 374.9, MinT: 146.35, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.109161477135856, 0.987},
		{-0.43619976868074284, 1.312},
		{5.934481777381213, 1.927},
		{39.44778344273422, 3.476},
		{-41.38716737709299, 3.578},
		{-8.362365023243223, 2.248},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3495, Tr: 374.9, MinT: 146.35, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.037180636267061765, 0.12},
		{2.2565260411325867, 0.35},
		{16.777771835065064, 2.248},
		{-22.313716095609287, 2.467},
		{6.793310681390873, 3.208},
		{-10.89306852102585, 12.192},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3495, Tr: 374.9, MinT: 146.35, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-6.947050225285722, 0.434},
		{123.4065348806111, 0.676},
		{-122.5651518640378, 0.691},
		{-9.994885618440552, 4.287},
		{3.478879029818986, 4.613},
		{245.61726193605475, 19.251},
	}},
}
