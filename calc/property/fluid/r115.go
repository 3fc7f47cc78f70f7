package fluid

import "changeout/calc/property/helmholtz"

// LemmonSpan2015R115 is the equation of state for R-115 (chloropentafluoroethane): Eric W. Lemmon and Roland
// Span, Thermodynamic Properties of R-227ea, R-365mfc, R-115, and R13I1, J. Chem. Eng. Data (2016), doi
// 10.1021/acs.jced.5b00684.
var LemmonSpan2015R115 = helmholtz.Equation{
	Name: "R-115", CAS: "76-15-3", Source: "lemmon-jced-2016-365227",
	GasConstant: 8.3144621, MolarMass: 0.154466416,
	ReducingT: 353.1, ReducingRho: 3980,
	CriticalT: 353.1, CriticalP: 3129036.968278708, CriticalRho: 3980,
	MinT: 173.57, MaxT: 550, MaxP: 60000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.20873, 0.25, 1, 0},
			{-3.5446, 1.25, 1, 0},
			{0.745302, 1.5, 1, 0},
			{0.114128, 0.25, 3, 0},
			{0.000436572, 0.875, 7, 0},
			{0.988385, 2.375, 1, 1},
			{1.13878, 2, 2, 1},
			{-0.0215633, 2.125, 5, 1},
			{-0.63023, 3.5, 1, 2},
			{0.0167901, 6.5, 1, 2},
			{-0.149412, 4.75, 4, 2},
			{-0.0271153, 12.5, 2, 3},
		},
	},
	Ideal: helmholtz.Ideal{
		LogTau:   3,
		OffsetA1: -13.405002276849826,
		OffsetA2: 10.001553773783856,
		Einstein: []helmholtz.Einstein{ // n, θ
			{7.142, 0.8184650240725007},
			{10.61, 3.6845086377796656},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3129000, Tr: 353.1, MinT: 173.57, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.7016, 1},
		{4.3462, 1.5},
		{-4.002, 1.9},
		{-6.551, 5.2},
		{3.9278, 6},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3980, Tr: 353.1, MinT: 173.57, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{18.245, 0.556},
		{-57.373, 0.75},
		{78.511, 0.95},
		{-50.979, 1.2},
		{14.361, 1.5},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3980, Tr: 353.1, MinT: 173.57, Terms: []helmholtz.AuxiliaryTerm{
		{-10.179, 0.53},
		{49.312, 0.9},
		{-150.13, 1.2},
		{219.87, 1.5},
		{-129.65, 1.75},
		{-54.218, 6},
	}},
}
