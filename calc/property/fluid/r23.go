package fluid

import "changeout/calc/property/helmholtz"

// Penoncello2003 is the equation of state for R-23 (trifluoromethane): Steven G. Penoncello, Eric W. Lemmon,
// Richard T Jacobsen and Zhengjun Shan, A Fundamental Equation for Trifluoromethane, J. Phys. Chem. Ref.
// Data 32 (2003) 1473-1499, doi 10.1063/1.1559671.
var Penoncello2003 = helmholtz.Equation{
	Name: "R-23", CAS: "75-46-7", Source: "penoncello-jpcrd-2003",
	GasConstant: 8.314472, MolarMass: 0.07001385,
	ReducingT: 299.293, ReducingRho: 7519.999999999999,
	CriticalT: 299.293, CriticalP: 4832000, CriticalRho: 7519.999999999999,
	MinT: 118.02, MaxT: 475, MaxP: 120000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{7.041529, 0.744, 1, 0},
			{-8.259512, 0.94, 1, 0},
			{0.00805304, 4.3, 1, 0},
			{-0.08617615, 1.46, 2, 0},
			{0.00633341, 0.68, 5, 0},
			{-0.1863285, 4.8, 1, 1},
			{0.328051, 1.5, 2, 1},
			{0.5191023, 2.07, 3, 1},
			{0.06916144, 0.09, 5, 1},
			{-0.005045875, 9.6, 1, 2},
			{-0.01744221, 0.19, 2, 2},
			{-0.05003972, 11.2, 2, 2},
			{0.04729813, 0.27, 4, 2},
			{-0.06164031, 1.6, 4, 2},
			{0.01583585, 10.3, 4, 2},
			{-0.00179579, 14, 2, 3},
			{-0.001099007, 15, 2, 4},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -8.31386064,
		A2:     6.55087253,
		LogTau: 2.999,
		Einstein: []helmholtz.Einstein{ // n, θ
			{2.371, 2.485858339486724},
			{3.237, 4.874821663052594},
			{2.61, 7.133477896242144},
			{0.8274, 16.4086697650797},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 4832000, Tr: 299.293, MinT: 118.02, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-9.122332373664854, 1.014},
		{3.016924110443656, 1.178},
		{-0.5967906858271617, 2.077},
		{9.579184584147457, 3.82},
		{-12.877039154975156, 3.866},
		{0.4375260704699433, 12.722},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 7519.999999999999, Tr: 299.293, MinT: 118.02, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{-3.3533086837494186, 0.212},
		{5.426490146945459, 0.25},
		{-0.27772667131392875, 0.358},
		{1.022401312663457, 0.841},
		{8.263580367250993, 9.921},
		{-245.19616208727248, 17.541},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 7519.999999999999, Tr: 299.293, MinT: 118.02, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-5.0704437393717505, 0.475},
		{4.7882747149545795, 0.852},
		{-23.58027456800221, 1.451},
		{23.333602102883393, 1.751},
		{-9.217295829606783, 2.978},
		{4.050830873748802, 14.67},
	}},
}
