package fluid

import "changeout/calc/property/helmholtz"

// Akasaka2015 is the equation of state for R-245fa (1,1,1,3,3-pentafluoropropane): Ryo Akasaka, Yong Zhou and
// Eric W. Lemmon, A Fundamental Equation of State for 1,1,1,3,3-Pentafluoropropane (R-245fa), J. Phys. Chem.
// Ref. Data 44 (2015) 013104, doi 10.1063/1.4913493.
var Akasaka2015 = helmholtz.Equation{
	Name: "R-245fa", CAS: "460-73-1", Source: "akasaka-jpcrd-2015-r245fa",
	GasConstant: 8.3144621, MolarMass: 0.13404794,
	ReducingT: 427.01, ReducingRho: 3875,
	CriticalT: 427.01, CriticalP: 3651000, CriticalRho: 3875,
	MinT: 171.05, MaxT: 440, MaxP: 200000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.057506623, 1, 4, 0},
			{1.5615975, 0.27, 1, 0},
			{-2.3614485, 0.9, 1, 0},
			{-0.51773521, 1.09, 2, 0},
			{0.18509788, 0.4, 3, 0},
			{-0.87405626, 2.9, 1, 2},
			{-0.27530955, 1.7, 3, 2},
			{0.57971151, 0.8, 2, 1},
			{-0.39934306, 3.6, 2, 2},
			{-0.033230277, 1.05, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{0.83210508, 1.8, 1, 1.011, 1.879, 1.081, 0.709},
			{-0.335443, 4, 1, 1.447, 2.454, 0.651, 0.939},
			{-0.10117801, 4.5, 3, 1.079, 1.256, 0.468, 0.703},
			{-0.0091495867, 2, 3, 7.86, 21.1, 1.293, 0.777},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -13.4283638514,
		A2:     9.87236538,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			// The collection divides these temperatures by 427.16 K, an older critical temperature. With the
			// paper's own 427.01 K the heat capacities agree with the paper's table; with the other they are 2.5e-4 high.
			{5.5728, 222.0 / 427.01},
			{10.385, 1010.0 / 427.01},
			{12.554, 2450.0 / 427.01},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3651000, Tr: 427.01, MinT: 171.05, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.9670903356725931, 7.194},
		{-11.756404923945222, 1.03},
		{5.087651519671258, 1.145},
		{-2.835805078027625, 2.84},
		{-2.217939014066299, 4.613},
		{28.8905424182831, 18.798},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3875, Tr: 427.01, MinT: 171.05, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.645916749226158, 0.144},
		{1.2435143264412414, 0.165},
		{2.1374254146018647, 0.53},
		{-1.4105539340976712, 1.993},
		{2.697825229930464, 2.646},
		{-1.236775453941409, 3.593},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3875, Tr: 427.01, MinT: 171.05, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.12316786769188867, 0.075},
		{-3.5467162730203325, 0.466},
		{-2.100626576983384, 1.018},
		{-3.02259697521286, 2.817},
		{-10.604906302496444, 6.14},
		{12.900898794193413, 8.5},
	}},
}
