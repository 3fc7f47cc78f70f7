package fluid

import "changeout/calc/property/helmholtz"

// Marx1992R12 is the equation of state for R-12 (dichlorodifluoromethane): Volker Marx, Andreas Pruss and
// Wolfgang Wagner, Neue Zustandsgleichung für R 12, R 22, R 11 und R 113 - Beschreibung des therodynamischen
// Zustandsverhaltens bei Temperaturen bis 525 K und Druücken bis 200 MPa, VDI Verlag (1992).
var Marx1992R12 = helmholtz.Equation{
	Name: "R-12", CAS: "75-71-8", Source: "marx-book-1992",
	GasConstant: 8.314471, MolarMass: 0.120913,
	ReducingT: 385.12, ReducingRho: 4672.781255944357,
	CriticalT: 385.12, CriticalP: 4136100.000000001, CriticalRho: 4672.781255944357,
	MinT: 116.099, MaxT: 525, MaxP: 200000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{2.075343402, 0.5, 1, 0},
			{-2.962525996, 1, 1, 0},
			{0.01001589616, 2, 1, 0},
			{0.01781347612, 2.5, 2, 0},
			{0.02556929157, -0.5, 4, 0},
			{0.002352142637, 0, 6, 0},
			{-8.495553314e-5, 0, 8, 0},
			{-0.01535945599, -0.5, 1, 1},
			{-0.2108816776, 1.5, 1, 1},
			{-0.01654228806, 2.5, 5, 1},
			{-0.0118131613, -0.5, 7, 1},
			{-4.16029583e-5, 0, 12, 1},
			{2.784861664e-5, 0.5, 12, 1},
			{1.618686433e-6, -0.5, 14, 1},
			{-0.1064614686, 4, 1, 2},
			{0.0009369665207, 4, 9, 2},
			{0.02590095447, 2, 1, 3},
			{-0.04347025025, 4, 1, 3},
			{0.1012308449, 12, 3, 3},
			{-0.1100003438, 14, 3, 3},
			{-0.003361012009, 0, 5, 3},
			{0.0003789190008, 14, 9, 4},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:       10.0100905,
		A2:       -4.66434985,
		LogTau:   3.00361975,
		OffsetA1: -24.7279903483588,
		OffsetA2: 14.0673715241366,
		Einstein: []helmholtz.Einstein{ // n, θ
			{3.16062357, 3.72204562},
			{0.371258136, 6.30985083},
			{3.56226039, 1.78037889},
			{2.12152336, 1.07087607},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 4136100.0000000005, Tr: 385.12, MinT: 116.099, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.4180899251614923, 0.894},
		{-6.821426208906223, 1.009},
		{1.4450198472690974, 1.274},
		{-1.4837613030063526, 3},
		{-2.1731387101462754, 4.927},
		{-5.72739817030707, 19.696},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4672.781255944357, Tr: 385.12, MinT: 116.099, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.6029953147390845, 0.391},
		{-1.289157172326326, 0.803},
		{1.8650658616334526, 1.301},
		{-0.7403291941448226, 2.566},
		{24.389351468278143, 12.555},
		{-67.79326638866661, 16.134},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4672.781255944357, Tr: 385.12, MinT: 116.099, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.9660647155295505, 0.499},
		{23.959910083444367, 0.743},
		{-23.82796401904973, 0.857},
		{3.215927599962643, 1.368},
		{-4.437766797843962, 3.716},
		{-3.5598094489847374, 14.833},
	}},
}
