package oil

import (
	"math"
	"testing"

	"changeout/calc/published/near"
)

// TestFlooding: the project's reference computes the mass flux of the formula for a gas of 23.6 kg/m³ under a liquid of
// 890 kg/m³; the root carries it over to the liquid used here. Printed to five figures: 1e-3 of some 50 kg/(m² s).
func TestFlooding(t *testing.T) {
	for _, c := range []struct{ bore, flux float64 }{{0.785, 45.684}, {1.025, 52.203}, {1.265, 57.993}} {
		want := c.flux * math.Sqrt((LiquidDensity-23.6)/(890-23.6))
		near.Value(t, "flux", 23.6*Flooding(23.6, c.bore*0.0254), want, 1e-3, "standards.md section 9, computed there")
	}
	// The least capacity grows as d^2.5: twice the bore carries oil from 2^2.5 times the capacity.
	near.Value(t, "scaling", Flooding(30, 0.04)*4/Flooding(30, 0.02), math.Pow(2, 2.5), 1e-12, "the same, scaling")
}

// TestVelocity: the trade notes' shell: 8 m/s in 38.4 mm is 0.8 m/s in 120 mm, printed to one decimal.
func TestVelocity(t *testing.T) {
	near.Value(t, "shell", 8/Spread(0.120, 0.0384), 0.8, 0.05, "practice.md A.9")
	near.Value(t, "speed", Velocity(MassFlow(10e3, 200e3), 25, 0.02), 0.05/(25*math.Pi*1e-4), 1e-12, "by hand")
}

// TestClassifyNeverMilder: a worse finding never leads to a milder class. What is unknown is no finding; Residual asks for the
// same clean-up as Mild and counts with it.
func TestClassifyNeverMilder(t *testing.T) {
	rank := map[Class]int{None: 0, Suspect: 1, Mild: 2, Residual: 2, Severe: 3}
	levels := []Level{Fine, Middling, Bad}
	for _, test := range levels {
		for _, look := range levels {
			for _, stub := range levels {
				here := Classify(test, look, stub)
				if here == Undecided {
					t.Errorf("%d %d %d: all known, no class", test, look, stub)
				}
				for _, worse := range []Class{Classify(min(test+1, Bad), look, stub), Classify(test, min(look+1, Bad), stub), Classify(test, look, min(stub+1, Bad))} {
					if rank[worse] < rank[here] {
						t.Errorf("%d %d %d is %d, a worse finding %d", test, look, stub, here, worse)
					}
				}
			}
		}
	}
	// Nothing unknown may pass as none.
	for _, u := range [][3]Level{{Unknown, Fine, Fine}, {Fine, Unknown, Fine}, {Fine, Fine, Unknown}} {
		if c := Classify(u[0], u[1], u[2]); c != Undecided {
			t.Errorf("%v: got class %d, want undecided", u, c)
		}
	}
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		acid float64
		want Level
	}{{0.09, Fine}, {0.10, Middling}, {0.19, Middling}, {0.20, Bad}} {
		if got := Number(c.acid, EsterWatch, EsterLimit); got != c.want {
			t.Errorf("POE %v: got %d, want %d (manual-51)", c.acid, got, c.want)
		}
	}
	if got := Number(0.051, MineralLimit, MineralLimit); got != Bad {
		t.Errorf("mineral 0.051: got %d, want %d (practice-40)", got, Bad)
	}
}
