package catalog

import (
	"math"
	"strconv"
	"strings"

	"changeout/calc"
	"changeout/calc/chart"
	"changeout/calc/formula/leakrate"
	"changeout/calc/property/refrigerant"
	"changeout/calc/text"
	"changeout/calc/unit"
)

// leakLog is one run of the refrigerant log.
type leakLog struct {
	r          *calc.Run
	ref        *refrigerant.Refrigerant
	full       float64
	today      float64
	newest     float64 // the newest day of the log
	after      float64 // losses up to this day no longer count
	losses     []leakrate.Loss
	last       int // the newest loss that counts, or -1
	annualised float64
	rolling    float64
	trigger    float64 // 0 where no rule was found
	rule       string
	ozone, hfc bool
	co2e       float64 // t; NaN where it is not known
}

// The days on which the rules of the United States and of the Union changed.
var (
	rule2019   = float64(unit.DayNumber(2019, 1, 1))
	rule2020   = float64(unit.DayNumber(2020, 4, 10))
	rulePart84 = float64(unit.DayNumber(2026, 1, 1))
	rule573    = float64(unit.DayNumber(2024, 3, 11))
)

// ozoneDepleting lists the substances of the Montreal Protocol on offer.
const ozoneDepleting = " R-11 R-12 R-13 R-22 R-113 R-114 R-115 R-123 R-124 R-142b "

const poundMass = 0.45359237

func refrigerantLog(r *calc.Run) {
	g := leakLog{r: r, full: r.Float("full"), today: r.Float("today"), after: math.Inf(-1), last: -1}
	g.ref, _ = refrigerant.Lookup(r.Choice("refrigerant"))
	if !g.warming() || !g.read() {
		return
	}
	g.rates()
	months := g.usRule()
	if c := r.Choice("jurisdiction"); c == "eu" || c == "uk" {
		months = g.euInterval(c == "eu" && g.today >= rule573)
	}
	due := g.nextCheck(months)
	g.conclude(due)
	g.records()
	g.chart()
}

// warming finds the kind of the refrigerant and its CO₂-equivalent.
func (g *leakLog) warming() bool {
	r := g.r
	for _, c := range g.ref.Components {
		ozone := strings.Contains(ozoneDepleting, " "+c.Name+" ")
		g.ozone, g.hfc = g.ozone || ozone, g.hfc || !ozone
	}
	list := pick(r.Choice("jurisdiction") == "eu", "EU 2024/573", "AR4")
	gwp, from := math.NaN(), ""
	for _, v := range g.ref.GWPs {
		if v.List == list || from == "" {
			gwp, from = v.Value, v.List+pick(v.Read == refrigerant.Memory, ", partly from memory", "")
		}
	}
	if r.Has("gwp") {
		gwp, from = r.Float("gwp"), "as entered"
	}
	g.co2e = g.full * gwp / 1000
	if from == "" {
		if !g.ozone {
			r.Refuse("gwp", calc.Missing, text.Say("GWP from the label: none is held here for {}; enter the value on the label.", g.ref.Name))
		}
		return g.ozone
	}
	r.Set("co2e", g.co2e*1000)
	r.Step("CO₂-equivalent", text.Say("full charge × GWP ÷ 1000 = {} × {} ({}, 100 years)", r.Given("full"), unit.Short(gwp, 5), from), r.OutputText("co2e"), calc.Cite{Key: "gwpcsv"})
	// Part 84 speaks of hydrofluorocarbons and substitutes above this GWP; every hydrofluorocarbon on offer is above it.
	g.hfc = g.hfc && (g.ozone || gwp > 53)
	return true
}

// read turns the rows into losses.
func (g *leakLog) read() bool {
	r := g.r
	rows := r.Series("log")
	visits := make([]leakrate.Visit, rows.Len())
	for i := range visits {
		v := leakrate.Visit{Day: rows.Columns[0][i], Added: rows.Columns[1][i]}
		if c := rows.Columns[2]; c != nil && c[i] > 0 { // an empty field is NaN
			v.Recovered = c[i]
		}
		if v.Day > g.today {
			r.RefuseRow("log", "after-today", text.Say("Additions and recoveries: row {} is dated {}, after today, {}; check both dates.", strconv.Itoa(i+1), r.Text(unit.Date, v.Day), r.Given("today")), i+1, 0)
			return false
		}
		visits[i] = v
		g.newest = math.Max(g.newest, v.Day)
	}
	for _, id := range [...]string{"verified", "last-check"} {
		if r.Has(id) && r.Float(id) > g.today {
			r.Refuse(id, "after-today", text.Say("{} is after today, {}; check both dates.", r.Given(id), r.Given("today")))
			return false
		}
	}
	if r.Has("verified") {
		g.after = r.Float("verified")
	}
	var offset float64
	g.losses, offset = leakrate.Losses(visits)
	if offset > 0 {
		r.Step("Put back after a recovery", "what was recovered up to 30 days before is no loss when it is added again", g.mass(offset), calc.Cite{Key: "common-practice"})
	}
	for i, l := range g.losses {
		if l.Mass > 0 && l.Day > g.after {
			g.last = i
		}
		if l.Mass > 1.1*g.full {
			r.Warn(text.Say("{}: {} is more than the full charge. A first charge does not belong in this log, and the full charge may be wrong.", r.Text(unit.Date, l.Day), g.mass(l.Mass)))
		}
	}
	return true
}

