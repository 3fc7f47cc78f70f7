package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/airside"
	"changeout/calc/formula/cycle"
	"changeout/calc/property/moistair"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Sources of most lines of working.
const (
	psychrometrics = "ashrae-fundamentals"
	coilModel      = "wetter-coil"
)

// breath is one coil while it is judged.
type breath struct {
	r           *calc.Run
	ref         *refrigerant.Refrigerant
	coil        airside.Coil
	compressor  *airside.Compressor
	share       float64
	evaporating float64 // where the coil is known: as measured, or at rated airflow
	now         float64 // evaporating temperature at this airflow, NaN where not known
	superheat   float64 // NaN where not read
	running     bool
	refused     bool
}

func airflow(r *calc.Run) {
	b := breath{r: r, superheat: math.NaN(), now: math.NaN(), running: r.Choice("unit") == "running"}
	b.ref, _ = refrigerant.Lookup(r.Choice("refrigerant"))
	c := &b.coil
	c.T, c.P = r.Float("air-on"), r.Atmosphere()
	var ok bool
	if c.W, ok = b.humidity("on", c.T); !ok {
		return
	}
	if r.Has("air-off") && r.Float("air-off") >= c.T {
		r.Refuse("air-off", calc.TooHigh, text.Say("Air off: {} is not below the air on, {}; this worksheet is for cooling.", r.Given("air-off"), r.Given("air-on")))
		return
	}
	stepAtmosphere(r)
	formula := "W = 0.621945 pw/(p − pw)"
	if r.Choice("humidity-by") == "wet-bulb" {
		formula = "W = ((2501 − 2.326 w) W sat − 1.006 (t − w))/(2501 + 1.86 t − 4.186 w)"
	}
	b.step("Humidity ratio, air on", formula, r.Text(unit.HumidityRatio, c.W, "g/kg", "gr/lb"), psychrometrics)
	flow := b.flow()
	b.share = flow / r.Float("rated-flow")
	c.Mass, c.Flow = r.Float("rated-flow")/moistair.Volume(c.T, c.W, c.P), b.share
	b.set("share", b.share, text.Say("airflow ÷ rated = {} ÷ {}", r.Text(unit.VolumeFlow, flow, airUnits...), r.Given("rated-flow")), "common-practice")
	if b.running {
		ok = b.measured()
	} else {
		ok = b.rated()
	}
	if b.refused {
		return
	}
	if ok {
		b.curves()
	}
	b.judge(ok)
}

func (b *breath) step(label, formula, value, key string) {
	b.r.Step(label, formula, value, calc.Cite{Key: key})
}

// set gives an output its value and records the line of working.
func (b *breath) set(id string, v float64, formula, key string) {
	b.r.Set(id, v)
	for i := range airflowOutputs {
		if o := &airflowOutputs[i]; o.ID == id {
			b.step(o.Label, formula, b.r.OutputText(id), key)
		}
	}
}

func (b *breath) celsius(T float64) string { return b.r.Text(unit.Temperature, T, celsius...) }

// flowText writes a share of the rated airflow.
func flowText(v float64) string {
	if v > 3 {
		return "no airflow"
	}
	return unit.Significant(100*v, 2) + " %"
}

// humidity reads W on one side of the coil.
func (b *breath) humidity(side string, T float64) (float64, bool) {
	r, p := b.r, b.r.Atmosphere()
	if id := side + "-relative"; r.Has(id) {
		return moistair.Relative(T, r.Float(id), p), true
	}
	id := side + "-wet"
	w := r.Float(id)
	if w > T {
		r.Refuse(id, calc.TooHigh, text.Say("Wet bulb: {} is above the dry bulb, {}; check which is which.", r.Given(id), b.celsius(T)))
		return 0, false
	}
	W := moistair.WetBulb(T, w, p)
	if !(W > 0) {
		r.Refuse(id, calc.TooLow, text.Say("Wet bulb: {} is lower than dry air of {} would make it; compare both thermometers.", r.Given(id), b.celsius(T)))
		return 0, false
	}
	return W, true
}

// flow returns the volume flow at the air-on state.
func (b *breath) flow() float64 {
	r, c := b.r, &b.coil
	var v float64
	formula := ""
	switch r.Choice("flow-by") {
	case "flow":
		return r.Float("flow")
	case "face":
		v, formula = r.Float("velocity")*r.Float("area"), "V = velocity × area"
	default:
		v, formula = airside.ByRise(r.Float("heater"), r.Float("rise"), c.T, c.W, c.P), "V = P v/((1006 + 1860 W) ΔT)"
	}
	b.step("Airflow", formula, r.Text(unit.VolumeFlow, v, airUnits...), psychrometrics)
	return v
}

