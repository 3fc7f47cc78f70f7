package catalog

import (
	"strings"

	"changeout/calc"
	"changeout/calc/property/fluid"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
)

// mixtureModel is the bibliography key of the mixture model for blends.
const mixtureModel = "kunz-jced-2012"

// EquationKeys lists the bibliography keys of the equations behind a
// refrigerant: its components' equations of state, and the mixture model when
// there are several.
func EquationKeys(r *refrigerant.Refrigerant) []string {
	var keys []string
	for _, c := range r.Components {
		if e, ok := fluid.Lookup(c.Name); ok {
			keys = addKeys(keys, e.Source)
		}
	}
	if len(r.Components) > 1 {
		keys = append(keys, mixtureModel)
	}
	return keys
}

// addKeys adds the keys of a fluid's source, which may name two papers, each
// once.
func addKeys(keys []string, source string) []string {
	for key := range strings.SplitSeq(text.Lower(source), ",") {
		known := false
		for _, k := range keys {
			known = known || k == key
		}
		if !known {
			keys = append(keys, key)
		}
	}
	return keys
}

// equationKeys lists the keys of the equations of all refrigerants offered. It
// is made once, as refrigerantOptions is.
var equationKeys = func() []string {
	keys := []string{mixtureModel}
	var seen []string // most components stand in many blends
	for _, r := range Offered() {
		for _, c := range r.Components {
			before := len(seen)
			if seen = addKeys(seen, c.Name); len(seen) == before {
				continue
			}
			if e, ok := fluid.Lookup(c.Name); ok {
				keys = addKeys(keys, e.Source)
			}
		}
	}
	return keys
}()

// equationCite cites the equation of a pure fluid, or the mixture model.
func equationCite(ref *refrigerant.Refrigerant) calc.Cite {
	if len(ref.Components) > 1 {
		return calc.Cite{Key: mixtureModel, Locator: "mixture model"}
	}
	return calc.Cite{Key: EquationKeys(ref)[0], Locator: "equation of state"}
}

// equilibriumFormula says what the solver makes equal.
func equilibriumFormula(ref *refrigerant.Refrigerant) string {
	if len(ref.Components) > 1 {
		return "p and the fugacity of each component equal in both phases, from a(T, ρ, x)"
	}
	return "p and g equal in liquid and vapour, from a(T, ρ)"
}
