package unit

import (
	"math"
	"strings"
	"testing"
)

// TestParseNumber: the ways people write numbers. Expected values are what the
// text says; there is no tolerance but the last place of a float64.
func TestParseNumber(t *testing.T) {
	const a, b = NumberFine, NumberTwoWays
	for _, c := range []struct {
		text    string
		trouble NumberTrouble
		value   float64
		other   float64 // second reading, for NumberTwoWays
		rest    string
	}{
		{"250", a, 250, 0, ""},
		{" 250 psig ", a, 250, 0, "psig"},
		{"25C", a, 25, 0, "C"},
		{"25 °C", a, 25, 0, "°C"},
		{"1,5", a, 1.5, 0, ""},
		{"1,5 m", a, 1.5, 0, "m"},
		{"0,125", a, 0.125, 0, ""},
		{"00,125", a, 0.125, 0, ""},
		{",5", a, 0.5, 0, ""},
		{".5 kg", a, 0.5, 0, "kg"},
		{"5.", a, 5, 0, ""},
		{"1,234", b, 1.234, 1234, ""},
		{"−1,234 K", b, -1.234, -1234, "K"},
		{"12,345 Pa", b, 12.345, 12345, "Pa"},
		{"1234,567", a, 1234.567, 0, ""},
		{"1,2345", a, 1.2345, 0, ""},
		{"1.234", a, 1.234, 0, ""},
		{"1.234,5", a, 1234.5, 0, ""},
		{"1,234.5", a, 1234.5, 0, ""},
		{"1,234,567", a, 1234567, 0, ""},
		{"1.234.567", a, 1234567, 0, ""},
		{"1.234.567,8", a, 1234567.8, 0, ""},
		{"1 234", a, 1234, 0, ""},
		{"1\u00a0234\u202f567 Pa", a, 1234567, 0, "Pa"},
		{"1'234.5", a, 1234.5, 0, ""},
		{"1’234", a, 1234, 0, ""},
		{"1 234,567", a, 1234.567, 0, ""},
		{"1 23", a, 1, 0, "23"},
		{"1234 567", a, 1234, 0, "567"},
		{"1.5 200", a, 1.5, 0, "200"},
		{"3/8", a, 0.375, 0, ""},
		{`3/8"`, a, 0.375, 0, `"`},
		{"1-1/8", a, 1.125, 0, ""},
		{"1 1/8 in", a, 1.125, 0, "in"},
		{"12 3/4", a, 12.75, 0, ""},
		{"−5", a, -5, 0, ""},
		{"-5", a, -5, 0, ""},
		{"+5", a, 5, 0, ""},
		{"1e3", a, 1000, 0, ""},
		{"1.5E-4 Pa", a, 1.5e-4, 0, "Pa"},
		{"5 e", a, 5, 0, "e"},
		{"1e-400", a, 0, 0, ""}, // below what a float64 can hold: nothing is left
		{"1_000", a, 1, 0, "_000"},
		{"0x10", a, 0, 0, "x10"},
		{"", NumberNone, 0, 0, ""},
		{"   ", NumberNone, 0, 0, ""},
		{"abc", NumberNone, 0, 0, "abc"},
		{"NaN", NumberNone, 0, 0, "NaN"},
		{"Inf", NumberNone, 0, 0, "Inf"},
		{"-", NumberNone, 0, 0, "-"},
		{",", NumberNone, 0, 0, ","},
		{"- 5", NumberNone, 0, 0, "- 5"},
		{"1/0", a, 1, 0, "/0"},
		{"1..5", NumberBad, 0, 0, ""},
		{"1,23,456", NumberBad, 0, 0, ""},
		{"1.2.3", NumberBad, 0, 0, ""},
		{"+-5", NumberBad, 0, 0, ""},
		{"1e999", NumberUnbounded, 0, 0, ""},
		{"-1e999 Pa", NumberUnbounded, 0, 0, "Pa"},
		{strings.Repeat("9", 400), NumberUnbounded, 0, 0, ""},
	} {
		n := ParseNumber(c.text)
		got, want := n.Value, c.value
		if c.trouble == NumberTwoWays {
			got = n.Ways[0]
		}
		if n.Trouble != c.trouble || got != want || n.Ways[1] != c.other || n.Rest != c.rest {
			t.Errorf("ParseNumber(%q): got trouble %d, value %v, other %v, rest %q; want %d, %v, %v, %q (difference %g, tolerance 0)",
				c.text, n.Trouble, got, n.Ways[1], n.Rest, c.trouble, want, c.other, c.rest, got-want)
		}
	}
}

