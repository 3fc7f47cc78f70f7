package refrigerant

// classesRead lists the safety classes that were read in a source; the others are from memory. Keys: imc (International
// Mechanical Code, table 1103.1), nyc (New York City Mechanical Code, 1103.1), vdh and ent466 (trade pages).
var classesRead = []struct{ name, source string }{
	{"R-22", "imc"}, {"R-32", "nyc"}, {"R-125", "imc"}, {"R-134a", "imc"},
	{"R-290", "vdh"}, {"R-449A", "vdh"}, {"R-513A", "vdh"}, {"R-466A", "ent466"},
}

// limits are the concentration limits of ASHRAE 34, kg/m³: RCL, and LFL where the refrigerant burns. Values differ between
// editions and codes: compare with the edition in force. Where sources gave a range the lower, safer value stands here.
var limits = []struct {
	name     string
	rcl, lfl Fact
}{
	{"R-22", Fact{0.210, Secondary, "imc"}, Fact{}},
	{"R-32", Fact{0.077, Secondary, "imc"}, Fact{0.306, Secondary, "iect"}},
	{"R-125", Fact{0.370, Secondary, "imc"}, Fact{}},
	{"R-134a", Fact{0.210, Secondary, "imc"}, Fact{}},
	{"R-143a", Fact{0.070, Memory, fromMemory}, Fact{0.282, Memory, fromMemory}},
	{"R-290", Fact{0.0095, Memory, fromMemory}, Fact{0.038, Secondary, "iect"}},
	{"R-744", Fact{0.054, Memory, fromMemory}, Fact{}},
	{"R-1234yf", Fact{0.075, Memory, fromMemory}, Fact{0.289, Memory, fromMemory}},
	{"R-1234ze(E)", Fact{0.075, Memory, fromMemory}, Fact{0.303, Memory, fromMemory}},
	{"R-404A", Fact{0.500, Memory, fromMemory}, Fact{}},
	{"R-407C", Fact{0.290, Memory, fromMemory}, Fact{}},
	{"R-410A", Fact{0.420, Memory, fromMemory}, Fact{}},
	{"R-422D", Fact{0.120, Memory, fromMemory}, Fact{}},
	{"R-427A", Fact{0.290, Memory, fromMemory}, Fact{}},
	{"R-448A", Fact{0.390, Memory, fromMemory}, Fact{}},
	{"R-449A", Fact{0.357, Memory, fromMemory}, Fact{}},
	{"R-452B", Fact{0.077, Memory, fromMemory}, Fact{0.31, Memory, fromMemory}},
	{"R-454A", Fact{0.052, Memory, fromMemory}, Fact{0.28, Memory, fromMemory}},
	{"R-454B", Fact{0.049, Memory, fromMemory}, Fact{0.296, Memory, fromMemory}},
	{"R-454C", Fact{0.071, Memory, fromMemory}, Fact{0.29, Memory, fromMemory}},
	{"R-466A", Fact{0.099, Memory, fromMemory}, Fact{}},
	{"R-507A", Fact{0.520, Memory, fromMemory}, Fact{}},
	{"R-513A", Fact{0.320, Memory, fromMemory}, Fact{}},
}

// fromMemory is the bibliography key of values that were recalled.
const fromMemory = "from-memory"
