package catalog

import (
	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/electrical"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// StoredCharge says what the link holds and how long it takes to fall.
var StoredCharge = &calc.Worksheet{
	ID:    "stored-charge",
	Title: "Stored charge of the link",
	Purpose: "Wait the marked time and measure: that comes first, whatever is computed here. This shows how much energy waits in the link, and whether the marked " +
		"time or a discharge lead can be enough.",
	Inputs: []calc.Input{
		{ID: "capacitance", Label: "Link capacitance, all capacitors together", Kind: calc.Quantity, Quantity: unit.Capacitance, Units: []string{"uF", "mF"},
			Low: 1e-6, High: 0.1, BoundReason: "from a film capacitor to a large drive", Help: "Printed on the cans. In parallel add them; two equal ones in series make half of one."},
		{ID: "voltage", Label: "Link voltage at the start", Kind: calc.Quantity, Quantity: unit.Voltage, Units: []string{"V"},
			Low: 1, High: 1500, BoundReason: "links of drives below 1 kV", Help: "As measured. Unmeasured: line voltage × 1.41; 400 V class lines make up to 680 V."},
		{ID: "path", Label: "How it discharges", Kind: calc.Choice,
			Options: []calc.Option{
				{ID: "unknown", Label: "Not known, or the bleed resistor was not measured"},
				{ID: "bleed", Label: "Bleed resistor, value measured"},
				{ID: "lead", Label: "Discharge lead with its own resistor"}}},
		{ID: "resistance", Label: "Resistance of that path", When: knownPath, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"kohm", "ohm", "Mohm"},
			Low: 100, High: 1e7, BoundReason: "less is close to a short, more hardly discharges"},
		{ID: "rating", Label: "Power rating of the lead's resistor", When: []calc.When{{Input: "path", Is: []string{"lead"}}}, Kind: calc.Quantity, Quantity: unit.Power, Units: []string{"W"}, Optional: true,
			Low: 0.1, High: 5000, BoundReason: "resistors for this lie between"},
		{ID: "marked", Label: "Waiting time marked on the unit", Kind: calc.Quantity, Quantity: unit.Duration, Units: []string{"min", "s"}, Optional: true,
			Low: 1, High: 7200, BoundReason: "marks lie between"},
	},
	Outputs: []calc.Output{
		{ID: "energy", Label: "Energy in the link", Quantity: unit.Energy, Units: []string{"J"}, Significant: 3, Main: true},
		{ID: "time-high", Label: "Calculated fall to 50 V, capacitors 20 % over their rating", Quantity: unit.Duration, Units: []string{"s"}, Main: true},
		{ID: "time", Label: "Calculated fall to 50 V, as rated", Quantity: unit.Duration, Units: []string{"s"}},
		{ID: "power", Label: "Power in the resistor at the start", Quantity: unit.Power, Units: []string{"W"}, Significant: 3},
	},
	Verdicts: []calc.Verdict{
		{ID: "measure", Tone: calc.Stop, Title: "Wait the marked time, then measure", Main: []string{"energy"}},
		{ID: "no-time", Tone: calc.Stop, Title: "No time can be given: wait the marked time, then measure", Main: []string{"energy"}},
		{ID: "low-now", Tone: calc.Doubt, Title: "50 V or less as entered: measure again before you touch", Main: []string{"energy"}},
	},
	Compute: storedCharge,
	Limits: []string{
		"Never touch because a calculated time is over. Only a meter that was proved before and after says the link is dead.",
		"A bleed resistor or a joint that failed holds the charge for hours. Nothing shows it but the meter.",
		"A fan that turns in the wind charges the link again. Unplug it or block it.",
		"A machine standard counts 60 V as the end; 50 V is used here, as an inverter manual asks.",
	},
	Cautions: []calc.Caution{
		{Signal: "DANGER", Hazard: "The link capacitors stay charged after the power is off.",
			Consequence: "The charge kills.",
			Avoid:       "Isolate, lock, wait the time marked on the unit, then measure 50 V DC or less between P and N with a proved meter."},
		{Signal: "WARNING", Hazard: "A short across the link melts metal and can shatter a tool.",
			Consequence: "Arc and splinters burn and blind.",
			Avoid:       "Never use a screwdriver. Use an insulated lead with a resistor made for this, gloves and a face shield."}},
	Sources: []string{"makers-manual", "common-practice", "from-memory", "manual-18", "c204", "discharge-drive", "discharge-sheet"},
	Example: []calc.Field{{Input: "capacitance", Text: "3000 uF"}, {Input: "voltage", Text: "650 V"}, {Input: "path", Text: "lead"}, {Input: "resistance", Text: "10 kohm"},
		{Input: "rating", Text: "50 W"}, {Input: "marked", Text: "10 min"}},
}

