package fluid

import "changeout/calc/property/helmholtz"

// LemmonSpan2006R142b is the equation of state for R-142b (1-chloro-1,1-difluoroethane): E.W. Lemmon and R.
// Span, Short Fundamental Equations of State for 20 Industrial Fluids, J. Chem. Eng. Data 51 (2006) 785-850,
// doi 10.1021/je050186n.
var LemmonSpan2006R142b = helmholtz.Equation{
	Name: "R-142b", CAS: "75-68-3", Source: "lemmon-jced-2006",
	GasConstant: 8.314472, MolarMass: 0.10049503,
	ReducingT: 410.26, ReducingRho: 4438,
	CriticalT: 410.26, CriticalP: 4055000, CriticalRho: 4438,
	MinT: 142.72, MaxT: 470, MaxP: 60000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.0038, 0.25, 1, 0},
			{-2.7662, 1.25, 1, 0},
			{0.42921, 1.5, 1, 0},
			{0.081363, 0.25, 3, 0},
			{0.00024174, 0.875, 7, 0},
			{0.48246, 2.375, 1, 1},
			{0.75542, 2, 2, 1},
			{-0.00743, 2.125, 5, 1},
			{-0.4146, 3.5, 1, 2},
			{-0.016558, 6.5, 1, 2},
			{-0.10644, 4.75, 4, 2},
			{-0.021704, 12.5, 2, 3},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -12.6016527149,
		A2:     8.3160183265,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{5.0385, 1.152927411885146},
			{6.8356, 3.061473212109394},
			{4.0591, 6.086384244137864},
			{2.8136, 16.67235411690148},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 4055000, Tr: 410.26, MinT: 142.72, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.053583364113904, 0.993},
		{1.620065366585568, 1.485},
		{-3.5992302698185896, 2.56},
		{30.256775801825796, 3.61},
		{-31.3125464775288, 3.733},
		{-0.7436150349113302, 14.147},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4438, Tr: 410.26, MinT: 142.72, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{-9.714230485565954, 0.247},
		{11.7638029884687, 0.26},
		{2.4153342114392036, 1.896},
		{-3.0195139591161673, 3.015},
		{8.696072645236315, 7.62},
		{-74.7964429355484, 15.172},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4438, Tr: 410.26, MinT: 142.72, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{0.07060973078462121, 0.092},
		{-0.1101282083100916, 0.165},
		{-2.9297126160159235, 0.398},
		{-2.550579057791659, 1.037},
		{0.8675055868776257, 3.911},
		{-5.524200468568231, 4.103},
	}},
}
