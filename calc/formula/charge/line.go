package charge

import "math"

// LineFactor returns the mass of liquid in one metre of tube:
//
//	m' = ρ π d² / 4
//
// with the bore d in m and the liquid density ρ in kg/m³; the result is in
// kg/m. It is geometry only: makers' factors include their own allowances, so
// a factor computed this way is an estimate.
func LineFactor(bore, density float64) float64 {
	return density * math.Pi * bore * bore / 4
}

// Tube is one size of soft copper tube for refrigerant lines.
type Tube struct {
	Outside float64 // outside diameter, m
	Wall    float64 // wall thickness, m
}

// Bore returns the inside diameter, m.
func (t Tube) Bore() float64 { return t.Outside - 2*t.Wall }

// tubes are the annealed coil sizes of ASTM B280 (outside diameter and wall in
// inches, read in a table that restates the standard). Metric sizes sold as
// 9.52 mm and so on are the same tube. Where the standard lists two walls for
// 3/4 in the heavier one is used, because it is the one for R-410A pressures.
var tubes = []struct{ od, wall float64 }{
	{0.250, 0.030}, {0.3125, 0.032}, {0.375, 0.032}, {0.500, 0.032}, {0.625, 0.035},
	{0.750, 0.042}, {0.875, 0.045}, {1.125, 0.050}, {1.375, 0.055}, {1.625, 0.060},
}

// StandardTube returns the standard tube whose outside diameter is within
// 0.15 mm of the one given, in m, and false when there is none.
func StandardTube(outside float64) (Tube, bool) {
	for _, t := range tubes {
		if math.Abs(t.od*0.0254-outside) <= 0.15e-3 {
			return Tube{Outside: t.od * 0.0254, Wall: t.wall * 0.0254}, true
		}
	}
	return Tube{}, false
}

// Published is a range of line factors that makers print for one size.
type Published struct {
	Outside   float64 // m
	Low, High float64 // kg/m
}

// published410A is the spread over the charge tables of four makers, and
// published32 one maker's table, as collected in the bibliography under
// manual-44 to manual-47 and manual-48.
var (
	published410A = []Published{
		{6.35e-3, 0.020, 0.022}, {9.52e-3, 0.057, 0.061}, {12.7e-3, 0.110, 0.125}, {15.88e-3, 0.170, 0.180},
		{19.05e-3, 0.260, 0.265}, {22.2e-3, 0.353, 0.370}, {25.4e-3, 0.52, 0.52}, {28.6e-3, 0.68, 0.68},
	}
	published32 = []Published{{6.35e-3, 0.012, 0.012}, {9.52e-3, 0.024, 0.024}, {12.7e-3, 0.040, 0.040}}
)

// PublishedFactor returns the range of printed line factors for a refrigerant
// and an outside diameter in m, and false where none was read.
func PublishedFactor(refrigerant string, outside float64) (Published, bool) {
	table := published410A
	switch refrigerant {
	case "R-410A":
	case "R-32":
		table = published32
	default:
		return Published{}, false
	}
	for _, p := range table {
		if math.Abs(p.Outside-outside) <= 0.15e-3 {
			return p, true
		}
	}
	return Published{}, false
}
