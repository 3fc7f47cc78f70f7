package fluid

import "changeout/calc/property/helmholtz"

// TillnerRothYokozeki1997 is the equation of state for R-32 (difluoromethane): R. Tillner-Roth and A. Yokozeki,
// An international standard equation of state for difluoromethane for temperatures from the triple point
// at 136.34 K to 435 K and pressures up to 70 MPa, J. Phys. Chem. Ref. Data 26 (1997) 1273-1328, doi
// 10.1063/1.556002.
var TillnerRothYokozeki1997 = helmholtz.Equation{
	Name: "R-32", CAS: "75-10-5", Source: "tillnerroth-jpcrd-1997",
	GasConstant: 8.314471, MolarMass: 0.052024,
	ReducingT: 351.255, ReducingRho: 8150.084599999999,
	CriticalT: 351.255, CriticalP: 5782000, CriticalRho: 8150.084599999999,
	MinT: 136.34, MaxT: 435, MaxP: 70000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{1.046634, 0.25, 1, 0},
			{-0.5451165, 1, 2, 0},
			{-0.002448595, -0.25, 5, 0},
			{-0.04877002, -1, 1, 0},
			{0.03520158, 2, 1, 0},
			{0.00162275, 2, 3, 0},
			{2.377225e-5, 0.75, 8, 0},
			{0.029149, 0.25, 4, 0},
			{0.003386203, 18, 4, 4},
			{-0.004202444, 26, 4, 3},
			{0.0004782025, -1, 8, 1},
			{-0.005504323, 25, 3, 4},
			{-0.02418396, 1.75, 5, 1},
			{0.4209034, 4, 1, 2},
			{-0.4616537, 5, 1, 2},
			{-1.200513, 1, 3, 1},
			{-2.59155, 1.5, 1, 1},
			{-1.400145, 1, 2, 1},
			{0.8263017, 0.5, 3, 1},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -8.258096,
		A2:     6.353098,
		LogTau: 3.004486,
		Einstein: []helmholtz.Einstein{ // n, θ
			{1.160761, 2.2718538},
			{2.645151, 11.914421},
			{5.794987, 5.1415638},
			{1.129475, 32.768217},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 5782000, Tr: 351.255, MinT: 136.34, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{0.019194334673139708, 0.531},
		{-6.794802163795212, 0.979},
		{9.276391392786632, 2.203},
		{-12.327153852761946, 2.382},
		{28.46579606476374, 3.421},
		{-28.570870718190093, 3.558},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 8150.084599999999, Tr: 351.255, MinT: 136.34, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{3.0283368557227064, 0.358},
		{-13.30754793568124, 0.676},
		{53.97035773548243, 0.831},
		{-41.10515088784585, 0.88},
		{0.6410010855629815, 2.592},
		{-18.757652443918627, 16.556},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 8150.084599999999, Tr: 351.255, MinT: 136.34, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.06522522852577171, 0.069},
		{-3.3577643698607456, 0.425},
		{-2.746299718061842, 1.18},
		{-64.77289013657663, 8.115},
		{511.3349286855849, 12.06},
		{-1525.315265366156, 16.085},
	}},
}