func (g *leakLog) mass(kg float64) string { return g.r.Entered(unit.Mass, kg, "kg", "lb") }

// part84 tells whether only what was added since part 84 began counts for a loss.
func (g *leakLog) part84(i int) bool {
	return g.r.Choice("jurisdiction") == "us" && !g.ozone && g.losses[i].Day >= rulePart84
}

// days is the time to the addition before, 365 where the log or part 84 knows none.
func (g *leakLog) days(i int) (days float64, known bool) {
	if i == 0 || (g.part84(i) && g.losses[i-1].Day < rulePart84) {
		return leakrate.Year, false
	}
	return math.Min(g.losses[i].Day-g.losses[i-1].Day, leakrate.Year), true
}

func (g *leakLog) at(i int) (annualised, rolling float64) {
	l := g.losses[i]
	days, _ := g.days(i)
	after := g.after
	if g.part84(i) {
		after = math.Max(after, rulePart84-1)
	}
	return leakrate.Annualised(l.Mass, g.full, days), leakrate.Rolling(g.losses, g.full, l.Day, after)
}

// rates computes both methods on the day of the newest loss.
func (g *leakLog) rates() {
	r := g.r
	one, sum := "no loss counts", "no loss counts"
	cite := calc.Cite{Key: "cfr-82-152", Locator: "leak rate"}
	if i := g.last; i >= 0 {
		g.annualised, g.rolling = g.at(i)
		days, known := g.days(i)
		day, lost := r.Text(unit.Date, g.losses[i].Day), g.mass(g.losses[i].Mass)
		one = text.Say("added ÷ full charge × 365 ÷ days since the last addition (365 at most) = {} ÷ {} × 365 ÷ {}, on {}", lost, r.Given("full"), unit.Short(days, 4), day)
		sum = text.Say("added in the 365 days up to {} ÷ full charge = {} ÷ {}", day, g.mass(g.rolling*g.full), r.Given("full"))
		if !known {
			cite = calc.Cite{Key: "part84-overview"}
			r.Warn("No earlier addition counts for the newest loss, so it is spread over 365 days. If there was one, enter it: the rate may be higher.")
		}
	}
	r.Set("annualised", g.annualised)
	r.Set("rolling", g.rolling)
	r.Step("Annualising", one, r.OutputText("annualised"), cite)
	r.Step("Rolling average", sum, r.OutputText("rolling"), calc.Cite{Key: "study608"})
	if !math.IsNaN(g.co2e) {
		r.Set("lost-co2e", g.rolling*g.co2e*1000)
	}
}

// usRule finds the trigger rate of the United States. It returns the months
// between inspections once it is exceeded.
func (g *leakLog) usRule() (months int) {
	r := g.r
	kind := r.Choice("appliance")
	if kind == "" {
		return 0
	}
	day := g.newest
	if g.last >= 0 {
		day = g.losses[g.last].Day
	}
	early, large := day < rule2019, g.full >= 50*poundMass
	cite := calc.Cite{Key: "cfr157", Locator: "paragraphs (a) and (c)"}
	switch {
	case large && (g.ozone || (g.hfc && day >= rule2019 && day < rule2020)):
		g.rule = "40 CFR 82.157, 50 lb (22.7 kg) or more"
		if early {
			cite = calc.Cite{Key: "epaold"}
		}
	case g.hfc && day >= rulePart84 && g.full >= 15*poundMass && kind != "light":
		g.rule, cite = "40 CFR 84.106, 15 lb (6.8 kg) or more", calc.Cite{Key: "cfr-84-106"}
	default:
		r.Step("Leak repair rule", "part 82: ozone-depleting gas, 50 lb or more; part 84: HFC, 15 lb or more, from 2026, not residential or light commercial", "none found", calc.Cite{Key: "trin"})
		r.Advise("No federal trigger rate was found for this appliance, size and day. State and local rules may have one. Confirm the kind of appliance.")
		return 0
	}
	months = 12
	row := 0
	switch kind {
	case "commercial":
		row = 1
	case "industrial":
		row = 2
	}
	if row > 0 && g.full >= 500*poundMass {
		months = 3
	}
	g.trigger = [...]float64{0.10, 0.20, 0.30}[row]
	if early {
		g.trigger = [...]float64{0.15, 0.35, 0.35}[row]
	}
	r.Set("trigger", g.trigger)
	r.Step("Trigger rate", g.rule, r.OutputText("trigger"), cite)
	g.chronic()
	if !g.over() {
		return 0
	}
	r.Set("repair-by", g.losses[g.last].Day+30)
	r.Step("Repair by", "day of the addition + 30 days (120 where an industrial process must stop)", r.OutputText("repair-by"), calc.Cite{Key: "from-memory", Locator: "82.157(d), 84.106(d)"})
	return months
}

