package unit

import (
	"math"
	"strings"
	"testing"
)

// Factors of NIST SP 811 (2008), appendix B.8, written from memory of the
// table and of the exact definitions behind it. SP 811 prints seven figures,
// so those rows are held to 5e-7 relative; definitions are held to 1e-12.
const (
	printed = 5e-7
	exact   = 1e-12
)

func TestConversions(t *testing.T) {
	env := Env{Atmosphere: StandardAtmosphere}
	for _, c := range []struct {
		quantity *Quantity
		unit     string
		value    float64
		si       float64
		within   float64
		source   string
	}{
		{Temperature, "C", 20, 293.15, exact, "SP 811: T/K = t/°C + 273.15"},
		{Temperature, "C", -273.15, 0, exact, "SP 811: T/K = t/°C + 273.15"},
		{Temperature, "F", 32, 273.15, exact, "SP 811: T/K = (t/°F + 459.67)/1.8"},
		{Temperature, "F", 212, 373.15, exact, "SP 811: T/K = (t/°F + 459.67)/1.8"},
		{Temperature, "F", -40, 233.15, exact, "-40 °F is -40 °C"},
		{TemperatureDifference, "F", 18, 10, exact, "SP 811: 1 °F = 5/9 K"},
		{TemperatureDifference, "K", 10, 10, exact, "SI"},
		{Pressure, "psia", 1, 6894.757, printed, "SP 811: psi"},
		{Pressure, "psia", 14.69594877551345, 101325, exact, "pound-force by standard gravity, square inch"},
		{Pressure, "psig", 0, 101325, exact, "gauge zero is the local atmosphere"},
		{Pressure, "psig", 100, 101325 + 689475.7293168361, exact, "as above"},
		{Pressure, "kPaa", 1, 1000, exact, "SI"},
		{Pressure, "kPag", 100, 201325, exact, "gauge"},
		{Pressure, "bara", 1, 1e5, exact, "SP 811: bar"},
		{Pressure, "barg", 1, 201325, exact, "gauge"},
		{Pressure, "MPaa", 1, 1e6, exact, "SI"},
		{Pressure, "MPag", 1, 1101325, exact, "gauge"},
		{Pressure, "inHgv", 0, 101325, exact, "no vacuum is the local atmosphere"},
		{Pressure, "inHgv", 10, 101325 - 33863.89, printed, "SP 811: conventional inch of mercury 3386.389 Pa"},
		{Pressure, "torr", 760, 101325, exact, "SP 811: torr = 101 325/760 Pa"},
		{Pressure, "mbar", 1, 100, exact, "SP 811: millibar"},
		{VacuumPressure, "micron", 1, 0.1333224, printed, "SP 811: micrometre of mercury is a thousandth of 133.3224 Pa"},
		{VacuumPressure, "micron", 760000, 101325, exact, "standards.md section 7"},
		{VacuumPressure, "torr", 1, 133.3224, printed, "SP 811: torr"},
		{VacuumPressure, "mbar", 1, 100, exact, "SP 811: millibar"},
		{VacuumPressure, "kPa", 1, 1000, exact, "SI"},
		{PressureRate, "micron/min", 60, 0.1333224, printed, "from micron and minute"},
		{PressureRate, "Pa/h", 3600, 1, exact, "hour"},
		{LeakRate, "mbar·L/s", 10, 1, exact, "100 Pa × 0.001 m³"},
		{Length, "ft", 1, 0.3048, exact, "SP 811: foot"},
		{Length, "in", 1, 0.0254, exact, "SP 811: inch"},
		{Length, "mm", 1, 0.001, exact, "SI"},
		{TubeDiameter, "in", 0.375, 0.009525, exact, "SP 811: inch"},
		{TubeDiameter, "mm", 9.525, 0.009525, exact, "SI"},
		{Mass, "lb", 1, 0.45359237, exact, "SP 811: pound"},
		{Mass, "oz", 1, 0.02834952, printed, "SP 811: ounce"},
		{Mass, "oz", 16, 0.45359237, exact, "16 ounces in a pound"},
		{Mass, "g", 1, 0.001, exact, "SI"},
		{MassPerLength, "lb/ft", 1, 1.488164, printed, "SP 811: pound per foot"},
		{MassPerLength, "oz/ft", 16, 1.488164, printed, "SP 811: pound per foot"},
		{MassPerLength, "g/m", 61, 0.061, exact, "SI"},
		{Density, "lb/ft3", 1, 16.01846, printed, "SP 811: pound per cubic foot"},
		{Concentration, "lb/1000ft3", 1, 0.01601846, printed, "SP 811: pound per cubic foot"},
		{Concentration, "g/m3", 420, 0.42, exact, "SI"},
		{Volume, "ft3", 1, 0.02831685, printed, "SP 811: cubic foot"},
		{Volume, "L", 1, 0.001, exact, "SP 811: litre"},
		{Duration, "h", 1, 3600, exact, "SP 811: hour"},
		{Duration, "min", 1, 60, exact, "SP 811: minute"},
		{Fraction, "%", 80, 0.8, exact, "per cent"},
	} {
		u := c.quantity.Unit(c.unit)
		if u == nil {
			t.Errorf("%s has no unit %s", c.quantity.ID, c.unit)
			continue
		}
		got := u.ToSI(c.value, env)
		tolerance := c.within * math.Max(1e-9, math.Abs(c.si))
		if c.si == 0 {
			tolerance = 1e-9
		}
		if d := got - c.si; !(math.Abs(d) <= tolerance) {
			t.Errorf("%v %s: got %.15g SI, want %.15g, difference %g, tolerance %g (%s)", c.value, c.unit, got, c.si, d, tolerance, c.source)
		}
	}
}

