package refrigerant

// pure is one pure fluid of the catalogue; all else about it is in its equation of state.
type pure struct {
	name, class string  // class "" = not known
	tMin        float64 // K, where it must be above the lower limit of the equation; 0 otherwise
}

// pures in the order of designations. Safety classes of ASHRAE 34 are from memory, but for those in classesRead.
var pures = []pure{
	{"R-11", "A1", 0},
	{"R-12", "A1", 0},
	{"R-13", "A1", 0},
	{"R-13I1", "A1", 0},
	{"R-22", "A1", 0},
	{"R-23", "A1", 0},
	{"R-32", "A2L", 0},
	{"R-113", "A1", 0},
	{"R-114", "A1", 0},
	{"R-115", "A1", 0},
	{"R-116", "A1", 0},
	{"R-123", "B1", 0},
	{"R-124", "A1", 0},
	{"R-125", "A1", 0},
	{"R-134a", "A1", 0},
	{"R-142b", "A2", 0},
	{"R-143a", "A2L", 0},
	{"R-152a", "A2", 0},
	{"R-170", "A3", 0},
	{"R-E170", "A3", 0},
	{"R-218", "A1", 0},
	{"R-227ea", "A1", 0},
	{"R-236fa", "A1", 0},
	{"R-245fa", "B1", 0},
	{"R-290", "A3", 0},
	{"R-C318", "A1", 0},
	{"R-600", "A3", 0},
	{"R-600a", "A3", 0},
	{"R-601", "A3", 0},
	{"R-601a", "A3", 0},
	{"R-704", "A1", 0},
	{"R-717", "B2L", 0},
	{"R-718", "A1", 0},
	{"R-728", "A1", 0},
	{"R-732", "", 0},
	{"R-740", "A1", 0},
	{"R-744", "A1", 0},
	{"R-1132(E)", "B2", 0},
	{"R-1132a", "A2", 0},
	{"R-1233zd(E)", "A1", 0},
	{"R-1234yf", "A2L", 0},
	{"R-1234ze(E)", "A2L", 0},
	{"R-1234ze(Z)", "", 0},
	{"R-1270", "A3", 0},
	{"R-1336mzz(E)", "A1", 0},
	{"R-1336mzz(Z)", "A1", 0},
}
