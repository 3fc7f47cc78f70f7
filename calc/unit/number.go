package unit

import (
	"math"
	"strconv"
	"strings"

	"changeout/calc/text"
)

// NumberTrouble says why a text is no plain number.
type NumberTrouble int

const (
	NumberFine      NumberTrouble = iota
	NumberNone                    // no digits at all
	NumberBad                     // digits, but not a number
	NumberTwoWays                 // 1,234 may be 1.234 or 1234
	NumberUnbounded               // too large to hold
)

// Number is a text read as a number.
type Number struct {
	Value   float64
	Trouble NumberTrouble
	Rest    string     // what follows the number: the unit, trimmed
	Ways    [2]float64 // the two readings, when Trouble is NumberTwoWays
}

// ParseNumber reads the number at the start of a text and returns what
// follows it.
//
// A decimal comma is understood where it cannot be mistaken: 1,5 and 0,125
// and 1.234,5. A comma before exactly three digits can mean thousands as well
// (1,234), and then the answer is NumberTwoWays. Spaces and apostrophes
// between groups of three digits are thousands separators.
func ParseNumber(given string) Number {
	s := strings.TrimSpace(given)
	if v, rest, ok := parseFraction(s); ok {
		return Number{Value: v, Rest: rest}
	}
	end, digits := scanNumber(s)
	if digits == 0 {
		return Number{Trouble: NumberNone, Rest: s}
	}
	body, rest := s[:end], strings.TrimSpace(s[end:])
	body = text.Swap(body, "−", "-", "\u00a0", "", "\u202f", "", "\u2009", "", " ", "", "'", "", "’", "")
	plain, other := settleSeparators(body)
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		if err != nil && strings.Contains(err.Error(), "range") {
			return Number{Trouble: NumberUnbounded, Rest: rest}
		}
		return Number{Trouble: NumberBad, Rest: rest}
	}
	if other != "" {
		w, err := strconv.ParseFloat(other, 64)
		if err == nil {
			return Number{Trouble: NumberTwoWays, Rest: rest, Ways: [2]float64{v, w}}
		}
	}
	return Number{Value: v, Rest: rest}
}

// parseFraction reads a tube size such as 3/8, 1 1/8 or 1-1/8.
func parseFraction(s string) (v float64, rest string, ok bool) {
	whole := 0.0
	n := countDigits(s)
	if n == 0 || n > 4 {
		return 0, "", false
	}
	if m := countDigits(s[min(len(s), n+1):]); n+1+m < len(s) && m > 0 && (s[n] == ' ' || s[n] == '-') && s[n+1+m] == '/' {
		whole, _ = strconv.ParseFloat(s[:n], 64)
		s = s[n+1:]
		n = m
	}
	if n >= len(s) || s[n] != '/' {
		return 0, "", false
	}
	d := countDigits(s[n+1:])
	if d == 0 || d > 3 {
		return 0, "", false
	}
	over, _ := strconv.ParseFloat(s[:n], 64)
	under, _ := strconv.ParseFloat(s[n+1:n+1+d], 64)
	if under == 0 {
		return 0, "", false
	}
	return whole + over/under, strings.TrimSpace(s[n+1+d:]), true
}

func countDigits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// scanNumber returns the length of the number at the start of s and how many
// digits it holds.
func scanNumber(s string) (end, digits int) {
	i := 0
	for i < len(s) {
		c := s[i]
		switch {
		case c >= '0' && c <= '9':
			digits++
			i++
			end = i
		case c == '.' || c == ',':
			i++
			if digits > 0 {
				end = i
			}
		case c == '+' || c == '-':
			if digits > 0 {
				return end, digits
			}
			i++
		case strings.HasPrefix(s[i:], "−"):
			if digits > 0 {
				return end, digits
			}
			i += len("−")
		case digits > 0 && groupHead(s[:i]) && groupGap(s[i:]) > 0:
			i += groupGap(s[i:])
		case (c == 'e' || c == 'E') && digits > 0:
			n := exponent(s[i:])
			if n == 0 {
				return end, digits
			}
			return i + n, digits
		default:
			return end, digits
		}
	}
	return end, digits
}

// groupHead reports whether a thousands gap may follow: one to three digits
// since the sign or the last gap, and no decimal sign before.
func groupHead(s string) bool {
	n := len(s)
	for n > 0 && s[n-1] >= '0' && s[n-1] <= '9' {
		n--
	}
	return len(s)-n <= 3 && !strings.ContainsAny(s, ".,")
}

