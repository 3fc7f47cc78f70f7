package oil

// Shares of the factory charge, drained from a compressor, outside of which
// the drained amount is no measure of what belongs in it: common-practice.
const (
	LittleOil = 0.5
	MuchOil   = 1.2
)

// JugError is what a measuring jug and the film left in a shell leave open,
// as a share of the factory charge: common-practice.
const JugError = 0.05

// Balance returns the oil, m³, that a new compressor must hold so that the
// circuit holds what it held: all that left it, from the compressor and from
// the vessels. Source: practice-98.
func Balance(drained, vessels float64) float64 { return drained + vessels }

// Washed returns the same for a circuit that was washed clean of its oil: the
// factory charge, the shares of its vessels and what the maker adds for
// length. Source: common-practice; the maker's table governs.
func Washed(factory, shares, length float64) float64 { return factory + shares + length }
