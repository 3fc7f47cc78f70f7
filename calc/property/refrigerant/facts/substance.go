package facts

import (
	"strings"

	"changeout/calc/property/refrigerant"
)

// family is the chemical kind of a constituent; laws and oils follow it.
type family string

const (
	cfc     family = "CFC"                 // chlorofluorocarbon
	hcfc    family = "HCFC"                // hydrochlorofluorocarbon
	hfc     family = "HFC"                 // saturated hydrofluorocarbon
	pfc     family = "PFC"                 // perfluorocarbon
	hfo     family = "HFO"                 // unsaturated hydrofluorocarbon
	hcfo    family = "HCFO"                // unsaturated hydrochlorofluorocarbon
	fic     family = "fluoroiodocarbon"    //
	hc      family = "hydrocarbon"         //
	ether   family = "ether"               //
	natural family = "inorganic substance" // ammonia, water, carbon dioxide, gases of the air
)

type substance struct {
	name     string
	family   family
	chemical string
}

// substances are the constituents of the catalogue, in its order. The family follows from the formula.
var substances = []substance{
	{"R-11", cfc, "trichlorofluoromethane"},
	{"R-12", cfc, "dichlorodifluoromethane"},
	{"R-13", cfc, "chlorotrifluoromethane"},
	{"R-13I1", fic, "trifluoroiodomethane"},
	{"R-22", hcfc, "chlorodifluoromethane"},
	{"R-23", hfc, "trifluoromethane"},
	{"R-32", hfc, "difluoromethane"},
	{"R-113", cfc, "1,1,2-trichloro-1,2,2-trifluoroethane"},
	{"R-114", cfc, "1,2-dichloro-1,1,2,2-tetrafluoroethane"},
	{"R-115", cfc, "chloropentafluoroethane"},
	{"R-116", pfc, "hexafluoroethane"},
	{"R-123", hcfc, "2,2-dichloro-1,1,1-trifluoroethane"},
	{"R-124", hcfc, "2-chloro-1,1,1,2-tetrafluoroethane"},
	{"R-125", hfc, "pentafluoroethane"},
	{"R-134a", hfc, "1,1,1,2-tetrafluoroethane"},
	{"R-142b", hcfc, "1-chloro-1,1-difluoroethane"},
	{"R-143a", hfc, "1,1,1-trifluoroethane"},
	{"R-152a", hfc, "1,1-difluoroethane"},
	{"R-170", hc, "ethane"},
	{"R-E170", ether, "dimethyl ether"},
	{"R-218", pfc, "octafluoropropane"},
	{"R-227ea", hfc, "1,1,1,2,3,3,3-heptafluoropropane"},
	{"R-236fa", hfc, "1,1,1,3,3,3-hexafluoropropane"},
	{"R-245fa", hfc, "1,1,1,3,3-pentafluoropropane"},
	{"R-290", hc, "propane"},
	{"R-C318", pfc, "octafluorocyclobutane"},
	{"R-600", hc, "butane"},
	{"R-600a", hc, "isobutane"},
	{"R-601", hc, "pentane"},
	{"R-601a", hc, "isopentane"},
	{"R-704", natural, "helium"},
	{"R-717", natural, "ammonia"},
	{"R-718", natural, "water"},
	{"R-728", natural, "nitrogen"},
	{"R-732", natural, "oxygen"},
	{"R-740", natural, "argon"},
	{"R-744", natural, "carbon dioxide"},
	{"R-1132(E)", hfo, "trans-1,2-difluoroethene"},
	{"R-1132a", hfo, "1,1-difluoroethene"},
	{"R-1233zd(E)", hcfo, "trans-1-chloro-3,3,3-trifluoropropene"},
	{"R-1234yf", hfo, "2,3,3,3-tetrafluoropropene"},
	{"R-1234ze(E)", hfo, "trans-1,3,3,3-tetrafluoropropene"},
	{"R-1234ze(Z)", hfo, "cis-1,3,3,3-tetrafluoropropene"},
	{"R-1270", hc, "propene (propylene)"},
	{"R-1336mzz(E)", hfo, "trans-1,1,1,4,4,4-hexafluoro-2-butene"},
	{"R-1336mzz(Z)", hfo, "cis-1,1,1,4,4,4-hexafluoro-2-butene"},
}

// find gives a constituent; the zero substance has no family, which a test excludes.
func find(name string) substance {
	for _, s := range substances {
		if s.name == name {
			return s
		}
	}
	return substance{}
}

// of lists the constituents of these families by name.
func of(r *refrigerant.Refrigerant, families ...family) []string {
	var names []string
	for _, c := range r.Components {
		f := find(c.Name).family
		for _, want := range families {
			if f == want {
				names = append(names, c.Name)
			}
		}
	}
	return names
}

func has(r *refrigerant.Refrigerant, families ...family) bool { return len(of(r, families...)) > 0 }

// familyWords names the families of the constituents, each once, in the
// plural for a blend.
func familyWords(r *refrigerant.Refrigerant) string {
	var words []string
	for _, f := range []family{cfc, hcfc, pfc, hfc, hcfo, hfo, fic, hc, ether, natural} {
		switch {
		case !has(r, f):
		case len(r.Components) == 1:
			words = append(words, string(f))
		default:
			words = append(words, string(f)+"s")
		}
	}
	return list(words)
}

// list joins names: "R-22", "R-22 and R-12", "R-32, R-125 and R-134a".
func list(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}