// TestRoundTrips: there and back in every unit, over the sizes that occur.
// 1e-12 of the largest number on the way is some thousand rounding errors.
func TestRoundTrips(t *testing.T) {
	for _, atmosphere := range []float64{StandardAtmosphere, 54e3, 107e3} {
		env := Env{Atmosphere: atmosphere}
		for _, q := range All() {
			for i := range q.Units {
				u := &q.Units[i]
				for _, v := range []float64{0, 1e-6, 0.5, 1, 37.2, 1e3, 1e6, -3.3} {
					got := u.FromSI(u.ToSI(v, env), env)
					scale := math.Max(math.Abs(v), math.Max(math.Abs(u.Offset), 1e-9))
					if u.Datum != Fixed {
						scale = math.Max(scale, atmosphere/u.Factor)
					}
					if d := got - v; !(math.Abs(d) <= 1e-12*scale) {
						t.Errorf("%s %s: %v came back as %v, difference %g, tolerance %g", q.ID, u.ID, v, got, d, 1e-12*scale)
					}
				}
			}
		}
	}
}

// TestSpellingsAreUnique: one spelling, one unit. Two units of a quantity may
// not share an id, a label or an alias, and no vague spelling may hide a unit.
func TestSpellingsAreUnique(t *testing.T) {
	seen := map[string]bool{}
	for _, q := range All() {
		if seen[q.ID] || q.ID == "" || q.Name == "" {
			t.Errorf("quantity %q: id twice or empty, or no name", q.ID)
		}
		seen[q.ID] = true
		owner := map[string]string{}
		claim := func(spelling, id string) {
			f := fold(spelling)
			if o, ok := owner[f]; ok && o != id {
				t.Errorf("%s: %q means both %s and %s", q.ID, spelling, o, id)
			}
			owner[f] = id
		}
		for i := range q.Units {
			u := &q.Units[i]
			claim(u.ID, u.ID)
			claim(u.Label, u.ID)
			for _, a := range u.Aliases {
				if a != fold(a) {
					t.Errorf("%s %s: alias %q is not folded, want %q", q.ID, u.ID, a, fold(a))
				}
				claim(a, u.ID)
			}
			if !(u.Factor > 0) || math.IsInf(u.Factor, 0) {
				t.Errorf("%s %s: factor %v, want above 0", q.ID, u.ID, u.Factor)
			}
			if got := q.Unit(u.ID); got != u {
				t.Errorf("%s: Unit(%q) found another unit", q.ID, u.ID)
			}
		}
		if si := q.SIUnit(); si.Factor != 1 || si.Offset != 0 || si.Datum != Fixed {
			t.Errorf("%s: first unit %s is not the SI one: factor %v, offset %v, datum %v", q.ID, si.ID, si.Factor, si.Offset, si.Datum)
		}
		for _, v := range q.Vague {
			if q.Unit(v.ID) != nil {
				t.Errorf("%s: %q is vague and a unit as well", q.ID, v.ID)
			}
			for _, m := range v.Mean {
				if q.Unit(m) == nil {
					t.Errorf("%s: vague %q can mean %q, which is no unit", q.ID, v.ID, m)
				}
			}
		}
	}
}

