package facts

import (
	"strings"

	"changeout/calc/property/refrigerant"
)

// The families of oil, as the trade writes them.
const (
	mineral = "mineral or alkylbenzene"
	poe     = "POE (polyolester)"
)

// poeOrPVE are the refrigerants of inverter air conditioners, whose compressors also run on polyvinyl ether. Common practice.
var poeOrPVE = []string{"R-32", "R-407C", "R-410A", "R-452B", "R-454B"}

// retrofit are blends with a little hydrocarbon that replace R-22 in place. From memory.
var retrofit = []string{"R-417", "R-422", "R-428", "R-434"}

// oil names the usual family. The compressor decides, not the refrigerant: pages say so beside it. Sources: a textbook's figure of oils by family
// (oil-textbook) and a study guide (oil-guide-608); what they do not cover is from memory or not known.
func oil(r *refrigerant.Refrigerant) Statement {
	read := func(text string) Statement {
		return Statement{text, refrigerant.Secondary, []string{"oil-textbook", "oil-guide-608"}}
	}
	memory := func(text string) Statement { return Statement{text, refrigerant.Memory, []string{"from-memory"}} }
	switch r.Name {
	case "R-717":
		return Statement{"mineral; PAG where the oil must dissolve", refrigerant.Secondary, []string{"oil-textbook"}}
	case "R-744":
		return Statement{poe + " or PAG", refrigerant.Secondary, []string{"oil-textbook"}}
	case "R-1234yf":
		return read(poe + "; PAG in vehicles")
	case "R-134a":
		return read(poe + "; PAG in vehicles")
	case "R-23", "R-508A", "R-508B", "R-13I1", "R-466A":
		return memory(poe)
	}
	for _, name := range poeOrPVE {
		if name == r.Name {
			return Statement{poe + "; PVE (polyvinyl ether) in many inverter compressors", refrigerant.Secondary, []string{"oil-guide-608", "practice-16"}}
		}
	}
	switch {
	case has(r, cfc, hcfc) && has(r, hfc):
		return memory("alkylbenzene or " + poe + "; some take mineral")
	case has(r, cfc, hcfc) && has(r, pfc):
		return memory(mineral)
	case has(r, cfc, hcfc):
		return read(mineral)
	case has(r, hcfo), has(r, pfc):
		return Statement{Text: notKnown}
	case has(r, hfc) && has(r, hc, ether):
		for _, prefix := range retrofit {
			if strings.HasPrefix(r.Name, prefix) {
				return memory(poe + "; the hydrocarbon helps mineral or alkylbenzene oil left from R-22 to return")
			}
		}
		return memory(poe)
	case has(r, hfc):
		return read(poe)
	case has(r, hc) && has(r, ether):
		return Statement{Text: notKnown}
	case has(r, hc):
		return Statement{"mineral or " + poe + "; a thicker grade, for the oil thins", refrigerant.Secondary, []string{"oil-textbook"}}
	case has(r, hfo) && r.Name == "R-1234ze(E)":
		return read(poe)
	case len(r.Components) > 1 && has(r, hfo):
		return memory(poe)
	}
	return Statement{Text: notKnown}
}

// OilShort is the family of oil for a narrow column: "POE, PVE".
func (s *Sheet) OilShort() string {
	if s.Oil.Text == notKnown {
		return "?"
	}
	if strings.Contains(s.Oil.Text, "PVE") {
		return "POE, PVE"
	}
	text, _, _ := strings.Cut(s.Oil.Text, ";")
	return strings.NewReplacer(" (polyolester)", "", "alkylbenzene", "AB").Replace(text)
}
