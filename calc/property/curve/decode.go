package curve

import "math"

// maxTerms bounds the terms of a series.
const maxTerms = 24

// Kinds of series in the order in which a record holds them.
const (
	bubble = iota // ln p'
	liquid        // ln ρ'
	vapor         // ln (ρ" T/p')
	dew           // ln p"/p'
	kindCount
)

// A record of the data is
//
//	length of the name, name, length of the rest,
//	critical temperature in mK, lowest temperature in hundredths of K,
//	three or four series.
//
// A series is one byte, the number of terms plus 32 times (bits - 20), and the terms: whole numbers in units of 2^-bits, from
// which those of the typical refrigerant are taken off. Whole numbers are written seven bits a byte, the low ones first, the
// high bit set on all bytes but the last; terms have their sign in the lowest bit.

// TypicalBits is the unit of Typical: 2^-TypicalBits.
const TypicalBits = 24

type reader struct {
	s string
}

func (r *reader) byte() int {
	b := r.s[0]
	r.s = r.s[1:]
	return int(b)
}

func (r *reader) take(n int) string {
	t := r.s[:n]
	r.s = r.s[n:]
	return t
}

func (r *reader) number() int {
	u, shift := 0, 0
	for {
		b := r.byte()
		u |= (b & 127) << shift
		if b < 128 {
			return u
		}
		shift += 7
	}
}

// chebyshev is Σ c_k T_k(x).
type chebyshev [maxTerms]float64

func (r *reader) chebyshev(kind int) (c chebyshev) {
	head := r.byte()
	bits := 20 + head>>5
	unit := math.Ldexp(1, -bits)
	for k := range head & 31 {
		u := r.number()
		c[k] = float64(u>>1^-(u&1)+int(Typical[kind][k])>>(TypicalBits-bits)) * unit
	}
	return c
}

// powers brings the sum to powers of x, by T_k+1 = 2x T_k - T_k-1.
func (c *chebyshev) powers() (s series) {
	var last, this [maxTerms + 1]float64 // T_k-1 and T_k, the coefficient of x^j at j+1
	this[1] = 1
	for k, v := range c {
		if v != 0 {
			s.n = k/2 + 1
		}
		for j := 0; j <= k; j += 2 {
			s.even[j/2] += v * this[j+1]
			s.odd[j/2] += v * this[j+2]
		}
		var next [maxTerms + 1]float64
		for j := 1; j <= k+2 && j <= maxTerms; j++ {
			next[j] = 2*this[j-1] - last[j]
		}
		if k == 0 {
			next[2] = 1
		}
		last, this = this, next
	}
	return s
}

// Lookup gives the curves of a refrigerant by its designation as the catalogue writes it, "R-410A". Keep the result: the
// coefficients are unpacked at each call.
func Lookup(name string) (*Curve, bool) {
	r := reader{data}
	for r.s != "" {
		n := r.take(r.byte())
		record := reader{r.take(r.byte())}
		if n == name {
			return decode(n, record), true
		}
	}
	return nil, false
}

func decode(name string, r reader) *Curve {
	c := &Curve{Name: name}
	c.critical = float64(r.number()) / 1000
	c.TMin = float64(r.number()) / 100
	b, l, v := r.chebyshev(bubble), r.chebyshev(liquid), r.chebyshev(vapor)
	d := b
	reduced := MaxReducedTPure
	if r.s != "" {
		reduced = MaxReducedT
		ratio := r.chebyshev(dew)
		for k := range d {
			d[k] += ratio[k]
		}
	}
	for k := range v {
		v[k] += b[k]
	}
	c.bubble, c.liquid, c.vapor, c.dew = b.powers(), l.powers(), v.powers(), d.powers()
	c.TMax = reduced * c.critical
	low, high := math.Sqrt(1-c.TMin/c.critical), math.Sqrt(1-reduced)
	c.middle, c.half = (high+low)/2, (low-high)/2
	for k := range nodes {
		x := 2.0/(nodes-1)*float64(k) - 1
		c.bubbleAt[k], c.dewAt[k] = c.bubble.at(x), c.dew.at(x)
	}
	return c
}

// Upper ends of the curves as parts of the critical temperature, those of package refrigerant.
const (
	MaxReducedT     = 0.98
	MaxReducedTPure = 0.99
)