// TestPlainTextComesBack: what Format-like text a person may copy from the
// screen is read as the same number.
func TestPlainTextComesBack(t *testing.T) {
	for _, v := range []float64{0, 1, -1, 12.5, 999, 1000, -1234.5, 9999, 10000, 123456.7, -1234567} {
		text := Fixedf(v, 1)
		n := ParseNumber(text)
		if n.Trouble != NumberFine || n.Value != v || n.Rest != "" {
			t.Errorf("ParseNumber(Fixedf(%v) = %q): got %v, trouble %d, rest %q; want %v (difference %g, tolerance 0)", v, text, n.Value, n.Trouble, n.Rest, v, n.Value-v)
		}
	}
}

func FuzzParseNumber(f *testing.F) {
	for _, s := range []string{"1,5", "1,234", "1.234,5", "1 234", "3/8", "1-1/8", "1 1/8", "−5", "1e3", "25C", "\xff\xfe", "1'", "9999/999", "1e", "+−,.", "1 1/"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		n := ParseNumber(s)
		for _, v := range []float64{n.Value, n.Ways[0], n.Ways[1]} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("ParseNumber(%q) = %+v, want finite values", s, n)
			}
		}
		if n.Trouble == NumberFine && !strings.ContainsAny(s, "0123456789") {
			t.Errorf("ParseNumber(%q) = %v, want no number without a digit", s, n.Value)
		}
		if !strings.HasSuffix(strings.TrimSpace(s), n.Rest) {
			t.Errorf("ParseNumber(%q): rest %q is not the end of the text", s, n.Rest)
		}
	})
}

func TestFixedf(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{0, 1, "0.0"}, {-0.04, 1, "0.0"}, {math.Copysign(0, -1), 0, "0"}, {-0.06, 1, "−0.1"}, {1234.5, 1, "1234.5"}, {9999, 0, "9999"},
		{10000, 0, "10\u202f000"}, {-1234567.891, 2, "−1\u202f234\u202f567.89"}, {999999.96, 1, "1\u202f000\u202f000.0"}, {math.NaN(), 1, ""}, {math.Inf(1), 1, ""}, {math.Inf(-1), 0, ""},
	} {
		if got := Fixedf(c.v, c.decimals); got != c.want {
			t.Errorf("Fixedf(%v, %d) = %q, want %q", c.v, c.decimals, got, c.want)
		}
	}
}

func TestSignificant(t *testing.T) {
	for _, c := range []struct {
		v       float64
		figures int
		want    string
	}{
		{0, 3, "0"}, {math.Copysign(0, -1), 3, "0"}, {1.2345, 3, "1.23"}, {123.45, 2, "123"}, {0.0012345, 3, "0.00123"}, {0.00012345, 3, "0.000123"},
		{-0.00012345, 2, "−0.00012"}, {12345, 3, "12\u202f345"}, {123456, 3, "123\u202f000"}, {-123456, 3, "−123\u202f000"}, {1e5, 4, "100\u202f000"},
		{9.9999e9, 2, "1.0 × 10¹⁰"}, {9.94e9, 2, "9\u202f900\u202f000\u202f000"}, {1.234e-6, 2, "0.0000012"}, {9.94e-7, 2, "9.9 × 10⁻⁷"}, {-2.5e-10, 2, "−2.5 × 10⁻¹⁰"}, {9.999, 3, "10.0"}, {6.02e123, 1, "6 × 10¹²³"},
		{99999.5, 4, "100\u202f000"}, {math.NaN(), 3, ""}, {math.Inf(1), 3, ""},
	} {
		if got := Significant(c.v, c.figures); got != c.want {
			t.Errorf("Significant(%v, %d) = %q, want %q", c.v, c.figures, got, c.want)
		}
	}
}

