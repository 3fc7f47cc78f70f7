package mixture

import "changeout/calc/property/helmholtz"

const maxN = helmholtz.MaxComponents

// reducing is one GERG reducing function as a homogeneous form of degree two,
//
//	Y(x) = Σ x_i² Y_i + Σ_{i<j} 2 c_ij x_i x_j (x_i + x_j)/(β² x_i + x_j),   c = βγY_ij.
//
// As a form of degree two it extends from mole fractions to densities (Y(ρ) = ρ² Y(x)), which makes the derivatives with
// respect to densities short.
type reducing struct {
	y     [maxN]float64
	beta2 [maxN][maxN]float64 // β², for i<j
	c     [maxN][maxN]float64 // 2βγY_ij, for i<j
}

// set stores the pair i<j from β and γY_ij.
func (r *reducing) set(i, j int, beta, gammaY float64) {
	r.beta2[i][j] = beta * beta
	r.c[i][j] = 2 * beta * gammaY
}

// reduced is the form with its derivatives.
type reduced struct {
	y    float64
	grad [maxN]float64
	hess [maxN][maxN]float64 // upper triangle and diagonal
}

func (r *reducing) value(n int, x *[maxN]float64, out *reduced) {
	out.y = 0
	for i := 0; i < n; i++ {
		out.y += x[i] * x[i] * r.y[i]
		out.grad[i] = 2 * x[i] * r.y[i]
		out.hess[i][i] = 2 * r.y[i]
	}
	for i := 0; i < n; i++ {
		for j := i + 1; j < n; j++ {
			a, b, b2, c := x[i], x[j], r.beta2[i][j], r.c[i][j]
			// f = u/q with u = ab(a+b), q = β²a + b
			q := b2*a + b
			f := a * b * (a + b) / q
			fa := (2*a*b + b*b - f*b2) / q
			fb := (a*a + 2*a*b - f) / q
			out.y += c * f
			out.grad[i] += c * fa
			out.grad[j] += c * fb
			out.hess[i][i] += c * (2*b - 2*fa*b2) / q
			out.hess[j][j] += c * (2*a - 2*fb) / q
			out.hess[i][j] = c * (2*(a+b) - fa - fb*b2) / q
		}
	}
}
