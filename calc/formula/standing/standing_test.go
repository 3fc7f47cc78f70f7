package standing_test

import (
	"math"
	"testing"

	"changeout/calc/formula/standing"
)

func TestStanding(t *testing.T) {
	for _, c := range []struct {
		what                 string
		got, want, tolerance float64
		source               string
	}{
		{"isothermal, 60 L at 4.0 MPa gauge, J", standing.Isothermal(4.101325e6, 0.06, 101325), 0.91e6, 5e3, "test vector of the trade notes, 0.91 MJ"},
		// The equation of the standard printed for air: 2.5 p V (1 − (101 000/p)^0.286); its rounded exponent and atmosphere make 0.1 %.
		{"isentropic, the same, J", standing.Energy(4.101325e6, 0.06, 101325), 2.5 * 4.101325e6 * 0.06 * (1 - math.Pow(101000/4.101325e6, 0.286)), 500, "ASME PCC-2, II-2"},
		{"TNT, kg", standing.TNT(4266920), 1, 1e-12, "ASME PCC-2, II-3"},
		{"1 kg of TNT, m", standing.ScaledDistance(4266920), 25.198421, 1e-6, "20 × 2^(1/3)"},
		{"little energy, m", standing.StandOff(1e5), 30.48, 1e-12, "ASME PCC-2, III: 100 ft"},
		{"136 MJ, m", standing.StandOff(136e6), 79.9, 0.1, "20 (2 × 31.87)^(1/3), above the 60 m"},
		{"gauge alone, Pa", standing.Doubt(6000, 1, 0, 0, 0), 2 * 6000 * math.Sqrt(2.0/3), 1e-9, "JCGM 100: two rectangular errors, k = 2"},
		{"temperature alone, Pa", standing.Doubt(0, 1, 14e3, 1, 0), 2 * 14e3 * math.Sqrt(2.0/3), 1e-9, "JCGM 100"},
		{"throughput", standing.Throughput(1000, 0.1, 100), 1, 1e-12, "1000 Pa × 0.1 m³ ÷ 100 s"},
	} {
		if d := math.Abs(c.got - c.want); !(d <= c.tolerance) {
			t.Errorf("%s: got %v, want %v, difference %g, tolerance %g (%s)", c.what, c.got, c.want, d, c.tolerance, c.source)
		}
	}
}
