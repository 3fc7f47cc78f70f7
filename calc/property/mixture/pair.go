package mixture

import "changeout/calc/property/helmholtz"

// Pair holds the published parameters of one pair of components. The order of the two matters: β is directional, and
// β_ji = 1/β_ij. Either the four GERG numbers are given, or ξ and ζ of Lemmon and Jacobsen.
type Pair struct {
	First, Second                string  // CAS registry numbers
	BetaT, GammaT, BetaV, GammaV float64 // GERG form
	Xi                           float64 // K, Lemmon-Jacobsen form
	Zeta                         float64 // m³/mol, Lemmon-Jacobsen form
	F                            float64 // weight of the departure function
	Departure                    *helmholtz.Residual
}

// find gives the pair in the order asked for.
func find(first, second string) (Pair, bool) {
	for _, list := range published {
		for _, p := range list {
			if p.First == first && p.Second == second {
				return p, true
			}
			if p.First == second && p.Second == first {
				p.First, p.Second = first, second
				if p.BetaT != 0 {
					p.BetaT, p.BetaV = 1/p.BetaT, 1/p.BetaV
				}
				return p, true
			}
		}
	}
	return Pair{}, false
}
