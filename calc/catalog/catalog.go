// Package catalog holds the worksheets: one file each, and this ordered list.
// The order is the order of the job, and of every list that a person sees.
package catalog

import "changeout/calc"

var all = []*calc.Worksheet{
	Saturation,
	RunningState,
	Airflow,
	Noncondensables,
	StoredCharge,
	Windings,
	Insulation,
	Supply,
	Thermistor,
	AcidResult,
	SuctionDrier,
	OilVelocity,
	OilBalance,
	RecoveryCylinder,
	RecoveryLevel,
	Purge,
	StandingPressure,
	ChargeAdjustment,
	MoistureIn,
	PumpDown,
	WaterPoint,
	VacuumHold,
	RefrigerantLog,
}

// All returns the worksheets in the order of the job.
func All() []*calc.Worksheet { return all }

// Lookup returns the worksheet with that id, or nil.
func Lookup(id string) *calc.Worksheet {
	for _, w := range all {
		if w.ID == id {
			return w
		}
	}
	return nil
}

// Unknown is the answer to a worksheet id that is not in the list.
func Unknown(id string) calc.Answer {
	return calc.Answer{Worksheet: id, Problems: []calc.Problem{{Code: calc.UnknownWorksheet, Sentence: calc.UnknownWorksheetSentence(id, all)}}}
}