func TestUnitSpellings(t *testing.T) {
	for _, c := range []struct {
		quantity *Quantity
		spelling string
		want     string // "" for none
	}{
		{Pressure, "PSIG", "psig"}, {Pressure, "psi g", "psig"}, {Pressure, "psi gauge", "psig"}, {Pressure, "kpag", "kPag"}, {Pressure, "bar gauge", "barg"},
		{Pressure, "psi", ""}, {Pressure, "bar", ""}, {Pressure, "kPa", ""}, {Pressure, "in Hg vacuum", "inHgv"},
		{Temperature, "°C", "C"}, {Temperature, "ºF", "F"}, {Temperature, "deg F", "F"}, {Temperature, "k", "K"},
		{VacuumPressure, "µm", "micron"}, {VacuumPressure, "μmHg", "micron"}, {VacuumPressure, "mTorr", "micron"}, {VacuumPressure, "microns", "micron"},
		{Volume, "m³", "m3"}, {Volume, "FT3", "ft3"}, {LeakRate, "Pa m3/s", "Pa·m³/s"}, {Length, "furlong", ""}, {TubeDiameter, `"`, "in"},
	} {
		got := ""
		if u := c.quantity.Unit(c.spelling); u != nil {
			got = u.ID
		}
		if got != c.want {
			t.Errorf("%s %q: got %q, want %q", c.quantity.ID, c.spelling, got, c.want)
		}
	}
	for _, spelling := range []string{"psi", "PSI", "bar", "kPa", "MPa", "inHg"} {
		if Pressure.VagueUnit(spelling) == nil {
			t.Errorf("pressure %q: want it vague", spelling)
		}
	}
}

// TestText: every unit shows every number as text without NaN, without a
// minus sign before zero, and nothing at all for what is no number.
func TestText(t *testing.T) {
	env := Env{Atmosphere: StandardAtmosphere}
	for _, q := range All() {
		for i := range q.Units {
			u := &q.Units[i]
			for _, si := range []float64{0, -1e-9, 1e-12, 1, -1, 293.15, 101325, -101325, 1e7, 1e280, -1e280} {
				if q.Calendar() && math.Abs(si) > 1e6 {
					continue // no calendar has such a day
				}
				s := u.Text(si, env)
				if s == "" || strings.Contains(s, "NaN") || strings.Contains(s, "Inf") || strings.HasPrefix(s, "-") || strings.Contains(s, "+") {
					t.Errorf("%s %s: Text(%v) = %q", q.ID, u.ID, si, s)
				}
				if n := ParseNumber(s); strings.HasPrefix(s, "−") && n.Trouble == NumberFine && n.Value == 0 {
					t.Errorf("%s %s: Text(%v) = %q, want no minus before zero", q.ID, u.ID, si, s)
				}
			}
			for _, si := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
				if s := u.Text(si, env); s != "" {
					t.Errorf("%s %s: Text(%v) = %q, want nothing", q.ID, u.ID, si, s)
				}
			}
		}
	}
	if got, want := Pressure.Unit("kPag").Text(101325+1234.56e3, env), "1234.6\u00a0kPa gauge"; got != want {
		t.Errorf("kPag: got %q, want %q", got, want)
	}
}

// TestDate: days of the Gregorian calendar there and back, against counts that
// follow from its rules (400 years are 146,097 days; 2000 was a leap year, 1900
// was not) and against the known 11,016 days from 1970-01-01 to 2000-02-29.
func TestDate(t *testing.T) {
	for text, want := range map[string]float64{"1970-01-01": 0, "1970-03-01": 59, "2000-02-29": 11016, "2370-01-01": 146097, "1969-12-31": -1, "2026/11/25": 20782} {
		got, rest, ok := SplitDate(text)
		if !ok || rest != "" || got != want {
			t.Errorf("SplitDate(%q) = %v, %q, %v; want %v", text, got, rest, ok, want)
		}
	}
	for _, text := range []string{"", "25.11.2026", "2026-02-30", "1900-02-29", "2026-13-01", "2026-11-2", "0000-01-01", "26-11-2025"} {
		if got, rest, ok := SplitDate(text); ok && rest == "" {
			t.Errorf("SplitDate(%q) = %v, want no date", text, got)
		}
	}
	for n := -700000; n < 1000000; n += 13 {
		y, m, d := Civil(n)
		if back := DayNumber(y, m, d); back != n {
			t.Fatalf("day %d is %d-%d-%d, which is day %d", n, y, m, d, back)
		}
		text := Date.Units[0].Text(float64(n), Env{})
		if got, _, ok := SplitDate(text); !ok || got != float64(n) {
			t.Fatalf("day %d is written %q and read as %v", n, text, got)
		}
	}
}
