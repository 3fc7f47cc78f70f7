package mixture

import "changeout/calc/property/helmholtz"

// KunzWagner2012 holds the pairs published in O. Kunz and W. Wagner, The GERG-2008 Wide-Range Equation of State
// for Natural Gases and Other Mixtures: An Expansion of GERG-2004, J. Chem. Eng. Data 57 (2012) 3032-3091, doi
// 10.1021/je300655b.
var KunzWagner2012 = Publication{Source: "kunz-jced-2012", Pairs: []Pair{
	{First: r170, Second: r290, BetaT: 0.996199694, GammaT: 1.01473019, BetaV: 0.997607277, GammaV: 1.00303472, F: 0.13042476515, Departure: &kunzWagner2012GeneralizedAlkane},
	{First: r170, Second: r600, BetaT: 0.999130554, GammaT: 1.034832749, BetaV: 0.999157205, GammaV: 1.006179146, F: 0.281570073085, Departure: &kunzWagner2012GeneralizedAlkane},
	{First: r170, Second: r600a, BetaT: 1, GammaT: 1.033283811, BetaV: 1, GammaV: 1.006616886, F: 0.260632376098, Departure: &kunzWagner2012GeneralizedAlkane},
	{First: r290, Second: r600, BetaT: 1.000310289, GammaT: 1.007392782, BetaV: 0.999795868, GammaV: 1.003264179, F: 0.0312572600489, Departure: &kunzWagner2012GeneralizedAlkane},
	{First: r290, Second: r600a, BetaT: 0.998012298, GammaT: 1.005250774, BetaV: 0.999243146, GammaV: 1.001156119, F: -0.0551609771024, Departure: &kunzWagner2012GeneralizedAlkane},
	{First: r600, Second: r600a, BetaT: 1.000077547, GammaT: 1.001432824, BetaV: 1.000880464, GammaV: 1.00041444, F: -0.0551240293009, Departure: &kunzWagner2012GeneralizedAlkane},
}}

// kunzWagner2012GeneralizedAlkane is the generalized departure function of alkane pairs in the same
// publication.
var kunzWagner2012GeneralizedAlkane = helmholtz.Residual{Power: []helmholtz.Power{ // n, t, d, l
	{2.5574776844118, 1, 1, 0},
	{-7.9846357136353, 1.55, 1, 0},
	{4.7859131465806, 1.7, 1, 0},
	{-0.73265392369587, 0.25, 2, 0},
	{1.3805471345312, 1.35, 2, 0},
	{0.28349603476365, 0, 3, 0},
	{-0.49087385940425, 1.25, 3, 0},
	{-0.10291888921447, 0, 4, 0},
	{0.11836314681968, 0.7, 4, 0},
	{5.5527385721943e-5, 5.4, 4, 0},
}}
