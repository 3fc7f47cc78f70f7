package gridtest

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"changeout/calc/property/fluid"
	"changeout/calc/property/refrigerant"
)

const source = "coolprop-8, testdata/reference/grid.py"

// Tolerances, relative. CoolProp was given the same coefficients, so what is left is rounding and its own convergence: Newton's
// method was carried to the end for single-phase states and its curves for pure saturation are good to some 1e-10, but its
// bubble and dew points of blends stop at some 1e-8, near the critical point at some 4e-7. 1e-8 leaves a factor of ten to the
// eleven digits of the files and the eight of the ideal part. h and s are relative to their range over the grid of a refrigerant.
func tolerance(blend, saturated bool) float64 {
	if blend && saturated {
		return 1e-6
	}
	return 1e-8
}

// deviation is one value compared.
type deviation struct {
	quantity  string
	state     string // the key of the row, see textOfRow
	got, want float64
	difference,
	tolerance float64 // relative to want, or to the range for h and s
}

func (d deviation) String() string {
	return fmt.Sprintf("%-26s got %.12g, want %.12g, difference %.2g, tolerance %.0e, at %s; source %s",
		d.quantity, d.got, d.want, d.difference, d.tolerance, d.state, source)
}

// energies collects h or s of one refrigerant. The reference states differ, so a constant is taken off: the median of all
// differences. Half the tolerance then keeps the difference of any two states within the tolerance.
type energies struct {
	quantity []string
	state    []string
	got      []float64
	want     []float64
	tol      []float64
}

func (e *energies) add(quantity, state string, got, want, tol float64) {
	e.quantity, e.state = append(e.quantity, quantity), append(e.state, state)
	e.got, e.want, e.tol = append(e.got, got), append(e.want, want), append(e.tol, tol/2)
}

func (e *energies) deviations() (out []deviation) {
	all := make([]float64, len(e.got))
	for i := range all {
		all[i] = e.got[i] - e.want[i]
	}
	slices.Sort(all)
	zero := all[len(all)/2]
	span := slices.Max(e.want) - slices.Min(e.want)
	for i := range e.got {
		want := e.want[i] + zero
		out = append(out, deviation{e.quantity[i], e.state[i], e.got[i], want, math.Abs(e.got[i]-want) / span, e.tol[i]})
	}
	return out
}

// refrigerantGrid is the part of the grid that belongs to one refrigerant.
type refrigerantGrid struct {
	saturated []saturated
	single    []single
}

// compare computes every state and gives what differs how much; raw is cp held against CoolProp's as it stands.
func (g *refrigerantGrid) compare(t *testing.T, ref *refrigerant.Refrigerant) (all, raw []deviation) {
	t.Helper()
	blend := len(ref.Components) > 1
	relative := func(quantity, state string, got, want, tol float64) deviation {
		return deviation{quantity, state, got, want, math.Abs(got/want - 1), tol}
	}
	var h, s energies
	for _, r := range g.saturated {
		at, saturated, prefix := ref.BubbleAtT, ref.SaturatedLiquid, "bubble "
		if r.q == 1 {
			at, saturated, prefix = ref.DewAtT, ref.SaturatedVapor, "dew "
		}
		point, err := at(r.T)
		if err != nil {
			t.Errorf("%s: %v", r.textOfRow, err)
			continue
		}
		state, err := saturated(r.T)
		if err != nil {
			t.Errorf("%s: %v", r.textOfRow, err)
			continue
		}
		tol := tolerance(blend, true)
		all = append(all,
			relative(prefix+"pressure", r.textOfRow, point.P, r.p, tol),
			relative(prefix+"liquid density", r.textOfRow, point.RhoLiquid, r.liquid, tol),
			relative(prefix+"vapor density", r.textOfRow, point.RhoVapor, r.vapor, tol))
		h.add("enthalpy, saturated", r.textOfRow, state.Enthalpy, r.h+r.idealH, tol)
		s.add("entropy, saturated", r.textOfRow, state.Entropy, r.s+r.idealS, tol)
	}
	for _, r := range g.single {
		q, err := ref.AtTP(r.T, r.p)
		if err != nil {
			t.Errorf("%s: %v", r.textOfRow, err)
			continue
		}
		tol := tolerance(blend, false)
		cp, cv := r.cp+r.idealC, r.cv+r.idealC
		w := r.w * math.Sqrt(cp/cv*r.cv/r.cp) // w² = cp/cv (∂p/∂ρ)T
		all = append(all,
			relative("density", r.textOfRow, q.Rho, r.rho, tol),
			relative("cp", r.textOfRow, q.Cp, cp, tol),
			relative("cv", r.textOfRow, q.Cv, cv, tol),
			relative("speed of sound", r.textOfRow, q.SoundSpeed, w, tol))
		raw = append(raw, relative("cp as CoolProp gives it", r.textOfRow, q.Cp, r.cp, 1e-4))
		h.add("enthalpy, one phase", r.textOfRow, q.Enthalpy, r.h+r.idealH, tol)
		s.add("entropy, one phase", r.textOfRow, q.Entropy, r.s+r.idealS, tol)
	}
	return append(append(all, h.deviations()...), s.deviations()...), raw
}

