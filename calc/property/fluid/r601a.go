package fluid

import "changeout/calc/property/helmholtz"

// LemmonSpan2006R601a is the equation of state for R-601a (isopentane): E.W. Lemmon and R. Span, Short
// Fundamental Equations of State for 20 Industrial Fluids, J. Chem. Eng. Data 51 (2006) 785-850, doi
// 10.1021/je050186n.
var LemmonSpan2006R601a = helmholtz.Equation{
	Name: "R-601a", CAS: "78-78-4", Source: "lemmon-jced-2006",
	GasConstant: 8.314472, MolarMass: 0.07214878,
	ReducingT: 460.35, ReducingRho: 3271,
	CriticalT: 460.35, CriticalP: 3378000, CriticalRho: 3271,
	MinT: 112.65, MaxT: 500, MaxP: 1000000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.0963, 0.25, 1, 0},
			{-3.0402, 1.125, 1, 0},
			{1.0317, 1.5, 1, 0},
			{-0.1541, 1.375, 2, 0},
			{0.11535, 0.25, 3, 0},
			{0.00029809, 0.875, 7, 0},
			{0.39571, 0.625, 2, 1},
			{-0.045881, 1.75, 5, 1},
			{-0.35804, 3.625, 1, 2},
			{-0.10107, 3.625, 4, 2},
			{-0.035484, 14.5, 3, 3},
			{0.018156, 12, 4, 3},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     2.5822330405,
		A2:     1.1609103419,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{7.4056, 0.9601390246551537},
			{9.5772, 2.409036602584989},
			{15.765, 4.494406429890301},
			{12.119, 9.108287172803301},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3378000, Tr: 460.35, MinT: 112.65, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-8.6020554503746, 1.02},
		{4.597427498957886, 1.348},
		{-2.60028502453596, 1.678},
		{-3.205323615957216, 4.158},
		{0.893056340939176, 11.692},
		{-3.317655495530999, 14.291},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3271, Tr: 460.35, MinT: 112.65, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{1.90090139367392, 0.335},
		{0.5608577220827222, 0.852},
		{0.291792033747788, 2.009},
		{-0.22951340206902662, 4.806},
		{50.602054710991816, 14.584},
		{-59.20907806248923, 15.417},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3271, Tr: 460.35, MinT: 112.65, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.293842156388657, 0.192},
		{-3.3757748736495574, 0.477},
		{-2.160437982604624, 1.313},
		{-8.713491274417024, 5.085},
		{4.916720756118398, 6.047},
		{-0.9275607204099507, 14.238},
	}},
}