// groupGap returns the length of a thousands gap that is followed by exactly
// three digits, or 0.
func groupGap(s string) int {
	for _, gap := range []string{" ", "\u00a0", "\u202f", "\u2009", "'", "’"} {
		if strings.HasPrefix(s, gap) {
			rest := s[len(gap):]
			n := 0
			for n < len(rest) && rest[n] >= '0' && rest[n] <= '9' {
				n++
			}
			if n == 3 {
				return len(gap)
			}
			return 0
		}
	}
	return 0
}

// exponent returns the length of an exponent such as e-4 at the start of s.
func exponent(s string) int {
	i := 1
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	first := i
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	if i == first {
		return 0
	}
	return i
}

// settleSeparators turns commas and points into one decimal point. The second
// result is the other reading where there are two.
func settleSeparators(s string) (plain, other string) {
	commas, points := strings.Count(s, ","), strings.Count(s, ".")
	lastComma, lastPoint := strings.LastIndexByte(s, ','), strings.LastIndexByte(s, '.')
	switch {
	case commas == 0 && points <= 1:
		return s, ""
	case commas == 0: // 1.234.567
		if grouped(s, '.') {
			return strings.ReplaceAll(s, ".", ""), ""
		}
		return "?", ""
	case commas == 1 && points == 0:
		decimal := strings.Replace(s, ",", ".", 1)
		if grouped(s, ',') && strings.TrimLeft(s[:lastComma], "+-0") != "" {
			return decimal, strings.Replace(s, ",", "", 1)
		}
		return decimal, ""
	case points == 0: // 1,234,567
		if grouped(s, ',') {
			return strings.ReplaceAll(s, ",", ""), ""
		}
		return "?", ""
	case lastPoint > lastComma && points == 1 && grouped(s[:lastPoint], ','): // 1,234.5
		return strings.ReplaceAll(s, ",", ""), ""
	case lastComma > lastPoint && commas == 1 && grouped(s[:lastComma], '.'): // 1.234,5
		return strings.Replace(strings.ReplaceAll(s, ".", ""), ",", ".", 1), ""
	}
	return "?", ""
}

// grouped reports whether sep splits the digits of s into a head of one to
// three and groups of exactly three.
func grouped(s string, sep byte) bool {
	s = strings.TrimLeft(s, "+-")
	parts := strings.Split(s, string(sep))
	for i, p := range parts {
		if len(p) == 0 || len(p) > 3 || (i > 0 && len(p) != 3) {
			return false
		}
		for j := range len(p) {
			if p[j] < '0' || p[j] > '9' {
				return false
			}
		}
	}
	return true
}

// narrowSpace groups thousands; it is neither a comma nor a point, so nobody
// can take it for a decimal sign.
const narrowSpace = "\u202f"

// Format writes a value as the screen shows it, without its unit. NaN and
// infinities come out empty: they never reach a screen as numbers.
func (u *Unit) Format(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	switch u.Decimals {
	case Scientific:
		return u.Significant(v, 3)
	case Calendar:
		return dateText(v)
	}
	return Fixedf(v, u.Decimals)
}

// Fixedf writes v with so many decimals, grouping the thousands from 10 000
// on, and never a minus sign before zero.
func Fixedf(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.HasPrefix(s, "-") && strings.Trim(s, "-0.") == "" {
		s = s[1:]
	}
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "−", s[1:]
	}
	whole, frac, hasFrac := strings.Cut(s, ".")
	if len(whole) > 4 {
		var b strings.Builder
		for i := range len(whole) {
			if i > 0 && (len(whole)-i)%3 == 0 {
				b.WriteString(narrowSpace)
			}
			b.WriteByte(whole[i])
		}
		whole = b.String()
	}
	if hasFrac {
		whole += "." + frac
	}
	return sign + whole
}

// Significant writes v with so many significant figures. The sizes that people
// meet come as a plain decimal; a power of ten stands beyond them only.
func Significant(v float64, figures int) string { return significant(v, figures, -6, 9) }

// Significant writes a value in u with so many significant figures: with a power
// of ten sooner where that is how the unit is read, as a leak rate is.
func (u *Unit) Significant(v float64, figures int) string {
	if u.Decimals == Scientific {
		return significant(v, figures, -3, 4)
	}
	return Significant(v, figures)
}

