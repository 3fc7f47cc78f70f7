package viscosity

// HuberLaesecke2006 is the correlation for R-125: M. L. Huber and A. Laesecke, Ind. Eng. Chem. Res. 45 (2006) 4447.
var HuberLaesecke2006 = Correlation{
	Name: "R-125", Source: "huber-iecr-2006", MinT: 172.52, MaxT: 500, MaxP: 60e6,
	MolarMass: 0.1200214, Sigma: 0.5235, Epsilon: 237.077,
	Virial:    vogel1998Virial,
	ReducingT: 339.173, ReducingRho: 4779,
	Residual: [][4]float64{ // n (µPa s), t, d, l
		{5.677448, 2, 2, 0},
		{-5.096662, 1, 3, 0},
	},
	Free: 141.2564, Packed: [2]float64{3.033797, 0.2992464},
}
