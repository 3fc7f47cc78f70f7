// Package moisture estimates the water that outdoor air brings into an open
// refrigerant line: the least, by diffusion in still air, and the most, by air
// that moves in and out.
//
// SI throughout. The least rests on published diffusivity. The most rests on
// assumptions about draught and warmth, named at each function.
package moisture

import "math"

// vapourGas is the gas constant of water vapour, J/(kg K).
const vapourGas = 461.523

// VapourDensity returns the water in air, kg/m³, from its partial pressure
// e (Pa) at t (K): e/(R T).
func VapourDensity(e, t float64) float64 { return e / (vapourGas * t) }

// Diffusivity returns the diffusivity of water vapour in air, m²/s, at t (K)
// and p (Pa):
//
//	D = 0.2178 cm²/s (T/273.15)^1.81 (101325/p)
//
// Range 273.15 to 373.15 K. Source: Massman, Atmospheric Environment 32 (1998) 1111.
func Diffusivity(t, p float64) float64 {
	return 0.2178e-4 * math.Pow(t/273.15, 1.81) * 101325 / p
}

// Diffused returns the water, kg, that diffuses into a tube of bore d (m) from
// air with c (kg/m³) of water in time s, when the air in the tube starts dry and
// stays dry at the depth l (m), where oil or a drier takes all:
//
//	short times   m = 2 A c √(D t/π)
//	long times    m = A c (D t/l + l/3 - (2 l/π²) exp(-π² D t/l²))
//
// Fick's law; the two agree within 0.2 % where they meet, at D t = 0.2 l².
// Source: Crank, The Mathematics of Diffusion, plane sheet.
func Diffused(c, diffusivity, d, l, s float64) float64 {
	area := math.Pi / 4 * d * d
	fourier := diffusivity * s / (l * l)
	if fourier < 0.2 {
		return 2 * area * c * math.Sqrt(diffusivity*s/math.Pi)
	}
	return area * c * l * (fourier + 1.0/3 - 2/(math.Pi*math.Pi)*math.Exp(-math.Pi*math.Pi*fourier))
}

const gravity = 9.80665

// Exchange returns the flow of air, m³/s, that can trade places through one
// opening of bore d (m) when the air inside is warmer or colder by dt (K) at t (K):
//
//	Q = 0.1 √(g d⁵ ΔT/T)
//
// The factor is the largest that experiments with one opening found, as
// recalled (key epstein-1988); a long tube passes less.
func Exchange(d, dt, t float64) float64 {
	return 0.1 * math.Sqrt(gravity*math.Pow(d, 5)*dt/t)
}

// Draught returns the flow of air, m³/s, through a tube of bore d and length l
// (m) that is open at both ends, when wind or a warm riser drives it with dp (Pa):
//
//	v = dp d²/(32 η l), at most √(2 dp/ρ)
//
// η 1.82e-5 Pa·s and ρ 1.2 kg/m³ of air. Laminar flow passes the most.
func Draught(d, l, dp float64) float64 {
	v := math.Min(dp*d*d/(32*1.82e-5*l), math.Sqrt(2*dp/1.2))
	return v * math.Pi / 4 * d * d
}