// significant writes the powers of ten from least to most as a plain decimal.
// From 100 000 on zeros stand for the figures that were not asked for.
func significant(v float64, figures, least, most int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	if v == 0 {
		return "0"
	}
	s := strconv.FormatFloat(v, 'e', figures-1, 64)
	mantissa, exp, _ := strings.Cut(s, "e")
	n, _ := strconv.Atoi(exp)
	if n >= least && n <= most {
		if n >= 5 {
			v, _ = strconv.ParseFloat(s, 64)
		}
		return Fixedf(v, max(0, figures-1-n))
	}
	if strings.HasPrefix(mantissa, "-") {
		mantissa = "−" + mantissa[1:]
	}
	return mantissa + " × 10" + superscript(n)
}

// Short writes v with at most so many significant figures and no zeros after
// the last one that counts, for bounds in a sentence: 0.05, not 0.05000.
func Short(v float64, figures int) string {
	s := Significant(v, figures)
	mantissa, power, isPower := strings.Cut(s, " ×")
	if strings.Contains(mantissa, ".") {
		mantissa = strings.TrimRight(strings.TrimRight(mantissa, "0"), ".")
	}
	if isPower {
		return mantissa + " ×" + power
	}
	return mantissa
}

func superscript(n int) string {
	const digits = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	var b strings.Builder
	if n < 0 {
		b.WriteString("⁻")
		n = -n
	}
	for _, c := range strconv.Itoa(n) {
		b.WriteString(string([]rune(digits)[c-'0']))
	}
	return b.String()
}

// Range writes what an input may be, from low to high in SI, in u with its label:
// bounds that a person reads, with few figures. They are rounded inwards, by at
// most 2 % of the bound and 5 % of the range, so that none is written that is
// refused.
func (u *Unit) Range(low, high float64, env Env) string {
	if u.Decimals == Calendar {
		return dateText(low) + " to " + dateText(high)
	}
	a, b := u.FromSI(low, env), u.FromSI(high, env)
	if u.Datum == Suction {
		a, b = b, a
	}
	s := inwards(a, b-a) + " to " + inwards(b, a-b)
	if u.Label != "" {
		s += "\u00a0" + u.Label
	}
	return s
}

// inwards writes the end v of a range with the fewest figures; the other end is
// at v + to.
func inwards(v, to float64) string {
	size := math.Abs(v)
	if size <= 1e-9*math.Abs(to) {
		return "0"
	}
	for figures := 1; ; figures++ {
		step := math.Pow(10, math.Floor(math.Log10(size))+1-float64(figures))
		off := 1e-9 * size / step // of a conversion
		n := math.Ceil(v/step - off)
		if to < 0 {
			n = math.Floor(v/step + off)
		}
		if lost := math.Abs(n*step - v); figures == 6 || lost <= 0.02*size+off*step && lost <= 0.05*math.Abs(to) {
			return Short(n*step, figures+1)
		}
	}
}

// Limit writes a bound, an SI value, in u as a sentence holds it, without the
// unit's label.
func (u *Unit) Limit(si float64, env Env) string {
	if u.Decimals == Calendar {
		return dateText(si)
	}
	return Short(u.FromSI(si, env), 4)
}

// Text writes an SI value in u with the unit's label.
func (u *Unit) Text(si float64, env Env) string {
	s := u.Format(u.FromSI(si, env))
	if s == "" {
		return ""
	}
	if u.Label == "" {
		return s
	}
	return s + "\u00a0" + u.Label
}

// SpanText writes a length of time, in s, as people say it: minutes up to two
// hours, hours and minutes up to two days, then days with two figures.
func SpanText(s float64) string {
	minutes := int(math.Round(min(s, 48*3600) / 60))
	switch {
	case minutes < 10:
		return Significant(s/60, 2) + "\u00a0min"
	case minutes <= 120:
		return strconv.Itoa(minutes) + "\u00a0min"
	case s > 48*3600:
		return Significant(s/86400, 2) + "\u00a0days"
	case minutes%60 == 0:
		return strconv.Itoa(minutes/60) + "\u00a0h"
	}
	return strconv.Itoa(minutes/60) + "\u00a0h " + strconv.Itoa(minutes%60) + "\u00a0min"
}
