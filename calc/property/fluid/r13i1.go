package fluid

import "changeout/calc/property/helmholtz"

// LemmonSpan2015R13I1 is the equation of state for R-13I1 (trifluoroiodomethane): Eric W. Lemmon and Roland
// Span, Thermodynamic Properties of R-227ea, R-365mfc, R-115, and R13I1, J. Chem. Eng. Data (2016), doi
// 10.1021/acs.jced.5b00684.
var LemmonSpan2015R13I1 = helmholtz.Equation{
	Name: "R-13I1", CAS: "2314-97-8", Source: "lemmon-jced-2016-365227",
	GasConstant: 8.3144621, MolarMass: 0.1959104,
	ReducingT: 396.44, ReducingRho: 4430.6,
	CriticalT: 396.44, CriticalP: 3952566.071718672, CriticalRho: 4430.6,
	MinT: 120, MaxT: 420, MaxP: 50000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.12191, 0.25, 1, 0},
			{-3.08087, 1.125, 1, 0},
			{1.11307, 1.5, 1, 0},
			{-0.184885, 1.375, 2, 0},
			{0.110971, 0.25, 3, 0},
			{0.000325, 0.875, 7, 0},
			{0.333357, 0.625, 2, 1},
			{-0.0288288, 1.75, 5, 1},
			{-0.371554, 3.625, 1, 2},
			{-0.0997985, 3.625, 4, 2},
			{-0.0333205, 14.5, 3, 3},
			{0.0207882, 12, 4, 3},
		},
	},
	Ideal: helmholtz.Ideal{
		LogTau:   3,
		OffsetA1: -24.691504134838297,
		OffsetA2: 14.217528781905427,
		Einstein: []helmholtz.Einstein{ // n, θ
			{6.2641, 1.7505801634547473},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3953000, Tr: 396.44, MinT: 120, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-6.8642, 1},
		{1.7877, 1.5},
		{-1.0619, 1.9},
		{-2.1677, 3.8},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4430.6, Tr: 396.44, MinT: 120, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{18.776, 0.58},
		{-78.705, 0.8},
		{149.49, 1},
		{-130.69, 1.2},
		{43.856, 1.4},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4430.6, Tr: 396.44, MinT: 120, Terms: []helmholtz.AuxiliaryTerm{
		{-47.722, 0.65},
		{108.57, 0.8},
		{-169, 1.1},
		{171.54, 1.4},
		{-82.244, 1.75},
		{-40.758, 5.8},
		{-83.584, 13},
	}},
}
