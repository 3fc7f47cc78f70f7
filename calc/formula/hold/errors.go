package hold

import "strconv"

// Fault says what is wrong with the input.
type Fault uint8

const (
	FewRows         Fault = iota + 1 // fewer than MinRows; Value is the number
	ManyRows                         // more than MaxRows; Value is the number
	LengthsDiffer                    // the slices are not of one length; Value is the odd length
	TimeNotFinite                    // a time is NaN or infinite
	TimeNotAfter                     // a time is not after the row before; Value is the time
	PressureMissing                  // a pressure is NaN or infinite
	PressureOutside                  // a pressure is negative or above MaxPressure; Value is the pressure
	AmbientOutside                   // a temperature is outside MinAmbient to MaxAmbient; Value is the temperature
	LimitOutside                     // Target or Limit not positive, or Limit not above Target; Value is Limit
	InflowOutside                    // InflowLimit negative or not finite
	VolumeOutside                    // Volume negative or not finite
	SpanOutside                      // the log spans less than MinSpan or more than MaxSpan; Value is the span in s
)

// Bounds of the input.
const (
	MinRows     = 3
	EnoughRows  = 8 // fewer do not tell a curve from scatter
	MaxRows     = 20000
	MaxPressure = 120000.0    // Pa: nothing isolated under vacuum reads above the highest atmosphere
	MinAmbient  = 223.15      // K, -50 °C
	MaxAmbient  = 353.15      // K, 80 °C: a pipe in the sun
	MinSpan     = 60.0        // s: anything shorter is a reading, not a hold
	MaxSpan     = 14 * 86400. // s
)

// Error is a fault of the input with the row (1-based, 0 when none) it is in.
type Error struct {
	Fault Fault
	Row   int
	Value float64
}

var faultNames = [...]string{"", "few-rows", "many-rows", "lengths-differ", "time-not-finite", "time-not-after", "pressure-missing",
	"pressure-outside", "ambient-outside", "limit-outside", "inflow-outside", "volume-outside", "span-outside"}

// Error returns a short text for logs; the worksheet words its own sentence from the fields.
func (e *Error) Error() string {
	s := "hold: " + faultNames[e.Fault]
	if e.Row > 0 {
		s += " in row " + strconv.Itoa(e.Row)
	}
	return s + " (" + strconv.FormatFloat(e.Value, 'g', 6, 64) + ")"
}
