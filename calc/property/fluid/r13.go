package fluid

import "changeout/calc/property/helmholtz"

// Platzer1990R13 is the equation of state for R-13 (chlorotrifluoromethane): B. Platzer, A. Polt and G. Maurer,
// Thermophysical Properties of Refrigerants, Springer-Verlag (1990), doi 10.1007/978-3-662-02608-3.
var Platzer1990R13 = helmholtz.Equation{
	Name: "R-13", CAS: "75-72-9", Source: "platzer-book-1990",
	GasConstant: 8.31451, MolarMass: 0.104459,
	ReducingT: 301.88, ReducingRho: 5570.98,
	CriticalT: 301.88, CriticalP: 3879000, CriticalRho: 5580,
	MinT: 92, MaxT: 450, MaxP: 50000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.761143010172, 0, 1, 0},
			{-1.94465098795, 1, 1, 0},
			{0.940938700406, 2, 1, 0},
			{-1.08107050239, 3, 1, 0},
			{0.117501564976, 4, 1, 0},
			{0.228305167217, 0, 2, 0},
			{-0.403338888789, 1, 2, 0},
			{0.37558571342, 2, 2, 0},
			{-0.0617543677315, 0, 3, 0},
			{0.170326226881, 1, 3, 0},
			{0.0536612457231, 0, 4, 0},
			{-0.151603010301, 1, 4, 0},
			{0.0252033265074, 1, 5, 0},
			{-0.62834655992, 3, 0, 0},
			{0.792797111341, 4, 0, 0},
			{-0.134038992692, 5, 0, 0},
		},
		Damped: []helmholtz.Damped{ // n, t, d, l, γ
			{-0.0399863840975, 3, 2, 2, 0.98230055},
			{0.436410910529, 4, 2, 2, 0.98230055},
			{-0.448724904991, 5, 2, 2, 0.98230055},
			{0.62834655992, 3, 0, 2, 0.98230055},
			{-0.792797111341, 4, 0, 2, 0.98230055},
			{0.134038992692, 5, 0, 2, 0.98230055},
		},
	},
	Ideal: helmholtz.Ideal{
		LogTau:         -1,
		OffsetA1:       -17.2649115260318,
		OffsetA2:       13.7187307950669,
		HeatCapacityT0: 298.15,
		HeatCapacity: []helmholtz.HeatCapacity{ // c, exponent of T
			{2.4766458, 0},
			{0.018074269, 1},
			{2.1945535e-5, 2},
			{-8.5810657e-8, 3},
			{6.3199171e-11, 4},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3879000, Tr: 301.88, MinT: 98.15, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.0007921318343566953, 0.183},
		{-5.996195643967384, 0.974},
		{-0.19260162903514982, 1.79},
		{-3.374201633035978, 4.508},
		{5653.865616057301, 17.458},
		{-6159.322602726868, 17.588},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 5580, Tr: 301.88, MinT: 98.15, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{0.5805008657064199, 0.12},
		{110.54560557681266, 1.19},
		{-110.25028269746312, 1.219},
		{87.64846842137001, 6.955},
		{-146.66580327727502, 8.289},
		{669.8318898661124, 17.746},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 5580, Tr: 301.88, MinT: 98.15, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-44.134501251031836, 0.187},
		{123.82270708407191, 0.227},
		{-83.62522157903703, 0.259},
		{-2.647160291881159, 2.009},
		{-5.449711245985369, 7.396},
		{-77.38203576950463, 14.878},
	}},
}
