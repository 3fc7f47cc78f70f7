package fluid

import "changeout/calc/property/helmholtz"

// McLindenAkasaka2020 is the equation of state for R-1336mzz(Z) (cis-1,1,1,4,4,4-hexafluoro-2-butene): Mark O.
// McLinden and Ryo Akasaka, Thermodynamic Properties of cis-1,1,1,4,4,4-Hexafluorobutene [R-1336mzz(Z)]: Vapor
// Pressure, (p, ρ, T) Behavior, and Speed of Sound Measurements and Equation of State, J. Chem. Eng. Data 65
// (2020) 4201-4214, doi 10.1021/acs.jced.9b01198.
var McLindenAkasaka2020 = helmholtz.Equation{
	Name: "R-1336mzz(Z)", CAS: "692-49-9", Source: "mclinden-jced-2020-r1336mzzz",
	GasConstant: 8.314462618, MolarMass: 0.164056,
	ReducingT: 444.5, ReducingRho: 3044,
	CriticalT: 444.5, CriticalP: 2903000, CriticalRho: 3044,
	MinT: 182.65, MaxT: 500, MaxP: 46000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.036673095, 1, 4, 0},
			{1.1956619, 0.26, 1, 0},
			{-1.8462376, 1, 1, 0},
			{-0.60599297, 1, 2, 0},
			{0.24973833, 0.515, 3, 0},
			{-1.2548278, 2.6, 1, 2},
			{-1.4389612, 3, 3, 2},
			{0.35168887, 0.74, 2, 1},
			{-0.82104051, 2.68, 2, 2},
			{-0.031747538, 0.96, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{1.0281388, 1.06, 1, 0.746, 1.118, 0.962, 1.225},
			{0.21094074, 3.4, 1, 2.406, 3.065, 1.111, 0.161},
			{0.701701, 1.617, 3, 0.7804, 0.7274, 1.135, 1.231},
			{0.24638528, 1.865, 2, 1.25, 0.8435, 1.163, 1.395},
			{-1.5295034, 1.737, 3, 0.6826, 0.6754, 0.969, 0.9072},
			{0.33424978, 3.29, 2, 1.677, 0.436, 1.286, 0.958},
			{1.011324, 1.242, 2, 1.762, 3.808, 1.274, 0.412},
			{-0.023457179, 2, 1, 21, 1888, 1.056, 0.944},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:             -22.613836589363007,
		A2:             14.685915746335379,
		LogTau:         -1,
		HeatCapacityT0: 298.15,
		HeatCapacity: []helmholtz.HeatCapacity{ // c, exponent of T
			{4, 0},
		},
		Einstein: []helmholtz.Einstein{ // n, θ
			{20.2, 736 / 444.5},
			{5.275, 2299 / 444.5},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 2903000, Tr: 444.5, MinT: 182.65, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.958, 1},
		{1.9584, 1.5},
		{-2.5856, 2.37},
		{-4.0215, 4.43},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3044, Tr: 444.5, MinT: 182.65, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.1782, 0.35},
		{0.68072, 0.878},
		{-0.17224, 1.58},
		{0.39416, 2.34},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3044, Tr: 444.5, MinT: 182.65, Terms: []helmholtz.AuxiliaryTerm{
		{-2.0679, 0.334},
		{-4.8241, 0.85},
		{-12.118, 2.18},
		{-38.146, 4.7},
		{-75.603, 9},
	}},
}
