package refrigerant

import (
	"sync"

	"changeout/calc/property/fluid"
)

// Bounds of the range in which saturation is given, as fractions of the critical temperature, and the lowest temperature
// of a blend, K. Nearer the critical point the solver still converges, but a small change of pressure moves the density
// by tens of percent. Pure fluids go to 0.99, so that carbon dioxide is given at 25 °C (0.980 of critical).
const (
	maxReducedT     = 0.98
	maxReducedTPure = 0.99
	lowestBlendT    = 198.15 // -75 °C
)

// All gives every refrigerant of the catalogue: pure fluids, then blends, each in the order of designations. The slice and
// what it points to must not be changed.
func All() []*Refrigerant { return catalogue() }

var catalogue = sync.OnceValue(func() []*Refrigerant {
	list := make([]*Refrigerant, 0, len(pures)+len(blends))
	for i := range pures {
		list = append(list, newPure(&pures[i]))
	}
	for i := range blends {
		list = append(list, newBlend(&blends[i]))
	}
	return list
})

// Lookup finds a refrigerant by designation. Case, spaces, hyphens and the leading R do not matter: "R-410A", "r410a" and
// "410A" are the same.
func Lookup(name string) (*Refrigerant, bool) {
	want := plain(name)
	if want == "" {
		return nil, false
	}
	for _, r := range All() {
		if plain(r.Name) == want {
			return r, true
		}
	}
	return nil, false
}

// plain brings a designation to the form "410A": ASCII capitals without spaces, hyphens of any kind and the leading R.
// Not strings.ToUpper, which brings the tables of all alphabets with it.
func plain(name string) string {
	b := make([]byte, 0, 16)
	for _, c := range name {
		switch {
		case c >= 'a' && c <= 'z':
			b = append(b, byte(c-'a'+'A'))
		case c > ' ' && c < 0x7f && c != '-':
			b = append(b, byte(c))
		case c == ' ' || c == '-' || c == 0xa0 || c >= 0x2010 && c <= 0x2015:
		default:
			return "" // no designation has such a character
		}
	}
	if len(b) > 0 && b[0] == 'R' {
		b = b[1:]
	}
	return string(b)
}

func newPure(p *pure) *Refrigerant {
	f, ok := fluid.Lookup(p.name)
	if !ok {
		panic("refrigerant: unknown fluid " + p.name)
	}
	r := &Refrigerant{
		Name:       p.name,
		Components: []Component{{Name: p.name, MassFraction: 1, MoleFraction: 1}},
		MolarMass:  f.MolarMass,
		Critical:   State{T: f.CriticalT, P: f.CriticalP, Rho: f.CriticalRho * f.MolarMass},
	}
	r.engine = newEngine([]string{p.name}, []float64{1}, r.Critical, p.tMin)
	r.describe(p.class)
	return r
}

func newBlend(b *blend) *Refrigerant {
	var total, moles float64
	for _, c := range b.components {
		total += c.percent
	}
	n := len(b.components)
	names, z := make([]string, n), make([]float64, n)
	r := &Refrigerant{Name: b.name, ChargeAsLiquid: true, Components: make([]Component, n)}
	for i, c := range b.components {
		f, ok := fluid.Lookup(c.name)
		if !ok {
			panic("refrigerant: unknown component " + c.name)
		}
		names[i] = c.name
		z[i] = c.percent / total / f.MolarMass
		moles += z[i]
	}
	for i, c := range b.components {
		z[i] /= moles
		r.Components[i] = Component{Name: c.name, MassFraction: c.percent / total, MoleFraction: z[i]}
	}
	r.MolarMass = 1 / moles
	r.Critical = State{T: b.criticalT, P: b.criticalP, Rho: b.criticalRho}
	r.engine = newEngine(names, z, r.Critical, max(lowestBlendT, b.tMin))
	r.describe(b.class)
	return r
}

// describe adds what standards say: class, concentration limits, warming potentials.
func (r *Refrigerant) describe(class string) {
	r.Class = class
	if class != "" {
		r.ClassRead, r.ClassKey = Memory, fromMemory
	}
	for _, c := range classesRead {
		if c.name == r.Name {
			r.ClassRead, r.ClassKey = Secondary, c.source
		}
	}
	for i := range limits {
		if limits[i].name == r.Name {
			r.RCL, r.LFL = limits[i].rcl, limits[i].lfl
		}
	}
	r.GWPs = warming(r.Components)
}
