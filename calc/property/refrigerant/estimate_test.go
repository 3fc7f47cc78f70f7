package refrigerant

import (
	"math"
	"testing"

	"changeout/calc/property/viscosity"
)

// TestEstimateAgainstCorrelations measures the estimate where a correlation exists: what it says of R-32 or R-454B cannot be
// better than what it says here. Along saturation from -40 °C, or 0.6 of the critical temperature if higher, to 0.95 of it.
// The tolerances are the constants that users of the package show.
func TestEstimateAgainstCorrelations(t *testing.T) {
	fluids := 0
	var sum [2]float64
	n := 0
	for _, c := range viscosity.All {
		r, ok := Lookup(c.Name)
		if !ok {
			continue
		}
		low, high := max(233.15, 0.6*r.Critical.T, c.MinT), min(0.95*r.Critical.T, c.MaxT)
		var worst [2]float64
		count := 0
		for i := range 26 {
			T := low + (high-low)*float64(i)/25
			for phase, saturated := range []func(float64) (Properties, error){r.SaturatedLiquid, r.SaturatedVapor} {
				p, err := saturated(T)
				if err != nil {
					continue // below the triple point
				}
				want, err := c.At(T, p.Rho/r.MolarMass)
				if err != nil {
					t.Errorf("%s at %.1f K: correlation: %v", r.Name, T, err)
				}
				got, err := r.estimate(T, p.Rho/r.MolarMass)
				if err == ErrNoViscosity {
					continue
				}
				if err != nil {
					t.Errorf("%s at %.1f K: %v", r.Name, T, err)
				}
				d := got/want - 1
				if T < 0.9*r.Critical.T && !(math.Abs(d) < 0.14) || len(r.Components) > 1 && !(math.Abs(d) < 0.07) {
					t.Errorf("%s at %.1f K: estimate %.4g, correlation %.4g Pa s, difference %.3f", r.Name, T, got, want, d)
				}
				if !(math.Abs(d) <= math.Abs(worst[phase])) {
					worst[phase] = d
				}
				sum[phase] += math.Abs(d)
				count++
			}
		}
		if count == 0 {
			continue
		}
		fluids++
		n += count / 2
		t.Logf("%-8s liquid worst %+5.1f %%, vapour worst %+5.1f %%", r.Name, 100*worst[0], 100*worst[1])
		if !(math.Abs(worst[0]) < EstimateErrorLiquid && math.Abs(worst[1]) < EstimateErrorGas) {
			t.Errorf("%s: liquid %.3f of %.2f, vapour %.3f of %.2f", r.Name, worst[0], EstimateErrorLiquid, worst[1], EstimateErrorGas)
		}
	}
	if fluids < 13 {
		t.Errorf("%d fluids compared, want 13", fluids)
	}
	t.Logf("mean: liquid %.1f %%, vapour %.1f %%", 100*sum[0]/float64(n), 100*sum[1]/float64(n))
}
