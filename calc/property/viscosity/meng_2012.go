package viscosity

// Meng2012 is the correlation for R-E170 (dimethyl ether): X. Meng, J. Zhang, J. Wu and Z. Liu, J. Chem. Eng. Data 57 (2012) 988.
var Meng2012 = Correlation{
	Name: "R-E170", Source: "meng-jced-2012", MinT: 233.15, MaxT: 373.15, MaxP: 30e6,
	MolarMass: 0.04606844, Sigma: 0.446704, Epsilon: 317.937,
	Chapman: 0.021357, Collision: []float64{0.294261, -0.377826, -0.491673},
	ReducingT: 400.378, ReducingRho: 5940,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{-2.70002, 5.92, 3, 0},
		{4.44583, 4.36, 3, 0},
		{0.21302, 5.87, 5, 0},
		{6.50681, 0.45, 1, 0},
		{-104.998, 2.93, 3, 1},
		{78.27474, 1.64, 4, 1},
		{41.3751, 7.86, 5, 2},
		{-175.055, 4.25, 2, 1},
		{62.81975, 4.79, 2, 1},
		{112.3219, 3.11, 2, 2},
	},
}
