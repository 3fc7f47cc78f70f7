package fluid

import "changeout/calc/property/helmholtz"

// TillnerRothBaehr1994 is the equation of state for R-134a (1,1,1,2-tetrafluoroethane): Reiner Tillner-Roth and
// Hans Dieter Baehr, A International Standard Formulation for the Thermodynamic Properties of
// 1,1,1,2-Tetrafluoroethane (HFC-134a) for Temperatures from 170 K to 455 K and Pressures up to 70 MPa, J.
// Phys. Chem. Ref. Data 23 (1994) 657-729, doi 10.1063/1.555958.
var TillnerRothBaehr1994 = helmholtz.Equation{
	Name: "R-134a", CAS: "811-97-2", Source: "tillnerroth-jpcrd-1994",
	GasConstant: 8.314471, MolarMass: 0.102032,
	ReducingT: 374.18, ReducingRho: 4978.830171000001,
	CriticalT: 374.21, CriticalP: 4059280, CriticalRho: 5017.053,
	MinT: 169.85, MaxT: 455, MaxP: 70000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.05586817, -0.5, 2, 0},
			{0.498223, 0, 1, 0},
			{0.02458698, 0, 3, 0},
			{0.0008570145, 0, 6, 0},
			{0.0004788584, 1.5, 6, 0},
			{-1.800808, 1.5, 1, 0},
			{0.2671641, 2, 1, 0},
			{-0.04781652, 2, 2, 0},
			{0.01423987, 1, 5, 1},
			{0.3324062, 3, 2, 1},
			{-0.007485907, 5, 2, 1},
			{0.0001017263, 1, 4, 2},
			{-0.5184567, 5, 1, 2},
			{-0.08692288, 5, 4, 2},
			{0.2057144, 6, 1, 2},
			{-0.005000457, 10, 2, 2},
			{0.0004603262, 10, 4, 2},
			{-0.003497836, 10, 1, 3},
			{0.006995038, 18, 5, 3},
			{-0.01452184, 22, 3, 3},
			{-0.0001285458, 50, 10, 4},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -1.019535,
		A2:     9.047135,
		LogTau: -1.629789,
		Power: []helmholtz.IdealPower{ // n, t
			{-9.723916, -0.5},
			{-3.92717, -0.75},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 4059280, Tr: 374.21, MinT: 169.85, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{0.4331478287291047, 0.845},
		{-9.090302559074352, 0.99},
		{2.1476074125217703, 1.14},
		{-1.557687007603464, 2.651},
		{-3.5020328972698604, 4.507},
		{14.958442337201044, 17.235},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 5017.053, Tr: 374.21, MinT: 169.85, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{18.772731940930015, 0.673},
		{-51.49939472178225, 0.994},
		{40.793536440596085, 1.257},
		{-1481.6500471538966, 5.783},
		{1600.534434298925, 5.943},
		{-67338.52423732559, 19.94},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 5017.053, Tr: 374.21, MinT: 169.85, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-5.147386240766544, 0.476},
		{5.34618043286371, 0.966},
		{-7.611015272838434, 1.321},
		{-28.85436432788653, 8.491},
		{-9.079306067130748, 13.463},
		{64, 13.463},
	}},
}
