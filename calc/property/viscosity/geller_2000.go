package viscosity

// Geller2000R404A is the correlation for R-404A: V. Z. Geller, D. Bivens and A. Yokozeki, International Refrigeration
// Conference at Purdue, 2000, paper 508. Stated uncertainty of the measurements: 1.2 %.
var Geller2000R404A = Correlation{
	Name: "R-404A", Source: "geller-purdue-2000", MinT: 223.15, MaxT: 423.15, MaxP: 10e6,
	Dilute:    []float64{0.9766, 0.03676, 2.938e-6}, // µPa s
	ReducingT: 345.27, ReducingRho: 4939.999999999999,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{1.08968786472, 0, 1, 0},
		{41.52109565230651, 0, 2, 0},
		{-47.10175334443676, 0, 3, 0},
		{45.88082670553865, 0, 4, 0},
		{-22.593706031401723, 0, 5, 0},
		{4.480674446811829, 0, 6, 0},
	},
}

// Geller2000R407C is the correlation for R-407C: V. Z. Geller, D. Bivens and A. Yokozeki, International Refrigeration
// Conference at Purdue, 2000, paper 508. Stated uncertainty of the measurements: 1.2 %.
var Geller2000R407C = Correlation{
	Name: "R-407C", Source: "geller-purdue-2000", MinT: 223.15, MaxT: 423.15, MaxP: 10e6,
	Dilute:    []float64{-1.507, 0.04894, -9.305e-6}, // µPa s
	ReducingT: 359.345, ReducingRho: 5260.000046401775,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{-1.37752319572, 0, 1, 0},
		{60.179007998135326, 0, 2, 0},
		{-89.11399521418382, 0, 3, 0},
		{73.50962141560484, 0, 4, 0},
		{-27.88808852966893, 0, 5, 0},
		{4.133412533885438, 0, 6, 0},
	},
}

// Geller2000R410A is the correlation for R-410A: V. Z. Geller, D. Bivens and A. Yokozeki, International Refrigeration
// Conference at Purdue, 2000, paper 508. Stated uncertainty of the measurements: 1.2 %.
var Geller2000R410A = Correlation{
	Name: "R-410A", Source: "geller-purdue-2000", MinT: 223.15, MaxT: 423.15, MaxP: 10e6,
	Dilute:    []float64{-2.695, 0.0585, -2.129e-5}, // µPa s
	ReducingT: 344.4943434, ReducingRho: 6323.999999999999,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{4.1528450396712, 0, 1, 0},
		{12.187385701457371, 0, 2, 0},
		{12.660855545258757, 0, 3, 0},
		{-10.753223728015742, 0, 4, 0},
		{1.9206178288211475, 0, 5, 0},
		{0.36793471063956823, 0, 6, 0},
	},
}

// Geller2000R507A is the correlation for R-507A: V. Z. Geller, D. Bivens and A. Yokozeki, International Refrigeration
// Conference at Purdue, 2000, paper 508. Stated uncertainty of the measurements: 1.2 %.
var Geller2000R507A = Correlation{
	Name: "R-507A", Source: "geller-purdue-2000", MinT: 223.15, MaxT: 423.15, MaxP: 10e6,
	Dilute:    []float64{-2.53, 0.05626, -2.323e-5}, // µPa s
	ReducingT: 343.765, ReducingRho: 4964.029650250053,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{0.260484792, 0, 1, 0},
		{53.80047201384, 0, 2, 0},
		{-79.67886221772443, 0, 3, 0},
		{81.83382443771656, 0, 4, 0},
		{-39.50451724616318, 0, 5, 0},
		{7.366291094257731, 0, 6, 0},
	},
}
