package calcview

import (
	"strings"

	"changeout/calc/property/refrigerant"
	"changeout/calc/property/refrigerant/facts"
	"changeout/calc/unit"
)

// noState stands where a refrigerant has no saturated state.
const noState = "–"

// compareTables sets all refrigerants side by side, in metric and in US units.
func compareTables(looks []*look) []any {
	metric := compareTable(looks, "kPag", "C", 1)
	metric.ID, metric.Title = "compare-metric", "All refrigerants, metric"
	us := compareTable(looks, "psig", "F", 1.8)
	us.ID, us.Title = "compare-us", "All refrigerants, US units"
	metric.Notes = compareNotes()
	metric.Sources = sourceItems("table-compare-metric-source-", metricSources())
	return []any{metric, us}
}

func compareTable(looks []*look, pressure, temperature string, degrees float64) Table {
	u, tu := unit.Pressure.Unit(pressure), unit.Temperature.Unit(temperature)
	env := unit.Env{Atmosphere: unit.StandardAtmosphere}
	t := Table{Heading: 2, Cells: "text", Columns: []TableColumn{{"Refrigerant", ""}}, Groups: []ColumnGroup{{"", 1}},
		Caption: "Gauge pressure at sea level, bubble and dew. Then glide, class, GWP, charging and oil."}
	for _, k := range compared {
		t.Groups = append(t.Groups, ColumnGroup{"At " + unit.Fixedf(tu.FromSI(k, env), 0) + " " + tu.Label, 2})
		t.Columns = append(t.Columns, TableColumn{"Bubble", u.Label}, TableColumn{"Dew", u.Label})
	}
	glide := "K"
	if temperature == "F" {
		glide = "°F"
	}
	t.Columns = append(t.Columns, TableColumn{"Glide", glide}, TableColumn{"Class", ""}, TableColumn{"GWP", "AR4"}, TableColumn{"GWP", "EU list"}, TableColumn{"Charge as", ""}, TableColumn{"Usual oil", ""})
	t.Groups = append(t.Groups, ColumnGroup{"", 6})
	for _, shelf := range shelves {
		t.Rows = append(t.Rows, TableRow{Group: shelf})
		for _, l := range looks {
			if l.shelf() == shelf {
				t.Rows = append(t.Rows, compareRow(l, u, env, degrees))
			}
		}
	}
	return t
}

func compareRow(l *look, u *unit.Unit, env unit.Env, degrees float64) TableRow {
	row := TableRow{Cells: []string{l.r.Name}, URL: tableID(l.r.Name) + ".html"}
	for i := range compared {
		if l.bubble[i] == 0 {
			row.Cells = append(row.Cells, noState, noState)
			continue
		}
		bubble := u.Format(u.FromSI(l.bubble[i], env))
		dew := "same"
		if l.hasGlide {
			dew = u.Format(u.FromSI(l.dew[i], env))
		}
		row.Cells = append(row.Cells, bubble, dew)
	}
	glide := "0"
	switch {
	case l.glide > glideMatters:
		glide = unit.Fixedf(l.glide*degrees, 1)
	case l.sheet.Kind != facts.Pure:
		glide = "<\u202f" + unit.Fixedf(glideMatters*degrees, 1)
	}
	return TableRow{URL: row.URL, Cells: append(row.Cells, glide, known(l.sheet.Class.Text), listGWP(l.sheet.GWP("AR4")), listGWP(l.sheet.GWP("EU 2024/573")), string(l.sheet.Phase), l.sheet.OilShort())}
}

// known turns "not known" into what a narrow cell says.
func known(s string) string {
	if s == "" || s == "not known" {
		return "?"
	}
	return s
}

func listGWP(f refrigerant.Fact) string {
	if !f.Known() {
		return "?"
	}
	text := strings.Replace(gwpText(f.Value), "below ", "<\u202f", 1)
	if f.Read == refrigerant.Memory {
		text += "*"
	}
	return text
}

func compareNotes() []string {
	var names []string
	for _, m := range refrigerant.AllMissing() {
		names = append(names, m.Name)
	}
	return []string{
		"same: dew equals bubble within 0.1 K. " + noState + ": too near the critical point, or beyond it. ?: not known here.",
		"Glide: dew temperature less bubble temperature, at the bubble pressure of 25 °C (77 °F), or 1 K below the end of the range.",
		"*: a part of the figure is from memory. Classes are from memory, but for those with a source on the page of the refrigerant: compare with the nameplate.",
		"AB: alkylbenzene. The compressor’s nameplate or manual decides on the oil.",
		"The first group is common practice; no source ranks refrigerants for large air conditioning.",
		"Helium, nitrogen, oxygen and argon are gases at every site: no table.",
		"Left out, because nobody has published data for a pair of their constituents: " + strings.Join(names, ", ") + ". Use the maker’s chart.",
	}
}

// metricSources are the keys behind the columns of the comparison; the
// equations stand on the page of each refrigerant.
func metricSources() []string {
	return []string{"ashrae-34", "imc", "gwpcsv", "eu573", "oil-textbook", "oil-guide-608", "coolp"}
}
