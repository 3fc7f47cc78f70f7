package hold

import (
	"math"
)

// sampleRows bounds the work on long logs: display step and scatter are taken from about so many rows, evenly spread.
const sampleRows = 2000

// displaySteps finds the display step (Pa) at each row. Gauges with a logarithmic sensor show coarser steps at higher
// pressure, so the readings are taken in groups of similar pressure. In each the step is the largest of the usual ones (1, 2, 5, 10,
// 20, 25, 50 … in micron or in Pa) of which all readings are multiples. Zero means that no step was found.
func displaySteps(p []float64) []float64 {
	n := len(p)
	stride := 1 + n/sampleRows
	sorted := make([]float64, 0, n/stride+1)
	for i := 0; i < n; i += stride {
		sorted = append(sorted, p[i])
	}
	sortFloats(sorted)
	distinct := distinctFloats(sorted)
	whole := lattice(distinct)
	if len(distinct) < 3 {
		whole = min(whole, stepFallback)
	}
	groups := min(6, max(1, len(distinct)/8))
	var top, step [6]float64
	for g := range groups {
		from, to := g*len(distinct)/groups, (g+1)*len(distinct)/groups
		top[g], step[g] = distinct[to-1], whole
		if to-from >= 3 {
			step[g] = max(whole, lattice(distinct[from:to]))
		}
	}
	steps := make([]float64, n)
	for i, v := range p {
		g := 0
		for g < groups-1 && v > top[g] {
			g++
		}
		steps[i] = step[g]
	}
	return steps
}

var usualSteps = [...]float64{1000, 500, 250, 200, 100, 50, 25, 20, 10, 5, 2.5, 2, 1, 0.5, 0.2, 0.1}

// lattice returns the largest usual step of which every value is a multiple, not above the smallest gap between the values.
func lattice(sorted []float64) float64 {
	gap := math.Inf(1)
	for i := 1; i < len(sorted); i++ {
		gap = min(gap, sorted[i]-sorted[i-1])
	}
	found := 0.0
	for _, unit := range [...]float64{micron, 1} {
		for _, s := range usualSteps {
			s *= unit
			if s <= found || s > gap*1.0001 {
				continue
			}
			all := true
			for _, v := range sorted {
				k := v / s
				if math.Abs(k-math.Round(k)) > 1e-5*(1+1e-4*k) {
					all = false
					break
				}
			}
			if all {
				found = s
				break
			}
		}
	}
	return found
}

// scatter estimates the relative noise k of the readings, with the standard deviation of one reading k (p + 100 micron). Each
// inner reading is compared with the straight line between its neighbours; the median makes it robust against bends and
// outliers, and what the display step alone would scatter is taken off. The estimate is pooled with noisePrior, which counts as
// noiseBelief readings. With fewer rows than noiseRows the differences show the curve as much as the scatter: then they can
// only lower the prior.
func scatter(t, p, steps []float64) float64 {
	n := len(t)
	stride := 1 + n/sampleRows
	e := make([]float64, 0, n/stride+1)
	for i := 1; i+1 < n; i += stride {
		a := (t[i] - t[i-1]) / (t[i+1] - t[i-1])
		d := p[i] - (1-a)*p[i-1] - a*p[i+1]
		e = append(e, math.Abs(d)/math.Sqrt(1+a*a+(1-a)*(1-a))/(p[i]+noiseOffset))
	}
	m := float64(len(e))
	k := quantile(e, 0.5) / 0.6745
	shown := steps[n/2] / (p[n/2] + noiseOffset)
	k = math.Sqrt(max(0, k*k-shown*shown/12))
	if n < noiseRows {
		k = min(k, noisePrior)
	}
	k = math.Sqrt((noiseBelief*noisePrior*noisePrior + m*k*k) / (noiseBelief + m))
	return max(k, noiseLeast)
}

// readingVariance returns the variance (Pa²) of each reading: noise and display step. Readings that repeat the same shown value share
// one rounding error, so a run of r equal values counts as six independent ones at most: then a dead flat log of any number of
// rows bounds the change by about one step.
func readingVariance(p, steps []float64, k float64) []float64 {
	n := len(p)
	v := make([]float64, n)
	for i := 0; i < n; {
		j := i
		for j < n && p[j] == p[i] {
			j++
		}
		run := max(1, float64(j-i)/6)
		for ; i < j; i++ {
			s := k * (p[i] + noiseOffset)
			v[i] = s*s + steps[i]*steps[i]/12*run
		}
	}
	return v
}
