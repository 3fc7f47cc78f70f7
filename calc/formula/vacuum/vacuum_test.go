package vacuum

import (
	"math"
	"testing"

	"changeout/calc/published/near"
)

const cfm = 0.028316846592 / 60

// TestConductance: the SI form against the form in litres, centimetres and
// millibar that handbooks print. Only rounding may differ.
func TestConductance(t *testing.T) {
	for _, c := range []struct{ d, l, p float64 }{{0.48, 150, 0.336}, {0.79, 150, 0.35}, {1.1, 500, 1e-4}, {1.9, 150, 5}, {0.2, 2.5, 20}} {
		want := 1e-3 * (135*math.Pow(c.d, 4)/c.l*c.p + 12.1*math.Pow(c.d, 3)/c.l*(1+192*c.d*c.p)/(1+237*c.d*c.p))
		got := Tube{Bore: c.d / 100, Length: c.l / 100}.Conductance(100 * c.p)
		near.Value(t, "conductance", got, want, 1e-12*want, "vacuum-fundamentals, equation 1.26, arithmetic")
	}
}

// TestMolecularExample: a pump maker's worked example, 70 mm by 2.47 m. It
// takes 471 m/s for the molecules and we 12.1 L/s, which is 2 % less.
func TestMolecularExample(t *testing.T) {
	near.Value(t, "molecular conductance", Tube{0.07, 2.47}.Conductance(1e-6), 0.017123, 0.02*0.017123, "vacuum-conductance, 7.3.2")
	w := Path{Hose: Tube{0.07, 2.47}, Ports: 1, Speed: 2.9722e-2, Base: 1e-9}
	near.Value(t, "effective speed", w.Share(1e-4)*w.Speed, 1.0864e-2, 0.02*1.0864e-2, "vacuum-conductance, 7.3.2")
}

// TestHoseAt500: hand arithmetic for the ¼ in hose at 500 micron with a 6 cfm
// pump. The mean pressure of the hose is about half of 500 micron, 33.6 Pa;
// C = 1350 d⁴ 33.6/1.5 + 121 d³/1.5 × 0.822 = 0.02334 L/s; 1/(1/2.83 + 1/C) is
// 0.82 %. Taking 500 micron for the mean gives 1.4 %, as the field note does.
func TestHoseAt500(t *testing.T) {
	const p = 500 * 101325.0 / 760000
	w := Path{Hose: Tube{4.8e-3, 1.5}, Ports: 1, Speed: 6 * cfm, Base: 1e-6}
	near.Value(t, "share", w.Share(p), 0.00818, 0.00005, "hand arithmetic of equation 1.26")
	c := w.Hose.Conductance(p)
	near.Value(t, "share with the system pressure as the mean", 1/(1+w.Speed/c), 0.0137, 0.0002, "practice notes, I.8: 1.4 %")
}

// TestPumpDownWithoutHose: t = V/S ln((p0 - b)/(p - b)), exact for a pump on
// the vessel; the trapezoids may be off by 0.1 %.
func TestPumpDownWithoutHose(t *testing.T) {
	w := Path{Ports: 1, Speed: 0.16 / 60, Base: 5}
	s := w.PumpDown(1, 101300, 20000)
	want := 1 / w.Speed * math.Log((101300.0-5)/(20000-5))
	near.Value(t, "time", s[len(s)-1].Time, want, 1e-3*want, "pump formula, exact")
	s = w.PumpDown(1, 101325, 66.66)
	want = 1 / w.Speed * math.Log((101325-5)/(66.66-5))
	near.Value(t, "time to 500 micron", s[len(s)-1].Time, want, 1e-3*want, "pump formula, exact")
}

