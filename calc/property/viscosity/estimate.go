package viscosity

import (
	"math"

	"changeout/calc/property/helmholtz"
)

// EstimateSource is the key of the publication behind Estimate.
const EstimateSource = "martinek-jced-2025"

const (
	boltzmann = 1.380649e-23  // J/K, exact
	avogadro  = 6.02214076e23 // 1/mol, exact
)

// Estimate gives the viscosity, Pa s, of a fluid or blend by residual entropy scaling: fluids with their mole fractions z at
// temperature T, K, density rho, mol/m³, and residual entropy s = -s_r/R, which must belong to that temperature and density.
// Above the viscosity of the dilute gas it is
//
//	η - η⁰ = (ρN)^(2/3) √(m k T) / s^(2/3) (exp(n₁ s^1.8 + n₂ s^2.4 + n₃ s^2.8) - 1),
//
// ρN in molecules per m³ and m the mean mass of a molecule. The n of a blend are the mole-fraction means of its components;
// η⁰ of a blend follows Wilke, J. Chem. Phys. 18 (1950) 517. Source: V. Martinek, I. Bell, R. Herzog, M. Richter and X. Yang,
// J. Chem. Eng. Data 70 (2025) 727; of an earlier form the same group says that 68 % of the data lie within 3.2 % for pure
// fluids and 8.0 % for mixtures (X. Yang et al., Int. J. Thermophys. 43 (2022) 183, abstract).
//
// Errors: ErrUnknown where a component has no parameters; ErrRange for T outside the ranges of the components, for a negative
// density, for NaN, and for a cold liquid where the fitted curve flattens as no liquid does: beyond s = 2 the exponent must
// rise by 0.4 or more for each unit of s. That ends R-32 at -42 °C, where the estimate is 4 % below a measurement and falls
// away from the truth further down.
func Estimate(fluids []*helmholtz.Equation, z []float64, T, rho, s float64) (float64, error) {
	var gas [helmholtz.MaxComponents]float64
	var n [3]float64
	var mean float64
	inside := rho >= 0 && s < 100
	for i, f := range fluids {
		p := find(f.Name)
		if p == nil {
			return 0, ErrUnknown
		}
		inside = inside && T >= float64(p.minT) && T <= float64(p.maxT)
		for _, c := range p.dilute {
			gas[i] = gas[i]*T + float64(c)
		}
		for k, c := range p.n {
			n[k] += z[i] * float64(c)
		}
		mean += z[i] * f.MolarMass
	}
	if !inside {
		return 0, ErrRange
	}
	var v float64
	for i, f := range fluids {
		var sum float64
		for j, g := range fluids {
			r := g.MolarMass / f.MolarMass
			w := 1 + math.Sqrt(gas[i]/gas[j]*math.Sqrt(r))
			sum += z[j] * w * w / math.Sqrt(8*(1+1/r))
		}
		v += z[i] * gas[i] / sum
	}
	v *= 1e-6
	if s > 0 {
		ln := math.Log(s)
		var up, slope float64
		for k, e := range [3]float64{1.8, 2.4, 2.8} {
			t := n[k] * math.Exp(e*ln)
			up += t
			slope += e * t
		}
		if s > 2 && !(slope >= 0.4*s) {
			return 0, ErrRange
		}
		v += (math.Exp(up) - 1) * math.Exp(2.0/3*math.Log(rho*avogadro/s)) * math.Sqrt(mean/avogadro*boltzmann*T)
	}
	return checked(v)
}

func find(name string) *parameters {
	for i := range table {
		if table[i].name == name {
			return &table[i]
		}
	}
	return nil
}
