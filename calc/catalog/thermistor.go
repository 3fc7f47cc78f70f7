package catalog

import (
	"math"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/electrical"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// Thermistor turns a sensor's resistance into a temperature and back, and
// judges it.
var Thermistor = &calc.Worksheet{
	ID:      "thermistor",
	Title:   "Thermistor check",
	Purpose: "What a temperature sensor's ohms mean, and what they should be. By how many kelvin it is wrong against a probe or in an ice bath.",
	Inputs: []calc.Input{
		{ID: "family", Label: "Sensor family", Kind: calc.Choice, Help: "From the unit's sensor table. Families must not be mixed.",
			Options: []calc.Option{
				{ID: "20k", Label: families[0].label},
				{ID: "10k", Label: families[1].label},
				{ID: "15k-0", Label: families[2].label, Aliases: []string{"15k"}},
				{ID: "table", Label: "Rows of the unit's own table (best)"},
				{ID: "custom", Label: "Other, R and B known"}}},
		{ID: "r-reference", Label: "R at the reference temperature", When: customFamily, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"kohm", "ohm"},
			Low: 100, High: 2e6, BoundReason: "sensors of this trade lie between"},
		{ID: "t-reference", Label: "Reference temperature", When: customFamily, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Default: "25 C",
			Low: 253.15, High: 373.15, BoundReason: "tables name 0, 25 or 100 °C"},
		{ID: "b", Label: "B", When: customFamily, Kind: calc.Quantity, Quantity: unit.TemperatureDifference, Units: []string{"K"},
			Low: 2000, High: 6000, BoundReason: "thermistors of this kind lie between"},
		{ID: "rows", Label: "Rows of the table, around the temperature", When: []calc.When{{Input: "family", Is: []string{"table"}}}, Kind: calc.Series, MinRows: 2, MaxRows: 60,
			Help: "Temperature and resistance. Rows 5 to 20 K apart do; answers outside them are refused.",
			Columns: []calc.Column{
				{ID: "t", Label: "Temperature", Names: []string{"temperature", "temp", "t"}, Quantity: unit.Temperature, Units: []string{"C", "F"}, Low: 213.15, High: 423.15},
				{ID: "r", Label: "Resistance", Names: []string{"resistance", "r", "ohms"}, Quantity: unit.Resistance, Units: []string{"kohm", "ohm"}, Low: 10, High: 1e7}}},
		{ID: "known", Label: "What you have", Kind: calc.Choice,
			Options: []calc.Option{
				{ID: "ohms", Label: "Ohms only"},
				{ID: "temperature", Label: "A temperature only: what should it read?"},
				{ID: "probe", Label: "Ohms, and a probe beside it on the pipe"},
				{ID: "ice", Label: "Ohms in a stirred ice bath"}}},
		{ID: "resistance", Label: "Resistance measured", When: []calc.When{{Input: "known", Is: []string{"ohms", "probe", "ice"}}}, Kind: calc.Quantity, Quantity: unit.Resistance, Units: []string{"kohm", "ohm", "Mohm"},
			Low: 10, High: 1e7, BoundReason: "0 Ω or open (OL) is a broken sensor or cable", Help: "Plug off the board, isolated. Hold it by the cable: a warm hand changes it."},
		{ID: "temperature", Label: "True temperature", When: []calc.When{{Input: "known", Is: []string{"temperature", "probe"}}}, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"},
			Low: 233.15, High: 403.15, BoundReason: "sensors of this trade work between", Help: "Probe clamped beside the sensor, insulated, both steady."},
		{ID: "controller", Label: "What the controller shows", When: []calc.When{{Input: "known", Is: []string{"ohms", "probe", "ice"}}}, Kind: calc.Quantity, Quantity: unit.Temperature, Units: []string{"C", "F"}, Optional: true,
			Low: 213.15, High: 423.15, BoundReason: "displays lie between", Help: "Read just before you took the plug off. It tells a bad sensor from a bad board."},
	},
	Outputs: []calc.Output{
		{ID: "temperature-of", Label: "Temperature that the ohms mean", Quantity: unit.Temperature, Units: []string{"C", "F"}, Main: true},
		{ID: "expected", Label: "Ohms to expect", Quantity: unit.Resistance, Units: []string{"kohm"}, Significant: 4, Main: true},
		{ID: "error", Label: "Sensor error", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}, Main: true},
		{ID: "deviation", Label: "Ohms against the expected", Quantity: unit.Fraction, Units: []string{"%"}},
		{ID: "allowance", Label: "What the family's table may differ from this, up or down", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
		{ID: "board-error", Label: "Controller against the ohms", Quantity: unit.TemperatureDifference, Units: []string{"K", "F"}},
	},
	Verdicts: []calc.Verdict{
		{ID: "value", Tone: calc.Info, Title: "Value only, nothing judged"},
		{ID: "good", Tone: calc.Good, Title: "Sensor agrees", Main: []string{"error", "expected"}},
		{ID: "seat", Tone: calc.Doubt, Title: "In doubt: look at clip, paste and insulation", Main: []string{"error", "expected"}},
		{ID: "ice-test", Tone: calc.Doubt, Title: "Off: test it in an ice bath", Main: []string{"error", "expected"}},
		{ID: "compare", Tone: calc.Doubt, Title: "Too near to call: use the unit's own table", Main: []string{"error", "allowance"}},
		{ID: "replace", Tone: calc.Stop, Title: "Replace the sensor, same family", Main: []string{"error", "expected"}},
		{ID: "board", Tone: calc.Stop, Title: "The ohms and the controller disagree", Main: []string{"board-error", "temperature-of"}},
	},
	Compute: thermistor,
	Limits: []string{
		"The unit's own table governs. Two makers print tables for the same R and B that differ by 2 % at 0 °C and 6 % at −20 °C.",
		"Do not use it for platinum or PTC sensors, or for sensors with electronics inside.",
		"Do not use it with the sensor plugged in: the board's own resistor stands in parallel.",
		"Hot discharge sensors at 90 °C and above need rows of the unit's table; R and B alone are too coarse there.",
	},
	Cautions: []calc.Caution{{Signal: "DANGER", Hazard: "Sensor plugs sit on boards beside live parts and the charged link.",
		Consequence: "Shock kills.",
		Avoid:       "Isolate, wait the marked time and measure 50 V DC or less before you pull a plug."}},
	Sources: []string{"makers-manual", "common-practice", "manual-26", "manual-27", "ntc-15k", "sh-manual"},
	Example: []calc.Field{{Input: "family", Text: "20k"}, {Input: "known", Text: "ice"}, {Input: "resistance", Text: "58.2 kohm"}, {Input: "controller", Text: "2.4 C"}},
}

