package hold

// Model is a named explanation of a hold.
type Model uint8

const (
	Steady                      Model = iota + 1 // nothing but the temperature moves the pressure
	Equalisation                                 // evens out after isolation, then steady
	Levelling                                    // rises toward a level: water or refrigerant leaves the oil
	EqualisationLevelling                        // evens out, and rises toward a level
	Plateau                                      // rises straight, then stops: free water or ice at saturation, or used up
	Inflow                                       // straight without end: a leak (choked flow into a vacuum)
	EqualisationInflow                           // evens out, then straight
	InflowLevelling                              // a leak and a release
	EqualisationInflowLevelling                  // all three
)

// ID returns a short stable name.
func (m Model) ID() string {
	switch m {
	case Steady:
		return "steady"
	case Equalisation:
		return "equalisation"
	case Levelling:
		return "levelling"
	case EqualisationLevelling:
		return "equalisation-levelling"
	case Plateau:
		return "plateau"
	case Inflow:
		return "inflow"
	case EqualisationInflow:
		return "equalisation-inflow"
	case InflowLevelling:
		return "inflow-levelling"
	case EqualisationInflowLevelling:
		return "equalisation-inflow-levelling"
	}
	return ""
}

// HasInflow tells whether the model contains a steady inflow.
func (m Model) HasInflow() bool { return m >= Inflow }

// HasRelease tells whether the model contains a slow release.
func (m Model) HasRelease() bool {
	return m == Levelling || m == EqualisationLevelling || m == Plateau || m == InflowLevelling || m == EqualisationInflowLevelling
}

// Candidate is one model fitted to the log.
type Candidate struct {
	Model            Model
	Inflow           float64 // Pa/s; 0 when not in the model
	Start            float64 // Pa at isolation
	Release          float64 // Pa
	ReleaseTime      float64 // s, time constant; for Plateau the time at which it stops
	Equalisation     float64 // Pa
	EqualisationTime float64 // s
	Residual         float64 // weighted root mean square; about 1 when the model fits to the noise
	Parameters       int
	Score            float64 // AICc on the effective number of readings, smaller is better
	Weight           float64 // share of belief among the candidates, from the scores
}
