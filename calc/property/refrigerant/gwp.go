package refrigerant

// potential holds the 100-year warming potentials of one component. The EU list is that of Regulation 2024/573: AR4 values
// for HFCs (Annex I), AR6 for HFOs and others (Annexes II and VI).
type potential struct {
	name         string
	ar4, ar5, eu Fact
}

// potentials of the components. Keys: gwpcsv (collection of the IPCC tables), eumon and eu573 (text of the regulation).
var potentials = []potential{
	{"R-22", Fact{1810, Secondary, "gwpcsv"}, Fact{1760, Secondary, "gwpcsv"}, Fact{}},
	{"R-32", Fact{675, Secondary, "gwpcsv"}, Fact{677, Secondary, "gwpcsv"}, Fact{675, Secondary, "eumon"}},
	{"R-125", Fact{3500, Secondary, "gwpcsv"}, Fact{3170, Secondary, "gwpcsv"}, Fact{3500, Secondary, "eumon"}},
	{"R-134a", Fact{1430, Secondary, "gwpcsv"}, Fact{1300, Secondary, "gwpcsv"}, Fact{1430, Secondary, "eumon"}},
	{"R-143a", Fact{4470, Secondary, "gwpcsv"}, Fact{4800, Secondary, "gwpcsv"}, Fact{4470, Secondary, "eumon"}},
	{"R-152a", Fact{124, Secondary, "gwpcsv"}, Fact{138, Secondary, "gwpcsv"}, Fact{124, Secondary, "eumon"}},
	{"R-227ea", Fact{3220, Secondary, "gwpcsv"}, Fact{3350, Secondary, "gwpcsv"}, Fact{3220, Secondary, "eumon"}},
	{"R-1234yf", Fact{4, Memory, fromMemory}, Fact{1, Memory, fromMemory}, Fact{0.501, Secondary, "eu573"}},
	{"R-1234ze(E)", Fact{7, Memory, fromMemory}, Fact{1, Memory, fromMemory}, Fact{1.37, Secondary, "eu573"}},
	{"R-290", Fact{3, Memory, fromMemory}, Fact{3, Memory, fromMemory}, Fact{0.02, Secondary, "eu573"}},
	{"R-600", Fact{4, Memory, fromMemory}, Fact{4, Memory, fromMemory}, Fact{0.006, Secondary, "eu573"}},
	{"R-600a", Fact{3, Memory, fromMemory}, Fact{3, Memory, fromMemory}, Fact{0, Secondary, "eu573"}},
	{"R-717", Fact{}, Fact{}, Fact{0, Secondary, "eu573"}},
	{"R-744", Fact{1, Secondary, "gwpcsv"}, Fact{1, Secondary, "gwpcsv"}, Fact{1, Secondary, "gwpcsv"}},
	{"R-13I1", Fact{0.4, Memory, fromMemory}, Fact{0.4, Memory, fromMemory}, Fact{0, Memory, fromMemory}},
}

// warming gives the potentials of a composition by each list in which every component has a value: the sum of mass fraction
// times value (Regulation (EU) 2024/573, Annex VI). One component from memory makes the sum a value from memory.
func warming(components []Component) []GWP {
	lists := []struct {
		name string
		pick func(*potential) Fact
	}{
		{"AR4", func(p *potential) Fact { return p.ar4 }},
		{"AR5", func(p *potential) Fact { return p.ar5 }},
		{"EU 2024/573", func(p *potential) Fact { return p.eu }},
	}
	var out []GWP
	for _, l := range lists {
		if f := weighted(components, l.pick); f.Known() {
			out = append(out, GWP{f, l.name})
		}
	}
	return out
}

// weighted sums mass fraction times value; the zero Fact says that a component has none.
func weighted(components []Component, pick func(*potential) Fact) Fact {
	var sum Fact
	for i, c := range components {
		f := published(c.Name, pick)
		if !f.Known() {
			return Fact{}
		}
		if i == 0 {
			sum = f
			sum.Value = 0
		}
		sum.Value += c.MassFraction * f.Value
		if len(components) > 1 && sum.Read != Memory {
			sum.Read = Computed
		}
		if f.Read == Memory {
			sum.Read, sum.Source = Memory, f.Source
		}
	}
	return sum
}

func published(name string, pick func(*potential) Fact) Fact {
	for i := range potentials {
		if potentials[i].name == name {
			return pick(&potentials[i])
		}
	}
	return Fact{}
}
