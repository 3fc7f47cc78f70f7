// Package typeset keeps together on a line what is read together: a number and its unit, the parts of a number such as
// 10 000, and the name of a refrigerant. On a phone a line often ends between two of them, and half a number reads as another
// number. It works on finished pages, so that prose, tables, forms and the questions of the assessment are treated alike.
package typeset

import (
	"bytes"
	"unicode/utf8"
)

const noBreak = "\u00a0"

// What a name that may break at its hyphen is put into; see site/layouts/ground.css.
const nameOpen, nameClose = `<span class="co-name">`, `</span>`

// What stands in these is not prose, or takes no element inside.
var closing = map[string][]byte{
	"script": []byte("</script"), "style": []byte("</style"), "svg": []byte("</svg"), "title": []byte("</title"), "option": []byte("</option"),
	"textarea": []byte("</textarea"), "pre": []byte("</pre"), "code": []byte("</code"),
}

// Page gives a page with the spaces and names in its text kept together. page is HTML that a template has written: every < in
// text and attributes is escaped. It is not changed itself.
func Page(page []byte) []byte {
	to := make([]byte, 0, len(page)+len(page)/32)
	for len(page) > 0 {
		at := bytes.IndexByte(page, '<')
		if at < 0 {
			return text(to, page)
		}
		to = text(to, page[:at])
		page = page[at:]
		end := bytes.IndexByte(page, '>') + 1
		if end == 0 {
			return append(to, page...)
		}
		if until := closing[string(name(page[1:end]))]; until != nil {
			if close := bytes.Index(page, until); close > 0 {
				end = close
			}
		}
		to = append(to, page[:end]...)
		page = page[end:]
	}
	return to
}

func name(tag []byte) []byte {
	end := 0
	for end < len(tag) && 'a' <= tag[end] && tag[end] <= 'z' {
		end++
	}
	return tag[:end]
}

func text(to, t []byte) []byte {
	from := 0
	unit := false // the last word was a unit after its number
	until := -1   // where the space between "to" and the end of a range is
	for i := 1; i+1 < len(t); i++ {
		if t[i] > '-' {
			continue // a letter, as most are
		}
		switch {
		case t[i] == ' ':
			if i == until {
				to = append(append(to, t[from:i]...), noBreak...)
				from = i + 1
				continue
			}
			if !unit && !numeral(t[:i]) {
				continue
			}
			word := firstWord(t[i+1:])
			if !unit && string(word) == "to" && i+4 < len(t) && digit(t[i+4]) {
				to = append(append(to, t[from:i]...), noBreak...)
				from = i + 1
				until = i + 3
				continue
			}
			after := unit
			unit = !after && IsUnit(word)
			if unit || after && ofUnit(word) || !after && goesOn(word) {
				to = append(append(to, t[from:i]...), noBreak...)
				from = i + 1
			}
		case t[i] == '-' && t[i-1] == 'R' && digit(t[i+1]) && (i == 1 || !letter(t[i-2])):
			end := i + 1
			for end < len(t) && (digit(t[end]) || letter(t[end])) {
				end++
			}
			to = append(append(to, t[from:i-1]...), nameOpen...)
			to = append(append(to, t[i-1:end]...), nameClose...)
			from = end
			i = end - 1
		}
	}
	return append(to, t[from:]...)
}

// numeral tells whether text ends in a number.
func numeral(t []byte) bool {
	c := t[len(t)-1]
	if c < utf8.RuneSelf {
		return digit(c)
	}
	r, _ := utf8.DecodeLastRune(t)
	return fraction(r)
}

// goesOn tells whether a word goes on with the number before it: thousands, or a fraction.
func goesOn(word []byte) bool {
	if first, _ := utf8.DecodeRune(word); fraction(first) {
		return true
	}
	three := len(word) >= 3 && digit(word[0]) && digit(word[1]) && digit(word[2])
	return three && (len(word) == 3 || !digit(word[3]))
}

// ofUnit tells whether a word belongs to the unit before it.
func ofUnit(word []byte) bool {
	switch string(bytes.TrimRight(word, ".,;:!?)")) {
	case "DC", "AC", "gauge", "absolute", "(gauge", "(absolute":
		return true
	}
	return false
}

func firstWord(t []byte) []byte {
	for i, c := range t {
		if c == ' ' || c == '\n' {
			return t[:i]
		}
	}
	return t
}

func digit(c byte) bool    { return '0' <= c && c <= '9' }
func letter(c byte) bool   { return 'a' <= c|0x20 && c|0x20 <= 'z' }
func fraction(r rune) bool { return '¼' <= r && r <= '¾' || '⅐' <= r && r <= '⅞' }

// IsUnit tells whether a word after a number is the number's unit: a symbol, or micron and the like. A mark at its end is
// left out.
func IsUnit(word []byte) bool {
	switch string(bytes.TrimRight(word, ".,;:!?)")) {
	case "%", "°C", "°F", "K", "V", "kV", "mV", "A", "mA", "W", "kW", "Ω", "kΩ", "MΩ", "Hz", "Pa", "kPa", "MPa", "bar", "barg", "bara",
		"mbar", "psi", "psig", "psia", "kPag", "kPaa", "micron", "microns", "torr", "Torr", "mm", "cm", "m", "µm", "in", "ft", "g", "kg", "lb",
		"oz", "N", "kN", "N·m", "L", "l", "mL", "ml", "m³", "s", "min", "h", "L/min", "m³/h", "cfm", "ft³/h", "ppm", "minute", "minutes", "hour", "hours",
		"second", "seconds", "day", "days", "g/m", "kg/m", "kg/m³", "µF", "uF", "J", "kJ", "rpm":
		return true
	}
	return false
}
