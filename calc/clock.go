package calc

import (
	"strconv"
	"strings"

	words "changeout/calc/text"
	"changeout/calc/unit"
)

// A hand-written log gives times of day, a logger gives dates and times. Both
// become seconds from the first row.

const day = 24 * 3600

// clockReader reads the times of one column in order. A time of day without a
// date that falls back by more than half a day has passed midnight.
type clockReader struct {
	started  bool
	first    float64
	previous float64
	nights   float64
}

// seconds returns the time since the first row.
func (c *clockReader) seconds(text string) (float64, bool) {
	date, rest, dated := unit.SplitDate(text)
	s, ok := timeOfDay(rest)
	if !ok {
		return 0, false
	}
	if dated {
		s += date * day
	} else {
		s += c.nights * day
		if c.started && s < c.previous-day/2 {
			c.nights++
			s += day
		}
	}
	if !c.started {
		c.started, c.first = true, s
	}
	c.previous = s
	return s - c.first, true
}

// isClock reports whether a field is a time of day, with or without a date.
func isClock(s string) bool {
	_, rest, _ := unit.SplitDate(s)
	_, ok := timeOfDay(rest)
	return ok
}

func isDate(s string) bool {
	_, rest, ok := unit.SplitDate(s)
	return ok && rest == ""
}

// timeOfDay reads hh:mm or hh:mm:ss, with am or pm if written.
func timeOfDay(s string) (float64, bool) {
	s = words.Lower(strings.TrimSpace(s))
	s = strings.TrimSuffix(s, "z")
	half := -1
	if t, ok := strings.CutSuffix(s, "am"); ok {
		s, half = strings.TrimSpace(t), 0
	} else if t, ok := strings.CutSuffix(s, "pm"); ok {
		s, half = strings.TrimSpace(t), 12
	}
	parts := strings.Split(s, ":")
	if len(parts) < 2 || len(parts) > 3 {
		return 0, false
	}
	h, err := strconv.Atoi(parts[0])
	if err != nil || h < 0 || h > 24 || (half >= 0 && (h < 1 || h > 12)) {
		return 0, false
	}
	if half >= 0 {
		h = h%12 + half
	}
	m, err := strconv.Atoi(parts[1])
	if err != nil || m < 0 || m > 59 || len(parts[1]) != 2 {
		return 0, false
	}
	sec := 0.0
	if len(parts) == 3 {
		sec, err = strconv.ParseFloat(parts[2], 64)
		if err != nil || !(sec >= 0 && sec < 61) {
			return 0, false
		}
	}
	return float64(h*3600+m*60) + sec, true
}
