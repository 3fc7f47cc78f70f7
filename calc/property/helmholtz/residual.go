package helmholtz

import "math"

// Residual is αʳ as a sum over the term kinds of the literature. Absent kinds are nil.
type Residual struct {
	Power       []Power
	Damped      []Damped
	Double      []Double
	Gaussian    []Gaussian
	GaoB        []GaoB
	NonAnalytic []NonAnalytic
}

// Power is the polynomial (L = 0) or exponential term
//
//	n τ^t δ^d exp(-δ^l),   the exponential absent for l = 0;  d and l are whole numbers below 16.
//
// Terms are arrays, not structures, so that a table of coefficients reads like the table in the paper.
type Power [4]float64 // n, t, d, l

// Damped is the exponential term with a coefficient in the exponent, n τ^t δ^d exp(-g δ^l).
type Damped [5]float64 // n, t, d, l, g

// Double is the term with exponentials in both variables, n τ^t δ^d exp(-δ^l) exp(-τ^m), a factor being absent where its
// exponent is zero. Form: Lemmon and Jacobsen, J. Phys. Chem. Ref. Data 34 (2005) 69, equation for R-125.
type Double [5]float64 // n, t, d, l, m

// Gaussian is the bell-shaped term n τ^t δ^d exp(-η (δ-ε)² - β (τ-γ)²).
type Gaussian [7]float64 // n, t, d, η, β, γ, ε

// GaoB is the second bell-shaped term of Gao et al., J. Phys. Chem. Ref. Data 49 (2020) 013102 (ammonia),
//
//	n τ^t δ^d exp(-η (δ-ε)² + 1/(β (τ-γ)² + b)).
type GaoB [8]float64 // n, t, d, η, β, γ, ε, b

// NonAnalytic is the term of Span and Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509, table 32, for the critical region,
//
//	n Δ^b δ exp(-C (δ-1)² - D (τ-1)²),
//	Δ = θ² + B ((δ-1)²)^a,   θ = (1-τ) + A ((δ-1)²)^(1/(2β)).
type NonAnalytic [8]float64 // n, a, b, β, A, B, C, D

// maxPower bounds the whole exponents of δ: 15 in the equation for water, the largest in use.
const maxPower = 16

// Isotherm keeps what depends on τ alone, so that the densities of an iteration at one temperature share it.
// The zero value is ready; it grows to the size of the equation on first use and then never allocates.
type Isotherm struct {
	tau, lnTau float64
	factor     []float64 // n τ^t … of Power, Damped and Double terms in this order
}

// Isochore keeps what depends on δ alone and is the same for every equation of a mixture.
type Isochore struct {
	delta, lnDelta float64           // the logarithm is taken when a term needs it, and 0 until then
	pow            [maxPower]float64 // δ^k
	decay          [maxDecay]float64 // exp(-δ^l), l ≥ 1; 0 until a term needs it
}

// maxDecay bounds the exponents l of the exponential terms: 6 in the equations for water and argon.
const maxDecay = 8

// Set makes the isochore hold δ > 0.
func (c *Isochore) Set(delta float64) {
	c.delta, c.lnDelta = delta, 0
	c.pow[0], c.pow[1] = 1, delta
	for k := 2; k < maxPower; k += 2 {
		c.pow[k] = c.pow[k/2] * c.pow[k/2]
		c.pow[k+1] = c.pow[k] * delta
	}
	c.decay = [maxDecay]float64{}
}

// Prepare makes the isotherm hold τ, whose logarithm the caller has at hand. A second call with the same τ costs nothing.
func (r *Residual) Prepare(iso *Isotherm, tau, lnTau float64) {
	if iso.tau == tau && iso.factor != nil {
		return
	}
	if iso.factor == nil {
		iso.factor = make([]float64, len(r.Power)+len(r.Damped)+len(r.Double))
	}
	iso.tau, iso.lnTau = tau, lnTau
	f := iso.factor
	for i := range r.Power {
		f[i] = r.Power[i][0] * Exp(r.Power[i][1]*iso.lnTau)
	}
	f = f[len(r.Power):]
	for i := range r.Damped {
		f[i] = r.Damped[i][0] * Exp(r.Damped[i][1]*iso.lnTau)
	}
	f = f[len(r.Damped):]
	for i := range r.Double {
		n, t, m := r.Double[i][0], r.Double[i][1], r.Double[i][4]
		u := t * iso.lnTau
		if m != 0 {
			u -= Exp(m * iso.lnTau)
		}
		f[i] = n * Exp(u)
	}
}

