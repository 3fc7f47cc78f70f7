package fluid_test

import (
	"testing"

	"changeout/calc/property/helmholtz"
)

// collected is a fluid file of the collection of published parameters (the format of the open library CoolProp).
type collected struct {
	INFO struct{ NAME, CAS string }
	EOS  struct {
		GasConstant float64 `json:"gas_constant"`
		MolarMass   float64 `json:"molar_mass"`
		Ttriple     float64
		TMax        float64 `json:"T_max"`
		PMax        float64 `json:"p_max"`
		STATES      struct{ Reducing point }
		Alphar      []term
		Alpha0      []term
	}
	STATES      struct{ Critical point }
	ANCILLARIES map[string]struct{ N, T []float64 }
}

type point struct {
	T, P     float64
	Rhomolar float64
}

// term holds a block of terms. The upper-case names of the non-analytic term collide with lower-case ones for a decoder that
// ignores case, so every name is spelt.
type term struct {
	Type    string    `json:"type"`
	N       []float64 `json:"n"`
	T       []float64 `json:"t"`
	D       []float64 `json:"d"`
	L       []float64 `json:"l"`
	M       []float64 `json:"m"`
	G       []float64 `json:"g"`
	Eta     []float64 `json:"eta"`
	Beta    []float64 `json:"beta"`
	Gamma   []float64 `json:"gamma"`
	Epsilon []float64 `json:"epsilon"`
	LowerA  any       `json:"a"` // a number in an ideal term, a list in a residual one
	LowerB  []float64 `json:"b"`
	UpperA  []float64 `json:"A"`
	UpperB  []float64 `json:"B"`
	UpperC  []float64 `json:"C"`
	UpperD  []float64 `json:"D"`
	V       []float64 `json:"v"`
	Tcrit   float64   `json:"Tcrit"`
	A1      float64   `json:"a1"`
	A2      float64   `json:"a2"`
	T0      float64   `json:"T0"`
	CpOverR float64   `json:"cp_over_R"`
	C       []float64 `json:"c"`
}

func (c *collected) equation(t *testing.T) helmholtz.Equation {
	t.Helper()
	e := helmholtz.Equation{GasConstant: c.EOS.GasConstant, MolarMass: c.EOS.MolarMass, MinT: c.EOS.Ttriple, MaxT: c.EOS.TMax, MaxP: c.EOS.PMax,
		ReducingT: c.EOS.STATES.Reducing.T, ReducingRho: c.EOS.STATES.Reducing.Rhomolar,
		CriticalT: c.STATES.Critical.T, CriticalP: c.STATES.Critical.P, CriticalRho: c.STATES.Critical.Rhomolar}
	r := &e.Residual
	for _, b := range c.EOS.Alphar {
		for i, n := range b.N {
			switch b.Type {
			case "ResidualHelmholtzPower":
				r.Power = append(r.Power, helmholtz.Power{n, b.T[i], b.D[i], b.L[i]})
			case "ResidualHelmholtzExponential":
				r.Damped = append(r.Damped, helmholtz.Damped{n, b.T[i], b.D[i], b.L[i], b.G[i]})
			case "ResidualHelmholtzLemmon2005":
				r.Double = append(r.Double, helmholtz.Double{n, b.T[i], b.D[i], b.L[i], b.M[i]})
			case "ResidualHelmholtzGaussian":
				r.Gaussian = append(r.Gaussian, helmholtz.Gaussian{n, b.T[i], b.D[i], b.Eta[i], b.Beta[i], b.Gamma[i], b.Epsilon[i]})
			case "ResidualHelmholtzGaoB":
				// The collection stores η with the opposite sign.
				r.GaoB = append(r.GaoB, helmholtz.GaoB{n, b.T[i], b.D[i], -b.Eta[i], b.Beta[i], b.Gamma[i], b.Epsilon[i], b.LowerB[i]})
			case "ResidualHelmholtzNonAnalytic":
				a := b.LowerA.([]any)[i].(float64)
				r.NonAnalytic = append(r.NonAnalytic, helmholtz.NonAnalytic{n, a, b.LowerB[i], b.Beta[i], b.UpperA[i], b.UpperB[i], b.UpperC[i], b.UpperD[i]})
			default:
				t.Fatalf("%s: unknown term %s", c.INFO.NAME, b.Type)
			}
		}
	}
	d := &e.Ideal
	for _, b := range c.EOS.Alpha0 {
		switch b.Type {
		case "IdealGasHelmholtzLead":
			d.A1, d.A2 = b.A1, b.A2
		case "IdealGasHelmholtzLogTau":
			d.LogTau = b.LowerA.(float64)
		case "IdealGasHelmholtzEnthalpyEntropyOffset":
			d.OffsetA1, d.OffsetA2 = b.A1, b.A2
		case "IdealGasHelmholtzPower":
			for i, n := range b.N {
				d.Power = append(d.Power, helmholtz.IdealPower{n, b.T[i]})
			}
		case "IdealGasHelmholtzPlanckEinstein":
			for i, n := range b.N {
				d.Einstein = append(d.Einstein, helmholtz.Einstein{n, b.T[i]})
			}
		case "IdealGasHelmholtzPlanckEinsteinFunctionT":
			for i, n := range b.N {
				d.Einstein = append(d.Einstein, helmholtz.Einstein{n, b.V[i] / b.Tcrit})
			}
		case "IdealGasHelmholtzCP0Constant":
			d.HeatCapacityT0 = b.T0
			d.HeatCapacity = append(d.HeatCapacity, helmholtz.HeatCapacity{b.CpOverR, 0})
		case "IdealGasHelmholtzCP0PolyT":
			d.HeatCapacityT0 = b.T0
			for i, x := range b.C {
				d.HeatCapacity = append(d.HeatCapacity, helmholtz.HeatCapacity{x, b.T[i]})
			}
		default:
			t.Fatalf("%s: unknown ideal term %s", c.INFO.NAME, b.Type)
		}
	}
	terms := func(key string) (out []helmholtz.AuxiliaryTerm) {
		a := c.ANCILLARIES[key]
		for i, n := range a.N {
			out = append(out, helmholtz.AuxiliaryTerm{float32(n), float32(a.T[i])})
		}
		return out
	}
	e.VaporPressure.Terms, e.LiquidDensity.Terms, e.VaporDensity.Terms = terms("pS"), terms("rhoL"), terms("rhoV")
	return e
}
