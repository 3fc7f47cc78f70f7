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

// Publication is a set of pairs that appeared together.
type Publication struct {
	Source string // bibliography key
	Pairs  []Pair
}

// find gives the pair in the order asked for, with the key of its publication.
func find(first, second string) (p Pair, source string, ok bool) {
	for _, publication := range published {
		for _, p := range publication.Pairs {
			if p.First == first && p.Second == second {
				return p, publication.Source, true
			}
			if p.First == second && p.Second == first {
				p.First, p.Second = first, second
				if p.BetaT != 0 {
					p.BetaT, p.BetaV = 1/p.BetaT, 1/p.BetaV
				}
				return p, publication.Source, true
			}
		}
	}
	return Pair{}, "", false
}