var customFamily = []calc.When{{Input: "family", Is: []string{"custom"}}}

// families are the sensor laws that service manuals print.
var families = [...]struct {
	id, label, key string
	law            electrical.Thermistor
}{
	{"20k", "20 kΩ at 25 °C, B 3950", "manual-26", electrical.Thermistor{R0: 20e3, T0: 298.15, B: 3950}},
	{"10k", "10 kΩ at 25 °C, B 3435", "manual-27", electrical.Thermistor{R0: 10e3, T0: 298.15, B: 3435}},
	{"15k-0", "15 kΩ at 0 °C, B 3460", "ntc-15k", electrical.Thermistor{R0: 15e3, T0: 273.15, B: 3460}},
}

// What condemns a sensor at a known temperature: common practice. On a pipe
// 1 K is good, and above 2 K the ice bath decides.
const sensorOhms, sensorKelvin, sensorGood = 0.05, 2.0, 1.0

// Where the law is trusted, K.
const sensorColdest, sensorHottest = 233.15, 403.15

// sensor is the law in force with its source and, for a table, its rows.
type sensor struct {
	law  electrical.Thermistor
	key  string
	rows *calc.Rows
}

// near returns the law for a temperature or, with byOhms, for a resistance; in
// a table that is the law through the two rows around it.
func (s *sensor) near(v float64, byOhms bool) (electrical.Thermistor, bool) {
	if s.rows == nil {
		return s.law, true
	}
	t, ohm := s.rows.Columns[0], s.rows.Columns[1]
	at := t
	if byOhms {
		at = ohm
	}
	for i := 1; i < len(t); i++ {
		if (v-at[i-1])*(v-at[i]) <= 0 {
			return electrical.Between(t[i-1], ohm[i-1], t[i], ohm[i]), true
		}
	}
	return s.law, false
}