// each says how much air goes with a capacity.
func (b *breath) each(capacity float64) {
	v := b.share * b.r.Float("rated-flow") / capacity * 1e6 // L/s for each kW
	b.step("Air for each capacity; 47 to 60.5 L/s for each kW is the usual target", "airflow ÷ capacity",
		text.Say("{} L/s for each kW, {} cfm for each ton", unit.Fixedf(v, 0), unit.Fixedf(v*7.4517, 0)), "practice-21")
}

// measured takes the heat from the air and fits the coil to the readings. ok
// is false where they contradict each other.
func (b *breath) measured() bool {
	r := b.r
	T2, p := r.Float("air-off"), r.Float("suction-pressure")
	W2, ok := b.humidity("off", T2)
	if ok {
		var s span
		if s, ok = (&running{r: r, ref: b.ref}).saturation("suction-pressure", p); ok {
			return b.readings(T2, W2, p, s)
		}
	}
	b.refused = true
	return false
}

func (b *breath) readings(T2, W2, p float64, s span) bool {
	r, c := b.r, &b.coil
	b.step("Humidity ratio, air off", "as air on", r.Text(unit.HumidityRatio, W2, "g/kg", "gr/lb"), psychrometrics)
	agree := true
	if W2 > c.W {
		// 1 g/kg is what two probes of 3 % disagree by at 25 °C.
		agree = W2 < c.W+1e-3
		r.Warn("The air off seems to hold more water than the air on, which no cooling coil does; the coil is taken as dry. Compare both probes in one place.")
		W2 = c.W
	}
	m := c.Mass * b.share
	q := airside.Taken(m, c.T, c.W, T2, W2)
	b.set("sensible", q.Sensible, text.Say("m (1006 + 1860 W off) (T on − T off), m = V/v = {} kg/s", unit.Significant(m, 3)), psychrometrics)
	b.set("capacity", q.Total, "m ((h on − h off) − (W on − W off) h water), h = 1006 t + W (2 501 000 + 1860 t)", psychrometrics)
	b.set("latent", q.Latent, "total − sensible", psychrometrics)
	b.each(q.Total)
	b.evaporating, b.now = s.middle(), s.middle()
	b.set("evaporating", b.evaporating, text.Say("(T bubble + T dew) ÷ 2 at {}, bubble {}, dew {}", r.Given("suction-pressure"), b.celsius(s.bubble), b.celsius(s.dew)), "practice-79")
	if r.Has("suction-temperature") {
		T := r.Float("suction-temperature")
		b.superheat = T - s.dew
		b.set("superheat", b.superheat, text.Say("T suction − T dew = {} − {}", b.celsius(T), b.celsius(s.dew)), "practice-79")
	}
	var err error
	if b.compressor, err = airside.NewCompressor(b.ref, b.evaporating); err != nil {
		r.Warn(text.Say("Evaporating at {} is outside comfort cooling, or the refrigerant is near its critical point: no curves are shown.", b.celsius(b.evaporating)))
		return agree && b.evaporating < T2
	}
	if err := c.Measured(T2, W2, b.evaporating); err != nil || !agree {
		b.compressor = nil
		return false
	}
	b.set("surface", c.Surface, "where the line from air on through air off meets saturation, or the evaporating temperature", psychrometrics)
	// Up to here the model stays at published curves or below; see the test of package airside.
	if gap := c.Surface - b.evaporating; gap > 7 {
		r.Warn(text.Say("The coil surface is {} above the refrigerant, more than usual. Part of the coil is starved or oily, or pressure is lost on the way to the gauge; the curves then fall too gently.",
			r.Text(unit.TemperatureDifference, gap, degrees...)))
	}
	b.set("bypass", (T2-c.Surface)/(c.T-c.Surface), "(T off − T surface)/(T on − T surface)", "practice-89")
	return true
}

// rated fits the coil to the nameplate. 0.2 is the bypass factor of a usual coil.
func (b *breath) rated() bool {
	r, c := b.r, &b.coil
	const bypass = 0.2
	capacity := r.Float("rated-capacity")
	b.evaporating = r.Float("rated-evaporating")
	b.each(capacity)
	var err error
	if b.compressor, err = airside.NewCompressor(b.ref, b.evaporating); err != nil {
		refuseState(r, b.ref, "rated-evaporating", refrigerant.ErrRange)
		b.refused = true
		return false
	}
	if c.Rated(capacity, bypass, b.evaporating) != nil {
		b.compressor = nil
		return false
	}
	b.step("Coil surface at rated airflow, mean", "h surface = h on − Q/(m (1 − b)), bypass factor b = 0.2 assumed", b.celsius(c.Surface), "practice-89")
	return true
}

