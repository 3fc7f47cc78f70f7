package catalog

import (
	"changeout/calc"
	"changeout/calc/property/refrigerant"
)

// equationSources names the paper behind each pure fluid's equation of state.
var equationSources = []struct{ fluid, key string }{
	{"R-22", "kamei-ijt-1995"}, {"R-32", "tillnerroth-jpcrd-1997"}, {"R-125", "lemmon-jpcrd-2005"},
	{"R-134a", "tillnerroth-jpcrd-1994"}, {"R-143a", "lemmon-jpcrd-2000"}, {"R-290", "lemmon-jced-2009"},
	{"R-744", "span-jpcrd-1996"}, {"R-1234yf", "lemmon-ijt-2022"},
}

// equationKeys lists the bibliography keys of the pure-fluid equations.
func equationKeys() []string {
	keys := make([]string, len(equationSources))
	for i, e := range equationSources {
		keys[i] = e.key
	}
	return keys
}

// equationCite cites the equation of a pure fluid, or the mixture model.
func equationCite(ref *refrigerant.Refrigerant) calc.Cite {
	if len(ref.Components) > 1 {
		return calc.Cite{Key: "kunz-jced-2012", Locator: "mixture model"}
	}
	for _, e := range equationSources {
		if e.fluid == ref.Name {
			return calc.Cite{Key: e.key, Locator: "equation of state"}
		}
	}
	return calc.Cite{Key: "coolprop-8", Locator: "fluid file"}
}

// equilibriumFormula says what the solver makes equal.
func equilibriumFormula(ref *refrigerant.Refrigerant) string {
	if len(ref.Components) > 1 {
		return "p and the fugacity of each component equal in both phases, from a(T, ρ, x)"
	}
	return "p and g equal in liquid and vapour, from a(T, ρ)"
}
