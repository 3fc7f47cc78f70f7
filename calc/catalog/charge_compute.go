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
	total := r.Float("nameplate") + lines + r.Float("indoor-extra") + r.Float("branch-extra") - r.Float("allowance")
	if total <= 0 {
		r.Refuse("allowance", calc.TooHigh, text.Say("Line allowance inside the nameplate charge: {} is more than the whole charge; enter the mass that the factory put in for the line.", r.Given("allowance")))
		return
	}
	adjust := total - r.Float("already")
	mass := func(kg float64) string { return r.Text(unit.Mass, kg, "kg", "lb") }
	if r.Has("lines") {
		r.Set("line-charge", lines)
	}
	r.Set("total-charge", total)
	r.Set("adjustment", adjust)
	r.Step("Total charge", text.Say("nameplate + liquid lines + indoor units + branch and outdoor extras − allowance = {} + {} + {} + {} − {}", mass(r.Float("nameplate")), mass(lines), mass(r.Float("indoor-extra")), mass(r.Float("branch-extra")), mass(r.Float("allowance"))), r.OutputText("total-charge"), calc.Cite{Key: "makers-manual", Locator: "charge table"})
	r.Step("Still to add", text.Say("total − already in = {} − {}", mass(total), mass(r.Float("already"))), r.OutputText("adjustment"), calc.Cite{Key: "common-practice"})
	roomOK := roomCheck(r, ref, math.Max(total, r.Float("already")))
	noteForgotten(r)
	concludeWeight(r, ref, total, adjust, roomOK)
}

func concludeWeight(r *calc.Run, ref *refrigerant.Refrigerant, total, adjust float64, roomOK bool) {
	amount := r.Text(unit.Mass, math.Abs(adjust), "kg", "lb")
	// 0.5 % of the total, and never less than the 10 g a charging scale resolves.
	settled := math.Max(0.010, 0.005*total)
	switch {
	case !roomOK:
		r.Conclude("room-limit", "The calculated charge could fill the smallest room beyond the concentration limit. This is a design question: stop and ask the designer and the local authority.")
		return
	case adjust > settled:
		r.Conclude("add", text.Say("Add {}.", amount))
		r.Advise("Charge liquid into the liquid side with the compressor off, by weight on the scale. Put the rest in throttled, in the maker's charge mode.")
	case adjust < -settled:
		r.Conclude("take-out", text.Say("Take out {}.", amount))
		r.Advise(text.Say("Recover it by weight into a cylinder that is in test, clean and marked for {}.", ref.Name))
	default:
		r.Conclude("as-calculated", text.Say("What is in agrees with the calculation within {}.", r.Text(unit.Mass, settled, "kg", "lb")))
	}
	if already := r.Float("already"); already > 0 && math.Abs(adjust) > 0.1*total {
		r.Warn("What was in differs from the calculation by more than 10 %. Find out why before you charge: a leak, a wrong sum, or liquid trapped in a closed section.")
	}
	if ref.ChargeAsLiquid {
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
		if !r.Has(in.id) {
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
			if factor, ok = estimateFactor(r, ref, row, size); !ok {
				return 0, false
			}
			cite = calc.Cite{Key: "astm-b280", Locator: "estimate"}
		}
		compareWithPublished(r, ref, row, size, factor)
		m := length * factor
		r.Step(row, text.Say("length × factor = {} × {}", r.Text(unit.Length, length, "m", "ft"), r.Text(unit.MassPerLength, factor, "kg/m", "oz/ft")), r.Text(unit.Mass, m, "kg", "lb"), cite)
		sum += m
	}
	return sum, true
}

// estimateFactor computes a line factor from the tube's bore and the liquid's
// density where the maker's factor is not known.
func estimateFactor(r *calc.Run, ref *refrigerant.Refrigerant, row string, size float64) (float64, bool) {
	tube, ok := charge.StandardTube(size)
	if !ok {
		r.Refuse("lines", "unknown-tube", row+": this is not a standard tube size, so its bore is not known; enter the maker's factor.")
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
	r.Step(row+", printed by makers", "range read in charge tables for "+ref.Name, show(p.Low)+" to "+show(p.High), calc.Cite{Key: key})
	// Printed factors have two or three figures; 2 % covers their rounding.
	if factor < p.Low*0.98 || factor > p.High*1.02 {
		r.Warn(text.Say("{}: {} is outside the range that makers print, {} to {}. Check the size and the table.", row, show(factor), show(p.Low), show(p.High)))
	}
}

// roomCheck compares the charge with the concentration limit of the room. It
// reports false only when the limit is exceeded.
func roomCheck(r *calc.Run, ref *refrigerant.Refrigerant, total float64) bool {
	if !r.Has("room-volume") {
		r.Warn("The smallest room was not checked: its volume is missing.")
		return true
	}
	if !ref.RCL.Known() {
		r.Warn(text.Say("The smallest room was not checked: no concentration limit for {} was found. Take it from the standard in force.", ref.Name))
		return true
	}
	factor := 1.0
	words := "limit × volume"
	if r.Choice("occupancy") == "institutional" {
		factor, words = 0.5, "half the limit × volume"
	}
	volume := r.Float("room-volume")
	allowed := charge.RoomCharge(ref.RCL.Value, volume, factor)
	r.Set("room-allowance", allowed)
	r.Set("room-concentration", total/volume)
	r.Step("Concentration limit of "+ref.Name, text.Say("RCL, class {}, {}", ref.Class, readWords(ref.RCL.Read)), r.Text(unit.Concentration, ref.RCL.Value, "g/m3", "lb/1000ft3"), calc.Cite{Key: "ashrae-34"})
	r.Step("Most that the smallest room may receive", text.Say("{} = {} × {}", words, r.Text(unit.Concentration, ref.RCL.Value, "g/m3", "lb/1000ft3"), r.Given("room-volume")),
		r.OutputText("room-allowance"), calc.Cite{Key: "a15int4"})
	if ref.RCL.Read == refrigerant.Memory {
		r.Warn(text.Say("The concentration limit of {} is from memory. Verify it in the standard in force before you rely on it.", ref.Name))
	}
	if ref.Class != "" && ref.Class != "A1" {
		r.Warn(text.Say("{} is class {}. It also needs the flammability rules of the product standard and the local code; this check alone is not enough.", ref.Name, ref.Class))
	}
	return total <= allowed
}

func readWords(read refrigerant.Read) string {
	switch read {
	case refrigerant.Memory:
		return "from memory, verify"
	case refrigerant.Secondary:
		return "read in a code that restates the standard"
	}
	return "read in " + string(read)
}
