package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/hold"
	"changeout/calc/formula/vacuum"
	"changeout/calc/property/refrigerant"
	"changeout/calc/property/viscosity"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// What the leak would lose when the system runs: a range, because the shape of
// the hole is not known.

// lossInputs are asked for only to estimate the loss.
func lossInputs() []calc.Input {
	charge := refrigerantInput()
	charge.Optional = true
	charge.Help = "With the volume and the running pressure: estimates what the leak would lose."
	return []calc.Input{charge, {ID: "running-pressure", Label: "Pressure at the leak when running", Kind: calc.Quantity, Quantity: unit.Pressure, Units: pressureUnits, Optional: true,
		Low: 1.1e5, High: 8e6, BoundReason: "above the outside air, below any field gauge's end", Help: "Where the leak sits is not known: the standing pressure is a fair choice, the high side the cautious one."}}
}

// viscosityKeys lists the sources of the vapour viscosities.
func viscosityKeys() []string {
	keys := []string{viscosity.EstimateSource}
	for _, r := range Offered() {
		if c := viscosity.Lookup(r.Name); c != nil {
			keys = addKeys(keys, c.Source)
		}
	}
	return keys
}

// lossAtRunning sets the range of the loss. It reports false after a refusal.
func lossAtRunning(r *calc.Run, res *hold.Result, rise func(float64) float64) bool {
	if !r.Has("refrigerant") || !r.Has("running-pressure") {
		return true
	}
	if !r.Has("volume") {
		r.Warn("Enter the system volume too, to estimate the loss when running.")
		return true
	}
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	p := r.Float("running-pressure")
	if p <= 1.05*r.Atmosphere() {
		r.Refuse("running-pressure", calc.TooLow, text.Say("Pressure at the leak when running: {} is hardly above the outside air, so the leak would let air in; enter a pressure above {}.",
			r.Given("running-pressure"), r.Text(unit.Pressure, 1.05*r.Atmosphere(), pressureUnits...)))
		return false
	}
	dew, err := ref.DewAtP(p)
	var vapour refrigerant.Properties
	if err == nil {
		vapour, err = ref.SaturatedVapor(dew.T)
	}
	if err != nil {
		refuseState(r, ref, "running-pressure", err)
		return false
	}
	// The thinnest vapour of all refrigerants stands in where no viscosity is known.
	eta, etaCite := 6.5e-6, calc.Cite{Key: "from-memory"}
	if v, err := ref.Viscosity(vapour); err == nil {
		eta, etaCite = v.Value, calc.Cite{Key: v.Source}
		if v.Estimated {
			eta *= 1 - refrigerant.EstimateErrorGas
			etaCite.Locator = "estimate, its error taken off"
		}
	}
	leak := vacuum.Leak{Outside: r.Atmosphere(), Inside: p, MolarMass: ref.MolarMass, Viscosity: eta, Density: dew.RhoVapor}
	leak.Air = math.Max(0, rise(res.Inflow.Low)) * r.Float("volume")
	r.Set("loss-low", leak.Molecular())
	leak.Air = res.Inflow.High * r.Float("volume")
	r.Set("loss-high", leak.Viscous())
	r.Step("Viscosity of the vapour, at dew", "η, air has 18.2 µPa·s", unit.Significant(eta*1e6, 3)+" µPa·s", etaCite)
	r.Step("Density of the vapour, at dew", "ρ1 at "+r.Given("running-pressure"), r.Text(unit.Density, dew.RhoVapor), equationCite(ref))
	flow := calc.Cite{Key: "leak-flow-table", Locator: "flow regimes"}
	r.Step("Loss when running, at least", "fine hole, molecular: m air √(M/M air) (p1 − p2)/p2", r.OutputText("loss-low"), flow)
	r.Step("Loss when running, at most", "long hole, viscous: q (η air/η) (p1² − p2²)/p2², m = q ρ1/p1", r.OutputText("loss-high"), flow)
	r.Warn("The loss is a range for vapour through a hole that pressure does not open. Where liquid stands at the leak it is far more. A range below a maker's or a legal limit is no proof of tightness.")
	return true
}