// Evaluate sets out to αʳ and its derivatives at the isotherm's τ and the isochore's δ.
func (r *Residual) Evaluate(iso *Isotherm, chore *Isochore, out *Derivatives) {
	delta, pow := chore.delta, &chore.pow
	// The polynomial and exponential terms are most of every equation: their sums are kept in plain variables, which the
	// compiler holds in registers, as it does not hold the fields of a structure.
	var sA, sD, sT, sDD, sDT, sTT float64
	f := iso.factor[:len(r.Power)]
	for i := range r.Power {
		c := &r.Power[i]
		t, d := c[1], c[2]
		v := f[i] * pow[int(d)&(maxPower-1)]
		vt := v * t
		if c[3] == 0 {
			sA += v
			sD += v * d
			sDD += v * d * (d - 1)
			sT += vt
			sDT += vt * d
			sTT += vt * (t - 1)
			continue
		}
		l := int(c[3]) & (maxDecay - 1)
		if chore.decay[l] == 0 {
			chore.decay[l] = Exp(-pow[l])
		}
		k, lg := chore.decay[l], c[3]*pow[l]
		e := d - lg
		v *= k
		vt *= k
		sA += v
		sD += v * e
		sDD += v * (e*(e-1) - c[3]*lg)
		sT += vt
		sDT += vt * e
		sTT += vt * (t - 1)
	}
	s := Derivatives{sA, sD, sT, sDD, sDT, sTT}
	f = iso.factor
	f = f[len(r.Power):]
	for i := range r.Damped {
		t, d, l := r.Damped[i][1], r.Damped[i][2], r.Damped[i][3]
		g := r.Damped[i][4] * pow[int(l)]
		s.decaying(f[i]*pow[int(d)]*Exp(-g), d, l, g, t, t*(t-1))
	}
	f = f[len(r.Damped):]
	for i := range r.Double {
		t, d, l, m := r.Double[i][1], r.Double[i][2], r.Double[i][3], r.Double[i][4]
		v := f[i] * pow[int(d)]
		var g float64
		if l != 0 {
			g = pow[int(l)]
			v *= Exp(-g)
		}
		lt, ltt := t, t*(t-1)
		if m != 0 {
			h := m * Exp(m*iso.lnTau) // τ d(τ^m)/dτ
			lt -= h
			ltt = lt*lt - t - (m-1)*h
		}
		s.decaying(v, d, l, g, lt, ltt)
	}
	if len(r.Gaussian)+len(r.GaoB) > 0 {
		if chore.lnDelta == 0 {
			chore.lnDelta = math.Log(delta)
		}
		tau, lnDelta := iso.tau, chore.lnDelta
		for i := range r.Gaussian {
			c := &r.Gaussian[i]
			n, t, d, eta, beta := c[0], c[1], c[2], c[3], c[4]
			x, y := delta-c[6], tau-c[5]
			v := n * Exp(t*iso.lnTau+d*lnDelta-eta*x*x-beta*y*y)
			s.bell(v, d-2*eta*delta*x, -d-2*eta*delta*delta, t-2*beta*tau*y, -t-2*beta*tau*tau)
		}
		for i := range r.GaoB {
			c := &r.GaoB[i]
			n, t, d, eta, beta := c[0], c[1], c[2], c[3], c[4]
			x, y := delta-c[6], tau-c[5]
			q := 1 / (beta*y*y + c[7])
			q1 := -2 * beta * y * q * q       // dq/dτ
			q2 := -2*beta*q*q - 4*beta*y*q*q1 // d²q/dτ²
			v := n * Exp(t*iso.lnTau+d*lnDelta-eta*x*x+q)
			s.bell(v, d-2*eta*delta*x, -d-2*eta*delta*delta, t+tau*q1, -t+tau*tau*q2)
		}
	}
	for i := range r.NonAnalytic {
		r.NonAnalytic[i].add(iso.tau, delta, &s)
	}
	*out = s
}

