package fluid

import "changeout/calc/property/helmholtz"

// LemmonAkasaka2022 is the equation of state for R-1234yf (2,3,3,3-tetrafluoropropene): Eric W. Lemmon and Ryo
// Akasaka, Equation of State for the Thermodynamic Properties of 2,3,3,3-Tetrafluoroprop-1-ene (R1234yf), Int.
// J. Thermophys. 43 (2022) 119, doi 10.1007/s10765-022-03015-y.
var LemmonAkasaka2022 = helmholtz.Equation{
	Name: "R-1234yf", CAS: "754-12-1", Source: "lemmon-ijt-2022",
	GasConstant: 8.314462618, MolarMass: 0.1140416,
	ReducingT: 367.85, ReducingRho: 4180,
	CriticalT: 367.85, CriticalP: 3384400, CriticalRho: 4180,
	MinT: 121.6, MaxT: 410, MaxP: 100000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.0340387, 1, 4, 0},
			{1.912859, 0.222, 1, 0},
			{-2.1984719881617, 0.61, 1, 0},
			{-0.8147645305033, 1.122, 2, 0},
			{0.2288282, 0.5, 3, 0},
			{-1.65436, 2.14, 1, 2},
			{-1.446628, 2.284, 3, 2},
			{0.5961722, 1.05, 2, 1},
			{-0.6148209, 2.33, 2, 2},
			{-0.0180069, 0.778, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{0.2845275, 1, 1, 28.1, 1016, 1.061, 0.96},
			{-0.3050809, 2, 1, 28, 1000, 1.062, 0.96},
			{2.198935, 1.236, 1, 1.307, 1.16, 1.3, 0.853},
			{-0.4270329, 1.6, 1, 1.96, 1.2, 1.04, 1.15},
			{-0.4015581, 1.85, 1, 1.25, 1.26, 1, 1.3},
			{0.1179587, 0.7, 1, 1, 1.6, 1.14, 1.5},
			{-0.3141002, 1.75, 1, 2.2, 0.87, 1.1, 0.762},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -12.081525543189,
		A2:     8.52896238365,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{8.65, 1.3918716868288703},
			{9.75, 4.268044039690091},
			{2.11, 12.233247247519369},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3384400, Tr: 367.85, MinT: 121.6, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-7.4507, 1},
		{2.164, 1.5},
		{-1.674, 3},
		{-3.318, 4},
		{-1.617, 9},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4180, Tr: 367.85, MinT: 121.6, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{3.392, 0.4},
		{-4.119, 0.7},
		{8.932, 1.1},
		{-8.525, 1.5},
		{3.384, 2.1},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4180, Tr: 367.85, MinT: 121.6, Terms: []helmholtz.AuxiliaryTerm{
		{-3.616, 0.426},
		{-74.91, 2},
		{197.7, 2.4},
		{-152.76, 2.7},
		{-61.062, 7.5},
		{-115.53, 15},
	}},
}
