package mixture

import "changeout/calc/property/helmholtz"

// Bell2023 holds the pairs published in Ian H. Bell, Mixture Model for Refrigerant Pairs R-32/1234yf,
// R-32/1234ze(E), R-1234ze(E)/227ea, R-1234yf/152a, and R-125/1234yf, J. Phys. Chem. Ref. Data 52 (2023)
// 013101, doi 10.1063/5.0135368.
var Bell2023 = Publication{Source: "bell-jpcrd-2023", Pairs: []Pair{
	{First: r32, Second: r1234yf, BetaT: 1.011011, GammaT: 0.966965, BetaV: 1.007852, GammaV: 1.037663, F: 1, Departure: &bell2023R32R1234yf},
	{First: r32, Second: r1234zeE, BetaT: 1.005148, GammaT: 0.946105, BetaV: 0.999032, GammaV: 1.029821, F: 1, Departure: &bell2023R32R1234zeE},
	{First: r125, Second: r1234yf, BetaT: 0.999969, GammaT: 0.998028, BetaV: 0.998226, GammaV: 1.006068, F: 1, Departure: &bell2023R125R1234yf},
	{First: r1234yf, Second: r152a, BetaT: 0.995987, GammaT: 0.978058, BetaV: 0.99971, GammaV: 1.008608, F: 1, Departure: &bell2023R1234yfR152a},
	{First: r1234zeE, Second: r227ea, BetaT: 1.001247, GammaT: 0.98918, BetaV: 0.99929, GammaV: 1.001581, F: 1, Departure: &bell2023R1234zeER227ea},
}}

// bell2023R32R1234yf is the departure function of R32 with R1234yf in the same publication.
var bell2023R32R1234yf = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{0.449487, 2.538296, 1, 1},
	{-0.099708, 3.208604, 2, 1},
	{0.098897, 0.456509, 3, 1},
}}

// bell2023R32R1234zeE is the departure function of R32 with R1234ze(E) in the same publication.
var bell2023R32R1234zeE = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{0.295192, 0.500457, 1, 1},
	{-0.737904, 3.104735, 2, 1},
	{0.542962, 3.20172, 3, 1},
	{-0.201951, 2.567118, 4, 1},
}}

// bell2023R125R1234yf is the departure function of R125 with R1234yf in the same publication.
var bell2023R125R1234yf = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{-0.032013, 0.00803, 1, 1},
}}

// bell2023R1234yfR152a is the departure function of R1234yf with R152a in the same publication.
var bell2023R1234yfR152a = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{0.009165, 3.221227, 1, 1},
	{0.014392, 1.007082, 2, 1},
	{-0.014246, 3.790953, 3, 1},
}}

// bell2023R1234zeER227ea is the departure function of R1234ze(E) with R227ea in the same publication.
var bell2023R1234zeER227ea = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{-0.057178, 1.290298, 1, 1},
	{0.031318, 0.038796, 2, 1},
	{-0.027496, 2.640532, 3, 1},
}}