func thermistor(r *calc.Run) {
	s, ok := sensorOf(r)
	if !ok {
		return
	}
	known := r.Choice("known")
	measured := 0.0
	if known != "temperature" {
		if measured, ok = sensorReads(r, s); !ok {
			return
		}
	}
	if known == "ohms" {
		if sensorBoard(r, measured) {
			concludeBoard(r)
		} else {
			sensorValue(r)
		}
		return
	}
	truth := 273.15
	if known != "ice" {
		truth = r.Float("temperature")
	}
	law, ok := s.near(truth, false)
	if !ok {
		r.Refuse("rows", "outside-range", text.Say("Rows of the table: {} is outside the rows that were entered; add a row on each side of it.", r.Text(unit.Temperature, truth, "C", "F")))
		return
	}
	expected := law.Resistance(truth)
	r.Set("expected", expected)
	r.Step("Ohms to expect", text.Say("R0 exp(B (1/T − 1/T0)), B {} K, T0 {}, at {}", unit.Fixedf(law.B, 0), r.Text(unit.Temperature, law.T0, "C", "F"), r.Text(unit.Temperature, truth, "C", "F")), r.OutputText("expected"), calc.Cite{Key: s.key})
	if known == "temperature" {
		sensorAllowance(r, s, law, truth)
		r.Conclude("value", text.Say("At {} the sensor should read {}.", r.Given("temperature"), r.OutputText("expected")))
		r.Advise(text.Say("Condemn at a known temperature only: more than 5 % in ohms or {}, by common practice.", kelvins(r, sensorKelvin)))
		return
	}
	off := measured - truth
	r.Set("error", off)
	r.Set("deviation", r.Float("resistance")/expected-1)
	r.Step("Sensor error", "T of the ohms − true T", r.OutputText("error"), calc.Cite{Key: "common-practice"})
	r.Step("Ohms against the expected", "R ÷ expected − 1", r.OutputText("deviation"), calc.Cite{Key: "common-practice"})
	sensorJudge(r, s, law, truth, off, r.Float("resistance")/expected-1)
}

// sensorOf finds the law of the family chosen.
func sensorOf(r *calc.Run) (*sensor, bool) {
	family := r.Choice("family")
	for i := range families {
		if families[i].id == family {
			return &sensor{law: families[i].law, key: families[i].key}, true
		}
	}
	if family == "custom" {
		return &sensor{law: electrical.Thermistor{R0: r.Float("r-reference"), T0: r.Float("t-reference"), B: r.Float("b")}, key: "makers-manual"}, true
	}
	rows := r.Series("rows")
	t, ohm := rows.Columns[0], rows.Columns[1]
	for i := 1; i < len(t); i++ {
		if (t[i]-t[i-1])*(t[1]-t[0]) <= 0 || (ohm[i]-ohm[i-1])*(t[i]-t[i-1]) >= 0 {
			r.RefuseRow("rows", "not-in-order", text.Say("Rows of the table: row {} breaks the order; temperatures must run one way and the ohms the other.", unit.Fixedf(float64(i+1), 0)), i+1, 0)
			return nil, false
		}
	}
	return &sensor{key: "makers-manual", rows: rows}, true
}

// sensorReads sets the temperature that the ohms mean.
func sensorReads(r *calc.Run, s *sensor) (float64, bool) {
	ohm := r.Float("resistance")
	law, ok := s.near(ohm, true)
	if !ok {
		r.Refuse("resistance", "outside-range", text.Say("Resistance measured: {} is outside the rows of the table that were entered; add rows, or look for a broken sensor or another family.", r.Given("resistance")))
		return 0, false
	}
	t := law.Temperature(ohm)
	if !(t >= sensorColdest && t <= sensorHottest) {
		r.Refuse("resistance", "outside-range", text.Say("Resistance measured: {} would be outside {} to {} for this family; the sensor or cable is broken, or it is another family.", r.Given("resistance"),
			r.Text(unit.Temperature, sensorColdest, "C", "F"), r.Text(unit.Temperature, sensorHottest, "C", "F")))
		return 0, false
	}
	r.Set("temperature-of", t)
	r.Step("Temperature that the ohms mean", text.Say("1 ÷ (1/T0 + ln(R/R0)/B), R {}, R0 {}, T0 {}, B {} K", r.Given("resistance"), sensorOhm(r, law.R0), r.Text(unit.Temperature, law.T0, "C", "F"), unit.Fixedf(law.B, 0)),
		r.OutputText("temperature-of"), calc.Cite{Key: s.key})
	return t, true
}

func kelvins(r *calc.Run, v float64) string { return r.Text(unit.TemperatureDifference, v, "K", "F") }

func sensorOhm(r *calc.Run, v float64) string { return r.Text(unit.Resistance, v, "kohm") }

// sensorValue ends a run that knows ohms only.
func sensorValue(r *calc.Run) {
	r.Conclude("value", text.Say("The ohms mean {}. That judges nothing until you know the true temperature.", r.OutputText("temperature-of")))
	r.Advise("Put a probe beside it, or put it in a stirred ice bath, and enter that.")
}

