// Package airside holds what happens on the air side of a cooling coil: the
// heat taken from the air, and a model of coil and compressor that says what
// less air does to the evaporating temperature.
//
// SI throughout: K, Pa absolute, W, kg/s of dry air. No labels, no units, no
// sentences.
//
// The model: heat passes from the air to a surface of one mean temperature,
// and from there through tube and boiling film to the refrigerant,
//
//	Q = m (1 − b) (h on − h surface),   Q = (T surface − T evaporating)/R
//
// with the bypass factor b = e^−NTU. NTU follows the airflow f,
// NTU = NTU0 (f/f0)^(0.8 − 1), and R stays. A compressor of fixed displacement
// takes Q in proportion to ρ" (h" − h liquid).
//
// What it leaves out: the superheated end of the coil, dirt as insulation,
// uneven air, and that the condensing pressure and the volumetric efficiency of
// the compressor change. With them capacity falls a little less with airflow
// than computed; the test holds it against published curves.
package airside

import (
	"errors"
	"math"

	"changeout/calc/property/moistair"
	"changeout/calc/property/refrigerant"
)

// Capacity is the heat taken from the air, W.
type Capacity struct{ Total, Sensible, Latent float64 }

// Taken returns the heat that m kg/s of dry air gives off from (T1, W1) to
// (T2, W2):
//
//	total    = m ((h1 − h2) − (W1 − W2) h water),  water leaving at T2
//	sensible = m (1006 + 1860 W2) (T1 − T2)
//	latent   = total − sensible
//
// Source: ASHRAE Fundamentals, Psychrometrics, moist air cooling and
// dehumidification.
func Taken(m, T1, W1, T2, W2 float64) Capacity {
	const water = 4186 // J/(kg K), as in the wet-bulb equation
	total := m * (moistair.Enthalpy(T1, W1) - moistair.Enthalpy(T2, W2) - (W1-W2)*water*(T2-273.15))
	sensible := m * (1006 + 1860*W2) * (T1 - T2)
	return Capacity{total, sensible, total - sensible}
}

// ByRise returns the volume flow, m³/s, of air at (T, W) that a heater of a
// power, W, warms by a rise, K: V = P v/((1006 + 1860 W) ΔT), from the
// definition of the specific heat.
func ByRise(power, rise, T, W, p float64) float64 {
	return power * moistair.Volume(T, W, p) / ((1006 + 1860*W) * rise)
}

// exponent is how the air-side heat transfer follows the airflow, h ~ V^0.8.
// Source: Wetter, LBNL-42355. Fins that break up the flow have 0.5 to 0.7,
// which lowers the evaporating temperature less.
const exponent = 0.8

// Coil is a cooling coil that is known at one airflow.
type Coil struct {
	T, W, P    float64 // air on and local air pressure
	Mass       float64 // dry air at an airflow of 1
	Flow       float64 // where the rest holds: a share of the rated airflow
	NTU        float64
	Resistance float64 // R, K/W
	Surface    float64 // mean surface temperature
	Heat       float64 // Q
}

// ErrReadings: no coil does this; air and refrigerant temperatures contradict
// each other.
var ErrReadings = errors.New("airside: air and evaporating temperature do not agree")

// deepest is the largest 1 − b that readings can tell from 1.
const deepest = 0.98

// Measured fits the coil to air off it, (T2, W2), and to the evaporating
// temperature. The surface is the apparatus dew point; where the coil line
// finds none above the evaporating temperature, the surface is taken at that.
func (c *Coil) Measured(T2, W2, evaporating float64) error {
	h1, drop := moistair.Enthalpy(c.T, c.W), moistair.Enthalpy(c.T, c.W)-moistair.Enthalpy(T2, W2)
	// No surface dries air below its own saturation; 0.5 g/kg is left to the probes.
	driest := math.Min(c.W, moistair.Saturated(evaporating, c.P)) - 0.5e-3
	if !(drop > 0 && evaporating < T2 && W2 > driest) {
		return ErrReadings
	}
	c.Surface, _ = moistair.Apparatus(c.T, c.W, T2, W2, evaporating, c.P)
	part := drop / (h1 - c.surface(c.Surface))
	if !(part <= deepest) {
		part = deepest
		c.Surface = c.surfaceFor(h1 - drop/part)
	}
	return c.finish(part, drop*c.Mass*c.Flow, evaporating)
}

// Rated fits the coil to a capacity, a bypass factor and an evaporating
// temperature at its rated airflow.
func (c *Coil) Rated(capacity, bypass, evaporating float64) error {
	c.Flow = 1
	c.Surface = c.surfaceFor(moistair.Enthalpy(c.T, c.W) - capacity/(c.Mass*(1-bypass)))
	return c.finish(1-bypass, capacity, evaporating)
}

func (c *Coil) finish(part, heat, evaporating float64) error {
	c.NTU, c.Heat = -math.Log(1-part), heat
	c.Resistance = (c.Surface - evaporating) / heat
	if !(c.Resistance >= 0 && c.NTU > 0) {
		return ErrReadings
	}
	return nil
}

// surface returns the enthalpy of the air at a surface: saturated where it is
// wet, of the water that the air brings where it is dry.
func (c *Coil) surface(T float64) float64 {
	return moistair.Enthalpy(T, math.Min(c.W, moistair.Saturated(T, c.P)))
}

