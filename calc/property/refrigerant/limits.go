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
	{"R-143a", memory(0.070), memory(0.282)},
	{"R-290", memory(0.0095), Fact{0.038, Secondary, "iect"}},
	{"R-744", memory(0.054), Fact{}},
	{"R-1234yf", memory(0.075), memory(0.289)},
	{"R-1234ze(E)", memory(0.075), memory(0.303)},
	{"R-404A", memory(0.500), Fact{}},
	{"R-407C", memory(0.290), Fact{}},
	{"R-410A", memory(0.420), Fact{}},
	{"R-422D", memory(0.120), Fact{}},
	{"R-427A", memory(0.290), Fact{}},
	{"R-448A", memory(0.390), Fact{}},
	{"R-449A", memory(0.357), Fact{}},
	{"R-452B", memory(0.077), memory(0.31)},
	{"R-454A", memory(0.052), memory(0.28)},
	{"R-454B", memory(0.049), memory(0.296)},
	{"R-454C", memory(0.071), memory(0.29)},
	{"R-466A", memory(0.099), Fact{}},
	{"R-507A", memory(0.520), Fact{}},
	{"R-513A", memory(0.320), Fact{}},
}

func memory(v float64) Fact { return Fact{v, Memory, "from-memory"} }
