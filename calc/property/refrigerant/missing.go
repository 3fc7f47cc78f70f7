package refrigerant

// Missing is a blend of ASHRAE 34 that is known but not given, with the pairs of components for which nobody has published
// mixture parameters. Numbers for it would be estimates, so there are none: use the maker's pressure-temperature table.
type Missing struct {
	Name  string
	Pairs string // "R-32 with with R-600"
}

// LookupMissing finds a blend that is left out, by designation as in Lookup.
func LookupMissing(name string) (Missing, bool) {
	want := plain(name)
	for _, m := range missing {
		if want != "" && plain(m.Name) == want {
			return m, true
		}
	}
	return Missing{}, false
}

// missing in the order of designations.
var missing = []Missing{
	{"R-401A", "R-22 with R-124, R-152a with R-124"},
	{"R-401B", "R-22 with R-124, R-152a with R-124"},
	{"R-401C", "R-22 with R-124, R-152a with R-124"},
	{"R-402A", "R-125 with R-22"},
	{"R-402B", "R-125 with R-22"},
	{"R-403A", "R-290 with R-218"},
	{"R-403B", "R-290 with R-218"},
	{"R-405A", "R-152a with R-C318, R-142b with R-C318"},
	{"R-406A", "R-22 with R-600a, R-600a with R-142b"},
	{"R-408A", "R-125 with R-22"},
	{"R-409A", "R-22 with R-124"},
	{"R-409B", "R-22 with R-124"},
	{"R-412A", "R-218 with R-142b"},
	{"R-413A", "R-218 with R-600a"},
	{"R-414A", "R-22 with R-124, R-22 with R-600a, R-124 with R-600a, R-600a with R-142b"},
	{"R-414B", "R-22 with R-124, R-22 with R-600a, R-124 with R-600a, R-600a with R-142b"},
	{"R-416A", "R-124 with R-600"},
	{"R-424A", "R-125 with R-601a, R-134a with R-601a"},
	{"R-426A", "R-125 with R-601a, R-134a with R-601a"},
	{"R-429A", "R-E170 with R-152a"},
	{"R-435A", "R-E170 with R-152a"},
	{"R-437A", "R-125 with R-601, R-134a with R-601"},
	{"R-438A", "R-32 with R-601a, R-125 with R-601a, R-134a with R-601a"},
	{"R-446A", "R-1234ze(E) with R-600"},
	{"R-453A", "R-32 with R-601a, R-125 with R-601a, R-134a with R-601a, R-227ea with R-601a"},
	{"R-458A", "R-227ea with R-236fa"},
	{"R-461A", "R-143a with R-227ea"},
	{"R-468A", "R-1132a with R-32, R-1132a with R-1234yf"},
	{"R-468B", "R-1132a with R-32, R-1132a with R-1234yf"},
	{"R-468C", "R-1132a with R-32, R-1132a with R-1234yf"},
	{"R-473A", "R-1132a with R-23, R-1132a with R-744, R-1132a with R-125"},
}

// AllMissing gives every blend that is left out, in the order of designations. The slice must not be changed.
func AllMissing() []Missing { return missing }
