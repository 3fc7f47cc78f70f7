package hold

import "math"

// segment is the part of the log that is a hold.
type segment struct {
	from, to int  // rows [from, to)
	pumping  bool // rows before it, or all, show the pump still running
	reopened bool // the log was interrupted by a fall that is no hold
	abrupt   bool // the fall before it ended between two rows close together: the pump was valved off there
}

// findHold splits the log at deep falls, because an isolated system cannot lose pressure except by evening out and by cooling,
// and returns the longest part. A fall is deep when the pressure drops by more than 30 % beyond what cooling could do to water
// vapour. cooling gives that factor (1 or less) for the rows i < j.
func findHold(r *rows, cooling func(i, j int) float64) segment {
	n := r.len()
	p := median3(r.pressure)
	best := segment{}
	bestSpan := -1.0
	start, top := 0, 0
	reopened, pumping := false, false
	lead := false // the part being looked at follows a fall
	close := func(end int) {
		if end-start < 1 {
			return
		}
		if span := r.time[end-1] - r.time[start]; span > bestSpan {
			bestSpan = span
			best = segment{from: start, to: end}
		}
	}
	for i := 1; i < n; i++ {
		if p[i] > p[top] {
			top = i
		}
		if p[i] < 0.7*p[top] && p[top]-p[i] > 20*micron && p[i] < 0.7*p[top]*cooling(top, i) {
			// Deep fall. Did the system stand, or rise, before it?
			if stood := r.time[top] - r.time[start]; top > start+1 && stood > 0.02*r.time[n-1] {
				close(top + 1)
				reopened = true
			} else if !lead {
				pumping = true
			}
			// Follow it down to where it ends: the pressure turns, or falls at less than a sixth of the pace.
			steep := math.Log(p[top]/max(p[i], micron)) / (r.time[i] - r.time[top])
			low := i
			for k := i + 1; k < n; k++ {
				if p[k] < p[low] && math.Log(max(p[low], micron)/max(p[k], micron)) > 0.15*steep*(r.time[k]-r.time[low]) {
					low = k
				}
				if p[k] > 1.03*p[low]+2*micron || k-low > 3 {
					break
				}
			}
			start, top, i, lead = low, low, low, true
		}
	}
	close(n)
	best.pumping, best.reopened = pumping, reopened
	if k := best.from; k > 0 && k+1 < n && r.time[k+1]-r.time[k-1] <= 600 {
		before := math.Log(max(r.pressure[k-1], micron)/max(r.pressure[k], micron)) / (r.time[k] - r.time[k-1])
		after := math.Log(max(r.pressure[k], micron)/max(r.pressure[k+1], micron)) / (r.time[k+1] - r.time[k])
		best.abrupt = after < 0.1*before
	}
	// A shallow fall at the very beginning is a pump that was shut off after the first rows: start at the turn.
	m := best.to - best.from
	low := best.from
	for k := best.from; k < best.from+(m+3)/4; k++ {
		if p[k] < p[low] {
			low = k
		}
	}
	if low > best.from && p[low] < 0.9*p[best.from] && best.to-low >= MinRows {
		best.from = low
	}
	return best
}

// coolingUnknown is the factor by which water vapour could fall when nobody noted the temperature: 4 K an hour, at most 15 K.
func coolingUnknown(seconds float64) float64 {
	return math.Exp(-waterPerKelvin * min(4*seconds/3600, 15))
}

// median3 returns the running median of three, ends kept.
func median3(v []float64) []float64 {
	m := append([]float64(nil), v...)
	for i := 1; i+1 < len(v); i++ {
		a, b, c := v[i-1], v[i], v[i+1]
		m[i] = max(min(a, b), min(max(a, b), c))
	}
	return m
}
