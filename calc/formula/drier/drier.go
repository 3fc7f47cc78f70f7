// Package drier holds what a filter-drier in a suction line costs, and the
// published limits of its pressure drop.
//
// SI throughout: K, Pa, kg/m³. No labels, no units, no sentences.
package drier

import "changeout/calc/property/refrigerant"

// Limits that could be read in print.
const (
	Drop      = 2 * 6894.757293168361 // Pa, air conditioning: practice-48
	WarmDrop  = 3 / 1.8               // K of gas temperature across it: practice-48
	FirstHour = 5 * 6894.757293168361 // Pa above the first reading, in the first hour: manual-31
	RiseSpent = 1.0                   // K of saturation above the loss when new: fen-driers
)

// Loss returns what a pressure drop, Pa, takes at the evaporating temperature
// T, K, both from the dew line:
//
//	loss = T − T dew(p dew(T) − drop), K
//	kept = ρ(p − drop, h) ÷ ρ(p, h), h that of dry vapour at T
//
// The throttled gas keeps its enthalpy, so kept is the share of capacity that
// a compressor of fixed displacement keeps at the same evaporating
// temperature. Errors as DewAtT, DewAtP and AtPH: ErrRange too where the drop
// reaches the pressure.
func Loss(r *refrigerant.Refrigerant, T, drop float64) (loss, kept float64, err error) {
	gas, err := r.SaturatedVapor(T)
	if err != nil {
		return 0, 0, err
	}
	after, err := r.DewAtP(gas.P - drop)
	if err != nil {
		return 0, 0, err
	}
	thin, err := r.AtPH(gas.P-drop, gas.Enthalpy)
	return T - after.T, thin.Rho / gas.Rho, err
}
