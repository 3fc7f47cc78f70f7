package fluid

import "changeout/calc/property/helmholtz"

// LemmonJacobsen2000 is the equation of state for R-143a (1,1,1-trifluoroethane): Eric W. Lemmon and Richard T.
// Jacobsen, An International Standard Formulation for the Thermodynamic Properties of 1,1,1-Trifluoroethane
// (HFC-143a) for Temperatures From 161 to 450 K and Pressures to 50 MPa, J. Phys. Chem. Ref. Data 29 (2000)
// 521-552, doi 10.1063/1.1318909.
var LemmonJacobsen2000 = helmholtz.Equation{
	Name: "R-143a", CAS: "420-46-2", Source: "lemmonjacobsen-jpcrd-2000",
	GasConstant: 8.314472, MolarMass: 0.08404099999999999,
	ReducingT: 345.857, ReducingRho: 5128.45,
	CriticalT: 345.857, CriticalP: 3761000, CriticalRho: 5128.45,
	MinT: 161.34, MaxT: 650, MaxP: 150000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{7.7736443, 0.67, 1, 0},
			{-8.70185, 0.833, 1, 0},
			{-0.27779799, 1.7, 1, 0},
			{0.1460922, 1.82, 2, 0},
			{0.0089581616, 0.35, 5, 0},
			{-0.20552116, 3.9, 1, 1},
			{0.10653258, 0.95, 3, 1},
			{0.023270816, 0, 5, 1},
			{-0.013247542, 1.19, 7, 1},
			{-0.04279387, 7.2, 1, 2},
			{0.36221685, 5.9, 2, 2},
			{-0.25671899, 7.65, 2, 2},
			{-0.092326113, 7.5, 3, 2},
			{0.083774837, 7.45, 4, 2},
			{0.017128445, 15.5, 2, 3},
			{-0.01725611, 22, 3, 3},
			{0.0049080492, 19, 5, 3},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:             5.903087,
		A2:             7.307253,
		LogTau:         -1,
		OffsetA1:       -20.4128125563124,
		OffsetA2:       4.0000801727654,
		HeatCapacityT0: 273.15,
		HeatCapacity: []helmholtz.HeatCapacity{ // c, exponent of T
			{1.0578, 0.33},
		},
		Einstein: []helmholtz.Einstein{ // n, θ
			{4.4402, 5.178440800677737},
			{3.7515, 2.379596191489546},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3761000, Tr: 345.857, MinT: 161.34, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{0.002757544974908688, 0.286},
		{0.38770586469190393, 0.768},
		{-6.752272877216631, 0.952},
		{-0.5997730155885828, 2.711},
		{-3.2285390578912927, 4.226},
		{91.83265252025414, 18.933},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 5128.45, Tr: 345.857, MinT: 161.34, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.664780959919923, 0.381},
		{-0.254772168947589, 0.463},
		{97.84474908938734, 3.927},
		{-105.1304757408368, 4.049},
		{13272.94203979726, 16.046},
		{-116968.31229953805, 19.95},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 5128.45, Tr: 345.857, MinT: 161.34, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-6.218069939810391, 0.454},
		{4.25938169894919, 0.587},
		{-4.417810181991655, 1.058},
		{23.70234830311772, 3.611},
		{-50.98632502013336, 4.279},
		{29.108143754921628, 5.478},
	}},
}
