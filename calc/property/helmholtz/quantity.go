package helmholtz

// Quantity names a molar property by which a state can be asked for at a given pressure.
type Quantity uint8

const (
	Enthalpy Quantity = iota // J/mol
	Entropy                  // J/(mol K)
	Volume                   // m³/mol
)
