package calcview

import (
	"slices"
	"strings"

	"changeout/build/internal/markup"
	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/unit"
)

// takes says in one sentence why an input of a worksheet cannot take over what
// a step has written down in a unit, named as a person reads it; "" when it
// can. row is the first cell of the row of a log, "" for an input alone.
func takes(id, input, row, label string) string {
	in := catalog.Lookup(id).Input(input)
	switch {
	case in == nil:
		return "the worksheet “" + id + "” has no input “" + input + "”"
	case (in.Kind == calc.Series) != (row != ""):
		return "an input that is a log takes rows, and no other input does"
	case in.Kind == calc.Series:
		for _, c := range in.Columns[1:] {
			if c.Quantity != nil && unitLabels(c.Quantity, c.Units[:1])[0] == label {
				return ""
			}
		}
		return "no column of the log is in " + label
	case in.Kind != calc.Quantity:
		return "the input “" + input + "” is not a quantity"
	}
	if labels := unitLabels(in.Quantity, in.Units); !slices.Contains(labels, label) {
		return "the input “" + input + "” is not in " + label + " but in " + strings.Join(labels, ", ")
	}
	return ""
}

// stepQuantities are what a person may write down in a unit of choice, in the
// order in which a label is looked for: kPa in a step is a pressure drop.
var stepQuantities = []*unit.Quantity{unit.Temperature, unit.PressureDifference, unit.VacuumPressure, unit.Pressure, unit.Mass, unit.Volume,
	unit.TubeDiameter, unit.VolumeFlow, unit.Resistance}

// stepField says what a field of a step in a unit, named as a person reads it,
// may hold. id and input are the worksheet input that takes it over, or "":
// only units that it knows are then offered.
func stepField(label, id, input string) markup.Field {
	if w := catalog.Lookup(id); w != nil && w.Input(input) != nil {
		in := w.Input(input)
		if in.Kind == calc.Quantity {
			return newField(in.Quantity, in.Units, label)
		}
		for _, c := range in.Columns {
			if slices.Contains(unitLabels(c.Quantity, c.Units), label) {
				return newField(c.Quantity, c.Units, label)
			}
		}
	}
	if label == unit.TemperatureDifference.SIUnit().Label { // no step reads a temperature in kelvin
		return newField(unit.TemperatureDifference, nil, label)
	}
	for _, q := range stepQuantities {
		if slices.Contains(unitLabels(q, nil), label) {
			return newField(q, nil, label)
		}
	}
	return markup.Field{}
}

// newField lists the units beside the one written, as markup.Field says. What
// counts from the atmosphere stays so, and a unit of no family is left out
// beside one that has a family: only equations use the kelvin and the pascal.
func newField(q *unit.Quantity, offered []string, label string) markup.Field {
	f := markup.Field{Size: q == unit.TubeDiameter, Words: q == unit.Resistance}
	i := slices.Index(unitLabels(q, nil), label)
	if i < 0 || q != unit.TemperatureDifference && !slices.Contains(stepQuantities, q) {
		return f // volts and hours are what they are everywhere
	}
	own := &q.Units[i]
	f.Signed = own.Datum != unit.Fixed || q == unit.Temperature || q == unit.TemperatureDifference || q == unit.PressureDifference
	f.Units = []string{label}
	first, factor := 0, 0.0
	for j := range q.Units {
		u := &q.Units[j]
		switch {
		case j == i, offered != nil && !slices.Contains(offered, u.ID), (u.Datum == unit.Fixed) != (own.Datum == unit.Fixed), u.System == unit.Either && own.System != unit.Either:
			continue
		}
		f.Units = append(f.Units, u.Label)
		// Of the other family the first that is not over ten times as large: ounces beside grams, pounds beside kilograms.
		if own.System != unit.Either && u.System != own.System && (first == 0 || factor > 10*own.Factor) {
			first, factor = len(f.Units)-1, u.Factor
		}
	}
	if first > 0 {
		f.Units[first] = map[unit.System]string{unit.SI: "*", unit.InchPound: "+"}[own.System] + f.Units[first]
	}
	return f
}

// unitLabels names units as a person reads them; nil names every unit of the quantity.
func unitLabels(q *unit.Quantity, ids []string) []string {
	if ids == nil {
		for i := range q.Units {
			ids = append(ids, q.Units[i].ID)
		}
	}
	labels := make([]string, len(ids))
	for i, id := range ids {
		labels[i] = id
		if u := q.Unit(id); u != nil {
			labels[i] = u.Label
		}
	}
	return labels
}
