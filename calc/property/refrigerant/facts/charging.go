package facts

import "changeout/calc/property/refrigerant"

// Phase is how refrigerant leaves the cylinder.
type Phase string

const (
	LiquidOnly   Phase = "liquid only"
	LiquidBetter Phase = "liquid is safer"
	Either       Phase = "liquid or vapour"
)

// charging says in which phase to take the refrigerant from its cylinder. Vapour above a zeotropic liquid is richer in the components that
// boil first, so a vapour charge changes both the system and what is left in the cylinder. Small glide does not change that rule.
func charging(name string, k Kind) (Phase, Statement) {
	switch k {
	case Zeotrope:
		return LiquidOnly, Statement{"Take it from the cylinder as liquid: the vapour has another composition. Throttle the liquid before a running compressor can draw it in.",
			refrigerant.Secondary, []string{"blend-transfer", "common-practice"}}
	case Azeotrope:
		return LiquidBetter, Statement{"An azeotrope keeps its composition nearly: liquid or vapour will do, and liquid is the safer habit for any blend.",
			refrigerant.Secondary, []string{"oil-guide-608", "common-practice"}}
	}
	if name == "R-744" {
		// The triple point of the equation of state lies at 518 kPa absolute, 417 kPa gauge at sea level.
		return Either, Statement{"Begin with vapour: below 4.2 bar gauge (60 psi) liquid turns to dry ice and blocks the lines. Then liquid or vapour.",
			refrigerant.Secondary, []string{"span-jpcrd-1996", "common-practice"}}
	}
	return Either, Statement{"Liquid or vapour: one substance has one composition. Never let liquid reach a running compressor.", "", []string{"common-practice"}}
}
