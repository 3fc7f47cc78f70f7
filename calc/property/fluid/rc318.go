package fluid

import "changeout/calc/property/helmholtz"

// Platzer1990RC318 is the equation of state for R-C318 (octafluorocyclobutane): B. Platzer, A. Polt and G.
// Maurer, Thermophysical Properties of Refrigerants, Springer-Verlag (1990), doi 10.1007/978-3-662-02608-3.
var Platzer1990RC318 = helmholtz.Equation{
	Name: "R-C318", CAS: "115-25-3", Source: "platzer-book-1990",
	GasConstant: 8.31451, MolarMass: 0.2000312,
	ReducingT: 388.38, ReducingRho: 3099.38,
	CriticalT: 388.38, CriticalP: 2777500, CriticalRho: 3099.38,
	MinT: 233.35, MaxT: 623, MaxP: 60000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.09415573664603, 0, 1, 0},
			{-2.68265247887176, 1, 1, 0},
			{1.73403070801418, 2, 1, 0},
			{-1.63611253452478, 3, 1, 0},
			{0.304834511239559, 4, 1, 0},
			{0.102771559991302, 0, 2, 0},
			{-0.023236791408773, 1, 2, 0},
			{0.166151971110653, 2, 2, 0},
			{-0.0250103944487447, 0, 3, 0},
			{0.0935681090149423, 1, 3, 0},
			{0.043192919662493, 0, 4, 0},
			{-0.133439867188959, 1, 4, 0},
			{0.025541668325497, 1, 5, 0},
			{-1.04729119771286, 3, 0, 0},
			{1.38034128674154, 4, 0, 0},
			{-0.333625770182218, 5, 0, 0},
		},
		Damped: []helmholtz.Damped{ // n, t, d, l, γ
			{-0.510485822124397, 3, 2, 2, 0.99944},
			{1.81840742529488, 4, 2, 2, 0.99944},
			{-1.38530904967474, 5, 2, 2, 0.99944},
			{1.04729119771286, 3, 0, 2, 0.99944},
			{-1.38034128674154, 4, 0, 2, 0.99944},
			{0.333625770182218, 5, 0, 2, 0.99944},
		},
	},
	Ideal: helmholtz.Ideal{
		LogTau:         -1,
		OffsetA1:       -32.5172232538152,
		OffsetA2:       20.7826742209953,
		HeatCapacityT0: 298.15,
		HeatCapacity: []helmholtz.HeatCapacity{ // c, exponent of T
			{2.911028455074322, 0},
			{0.06984062483537816, 1},
			{-6.093191543939451e-5, 2},
			{1.857067747732578e-8, 3},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 2777500, Tr: 388.38, MinT: 233.35, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-15.102617412971505, 1.017},
		{8.53184439256971, 1.071},
		{-1.3014556054852215, 2.454},
		{-3.286800573693744, 3.687},
		{-8.150652838303959, 9.48},
		{0.020748299859318566, 0.506},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3099.38, Tr: 388.38, MinT: 233.35, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{6.172092166054074, 0.52},
		{-13.109692547967464, 0.979},
		{382.2970506693918, 2.105},
		{-475.82711917828664, 2.269},
		{190.84639492080177, 3.362},
		{-142.60801162239488, 4.954},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3099.38, Tr: 388.38, MinT: 233.35, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{0.06881363274511793, 0.117},
		{-4.9709012896577605, 0.455},
		{3.1335807931630963, 0.746},
		{-4.8498027190461865, 1.132},
		{-3405.1114368231356, 8.848},
		{4685.608624866425, 9.296},
	}},
}
