package viscosity

// Huber2003 is the correlation for R-134a: M. L. Huber, A. Laesecke and R. A. Perkins, Ind. Eng. Chem. Res. 42 (2003) 3163.
var Huber2003 = Correlation{
	Name: "R-134a", Source: "huber-iecr-2003", MinT: 169.85, MaxT: 455, MaxP: 70e6,
	MolarMass: 0.102031, Sigma: 0.468932, Epsilon: 299.363,
	Chapman: 0.021357, Collision: []float64{0.355404, -0.464337, 0.0257353},
	Virial:    vogel1998Virial,
	ReducingT: 374.21, ReducingRho: 5017.053,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{-20.6900719, 0, 1, 0},
		{0.356029549, 6, 2, 0},
		{2.11101816, 2, 2, 0},
		{13.9601415, 0.5, 2, 0},
		{-4.5643502, -2, 2, 0},
		{-3.51593275, 0, 3, 0},
	},
	Free: 214.76332, Packed: [2]float64{3.163695636, 0}, PackedDenominator: [2]float64{-0.0890173375, 0.100035295}, FreeConstant: true,
}
