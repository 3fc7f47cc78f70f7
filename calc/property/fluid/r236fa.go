package fluid

import "changeout/calc/property/helmholtz"

// Pan2012 is the equation of state for R-236fa (1,1,1,3,3,3-hexafluoropropane): Jiang Pan, Xinfang Rui,
// Xiaodong Zhao and Liming Qiu, An equation of state for the thermodynamic properties of
// 1,1,1,3,3,3-hexafluoropropane (HFC-236fa), Fluid Phase Equilib. 321 (2012) 10-16, doi
// 10.1016/j.fluid.2012.02.012.
var Pan2012 = helmholtz.Equation{
	Name: "R-236fa", CAS: "690-39-1", Source: "pan-fpe-2012",
	GasConstant: 8.314472, MolarMass: 0.1520384,
	ReducingT: 398.07, ReducingRho: 3626,
	CriticalT: 398.07, CriticalP: 3200000, CriticalRho: 3626,
	MinT: 179.6, MaxT: 400, MaxP: 70000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.04453255, 1.07, 4, 0},
			{1.777017, 0.222, 1, 0},
			{-2.230519, 0.66, 1, 0},
			{-0.6708606, 1.33, 2, 0},
			{0.1587907, 0.227, 3, 0},
			{-1.425119, 2.33, 1, 2},
			{-0.6461628, 1.94, 3, 2},
			{0.8469985, 1.53, 2, 1},
			{-0.5635356, 2.65, 2, 2},
			{-0.01535611, 0.722, 7, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{1.156362, 1.11, 1, 1.02, 1.42, 1.13, 0.712},
			{-0.407031, 2.31, 1, 1.336, 2.31, 0.67, 0.91},
			{-0.2172753, 3.68, 3, 1.055, 0.89, 0.46, 0.677},
			{-1.007176, 4.23, 3, 5.84, 80, 1.28, 0.718},
			{-6.902909e-5, 0.614, 2, 16.2, 108, 1.2, 1.64},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -17.5983849,
		A2:     8.87150449,
		LogTau: 9.175,
		Einstein: []helmholtz.Einstein{ // n, θ
			{9.8782, 2.416660386364208},
			{18.236, 6.014017635089306},
			{49.934, 13.03288366367724},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 3200000, Tr: 398.07, MinT: 179.6, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.0049249850273236865, 0.017},
		{0.012816148225752128, 0.253},
		{-6.97674339296593, 0.971},
		{0.34709652116366274, 2.069},
		{-3.3890300356223824, 3.12},
		{-3.905418212194194, 5.366},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 3626, Tr: 398.07, MinT: 179.6, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{-0.6129462210275856, 0.177},
		{2.32975618477472, 0.276},
		{0.44026610528146576, 0.561},
		{0.18569408128843393, 0.741},
		{0.41600763700797233, 1.15},
		{0.3257761223988926, 3.764},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 3626, Tr: 398.07, MinT: 179.6, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-3.799841638369613, 0.436},
		{-7.207160418715132, 1.661},
		{47.73949958715277, 2.91},
		{-59.040754885379386, 3.307},
		{33.03413077298916, 5.447},
		{-27.228555278145553, 6.392},
	}},
}
