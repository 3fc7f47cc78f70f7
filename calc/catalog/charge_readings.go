package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/formula/charge"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// chargeBySuperheat judges a fixed-orifice system against the superheat rule.
func chargeBySuperheat(r *calc.Run, ref *refrigerant.Refrigerant) {
	wb, db := r.Float("indoor-wet-bulb"), r.Float("outdoor-dry-bulb")
	target := charge.SuperheatTarget(wb, db)
	r.Set("target-superheat", target)
	r.Step("Superheat target", text.Say("(3 × wet bulb − 80 − dry bulb) ÷ 2 in °F, with {} and {}", fahrenheitText(wb), fahrenheitText(db)), r.OutputText("target-superheat"),
		calc.Cite{Key: "practice-76", Locator: "common practice"})
	r.Warn("The target is a rule of common practice. Against a published table it errs by up to 4 K, and by 2 K inside its best range.")
	if !airflowProved(r) {
		return
	}
	if target < charge.LeastSuperheatTarget {
		r.Conclude("weigh-in", text.Say("The target is below {}, too small to hold without liquid reaching the compressor.", r.Text(unit.TemperatureDifference, charge.LeastSuperheatTarget, "K", "F")))
		r.Advise("Recover, then weigh in the charge that the nameplate gives.")
		return
	}
	if inBand := wb >= 290.15 && wb <= 295.15 && db >= 297.15 && db <= 311.15; !inBand {
		r.Warn("The rule is best between 24 and 38 °C outdoors and 17 and 22 °C wet bulb. Outside that, weigh in instead.")
	}
	p := r.Float("suction-pressure")
	dew, err := ref.DewAtP(p)
	if err != nil {
		refuseState(r, ref, "suction-pressure", err)
		return
	}
	stepAbsolute(r, "suction-pressure", p)
	measured := r.Float("suction-temperature") - dew.T
	r.Set("superheat", measured)
	r.Step("Superheat measured", text.Say("T suction − T dew = {} − {}", r.Given("suction-temperature"), r.Text(unit.Temperature, dew.T, "C", "F")), r.OutputText("superheat"), equationCite(ref))
	// High superheat means too little refrigerant in the evaporator.
	judgeReading(r, ref, "superheat", measured-target, charge.SuperheatTolerance, 1)
}

// chargeBySubcooling judges a valve system against the maker's subcooling.
func chargeBySubcooling(r *calc.Run, ref *refrigerant.Refrigerant) {
	if !airflowProved(r) {
		return
	}
	p := r.Float("liquid-pressure")
	bubble, err := ref.BubbleAtP(p)
	if err != nil {
		refuseState(r, ref, "liquid-pressure", err)
		return
	}
	stepAbsolute(r, "liquid-pressure", p)
	measured := bubble.T - r.Float("liquid-line-temperature")
	r.Set("subcooling", measured)
	r.Step("Subcooling measured", text.Say("T bubble − T liquid = {} − {}", r.Text(unit.Temperature, bubble.T, "C", "F"), r.Given("liquid-line-temperature")), r.OutputText("subcooling"), equationCite(ref))
	if measured < 0 {
		r.Warn("The liquid line is warmer than its bubble point. It holds vapour too, or a reading is off: check the clamp and the gauge first.")
	}
	// High subcooling means too much refrigerant in the condenser.
	judgeReading(r, ref, "subcooling", measured-r.Float("target-subcooling"), charge.SubcoolingTolerance, -1)
}

// judgeReading turns a difference from the target into a direction and a first
// step. sign is +1 when a reading above the target asks for more refrigerant.
func judgeReading(r *calc.Run, ref *refrigerant.Refrigerant, what string, difference, tolerance, sign float64) {
	r.Set("difference", difference)
	r.Step("Difference", "measured − target, accepted within ±"+r.Text(unit.TemperatureDifference, tolerance, "K", "F"), r.OutputText("difference"), calc.Cite{Key: "practice-75"})
	if math.Abs(difference) <= tolerance {
		r.Conclude("leave", text.Say("The {} is within {} of its target.", what, r.Text(unit.TemperatureDifference, tolerance, "K", "F")))
		r.Advise("Write the readings down as the baseline.")
		return
	}
	step := "a small amount, 50 to 100 g (2 to 3.5 oz)"
	if r.Has("unit-charge") {
		kg := charge.FirstStep(r.Float("unit-charge"))
		r.Set("first-step", kg)
		r.Step("First step", "2 % of the nameplate charge, 0.05 to 0.5 kg", r.OutputText("first-step"), calc.Cite{Key: "common-practice"})
		step = r.OutputText("first-step")
	}
	if difference*sign > 0 {
		r.Conclude("add", text.Say("The {} shows too little refrigerant. Add {} as a first step, then wait and read again.", what, step))
		r.Advise("Before adding, look for the leak and for a restriction: both look like too little charge.")
		if ref.ChargeAsLiquid {
			r.Advise(ref.Name + " is a blend: take it from the cylinder as liquid, throttled before the compressor.")
		}
	} else {
		r.Conclude("take-out", text.Say("The {} shows too much refrigerant. Recover {} as a first step, then wait and read again.", what, step))
		r.Advise("Before taking out, check airflow, filters and the outdoor coil: a dirty coil looks like too much charge.")
	}
	r.Advise("Wait 15 minutes of steady running, then read again. Stop when the reading is inside the tolerance.")
}

// airflowProved stops a charge by readings when the airflow is not proved.
func airflowProved(r *calc.Run) bool {
	if r.Choice("airflow-proved") == "yes" {
		return true
	}
	r.Conclude("weigh-in", "Without proved airflow and 15 minutes of steady running, superheat and subcooling say nothing about the charge.")
	r.Step("Conditions for readings", "airflow at least 300 cfm per ton (40 L/s per kW), 15 min steady", "not met", calc.Cite{Key: "practice-75"})
	r.Advise("Prove the airflow and let it run 15 minutes, or weigh the charge in.")
	return false
}

func fahrenheitText(k float64) string { return unit.Temperature.Unit("F").Text(k, unit.Env{}) }
