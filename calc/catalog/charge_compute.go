package catalog

import (
	"math"
	"strconv"

	"changeout/calc"
	"changeout/calc/formula/charge"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

func chargeAdjustment(r *calc.Run) {
	ref, _ := refrigerant.Lookup(r.Choice("refrigerant"))
	if r.Choice("method") == "weight" {
		chargeByWeight(r, ref)
		return
	}
	switch r.Choice("system") {
	case "inverter-multi-split":
		r.Conclude("weigh-in", "The controller of an inverter multi-split moves the compressor speed, the fans and every expansion valve. "+
			"Superheat and subcooling are what it sets, not signs of charge, so readings cannot trim this charge.")
		r.Step("Why readings do not count here", "superheat and subcooling are held by the controller", "no target exists", calc.Cite{Key: "practice-77"})
		r.Advise("Recover and weigh what is in, or start from a vacuum. Then choose the method “By weight”.")
		return
	case "single-split-fixed":
		chargeBySuperheat(r, ref)
	case "single-split-valve":
		chargeBySubcooling(r, ref)
	}
}

// chargeByWeight sums what belongs in the system and takes off what is in.
func chargeByWeight(r *calc.Run, ref *refrigerant.Refrigerant) {
	lines, ok := lineCharge(r, ref)
	if !ok {
		return
	}
	modules, ok1 := pieces(r, "modules", "Outdoor modules, row ")
	units, ok2 := pieces(r, "indoor-units", "Indoor units, row ")
	if !ok1 || !ok2 {
		return
	}
	nameplates, indoor := r.Float("nameplate")+modules, r.Float("indoor-extra")+units
	total := nameplates + lines + indoor + r.Float("branch-extra") - r.Float("allowance")
	if total <= 0 {
		r.Refuse("allowance", calc.TooHigh, text.Say("Line allowance inside the nameplate charge: {} is more than the whole charge; enter the mass that the factory put in for the line.", r.Given("allowance")))
		return
	}
	adjust := total - r.Float("already")
	mass := func(kg float64) string { return r.Entered(unit.Mass, kg, "kg", "lb") }
	if r.Has("lines") {
		r.Set("line-charge", lines)
	}
	r.Set("total-charge", total)
	r.Set("adjustment", adjust)
	r.Step("Total charge", text.Say("nameplates + liquid lines + indoor units + branch and outdoor extras − allowance = {} + {} + {} + {} − {}", mass(nameplates), mass(lines), mass(indoor), mass(r.Float("branch-extra")), mass(r.Float("allowance"))), r.OutputText("total-charge"), calc.Cite{Key: "makers-manual", Locator: "charge table"})
	label, formula, a, b := "Still to add", "total − already in = {} − {}", mass(total), mass(r.Float("already"))
	if adjust < 0 {
		label, formula, a, b = "To take out", "already in − total = {} − {}", b, a
	}
	r.Step(label, text.Say(formula, a, b), r.OutputText("adjustment"), calc.Cite{Key: "common-practice"})
	tooMuch := roomCheck(r, ref, math.Max(total, r.Float("already")))
	noteForgotten(r)
	noteRecovered(r, total)
	concludeWeight(r, ref, total, adjust, tooMuch)
}

// pieces sums rows of equal pieces.
func pieces(r *calc.Run, id, row string) (sum float64, ok bool) {
	rows := r.Series(id)
	if rows == nil {
		return 0, true
	}
	for i, n := range rows.Columns[0] {
		number, one := unit.Short(n, 6), rows.Columns[1][i]
		row := row + strconv.Itoa(i+1)
		if n != math.Floor(n) {
			r.Refuse(id, "not-whole", text.Say("{}: {} is no whole number; enter how many there are.", row, number))
			return 0, false
		}
		r.Step(row, text.Say("{} × {}", number, r.Entered(unit.Mass, one, "kg", "lb")), r.Entered(unit.Mass, n*one, "kg", "lb"), calc.Cite{Key: "makers-manual", Locator: "charge table"})
		sum += n * one
	}
	return sum, true
}

// noteRecovered says what the recovered mass shows about the charge before.
// 10 % is common practice: recovery leaves gas in oil and pipes.
func noteRecovered(r *calc.Run, total float64) {
	if !r.Has("recovered") {
		return
	}
	share := r.Float("recovered")/total - 1
	r.Set("recovered-share", share)
	r.Step("Recovered, against the calculation", text.Say("{} ÷ {} − 1, accepted within ±10 %", r.Given("recovered"), r.OutputText("total-charge")), r.OutputText("recovered-share"), calc.Cite{Key: "common-practice"})
	switch {
	case share < -0.1:
		r.Warn("Less came out than belongs in. It has leaked, was never filled up, or gas is left in oil and closed sections. Find out which before you charge.")
	case share > 0.1:
		r.Warn("More came out than belongs in. It was overcharged, which floods compressors, or a line or unit is missing from the sum.")
	}
}

func concludeWeight(r *calc.Run, ref *refrigerant.Refrigerant, total, adjust float64, tooMuch string) {
	amount := r.OutputText("adjustment")
	settled := math.Max(0.010, 0.005*total)
	r.Step("Counts as agreeing", "0.5 % of the total, at least two steps of a scale of 5 g (common practice, no source)", r.Text(unit.Mass, settled, "g", "oz"), calc.Cite{Key: "common-practice"})
	switch {
	case tooMuch != "":
		r.Conclude("room-limit", tooMuch+" This is a design question: stop and ask the designer and the local authority.")
		return
	case adjust > settled && ref.Class != "A1" && !r.Has("room-volume") && !r.Has("room-area"):
		r.Conclude("room-first", text.Say("The calculation says {} more, but {} is class {} and no room was entered. Check the smallest room before you add any.", amount, ref.Name, ref.Class))
		return
	case adjust > settled:
		r.Conclude("add", text.Say("Add {}.", amount))
		r.Advise("Charge liquid into the liquid side with the compressor off, by weight on the scale. Put the rest in throttled, in the maker's charge mode.")
	case adjust < -settled:
		r.Conclude("take-out", text.Say("Take out {}.", amount))
		r.Advise(text.Say("Recover it by weight into a cylinder that is in test, clean and marked for {}.", ref.Name))
	default:
		r.Conclude("as-calculated", text.Say("What is in agrees with the calculation within {}.", r.Text(unit.Mass, settled, "g", "oz")))
	}
	if already := r.Float("already"); already > 0 && math.Abs(adjust) > 0.1*total {
		r.Warn("What was in differs from the calculation by more than 10 %. Find out why before you charge: a leak, a wrong sum, or liquid trapped in a closed section.")
	}
	if ref.ChargeAsLiquid && adjust > 0 {
		r.Advise(ref.Name + " is a blend: take it from the cylinder as liquid.")
	}
	r.Advise("Write the new total and the date on the unit.")
}

// noteForgotten names what was left empty, so that nothing empty passes for a
// zero.
func noteForgotten(r *calc.Run) {
	for _, in := range []struct{ id, sentence string }{
		{"lines", "No liquid lines were entered. The sum holds none."},
		{"indoor-extra", "No extra for indoor units was entered. Look it up in the unit's table: several makers ask for it."},
		{"branch-extra", "No extra for branch boxes or outdoor units was entered. Look it up in the unit's table."},
	} {
		if !r.Has(in.id) && !(in.id == "indoor-extra" && r.Has("indoor-units")) {
			r.Warn(in.sentence)
		}
	}
}

// lineCharge sums the liquid lines, with the maker's factor where it is given.
func lineCharge(r *calc.Run, ref *refrigerant.Refrigerant) (float64, bool) {
	rows := r.Series("lines")
	if rows == nil {
		return 0, true
	}
	sum := 0.0
	for i := range rows.Len() {
		size, length := rows.Columns[0][i], rows.Columns[1][i]
		factor := math.NaN()
		if rows.Columns[2] != nil {
			factor = rows.Columns[2][i]
		}
		row := text.Say("Line {}, {}", strconv.Itoa(i+1), r.Text(unit.TubeDiameter, size, "mm", "in"))
		cite := calc.Cite{Key: "makers-manual", Locator: "charge table"}
		if math.IsNaN(factor) {
			var ok bool
			if factor, ok = estimateFactor(r, ref, row, i+1, size); !ok {
				return 0, false
			}
			cite = calc.Cite{Key: "astm-b280", Locator: "estimate"}
		}
		compareWithPublished(r, ref, row, size, factor)
		m := length * factor
		r.Step(row, text.Say("length × factor = {} × {}", r.Text(unit.Length, length, "m", "ft"), r.Text(unit.MassPerLength, factor, "kg/m", "oz/ft")), r.Entered(unit.Mass, m, "kg", "lb"), cite)
		sum += m
	}
	return sum, true
}

// estimateFactor computes a line factor from the tube's bore and the liquid's
// density where the maker's factor is not known.
func estimateFactor(r *calc.Run, ref *refrigerant.Refrigerant, row string, number int, size float64) (float64, bool) {
	tube, ok := charge.StandardTube(size)
	if !ok {
		r.RefuseRow("lines", "unknown-tube", row+": this is not a standard tube size, so its bore is not known; enter the maker's factor.", number, 0)
		return 0, false
	}
	bubble, err := ref.BubbleAtT(r.Float("liquid-temperature"))
	if err != nil {
		refuseState(r, ref, "liquid-temperature", err)
		return 0, false
	}
	factor := charge.LineFactor(tube.Bore(), bubble.RhoLiquid)
	r.Step(row+", estimated factor", text.Say("ρ π d²/4, bore {}, liquid {}", r.Text(unit.TubeDiameter, tube.Bore(), "mm", "in"), r.Text(unit.Density, bubble.RhoLiquid, "kg/m3", "lb/ft3")),
		r.Text(unit.MassPerLength, factor, "kg/m", "oz/ft"), equationCite(ref))
	r.Warn(row + ": the factor is an estimate from bore and liquid density. Makers' factors can differ by a fifth; use the unit's table.")
	return factor, true
}

func compareWithPublished(r *calc.Run, ref *refrigerant.Refrigerant, row string, size, factor float64) {
	p, ok := charge.PublishedFactor(ref.Name, size)
	if !ok {
		return
	}
	show := func(v float64) string { return r.Text(unit.MassPerLength, v, "kg/m", "oz/ft") }
	key := "manual-47"
	if ref.Name == "R-32" {
		key = "manual-48"
	}
	printed := show(p.Low)
	if p.High > p.Low {
		printed += " to " + show(p.High)
	}
	r.Step(row+", printed by makers", "read in charge tables for "+ref.Name, printed, calc.Cite{Key: key})
	// Printed factors have two or three figures; 2 % covers their rounding.
	if factor < p.Low*0.98 || factor > p.High*1.02 {
		r.Warn(text.Say("{}: {} is not what the tables read here print, {}. Check the size and the unit's table.", row, show(factor), printed))
	}
}
