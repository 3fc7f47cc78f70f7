// Package room holds the room-size formulas for flammable refrigerants of
// IEC 60335-2-40, annex GG, and the standards that share them. SI throughout:
// kg, m, m², kg/m³.
package room

import "math"

// Lowest is the least release height that the formulas take, m.
const Lowest = 0.6

// share is the part of the lower flammability limit that a fully mixed room
// may reach where the linear rule applies (edition 6 of 2018).
const share = 0.75

// Caps are the three charges between which the rules change, as volumes in m³
// that are multiplied by the lower flammability limit: up to the first no room
// area is asked for, up to the second the area formula serves, above the third
// the standard ends.
type Caps [3]float64

// Charges returns the three caps in kg for a lower flammability limit in
// kg/m³: m₁, m₂, m₃.
func (c Caps) Charges(lfl float64) (m1, m2, m3 float64) {
	return c[0] * lfl, c[1] * lfl, c[2] * lfl
}

// LargestCharge returns the charge for an unventilated room of a floor area:
//
//	m = 2.5 LFL^(5/4) h √A      and, where linear, m ≤ 0.75 LFL h A
//
// with LFL in kg/m³, the release height h in m (0.6 m at least) and the area A
// in m²; kg. Source: annex GG, GG.2, as restated in installation manuals; the
// linear part reproduces the small rooms of the printed table of 2018.
func LargestCharge(lfl, height, area float64, linear bool) float64 {
	h := math.Max(height, Lowest)
	m := 2.5 * math.Pow(lfl, 1.25) * h * math.Sqrt(area)
	if linear {
		m = math.Min(m, share*lfl*h*area)
	}
	return m
}

// SmallestArea is the inverse of LargestCharge: the floor area in m² that a
// charge in kg needs, the larger of the two where the linear part applies.
func SmallestArea(charge, lfl, height float64, linear bool) float64 {
	h := math.Max(height, Lowest)
	root := charge / (2.5 * math.Pow(lfl, 1.25) * h)
	area := root * root
	if linear {
		area = math.Max(area, charge/(share*lfl*h))
	}
	return area
}
