package fluid

import "changeout/calc/property/helmholtz"

// TholLemmon2016 is the equation of state for R-1234ze(E) (trans-1,3,3,3-tetrafluoropropene): Monika Thol and
// Eric W. Lemmon, Equation of State for the Thermodynamic Properties of trans-1,3,3,3-Tetrafluoropropene
// [R-1234ze(E)], Int. J. Thermophys 37 (2016) 1-16, doi 10.1007/s10765-016-2040-6.
var TholLemmon2016 = helmholtz.Equation{
	Name: "R-1234ze(E)", CAS: "29118-24-9", Source: "thol-ijt-2016-r1234zee",
	GasConstant: 8.314472, MolarMass: 0.1140415928,
	ReducingT: 382.513, ReducingRho: 4290,
	CriticalT: 382.52, CriticalP: 3635376.3491348797, CriticalRho: 4290,
	MinT: 168.62, MaxT: 420, MaxP: 15000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.03982797, 1, 4, 0},
			{1.812227, 0.223, 1, 0},
			{-2.537512, 0.755, 1, 0},
			{-0.5333254, 1.24, 2, 0},
			{0.1677031, 0.44, 3, 0},
			{-1.323801, 2, 1, 2},
			{-0.6694654, 2.2, 3, 2},
			{0.8072718, 1.2, 2, 1},
			{-0.7740229, 1.5, 2, 2},
			{-0.01843846, 0.9, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{1.407916, 1.33, 1, 1, 1.21, 0.943, 0.728},
			{-0.4237082, 1.75, 1, 1.61, 1.37, 0.642, 0.87},
			{-0.2270068, 2.11, 3, 1.24, 0.98, 0.59, 0.855},
			{-0.805213, 1, 3, 9.34, 171, 1.2, 0.79},
			{0.00994318, 1.5, 2, 5.78, 47.4, 1.33, 1.3},
			{-0.008798793, 1, 1, 3.08, 15.4, 0.64, 0.71},
		},
	},
	Ideal: helmholtz.Ideal{
		LogTau:   3,
		OffsetA1: -12.5586602313194,
		OffsetA2: 8.79132625741231,
		Einstein: []helmholtz.Einstein{ // n, θ
			{9.3575, 1.34113088966911},
			{10.717, 5.15538034001459},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3636250, Tr: 382.52, MinT: 168.62, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.0007362365256237661, 0.052000000000000005},
		{-7.554649594027046, 1},
		{1.7584756226770677, 1.5},
		{-2.0617331468344315, 2.3333333333333335},
		{-0.9980943477495106, 4.333333333333333},
		{-3.038350758700181, 4.833333333333333},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4290, Tr: 382.52, MinT: 168.62, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{-8.42282936179494, 0.07},
		{35.592169315198404, 0.096},
		{-27.748444759203856, 0.10800000000000001},
		{3.0869391194586315, 0.383},
		{0.49297732386262993, 2.6666666666666665},
		{2436.2254360953007, 25},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4290, Tr: 382.52, MinT: 168.62, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{1.9861295422409955, 0.10500000000000001},
		{-3.601910664347684, 0.139},
		{110.97544193749978, 0.38749999999999996},
		{-113.63727224413014, 0.39449999999999996},
		{-1.7016720393939881, 1.3333333333333333},
		{-5.765500312051858, 4.166666666666667},
	}},
}
