package hold

import "math"

// points is the log as the fits see it: at most maxPoints of corrected pressure with a weight.
type points struct {
	time     []float64 // s after the start of the hold
	pressure []float64 // Pa at the reference temperature
	raw      []float64 // Pa as read
	temp     []float64 // K; nil when unknown
	weight   []float64 // 1/Pa²
	count    []int     // readings behind the point
}

// thin averages the rows into points. Bins are narrower near the start, where the pressure evens out within minutes: their edges are
// spaced as the 1.5th power. Up to maxPoints rows are kept as they are.
func thin(r *rows, temp, corrected, variance []float64) points {
	n := r.len()
	t0, span := r.time[0], r.time[n-1]-r.time[0]
	var p points
	size := min(n, maxPoints)
	p.time, p.pressure, p.raw = make([]float64, 0, size), make([]float64, 0, size), make([]float64, 0, size)
	p.weight, p.count = make([]float64, 0, size), make([]int, 0, size)
	bin := 0
	for i := 0; i < n; {
		j := i + 1
		if n > maxPoints {
			edge := 0.0
			for edge <= r.time[i]-t0 && bin < maxPoints {
				bin++
				u := float64(bin) / maxPoints
				edge = span * u * math.Sqrt(u)
			}
			for j < n && (r.time[j]-t0 < edge || bin == maxPoints) {
				j++
			}
		}
		var sw, st, sp, sr, sT float64
		for k := i; k < j; k++ {
			w := 1 / variance[k]
			sw += w
			st += w * (r.time[k] - t0)
			sp += w * corrected[k]
			sr += w * r.pressure[k]
			if temp != nil {
				sT += w * temp[k]
			}
		}
		p.time = append(p.time, st/sw)
		p.pressure = append(p.pressure, sp/sw)
		p.raw = append(p.raw, sr/sw)
		if temp != nil {
			p.temp = append(p.temp, sT/sw)
		}
		p.weight = append(p.weight, sw)
		p.count = append(p.count, j-i)
		i = j
	}
	more := max(1, float64(len(p.time))/modelPoints)
	for i, w := range p.weight {
		m := modelShare * (p.raw[i] + noiseOffset)
		p.weight[i] = 1 / (1/w + m*m*more)
	}
	return p
}
