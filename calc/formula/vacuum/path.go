package vacuum

import "math"

// Path is the way of the gas from the far end of a system to the pump.
type Path struct {
	Run   []Tube  // inside the system, from the far end to the port
	Core  Tube    // the valve core, as a tube that passes as much; Length 0 when it is out
	Hose  Tube    // from the port to the pump
	Ports float64 // equal hoses side by side, each on a port with a core
	Speed float64 // m³/s, the pump on its own
	Base  float64 // Pa, the lowest pressure the pump reaches on its own
}

// Part is a piece of the path.
type Part uint8

const (
	Pump Part = iota
	Hose
	Core
	Run
)

// Point is a steady flow through the path.
type Point struct {
	Flow float64    // Pa·m³/s
	P    [4]float64 // Pa before the pump, before the hose, before the core and at the far end
}

// Far is the pressure at the far end.
func (a *Point) Far() float64 { return a.P[Run] }

// HoseMean is the mean pressure in the hose.
func (a *Point) HoseMean() float64 { return (a.P[Pump] + a.P[Hose]) / 2 }

// Limit is the part that takes most of the pressure.
func (a *Point) Limit() Part {
	worst, most := Pump, a.P[Pump]
	for i := Hose; i <= Run; i++ {
		if drop := a.P[i] - a.P[i-1]; drop > most {
			worst, most = i, drop
		}
	}
	return worst
}

// at returns the flow when the pump's inlet stands at a pressure that is above
// (Pa) over its base. The pump moves q = S (p - p base), which falls to
// nothing at its base pressure.
func (w *Path) at(above float64) Point {
	var a Point
	a.Flow = w.Speed * above
	p := w.Base + above
	a.P[Pump] = p
	p = w.Hose.Upstream(a.Flow/w.Ports, p)
	a.P[Hose] = p
	p = w.Core.Upstream(a.Flow/w.Ports, p)
	a.P[Core] = p
	for i := len(w.Run) - 1; i >= 0; i-- {
		p = w.Run[i].Upstream(a.Flow, p)
	}
	a.P[Run] = p
	return a
}

// AtFar returns the flow when the far end stands at p, which must be above the
// base pressure of the pump.
func (w *Path) AtFar(p float64) Point {
	// The pressure at the pump is sought by its logarithm, because it can be a
	// thousandth of a micron above the base: the Illinois form of the secant
	// method, whose bracket never breaks. It ends after 60 rounds at most.
	high := math.Log(p - w.Base)
	low := high - 28
	a := w.at(math.Exp(high))
	fHigh := a.Far() - p
	a = w.at(math.Exp(low))
	fLow := a.Far() - p
	for range 60 {
		x := (low*fHigh - high*fLow) / (fHigh - fLow)
		if !(x > low && x < high) {
			x = (low + high) / 2
		}
		a = w.at(math.Exp(x))
		f := a.Far() - p
		if math.Abs(f) < 1e-11*p {
			break
		}
		if f > 0 {
			if high, fHigh = x, f; fLow < 0 {
				fLow /= 2
			}
		} else if low, fLow = x, f; fHigh > 0 {
			fHigh /= 2
		}
	}
	return a
}

// Share is the share of the pump's speed that is left at the far end at
// pressure p: flow/(p S).
func (w *Path) Share(p float64) float64 {
	if p <= w.Base {
		return 0
	}
	a := w.AtFar(p)
	return a.Flow / (p * w.Speed)
}

// Sample is a moment of a pump-down.
type Sample struct {
	Time float64 // s
	Point
}

// Steps is the number of steps of a pump-down. In that many, equal in the
// logarithm of the pressure, the error of the trapezoids is below 0.1 %.
const Steps = 160

// PumpDown returns the pressures over time while dry air leaves a volume (m³)
// from one pressure at the far end to another (Pa), the lower one above the
// base pressure. All of the gas counts as if it stood at the far end, which is
// the slow side. The sum is
//
//	t = ∫ V dp/q(p)
//
// by trapezoids.
func (w *Path) PumpDown(volume, from, to float64) []Sample {
	first, last := w.AtFar(from), w.AtFar(to)
	out := make([]Sample, 1, Steps+1)
	out[0].Point = first
	ratio := math.Log(last.Flow/first.Flow) / Steps
	for i := 1; i <= Steps; i++ {
		s := Sample{Point: last}
		if i < Steps {
			s.Point = w.at(first.Flow / w.Speed * math.Exp(ratio*float64(i)))
		}
		before := &out[i-1]
		s.Time = before.Time + volume*(before.Far()-s.Far())*(1/before.Flow+1/s.Flow)/2
		out = append(out, s)
	}
	return out
}

// waterGas is the gas constant of water vapour, J/(kg K).
const waterGas = 461.523

// EvaporationTime returns the time, s, in which a mass of water (kg) at t (K) leaves as
// vapour while the far end stands at p (Pa), above the base pressure:
//
//	time = m R T/q(p)
//
// It takes heat for granted: without it the water cools and freezes.
func (w *Path) EvaporationTime(m, t, p float64) float64 {
	a := w.AtFar(p)
	return m * waterGas * t / a.Flow
}
