package mixture

import "changeout/calc/property/helmholtz"

// LemmonJacobsen2004 holds the pairs published in Eric W. Lemmon and Richard T. Jacobsen, Equations of State
// for Mixtures of, R-134a, R-143a, and R-152a, J. Phys. Chem. Ref. Data 33 (2004) 593-620, doi
// 10.1063/1.1649997.
var LemmonJacobsen2004 = Publication{Source: "lemmon-jpcrd-2004", Pairs: []Pair{
	{First: r32, Second: r125, Xi: 28.95, Zeta: -6.008e-6, F: 1, Departure: &lemmonJacobsen2004R32R125},
	{First: r32, Second: r134a, Xi: 7.909, Zeta: -2.039e-6, F: 1, Departure: &lemmonJacobsen2004R32R134a},
	{First: r125, Second: r134a, Xi: -0.4326, Zeta: -3.453e-7, F: 1, Departure: &lemmonJacobsen2004GeneralizedHFC},
	{First: r125, Second: r143a, Xi: 5.551, Zeta: -4.452e-7, F: 1.1697, Departure: &lemmonJacobsen2004GeneralizedHFC},
	{First: r134a, Second: r143a, Xi: 2.324, Zeta: 6.182e-7, F: 0.5557, Departure: &lemmonJacobsen2004GeneralizedHFC},
	{First: r134a, Second: r152a, Xi: 4.202, Zeta: 4.223e-6, F: 2, Departure: &lemmonJacobsen2004GeneralizedHFC},
}}

// lemmonJacobsen2004R32R125 is the departure function of R32 with R125 in the same publication.
var lemmonJacobsen2004R32R125 = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{-0.0072955, 4.5, 2, 1},
	{0.078035, 0.57, 5, 1},
	{0.61007, 1.9, 1, 2},
	{0.64246, 1.2, 3, 2},
	{0.014965, 0.5, 9, 2},
	{-0.34049, 2.6, 2, 3},
	{0.085658, 11.4, 3, 3},
	{-0.064429, 4.5, 6, 3},
}}

// lemmonJacobsen2004R32R134a is the departure function of R32 with R134a in the same publication.
var lemmonJacobsen2004R32R134a = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{0.22909, 1.9, 1, 1},
	{0.094074, 0.25, 3, 1},
	{0.00039876, 0.07, 8, 1},
	{0.021113, 2, 1, 2},
}}

// lemmonJacobsen2004GeneralizedHFC is the generalized departure function of HFC pairs in the same publication.
var lemmonJacobsen2004GeneralizedHFC = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{-0.013073, 7.4, 1, 1},
	{0.018259, 0.35, 3, 1},
	{8.1299e-6, 10, 11, 2},
	{0.0078496, 5.3, 2, 3},
}}
