package curve

// Typical holds the coefficients of a typical refrigerant, in units of 2^-24: the mean of each over the catalogue when the
// curves were first fitted. A record holds differences from it, which are shorter. It is part of the format, not of the
// fit: it stays as it is when refrigerants are added, so that their records alone change.
var Typical = [kindCount][maxTerms]int32{
	{221401975, -44613876, -14455364, -3735387, -1097940, -302486, -83876, -22598, -6104, -1663, -457, -129, -39, -13, -4, -1},
	{115131083, 5465657, -522182, 115794, -21795, 6653, -1890, 575, -150, 38, -28, 8, -4, 2, -3, 1, -1},
	{-73567339, -8218980, 812375, -231806, -44849, -31369, -7535, -2977, -534, -225, 22, -8, -4, -5, 1},
	{-2586662, -2521269, -798888, -297618, -96979, -31037, -9270, -2819, -830, -232, -61, -19, -7, -1},
}
