package mixture

// Bell2025 holds the pairs published in Ian H. Bell, Modeling Mixtures Containing Refrigerants: Updated
// Interaction Parameters, J. Chem. Eng. Data (2025), doi 10.1021/acs.jced.4c00699.
var Bell2025 = Publication{Source: "bell-jced-2025", Pairs: []Pair{
	{First: r744, Second: r1234yf, BetaT: 1.025281, GammaT: 0.972965, BetaV: 1.051991, GammaV: 1.029336},
	{First: r744, Second: r1234zeE, BetaT: 1.008025, GammaT: 0.973804, BetaV: 1.142918, GammaV: 1.076023},
	{First: r152a, Second: r1234zeE, BetaT: 1.011543, GammaT: 1.00236, BetaV: 0.896336, GammaV: 0.932409},
	{First: r125, Second: r13I1, BetaT: 0.989972, GammaT: 0.955147, BetaV: 1.009413, GammaV: 1.004957},
	{First: r32, Second: r13I1, BetaT: 0.993026, GammaT: 0.934839, BetaV: 1.013481, GammaV: 0.858023},
	{First: r290, Second: r1234yf, BetaT: 1.006037, GammaT: 0.937793, BetaV: 1.013434, GammaV: 1.013195},
	{First: r125, Second: r1234zeE, BetaT: 0.994388, GammaT: 1.00124, BetaV: 1.028287, GammaV: 0.999334},
	{First: r290, Second: r22, BetaT: 1, GammaT: 0.942193, BetaV: 1, GammaV: 1},
	{First: r32, Second: r115, BetaT: 1, GammaT: 0.881714, BetaV: 1, GammaV: 1},
	{First: r1234zeE, Second: r1336mzzE, BetaT: 1, GammaT: 0.99623, BetaV: 1, GammaV: 1},
	{First: r134a, Second: r1336mzzE, BetaT: 1, GammaT: 0.980372, BetaV: 1, GammaV: 1},
	{First: r227ea, Second: r1336mzzE, BetaT: 1, GammaT: 0.99773, BetaV: 1, GammaV: 1},
}}
