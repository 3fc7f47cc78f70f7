package catalog

import (
	"strings"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/cycle"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// running is what is known of the circuit while it is judged.
type running struct {
	r        *calc.Run
	ref      *refrigerant.Refrigerant
	p1, p2   float64 // suction and discharge, Pa
	low      span    // saturation at suction
	high     span    // saturation at discharge
	suction  refrigerant.Properties
	ideal    refrigerant.Properties
	hasIdeal bool
	readings []reading // the outputs that were set
	outside  []string  // what lies outside a band, in words
	edge     []string  // what lies at the end of one
}

type reading struct {
	id    string
	value float64
}

// span is the saturation temperatures at one pressure, K.
type span struct{ bubble, dew float64 }

func (s span) middle() float64 { return cycle.MidPoint(s.bubble, s.dew) }

func runningState(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	c := running{r: r, ref: ref, p1: r.Float("suction-pressure"), p2: r.Float("discharge-pressure")}
	if c.p2 <= c.p1 {
		r.Refuse("discharge-pressure", calc.TooLow, text.Say("Discharge pressure: {} is not above the suction pressure, {}; read both while the compressor runs. For a stopped circuit use the worksheet “Non-condensables”.",
			r.Given("discharge-pressure"), r.Given("suction-pressure")))
		return
	}
	var ok bool
	if c.low, ok = c.saturation("suction-pressure", c.p1); !ok {
		return
	}
	if c.high, ok = c.saturation("discharge-pressure", c.p2); !ok {
		return
	}
	c.pressures()
	c.superheats()
	c.compression()
	c.air()
	c.bands()
	c.judge()
	c.draw()
}

func (c *running) saturation(input string, p float64) (span, bool) {
	b, err1 := c.ref.BubbleAtP(p)
	d, err2 := c.ref.DewAtP(p)
	if err := either(err1, err2); err != nil {
		refuseState(c.r, c.ref, input, err)
		return span{}, false
	}
	return span{b.T, d.T}, true
}

// set gives an output its value and records the line of working that ends in it.
func (c *running) set(id string, v float64, formula string, cite calc.Cite) {
	c.r.Set(id, v)
	c.readings = append(c.readings, reading{id, v})
	label := ""
	for i := range runningOutputs {
		if runningOutputs[i].ID == id {
			label = runningOutputs[i].Label
		}
	}
	c.r.Step(label, formula, c.r.OutputText(id), cite)
}

// value returns an output that was set.
func (c *running) value(id string) (float64, bool) {
	for _, x := range c.readings {
		if x.id == id {
			return x.value, true
		}
	}
	return 0, false
}

func (c *running) show(T float64) string { return c.r.Text(unit.Temperature, T, "C", "F") }

// pressures records saturation and the ratio.
func (c *running) pressures() {
	r := c.r
	stepAbsolute(r, "suction-pressure", c.p1)
	r.Step("Absolute discharge pressure", "from "+r.Given("discharge-pressure"), kilopascal(c.p2), calc.Cite{Key: "common-practice"})
	c.set("ratio", cycle.Ratio(c.p2, c.p1), text.Say("p discharge ÷ p suction, both absolute = {} ÷ {}", kilopascal(c.p2), kilopascal(c.p1)), calc.Cite{Key: "ashrae-fundamentals", Locator: "by definition"})
	for _, side := range []struct {
		id, label string
		span
	}{{"evaporating", "Saturation at suction pressure", c.low}, {"condensing", "Saturation at discharge pressure", c.high}} {
		r.Step(side.label, equilibriumFormula(c.ref), text.Say("bubble {}, dew {}", c.show(side.bubble), c.show(side.dew)), equationCite(c.ref))
		c.set(side.id, side.middle(), "(T bubble + T dew) ÷ 2", calc.Cite{Key: "practice-79"})
	}
}

func kilopascal(p float64) string { return unit.Fixedf(p/1000, 1) + " kPa" }

// difference sets an output to a − b and records it.
func (c *running) difference(id, formula string, a, b float64, key string) {
	c.set(id, a-b, text.Say("{} = {} − {}", formula, c.show(a), c.show(b)), calc.Cite{Key: key})
}

func (c *running) superheats() {
	r := c.r
	if r.Has("suction-temperature") {
		c.difference("superheat", "T suction − T dew", r.Float("suction-temperature"), c.low.dew, "practice-79")
	}
	if r.Has("discharge-temperature") {
		c.difference("discharge-superheat", "T discharge − T dew", r.Float("discharge-temperature"), c.high.dew, "practice-79")
	}
	if r.Has("liquid-temperature") {
		c.difference("subcooling", "T bubble − T liquid", c.high.bubble, r.Float("liquid-temperature"), "practice-79")
	}
}

// compression compares with an ideal one. Near the critical point and beyond
// the equations there is none, and nothing is shown.
func (c *running) compression() {
	r := c.r
	if !r.Has("suction-temperature") {
		return
	}
	gas, dry, err := cycle.Suction(c.ref, r.Float("suction-temperature"), c.p1)
	if err != nil {
		return
	}
	ideal, err := cycle.Ideal(c.ref, gas, c.p2)
	if err != nil {
		return
	}
	c.suction, c.ideal, c.hasIdeal = gas, ideal, true
	from := "s = s suction"
	if !dry {
		from = "s = s of dry vapour, because the suction is not proved dry"
	}
	c.set("ideal-discharge", ideal.T, from+", at the discharge pressure", equationCite(c.ref))
	T := r.Float("discharge-temperature")
	if !r.Has("discharge-temperature") || T <= c.high.dew {
		return
	}
	real, err := c.ref.AtTP(T, c.p2)
	if err != nil {
		return
	}
	eta, ok := cycle.Efficiency(gas.Enthalpy, ideal.Enthalpy, real.Enthalpy)
	switch {
	case ok && dry && eta <= 1:
		h := func(q refrigerant.Properties) string {
			return r.Text(unit.SpecificEnthalpy, q.Enthalpy, "kJ/kg", "Btu/lb")
		}
		c.set("efficiency", eta, text.Say("(h ideal − h suction) ÷ (h discharge − h suction), with {}, {} and {}", h(ideal), h(gas), h(real)), calc.Cite{Key: "cengel-boles"})
		r.Warn("The efficiency is read from the pipe, which is cooler than the gas: it comes out too high. No published band is known; compare it with this machine's own baseline.")
	case T < ideal.T:
		r.Warn(text.Say("The discharge pipe is cooler than an ideal compression of dry gas would make it, {}. Liquid in the suction, injection, heat loss or a loose probe does that.", c.show(ideal.T)))
	}
}

// air takes the differences between saturation and air.
func (c *running) air() {
	r := c.r
	condenser, evaporator := "outdoor-air", "indoor-return"
	if r.Choice("mode") == "heating" {
		condenser, evaporator = evaporator, condenser
	}
	if r.Has(condenser) {
		c.difference("condensing-difference", "T condensing − T air", c.high.middle(), r.Float(condenser), "common-practice")
	}
	if r.Has(evaporator) {
		c.difference("evaporating-difference", "T air − T evaporating", r.Float(evaporator), c.low.middle(), "common-practice")
	}
	if r.Has("indoor-return") && r.Has("indoor-supply") {
		in, out := r.Float("indoor-return"), r.Float("indoor-supply")
		if r.Choice("mode") == "heating" {
			in, out = out, in
		}
		c.difference("air-change", "warmer − colder air", in, out, "common-practice")
	}
}

// draw shows the measured cycle on pressure and enthalpy.
func (c *running) draw() {
	r := c.r
	hu, pu := "kJ/kg", "kPaa"
	if strings.HasSuffix(r.Text(unit.SpecificEnthalpy, 0, "kJ/kg", "Btu/lb"), "lb") {
		hu, pu = "Btu/lb", "psia"
	}
	h, p := unit.SpecificEnthalpy.Unit(hu), unit.Pressure.Unit(pu)
	add := func(l *chart.Line, enthalpy, pressure float64) {
		l.X, l.Y = append(l.X, enthalpy/h.Factor), append(l.Y, pressure/p.Factor)
	}
	d := chart.PressureEnthalpy{XTitle: "enthalpy, " + h.Label, YTitle: p.Label,
		Liquid: chart.Line{Name: "bubble"}, Vapour: chart.Line{Name: "dew"}, Ideal: chart.Line{Name: "ideal"}}
	liquid, vapour := cycle.Dome(c.ref, c.low.bubble-15)
	for _, q := range liquid {
		add(&d.Liquid, q.Enthalpy, q.P)
	}
	for _, q := range vapour {
		add(&d.Vapour, q.Enthalpy, q.P)
	}
	mark := func(label string, enthalpy, pressure, dx, dy float64, anchor string) {
		add(&d.Cycle, enthalpy, pressure)
		d.Marks = append(d.Marks, chart.Mark{X: enthalpy / h.Factor, Y: pressure / p.Factor, Label: label, DX: dx, DY: dy, Anchor: anchor})
	}
	if c.hasIdeal {
		mark("1 suction", c.suction.Enthalpy, c.p1, -8, -9, "end")
		add(&d.Ideal, c.suction.Enthalpy, c.p1)
		add(&d.Ideal, c.ideal.Enthalpy, c.p2)
	}
	if T := r.Float("discharge-temperature"); r.Has("discharge-temperature") && T > c.high.dew {
		if q, err := c.ref.AtTP(T, c.p2); err == nil {
			mark("2 discharge", q.Enthalpy, c.p2, 6, -10, "end")
		}
	}
	if T := r.Float("liquid-temperature"); r.Has("liquid-temperature") && T < c.high.bubble {
		if q, err := c.ref.AtTP(T, c.p2); err == nil {
			mark("3 liquid", q.Enthalpy, c.p2, 8, 23, "start")
			mark("4 expanded", q.Enthalpy, c.p1, -6, 23, "start")
			if c.hasIdeal {
				add(&d.Cycle, c.suction.Enthalpy, c.p1)
			}
		}
	}
	d.Label = text.Say("Pressure and enthalpy of {}: saturated liquid and vapour, and the cycle as measured, from {} to {}. 1 suction, 2 discharge, 3 liquid, 4 after expansion. {}.",
		c.ref.Name, kilopascal(c.p1), kilopascal(c.p2), r.VerdictTitle())
	if svg := d.SVG(); svg != "" {
		r.Chart("The measured cycle, and an ideal compression beside it", svg)
	}
}
