package facts

import "changeout/calc/property/refrigerant"

// none marks a value that was not read.
const none = -1

// potentials are 100-year warming potentials of constituents that the phone does not carry; the catalogue has the others. AR4 and AR5: the
// collection of the IPCC tables (gwpcsv). EU: Regulation 2024/573, Annexes I, II and VI, as printed there (eu573); the annexes take AR4 values for
// HFCs and dimethyl ether, AR6 values for the others.
var potentials = []struct {
	name         string
	ar4, ar5, eu float64
}{
	{"R-11", 4750, 4660, none},
	{"R-12", 10900, 10200, none},
	{"R-13", 14400, 13900, none},
	{"R-23", 14800, 12400, 14800},
	{"R-113", 6130, 5820, none},
	{"R-114", 10000, 8590, none},
	{"R-115", 7370, 7670, none},
	{"R-116", 12200, 11100, 12400},
	{"R-123", 77, 79, none},
	{"R-124", 609, 527, none},
	{"R-142b", 2310, 1980, none},
	{"R-170", none, none, 0.437},
	{"R-E170", none, none, 1},
	{"R-218", 8830, 8900, 9290},
	{"R-236fa", 9810, 8060, 9810},
	{"R-245fa", 1030, 858, 1030},
	{"R-C318", 10300, 9540, 10200},
	{"R-601", none, none, 0},
	{"R-601a", none, none, 0},
	{"R-1132a", none, none, 0.052},
	{"R-1233zd(E)", none, none, 3.88},
	{"R-1234ze(Z)", none, none, 1.37},
	{"R-1270", none, none, 0},
	{"R-1336mzz(E)", none, none, 17.9},
	{"R-1336mzz(Z)", none, none, 2.08},
}

// Lists are the lists of warming potentials, in the order of a page.
var Lists = []string{"AR4", "AR5", "EU 2024/573"}

// warming gives the potential by each list in which every constituent has a value: the sum of mass fraction times value (Regulation (EU)
// 2024/573, Annex VI). The weakest mark of a constituent is the mark of the sum.
func warming(r *refrigerant.Refrigerant) []refrigerant.GWP {
	var out []refrigerant.GWP
	for i, l := range Lists {
		if f := sum(r, i); f.Known() {
			out = append(out, refrigerant.GWP{Fact: f, List: l})
		}
	}
	return out
}

// GWP gives the value by one list; the zero Fact says that there is none.
func (s *Sheet) GWP(list string) refrigerant.Fact { return pick(s.GWPs, list) }

func pick(gwps []refrigerant.GWP, list string) refrigerant.Fact {
	for _, g := range gwps {
		if g.List == list {
			return g.Fact
		}
	}
	return refrigerant.Fact{}
}

func sum(r *refrigerant.Refrigerant, list int) refrigerant.Fact {
	if f := pick(r.GWPs, Lists[list]); f.Known() || len(r.Components) == 1 {
		if f.Known() {
			return f
		}
		return own(r.Name, list)
	}
	total := refrigerant.Fact{Read: refrigerant.Computed}
	for _, c := range r.Components {
		f := own(c.Name, list)
		if !f.Known() {
			if pure, ok := refrigerant.Lookup(c.Name); ok {
				f = pick(pure.GWPs, Lists[list])
			}
		}
		if !f.Known() {
			return refrigerant.Fact{}
		}
		total.Value += c.MassFraction * f.Value
		if total.Source == "" || f.Read == refrigerant.Memory {
			total.Source = f.Source
		}
		if f.Read == refrigerant.Memory {
			total.Read = refrigerant.Memory
		}
	}
	return total
}

func own(name string, list int) refrigerant.Fact {
	for _, p := range potentials {
		if p.name != name {
			continue
		}
		v := [...]float64{p.ar4, p.ar5, p.eu}[list]
		if v == none {
			return refrigerant.Fact{}
		}
		key := "gwpcsv"
		if list == 2 {
			key = "eu573"
		}
		return refrigerant.Fact{Value: v, Read: refrigerant.Secondary, Source: key}
	}
	return refrigerant.Fact{}
}
