package viscosity

// vogel1998Virial is the reduced second viscosity virial coefficient after Rainwater and Friend as Vogel et al. (1998) write it:
// Bη* = Σ b T*^t with T* = kT/ε.
var vogel1998Virial = [][2]float64{ // b, t
	{-19.572881, 0},
	{219.73999, -0.25},
	{-1015.3226, -0.5},
	{2471.01251, -0.75},
	{-3375.1717, -1},
	{2491.6597, -1.25},
	{-787.26086, -1.5},
	{14.085455, -2.5},
	{-0.34664158, -5.5},
}

// Vogel1998 is the correlation for R-290 (propane): E. Vogel, C. Küchenmeister, E. Bich and A. Laesecke,
// J. Phys. Chem. Ref. Data 27 (1998) 947.
var Vogel1998 = Correlation{
	Name: "R-290", Source: "vogel-jpcrd-1998", MinT: 90, MaxT: 600, MaxP: 100e6,
	MolarMass: 0.0440956, Sigma: 0.49748, Epsilon: 263.88,
	Chapman: 0.021357, Collision: []float64{0.25104574, -0.47271238, 0, 0.060836515},
	Virial:    vogel1998Virial,
	ReducingT: 369.825, ReducingRho: 5000,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{35.9873030195, 0, 2, 0},
		{-180.512188564, 1, 2, 0},
		{87.7124888223, 2, 2, 0},
		{-105.773052525, 0, 3, 0},
		{205.319740877, 1, 3, 0},
		{-129.21093261, 2, 3, 0},
		{58.9491587759, 0, 4, 0},
		{-129.7400331, 1, 4, 0},
		{76.6280419971, 2, 4, 0},
		{-9.59407868475, 0, 5, 0},
		{21.0726986598, 1, 5, 0},
		{-14.3971968187, 2, 5, 0},
	},
	Free: 1616.88405374, Packed: [2]float64{2.50053938863, 2.1517543007382995},
}

// Vogel1999 is the correlation for R-600 (butane): E. Vogel, C. Küchenmeister and E. Bich, High Temp. High Press. 31 (1999) 173.
var Vogel1999 = Correlation{
	Name: "R-600", Source: "vogel-hthp-1999", MinT: 134.895, MaxT: 575, MaxP: 70e6,
	MolarMass: 0.0581222, Sigma: 0.57335, Epsilon: 280.51,
	Chapman: 0.021357, Collision: []float64{0.17067154, -0.48879666, 0.039038856},
	Virial:    vogel1998Virial,
	ReducingT: 425.125, ReducingRho: 3920,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{-54.7737770846, 0, 2, 0},
		{58.0898623034, 1, 2, 0},
		{35.2658446259, 0, 3, 0},
		{-39.6682203832, 1, 3, 0},
		{-1.83729542151, 0, 4, 0},
		{-0.833262985358, 0, 5, 0},
		{1.93837020663, 1, 5, 0},
	},
	Free: 188.075903903, Packed: [2]float64{2.30873963359, 2.0340403725423957},
}

// Vogel2000 is the correlation for R-600a (isobutane): E. Vogel, C. Küchenmeister and E. Bich, Int. J. Thermophys. 21 (2000) 343.
var Vogel2000 = Correlation{
	Name: "R-600a", Source: "vogel-ijt-2000", MinT: 113.73, MaxT: 575, MaxP: 35e6,
	MolarMass: 0.0581222, Sigma: 0.46445, Epsilon: 307.55,
	Chapman: 0.021357, Collision: []float64{0.53583008, -0.4562963, 0.049911282},
	Virial:    vogel1998Virial,
	ReducingT: 407.817, ReducingRho: 3860,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{103.511763411, 0, 2, 0},
		{-312.670896234, 1, 2, 0},
		{145.253750239, 2, 2, 0},
		{-210.649894193, 0, 3, 0},
		{386.269696509, 1, 3, 0},
		{-214.963015527, 2, 3, 0},
		{112.58036092, 0, 4, 0},
		{-223.242033154, 1, 4, 0},
		{119.114788598, 2, 4, 0},
		{-18.19097459, 0, 5, 0},
		{36.0438957232, 1, 5, 0},
		{-21.396018405, 2, 5, 0},
	},
	Free: 1940.3760699, Packed: [2]float64{2.33859774637, 2.352551508384381},
}
