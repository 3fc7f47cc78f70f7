// Package charge holds the small equations of a refrigerant charge: what a
// liquid line holds, what a room may receive, and the superheat that a fixed
// orifice should show.
//
// SI throughout: m, kg, kg/m, kg/m³, K. No labels, no units, no sentences.
package charge
