// Package hold judges an isolated vacuum hold from its log of time and pressure.
//
// After the pump is valved off, the pressure in an evacuated system can do four things, and
// usually does several at once: even out between near and far pipes, rise toward a level while water or
// refrigerant leaves the oil, rise without end because air leaks in, and follow the temperature. The package
// fits these to the log, compares the explanations, and bounds the steady inflow that the log still
// allows. It says "tight" only when that bound is below the stated limit.
//
// SI throughout: s, Pa absolute, K, m³. No labels, no units, no sentences: the worksheet words the answer.
//
// Where the physics has no published figure the numbers are marked as common practice in assumptions.go.
package hold

// Log is a record of a hold. Row i of the three slices belongs together. 3 to 20,000 rows.
type Log struct {
	Time     []float64 // s, strictly increasing; any origin
	Pressure []float64 // Pa absolute, 0 to 120,000
	Ambient  []float64 // K, nil when not logged; NaN marks a gap
}

// Conditions are what the log alone does not say.
type Conditions struct {
	AmbientStart, AmbientEnd float64 // K at the first and last row; NaN when unknown; a logged ambient wins
	Target                   float64 // Pa, the pressure the system was to be pumped to
	Limit                    float64 // Pa, the pressure the hold must stay below; above Target
	InflowLimit              float64 // Pa/s, the steady inflow that is still accepted; 0 means (Limit-Target)/12 h
	Volume                   float64 // m³ of the system; 0 when unknown
}

// Verdict is one of five ids.
type Verdict string

const (
	Tight           Verdict = "tight"
	Moisture        Verdict = "moisture"
	Leak            Verdict = "leak"
	LeakAndMoisture Verdict = "leak-and-moisture"
	Undetermined    Verdict = "undetermined"
)

// Reason is a finding that led to the verdict, or a doubt that stood in the way of a definite one.
type Reason uint8

const (
	InflowBelowLimit   Reason = iota + 1 // the upper bound of the steady inflow is below the limit
	InflowSeen                           // the lower bound of the steady inflow is above zero
	SmallInflowSeen                      // a steady inflow is measured, below the limit: not tight, not out of limits
	InflowUnbounded                      // the log allows an inflow above the limit
	SlowReleaseOrLeak                    // a slow release from the oil would look the same in this time
	ReleaseSeen                          // the curve flattens: water or refrigerant leaves the oil
	LevelBelowLimit                      // the level it tends to is below the limit
	LevelAboveLimit                      // the pressure is, or tends to, above the limit
	LevelUncertain                       // the level it tends to may be on either side of the limit
	AtSaturation                         // levels at the saturation pressure of water: free water or ice
	AboveSaturation                      // rose above the saturation pressure of water: not water
	UnevenVacuum                         // evening out between near and far pipes took it above the limit
	NotPumpedDown                        // already above the limit when isolated
	PumpStillRunning                     // the pressure falls through the log: no isolation found
	PumpReopened                         // the pump, or a valve to it, was opened again during the log
	TooFewRows                           // too few usable rows to estimate curvature and noise
	GaugeTooCoarse                       // the display step hides an inflow at the limit in this time
	GaugeTooNoisy                        // the scatter hides an inflow at the limit in this time
	TemperatureUnknown                   // no temperature given, and it matters here
	TemperatureMoved                     // the temperature moved enough to hide or imitate an inflow
	IcePossible                          // cold enough, or low enough, that ice could hide behind a good reading
	OverRange                            // rows at the top of the gauge's range were left out
	PoorFit                              // no explanation fits the log well
)

// Action is what to do next.
type Action uint8

const (
	Charge         Action = iota + 1 // nothing more for the hold
	HoldLonger                       // hold for at least Result.HoldNeeded
	RepeatHold                       // pump down again and compare with Result.Repeat
	WarmPipe                         // warm the cold spots, then repeat
	FinerGauge                       // use a gauge with smaller steps
	LogTemperature                   // note the temperature at the start and the end, better with each row
	PumpLonger                       // pump further before isolating
	WriteMoreRows                    // take more readings
	FindLeak                         // pressure-test and find the leak
	DryAgain                         // break with dry nitrogen and evacuate again
)

