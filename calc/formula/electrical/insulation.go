package electrical

import "math"

// InsulationAt brings an insulation resistance from the temperature t to to:
//
//	R(to) = R × 0.5^((to − t)/10 K)
//
// with t and to in K: it halves for every 10 K of warming. The rule of IEEE 43
// for thermoplastic insulation; trusted here from 10 to 60 °C. It knows
// nothing of refrigerant or moisture.
func InsulationAt(r, t, to float64) float64 { return r * math.Exp2((t-to)/10) }

// ThermosettingAt is the same by the flatter curve that the 2013 edition of
// IEEE 43 gives for thermosetting insulation, 10 to 60 °C:
//
//	R(to) = R × exp(4230 K × (1/to − 1/t))
//
// Source: from memory; verify before use.
func ThermosettingAt(r, t, to float64) float64 { return r * math.Exp(4230*(1/to-1/t)) }
