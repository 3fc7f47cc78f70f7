package moisture

import (
	"math"
	"testing"

	"changeout/calc/published/near"
)

func TestVapourDensity(t *testing.T) {
	// Saturated vapour is 0.14 % and 0.20 % denser than an ideal gas there.
	near.Value(t, "20 °C", VapourDensity(2339.318, 293.15), 17.314e-3, 0.04e-3, "CoolProp 8.0.0, saturated vapour")
	near.Value(t, "30 °C", VapourDensity(4246.97, 303.15), 30.415e-3, 0.09e-3, "CoolProp 8.0.0, saturated vapour")
}

func TestDiffusivity(t *testing.T) {
	near.Value(t, "0 °C", Diffusivity(273.15, 101325), 0.2178e-4, 1e-12, "massman-1998")
	// Another evaluation, 1.87e-10 T^2.072 (Marrero and Mason 1972, as recalled), agrees within 2 %.
	near.Value(t, "25 °C", Diffusivity(298.15, 101325), 1.87e-10*math.Pow(298.15, 2.072), 0.02*0.25e-4, "Marrero and Mason 1972, from memory")
}

// TestDiffused: the two formulas meet, and agree with the sum of the series.
func TestDiffused(t *testing.T) {
	const c, d, bore, l = 0.02, 0.25e-4, 0.02, 2.0
	area := math.Pi / 4 * bore * bore
	for _, fourier := range []float64{0.02, 0.1, 0.199, 0.2001, 0.5, 3} {
		sum := 0.0
		for n := 1.0; n < 4000; n++ {
			sum += (1 - math.Exp(-n*n*math.Pi*math.Pi*fourier)) / (n * n)
		}
		want := area * c * l * (fourier + 2/(math.Pi*math.Pi)*sum)
		near.Value(t, "diffused", Diffused(c, d, bore, l, fourier*l*l/d), want, 2e-3*want, "crank-diffusion, whole series")
	}
}

func TestAirMoves(t *testing.T) {
	// 2 m of 10 mm, 1 Pa: v = 1 × 1e-4/(32 × 1.82e-5 × 2) = 0.08585 m/s.
	near.Value(t, "draught", Draught(0.01, 2, 1), 0.08585*math.Pi/4*1e-4, 1e-9, "Poiseuille, hand arithmetic")
	// A short wide opening is held by inertia: √(2 × 5.4/1.2) = 3 m/s.
	near.Value(t, "short draught", Draught(0.1, 0.1, 5.4), 3*math.Pi/4*0.01, 1e-6, "Bernoulli, hand arithmetic")
	near.Value(t, "exchange", Exchange(0.02, 10, 300), 0.1*math.Sqrt(9.80665*3.2e-9*10/300), 1e-12, "hand arithmetic")
}
