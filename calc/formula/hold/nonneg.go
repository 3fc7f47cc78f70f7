package hold

import "math"

// program is the convex problem
//
//	minimise  x'Gx - 2 b'x   with x[j] >= 0 unless free[j]
//
// in which G is the weighted normal matrix of the columns, with unit diagonal before priors. It is solved by the active-set
// method of Lawson and Hanson (Solving Least Squares Problems, 1974, chapter 23) on the normal equations, with warm
// start. Columns that depend on those already in use are passed over.
type program struct {
	n    int
	g    []float64 // n × n
	free []bool
	off  []bool // columns left out

	inUse []int
	chol  []float64
	z, w  []float64
}

func newProgram(n int) *program {
	return &program{n: n, g: make([]float64, n*n), free: make([]bool, n), off: make([]bool, n),
		chol: make([]float64, n*n), z: make([]float64, n), w: make([]float64, n)}
}

// solve improves x in place and returns x'Gx - 2b'x at the solution. x must satisfy the sign constraints on entry.
func (q *program) solve(b, x []float64) float64 {
	n := q.n
	var blockedStore [96]bool
	blocked := blockedStore[:n]
	q.inUse = q.inUse[:0]
	for j := range n {
		if q.off[j] {
			x[j] = 0
			continue
		}
		if q.free[j] || x[j] > 0 {
			q.inUse = append(q.inUse, j)
		}
	}
	for range 4 * n {
		q.inner(b, x, blocked)
		// The column that would lower the objective most: its gradient w against what of it the columns in use leave over. A gain
		// below 0.01 changes no bound.
		best, pick := 0.01, -1
		for j := range n {
			if q.off[j] || q.free[j] || blocked[j] || x[j] > 0 {
				continue
			}
			w := b[j]
			for _, k := range q.inUse {
				w -= q.g[j*n+k] * x[k]
			}
			if w <= 1e-9 {
				continue
			}
			left := q.g[j*n+j]
			for i, k := range q.inUse {
				s := q.g[k*n+j]
				for l := range i {
					s -= q.chol[i*n+l] * q.z[l]
				}
				s /= q.chol[i*n+i]
				q.z[i] = s
				left -= s * s
			}
			if gain := w * w / max(left, 1e-12); gain > best {
				best, pick = gain, j
			}
		}
		if pick < 0 {
			break
		}
		q.inUse = append(q.inUse, pick)
		if !q.factor() {
			blocked[pick] = true
			q.inUse = q.inUse[:len(q.inUse)-1]
		}
	}
	f := 0.0
	for _, j := range q.inUse {
		s := -2 * b[j]
		for _, k := range q.inUse {
			s += q.g[j*n+k] * x[k]
		}
		f += s * x[j]
	}
	return f
}

// inner moves x to the least-squares solution on the columns in use, dropping those that would turn negative.
func (q *program) inner(b, x []float64, blocked []bool) {
	for range 2*q.n + 2 {
		for !q.factor() {
			// A dependent column: drop the last constrained one.
			k := len(q.inUse) - 1
			for k > 0 && q.free[q.inUse[k]] {
				k--
			}
			blocked[q.inUse[k]] = true
			x[q.inUse[k]] = 0
			q.inUse = append(q.inUse[:k], q.inUse[k+1:]...)
			if len(q.inUse) == 0 {
				return
			}
		}
		q.back(b)
		alpha, fine := 1.0, true
		for i, j := range q.inUse {
			if !q.free[j] && q.z[i] <= 0 {
				fine = false
				if a := x[j] / (x[j] - q.z[i]); a < alpha {
					alpha = a
				}
			}
		}
		if fine {
			for i, j := range q.inUse {
				x[j] = q.z[i]
			}
			return
		}
		kept := q.inUse[:0]
		for i, j := range q.inUse {
			x[j] += alpha * (q.z[i] - x[j])
			if !q.free[j] && (x[j] <= 1e-12 || (q.z[i] <= 0 && alpha == 0)) {
				x[j] = 0
				continue
			}
			kept = append(kept, j)
		}
		q.inUse = kept
	}
}

// factor computes the Cholesky factor on the columns in use; false when they depend on each other.
func (q *program) factor() bool {
	m, n := len(q.inUse), q.n
	for i := range m {
		gi := q.inUse[i] * n
		d := q.g[gi+q.inUse[i]]
		for j := range i {
			s := q.g[gi+q.inUse[j]]
			for k := range j {
				s -= q.chol[i*n+k] * q.chol[j*n+k]
			}
			s /= q.chol[j*n+j]
			q.chol[i*n+j] = s
		}
		r := d
		for k := range i {
			r -= q.chol[i*n+k] * q.chol[i*n+k]
		}
		if !(r > 2e-12*d) {
			return false
		}
		q.chol[i*n+i] = math.Sqrt(r)
	}
	return true
}

func (q *program) back(b []float64) {
	m, n := len(q.inUse), q.n
	for i := range m {
		s := b[q.inUse[i]]
		for k := range i {
			s -= q.chol[i*n+k] * q.z[k]
		}
		q.z[i] = s / q.chol[i*n+i]
	}
	for i := m - 1; i >= 0; i-- {
		s := q.z[i]
		for k := i + 1; k < m; k++ {
			s -= q.chol[k*n+i] * q.z[k]
		}
		q.z[i] = s / q.chol[i*n+i]
	}
}
