package helmholtz

import "math"

// Ideal is the part of α⁰ that depends on temperature, with R and τ of the equation it belongs to. The density part ln δ
// is added where it is used. Terms not in an equation are zero or nil.
//
//	A1 + A2 τ + LogTau ln τ + Σ Power + Σ Einstein + Σ HeatCapacity
type Ideal struct {
	A1, A2 float64 // integration constants of the paper
	LogTau float64
	// OffsetA1 and OffsetA2 move enthalpy and entropy to the reference state the equation is usually quoted with.
	OffsetA1, OffsetA2 float64
	Power              []IdealPower
	Einstein           []Einstein
	HeatCapacity       []HeatCapacity
	HeatCapacityT0     float64 // K, lower limit of the integrals over HeatCapacity
}

// IdealPower is n τ^t, as {n, t}.
type IdealPower [2]float64

// Einstein is the vibrational term of Planck and Einstein, n ln(1 - exp(-θ τ)), as {n, θ}.
type Einstein [2]float64

// HeatCapacity is a term c T^e (T in K) of cp⁰/R, as {c, e}, integrated from HeatCapacityT0.
type HeatCapacity [2]float64

// Evaluate gives the temperature part of α⁰, τ α⁰_τ and τ² α⁰_ττ at temperature T, K, for a reducing temperature Tr, K.
func (d *Ideal) Evaluate(T, Tr float64) (a, at, att float64) {
	tau := Tr / T
	lnTau := math.Log(tau)
	a = d.A1 + d.OffsetA1 + (d.A2+d.OffsetA2)*tau + d.LogTau*lnTau
	at = (d.A2+d.OffsetA2)*tau + d.LogTau
	att = -d.LogTau
	for _, term := range d.Power {
		n, t := term[0], term[1]
		v := n * Exp(t*lnTau)
		a += v
		at += v * t
		att += v * t * (t - 1)
	}
	for _, term := range d.Einstein {
		n, u := term[0], term[1]*tau
		e := Exp(-u)
		a += n * math.Log1p(-e)
		at += n * u * e / (1 - e)
		att -= n * u * u * e / ((1 - e) * (1 - e))
	}
	// For cp⁰/R = c T^e:  α = (1/T) ∫ c T^e dT - ∫ c T^(e-1) dT, both from T0.
	t0 := d.HeatCapacityT0
	for _, term := range d.HeatCapacity {
		c, e := term[0], term[1]
		var h, s float64 // ∫ c T^e dT and ∫ c T^(e-1) dT
		switch e {
		case 0:
			h, s = c*(T-t0), c*math.Log(T/t0)
		case -1:
			h, s = c*math.Log(T/t0), c*(1/t0-1/T)
		default:
			h = c / (e + 1) * (math.Pow(T, e+1) - math.Pow(t0, e+1))
			s = c / e * (math.Pow(T, e) - math.Pow(t0, e))
		}
		a += h/T - s
		at += h / T
		att -= c * math.Pow(T, e)
	}
	return a, at, att
}
