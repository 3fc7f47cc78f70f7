package catalog

import (
	"changeout/calc"
	"changeout/calc/formula/hold"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// The words of a vacuum hold: what the findings of package hold mean to the
// person who has to act on them.

// rowsOver says how many rows were judged, and over how long.
func rowsOver(res *hold.Result) string {
	rows := " rows over "
	if res.RowsUsed == 1 {
		rows = " row over "
	}
	return unit.Fixedf(float64(res.RowsUsed), 0) + rows + unit.SpanText(res.End-res.Start)
}

// taken is the temperature that stands for the whole hold.
func taken(r *calc.Run, res *hold.Result) string {
	return r.Text(unit.Temperature, res.Temperature.Reference, "C", "F")
}

// ambientWarning says what was taken for a temperature that was not followed.
func ambientWarning(r *calc.Run, res *hold.Result) {
	said := ""
	switch res.Temperature.Kind {
	case hold.TemperatureNone:
		said = "No ambient was entered: water is judged at {}, and no temperature drift was taken off the readings."
	case hold.TemperatureConstant:
		said = "One ambient was entered: {} was taken for the whole hold, and no temperature drift was taken off."
	default:
		return
	}
	if fitted(res) {
		said += " The highest rise allows for a drift of {}."
	}
	r.Warn(text.Say(said, taken(r, res), r.Text(unit.TemperatureDifference, res.Temperature.Uncertain, "K", "F")))
}

// reached tells whether the analysis came to a finding.
func reached(res *hold.Result, finding hold.Reason) bool {
	for _, reason := range res.Reasons {
		if reason == finding {
			return true
		}
	}
	return false
}

// holdSentence explains the verdict on a log of so many rows.
func holdSentence(r *calc.Run, res *hold.Result, rows int) string {
	span := unit.SpanText(res.End - res.Start)
	if !fitted(res) && res.Verdict == hold.Leak {
		return "The pressure rose above what water can hold. Only a leak does that, or a gauge that reads wrong. The rows are too few for a rate."
	}
	if !fitted(res) {
		return text.Say("{} can be judged, of {} entered; at least {} rows over {}, isolated from the pump, are needed.",
			rowsOver(res), unit.Fixedf(float64(rows), 0), unit.Fixedf(hold.EnoughRows, 0), unit.SpanText(res.HoldNeeded))
	}
	high, limit := rise(r, res.Inflow.High), rise(r, res.InflowLimit)
	between := rise(r, res.Inflow.Low) + " to " + high
	switch res.Verdict {
	case hold.Tight:
		return text.Say("In {} the log allows a steady rise of at most {}, below the accepted {}, and it stays below the limit.", span, high, limit)
	case hold.Moisture:
		return text.Say("The rise flattens out. Water, or refrigerant leaving the oil, explains it; at most {} of it can be a leak.", high)
	case hold.Leak:
		return text.Say("The pressure keeps rising steadily at {}. A leak into a vacuum is choked, so its line is straight.", between)
	case hold.LeakAndMoisture:
		return text.Say("The rise flattens at first and then goes on straight at {}. There is a leak, and something leaves the oil as well.", between)
	}
	if res.Inflow.High < res.InflowLimit && res.IcePossible {
		return text.Say("The log allows a steady rise of at most {}, below the accepted {}. But it is cold enough for ice, so dryness is not shown.", high, limit)
	}
	if reached(res, hold.LevelBelowLimit) {
		return text.Say("In {} the log allows a steady rise of at most {}, below the accepted {}. But no ambient was entered, so ice is not ruled out and dryness is not shown.", span, high, limit)
	}
	if res.Inflow.High < res.InflowLimit {
		return text.Say("This log cannot settle it. It fits a steady rise of at most {}, below the accepted {}, but it is too short or too uneven to be sure.", high, limit)
	}
	return text.Say("This log cannot settle it. It allows a steady rise of up to {}; accepted is {}.", high, limit)
}

func rise(r *calc.Run, v float64) string {
	if v < 0 {
		v = 0
	}
	return unit.Significant(unit.PressureRate.Unit("micron/min").FromSI(v, unit.Env{}), 2) + "\u00a0micron/min"
}

func reasonWarning(r *calc.Run, res *hold.Result, reason hold.Reason) string {
	pressure := func(pa float64) string { return r.Text(unit.VacuumPressure, pa, "micron") }
	at := "this temperature"
	if res.Temperature.Kind == hold.TemperatureNone {
		at = taken(r, res)
	}
	switch reason {
	case hold.SmallInflowSeen:
		return "A small steady rise is measured, below the accepted rise. It is not called tight until a longer hold or a repeat explains it."
	case hold.InflowUnbounded:
		if res.Inflow.High < res.InflowLimit {
			return "In this time, evening out between near and far pipes can hide a rise."
		}
		return "The log still allows a rise above the accepted one."
	case hold.SlowReleaseOrLeak:
		return "In this time a slow release from the oil would look the same as a leak."
	case hold.LevelAboveLimit:
		return "The pressure is above the limit, or tends to a level above it."
	case hold.LevelUncertain:
		return "The level it tends to may be on either side of the limit."
	case hold.AtSaturation:
		return text.Say("The level is the saturation pressure of water at {}: free water or ice is inside.", at)
	case hold.AboveSaturation:
		if res.Temperature.Kind == hold.TemperatureNone {
			return "The pressure rose above the saturation pressure of water, even at 40 °C. Water cannot do that."
		}
		return text.Say("The pressure rose above the saturation pressure of water, {}. Water cannot do that.", pressure(res.WaterSaturation))
	case hold.UnevenVacuum:
		return "The far pipes were not as deep as the near ones when the pump was valved off. Evening out took the pressure above the limit."
	case hold.NotPumpedDown:
		return "The log starts above the limit. Pump further before you isolate."
	case hold.PumpStillRunning:
		return "The pressure falls through the log. No isolation from the pump was found."
	case hold.PumpReopened:
		return "The pressure drops inside the log, as if a valve to the pump was opened. The rows after the last drop, or before it, were judged."
	case hold.TooFewRows:
		if !fitted(res) {
			return "" // the verdict says so
		}
		return text.Say("{} are too few to tell a curve from scatter: at least {} rows are needed.", rowsOver(res), unit.Fixedf(hold.EnoughRows, 0))
	case hold.GaugeTooCoarse:
		return text.Say("The display steps of {} hide a rise at the accepted rate in this time.", pressure(res.Gauge.Step))
	case hold.GaugeTooNoisy:
		return "The scatter of the gauge hides a rise at the accepted rate in this time."
	case hold.TemperatureUnknown:
		return "How the temperature moved is not known, and it matters for this log."
	case hold.TemperatureMoved:
		return "The temperature moved enough to hide or to imitate a leak."
	case hold.IcePossible:
		return "It is cold enough for ice. Ice holds a low pressure, so a good reading can hide it."
	case hold.OverRange:
		return "Readings at the top of the gauge's range were left out."
	case hold.PoorFit:
		return "No simple explanation fits this log well. Look at the chart, the valves and the gauge."
	}
	return ""
}

func actionSentence(r *calc.Run, res *hold.Result, action hold.Action) string {
	switch action {
	case hold.Charge:
		return "Write the log down. Pull down and hold a second time. If both agree and the pressure test was passed, break the vacuum with weighed refrigerant."
	case hold.HoldLonger:
		if res.HoldNeeded > 0 {
			return text.Say("Keep it isolated and read on, for about {} in all.", unit.SpanText(res.HoldNeeded))
		}
		return "Keep it isolated and read on."
	case hold.RepeatHold:
		return "Pump down again to the same pressure and repeat the hold. A leak gives the same straight line; moisture ends lower each time."
	case hold.WarmPipe:
		return "Warm the cold spots by about 10 K and repeat. Moisture then rises much more; a leak hardly changes."
	case hold.FinerGauge:
		return "Use a gauge with finer steps."
	case hold.LogTemperature:
		if res.Temperature.Kind == hold.TemperatureNone {
			return "Enter the ambient at the start and at the end, and work it out again. Next time, write it beside each reading."
		}
		return "Write the ambient temperature beside each reading."
	case hold.PumpLonger:
		return "Pump further, with short wide hoses and the valve cores out, before you isolate."
	case hold.WriteMoreRows:
		return "Write more readings: every minute at first, then every five to ten minutes."
	case hold.FindLeak:
		return "Break the vacuum with dry nitrogen, pressure-test, and find the leak. Do not charge."
	case hold.DryAgain:
		return "Break the vacuum with dry nitrogen, let it stand, and evacuate again. Do not charge."
	}
	return ""
}

// modelNames name the explanations as the steps show them.
var modelNames = [...]string{
	hold.Steady:                      "steady",
	hold.Equalisation:                "evening out",
	hold.Levelling:                   "levelling off",
	hold.EqualisationLevelling:       "evening out and levelling off",
	hold.Plateau:                     "rising, then stopping",
	hold.Inflow:                      "steady inflow",
	hold.EqualisationInflow:          "evening out and steady inflow",
	hold.InflowLevelling:             "levelling off and steady inflow",
	hold.EqualisationInflowLevelling: "evening out, levelling off and steady inflow",
}
