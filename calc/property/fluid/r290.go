package fluid

import "changeout/calc/property/helmholtz"

// Lemmon2009 is the equation of state for R-290 (propane): Eric W. Lemmon, Mark O. McLinden and Wolfgang
// Wagner, Thermodynamic Properties of Propane. III. A Reference Equation of State for Temperatures from the
// Melting Line to 650 K and Pressures up to 1000 MPa, J. Chem. Eng. Data 54 (2009) 3141-3180, doi
// 10.1021/je900217v.
var Lemmon2009 = helmholtz.Equation{
	Name: "R-290", CAS: "74-98-6", Source: "lemmon-jced-2009",
	GasConstant: 8.314472, MolarMass: 0.04409562,
	ReducingT: 369.89, ReducingRho: 5000.000000000001,
	CriticalT: 369.89, CriticalP: 4251200, CriticalRho: 5000.000000000001,
	MinT: 85.525, MaxT: 650, MaxP: 1000000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.042910051, 1, 4, 0},
			{1.7313671, 0.33, 1, 0},
			{-2.4516524, 0.8, 1, 0},
			{0.34157466, 0.43, 2, 0},
			{-0.46047898, 0.9, 2, 0},
			{-0.66847295, 2.46, 1, 1},
			{0.20889705, 2.09, 3, 1},
			{0.19421381, 0.88, 6, 1},
			{-0.22917851, 1.09, 6, 1},
			{-0.60405866, 3.25, 2, 2},
			{0.066680654, 4.62, 3, 2},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{0.017534618, 0.76, 1, 0.963, 2.33, 0.684, 1.283},
			{0.33874242, 2.5, 1, 1.977, 3.47, 0.829, 0.6936},
			{0.22228777, 2.75, 1, 1.917, 3.15, 1.419, 0.788},
			{-0.23219062, 3.05, 2, 2.307, 3.19, 0.817, 0.473},
			{-0.09220694, 2.55, 2, 2.546, 0.92, 1.5, 0.8577},
			{-0.47575718, 8.4, 4, 3.28, 18.8, 1.426, 0.271},
			{-0.017486824, 6.75, 1, 14.6, 547.8, 1.093, 0.948},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -4.970583,
		A2:     4.29352,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{3.043, 1.062478},
			{5.874, 3.344237},
			{9.337, 5.363757},
			{7.922, 11.762957},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 4251200, Tr: 369.89, MinT: 85.525, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-23.998635747391152, 1.05},
		{18.313017605233238, 1.084},
		{-0.42240851966839504, 2.259},
		{-2.7378298813798962, 4.287},
		{0.257888414168987, 7.66},
		{-1.3113462226130785, 18.584},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 5000.000000000001, Tr: 369.89, MinT: 85.525, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.104068052280433, 0.368},
		{0.3371892411622086, 0.875},
		{0.4401223810964251, 3.009},
		{-3.5679018989260567, 9.51},
		{59.93889697061387, 15.381},
		{-70.9402469085883, 17.001},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 5000.000000000001, Tr: 369.89, MinT: 85.525, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-3.401360845132903, 0.431},
		{-1.9443653795380451, 1.339},
		{-0.4101211459709529, 2.091},
		{-15.598374206544214, 6.822},
		{15.844867806184942, 8.214},
		{-15.298907422332046, 19.706},
	}},
}