// chronic looks for a calendar year in which 125 % of the charge was lost.
func (g *leakLog) chronic() {
	sum, year := 0.0, 0
	for _, l := range g.losses {
		y, _, _ := unit.Civil(int(l.Day))
		if y != year {
			sum, year = 0, y
		}
		before := sum
		sum += l.Mass
		if limit := 1.25 * g.full; sum >= limit && before < limit {
			r := g.r
			r.Warn(text.Say("In {} it lost {}, 125 % of its charge or more: a report to the EPA is due by 1 March {}.", strconv.Itoa(y), g.mass(sum), strconv.Itoa(y+1)))
			r.Step("Chronic leak", "lost in "+strconv.Itoa(y)+" ÷ full charge, limit 125 %", r.Text(unit.Fraction, sum/g.full, "%"), calc.Cite{Key: "epafact"})
		}
	}
}

// euInterval finds the months between leak checks of the Union and of the
// United Kingdom.
func (g *leakLog) euInterval(current bool) int {
	r := g.r
	detection := r.Choice("detection") == "yes"
	months := leakrate.Months(g.co2e, 5, detection)
	label, cite := "12 months from 5 t CO₂e, 6 from 50 t, 3 from 500 t", calc.Cite{Key: "practice-110"}
	if current {
		label, cite = label+"; unsaturated gas 1, 10, 100 kg", calc.Cite{Key: "eu573", Locator: "article 5"}
		unsaturated := 0.0
		for _, c := range g.ref.Components {
			if strings.HasPrefix(c.Name, "R-1") && len(c.Name) > 6 { // four digits and a letter
				unsaturated += c.MassFraction * g.full
			}
		}
		if m := leakrate.Months(unsaturated, 1, detection); m > 0 && (months == 0 || m < months) {
			months = m
		}
	}
	if g.ozone {
		months, label, cite = leakrate.Months(g.full, 3, detection), "ozone-depleting gas: 12 months from 3 kg, 6 from 30 kg, 3 from 300 kg", calc.Cite{Key: "eu-2024-590", Locator: "kilograms from memory"}
	} else if g.co2e >= 500 && !detection {
		r.Warn("From 500 t CO₂e a leak detection system that alarms is required, tested every 12 months.")
	}
	value := "none asked for"
	if months > 0 {
		value = strconv.Itoa(months) + " months"
	}
	r.Step("Time between leak checks", label+pick(detection, "; doubled with detection", ""), value, cite)
	return months
}

// nextCheck counts the months from the last check, in the United States from
// the newest loss if that is later. It reports whether the day has passed.
func (g *leakLog) nextCheck(months int) (overdue bool) {
	r := g.r
	if months == 0 {
		return false
	}
	from, label, cite := math.Inf(-1), "last check", calc.Cite{Key: "eu573", Locator: "article 5"}
	if r.Has("last-check") {
		from = r.Float("last-check")
	}
	if g.trigger > 0 {
		cite = calc.Cite{Key: "from-memory", Locator: "82.157(g), 84.106(g)"}
		if day := g.losses[g.last].Day; day > from {
			from, label = day, "day of the addition"
		}
	}
	if math.IsInf(from, -1) {
		r.Warn("The day of the last leak check is missing. Without one, the check is due now.")
		return true
	}
	due := monthsLater(from, months)
	r.Set("next-check", due)
	r.Step("Next leak check", text.Say("{} + {} months", label, strconv.Itoa(months)), r.OutputText("next-check"), cite)
	return g.today > due
}

