package mixture

import "changeout/calc/property/helmholtz"

// Bell2022 holds the pairs published in Ian H. Bell, Mixture Models for Refrigerants R-1234yf/134a,
// R-1234yf/1234ze(E), and R-134a/1234ze(E) and Interim Models for R-125/1234yf, R-1234ze(E)/227ea, and
// R-1234yf/152a, J. Phys. Chem. Ref. Data 51 (2022) 013103, doi 10.1063/5.0086060.
var Bell2022 = Publication{Source: "bell-jpcrd-2022", Pairs: []Pair{
	{First: r1234yf, Second: r134a, BetaT: 1.000026, GammaT: 0.987057, BetaV: 1.000272, GammaV: 1.003747, F: 1, Departure: &bell2022R1234yfR134a},
	{First: r1234yf, Second: r1234zeE, BetaT: 0.998886, GammaT: 0.999309, BetaV: 0.999302, GammaV: 0.99859, F: 1, Departure: &bell2022R1234yfR1234zeE},
	{First: r134a, Second: r1234zeE, BetaT: 0.998593, GammaT: 0.992009, BetaV: 0.998995, GammaV: 0.998621, F: 1, Departure: &bell2022R134aR1234zeE},
}}

// bell2022R1234yfR134a is the departure function of R1234yf with R134a in the same publication.
var bell2022R1234yfR134a = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{0.0519, 2.477314, 1, 1},
	{-0.011472, 0.070541, 2, 2},
}}

// bell2022R1234yfR1234zeE is the departure function of R1234yf with R1234ze(E) in the same publication.
var bell2022R1234yfR1234zeE = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{0.07264, 0.012645, 1, 1},
	{-0.024746, 3.992829, 2, 2},
}}

// bell2022R134aR1234zeE is the departure function of R134a with R1234ze(E) in the same publication.
var bell2022R134aR1234zeE = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{0.068889, 3.184446, 1, 1},
	{-0.004831, 2.034344, 2, 2},
}}
