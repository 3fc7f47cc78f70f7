package facts

import "changeout/calc/property/refrigerant"

// printed are classes and limits that were read for pages and that no worksheet needs. Keys: imc (International Mechanical Code, table
// 1103.1), nyc (New York City Mechanical Code, table 1103.1); the two agree in these rows. The tables restate ASHRAE 34.
var printed = []struct {
	name, class string
	rcl         float64 // kg/m³; 0 where the table gives none
}{
	{"R-11", "A1", 0.0062},
	{"R-12", "A1", 0.090},
	{"R-13", "A1", 0},
	{"R-23", "A1", 0.120},
	{"R-113", "A1", 0.020},
	{"R-114", "A1", 0.140},
	{"R-115", "A1", 0.760},
	{"R-116", "A1", 0.550},
	{"R-123", "B1", 0.057},
	{"R-124", "A1", 0.056},
}

// safety joins what the catalogue holds with printed.
func safety(r *refrigerant.Refrigerant) (class Statement, rcl, lfl refrigerant.Fact) {
	class = Statement{Text: r.Class, Read: r.ClassRead, Keys: []string{r.ClassKey}}
	if r.Class == "" {
		class = Statement{Text: notKnown}
	}
	rcl, lfl = r.RCL, r.LFL
	for _, p := range printed {
		if p.name != r.Name {
			continue
		}
		if class.Text == p.class {
			class.Read, class.Keys = refrigerant.Secondary, []string{"imc"}
		}
		if !rcl.Known() && p.rcl > 0 {
			rcl = refrigerant.Fact{Value: p.rcl, Read: refrigerant.Secondary, Source: "imc"}
		}
	}
	return class, rcl, lfl
}

// notKnown is the text where nothing was read.
const notKnown = "not known"
