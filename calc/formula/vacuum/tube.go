package vacuum

import "math"

// Constants of air at 20 °C.
const (
	// viscous and molecular are the two terms of the tube formula, in SI:
	// 135 d⁴ p/l and 12.1 d³/l in litres per second, centimetres and millibar.
	viscous   = 1350.0
	molecular = 121.0
	// choked is the flow through an opening into a deep vacuum, m³/s for each m²
	// of the opening and each Pa before it: 20 L/s for each cm².
	choked       = 200.0
	airViscosity = 1.82e-5 // Pa·s
	airRT        = 84147.0 // J/kg
)

// Tube is a round tube, long against its bore.
type Tube struct{ Bore, Length float64 }

// slip is Knudsen's transition factor (1 + 192 d p)/(1 + 237 d p), d in cm and
// p in mbar; the product has the same number in m and Pa.
func slip(d, p float64) float64 { return (1 + 192*d*p) / (1 + 237*d*p) }

// Conductance returns the conductance for air at 20 °C, m³/s, at the mean
// pressure p (Pa) of the tube:
//
//	C = 1350 d⁴ p/l + 121 d³/l · (1 + 192 d p)/(1 + 237 d p)
//
// d and l in m. It joins laminar and molecular flow and holds for long tubes,
// l above about 20 d; shorter ones pass less. Source: Knudsen's formula as
// handbooks of vacuum technology print it (key vacuum-fundamentals, equation 1.26).
func (t Tube) Conductance(p float64) float64 {
	d3 := t.Bore * t.Bore * t.Bore
	return (viscous*d3*t.Bore*p + molecular*d3*slip(t.Bore, p)) / t.Length
}

// Upstream returns the pressure before the tube, Pa, at which the flow q
// (Pa·m³/s) passes it, with p2 (Pa) behind it. The mean pressure is
// solved, not assumed: q = C((p1 + p2)/2) (p1 - p2).
//
// Near the atmosphere the flow is turbulent, and a narrow passage chokes.
// The highest of three pressures is returned, which is the least favourable:
//
//	laminar to molecular   the formula of Conductance
//	turbulent              p1² - p2² = 0.3164 Re^-1/4 (l/d) (q/A)²/(R T)   (Blasius)
//	choked                 p1 = q/(200 m/s · A)
func (t Tube) Upstream(q, p2 float64) float64 {
	if !(q > 0) || t.Length == 0 {
		return p2
	}
	d := t.Bore
	d3 := d * d * d
	v := viscous * d3 * d / t.Length
	p1 := p2
	// slip lies between 0.81 and 1, so a few rounds settle it.
	for range 12 {
		m := molecular * d3 / t.Length * slip(d, (p1+p2)/2)
		c := q + v*p2*p2/2 + m*p2
		before := p1
		p1 = 2 * c / (m + math.Sqrt(m*m+2*v*c))
		if math.Abs(p1-before) < 1e-11*p1 {
			break
		}
	}
	area := math.Pi / 4 * d * d
	blasius := 0.3164 * math.Sqrt(math.Sqrt(math.Pi/4*d*airViscosity*airRT/q)) * t.Length / d
	turbulent := math.Sqrt(p2*p2 + blasius*q*q/(airRT*area*area))
	return math.Max(math.Max(p1, turbulent), q/(choked*area))
}
