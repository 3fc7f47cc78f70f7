package viscosity

// LemmonJacobsen2004Nitrogen is the correlation for R-728 (nitrogen): E. W. Lemmon and R. T Jacobsen, Int. J. Thermophys. 25 (2004) 21.
var LemmonJacobsen2004Nitrogen = Correlation{
	Name: "R-728", Source: "lemmon-ijt-2004", MinT: 63.151, MaxT: 1000, MaxP: 100e6,
	MolarMass: 0.02801348, Sigma: 0.3656, Epsilon: 98.94,
	Chapman: 0.0266958, Collision: []float64{0.431, -0.4623, 0.08406, 0.005341, -0.00331},
	ReducingT: 126.192, ReducingRho: 11183.9,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{10.72, 0.1, 2, 0},
		{0.03989, 0.25, 10, 1},
		{0.001208, 3.2, 12, 1},
		{-7.402, 0.9, 2, 2},
		{4.62, 0.3, 1, 3},
	},
}

// LemmonJacobsen2004Oxygen is the correlation for R-732 (oxygen): E. W. Lemmon and R. T Jacobsen, Int. J. Thermophys. 25 (2004) 21.
var LemmonJacobsen2004Oxygen = Correlation{
	Name: "R-732", Source: "lemmon-ijt-2004", MinT: 54.361, MaxT: 1000, MaxP: 80e6,
	MolarMass: 0.0319988, Sigma: 0.3428, Epsilon: 118.5,
	Chapman: 0.0266958, Collision: []float64{0.431, -0.4623, 0.08406, 0.005341, -0.00331},
	ReducingT: 154.581, ReducingRho: 13630,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{17.67, 0.05, 1, 0},
		{0.4042, 0, 5, 0},
		{0.0001077, 2.1, 12, 0},
		{0.351, 0, 8, 1},
		{-13.67, 0.5, 1, 2},
	},
}

// LemmonJacobsen2004Argon is the correlation for R-740 (argon): E. W. Lemmon and R. T Jacobsen, Int. J. Thermophys. 25 (2004) 21.
var LemmonJacobsen2004Argon = Correlation{
	Name: "R-740", Source: "lemmon-ijt-2004", MinT: 83.806, MaxT: 1000, MaxP: 100e6,
	MolarMass: 0.039948, Sigma: 0.335, Epsilon: 143.2,
	Chapman: 0.0266958, Collision: []float64{0.431, -0.4623, 0.08406, 0.005341, -0.00331},
	ReducingT: 150.687, ReducingRho: 13407.43,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{12.19, 0.42, 1, 0},
		{13.99, 0, 2, 0},
		{0.005027, 0.95, 10, 0},
		{-18.93, 0.5, 5, 2},
		{-6.698, 0.9, 1, 4},
		{-3.827, 0.8, 2, 4},
	},
}

// LemmonJacobsen2004Air is the correlation for R-729 (dry air): E. W. Lemmon and R. T Jacobsen, Int. J. Thermophys. 25 (2004) 21.
var LemmonJacobsen2004Air = Correlation{
	Name: "R-729", Source: "lemmon-ijt-2004", MinT: 59.75, MaxT: 1000, MaxP: 100e6,
	MolarMass: 0.0289586, Sigma: 0.36, Epsilon: 103.3,
	Chapman: 0.0266958, Collision: []float64{0.431, -0.4623, 0.08406, 0.005341, -0.00331},
	ReducingT: 132.6312, ReducingRho: 10447.7,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{10.72, 0.2, 1, 0},
		{1.122, 0.05, 4, 0},
		{0.002019, 2.4, 9, 0},
		{-8.876, 0.6, 1, 1},
		{-0.02916, 3.6, 8, 1},
	},
}
