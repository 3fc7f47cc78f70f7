package catalog

import (
	"math"
	"strconv"

	"changeout/calc"
	"changeout/calc/formula/recovery"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Temperatures that the rules count with.
const (
	guidelineT = 298.15 // 25 °C, 77 °F
	transportT = 328.15 // 55 °C, 131 °F
	testT      = 338.15 // 65 °C
)

func recoveryCylinder(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	due, ok := cylinderInTest(r)
	if !ok || !cylinderClean(r, ref) {
		return
	}
	needed, ok := cylinderRating(r, ref)
	if !ok {
		return
	}
	hot, err1 := ref.BubbleAtT(r.Float("warmest"))
	cool, err2 := ref.BubbleAtT(guidelineT)
	limit, err3 := ref.BubbleAtT(pick(r.Choice("marking") == "test", 333.15, transportT))
	if err := either(either(err1, err2), err3); err != nil {
		refuseState(r, ref, "warmest", err)
		return
	}
	r.Set("due", due)
	r.Set("rating-needed", needed)
	volume, tare := r.Float("water-capacity"), r.Float("tare")
	net := math.Max(0, r.Float("gross")-tare)
	guideline := recovery.Fill(volume, cool.RhoLiquid)
	allowed := recovery.Fill(volume, hot.RhoLiquid)
	formula := text.Say("0.80 × V × ρ({}) = 0.80 × {} × {}", r.Given("warmest"), r.Given("water-capacity"), r.Text(unit.Density, hot.RhoLiquid, "kg/L", "lb/ft3"))
	cite := equationCite(ref)
	if m := volume * r.Float("ratio"); r.Has("ratio") && m < allowed {
		allowed, formula, cite = m, "the stamped filling ratio × V is lower", calc.Cite{Key: "adr-tanks"}
	}
	if m := volume * limit.RhoLiquid; m < allowed {
		allowed, formula = m, "ρ × V at 55 °C (UN marks: 60 °C), where liquid may not fill it, is lower"
		cite = calc.Cite{Key: "cfr-173-304", Locator: "paragraph (b)"}
	}
	r.Set("guideline", guideline)
	r.Set("old-rule", recovery.Fill(volume, recovery.WaterDensity))
	r.Set("allowed", allowed)
	r.Set("gross-limit", tare+allowed)
	room := math.Max(0, allowed-net)
	r.Set("room", room)
	r.Step("Guideline mass", text.Say("0.80 × WC × ρ at 25 °C = 0.80 × {} × {}", r.Given("water-capacity"), r.Text(unit.Density, cool.RhoLiquid, "kg/L", "lb/ft3")), r.OutputText("guideline"), calc.Cite{Key: "ahri-k", Locator: "section 7, filling procedures"})
	r.Step("Warmest place", "the transport rule counts with 55 °C (131 °F)", r.Given("warmest"), calc.Cite{Key: "cfr304c", Locator: "paragraph (c)"})
	r.Step("Room when warmest", "the guideline asks for it at 25 °C (77 °F); this handbook keeps it when warmest, which is stricter", "a fifth of the volume", calc.Cite{Key: "common-practice"})
	r.Step("Most it may hold: a fifth still free when warmest", formula, r.OutputText("allowed"), cite)
	r.Step("Stop when the scale shows", "tare + most it may hold", r.OutputText("gross-limit"), calc.Cite{Key: "achrcyl"})
	r.Step("Room left", text.Say("most it may hold − (gross − tare), net now {}", r.Text(unit.Mass, net, "kg", "lb")), r.OutputText("room"), calc.Cite{Key: "traincyl"})
	setLiquidFull(r, ref, "liquid-full", "Full of liquid at", math.Max(allowed, net)/volume)
	setLiquidFull(r, ref, "guideline-full", "At the guideline mass, full of liquid at", guideline/volume)
	concludeCylinder(r, ref, net, allowed, guideline, room)
	noteCylinder(r, ref, room, allowed)
}

// cylinderInTest refuses a cylinder whose test has run out and gives the day it does.
func cylinderInTest(r *calc.Run) (due float64, ok bool) {
	last, today := r.Float("last-test"), r.Float("today")
	if last > today {
		r.Refuse("last-test", "after-today", text.Say("Last test: {} is after today, {}; check both dates.", r.Given("last-test"), r.Given("today")))
		return 0, false
	}
	years, _ := strconv.Atoi(r.Choice("interval"))
	y, m, d := unit.Civil(int(last))
	due = float64(unit.DayNumber(y+years, m, min(d, 28))) // no month is shorter
	if today >= due {
		r.Refuse("last-test", "out-of-date", text.Say("Last test: {} is {} years back or more, so this cylinder is out of test. Do not fill it; use one that is in test.", r.Given("last-test"), r.Choice("interval")))
		return 0, false
	}
	r.Step("Next test due", text.Say("last test + {} years", r.Choice("interval")), r.Text(unit.Date, due), calc.Cite{Key: "gwtext", Locator: "page 286"})
	return due, true
}

// cylinderClean refuses another gas, and a weight that contradicts the tare.
func cylinderClean(r *calc.Run, ref *refrigerant.Refrigerant) bool {
	net := r.Float("gross") - r.Float("tare")
	// Hoses and worn paint move a scale by some hundred grams; 1 % of the water capacity covers ton tanks.
	slack := math.Max(0.3, 10*r.Float("water-capacity"))
	switch {
	case r.Choice("contents") == "other":
		r.Refuse("contents", "mixed", text.Say("In the cylinder now: it must be empty or hold {} alone. Never mix refrigerants; take another cylinder.", ref.Name))
	case net < -slack:
		r.Refuse("gross", calc.TooLow, text.Say("On the scale now: {} is below the tare of {}; check the stamp and the scale.", r.Given("gross"), r.Given("tare")))
	case r.Choice("contents") == "empty" && net > slack:
		r.Refuse("gross", "not-empty", text.Say("On the scale now: the cylinder is called empty but weighs {} above its tare. Find out what is in it.", r.Text(unit.Mass, net, "kg", "lb")))
	default:
		return true
	}
	return false
}

// cylinderRating refuses a cylinder that is marked for too low a pressure.
func cylinderRating(r *calc.Run, ref *refrigerant.Refrigerant) (needed float64, ok bool) {
	rated := r.Float("rating")
	const atm = unit.StandardAtmosphere
	cite, formula := calc.Cite{Key: "cfr304c", Locator: "paragraph (c)"}, "vapour pressure at 55 °C ÷ 1.25"
	if r.Choice("marking") == "test" {
		cite, formula = calc.Cite{Key: "adr-tanks"}, "vapour pressure at 65 °C"
		needed, ok = vapourPressure(ref, testT)
	} else if ref.Name == "R-22" {
		// The table names this cylinder; the formula gives 240.5.
		cite, formula = calc.Cite{Key: "cfr304a", Locator: "table, DOT-4BA240"}, "the table of the rule"
		needed, ok = atm+240*6894.757293168361, true
	} else if needed, ok = vapourPressure(ref, transportT); ok {
		needed = atm + recovery.ServicePressure(needed-atm)
	}
	show := func(p float64) string { return r.Text(unit.Pressure, p, "barg", "psig") }
	switch {
	case !ok:
		r.Refuse("refrigerant", "outside-range", text.Say("Refrigerant: {} is at or above its critical point in a warm cylinder; follow the rules of its supplier.", ref.Name))
		return 0, false
	// One part in 10⁶ is rounding of the mark's unit.
	case rated < needed*(1-1e-6):
		r.Refuse("rating", "pressure-rating", text.Say("Pressure mark: {} is too low for {}; the cylinder must be marked {} or more. Take a stronger one.", r.Given("rating"), ref.Name, show(needed)))
		return 0, false
	}
	r.Step("Lowest mark that suits "+ref.Name, formula, show(needed), cite)
	return needed, true
}

// vapourPressure gives the bubble pressure, also over the last stretch below
// the critical point, between the last state solved and the critical one.
func vapourPressure(ref *refrigerant.Refrigerant, t float64) (float64, bool) {
	if b, err := ref.BubbleAtT(t); err == nil {
		return b.P, true
	}
	_, top := ref.Range()
	b, err := ref.BubbleAtT(top)
	if err != nil || t <= top || t >= ref.Critical.T {
		return 0, false
	}
	return recovery.Between(t, top, b.P, ref.Critical.T, ref.Critical.P), true
}

// setLiquidFull sets the temperature at which liquid of a density fills the
// cylinder, where it lies inside the range of the equations.
func setLiquidFull(r *calc.Run, ref *refrigerant.Refrigerant, output, label string, density float64) {
	low, high := ref.Range()
	t, ok := recovery.LiquidFull(func(t float64) (float64, bool) {
		b, err := ref.BubbleAtT(t)
		return b.RhoLiquid, err == nil
	}, density, math.Max(low, 223.15), high)
	value := "above " + r.Text(unit.Temperature, high, "C", "F")
	if ok {
		r.Set(output, t)
		value = r.OutputText(output)
	}
	r.Step(label, "ρ liquid(T) = mass ÷ V = "+r.Text(unit.Density, density, "kg/L", "lb/ft3"), value, equationCite(ref))
}

func concludeCylinder(r *calc.Run, ref *refrigerant.Refrigerant, net, allowed, guideline, room float64) {
	full := r.OutputText("liquid-full")
	if full != "" {
		full = text.Say(" It would be full of liquid at {}.", full)
	}
	switch {
	case net > guideline:
		r.Conclude("overfilled", text.Say("It holds {}, more than the guideline's {}.{}", r.Text(unit.Mass, net, "kg", "lb"), r.OutputText("guideline"), full))
		r.Advise("Keep it cool and in the shade, keep people away, and move refrigerant into an evacuated cylinder that is in test.")
	case net > allowed:
		r.Conclude("warm", text.Say("It holds {}, within the guideline at 25 °C but more than {} allows.{}", r.Text(unit.Mass, net, "kg", "lb"), r.Given("warmest"), full))
		r.Advise("Take refrigerant out, or keep the cylinder cooler and enter that temperature.")
	case room < 0.02*allowed:
		r.Conclude("full", text.Say("{} is left, which a hose can bring.{}", r.OutputText("room"), full))
		r.Advise("Close it, label it, and connect the next cylinder.")
	default:
		r.Conclude("room", text.Say("{} more of {} may go in.{}", r.OutputText("room"), ref.Name, full))
		r.Advise("Watch the scale while you fill. Stop before the limit, close the valve, and weigh again with the hose off.")
	}
}

func noteCylinder(r *calc.Run, ref *refrigerant.Refrigerant, room, allowed float64) {
	r.Step("Old label rule", "0.8 × WC, as if every refrigerant weighed as much as water", r.OutputText("old-rule"), calc.Cite{Key: "traincyl"})
	if old := recovery.Fill(r.Float("water-capacity"), recovery.WaterDensity); old > allowed {
		r.Warn(text.Say("The old rule, 0.8 × water capacity, would allow {}. That is too much here, because the warm liquid is lighter than water.", r.OutputText("old-rule")))
	}
	if ref.Class != "" && ref.Class != "A1" {
		r.Warn(text.Say("{} is class {}: the cylinder, the machine and the place must be meant for flammable or toxic gas.", ref.Name, ref.Class))
	}
	if r.Has("to-recover") {
		n := recovery.Needed(r.Float("to-recover"), room, allowed)
		r.Set("cylinders", float64(n))
		r.Step("Cylinders like this, this one first", text.Say("{} into {}, then {} each", r.Given("to-recover"), r.OutputText("room"), r.OutputText("allowed")), r.OutputText("cylinders"), calc.Cite{Key: "common-practice"})
	}
}
