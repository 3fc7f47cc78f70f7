// Package purge holds the small equations of sweeping a pipe with nitrogen.
//
// SI throughout: m, m³, m³/s, s; shares are 0 to 1. No labels, no units, no sentences.
package purge

import "math"

// Air is the share of oxygen in dry air by volume.
const Air = 0.2095

// Volume returns what a pipe holds: π d²/4 · L, with bore d and length L in m.
func Volume(bore, length float64) float64 { return math.Pi * bore * bore / 4 * length }

// Remaining returns the share of oxygen left after so many volumes of
// nitrogen have passed, when the gas mixes fully:
//
//	x = 0.2095 e^(−N)
//
// It is the dilution equation of ventilation, ln(c₁/c₂) = Q t/V. A pipe swept
// from end to end is cleaner than this; a dead end is not swept at all.
func Remaining(changes float64) float64 { return Air * math.Exp(-changes) }

// Time returns how long it takes: N V / Q.
func Time(changes, volume, flow float64) float64 { return changes * volume / flow }

// Room returns the share of oxygen in a closed room that has received a volume of
// nitrogen which pushed pure air out: 0.2095 (1 − v/V), never below zero.
// Mixing on the way leaves a little more, so this errs on the safe side.
func Room(nitrogen, room float64) float64 { return Air * math.Max(0, 1-nitrogen/room) }
