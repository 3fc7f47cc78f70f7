package fluid

import "changeout/calc/property/helmholtz"

// LemmonJacobsen2005 is the equation of state for R-125 (pentafluoroethane): Eric W. Lemmon and Richard T
// Jacobsen, A New Functional Form and New Fitting Techniques for Equations of State with Application to
// Pentafluoroethane (HFC-125), J. Phys. Chem. Ref. Data 34 (2005) 69-108, doi 10.1063/1.1797813.
var LemmonJacobsen2005 = helmholtz.Equation{
	Name: "R-125", CAS: "354-33-6", Source: "lemmon-jpcrd-2005",
	GasConstant: 8.314472, MolarMass: 0.1200214,
	ReducingT: 339.173, ReducingRho: 4779,
	CriticalT: 339.173, CriticalP: 3617700, CriticalRho: 4779,
	MinT: 172.52, MaxT: 500, MaxP: 60000000,
	Residual: helmholtz.Residual{
		Double: []helmholtz.Double{ // n, t, d, l, m
			{5.28076, 0.669, 1, 0, 0},
			{-8.67658, 1.05, 1, 0, 0},
			{0.7501127, 2.75, 1, 0, 0},
			{0.7590023, 0.956, 2, 0, 0},
			{0.01451899, 1, 4, 0, 0},
			{4.777189, 2, 1, 1, 0},
			{-3.330988, 2.75, 1, 1, 0},
			{3.775673, 2.38, 2, 1, 0},
			{-2.290919, 3.37, 2, 1, 0},
			{0.8888268, 3.47, 3, 1, 0},
			{-0.6234864, 2.63, 4, 1, 0},
			{-0.04127263, 3.45, 5, 1, 0},
			{-0.08455389, 0.72, 1, 2, 0},
			{-0.1308752, 4.23, 5, 2, 0},
			{0.008344962, 0.2, 1, 3, 0},
			{-1.532005, 4.5, 2, 2, 1.7},
			{-0.05883649, 29, 3, 3, 7},
			{0.02296658, 24, 5, 3, 6},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     37.2674,
		A2:     8.88404,
		LogTau: -1,
		Power: []helmholtz.IdealPower{ // n, t
			{-49.8651, -0.1},
		},
		Einstein: []helmholtz.Einstein{ // n, θ
			{2.303, 0.92578},
			{5.086, 2.22895},
			{7.3, 5.03283},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3617700, Tr: 339.173, MinT: 172.52, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{6.579940225415354, 0.885},
		{-13.12524401279829, 0.925},
		{-10.469172276861269, 3.474},
		{13.618968108873503, 3.812},
		{-8.0692357647322, 4.411},
		{55.965891794172045, 15.538},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4779, Tr: 339.173, MinT: 172.52, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.2016016101218163, 0.356},
		{9.66884730895765, 2.347},
		{-38.74092529625786, 3.224},
		{45.90185095955414, 4.03},
		{-68.77471029167359, 7.525},
		{3782.012676140688, 16.03},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4779, Tr: 339.173, MinT: 172.52, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-2.0301408267555248, 0.352},
		{-1.7694859385413004, 0.604},
		{-2.66520428063493, 1.327},
		{-2012.3802928260302, 9.866},
		{4435.166819598504, 10.986},
		{-67300.56720486972, 18.158},
	}},
}
