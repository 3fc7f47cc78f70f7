package viscosity

// Fenghour1995 is the correlation for R-717 (ammonia): A. Fenghour, W. A. Wakeham, V. Vesovic, J. T. R. Watson, J. Millat and
// E. Vogel, J. Phys. Chem. Ref. Data 24 (1995) 1649.
var Fenghour1995 = Correlation{
	Name: "R-717", Source: "fenghour-jpcrd-1995", MinT: 195.49, MaxT: 680, MaxP: 50e6,
	MolarMass: 0.01703026, Sigma: 0.2957, Epsilon: 386,
	Chapman: 2.1357, Collision: []float64{4.9931822, -0.61122364, 0, 0.18535124, -0.11160946},
	Virial: [][2]float64{ // b, t
		{-1.7999496, 0},
		{46.692621, -0.5},
		{-534.60794, -1},
		{3360.4074, -1.5},
		{-13019.164, -2},
		{33414.23, -2.5},
		{-58711.743, -3},
		{71426.686, -3.5},
		{-59834.012, -4},
		{33652.741, -4.5},
		{-12027.35, -5},
		{2434.8205, -5.5},
		{-208.07957, -6},
	},
	ReducingT: 405.4, ReducingRho: 13211.8,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{4.005040600989671, 0, 3, 0},
		{-14.107915123955129, 1, 3, 0},
		{34.76074303932182, 2, 2, 0},
		{4.631310990138071, 2, 4, 0},
		{-3.937374461785061, 3, 4, 0},
		{-12.00075068367531, 4, 2, 0},
		{1.9284977991745302, 4, 4, 0},
	},
}
