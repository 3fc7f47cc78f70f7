package fluid

import "changeout/calc/property/helmholtz"

// Wu2011 is the equation of state for R-E170 (dimethyl ether): Jiangtao Wu, Yong Zhou and Eric W. Lemmon, An
// Equation of State for the Thermodynamic Properties of Dimethyl Ether, J. Phys. Chem. Ref. Data 40 (2011)
// 023104-1:16, doi 10.1063/1.3582533.
var Wu2011 = helmholtz.Equation{
	Name: "R-E170", CAS: "115-10-6", Source: "wu-jpcrd-2011",
	GasConstant: 8.314472, MolarMass: 0.04606844,
	ReducingT: 400.378, ReducingRho: 5940.000000000001,
	CriticalT: 400.378, CriticalP: 5336800, CriticalRho: 5940.000000000001,
	MinT: 131.66, MaxT: 525, MaxP: 50000000,
	Residual: helmholtz.Residual{
		Power: []helmholtz.Power{ // n, t, d, l
			{0.029814139, 1, 4, 0},
			{1.43517, 0.4366, 1, 0},
			{-2.64964, 1.011, 1, 0},
			{-0.29515532, 1.137, 2, 0},
			{0.17035607, 0.45, 3, 0},
			{-0.94642918, 2.83, 1, 2},
			{-0.099250514, 1.5, 3, 2},
			{1.1264071, 1.235, 2, 1},
			{-0.76936548, 2.675, 2, 2},
			{-0.020717696, 0.7272, 7, 1},
			{0.24527037, 1.816, 1, 1},
		},
		Gaussian: []helmholtz.Gaussian{ // n, t, d, η, β, γ, ε
			{1.1863438, 1.783, 1, 0.965336, 1.28719, 1.27772, 0.672698},
			{-0.49398368, 3.779, 1, 1.50858, 0.806235, 0.43075, 0.924246},
			{-0.16388716, 3.282, 3, 0.963855, 0.777942, 0.429607, 0.750815},
			{-0.027583584, 1.059, 3, 9.72643, 197.681, 1.13849, 0.800022},
		},
	},
	Ideal: helmholtz.Ideal{
		A1:     -1.980976,
		A2:     3.171218,
		LogTau: 3.039,
		Einstein: []helmholtz.Einstein{ // n, θ
			{2.641, 0.901647942694154},
			{2.123, 2.432701097462898},
			{8.992, 4.785477723551244},
			{6.191, 10.36520488138709},
		},
	},
	VaporPressure: helmholtz.Auxiliary{Y: 5336800, Tr: 400.378, MinT: 131.66, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-9.576458382440794, 1.026},
		{3.8237850260211683, 1.188},
		{2.3534240536183586, 7.78},
		{-2.349392868307698, 3.09},
		{-3.348742284357154, 6.356},
		{-1.2387250144815742, 12.704},
	}},
	LiquidDensity: helmholtz.Auxiliary{Y: 5940.000000000001, Tr: 400.378, MinT: 131.66, Plain: true, Terms: []helmholtz.AuxiliaryTerm{
		{16.059795192018523, 0.572},
		{-14.738564267851407, 0.658},
		{-3.731150693384918, 0.713},
		{5.144676895857624, 0.916},
		{0.03490664751265221, 2.977},
		{8.503244669132489, 19.393},
	}},
	VaporDensity: helmholtz.Auxiliary{Y: 5940.000000000001, Tr: 400.378, MinT: 131.66, OverT: true, Terms: []helmholtz.AuxiliaryTerm{
		{-4.396808750959381, 0.499},
		{0.11053731401780381, 0.75},
		{-2.8034901380765476, 2.338},
		{-577.5554786721015, 11.224},
		{2817.238575530162, 12.48},
		{-2327.667386669654, 12.984},
	}},
}
