package calcview

import (
	"changeout/calc/catalog"
	"changeout/calc/property/refrigerant"
	"changeout/calc/unit"
)

// pressureTables computes the metric and the US table of a refrigerant.
func pressureTables(l *look) []any {
	metric := saturationTable(l.r, l.hasGlide, "C", "kPag", 2)
	metric.ID, metric.Title = tableID(l.r.Name)+"-metric", l.r.Name+", metric"
	us := saturationTable(l.r, l.hasGlide, "F", "psig", 5)
	us.ID, us.Title = tableID(l.r.Name)+"-us", l.r.Name+", US units"
	metric.Notes = pressureNotes(l)
	metric.Sources = sourceItems("table-"+metric.ID+"-source-", catalog.EquationKeys(l.r))
	return []any{metric, us}
}

// coldestRow is where a table begins, K, unless the equations begin later.
const coldestRow = 223.15

// saturationTable computes gauge pressures at round temperatures. Bubble and
// dew share a column where the glide never matters. Three columns at the most,
// so that the table fits a phone held upright.
func saturationTable(r *refrigerant.Refrigerant, glide bool, temperature, pressure string, step float64) Table {
	degrees, u := unit.Temperature.Unit(temperature), unit.Pressure.Unit(pressure)
	env := unit.Env{Atmosphere: unit.StandardAtmosphere}
	t := Table{Heading: 2, Columns: []TableColumn{{"Temperature", degrees.Label}}}
	if glide {
		t.Columns = append(t.Columns, TableColumn{"Bubble", u.Label}, TableColumn{"Dew", u.Label})
	} else {
		t.Columns = append(t.Columns, TableColumn{"Pressure", u.Label})
	}
	low, high := r.Range()
	from := max(low, coldestRow)
	for i := int(degrees.FromSI(from, env)/step) - 1; ; i++ {
		shown := float64(i) * step
		k := degrees.ToSI(shown, env)
		if k < from-1e-6 {
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
		cells := []string{unit.Fixedf(shown, 0), u.Format(u.FromSI(bubble.P, env))}
		if glide {
			cells = append(cells, u.Format(u.FromSI(dew.P, env)))
		}
		t.Rows = append(t.Rows, TableRow{Cells: cells, Major: i%5 == 0})
	}
	if pressure == "psig" {
		t.Caption = "Gauge pressure at sea level (14.7 psi). At 3300 ft a gauge shows 1.6 psi more at the same temperature."
	} else {
		t.Caption = "Gauge pressure at sea level (101.3 kPa). At 1000 m a gauge shows 11 kPa more at the same temperature."
	}
	return t
}

// pressureNotes say how to read the tables and how far they reach.
func pressureNotes(l *look) []string {
	env := unit.Env{}
	c, f := unit.Temperature.Unit("C"), unit.Temperature.Unit("F")
	both := func(k float64) string {
		return unit.Fixedf(c.FromSI(k, env), 1) + " °C (" + unit.Fixedf(f.FromSI(k, env), 1) + " °F)"
	}
	var notes []string
	if l.hasGlide {
		notes = append(notes, "Bubble: use it for subcooling. Dew: use it for superheat.")
	} else {
		notes = append(notes, "Bubble and dew differ by less than 0.1 K: one column serves for superheat and for subcooling.")
	}
	low, high := l.r.Range()
	notes = append(notes, "A figure below zero is a vacuum.")
	span := "The tables run from " + both(max(low, coldestRow))
	if low > coldestRow {
		span += ", where the equations begin,"
	}
	return append(notes, span+" up to "+both(high)+". Nearer the critical point no gauge can tell.",
		"Computed from the full equations of state when this handbook was built. See how the saturation worksheet was checked.")
}