var knownPath = []calc.When{{Input: "path", Is: []string{"bleed", "lead"}}}

// linkDead is the voltage, V DC, at or below which the link counts as
// discharged once it is measured: an inverter service manual.
const linkDead = 50

// capacitorSurplus is how far above its rating an electrolytic capacitor may
// be: the usual ±20 %, from memory.
const capacitorSurplus = 1.2

func storedCharge(r *calc.Run) {
	c, v := r.Float("capacitance"), r.Float("voltage")
	wait := "the time marked on the unit"
	if r.Has("marked") {
		wait = "the marked " + r.Given("marked")
	}
	r.Set("energy", electrical.StoredEnergy(c, v))
	r.Step("First", "wait the marked time, then measure", "50 V DC or less, P to N", calc.Cite{Key: "manual-18"})
	r.Step("Energy in the link", text.Say("½ C V² = ½ × {} × ({})²", r.Given("capacitance"), r.Given("voltage")), r.OutputText("energy"), calc.Cite{Key: "common-practice", Locator: "physics"})
	r.Step("Limit in a machine standard", "this page uses 50 V", "60 V", calc.Cite{Key: "c204"})
	if r.Choice("path") == "unknown" {
		if v > linkDead {
			r.Conclude("no-time", text.Say("The bleed resistor is not known, so no time is given. Wait {}, then measure P to N with a proved meter.", wait))
		}
	} else {
		storedTime(r, c, v)
		if v > linkDead {
			r.Conclude("measure", text.Say("Wait {}, then measure P to N with a proved meter. The calculated time replaces neither.", wait))
		}
	}
	if v <= linkDead {
		r.Conclude("low-now", "The voltage entered is at or below 50 V. It can rise again: prove the meter, and measure once more just before you touch.")
	}
	r.Advise("Above 50 V and falling: wait on. Above 50 V and steady: prove every source open, then use the discharge lead, then measure again.")
}

// storedTime sets what a known resistance allows to compute.
func storedTime(r *calc.Run, c, v float64) {
	ohm := r.Float("resistance")
	t := electrical.DischargeTime(ohm, c, v, linkDead)
	r.Set("time", t)
	r.Set("time-high", capacitorSurplus*t)
	r.Set("power", v*v/ohm)
	r.Step("Fall to 50 V, as rated", text.Say("R C ln(V ÷ 50 V) = {} × {} × ln({} ÷ 50 V)", r.Given("resistance"), r.Given("capacitance"), r.Given("voltage")), r.OutputText("time"), calc.Cite{Key: "discharge-drive"})
	r.Step("With capacitors 20 % over their rating", "1.2 × the time", r.OutputText("time-high"), calc.Cite{Key: "from-memory", Locator: "tolerance of electrolytic capacitors"})
	r.Step("Power in the resistor at the start", "V² ÷ R", r.OutputText("power"), calc.Cite{Key: "common-practice", Locator: "physics"})
	if r.Has("marked") && capacitorSurplus*t > r.Float("marked") {
		r.Warn("The calculated fall is longer than the marked time. Expect more than 50 V when you measure, and wait on.")
	}
	if r.Choice("path") == "lead" {
		storedLead(r, v*v/ohm)
	}
	if v <= linkDead {
		return
	}
	// Three falls to 50 V show the tail; the curve is the slow one.
	const points = 40
	end := 1.5 * capacitorSurplus * t
	x, y := make([]float64, points+1), make([]float64, points+1)
	for i := range x {
		x[i] = end * float64(i) / points
		y[i] = electrical.VoltageAfter(ohm, capacitorSurplus*c, v, x[i])
	}
	drawing := chart.Chart{Label: "Calculated link voltage against time. Measure; do not trust the curve.", XTitle: "seconds", YTitle: "V DC, calculated",
		Lines: []chart.Line{{Class: "co-chart__fit", Name: "calculated", X: x, Y: y}}, Levels: []chart.Level{{Class: "co-chart__limit", Label: "50 V: measure it", Y: linkDead}}}
	r.Chart("Calculated fall of the link voltage", drawing.SVG())
}

// storedLead judges the resistor of a discharge lead.
func storedLead(r *calc.Run, power float64) {
	ohm := r.Float("resistance")
	if ohm < 1e3 || ohm > 1e4 {
		r.Warn("Practice uses 1 to 10 kΩ. Less makes an arc at the tip, more takes long.")
	}
	switch {
	case !r.Has("rating"):
		r.Warn("The resistor's power rating is missing. Practice asks for 50 W or more, insulated.")
	case power > 2*r.Float("rating"):
		r.Warn("The resistor starts at more than twice its rating. It can burn open and leave the charge in: use a higher resistance or rating.")
	}
}
