package unit

import (
	"strconv"
	"strings"
)

// Date is a day of the Gregorian calendar, written year first: 2026-11-25.
// Inside it is the number of days since 1970-01-01, so differences are days.
var Date = &Quantity{ID: "date", Name: "a date", Units: []Unit{
	{ID: "d", Label: "", Factor: 1, System: Either, Decimals: Calendar},
}}

// epoch is 1970-01-01 counted from 1 March of year 0.
const epoch = 719468

// SplitDate takes a leading date, year first (2026-11-25 or 2026/11/25), off a
// text and returns its day number from 1970-01-01. Other orders of day and
// month are not guessed at, and a day that no calendar has is not a date.
func SplitDate(s string) (day float64, rest string, ok bool) {
	s = strings.TrimSpace(s)
	if len(s) < 10 || (s[4] != '-' && s[4] != '/') || s[7] != s[4] {
		return 0, s, false
	}
	y, err1 := strconv.Atoi(s[:4])
	m, err2 := strconv.Atoi(s[5:7])
	d, err3 := strconv.Atoi(s[8:10])
	if err1 != nil || err2 != nil || err3 != nil || y < 1 || m < 1 || m > 12 || d < 1 || d > 31 {
		return 0, s, false
	}
	n := DayNumber(y, m, d)
	if _, _, back := Civil(n); back != d {
		return 0, s, false
	}
	return float64(n), strings.TrimSpace(strings.TrimPrefix(s[10:], "T")), true
}

// DayNumber counts days from 1970-01-01 in the Gregorian calendar.
func DayNumber(y, m, d int) int {
	if m <= 2 {
		y--
		m += 12
	}
	return 365*y + y/4 - y/100 + y/400 + (153*(m-3)+2)/5 + d - 1 - epoch
}

// Civil is the inverse of DayNumber, for years from 1.
func Civil(n int) (y, m, d int) {
	n += epoch
	era := n / 146097
	n -= era * 146097
	y = (n - n/1460 + n/36524 - n/146096) / 365
	n -= 365*y + y/4 - y/100
	k := (5*n + 2) / 153
	d = n - (153*k+2)/5 + 1
	m = k + 3
	y += 400 * era
	if m > 12 {
		m -= 12
		y++
	}
	return y, m, d
}

// dateText writes a day number year first.
func dateText(day float64) string {
	if !(day > -epoch && day < 3e6) {
		return ""
	}
	y, m, d := Civil(int(day))
	b := []byte("0000-00-00")
	for i, v := range [3]int{y, m, d} {
		for at := [3]int{3, 6, 9}[i]; v > 0 && at >= 0; at-- {
			b[at] = byte('0' + v%10)
			v /= 10
		}
	}
	return string(b)
}
