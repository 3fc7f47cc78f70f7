package causes

import (
	"strconv"
	"strings"
)

// The editorial scale. The page on root causes prints the same table; a test compares them.
const (
	nearlyAlways = 0.85
	usually      = 0.7
	sometimes    = 0.35
	half         = 0.5 // of the leak
	tenth        = 0.1 // of the leak
)

const strengthHint = "write +++, ++, +, −, −− or a number from 0 to 0.99"

// minus are the signs that people type for a minus.
var minus = strings.NewReplacer("−", "-", "–", "-", "—", "--")

// strength reads a sign of the scale or a number.
func strength(s string, leak float64) (float64, bool) {
	switch s = minus.Replace(s); s {
	case "+++":
		return nearlyAlways, true
	case "++":
		return usually, true
	case "+":
		return sometimes, true
	case "-":
		return half * leak, leak > 0
	case "--":
		return tenth * leak, leak > 0
	}
	return number(s, 0, 0.99)
}

// number reads a number inside a closed range.
func number(s string, low, high float64) (float64, bool) {
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && v >= low && v <= high
}