// surfaceFor inverts surface, from 200 K to the air on.
func (c *Coil) surfaceFor(h float64) float64 {
	return moistair.Bisect(200, c.T, func(T float64) bool { return c.surface(T) >= h })
}

// grip returns m (1 − b) at an airflow.
func (c *Coil) grip(flow float64) float64 {
	return c.Mass * flow * (1 - math.Exp(-c.NTU*math.Pow(flow/c.Flow, exponent-1)))
}

// drive returns h on − h surface.
func (c *Coil) drive(surface float64) float64 {
	return moistair.Enthalpy(c.T, c.W) - c.surface(surface)
}

// FlowFor returns the airflow at which the coil passes a heat at an evaporating
// temperature; +Inf when no airflow below 20 does.
func (c *Coil) FlowFor(heat, evaporating float64) float64 {
	return c.FlowAt(heat, evaporating+c.Resistance*heat)
}

// FlowAt is FlowFor with the temperature of the surface.
func (c *Coil) FlowAt(heat, surface float64) float64 {
	drive := c.drive(surface)
	const most = 20
	if !(drive > 0) || c.grip(most)*drive < heat {
		return math.Inf(1)
	}
	return moistair.Bisect(0, most, func(f float64) bool { return c.grip(f)*drive >= heat })
}

// HeatAt returns the heat that the compressor takes when the surface has a
// temperature; that at its coldest where the surface does not get there.
func (c *Coil) HeatAt(surface float64, k *Compressor) float64 {
	low, _ := k.Range()
	return c.Heat * k.Share(moistair.Bisect(low, surface, func(T float64) bool { return T+c.Resistance*c.Heat*k.Share(T) >= surface }))
}

// Hold returns the evaporating temperature at which the coil passes a heat at
// an airflow: what a compressor that is driven to hold its capacity pulls down
// to. The answer is near 200 K or below where there is none.
func (c *Coil) Hold(flow, heat float64) float64 {
	return c.surfaceFor(moistair.Enthalpy(c.T, c.W)-heat/c.grip(flow)) - c.Resistance*heat
}

// Settle returns the evaporating temperature at which the coil passes what a
// compressor of fixed displacement takes, and that heat. Less than the lowest
// temperature of the compressor is not given: ok is false.
func (c *Coil) Settle(flow float64, k *Compressor) (evaporating, heat float64, ok bool) {
	low, high := k.Range()
	grip := c.grip(flow)
	T := moistair.Bisect(low, math.Min(high, c.T), func(T float64) bool {
		q := c.Heat * k.Share(T)
		return grip*c.drive(T+c.Resistance*q) <= q
	})
	return T, c.Heat * k.Share(T), T > low+1e-6
}

// Compressor is the capacity of a compressor of fixed displacement, in shares
// of that at one evaporating temperature, and the suction pressure.
type Compressor struct {
	Liquid                 float64   // enthalpy of the liquid that comes, J/kg
	at, capacity, pressure []float64 // 1/T and logarithms, from cold to warm
	one                    float64
}

// Range of evaporating temperatures of a cooling coil, K, dew.
const (
	Coldest = 233.15
	Warmest = 303.15
)

// NewCompressor tabulates a refrigerant. Evaporating temperatures are the
// mid-point of bubble and dew at one pressure; the suction gas is dry
// saturated, and the liquid comes at 40 °C, or 10 K under the highest
// saturation temperature given. Between the points, 5 K apart, the logarithms
// run straight against 1/T: within 0.05 %.
func NewCompressor(ref *refrigerant.Refrigerant, evaporating float64) (*Compressor, error) {
	_, top := ref.Range()
	liquid, err := ref.SaturatedLiquid(math.Min(313.15, top-10))
	if err != nil {
		return nil, err
	}
	k := &Compressor{Liquid: liquid.Enthalpy}
	for T := Coldest; T <= Warmest; T += 5 {
		v, err := ref.SaturatedVapor(T)
		if err != nil || v.Enthalpy <= liquid.Enthalpy {
			continue
		}
		b := refrigerant.Point{T: T}
		if len(ref.Components) > 1 {
			if b, err = ref.BubbleAtP(v.P); err != nil {
				continue
			}
		}
		k.at = append(k.at, 2/(b.T+T))
		k.pressure = append(k.pressure, math.Log(v.P))
		k.capacity = append(k.capacity, math.Log(v.Rho*(v.Enthalpy-liquid.Enthalpy)))
	}
	if len(k.at) < 2 {
		return nil, refrigerant.ErrRange
	}
	if low, high := k.Range(); !(evaporating >= low && evaporating <= high) {
		return nil, refrigerant.ErrRange
	}
	k.one = k.between(k.capacity, evaporating)
	return k, nil
}

// Range returns the coldest and the warmest evaporating temperature given.
func (k *Compressor) Range() (low, high float64) { return 1 / k.at[0], 1 / k.at[len(k.at)-1] }

// Share returns the capacity at an evaporating temperature.
func (k *Compressor) Share(T float64) float64 { return math.Exp(k.between(k.capacity, T) - k.one) }

// Pressure returns the suction pressure, Pa absolute.
func (k *Compressor) Pressure(T float64) float64 { return math.Exp(k.between(k.pressure, T)) }

func (k *Compressor) between(y []float64, T float64) float64 {
	x, i := 1/T, 1
	for i < len(y)-1 && x < k.at[i] {
		i++
	}
	return y[i-1] + (y[i]-y[i-1])*(x-k.at[i-1])/(k.at[i]-k.at[i-1])
}
