package viscosity

// TanakaSotani1996 is the correlation for R-123: Y. Tanaka and T. Sotani, Int. J. Thermophys. 17 (1996) 293.
var TanakaSotani1996 = Correlation{
	Name: "R-123", Source: "tanaka-ijt-1996", MinT: 253.15, MaxT: 423.15, MaxP: 20e6,
	Dilute:    []float64{-2.273638, 0.05099859, -2.402786e-5}, // µPa s
	ReducingT: 456.831, ReducingRho: 3596.417,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{-12.245673, 0, 1, 0},
		{13.9463316064215, -1, 1, 0},
		{-55.53966, 0, 1, 0},
		{18.63975355, 0, 2, 0},
		{-14.708365237499999, 0, 3, 0},
	},
	Free: 585.991090909, Packed: [2]float64{3.32411454545, 0}, FreeConstant: true,
}
