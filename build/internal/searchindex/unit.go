package searchindex

import (
	"strconv"
	"strings"

	"changeout/calc/unit"
)

// quantities are those whose values people search for. Pressures come apart by
// where they are counted from: 75 psig is never 75 psia. A spelling that does
// not say which, such as bar, is a quantity of its own, and the search compares
// it with both.
var quantities = []*unit.Quantity{
	unit.Pressure, unit.VacuumPressure, unit.Temperature, unit.Length, unit.Mass, unit.MassPerLength, unit.Volume, unit.Duration,
	unit.Voltage, unit.Current, unit.Resistance, unit.Capacitance, unit.Frequency, unit.Power, unit.VolumeFlow, unit.Fraction,
}

// Names of the pressures in the index.
const (
	absolute = "absolute"
	gauge    = "gauge"
	either   = "either"
)

// appendUnits writes one record for each conversion, with all its spellings as
// they are written. The first spelling with a meaning keeps it: F is a
// temperature here, not a farad.
func appendUnits(b []byte) []byte {
	taken := map[string]bool{}
	add := func(quantity string, factor, offset float64, spellings ...string) {
		var free []string
		for _, s := range spellings {
			if s != "" && !taken[s] && strings.IndexFunc(s, func(r rune) bool { return r > ' ' }) >= 0 {
				taken[s] = true
				free = append(free, s)
			}
		}
		if len(free) > 0 {
			b = record(b, append([]string{"U", quantity, number(factor), number(offset)}, free...)...)
		}
	}
	for _, q := range quantities {
		for _, v := range q.Vague {
			if u := q.Unit(v.Mean[0]); u != nil && u.Datum == unit.Gauge {
				add(either, u.Factor, u.Offset, v.ID)
			}
		}
		for i := range q.Units {
			u := &q.Units[i]
			name := q.ID
			if q == unit.Pressure || q == unit.VacuumPressure {
				name = absolute
			}
			switch u.Datum {
			case unit.Gauge:
				name = gauge
			case unit.Suction:
				// Counted down from the air of the day. Absolute at standard air is near enough to find it.
				add(name, -u.Factor, -unit.StandardAtmosphere/u.Factor, u.ID, "inHg", "in Hg", "inHg vacuum", "inHg vac")
				continue
			}
			if u.ID == "1" {
				continue
			}
			spellings := append([]string{u.ID, u.Label}, u.Aliases...)
			add(name, u.Factor, u.Offset, spellings...)
		}
	}
	return b
}

// number is short and exact enough: matches are judged to a part in a hundred.
func number(f float64) string { return strconv.FormatFloat(f, 'g', 7, 64) }