// Interval is a best value with a lower and an upper bound at Result.Confidence. All values are finite.
type Interval struct{ Low, Best, High float64 }

// Result is everything the analysis found. No field is NaN or infinite.
type Result struct {
	Verdict Verdict
	Reasons []Reason // most important first
	Actions []Action // in the order to do them

	Inflow      Interval // Pa/s at the reference temperature; not negative
	InflowLimit float64  // Pa/s used
	Confidence  float64  // of every interval, two-sided (0.99)
	Throughput  Interval // Pa·m³/s = Inflow × Volume; zero when the volume is unknown

	Best       int         // index into Candidates of the best score: 0, because they are sorted
	Candidates []Candidate // the named explanations, best score first; empty when nothing could be fitted

	Level            Interval // Pa it tends to if all of the rise is a release that levels off, at the reference temperature
	LevelKnown       bool     // false when no level can be given, or when the log sets no upper bound to it and High is only the highest tried
	Release          float64  // Pa, size of the part that levels off slowly
	ReleaseTime      float64  // s, its time constant; 0 when none
	Equalisation     float64  // Pa, size of the fast part after isolation (negative: falling)
	EqualisationTime float64  // s, its time constant; 0 when none

	Temperature Temperature
	Gauge       Gauge

	Start, End        float64 // s, span that was judged, in the log's own time
	FirstRow, LastRow int     // rows (0-based) of that span
	RowsUsed          int     // rows of the span after leaving out over-range rows and outliers
	Outliers          []int   // rows (0-based) left out as outliers
	Curve             []Point // at most 120 points: measured and fitted; empty when nothing could be fitted

	FirstPressure, LastPressure float64 // Pa, smoothed by the fit, at Start and End
	BoilingAtLast               float64 // K, water boils or sublimes there at the last pressure
	WaterSaturation             float64 // Pa, saturation pressure of water at the highest temperature; at 20 °C when none is known
	IcePossible                 bool    // ice could be in the system

	HoldNeeded float64 // s, total hold that should tell; 0 when this one told
	Repeat     Repeat
}

// Point is one point of the chart.
type Point struct {
	Time     float64 // s, log's own time
	Measured float64 // Pa
	Fit      float64 // Pa
}

// Temperature says what was assumed and corrected.
type Temperature struct {
	Kind       TemperatureKind
	Start, End float64 // K used; 0 when unknown
	Reference  float64 // K the corrected pressures refer to
	Change     float64 // K between lowest and highest in the span
	Uncertain  float64 // K, allowance for the change of the gas temperature that nobody measured (two standard deviations)
	GasShift   float64 // Pa taken off the last pressure to bring it to the reference temperature
	WaterShift float64 // Pa of the rise that the fit puts down to water following the temperature
}

// TemperatureKind is where the temperatures came from.
type TemperatureKind uint8

const (
	TemperatureNone     TemperatureKind = iota // unknown
	TemperatureConstant                        // one value only
	TemperatureEnds                            // start and end
	TemperatureLogged                          // with the rows
)

// Gauge is what the log says about the instrument.
type Gauge struct {
	Noise         float64 // Pa, one standard deviation of a reading near the last pressure, without the steps
	Step          float64 // Pa, display step near the last pressure; 0 when none was found
	StepLow       float64 // Pa, display step at the lowest pressures
	OverRange     float64 // Pa, reading taken as the top of the range; 0 when none
	RowsOverRange int
}

// Repeat is what a second hold, pumped down to the same pressure and as long as this one, should show.
type Repeat struct {
	Kind      RepeatKind
	Inflow    float64 // Pa/s expected if it leaks
	IfLeak    float64 // Pa expected at the end if it leaks as the best fit says
	IfRelease float64 // Pa the end should stay below if it was water or refrigerant
}

// RepeatKind says what to compare.
type RepeatKind uint8

const (
	RepeatNothing    RepeatKind = iota // no repeat needed
	RepeatSameSlope                    // a leak: the same straight slope again
	RepeatLowerLevel                   // moisture: flattens again, at a lower level
	RepeatEither                       // tells the two apart
)
