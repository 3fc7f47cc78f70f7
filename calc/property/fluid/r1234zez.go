package fluid

import "changeout/calc/property/helmholtz"

// AkasakaLemmon2019 is the equation of state for R-1234ze(Z) (cis-1,3,3,3-tetrafluoropropene): Ryo Akasaka and
// Eric Lemmon, New Fundamental Equations of State for cis-1,3,3,3-Tetrafluoropropene [R-1234ze(Z)] and
// 3,3,3-Trifluoropropene (R-1243zf), J. Chem. Eng. Data (2019).
var AkasakaLemmon2019 = helmholtz.Equation{
	Name: "R-1234ze(Z)", CAS: "29118-25-0", Source: "akasaka-jced-2019",
	GasConstant: 8.3144598, MolarMass: 0.1140416,
	ReducingT: 423.27, ReducingRho: 4000,
	CriticalT: 423.27, CriticalP: 3530619.6704496597, CriticalRho: 4121.303363626818,
	MinT: 273, MaxT: 440, MaxP: 34000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.03194509, 1, 4, 0},
			{1.394592, 0.333, 1, 0},
			{-2.300799, 1, 1, 0},
			{-0.2556693, 1, 2, 0},
			{0.1282934, 0.38, 3, 0},
			{-1.335381, 2.85, 1, 2},
			{-1.366494, 3.16, 3, 2},
			{0.2004912, 0.607, 2, 1},
			{-0.6489709, 2.2, 2, 2},
			{-0.02220033, 1, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{1.66538, 1.83, 1, 1.108, 0.563, 1.246, 0.933},
			{0.3427048, 3.3, 1, 1.579, 1.724, 1.05, 0.786},
			{-0.6510217, 1.9, 3, 1.098, 0.806, 1, 0.496},
			{-0.5067066, 2.6, 2, 0.672, 0.505, 0.677, 0.327},
			{-0.1231787, 2.9, 3, 3.38, 26.4, 1.302, 0.523},
			{0.08828106, 3, 2, 1.6, 8.82, 1.274, 0.308},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -2.422442259,
		A2:     8.190539844,
		LogTau: 3,
		Einstein: []helmholtz.Einstein{ // n, θ
			{4.2365, 0.047251163559902665},
			{13.063, 3.154015167623503},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3533000, Tr: 423.27, MinT: 273, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-8.177106613433029, 0.993},
		{1.5142657359326417, 1.127},
		{-2.790441012266599, 3.259},
		{0.00919594460120844, 4.649},
		{-8.214525035988535, 8.29},
		{-5309.748045808004, 18.573},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 4121.303363626818, Tr: 423.27, MinT: 273, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{2.8054215733649555, 0.414},
		{-0.5782847268115662, 0.901},
		{6.657750631664868, 2.913},
		{-28488.415580838606, 8.026},
		{68499.04449007797, 8.631},
		{-85980.39928084945, 10.213},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 4121.303363626818, Tr: 423.27, MinT: 273, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-3.8008160798898456, 0.43},
		{-1.14790031265839, 0.95},
		{-281.54354036613495, 4.5},
		{6472.299051044157, 6.507},
		{-1985193.1508489654, 8.994},
		{2037392.973112241, 9.048},
	}},
}
