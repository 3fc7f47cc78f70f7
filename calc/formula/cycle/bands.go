package cycle

// Band is a closed range of a temperature or a difference, K. An end beyond
// which the compressor is harmed is strict: no reading error excuses it.
type Band struct {
	Low, High             float64
	StrictLow, StrictHigh bool
}

// Place is where a reading lies in a band.
type Place int

const (
	Below Place = iota
	AtLow
	Inside
	AtHigh
	Above
)

// Place says where a reading v lies in the band when it may be wrong by e, K,
// either way. Nearer to an end than e it is at that end, and neither inside nor
// outside is known; beyond a strict end it is outside all the same.
func (b Band) Place(v, e float64) Place {
	switch {
	case v < b.Low && (b.StrictLow || v < b.Low-e):
		return Below
	case v > b.High && (b.StrictHigh || v > b.High+e):
		return Above
	case v < b.Low+e:
		return AtLow
	case v > b.High-e:
		return AtHigh
	}
	return Inside
}

// Bands of a machine that runs steadily. They are general; the maker's values
// come first. Sources: manual-11 an inverter matrix, manual-12 a trial-run
// document, manual-14 a chart, manual-49 a variable-speed scroll manual,
// manual-50 a superheat check; where none is named it is common practice.
var (
	SuctionSuperheat   = Band{5, 20, true, true}           // usual; manual-11 flags under 2 and over 11, manual-49 allows 5 to 30
	DischargeSuperheat = Band{20, 45, true, true}          // manual-12 warns under 20, manual-11 flags over 39, manual-50 over 45
	SubcoolingUsual    = Band{2, 8, false, false}          // manual-11: 2 to 7; typical 3 to 8
	EvaporatingCooling = Band{275.15, 285.15, true, false} // 2 to 12 °C in comfort cooling; low: ice, and liquid that returns
	CondensingOverAir  = Band{8, 20, false, false}         // cooling: condensing temperature less outdoor air
	IndoorAirChange    = Band{8, 14, false, true}          // cooling, at rated airflow; high: little air, and liquid that returns
)

// Discharge pipe temperatures, K.
const (
	DischargeInvestigate = 373.15 // 100 °C sustained: PVE oil, and a valve hotter than the pipe; common practice
	DischargeLimit       = 380.15 // 107 °C (225 °F): widely taught, practice-15
)

// Signs of liquid in the compressor and of an evaporator that starves.
const (
	FloodbackSuction   = 3.0        // K: under it liquid returns; practice-9, practice-11
	FloodbackDischarge = 20.0 / 1.8 // K: under 20 °F of discharge superheat; manual-11
	StarvingSuction    = 20.0       // K: over it the evaporator starves; common practice
	SteadyTime         = 900.0      // s: 15 min before readings count; practice-75
	SteadyInverter     = 3600.0     // s: an hour in each mode for inverter systems; common practice
)
