// Package facts holds what a page says about a refrigerant besides its pressures: chemical family, safety data that only pages show, oil,
// phase of charging, and law.
//
// It is apart from package refrigerant so that a phone does not load these words: catalog and wasm do not import it, and a test of the
// build holds that. Every statement says how certain it is. Where nothing was read, the statement says "not known".
package facts

import (
	"strings"

	"changeout/calc/property/refrigerant"
)

// Checked is the month in which the laws were last compared with their sources.
const Checked = "November 2026"

// Statement is one sentence or two with what stands behind them. A statement with several sources names the weakest Read.
type Statement struct {
	Text string
	Read refrigerant.Read
	Keys []string // of the bibliography
}

// Law is what one place says.
type Law struct {
	Where      string
	Statements []Statement
}

// Sheet is what a page shows.
type Sheet struct {
	Chemical string // chemical name of a pure fluid, "" for a blend
	Kind     Kind
	Family   string // "HFC"; of a blend "HFCs and HFOs"
	Class    Statement
	RCL, LFL refrigerant.Fact // kg/m³
	GWPs     []refrigerant.GWP
	Oil      Statement
	Charge   Statement
	Phase    Phase
	Laws     []Law
}

// Kind says how composition behaves when the refrigerant boils.
type Kind string

const (
	Pure      Kind = "pure fluid"
	Zeotrope  Kind = "zeotropic blend"  // 400 series of ASHRAE 34
	Azeotrope Kind = "azeotropic blend" // 500 series
)

// Of gathers the sheet of a refrigerant of the catalogue.
func Of(r *refrigerant.Refrigerant) Sheet {
	s := Sheet{Kind: kind(r), Family: familyWords(r), GWPs: warming(r), Oil: oil(r), Laws: laws(r)}
	if s.Kind == Pure {
		s.Chemical = find(r.Name).chemical
	}
	s.Class, s.RCL, s.LFL = safety(r)
	s.Phase, s.Charge = charging(r.Name, s.Kind)
	return s
}

func kind(r *refrigerant.Refrigerant) Kind {
	switch {
	case len(r.Components) == 1:
		return Pure
	case strings.HasPrefix(r.Name, "R-5"):
		return Azeotrope
	}
	return Zeotrope
}