// decaying adds a term v = c δ^d exp(-g(δ)) with g = const·δ^l; lt and ltt are τ v_τ / v and τ² v_ττ / v.
func (s *Derivatives) decaying(v, d, l, g, lt, ltt float64) {
	e := d - l*g
	s.A += v
	s.D += v * e
	s.DD += v * (e*(e-1) - l*l*g)
	s.T += v * lt
	s.DT += v * e * lt
	s.TT += v * ltt
}

// bell adds a term v with ld = δ ∂ln v/∂δ, ldd = δ² ∂²ln v/∂δ², and the same for τ.
func (s *Derivatives) bell(v, ld, ldd, lt, ltt float64) {
	s.A += v
	s.D += v * ld
	s.DD += v * (ld*ld + ldd)
	s.T += v * lt
	s.DT += v * ld * lt
	s.TT += v * (lt*lt + ltt)
}

// add evaluates the non-analytic term. Derivatives as in Span and Wagner (1996), table 32.
func (c *NonAnalytic) add(tau, delta float64, s *Derivatives) {
	n, la, b, beta, ua, ub, uc, ud := c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7]
	x, y := delta-1, tau-1
	// The bell has width 0.06 and less; 80 in the exponent is 1e-35 of the term.
	u := uc*x*x + ud*y*y
	if u > 80 {
		return
	}
	// At δ = 1 exactly the second derivative is not defined; the nearest state stands in for it.
	if x > -1e-12 && x < 1e-12 {
		x = 1e-12
	}
	psi := Exp(-u)
	psiD, psiT := -2*uc*x*psi, -2*ud*y*psi
	psiDD := (2*uc*x*x - 1) * 2 * uc * psi
	psiTT := (2*ud*y*y - 1) * 2 * ud * psi
	psiDT := 4 * uc * ud * x * y * psi

	lnx2 := math.Log(x * x)
	root := Exp(lnx2 * (1/(2*beta) - 1)) // ((δ-1)²)^(1/(2β)-1)
	edge := Exp(lnx2 * (la - 1))         // ((δ-1)²)^(a-1)
	theta := -y + ua*root*x*x
	big := theta*theta + ub*edge*x*x
	if !(big > 0) {
		return // only at the critical point itself, where the term vanishes
	}
	slope := ua*theta*2/beta*root + 2*ub*la*edge // dΔ/dδ divided by (δ-1)
	bigD := x * slope
	bigDD := slope + 4*ub*la*(la-1)*edge + 2*ua*ua/(beta*beta)*root*root*x*x +
		ua*theta*4/beta*(1/(2*beta)-1)*root

	p := Exp(b * math.Log(big)) // Δ^b
	p1 := b * p / big           // b Δ^(b-1)
	p2 := p1 * (b - 1) / big    // b (b-1) Δ^(b-2)
	pD, pDD := p1*bigD, p1*bigDD+p2*bigD*bigD
	pT, pTT := -2*theta*p1, 2*p1+4*theta*theta*p2
	pDT := -ua*2/beta*p1*x*root - 2*theta*p2*bigD

	s.A += n * p * delta * psi
	s.D += n * delta * (p*(psi+delta*psiD) + pD*delta*psi)
	s.DD += n * delta * delta * (p*(2*psiD+delta*psiDD) + 2*pD*(psi+delta*psiD) + pDD*delta*psi)
	s.T += n * tau * delta * (pT*psi + p*psiT)
	s.TT += n * tau * tau * delta * (pTT*psi + 2*pT*psiT + p*psiTT)
	s.DT += n * tau * delta * (p*(psiT+delta*psiDT) + delta*pD*psiT + pT*(psi+delta*psiD) + pDT*delta*psi)
}
