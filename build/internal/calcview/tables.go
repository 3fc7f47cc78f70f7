package calcview

import (
	"strconv"

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
	Base               string // way to the folder "tables", for links in row heads
	Cells              string // "text" where a cell holds words; "" for figures
}

// ColumnGroup is a heading over several columns.
type ColumnGroup struct {
	Label string
	Span  int
}

// TableColumn is the head of a column.
type TableColumn struct{ Label, Unit string }

// TableRow is a row; its first cell is its head, and leads to URL if there is
// one. Major draws a rule above it. Group, alone, is a heading over the rows
// that follow.
type TableRow struct {
	Cells []string
	Major bool
	URL   string
	Group string
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