// superheatHeat is the part of the coil's heat that lies in the superheat.
func (b *breath) superheatHeat() (float64, bool) {
	if !(b.superheat > 0) {
		return 0, false
	}
	T := b.r.Float("suction-temperature")
	gas, err1 := b.ref.AtTP(T, b.r.Float("suction-pressure"))
	dry, err2 := b.ref.SaturatedVapor(T - b.superheat)
	part := (gas.Enthalpy - dry.Enthalpy) / (gas.Enthalpy - b.compressor.Liquid)
	return part, either(err1, err2) == nil && part > 0 && part < 1
}

// curves records what less air does.
func (b *breath) curves() {
	r, c, k := b.r, &b.coil, b.compressor
	if k == nil {
		return
	}
	b.step("Coil as found", "Q = m (1 − b)(h on − h surface) = (T surface − T evaporating)/R, b = e^−NTU, NTU ~ airflow^(0.8 − 1)",
		text.Say("NTU {}, R {} K/kW", unit.Significant(c.NTU, 3), unit.Significant(1000*c.Resistance, 3)), coilModel)
	full, fullHeat, _ := c.Settle(1, k)
	if !b.running {
		b.now, _, _ = c.Settle(b.share, k)
		b.set("evaporating", b.now, "coil and compressor at this airflow, same compressor speed, solved", coilModel)
	}
	b.set("evaporating-rated", full, "the same at rated airflow; compressor: Q ~ ρ″ (h″ − h liquid)", coilModel)
	for _, id := range [...]string{"frost-speed", "frost-capacity"} {
		heat, word := c.Heat, "capacity held at "+r.Text(unit.Power, c.Heat, powerUnits...)
		if id == "frost-speed" {
			heat, word = c.Heat*k.Share(freezing), "same compressor speed"
		}
		if f := c.FlowFor(heat, freezing); f < 3 {
			b.set(id, f, text.Say("m (1 − b) = Q/(h on − h surface), {} evaporating, {}", b.celsius(freezing), word), coilModel)
		} else {
			r.Warn(text.Say("It evaporates below {} at any airflow, {}.", b.celsius(freezing), word))
		}
	}
	b.step("The mean coil surface is at freezing", "m (1 − b) = Q/(h on − h surface)", text.Say("at {} with the same compressor speed, at {} with capacity held",
		flowText(c.FlowAt(c.HeatAt(freezing, k), freezing)), flowText(c.FlowAt(c.Heat, freezing))), coilModel)
	if part, ok := b.superheatHeat(); ok {
		b.set("superheat-heat", part, "(h suction − h dew)/(h suction − h liquid)", "common-practice")
		if f := c.FlowFor(c.Heat*(1-part), b.evaporating); f < b.share {
			b.set("superheat-air", 1-f/b.share, "airflow at which the coil passes that much less at the same evaporating temperature", coilModel)
		}
	}
	at := r.Float("if-flow")
	if T, q, ok := c.Settle(at, k); ok {
		r.Set("if-speed", T)
		r.Set("if-speed-pressure", k.Pressure(T))
		r.Set("if-speed-capacity", q/fullHeat)
	}
	if T, ok := b.hold(at); ok {
		r.Set("if-held", T)
		r.Set("if-held-pressure", k.Pressure(T))
	}
	for tenths := 10; tenths >= 2; tenths-- {
		b.line(float64(tenths) / 10)
	}
	b.draw()
}

// hold returns the evaporating temperature at which the capacity is held; ok
// is false outside the range of the compressor.
func (b *breath) hold(flow float64) (T float64, ok bool) {
	T = b.coil.Hold(flow, b.coil.Heat)
	low, high := b.compressor.Range()
	return T, T >= low && T <= high
}

// line is one row of the table against the airflow.
func (b *breath) line(flow float64) {
	show := func(T float64, ok bool) string {
		if !ok {
			return "below the range"
		}
		return b.celsius(T) + ", " + b.r.Text(unit.Pressure, b.compressor.Pressure(T), pressureUnits...)
	}
	T, _, ok := b.coil.Settle(flow, b.compressor)
	same := show(T, ok)
	b.step(text.Say("Evaporating at {} of the rated airflow", flowText(flow)), "same compressor speed; capacity held", same+"; "+show(b.hold(flow)), coilModel)
}

