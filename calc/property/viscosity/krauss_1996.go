package viscosity

// Krauss1996 is the correlation for R-152a: R. Krauss, V. C. Weiss, T. A. Edison, J. V. Sengers and K. Stephan,
// Int. J. Thermophys. 17 (1996) 731.
var Krauss1996 = Correlation{
	Name: "R-152a", Source: "krauss-ijt-1996", MinT: 240, MaxT: 440, MaxP: 20e6,
	MolarMass: 0.06605, Sigma: 0.46115, Epsilon: 354.84,
	Chapman: 0.026695992007227644, Collision: []float64{0.4425728, -0.5138403, 0.1547566, -0.02821844, 0.001578286},
	ReducingT: 386.411, ReducingRho: 5571.536714610144,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{-3.772282824, 0, 1, 0},
		{26.47627488, 0, 2, 0},
		{-15.78969, 0, 3, 0},
		{5.52346488, 0, 4, 0},
	},
	Free: 20.87674344, Packed: [2]float64{2.91733, 0}, FreeConstant: true,
}