// TestSteps: a finer grid changes the time by less than 0.2 %.
func TestSteps(t *testing.T) {
	w := Path{Run: []Tube{{8e-3, 20}}, Core: Tube{2e-3, 0.025}, Hose: Tube{4.8e-3, 1.5}, Ports: 1, Speed: 6 * cfm, Base: 6.7}
	coarse := w.PumpDown(0.06, 101325, 66.66)
	fine := 0.0
	edges := []float64{101325, 30000, 8000, 2000, 500, 200, 100, 66.66}
	for i := 1; i < len(edges); i++ {
		part := w.PumpDown(0.06, edges[i-1], edges[i])
		fine += part[len(part)-1].Time
	}
	near.Value(t, "time on one grid", coarse[len(coarse)-1].Time, fine, 2e-3*fine, "the same in seven grids of 160 steps")
}

// TestShape: more of anything good is never slower, flow is the same in every
// part, and pressures fall towards the pump.
func TestShape(t *testing.T) {
	base := Path{Run: []Tube{{8e-3, 10}}, Core: Tube{2e-3, 0.025}, Hose: Tube{7.9e-3, 1.5}, Ports: 1, Speed: 6 * cfm, Base: 5}
	for p := 6.0; p < 1e5; p *= 1.7 {
		share := base.Share(p)
		if !(share > 0 && share <= 1) {
			t.Errorf("share at %g Pa: %g", p, share)
		}
		a := base.AtFar(p)
		if !(a.P[Pump] <= a.P[Hose] && a.P[Hose] <= a.P[Core] && a.P[Core] <= a.P[Run]) {
			t.Errorf("pressures at %g Pa: %v", p, a.P)
		}
		near.Value(t, "far pressure found", a.Far(), p, 1e-6*p, "what was asked for")
		for name, change := range map[string]func(*Path){
			"core out":   func(w *Path) { w.Core = Tube{} },
			"wide hose":  func(w *Path) { w.Hose.Bore *= 1.3 },
			"short hose": func(w *Path) { w.Hose.Length /= 2 },
			"two hoses":  func(w *Path) { w.Ports = 2 },
			"no run":     func(w *Path) { w.Run = nil },
		} {
			better := base
			change(&better)
			if s := better.Share(p); !(s >= share*(1-1e-9)) {
				t.Errorf("%s at %g Pa: share %g, before %g", name, p, s, share)
			}
		}
	}
}

// TestChokedCore: near the atmosphere a 2 mm opening passes 20 L/s for each
// cm², whatever the pump.
func TestChokedCore(t *testing.T) {
	w := Path{Core: Tube{2e-3, 0.025}, Ports: 1, Speed: 1, Base: 1}
	got := w.AtFar(101325).Flow / 101325
	want := 0.02 * math.Pi / 4 * 0.2 * 0.2
	near.Value(t, "volume flow", got, want, 1e-6, "20 L/(s cm²), choked air")
}

// TestEvaporation: 1 lb of water at 70 °F fills 867 ft³ at saturation, so a pump of 6 cfm takes 144.5 min.
func TestEvaporation(t *testing.T) {
	w := Path{Ports: 1, Speed: 6 * cfm, Base: 1e-6}
	got := w.EvaporationTime(0.45359237, (70+459.67)/1.8, 2504) / 60
	near.Value(t, "minutes", got, 867.0/6, 1.5, "practice-73, 1 lb at 70 °F is 867 ft³; saturation 2504 Pa")
}

// TestLeak: the worked example of a leak-test manual, and molecular conversion
// of helium to air.
func TestLeak(t *testing.T) {
	flow := func(p float64) float64 {
		l := Leak{Air: 1, Outside: 1, Inside: p, MolarMass: airMolarMass, Viscosity: airViscosity, Density: p}
		return l.Viscous()
	}
	near.Value(t, "10 atm to 20 atm", 0.001*flow(20)/flow(10), 0.004, 0.00005, "leak-flow-table: 0.001 becomes 0.004")
	l := Leak{Air: 1, Outside: 1, Inside: 2, MolarMass: 0.0040026}
	air := l
	air.MolarMass = airMolarMass
	// Mass over molar mass is the volume: helium leaks √(M air/M) faster.
	near.Value(t, "helium to air", (air.Molecular()/airMolarMass)/(l.Molecular()/0.0040026), 0.374, 0.003, "leak-flow-table: 0.374")
}
