package fluid

import "changeout/calc/property/helmholtz"

// LemmonSpan2006R116 is the equation of state for R-116 (hexafluoroethane): E.W. Lemmon and R. Span, Short
// Fundamental Equations of State for 20 Industrial Fluids, J. Chem. Eng. Data 51 (2006) 785-850, doi
// 10.1021/je050186n.
var LemmonSpan2006R116 = helmholtz.Equation{
	Name: "R-116", CAS: "76-16-4", Source: "lemmon-jced-2006",
	GasConstant: 8.314472, MolarMass: 0.13801182,
	ReducingT: 293.03, ReducingRho: 4444,
	CriticalT: 293.03000000000003, CriticalP: 3048000, CriticalRho: 4444,
	MinT: 173.1, MaxT: 425, MaxP: 50000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.1632, 0.25, 1, 0},
			{-2.8123, 1.125, 1, 0},
			{0.77202, 1.5, 1, 0},
			{-0.14331, 1.375, 2, 0},
			{0.10227, 0.25, 3, 0},
			{0.00024629, 0.875, 7, 0},
			{0.30893, 0.625, 2, 1},
			{-0.028499, 1.75, 5, 1},
			{-0.30343, 3.625, 1, 2},
			{-0.068793, 3.625, 4, 2},
			{-0.027218, 14.5, 3, 3},
			{0.010665, 12, 4, 3},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -10.7088650331,
		A2:     8.9148979056,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{2.4818, 0.6483977749718459},
			{7.0622, 2.122649558065727},
			{7.9951, 5.016551206361124},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3048000, Tr: 293.03, MinT: 173.1, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.187037699453901, 0.994},
		{1.1679020933888262, 1.389},
		{-6.070415204530583, 3.286},
		{4.623641136795351, 3.827},
		{-8.973143537957382, 6.643},
		{135.12331037950565, 12.512},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4444, Tr: 293.03, MinT: 173.1, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{9.032000509756, 0.481},
		{-9.139042989359975, 0.603},
		{4.35812391046927, 1.19},
		{-10.172985836578453, 3.414},
		{3844.9059901716128, 9.072},
		{-8268.03247405404, 10.136},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4444, Tr: 293.03, MinT: 173.1, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-3.2238759240828108, 0.42},
		{-2.882263657854913, 1.175},
		{8.52221952834173, 2.321},
		{-9.783624985988958, 2.482},
		{-19811843.680679295, 19.211},
		{33374328.47668358, 19.828},
	}},
}