// TestSignificantInUnits: what is read in powers of ten keeps them, in outputs
// and elsewhere; a capacitor's microfarads do not get them.
func TestSignificantInUnits(t *testing.T) {
	for _, c := range []struct {
		u    *Unit
		v    float64
		want string
	}{
		{LeakRate.Unit("Pa·m³/s"), 3.04e-5, "3.0 × 10⁻⁵"}, {LeakRate.Unit("Pa·m³/s"), 0.0123, "0.012"}, {Capacitance.Unit("uF"), 1e5, "100\u202f000"},
		{Energy.Unit("kJ"), 281234, "280\u202f000"}, {Mass.Unit("oz"), 6.5e-5, "0.000065"},
	} {
		if got := c.u.Significant(c.v, 2); got != c.want {
			t.Errorf("%v in %s: got %q, want %q", c.v, c.u.ID, got, c.want)
		}
	}
}

func TestShort(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{{0.05, "0.05"}, {1e5, "100\u202f000"}, {3.53147e7, "35\u202f310\u202f000"}, {1e-4, "0.0001"}, {1e-9, "1 × 10⁻⁹"}, {1.5e-9, "1.5 × 10⁻⁹"}, {20, "20"}, {0, "0"}} {
		if got := Short(c.v, 4); got != c.want {
			t.Errorf("Short(%v) = %q, want %q", c.v, got, c.want)
		}
	}
}

// TestRange: bounds are written with few figures and never outside the range.
func TestRange(t *testing.T) {
	env := Env{Atmosphere: StandardAtmosphere}
	for _, c := range []struct {
		u         *Unit
		low, high float64
		want      string
	}{
		{Pressure.Unit("barg"), 2e5, 2e7, "1 to 198 bar gauge"}, {Pressure.Unit("kPag"), 1e3, 15e6, "−100 to 14\u202f800 kPa gauge"}, {Pressure.Unit("inHgv"), 1e3, StandardAtmosphere, "0 to 29.6 in Hg vacuum"},
		{Duration.Unit("h"), 60, 30 * 86400, "0.017 to 720 h"}, {Volume.Unit("ft3"), 1e-4, 20, "0.0036 to 700 ft³"}, {VacuumPressure.Unit("micron"), 1, 700, "7.6 to 5200 micron"},
		{Temperature.Unit("C"), 233.15, 343.15, "−40 to 70 °C"}, {Fraction.Unit("1"), 0, 1, "0 to 1"}, {Count.Unit("1"), 1, 200, "1 to 200"}, {Temperature.Unit("K"), 303.15, 313.15, "303.2 to 313 K"},
		{Date.Unit("d"), 0, 59, "1970-01-01 to 1970-03-01"},
	} {
		if got := strings.ReplaceAll(c.u.Range(c.low, c.high, env), "\u00a0", " "); got != c.want {
			t.Errorf("%v to %v in %s: got %q, want %q", c.low, c.high, c.u.ID, got, c.want)
		}
	}
}

func TestSpanText(t *testing.T) {
	for s, want := range map[float64]string{0: "0 min", 20: "0.33 min", 5349: "89 min", 7200: "120 min", 7260: "2 h 1 min", 3 * 3600: "3 h", 5508: "92 min", 6300: "105 min",
		18900: "5 h 15 min", 48 * 3600: "48 h", 48*3600 + 1: "2.0 days", 330480: "3.8 days", 14 * 86400: "14 days"} {
		if got := strings.ReplaceAll(SpanText(s), "\u00a0", " "); got != want {
			t.Errorf("SpanText(%g): got %q, want %q", s, got, want)
		}
	}
}
