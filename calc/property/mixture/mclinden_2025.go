package mixture

// McLinden2025 holds the pairs published in Mark O. McLinden et al., Refrigerant Properties Development R&D -
// Final Report to U.S. Department of Energy on Interagency Agreements 892434-19-S-EE000031 and
// 892434-23-S-EE000120, National Institute of Standards and Technology, Gaithersburg, MD (2025), doi
// 10.6028/NIST.IR.8570.
var McLinden2025 = Publication{Source: "mclinden-nistir-8570", Pairs: []Pair{
	{First: r1132E, Second: r1234yf, BetaT: 0.9835, GammaT: 0.9999, BetaV: 0.9972, GammaV: 1.0197},
}}
