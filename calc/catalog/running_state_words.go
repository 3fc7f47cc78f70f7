package catalog

import (
	"strings"

	"changeout/calc"
	"changeout/calc/formula/cycle"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// kelvins writes a temperature difference.
func (c *running) kelvins(v float64) string {
	return c.r.Text(unit.TemperatureDifference, v, "K", "F")
}

// bands holds every reading against its general band and remembers in words
// what lies outside and what lies at an end, where the reading cannot tell.
func (c *running) bands() {
	r := c.r
	k, at := c.kelvins, c.show
	cooling := r.Choice("mode") == "cooling"
	practice := "common-practice"
	c.band("superheat", cycle.SuctionSuperheat, k, text.Say("; a scroll maker allows {} to {}", k(5), k(30)), "manual-49", "suction superheat")
	c.band("discharge-superheat", cycle.DischargeSuperheat, k, text.Say("; flagged under {} and over {} by another", k(11), k(39)), "manual-12", "discharge superheat")
	c.band("subcooling", cycle.SubcoolingUsual, k, "", "manual-11", "subcooling")
	if cooling {
		c.band("evaporating", cycle.EvaporatingCooling, at, ", comfort cooling", practice, "evaporating temperature")
		c.band("condensing-difference", cycle.CondensingOverAir, k, "", practice, "condensing temperature over the air")
		c.band("air-change", cycle.IndoorAirChange, k, " at rated airflow", practice, "indoor air change")
		if c.low.middle() < freezing {
			r.Warn("The evaporating temperature is below freezing: for more than minutes in cooling, stop and look for ice and low airflow.")
		}
	}
	r.Step("End of a band", "within the error entered a reading is at the end; what harms the compressor gets no allowance", r.Given("reading-error"), calc.Cite{Key: practice})
	if !r.Has("discharge-temperature") {
		return
	}
	r.Step("Discharge pipe, rule", "107 °C (225 °F) is widely taught; by common practice investigate from "+at(cycle.DischargeInvestigate), c.show(r.Float("discharge-temperature")), calc.Cite{Key: "practice-15"})
	r.Step("Discharge pipe, doubt about the rule", text.Say("PVE oil is said to begin to break down near {}, and a valve can be {} hotter than the pipe", at(392.15), k(42)), "not safe for every oil", calc.Cite{Key: "practice-16"})
	r.Step("Discharge pipe, protection", "the unit's own trip, which differs by make", text.Say("{} to {}", at(383.15), at(408.15)), calc.Cite{Key: "manual-8"})
}

const freezing = 273.15

func (c *running) band(id string, b cycle.Band, show func(float64) string, note, key, name string) {
	v, ok := c.value(id)
	if !ok {
		return
	}
	place := b.Place(v, c.r.Float("reading-error"))
	word := placeWords[place]
	switch place {
	case cycle.Below, cycle.Above:
		c.outside = append(c.outside, name+" "+word)
	case cycle.AtLow:
		c.edge = append(c.edge, text.Say("{} {} (the band ends at {})", name, c.r.OutputText(id), show(b.Low)))
	case cycle.AtHigh:
		c.edge = append(c.edge, text.Say("{} {} (the band ends at {})", name, c.r.OutputText(id), show(b.High)))
	}
	c.r.Step("General band of "+name, text.Say("{} to {}{}; the maker's value comes first", show(b.Low), show(b.High), note), word, calc.Cite{Key: key})
}

var placeWords = [...]string{cycle.Below: "low", cycle.AtLow: "at the low end", cycle.Inside: "inside", cycle.AtHigh: "at the high end", cycle.Above: "high"}

// judge reaches the verdict. What harms the compressor comes first; a reading
// that is missing or taken too early never ends in a verdict without doubt.
func (c *running) judge() {
	r := c.r
	superheat, hasSuperheat := c.value("superheat")
	discharge, hasDischarge := c.value("discharge-superheat")
	subcooling, hasSubcooling := c.value("subcooling")
	pipe := r.Float("discharge-temperature")
	early := r.Float("steady") < cycle.SteadyTime
	wet := hasDischarge && discharge < cycle.FloodbackDischarge
	cold := cycle.SubcoolingUsual.Place(subcooling, r.Float("reading-error"))
	few, full := hasSubcooling && cold == cycle.Below, hasSubcooling && cold == cycle.Above
	switch {
	case hasDischarge && pipe >= cycle.DischargeLimit:
		r.Conclude("overheating", text.Say("The discharge pipe is at {}, and the valve inside is hotter. 107 °C (225 °F) is a widely taught limit; the maker's governs.", c.show(pipe)))
		r.Advise("Stop the unit if it stays there. Check the outdoor coil, charge, restrictions and suction superheat.")
		if hasSuperheat && superheat < cycle.FloodbackSuction {
			r.Warn("A hot discharge does not fit so low a suction superheat. Check the suction probe and both gauges.")
		}
	case hasSuperheat && r.Float("suction-temperature") < c.low.bubble-2 && !wet:
		// 2 K is what a probe and a gauge together can be wrong by.
		r.Conclude("contradiction", text.Say("The suction pipe is {} colder than the refrigerant can be at that pressure.", c.kelvins(c.low.bubble-r.Float("suction-temperature"))))
		r.Advise("Check gauge, probe and refrigerant. Until they agree, treat it as liquid that returns.")
	case wet || hasSuperheat && superheat < cycle.FloodbackSuction:
		c.floodback(wet, hasSuperheat && superheat < cycle.FloodbackSuction, full)
	case hasSuperheat && superheat > cycle.StarvingSuction:
		r.Conclude("starving", text.Say("Suction superheat is {}, above {}: too little refrigerant boils, and the gas returns too warm to cool the compressor.", r.OutputText("superheat"), c.kelvins(cycle.StarvingSuction)))
		switch {
		case few:
			r.Advise("Subcooling is low too: short of refrigerant. Find the leak, then weigh in the whole charge.")
		case full:
			r.Advise("Subcooling is high too: look for a blocked strainer, a closed valve, or a sensor that closes one.")
		default:
			r.Advise("Check valve steps, strainers and sensors, and compare the charge by weight.")
		}
	case hasDischarge && pipe >= cycle.DischargeInvestigate:
		r.Conclude("outside", text.Say("The discharge pipe is at {}. From 100 °C (212 °F), sustained, it is looked into by common practice: some oils break down.", c.show(pipe)))
		r.Advise("Check outdoor coil, charge and suction superheat, and compare with the maker's limit.")
	case len(c.outside) > 0:
		r.Conclude("outside", "Outside: "+strings.Join(c.outside, ", ")+".")
		r.Advise("Compare with the maker's value for this unit. Check airflow and sensors before the charge.")
	case !hasSuperheat || !hasDischarge || !hasSubcooling:
		r.Conclude("not-enough", "Suction, discharge and liquid pipe temperatures are all needed before anything can be called inside its band.")
		r.Advise("Clamp and insulate the missing probes, and read again.")
	case early:
		r.Conclude("not-steady", text.Say("Nothing is known to lie outside a band, but the circuit was steady for {} only.", r.Given("steady")))
		r.Advise("Let it run steadily for 15 minutes or more, and read again.")
	case len(c.edge) > 0:
		r.Conclude("edge", text.Say("At the end of a band: {}. A reading that may be wrong by {} cannot tell inside from outside.", strings.Join(c.edge, "; "), r.Given("reading-error")))
		r.Advise("Compare with the maker's value for this unit. Clean and insulate the probe, zero the gauge, and read again.")
	default:
		r.Conclude("in-bands", "What was read lies inside the general bands. That does not clear the machine: the maker's targets, airflow, oil and acid still count.")
		r.Advise("Write the readings down as the baseline, with speed and load.")
	}
	c.remind(early)
}

func (c *running) floodback(discharge, suction, full bool) {
	r := c.r
	sign := "Suction superheat is " + r.OutputText("superheat")
	switch {
	case discharge && suction:
		sign += " and discharge superheat " + r.OutputText("discharge-superheat")
	case discharge:
		sign = "Discharge superheat is " + r.OutputText("discharge-superheat")
	}
	r.Conclude("floodback", sign+": liquid thins the oil and wears the bearings.")
	r.Advise("Stop the unit. Check airflow, expansion valves, their sensors and the charge.")
	if change, _ := c.value("air-change"); r.Choice("mode") == "cooling" && (c.low.middle() < cycle.EvaporatingCooling.Low || change > cycle.IndoorAirChange.High) {
		r.Advise("Low superheat with low pressure or much cooled air: heat does not reach the refrigerant. Measure the airflow; do not add refrigerant.")
	}
	if full {
		r.Advise("Subcooling is high too: suspect too much refrigerant.")
	}
	if discharge && !suction {
		r.Warn("A discharge probe that is loose or bare shows the same. Check how it sits.")
	}
}

// remind adds what holds for every verdict.
func (c *running) remind(early bool) {
	r := c.r
	r.Step("Steady running", "readings count from 15 min; inverter systems about 1 h in each mode", r.Given("steady"), calc.Cite{Key: "practice-75"})
	if early {
		r.Warn("Not yet 15 minutes steady. A start can look like this for some minutes; watch it, and read again.")
	}
	if r.Choice("drive") == "inverter" {
		r.Warn("Inverter: the controller sets speed, fans and valves, so target values come from the maker. Readings confirm only gross errors.")
		if !early && r.Float("steady") < cycle.SteadyInverter {
			r.Warn("An inverter system may need an hour in each mode before it is steady.")
		}
	}
	if sc, ok := c.value("subcooling"); ok && sc < 0 {
		r.Warn("The liquid pipe is warmer than its bubble point: vapour in the liquid, air, or a reading that is off.")
	}
}
