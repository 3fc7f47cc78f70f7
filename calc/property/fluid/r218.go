package fluid

import "changeout/calc/property/helmholtz"

// LemmonSpan2006R218 is the equation of state for R-218 (octafluoropropane): E.W. Lemmon and R. Span, Short
// Fundamental Equations of State for 20 Industrial Fluids, J. Chem. Eng. Data 51 (2006) 785-850, doi
// 10.1021/je050186n.
var LemmonSpan2006R218 = helmholtz.Equation{
	Name: "R-218", CAS: "76-19-7", Source: "lemmon-jced-2006",
	GasConstant: 8.314472, MolarMass: 0.18801933,
	ReducingT: 345.02, ReducingRho: 3340.000000000001,
	CriticalT: 345.02, CriticalP: 2640000, CriticalRho: 3340.0000000000005,
	MinT: 125.45, MaxT: 440, MaxP: 20000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.327, 0.25, 1, 0},
			{-3.8433, 1.25, 1, 0},
			{0.922, 1.5, 1, 0},
			{0.1136, 0.25, 3, 0},
			{0.00036195, 0.875, 7, 0},
			{1.1001, 2.375, 1, 1},
			{1.1896, 2, 2, 1},
			{-0.025147, 2.125, 5, 1},
			{-0.65923, 3.5, 1, 2},
			{-0.027969, 6.5, 1, 2},
			{-0.1833, 4.75, 4, 2},
			{-0.02163, 12.5, 2, 3},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -15.6587335175,
		A2:     11.4531412796,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{7.2198, 0.9448727609993625},
			{7.2692, 1.724537707958959},
			{11.599, 4.315691843951075},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 2640000, Tr: 345.02, MinT: 125.45, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-8.242713023595973, 1.008},
		{19.087798455338692, 1.599},
		{-17.233089915234846, 1.665},
		{-1.422792519033736, 2.07},
		{-3.3648176664863447, 4.314},
		{-10.213938754091759, 17.759},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3340.0000000000005, Tr: 345.02, MinT: 125.45, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{7.303753750603384, 0.517},
		{-7.730626041358162, 0.714},
		{3.674253188196436, 1.159},
		{-3.58395389631866, 3.98},
		{5.552496612344577, 5.488},
		{-211.54319300173208, 19.277},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3340.0000000000005, Tr: 345.02, MinT: 125.45, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{3.329585797093735, 0.372},
		{-6.844734619770494, 0.41},
		{-1.1111833788437069, 0.775},
		{-2.0711985469576675, 1.882},
		{-4.658013576000995, 4.237},
		{0.29142793495095165, 8.879},
	}},
}