// judge concludes; ok says that the readings agree.
func (b *breath) judge(ok bool) {
	r := b.r
	cold, low := b.now < freezing, b.share < 0.9
	T, verb := r.OutputText("evaporating"), "evaporates"
	if !b.running {
		verb = "would evaporate"
	}
	if !ok {
		r.Warn("The airflow, the air and the evaporating temperature do not fit one coil, so no curves are shown.")
	}
	id, say := "enough", "The coil gets {} of its rated air."
	switch {
	case cold && low:
		id, say = "freezing", "The coil gets {} of its rated air and {} at {}. Stop, thaw any ice, and restore the air first."
	case cold:
		id, say = "freezing", "The coil gets {} of its rated air, yet {} at {}. Stop and look further: cold return air, charge, valve, restriction."
	case b.superheat < cycle.FloodbackSuction:
		id, say = "floodback", "With {} of the rated air the superheat is {}, under {}. Stop the unit; restore the air first, then check valve and sensors."
		verb, T = r.OutputText("superheat"), r.Text(unit.TemperatureDifference, cycle.FloodbackSuction, degrees...)
	case b.share < 0.7:
		id, say = "clean-first", "The coil gets {} of its rated air. If most running units are like this, keep a new compressor from full speed until they are clean."
	case !ok || b.share > 1.3:
		id, say = "contradiction", "Check the area, the probes, the gauge, the fan setting and the rated values, and read again."
	case b.share < 0.8:
		id = "clean-before"
	case low:
		id = "clean-next"
	}
	r.Conclude(id, text.Say(say, r.OutputText("share"), verb, T))
	if low {
		r.Advise("Clean filters, both faces of the coil and the fan wheel. Open dampers and grilles, check fan speed and static pressure. Then measure again.")
	}
	if b.superheat > cycle.StarvingSuction {
		r.Advise("High superheat does not come from low airflow: look for low charge or a restriction too.")
	} else if low {
		r.Advise("Do not add refrigerant for this. Low suction pressure with low superheat means that heat does not reach the coil, not that gas is missing.")
	}
	if a, c := r.OutputText("frost-speed"), r.OutputText("frost-capacity"); a != "" && c != "" {
		r.Advise(text.Say("Frost begins at {} evaporating ({}). That is reached at {} of the rated air if the compressor keeps its speed, and at {} if an inverter holds the capacity.", b.celsius(freezing), r.Text(unit.Pressure, b.compressor.Pressure(freezing), pressureUnits...), a, c))
	}
	if s := r.OutputText("superheat-air"); s != "" {
		r.Advise(text.Say("Losing {} of this air uses up the superheat unless the valve closes. Where the valve hunts or is near its stop, liquid returns.", s))
	}
}

// draw shows the evaporating temperature against the airflow.
func (b *breath) draw() {
	u := unit.Temperature.Unit("C")
	if r := []rune(b.celsius(freezing)); r[len(r)-1] == 'F' {
		u = unit.Temperature.Unit("F")
	}
	speed, held := chart.Line{Class: "co-chart__line", Name: "same speed"}, chart.Line{Class: "co-chart__fit", Name: "capacity held"}
	add := func(l *chart.Line, flow, T float64, ok bool) {
		// Nothing holds its capacity below −30 °C; the drawing ends there.
		if ok && T > 243.15 {
			l.X, l.Y = append(l.X, 100*flow), append(l.Y, u.FromSI(T, unit.Env{}))
		}
	}
	for flow := 0.2; flow < 1.06; flow += 0.025 {
		T, _, ok := b.coil.Settle(flow, b.compressor)
		add(&speed, flow, T, ok)
		T, ok = b.hold(flow)
		add(&held, flow, T, ok)
	}
	dot := chart.Line{Class: "co-chart__data", Name: "now", Dots: true}
	if b.share <= 1.5 {
		T, _, ok := b.coil.Settle(b.share, b.compressor)
		add(&dot, b.share, T, ok)
	}
	d := chart.Chart{XTitle: "airflow, % of rated", YTitle: u.Label, Lines: []chart.Line{speed, held, dot},
		Levels: []chart.Level{{Class: "co-chart__limit", Label: "frost, " + b.celsius(freezing), Y: u.FromSI(freezing, unit.Env{})}},
		Label: text.Say("Evaporating temperature against airflow. Frost begins at {} of the rated air at the same compressor speed, at {} with capacity held.",
			b.or("frost-speed"), b.or("frost-capacity"))}
	if svg := d.SVG(); svg != "" {
		b.r.Chart("Evaporating temperature against airflow: with the same compressor speed, and with the capacity held", svg)
	}
}

func (b *breath) or(id string) string {
	if s := b.r.OutputText(id); s != "" {
		return s
	}
	return "no share"
}
