// Package recovery holds the small equations of recovering refrigerant: what a
// cylinder may hold, when it is full of liquid, which pressure it must be
// marked for, and how far down a system must be pumped.
//
// SI throughout: K, Pa absolute, kg, m³, kg/m³. No labels, no units, no
// sentences.
package recovery
