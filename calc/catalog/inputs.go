package catalog

import (
	"changeout/calc"
	"changeout/calc/property/refrigerant"
	"changeout/calc/unit"
)

// Inputs that several worksheets ask for in the same words.

// coldest is the temperature, K, that a refrigerant must be liquid at to be
// offered: helium, nitrogen, oxygen and argon stay out.
const coldest = 213.15

// Offered returns the refrigerants that a technician can meet, in the order of
// the catalogue.
func Offered() []*refrigerant.Refrigerant {
	var list []*refrigerant.Refrigerant
	for _, r := range refrigerant.All() {
		if _, high := r.Range(); high > coldest {
			list = append(list, r)
		}
	}
	return list
}

// refrigerantInput lists the catalogue of refrigerants as a choice.
func refrigerantInput() calc.Input {
	return calc.Input{ID: "refrigerant", Label: "Refrigerant", Kind: calc.Choice, Listed: "the page “Tables”", Options: refrigerantOptions,
		Help: "As the nameplate says. If the history is doubtful, treat the gas as mixed and do not use this worksheet."}
}

// refrigerantOptions is made once for all worksheets: the phone waits for it
// before the first answer.
var refrigerantOptions = func() []calc.Option {
	offered := Offered()
	options := make([]calc.Option, len(offered))
	names := make([]string, len(offered))
	for i, r := range offered {
		names[i] = r.Name[2:]
		options[i] = calc.Option{ID: r.Name, Label: r.Name, Aliases: names[i : i+1 : i+1]}
	}
	return options
}()

// altitudeInput asks for the site altitude, which gauge pressures need.
func altitudeInput() calc.Input {
	return calc.Input{ID: "altitude", Label: "Site altitude", Kind: calc.Quantity, Quantity: unit.Length, Units: []string{"m", "ft"},
		Default: "0 m", Low: -500, High: 5000, BoundReason: "the standard atmosphere is used from below sea level to the highest towns",
		Altitude: true, Help: "A gauge reads from the local air pressure. 1000 m changes it by about 11 kPa."}
}

// pressureUnits are offered wherever a system pressure is entered.
var pressureUnits = []string{"kPag", "barg", "MPag", "kPaa", "bara", "psig", "psia", "inHgv"}

// Bounds of a system pressure: from a deep vacuum to above any field gauge.
const (
	lowestPressure  = 1e3
	highestPressure = 15e6
)