// sensorBoard compares the controller's display with the ohms and reports
// whether they disagree.
func sensorBoard(r *calc.Run, t float64) bool {
	if !r.Has("controller") {
		return false
	}
	d := r.Float("controller") - t
	r.Set("board-error", d)
	r.Step("Controller against the ohms", "shown − T of the ohms", r.OutputText("board-error"), calc.Cite{Key: "common-practice"})
	return math.Abs(d) > sensorKelvin
}

func concludeBoard(r *calc.Run) {
	r.Conclude("board", text.Say("The controller is {} off what the ohms mean. The fault is in plug, cable or board, or it expects another family.", r.OutputText("board-error")))
	r.Advise("Check the plug for water, and the sensor type in the unit's list. Compare with a sensor of the same family on that input.")
}

// sensorAllowance sets how many kelvin the family's own table may differ and
// returns the same as a share of the ohms.
func sensorAllowance(r *calc.Run, s *sensor, law electrical.Thermistor, t float64) (share, kelvin float64) {
	if s.rows == nil {
		share = electrical.LawMisfit(t, s.law.T0)
	}
	kelvin = share / law.Slope(t)
	r.Set("allowance", kelvin)
	r.Step("What a table may differ", "0.5 % + 2 % × ((t − t0) ÷ 25 K)², at most 10 % in ohms; none for the unit's own rows", r.OutputText("allowance"), calc.Cite{Key: "manual-26", Locator: "two printed tables compared"})
	return share, kelvin
}

// sensorJudge concludes from the error off in K and the deviation in ohms.
func sensorJudge(r *calc.Run, s *sensor, law electrical.Thermistor, truth, off, deviation float64) {
	share, k := sensorAllowance(r, s, law, truth)
	board := sensorBoard(r, truth+off)
	off, size := math.Abs(off), math.Abs(deviation)
	ice := r.Choice("known") == "ice"
	sensorChart(r, s, truth)
	if ice && size > 0.2 {
		sensorOther(r, truth)
	}
	switch {
	case ice && (size-share > sensorOhms || off-k > sensorKelvin):
		r.Conclude("replace", text.Say("In the ice bath it is off by {} and {}; the limits are {} and 5 %.", r.OutputText("error"), r.OutputText("deviation"), kelvins(r, sensorKelvin)))
		r.Advise("Make sure that the bath was stirred, more ice than water, and the tip deep in it. Then replace the sensor with the same family.")
	case !ice && off-k > sensorKelvin:
		r.Conclude("ice-test", text.Say("It differs from the probe by {}, more than {}.", r.OutputText("error"), kelvins(r, sensorKelvin)))
		r.Advise("Check that it sits in its clip on the right pipe. Then test it in a stirred ice bath.")
	case ice && size+share > sensorOhms || off+k > sensorKelvin:
		r.Conclude("compare", text.Say("It is off by {}, and the family's table may differ by {}.", r.OutputText("error"), r.OutputText("allowance")))
		r.Advise("Enter rows of the unit's own table, or make the ice test.")
	case board:
		concludeBoard(r)
	case !ice && off+k > sensorGood:
		r.Conclude("seat", text.Say("It differs from the probe by {}, which may be between {} and {}.", r.OutputText("error"), kelvins(r, sensorGood), kelvins(r, sensorKelvin)))
		r.Advise("Clean, paste, clip and insulate both, wait until they are steady, and read again.")
	default:
		r.Conclude("good", text.Say("It is off by {}.", r.OutputText("error")))
		r.Advise("Put it back in its own clip, with paste and insulation.")
	}
}

// sensorOther says so when the reading fits another family.
func sensorOther(r *calc.Run, truth float64) {
	for i := range families {
		if math.Abs(r.Float("resistance")/families[i].law.Resistance(truth)-1) < sensorOhms {
			r.Warn("The ohms fit another family: " + families[i].label + ". Check the part number.")
		}
	}
}

// sensorChart draws the family's curve with the reading on it.
func sensorChart(r *calc.Run, s *sensor, truth float64) {
	var x, y []float64
	for t := truth - 30; t <= truth+31; t += 4 {
		if law, ok := s.near(t, false); ok {
			x, y = append(x, t-273.15), append(y, law.Resistance(t)/1e3)
		}
	}
	drawing := chart.Chart{Label: "Resistance that the family gives at each temperature, and the reading", XTitle: "°C", YTitle: "kΩ", LogY: true,
		Lines: []chart.Line{{Class: "co-chart__fit", Name: "the family", X: x, Y: y}, {Class: "co-chart__data", Name: "the reading", X: []float64{truth - 273.15}, Y: []float64{r.Float("resistance") / 1e3}, Dots: true}}}
	r.Chart("The reading on the family's curve", drawing.SVG())
}
