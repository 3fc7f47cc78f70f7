package fluid

import "changeout/calc/property/helmholtz"

// Marx1992R113 is the equation of state for R-113 (1,1,2-trichloro-1,2,2-trifluoroethane): Volker Marx, Andreas
// Pruss and Wolfgang Wagner, Neue Zustandsgleichung für R 12, R 22, R 11 und R 113 - Beschreibung des
// therodynamischen Zustandsverhaltens bei Temperaturen bis 525 K und Druücken bis 200 MPa, VDI Verlag (1992).
var Marx1992R113 = helmholtz.Equation{
	Name: "R-113", CAS: "76-13-1", Source: "marx-book-1992",
	GasConstant: 8.314471, MolarMass: 0.187375,
	ReducingT: 487.21, ReducingRho: 2988.659106070714,
	CriticalT: 487.21000000000004, CriticalP: 3392200, CriticalRho: 2988.6591060707137,
	MinT: 236.93, MaxT: 525, MaxP: 200000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.8432092286, 0.5, 1, 0},
			{-2.019185967, 1.5, 1, 0},
			{0.2920612996, 1.5, 2, 0},
			{0.05323107661, -0.5, 3, 0},
			{0.003214971931, 2, 4, 0},
			{4.667858574e-5, 0, 8, 0},
			{-1.227522799e-6, 3, 8, 0},
			{0.8167288718, -0.5, 3, 1},
			{-1.340790803, 0, 3, 1},
			{0.4065752705, 2, 3, 1},
			{-0.1534754634, 1.5, 5, 1},
			{-0.02414435149, 6, 1, 2},
			{-0.02113056197, 2, 2, 2},
			{-0.03565436205, 10, 2, 2},
			{0.001364654968, 6, 9, 2},
			{-0.01251838755, 18, 3, 3},
			{-0.001385761351, 15, 7, 3},
			{0.0007206335486, 33, 8, 4},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:       13.1479282,
		A2:       -5.4053715,
		LogTau:   2.9999966,
		OffsetA1: -35.0036997726949,
		OffsetA2: 17.3478156256033,
		Einstein: []helmholtz.Einstein{ // n, θ
			{12.4464495, 1.04971737},
			{2.72181845, 3.29788641},
			{0.692712415, 8.62650812},
			{3.32248298, 3.29670446},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3392200, Tr: 487.21, MinT: 236.93, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.513797278929454, 1},
		{1.5095312092676123, 1.296},
		{-1.9699733346499353, 2.592},
		{1.7578730760232852, 3.34},
		{-4.592035089583662, 4.285},
		{-0.41772646096774985, 10.465},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 2988.6591060707137, Tr: 487.21, MinT: 236.93, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.1209299719499692, 0.344},
		{0.306929802490948, 0.621},
		{107.2647341968565, 4.847},
		{-840.5575578947821, 6.255},
		{1870.9104273285336, 7.527},
		{-1779.2226056266804, 9.355},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 2988.6591060707137, Tr: 487.21, MinT: 236.93, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-53.51591930070364, 0.547},
		{1179.0791709251655, 0.639},
		{-1132.4832595523026, 0.644},
		{1.7901473308750928, 1.238},
		{-6.764890888618531, 3.962},
		{2.256439191313591, 5.593},
	}},
}
