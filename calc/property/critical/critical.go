// Package critical finds the vapour-liquid critical point of a mixture of given composition.
//
// At a critical point the Hessian of the Helmholtz energy density in the component densities, scaled to
//
//	M_ij = δ_ij + (ρ_i ρ_j)^½ ∂²F/∂ρ_i∂ρ_j,
//
// has a zero eigenvalue, and that eigenvalue has no slope along its own eigenvector. This is the criterion of Heidemann and
// Khalil, AIChE Journal 26 (1980) 769, written for densities (citation from memory).
package critical

import (
	"errors"
	"math"

	"changeout/calc/property/helmholtz"
)

// Model is what the search may know of a substance.
type Model interface {
	Len() int
	GasConstant() float64
	Evaluate(*helmholtz.Phase)
}

// ErrNotFound says that no critical point lies in the region searched.
var ErrNotFound = errors.New("critical: no critical point found")

// Point is a critical point: K, Pa, mol/m³.
type Point struct{ T, P, Rho float64 }

const maxN = helmholtz.MaxComponents

// Find looks for the critical point with density between 0.6 and 1.6 of rhoRef, mol/m³, and temperature between 0.7 and
// 1.3 of tRef, K; both are best the reducing values of the mixture. Of several, the one at the lowest density is given.
func Find(m Model, z []float64, tRef, rhoRef float64) (Point, error) {
	f := finder{model: m, n: m.Len(), tLow: 0.7 * tRef, tHigh: 1.3 * tRef}
	copy(f.z[:], z)
	const steps = 50
	r0 := 0.6 * rhoRef
	_, s0, ok0 := f.spinodal(r0)
	for i := 1; i <= steps; i++ {
		r1 := rhoRef * (0.6 + float64(i)/steps)
		_, s1, ok1 := f.spinodal(r1)
		if ok0 && ok1 && s0 != 0 && (s0 < 0) != (s1 < 0) {
			return f.refine(r0, r1, s0)
		}
		r0, s0, ok0 = r1, s1, ok1
	}
	return Point{}, ErrNotFound
}

type finder struct {
	model       Model
	n           int
	z           [maxN]float64
	tLow, tHigh float64
	phase       helmholtz.Phase
}

// refine bisects in density between r0, where the slope has the sign of s0, and r1.
func (f *finder) refine(r0, r1, s0 float64) (Point, error) {
	for range 60 {
		r := (r0 + r1) / 2
		_, s, ok := f.spinodal(r)
		if !ok {
			return Point{}, ErrNotFound
		}
		if (s < 0) == (s0 < 0) {
			r0 = r
		} else {
			r1 = r
		}
	}
	t, _, ok := f.spinodal((r0 + r1) / 2)
	if !ok {
		return Point{}, ErrNotFound
	}
	var v [maxN]float64
	rho := (r0 + r1) / 2
	f.set(t, rho, &v, 0)
	return Point{T: t, P: rho * f.model.GasConstant() * t * (1 + f.phase.Total.D), Rho: rho}, nil
}

// spinodal gives the highest temperature at which the mixture of density rho ceases to be stable against small
// fluctuations, and the slope of the eigenvalue along its eigenvector there.
func (f *finder) spinodal(rho float64) (T, slope float64, ok bool) {
	var v [maxN]float64
	high := f.tHigh
	low := high
	for low > f.tLow {
		low -= 0.01 * f.tHigh
		f.set(low, rho, &v, 0)
		if l, _ := f.eigen(); l < 0 {
			ok = true
			break
		}
		high = low
	}
	if !ok {
		return 0, 0, false
	}
	for range 60 {
		T = (low + high) / 2
		f.set(T, rho, &v, 0)
		if l, _ := f.eigen(); l < 0 {
			low = T
		} else {
			high = T
		}
	}
	f.set(T, rho, &v, 0)
	_, v = f.eigen()
	// Central difference; the eigenvalue is smooth and of order one, so 1e-4 leaves some 1e-8.
	const h = 1e-4
	f.set(T, rho, &v, h)
	up, _ := f.eigen()
	f.set(T, rho, &v, -h)
	down, _ := f.eigen()
	return T, (up - down) / (2 * h), true
}

// set evaluates the phase at T and densities z ρ shifted by h along the scaled direction v.
func (f *finder) set(T, rho float64, v *[maxN]float64, h float64) {
	f.phase.T = T
	for i := 0; i < f.n; i++ {
		r := f.z[i] * rho
		f.phase.Rho[i] = r + h*math.Sqrt(r*rho)*v[i]
	}
	f.model.Evaluate(&f.phase)
}

// eigen gives the smallest eigenvalue of M with its unit eigenvector, its sum of components positive, by Jacobi rotations.
func (f *finder) eigen() (float64, [maxN]float64) {
	n := f.n
	var a, q [maxN][maxN]float64
	for i := 0; i < n; i++ {
		for j := 0; j < n; j++ {
			a[i][j] = math.Sqrt(f.phase.Rho[i]*f.phase.Rho[j]) * f.phase.Hess[i][j]
		}
		a[i][i]++
		q[i][i] = 1
	}
	for range 30 {
		var off float64
		for i := 0; i < n; i++ {
			for j := i + 1; j < n; j++ {
				off += a[i][j] * a[i][j]
			}
		}
		if off < 1e-30 {
			break
		}
		for i := 0; i < n; i++ {
			for j := i + 1; j < n; j++ {
				if a[i][j] == 0 {
					continue
				}
				theta := (a[j][j] - a[i][i]) / (2 * a[i][j])
				t := 1 / (math.Abs(theta) + math.Sqrt(theta*theta+1))
				if theta < 0 {
					t = -t
				}
				c := 1 / math.Sqrt(t*t+1)
				s := t * c
				for k := 0; k < n; k++ {
					a[k][i], a[k][j] = c*a[k][i]-s*a[k][j], s*a[k][i]+c*a[k][j]
				}
				for k := 0; k < n; k++ {
					a[i][k], a[j][k] = c*a[i][k]-s*a[j][k], s*a[i][k]+c*a[j][k]
					q[k][i], q[k][j] = c*q[k][i]-s*q[k][j], s*q[k][i]+c*q[k][j]
				}
			}
		}
	}
	best := 0
	for i := 1; i < n; i++ {
		if a[i][i] < a[best][best] {
			best = i
		}
	}
	var v [maxN]float64
	var sum float64
	for i := 0; i < n; i++ {
		v[i] = q[i][best]
		sum += v[i] * math.Sqrt(f.phase.Rho[i])
	}
	if sum < 0 {
		for i := range v {
			v[i] = -v[i]
		}
	}
	return a[best][best], v
}
