// Package electrical holds the small equations of the electrical checks on a
// compressor and its inverter: winding resistance, insulation resistance,
// supply unbalance, the charge of the link, and thermistors.
//
// SI throughout: Ω, V, A, F, J, s, K. No labels, no units, no sentences.
package electrical
