package catalog

import (
	"changeout/calc"
	"changeout/calc/formula/charge"
	"changeout/calc/formula/room"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// roomRules are the room rules on offer. Those with caps use the area formulas
// of IEC 60335-2-40 for class A2L; the others a concentration in the room.
var roomRules = []struct {
	id, label string
	caps      room.Caps
	linear    bool
	cite      calc.Cite
}{
	{"ashrae-15", "ASHRAE 15, RCL", room.Caps{}, false, calc.Cite{Key: "a15int4"}},
	{"ashrae-15-2022", "ASHRAE 15-2022, A2L", room.Caps{}, false, calc.Cite{Key: "a15g", Locator: "formula from memory"}},
	{"iec-5", "IEC 60335-2-40, to ed. 5", room.Caps{4, 26, 130}, false, calc.Cite{Key: "iect"}},
	{"iec-6", "IEC 60335-2-40, ed. 6", room.Caps{6, 52, 260}, true, calc.Cite{Key: "iecp"}},
	{"iec-7", "IEC 60335-2-40, ed. 7", room.Caps{6, 52, 260}, true, calc.Cite{Key: "from-memory"}},
	{"ul-4", "UL 60335-2-40, ed. 4", room.Caps{6, 52, 260}, true, calc.Cite{Key: "a2l-charge-page", Locator: "m₁ and m₂; formula from memory"}},
	{"en-378", "EN 378-1, comfort", room.Caps{6, 39, 195}, true, calc.Cite{Key: "from-memory"}},
}

// practicalLimits are those of EN 378-1, annex E, for classes that do not burn, kg/m³. From memory.
var practicalLimits = []struct {
	name string
	kg   float64
}{{"R-22", 0.30}, {"R-134a", 0.25}, {"R-404A", 0.52}, {"R-407C", 0.31}, {"R-410A", 0.44}, {"R-507A", 0.53}, {"R-744", 0.1}}

func roomInputs() []calc.Input {
	rule := func(ids ...string) []calc.When {
		return append(byWeight[:1:1], calc.When{Input: "room-rule", Is: ids})
	}
	rules := calc.Input{ID: "room-rule", Label: "Room rule", Kind: calc.Choice, When: byWeight, Default: "ashrae-15", Help: "The one that the local code and the unit's listing name. RCL is the concentration limit of the room; ASHRAE 15-2022 takes half the flammability limit for A2L."}
	for _, o := range roomRules {
		rules.Options = append(rules.Options, calc.Option{ID: o.id, Label: o.label})
	}
	byVolume, byArea := rule("ashrae-15", "ashrae-15-2022", "en-378"), rule("iec-5", "iec-6", "iec-7", "ul-4", "en-378")
	length := func(id, label, help, preset string, when []calc.When, low float64, reason string) calc.Input {
		return calc.Input{ID: id, Label: label, Help: help, When: when, Kind: calc.Quantity, Quantity: unit.Length, Units: []string{"m", "ft"}, Default: preset, Low: low, High: 20, BoundReason: reason}
	}
	return []calc.Input{rules,
		{ID: "room-volume", Label: "Volume of the smallest room", When: byVolume, Kind: calc.Quantity, Quantity: unit.Volume, Units: []string{"m3", "ft3"}, Optional: true,
			Low: 1, High: 1e6, BoundReason: "from a cupboard to a hall", Help: "The smallest closed room that the circuit serves or passes through."},
		length("ceiling", "Ceiling height", "Turns the smallest volume into a floor area.", "2.4 m", byVolume, 1.5, "from a low loft to a hall"),
		{ID: "room-area", Label: "Floor area of the smallest room", When: byArea, Kind: calc.Quantity, Quantity: unit.Area, Units: []string{"m2", "ft2"}, Optional: true,
			Low: 0.5, High: 1e5, BoundReason: "from a cupboard to a hall", Help: "The smallest closed room that the circuit serves or passes through."},
		length("release-height", "Height of the lowest opening of the indoor unit", "Above the floor: window 1.0 m, wall 1.8 m, ceiling 2.2 m. Less than 0.6 m counts as 0.6 m.", "0.6 m", byArea, 0, "from the floor to a hall's ceiling"),
		{ID: "occupancy", Label: "Who uses that room", When: rule("ashrae-15", "ashrae-15-2022"), Kind: calc.Choice, Default: "ordinary", Options: []calc.Option{
			{ID: "ordinary", Label: "People who can leave by themselves"}, {ID: "institutional", Label: "People who need help to leave"}},
			Help: "Wards, care homes and cells get half the limit."},
	}
}

// roomCheck compares the charge with the chosen rule. It returns why the charge
// is too much, or "" where the rule does not say so.
func roomCheck(r *calc.Run, ref *refrigerant.Refrigerant, m float64) string {
	i := 0
	for roomRules[i].id != r.Choice("room-rule") {
		i++
	}
	rule := &roomRules[i]
	if rule.caps[0] > 0 && ref.LFL.Known() {
		caps := rule.caps
		if ref.Class != "A2L" {
			caps = room.Caps{4, 26, 130}
		}
		return roomByArea(r, ref, m, caps, rule.linear, rule.cite)
	}
	limit, name, key := ref.RCL, "RCL", "ashrae-34"
	switch {
	case rule.id == "en-378":
		limit, name, key = refrigerant.Fact{}, "practical limit", "from-memory"
		for _, p := range practicalLimits {
			if p.name == ref.Name {
				limit = refrigerant.Fact{Value: p.kg, Read: refrigerant.Memory}
			}
		}
	case rule.caps[0] > 0:
		r.Warn(text.Say("The smallest room was not checked: no flammability limit of {} is held here. If it does not burn, choose ASHRAE 15 or EN 378.", ref.Name))
		return ""
	case rule.id == "ashrae-15-2022" && ref.Class == "A2L" && ref.LFL.Known():
		limit, name, key = refrigerant.Fact{Value: 0.5 * ref.LFL.Value, Read: refrigerant.Memory}, "0.5 × LFL", "a15g"
	}
	if !limit.Known() {
		r.Warn(text.Say("The smallest room was not checked: no concentration limit for {} was found. Take it from the standard in force.", ref.Name))
		return ""
	}
	return roomByVolume(r, ref, m, limit, name, calc.Cite{Key: key}, rule.cite)
}

// roomByVolume is the concentration if all of the charge leaked there.
func roomByVolume(r *calc.Run, ref *refrigerant.Refrigerant, m float64, limit refrigerant.Fact, name string, from, rule calc.Cite) string {
	factor, words := 1.0, "limit × volume"
	if r.Choice("occupancy") == "institutional" {
		factor, words = 0.5, "half the limit × volume"
	}
	shown := r.Text(unit.Concentration, limit.Value, "g/m3", "lb/1000ft3")
	least := m / (limit.Value * factor)
	r.Set("smallest-volume", least)
	r.Set("smallest-area", least/r.Float("ceiling"))
	r.Step("Concentration limit of "+ref.Name, text.Say("{}, class {}, {}", name, ref.Class, readWords(limit.Read)), shown, from)
	r.Step("Smallest room", "charge ÷ limit"+pick(factor < 1, " ÷ 0.5", ""), r.OutputText("smallest-volume"), rule)
	r.Step("Its floor area", "volume ÷ ceiling height, "+r.Given("ceiling"), r.OutputText("smallest-area"), rule)
	if limit.Read == refrigerant.Memory {
		r.Warn(text.Say("The concentration limit of {} is from memory. Verify it in the standard in force before you rely on it.", ref.Name))
	}
	if ref.Class != "" && ref.Class != "A1" {
		r.Warn(text.Say("{} is class {}. It also needs the flammability rules of the product standard and the local code; this check alone is not enough.", ref.Name, ref.Class))
	}
	if !r.Has("room-volume") {
		r.Warn("The smallest room was not checked: its volume is missing.")
		return ""
	}
	volume := r.Float("room-volume")
	allowed := charge.RoomCharge(limit.Value, volume, factor)
	r.Set("room-allowance", allowed)
	r.Set("room-concentration", m/volume)
	r.Step("Most that the smallest room may receive", text.Say("{} = {} × {}", words, shown, r.Given("room-volume")), r.OutputText("room-allowance"), rule)
	if m > allowed {
		return "The calculated charge could fill the smallest room beyond the concentration limit."
	}
	return ""
}

// roomByArea is the formula for a room without ventilation.
func roomByArea(r *calc.Run, ref *refrigerant.Refrigerant, m float64, caps room.Caps, linear bool, cite calc.Cite) string {
	lfl, h := ref.LFL.Value, r.Float("release-height")
	mass := func(kg float64) string { return r.Text(unit.Mass, kg, "kg", "lb") }
	m1, m2, m3 := caps.Charges(lfl * (1 + 1e-9)) // a charge at the limit itself is within it
	factors := text.Say("{}, {}, {} m³ × LFL", unit.Short(caps[0], 3), unit.Short(caps[1], 3), unit.Short(caps[2], 3))
	r.Step("Lower flammability limit of "+ref.Name, text.Say("LFL, class {}, {}", ref.Class, readWords(ref.LFL.Read)), r.Text(unit.Concentration, lfl, "g/m3", "lb/1000ft3"), calc.Cite{Key: pick(ref.LFL.Read == refrigerant.Memory, "from-memory", "iect")})
	r.Step("Limits m₁, m₂, m₃", factors, mass(m1)+", "+mass(m2)+", "+mass(m3), cite)
	r.Warn("This is the formula for a room without ventilation, detector or shut-off valves. The edition has further conditions that are not checked here. The unit's manual and the local code govern.")
	if cite.Key == "from-memory" || cite.Key == "a2l-charge-page" || ref.LFL.Read == refrigerant.Memory {
		r.Warn("Part of this room rule is from memory. Verify it in the standard in force before you rely on it.")
	}
	switch {
	case m > m3:
		return text.Say("The charge is above m₃, {}, where this rule ends.", mass(m3))
	case m > m2:
		return text.Say("The charge is above m₂, {}. No room size alone serves: only the unit's own chart with its safety measures does.", mass(m2))
	case m <= m1:
		r.Step("Smallest room", "charge ≤ m₁", "no area asked for", cite)
		return ""
	}
	r.Set("smallest-area", room.SmallestArea(m, lfl, h, linear))
	formula := "(charge ÷ (2.5 × LFL^1.25 × h))²"
	if linear {
		formula += ", and no less than charge ÷ (0.75 × LFL × h)"
	}
	r.Step("Smallest room", formula+", h = "+r.Text(unit.Length, max(h, room.Lowest), "m", "ft"), r.OutputText("smallest-area"), cite)
	if !r.Has("room-area") {
		r.Warn("The smallest room was not checked: its floor area is missing.")
		return ""
	}
	allowed := room.LargestCharge(lfl, h, r.Float("room-area"), linear)
	r.Set("room-allowance", allowed)
	r.Step("Most that the smallest room may receive", "the same formula, solved for the charge, at "+r.Given("room-area"), r.OutputText("room-allowance"), cite)
	if m > allowed {
		return text.Say("Without safety measures of the unit, the smallest room would need {}.", r.OutputText("smallest-area"))
	}
	return ""
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
