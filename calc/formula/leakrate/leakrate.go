// Package leakrate computes how much of its charge an appliance loses in a
// year, by the two methods of 40 CFR 82.152 and 84.102, and how often it is
// checked for leaks. Days are day numbers, masses kg, rates shares of the full
// charge for each year.
package leakrate

import "math"

// Year is the period that the rules count with, days.
const Year = 365.0

// Together is the longest time, days, between a recovery and the addition that
// puts the same charge back. It is common practice, not a rule: repairs of
// large systems wait for parts.
const Together = 30.0

// Visit is one row of a log.
type Visit struct{ Day, Added, Recovered float64 }

// Loss is what was added on a day beyond what had been taken out before. A
// loss of zero is a day on which the charge was made full.
type Loss struct{ Day, Mass float64 }

// Losses sorts the visits by day (in place), joins those of one day, and takes
// what was recovered up to 30 days before off what was added. offset is the
// mass taken off in all.
func Losses(visits []Visit) (losses []Loss, offset float64) {
	for i := range visits {
		for k := i; k > 0 && visits[k].Day < visits[k-1].Day; k-- {
			visits[k], visits[k-1] = visits[k-1], visits[k]
		}
	}
	out, since := 0.0, math.Inf(-1) // taken out and not yet put back, and when
	for i := 0; i < len(visits); {
		day, added, recovered := visits[i].Day, 0.0, 0.0
		for ; i < len(visits) && visits[i].Day == day; i++ {
			added += visits[i].Added
			recovered += visits[i].Recovered
		}
		if day-since > Together {
			out = 0
		}
		if recovered > 0 {
			out, since = out+recovered, day
		}
		if added > 0 {
			back := math.Min(added, out)
			out -= back
			offset += back
			losses = append(losses, Loss{day, added - back})
		}
	}
	return losses, offset
}

// Annualised is the annualising method:
//
//	rate = added / full charge × 365 / d
//
// with d the days since refrigerant was last added, at most 365.
func Annualised(added, full, days float64) float64 {
	return added / full * Year / math.Min(days, Year)
}

// Rolling is the rolling-average method: what was added in the 365 days up to
// a day, and after another day (a successful follow-up test), over the full
// charge.
func Rolling(losses []Loss, full, upTo, after float64) float64 {
	sum := 0.0
	for _, l := range losses {
		if l.Day <= upTo && l.Day >= upTo-Year && l.Day > after {
			sum += l.Mass
		}
	}
	return sum / full
}

// Months returns the longest time between leak checks for an amount and the
// lowest amount that is checked at all: 12 months, from ten times as much 6,
// from a hundred times 3, each doubled with a leak detection system; 0 where
// no check is asked for. Regulation (EU) 2024/573, article 5, with 5 t of CO₂
// equivalent or 1 kg of an unsaturated gas as the lowest.
func Months(amount, lowest float64, detection bool) int {
	if !(amount >= lowest) {
		return 0
	}
	months := 12
	if amount >= 10*lowest {
		months = 6
	}
	if amount >= 100*lowest {
		months = 3
	}
	if detection {
		months *= 2
	}
	return months
}
