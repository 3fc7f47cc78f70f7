// Package fluid holds the equations of state of pure fluids, one file a fluid, one publication an equation.
//
// Each variable is named after the authors and year of its publication, because an equation of state is a publication.
// Coefficients stand in the order of the paper, one term a line; the comment at the head of a table names the columns.
// Adding a fluid is one such file, one line in All and its check values in testdata/published/saturation.
package fluid

import "changeout/calc/property/helmholtz"

// All lists the equations in the order of their designations.
var All = []*helmholtz.Equation{
	&Jacobsen1992,
	&Marx1992R12,
	&Platzer1990R13,
	&LemmonSpan2015R13I1,     // R-13I1
	&Kamei1995,
	&Penoncello2003,
	&TillnerRothYokozeki1997,
	&Marx1992R113,
	&Platzer1990R114,
	&LemmonSpan2015R115,
	&LemmonSpan2006R116,
	&YoungloveMcLinden1994,
	&DeVries1995,
	&LemmonJacobsen2005,
	&TillnerRothBaehr1994,    // R-134a
	&LemmonSpan2006R142b,     // R-142b
	&LemmonJacobsen2000,      // R-143a
	&OutcaltMcLinden1996,     // R-152a
	&BueckerWagner2006Ethane,
	&Wu2011,                  // R-E170
	&LemmonSpan2006R218,
	&LemmonSpan2015R227ea,    // R-227ea
	&Pan2012,                 // R-236fa
	&Akasaka2015,             // R-245fa
	&Lemmon2009,
	&Platzer1990RC318,        // R-C318
	&BueckerWagner2006R600,
	&BueckerWagner2006R600a,  // R-600a
	&Thol2019,
	&LemmonSpan2006R601a,     // R-601a
	&OrtizVega2019,
	&Gao2020,
	&WagnerPruss2002,
	&Span2000,
	&SchmidtWagner1985,
	&Tegeler1999,
	&SpanWagner1996,
	&AkasakaLemmon2024,       // R-1132(E)
	&Akasaka2026,             // R-1132a
	&AkasakaLemmon2022,       // R-1233zd(E)
	&LemmonAkasaka2022,       // R-1234yf
	&TholLemmon2016,          // R-1234ze(E)
	&AkasakaLemmon2019,       // R-1234ze(Z)
	&Lemmon2013,              // R-1270
	&Akasaka2023,             // R-1336mzz(E)
	&McLindenAkasaka2020,     // R-1336mzz(Z)
}

// Lookup gives the equation for a designation as the catalogue writes it, "R-134a".
func Lookup(name string) (*helmholtz.Equation, bool) {
	for _, e := range All {
		if e.Name == name {
			return e, true
		}
	}
	return nil, false
}
