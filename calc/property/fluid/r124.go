package fluid

import "changeout/calc/property/helmholtz"

// DeVries1995 is the equation of state for R-124 (2-chloro-1,1,1,2-tetrafluoroethane): B. de Vries, R.
// Tillner-Roth and H.D. Baehr, Thermodynamic Properties of HCFC 124, 19th International Congress of
// Refrigeration, The Hague, The Netherlands (1995).
var DeVries1995 = helmholtz.Equation{
	Name: "R-124", CAS: "2837-89-0", Source: "devries-icr-1995",
	GasConstant: 8.314471, MolarMass: 0.1364762,
	ReducingT: 395.425, ReducingRho: 4103.279546177282,
	CriticalT: 395.425, CriticalP: 3624295, CriticalRho: 4103.279546177282,
	MinT: 75, MaxT: 470, MaxP: 40000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{-0.01262962, 2, 1, 0},
			{2.168373, 0.5, 1, 0},
			{-3.330033, 1, 1, 0},
			{0.1610361, 0.5, 2, 0},
			{-9.666145e-5, 2.5, 2, 0},
			{0.0119131, -1, 3, 0},
			{-0.002880217, 1, 5, 0},
			{0.001681346, 0, 6, 0},
			{1.594968e-5, -0.5, 8, 0},
			{0.1289674, 1.5, 2, 1},
			{1.182213e-5, 1, 12, 1},
			{-0.4713997, 2.5, 1, 2},
			{-0.2412873, -0.25, 1, 2},
			{0.6868066, 1, 1, 2},
			{-0.08621095, 5, 1, 2},
			{4.728645e-6, 2, 15, 2},
			{0.01487933, 15, 3, 3},
			{-0.03001338, 20, 3, 3},
			{0.001849606, 15, 4, 4},
			{0.0004126073, 45, 9, 4},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:       -11.669406,
		A2:       9.8760443,
		LogTau:   2.175638,
		OffsetA1: -0.000144036507408073,
		OffsetA2: 7.30088431548676e-5,
		Power: []helmholtz.IdealPower{ // n, t
			{-7.389735, -1},
			{0.8736831, -2},
			{-0.1115133, -3},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3624295, Tr: 395.425, MinT: 120, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-5.532034162429256, 1.003},
		{-4.742002285997961, 1.051},
		{4.083301102214, 1.163},
		{-0.8556260869752595, 2.188},
		{-3.759805971191399, 4.015},
		{-5.094637151194883, 19.693},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4103.279546177282, Tr: 395.425, MinT: 120, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{9.076759200951095, 0.482},
		{-17.685013904231155, 0.651},
		{59.69226551115479, 0.881},
		{-48.46415018361892, 0.914},
		{0.6023234565910854, 5.001},
		{-1.0939055527121821, 10.577},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4103.279546177282, Tr: 395.425, MinT: 120, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-3.6411060779677857, 0.415},
		{0.3822304251070335, 0.5},
		{-19.603560148262865, 1.704},
		{181.0410898999192, 2.307},
		{-168.52216602298836, 2.394},
		{-2.5180916684231893, 13.161},
	}},
}
