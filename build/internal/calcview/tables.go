package calcview

import (
	"strconv"
	"strings"

	"changeout/calc/property/refrigerant"
	"changeout/calc/property/water"
	"changeout/calc/unit"
)

// Table is what components/table/table.tmpl draws.
type Table struct {
	ID, Title, Caption string
	Groups             []ColumnGroup
	Columns            []TableColumn
	Rows               []TableRow
	Notes              []string
	Sources            []SourceItem
	Heading            int
}

// ColumnGroup is a heading over several columns.
type ColumnGroup struct {
	Label string
	Span  int
}

// TableColumn is the head of a column.
type TableColumn struct{ Label, Unit string }

// TableRow is a row; its first cell is its head. Major draws a rule above it.
type TableRow struct {
	Cells []string
	Major bool
}

// tableID is the address of a refrigerant's table: r-410a, r-1234ze-e.
func tableID(name string) string {
	return strings.Trim(strings.NewReplacer("(", "-", ")", "").Replace(strings.ToLower(name)), "-")
}

// glideMatters is the glide above which bubble and dew get columns of their
// own, K.
const glideMatters = 0.1

// pressureTables computes the metric and the US table of a refrigerant.
func pressureTables(r *refrigerant.Refrigerant) []any {
	metric := saturationTable(r, "C", "kPag", 2)
	metric.ID, metric.Title = tableID(r.Name)+"-metric", r.Name+", metric"
	us := saturationTable(r, "F", "psig", 5)
	us.ID, us.Title = tableID(r.Name)+"-us", r.Name+", US units"
	us.Sources = nil
	return []any{metric, us}
}

// saturationTable computes gauge pressures at round temperatures. Bubble and
// dew share a column where the glide never matters. Three columns at the most,
// so that the table fits a phone held upright.
func saturationTable(r *refrigerant.Refrigerant, temperature, pressure string, step float64) Table {
	degrees, u := unit.Temperature.Unit(temperature), unit.Pressure.Unit(pressure)
	env := unit.Env{Atmosphere: unit.StandardAtmosphere}
	two := hasGlide(r)
	t := Table{Heading: 2, Columns: []TableColumn{{"Temperature", degrees.Label}}}
	if two {
		t.Columns = append(t.Columns, TableColumn{"Bubble", u.Label}, TableColumn{"Dew", u.Label})
	} else {
		t.Columns = append(t.Columns, TableColumn{"Pressure", u.Label})
	}
	low, high := r.Range()
	from := max(low, unit.Temperature.Unit("C").ToSI(-60, env))
	for i := int(degrees.FromSI(from, env)/step) - 1; ; i++ {
		shown := float64(i) * step
		k := degrees.ToSI(shown, env)
		if k < from {
			continue
		}
		if k > high {
			break
		}
		bubble, err1 := r.BubbleAtT(k)
		dew, err2 := r.DewAtT(k)
		if err1 != nil || err2 != nil {
			continue
		}
		cells := []string{unit.Fixedf(shown, 0)}
		cells = append(cells, u.Format(u.FromSI(bubble.P, env)))
		if two {
			cells = append(cells, u.Format(u.FromSI(dew.P, env)))
		}
		t.Rows = append(t.Rows, TableRow{Cells: cells, Major: i%5 == 0})
	}
	t.Caption = "Gauge pressure at sea level. At 1000 m a gauge shows 11 kPa (1.6 psi) more at the same temperature."
	if two {
		t.Notes = append(t.Notes, "Bubble: use it for subcooling. Dew: use it for superheat.")
	} else {
		t.Notes = append(t.Notes, "Bubble and dew differ by less than 0.1 K: one column serves for superheat and for subcooling.")
	}
	if r.ChargeAsLiquid {
		t.Notes = append(t.Notes, "A blend: take it from the cylinder as liquid.")
	}
	t.Notes = append(t.Notes, "A figure below zero is a vacuum. Computed from the full equations of state when this handbook was built; see how the saturation worksheet was checked.")
	t.Sources = sourceItems("table-"+tableID(r.Name)+"-metric-source-", equationKeysOf(r))
	return t
}

// hasGlide reports whether bubble and dew differ by more than glideMatters
// between -40 °C and the top of the range.
func hasGlide(r *refrigerant.Refrigerant) bool {
	low, high := r.Range()
	for _, k := range []float64{max(low, 233.15), 273.15, 298.15, 318.15} {
		if k < low || k > high {
			continue
		}
		b, err := r.BubbleAtT(k)
		if err != nil {
			continue
		}
		d, err := r.DewAtP(b.P)
		if err == nil && d.T-k > glideMatters {
			return true
		}
	}
	return false
}

// waterTable computes the boiling point of water against vacuum.
func waterTable() []any {
	env := unit.Env{}
	c, f := unit.Temperature.Unit("C"), unit.Temperature.Unit("F")
	microns := unit.VacuumPressure.Unit("micron")
	down := Table{ID: "water-boiling-point", Title: "Where water boils or sublimes at a vacuum", Heading: 2,
		Caption: "Below 0.01 °C water is ice and passes straight to vapour.",
		Columns: []TableColumn{{"Vacuum", "micron"}, {"", "Pa"}, {"", "°C"}, {"", "°F"}, {"Water is", ""}}}
	for i, m := range []float64{50, 100, 200, 250, 300, 400, 500, 700, 1000, 1500, 2000, 2500, 3000, 4000, 5000, 7000, 10000, 15000, 20000, 25000, 50000, 100000, 200000, 500000, 760000} {
		pa := microns.ToSI(m, env)
		k, err := water.BoilingTemperature(pa)
		if err != nil {
			continue
		}
		state := "liquid"
		if k < 273.16 {
			state = "ice"
		}
		down.Rows = append(down.Rows, TableRow{Cells: []string{unit.Fixedf(m, 0), unit.Significant(pa, 4), c.Format(c.FromSI(k, env)), f.Format(f.FromSI(k, env)), state}, Major: i%5 == 0})
	}
	down.Notes = []string{"A vacuum above the figure for the coldest pipe cannot boil the water that lies there.",
		"Ice sublimes slowly and holds a low pressure. A good reading in frost can hide it."}
	down.Sources = sourceItems("table-water-boiling-point-source-", []string{"wagner-pruss-2002", "iapws-r14-08"})
	up := Table{ID: "water-saturation", Title: "The pressure that free water holds", Heading: 2,
		Caption: "If a hold stops at this figure, free water or ice is inside.",
		Columns: []TableColumn{{"Pipe", "°C"}, {"", "°F"}, {"Pressure", "micron"}, {"", "Pa"}}}
	for i := -40; i <= 50; i += 5 {
		k := 273.15 + float64(i)
		pa, err := water.SaturationPressure(k)
		if err != nil {
			continue
		}
		up.Rows = append(up.Rows, TableRow{Cells: []string{strconv.Itoa(i), f.Format(f.FromSI(k, env)), unit.Significant(microns.FromSI(pa, env), 4), unit.Significant(pa, 4)}, Major: i%25 == 0})
		if i < 0 {
			up.Rows[len(up.Rows)-1].Cells[0] = "−" + strconv.Itoa(-i)
		}
	}
	return []any{down, up}
}