// monthsLater is the same day of a later month, or that month's last.
func monthsLater(day float64, months int) float64 {
	y, m, d := unit.Civil(int(day))
	m += months - 1
	y, m = y+m/12, m%12+1
	return float64(min(unit.DayNumber(y, m, d), unit.DayNumber(y+m/12, m%12+1, 1)-1))
}

// records says what to keep and until when.
func (g *leakLog) records() {
	r := g.r
	years, cite := 5, calc.Cite{Key: "eu573", Locator: "article 7"}
	again := "After a repair, check again after 24 hours of running and within a month."
	keep := "Owner and contractor keep gas and quantity, and every addition and recovery with its date, whether recycled or reclaimed and from where. They keep who did it with certificate number, dates and results of checks and repairs, and the end of the system."
	switch r.Choice("jurisdiction") {
	case "us":
		again = ""
		years, cite = 3, calc.Cite{Key: "study608"}
		keep = "Keep owner and place, full charge and how it was found, and each visit with date, parts, work, amounts and technician. Keep each leak rate with its method, inspections and tests of repairs. One method serves all appliances of a facility."
	case "uk":
		cite = calc.Cite{Key: "practice-110", Locator: "time from memory"}
	case "other":
		r.Advise("Local law governs. As good practice keep every addition and recovery with date, gas, amount, reason and technician for 5 years.")
		return
	}
	if again != "" && g.last >= 0 {
		r.Advise(again)
	}
	r.Set("keep-until", monthsLater(g.newest, 12*years))
	r.Step("Records", text.Say("newest entry + {} years", strconv.Itoa(years)), r.OutputText("keep-until"), cite)
	r.Advise(keep)
}

// over reports whether either method exceeds the trigger. A millionth is left
// to the arithmetic, so that a rate at the trigger is not over it.
func (g *leakLog) over() bool {
	return g.trigger > 0 && math.Max(g.annualised, g.rolling) > g.trigger*(1+1e-6)
}

func (g *leakLog) conclude(overdue bool) {
	r := g.r
	rates := text.Say("{} by annualising, {} by rolling average", r.OutputText("annualised"), r.OutputText("rolling"))
	switch {
	case g.over():
		which := ""
		if math.Min(g.annualised, g.rolling) <= g.trigger {
			which = " Only one method is over: the one that the facility uses for all its appliances decides."
		}
		r.Conclude("over", text.Say("{}; the trigger is {} ({}). Repair by {}.", rates, r.OutputText("trigger"), g.rule, r.OutputText("repair-by"))+which)
		r.Advise("Test the repair before you charge, and again within 10 days of normal running. Enter that day as the follow-up test.")
		if overdue {
			r.Warn("The next leak check is overdue too.")
		} else if g.today > g.losses[g.last].Day+30 {
			r.Warn("The day to repair by has passed.")
		}
	case overdue:
		r.Conclude("check-due", "Have it checked by a certified person now. The log shows "+rates+".")
	case g.last >= 0 && g.losses[g.last].Day >= g.today-leakrate.Year:
		r.Conclude("leaking", rates+". No sealed system uses up refrigerant.")
		r.Advise("Find the leak with a detector or nitrogen before you add again.")
	default:
		r.Conclude("no-loss", "This is no proof that it is tight.")
	}
}

// chart draws both rates at each loss over time.
func (g *leakLog) chart() {
	annual := chart.Line{Class: "co-chart__data", Name: "annualising", Dots: true}
	rolling := chart.Line{Class: "co-chart__fit", Name: "rolling average"}
	for i, l := range g.losses {
		if l.Day <= g.after {
			continue
		}
		a, b := g.at(i)
		x := l.Day - g.losses[0].Day
		annual.X, annual.Y = append(annual.X, x), append(annual.Y, 100*a)
		rolling.X, rolling.Y = append(rolling.X, x), append(rolling.Y, 100*b)
	}
	if len(annual.X) < 2 {
		return
	}
	c := chart.Chart{Label: "Leak rate at each addition, in percent a year, by annualising and by rolling average.", XTitle: "days since " + g.r.Text(unit.Date, g.losses[0].Day), YTitle: "% a year",
		Lines: []chart.Line{rolling, annual}}
	if g.trigger > 0 {
		c.Levels = []chart.Level{{Class: "co-chart__limit", Label: "trigger " + g.r.OutputText("trigger"), Y: 100 * g.trigger}}
	}
	if svg := c.SVG(); svg != "" {
		g.r.Chart("Leak rate at each addition, by both ways of counting", svg)
	}
}