// worst keeps the largest deviation of each quantity in the order in which they first appear.
type worst struct{ list []deviation }

func (w *worst) add(d deviation) {
	for i := range w.list {
		if w.list[i].quantity == d.quantity {
			if !(d.difference <= w.list[i].difference) {
				w.list[i] = d
			}
			return
		}
	}
	w.list = append(w.list, d)
}

// TestGrid holds every state of the grid against the engine. With -v it prints the worst of each property for every refrigerant.
func TestGrid(t *testing.T) {
	grid := map[string]*refrigerantGrid{}
	of := func(name string) *refrigerantGrid {
		if grid[name] == nil {
			grid[name] = &refrigerantGrid{}
		}
		return grid[name]
	}
	states := 0
	for _, kind := range []string{"pure", "blend"} {
		many, head := readSaturated(t, kind+"-saturation.csv.gz")
		t.Log(head)
		for _, r := range many {
			g := of(r.refrigerant)
			g.saturated = append(g.saturated, r)
		}
		one, _ := readSingle(t, kind+"-states.csv.gz")
		for _, r := range one {
			g := of(r.refrigerant)
			g.single = append(g.single, r)
		}
		states += len(many) + len(one)
	}
	if states < 20000 {
		t.Errorf("%d states in the grid, want at least 20000", states)
	}
	used := make([]int, len(exemptions))
	var overall [2]worst // pure fluids, blends; exempted states apart
	rawOfBlends := 0.0
	for _, ref := range refrigerant.All() {
		g := grid[ref.Name]
		if missing := notInCoolProp[ref.Name] != ""; missing || g == nil {
			if missing != (g == nil) {
				t.Errorf("%s: in the grid: %v; named as one that CoolProp cannot compute: %v", ref.Name, g != nil, missing)
			}
			continue
		}
		delete(grid, ref.Name)
		kind := min(len(ref.Components), 2) - 1
		// CoolProp fails here and there; but a refrigerant of which half the states are missing is not compared.
		if len(g.saturated) < 50 || len(g.single) < 60 {
			t.Errorf("%s: only %d saturation and %d other states", ref.Name, len(g.saturated), len(g.single))
		}
		t.Run(ref.Name, func(t *testing.T) {
			all, raw := g.compare(t, ref)
			var here worst
			for _, d := range all {
				if i := exempted(ref.Name, d); i >= 0 && !(d.difference < d.tolerance) {
					used[i]++
					d.quantity += ", exempt"
					d.tolerance = exemptions[i].tolerance
				} else {
					overall[kind].add(d)
				}
				here.add(d)
				if !(d.difference < d.tolerance) {
					t.Errorf("%s: %v", ref.Name, d)
				}
			}
			var cp worst
			for _, d := range raw {
				if i := exempted(ref.Name, d); i >= 0 {
					d.tolerance = math.Max(d.tolerance, exemptions[i].tolerance)
				}
				cp.add(d)
				if !(d.difference < d.tolerance) {
					t.Errorf("%s: %v", ref.Name, d)
				}
			}
			if kind == 1 {
				d := cp.list[0]
				here.add(d)
				rawOfBlends = math.Max(rawOfBlends, d.difference)
				// The ideal part, see grid.py, is the whole of what is left: it is large exactly where a component was written in a
				// reducing temperature that is not the critical temperature.
				if large := d.difference > 1e-8; large != shifted(ref) {
					t.Errorf("%s: %v; a component with Tr not Tc: %v, want both or neither", ref.Name, d, shifted(ref))
				}
			}
			for _, d := range here.list {
				t.Log(d)
			}
		})
	}
	for name := range grid {
		t.Errorf("%s is in the grid and not in the catalogue", name)
	}
	if t.Failed() {
		return
	}
	for i, e := range exemptions {
		if used[i] == 0 {
			t.Errorf("the exemption of %s %s %q is no longer needed: take it out", e.refrigerant, e.quantity, e.state)
		}
	}
	for kind, name := range []string{"pure fluids", "blends"} {
		for _, d := range overall[kind].list {
			t.Logf("worst of %s: %v", name, d)
		}
	}
	t.Logf("%d states; exempted values: %d; cp of blends with CoolProp's own ideal part: up to %.2g", states, sum(used), rawOfBlends)
}

// shifted tells whether a component's equation was written in a temperature other than its critical one, enough to show.
func shifted(ref *refrigerant.Refrigerant) bool {
	for _, c := range ref.Components {
		if f, ok := fluid.Lookup(c.Name); ok && math.Abs(f.ReducingT/f.CriticalT-1) > 1e-9 {
			return true
		}
	}
	return false
}

func sum(n []int) (total int) {
	for _, v := range n {
		total += v
	}
	return total
}

// exempted gives the number of the exemption that covers a deviation, or -1.
func exempted(name string, d deviation) int {
	for i, e := range exemptions {
		if e.refrigerant == name && strings.HasPrefix(d.quantity, e.quantity) && strings.HasPrefix(d.state, e.state) {
			return i
		}
	}
	return -1
}
