package hold

import (
	"math"

	"changeout/calc/property/water"
)

// temperatures returns the gas temperature at each row, nil when nothing is known, and how it is known. A logged ambient wins, then
// the two ends with a straight line between them, then one value alone, an end or a row's, as a constant.
func temperatures(r *rows, c Conditions) ([]float64, TemperatureKind) {
	n := r.len()
	start, end := c.AmbientStart, c.AmbientEnd
	if r.ambient != nil {
		known := make([]int, 0, n)
		for i, a := range r.ambient {
			if a == a {
				known = append(known, i)
			}
		}
		if len(known) >= 2 {
			return between(r.time, r.ambient, known), TemperatureLogged
		}
		if len(known) == 1 && start != start && end != end {
			start = r.ambient[known[0]]
		}
	}
	t := make([]float64, n)
	switch {
	case start == start && end == end:
		span := r.time[n-1]
		for i := range t {
			t[i] = start + (end-start)*r.time[i]/span
		}
		return t, TemperatureEnds
	case start == start || end == end:
		if start != start {
			start = end
		}
		for i := range t {
			t[i] = start
		}
		return t, TemperatureConstant
	}
	return nil, TemperatureNone
}

// between fills the gaps of v by straight lines in time; the ends are carried on level.
func between(time, v []float64, known []int) []float64 {
	out := make([]float64, len(v))
	k := 0
	for i := range v {
		for k+1 < len(known) && known[k+1] <= i {
			k++
		}
		a := known[k]
		switch {
		case i <= a || k+1 == len(known):
			out[i] = v[a]
		default:
			b := known[k+1]
			f := (time[i] - time[a]) / (time[b] - time[a])
			out[i] = v[a] + f*(v[b]-v[a])
		}
	}
	return out
}

// lagged passes T through a first-order lag: the pipe and the oil follow the air with time constant tau (s).
func lagged(time, temp []float64, tau float64) []float64 {
	out := make([]float64, len(temp))
	out[0] = temp[0]
	for i := 1; i < len(temp); i++ {
		f := 1 - math.Exp(-(time[i]-time[i-1])/tau)
		out[i] = out[i-1] + f*((temp[i-1]+temp[i])/2-out[i-1])
	}
	return out
}

// unmeasured returns the allowance for the change of gas temperature that nobody measured over a hold of the given seconds: two
// standard deviations, K. change is the measured one.
func unmeasured(kind TemperatureKind, seconds, change float64) float64 {
	h := seconds / 3600
	lag := change * (pipeShare + pipeShareShort*math.Exp(-h/pipeHours))
	switch kind {
	case TemperatureLogged:
		return min(loggedRate*h, loggedMost) + lag
	case TemperatureEnds:
		return min(endsRate*h, endsMost) + lag
	}
	return min(unknownRate*h, unknownMost)
}

// saturation is the saturation pressure of water at t (K), Pa. t has been checked to lie within MinAmbient to MaxAmbient.
func saturation(t float64) float64 {
	p, err := water.SaturationPressure(t)
	if err != nil {
		return math.NaN()
	}
	return p
}

// sensitivity is the relative change of the pressure per kelvin that nobody measured: the gas law and the part that is water.
func sensitivity(t float64) float64 { return 1/t + waterShare*waterPerKelvin }
