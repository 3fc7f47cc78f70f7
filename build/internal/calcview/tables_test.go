package calcview

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/property/refrigerant"
	"changeout/calc/source"
	"changeout/calc/unit"
)

var allLooks = sync.OnceValue(newLooks)

func lookAt(t *testing.T, name string) *look {
	t.Helper()
	for _, l := range allLooks() {
		if l.r.Name == name {
			return l
		}
	}
	t.Fatalf("%s is not offered", name)
	return nil
}

// TestPressureTables: each offered refrigerant has a table in both families of
// units that rises with temperature, and dew never lies above bubble.
func TestPressureTables(t *testing.T) {
	if len(allLooks()) < 149 {
		t.Errorf("%d refrigerants, want 149: 42 pure fluids and 107 blends", len(allLooks()))
	}
	for _, l := range allLooks() {
		low, high := l.r.Range()
		for i, part := range pressureTables(l) {
			table := part.(Table)
			if want := int(math.Min(high-math.Max(low, coldestRow), 60)/[]float64{2, 5 / 1.8}[i]) - 1; len(table.Rows) < want {
				t.Errorf("%s: %d rows, want %d or more between %.1f K and %.1f K", table.ID, len(table.Rows), want, low, high)
			}
			last := math.Inf(-1)
			for _, row := range table.Rows {
				if len(row.Cells) != len(table.Columns) {
					t.Fatalf("%s: %d cells under %d columns", table.ID, len(row.Cells), len(table.Columns))
				}
				if noNumber.MatchString(strings.Join(row.Cells, " ")) {
					t.Errorf("%s: %v", table.ID, row.Cells)
				}
				p := number(t, row.Cells[1])
				if !(p >= last) {
					t.Errorf("%s at %s: %v is not above %v", table.ID, row.Cells[0], p, last)
				}
				if last = p; l.hasGlide && !(number(t, row.Cells[2]) <= p) {
					t.Errorf("%s at %s: dew %s above bubble %s", table.ID, row.Cells[0], row.Cells[2], row.Cells[1])
				}
			}
		}
	}
}

func number(t *testing.T, cell string) float64 {
	t.Helper()
	n := unit.ParseNumber(cell)
	if n.Trouble != unit.NumberFine || n.Rest != "" {
		t.Fatalf("%q is no number", cell)
	}
	return n.Value
}

// half is half of the last digit that a cell shows.
func half(cell string) float64 {
	_, decimals, _ := strings.Cut(cell, ".")
	return 0.5 * math.Pow10(-len(decimals))
}

// TestTableAgreesWithWorksheet: the printed table and the worksheet give one
// answer, to the digit shown.
func TestTableAgreesWithWorksheet(t *testing.T) {
	table := saturationTable(lookAt(t, "R-410A").r, true, "C", "kPag", 2)
	row := rowOf(table, "20")
	if row == nil {
		t.Fatal("no row at 20 °C")
	}
	a := calc.Evaluate(catalog.Saturation, calc.Request{System: unit.SI, Fields: []calc.Field{{Input: "refrigerant", Text: "R-410A"}, {Input: "temperature", Text: "20 C"}}})
	compared := 0
	for _, o := range a.Outputs {
		if o.ID == "bubble-pressure" {
			compared++
			if !strings.HasPrefix(o.Text, row[1]) {
				t.Errorf("20 °C: table %s, worksheet %s", row[1], o.Text)
			}
		}
	}
	if compared != 1 {
		t.Errorf("the worksheet gave %d bubble pressures, want 1", compared)
	}
}

func rowOf(table Table, head string) []string {
	for _, r := range table.Rows {
		if len(r.Cells) > 0 && r.Cells[0] == head {
			return r.Cells
		}
	}
	return nil
}

// outside is a saturation pressure from outside the project.
type outside struct {
	refrigerant, source string
	dew, both           bool
	t, p, tolerance     float64 // K, Pa absolute, relative
}

// readOutside reads the committed check values: reference library, pseudo-pure
// equations, another program.
func readOutside(t *testing.T) []outside {
	t.Helper()
	files, _ := filepath.Glob("../../../testdata/published/saturation/*.csv")
	var out []outside
	for _, name := range files {
		f, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		r := csv.NewReader(f)
		r.Comment, r.FieldsPerRecord = '#', -1
		rows, err := r.ReadAll()
		f.Close()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, row := range rows {
			if len(row) < 8 || !slices.Contains([]string{"bubble pressure", "dew pressure", "saturation pressure"}, row[1]) || row[5] != "Pa" {
				continue
			}
			o := outside{refrigerant: row[0], dew: row[1] == "dew pressure", both: row[1] == "saturation pressure", source: row[7]}
			var errs [3]error
			o.t, errs[0] = strconv.ParseFloat(row[2], 64)
			o.p, errs[1] = strconv.ParseFloat(row[4], 64)
			o.tolerance, errs[2] = strconv.ParseFloat(row[6], 64)
			if errs != [3]error{} {
				t.Fatalf("%s: %v", name, row)
			}
			out = append(out, o)
		}
	}
	return out
}

// TestTablesAgainstOutside holds printed cells against values from outside, in
// both families of units. Tolerance: half the last digit shown, and the
// tolerance of the outside value.
func TestTablesAgainstOutside(t *testing.T) {
	const atmosphere = 101325.0 // Pa, the stated basis of the gauge
	tables := []struct {
		degrees, gauge, factor, step float64
		t, p                         string
	}{{1, 0, 1000, 2, "C", "kPag"}, {1.8, 32, 6894.757293168, 5, "F", "psig"}}
	compared := [2]int{}
	for _, o := range readOutside(t) {
		for i, u := range tables {
			head := (o.t-273.15)*u.degrees + u.gauge
			round := math.Round(head)
			if math.Abs(head-round) > 1e-9 || math.Mod(round, u.step) != 0 || o.t < coldestRow {
				continue
			}
			r, ok := refrigerant.Lookup(o.refrigerant)
			if !ok {
				continue
			}
			l := lookAt(t, r.Name)
			cells := rowOf(saturationTable(l.r, l.hasGlide, u.t, u.p, u.step), unit.Fixedf(round, 0))
			if cells == nil {
				t.Errorf("%s %s: no row at %v %s", o.refrigerant, u.p, round, u.t)
				continue
			}
			cell := cells[1]
			if o.dew && l.hasGlide {
				cell = cells[2]
			} else if o.dew {
				continue // one column, which is the bubble pressure; they differ by less than 0.1 K
			}
			compared[i]++
			got, want := number(t, cell), (o.p-atmosphere)/u.factor
			tolerance := half(cell)*(1+1e-9) + o.tolerance*o.p/u.factor
			if d := got - want; !(math.Abs(d) <= tolerance) {
				t.Errorf("%s at %v %s: got %v, want %.4f %s, difference %g, tolerance %g (%s)", o.refrigerant, round, u.t, got, want, u.p, d, tolerance, o.source)
			}
		}
	}
	if compared[0] < 20 || compared[1] < 5 {
		t.Errorf("%v cells compared, want 20 metric and 5 US or more", compared)
	}
	t.Logf("%d metric and %d US cells compared", compared[0], compared[1])
}

// TestPressureCards holds US rows against figures that pressure cards of the
// trade print (ashrae-fundamentals, from memory: see testdata, saturation.csv),
// to their tolerance.
func TestPressureCards(t *testing.T) {
	for _, c := range []struct {
		name, degrees   string
		want, tolerance float64 // psig
	}{{"R-22", "40", 68.5, 0.4}, {"R-22", "100", 195.9, 0.4}, {"R-134a", "40", 35.0, 0.4}, {"R-134a", "100", 124.2, 0.4}} {
		l := lookAt(t, c.name)
		cells := rowOf(saturationTable(l.r, l.hasGlide, "F", "psig", 5), c.degrees)
		if cells == nil {
			t.Fatalf("%s: no row at %s °F", c.name, c.degrees)
		}
		if d := number(t, cells[1]) - c.want; !(math.Abs(d) <= c.tolerance) {
			t.Errorf("%s at %s °F: got %s, want %v psig, difference %g, tolerance %g (ashrae-fundamentals)", c.name, c.degrees, cells[1], c.want, d, c.tolerance)
		}
	}
}

// TestComparison: every refrigerant stands in it once, under one heading, with a
// page of its own, and its 25 °C column meets values from outside.
func TestComparison(t *testing.T) {
	parts := compareTables(allLooks())
	seen := map[string]bool{}
	for i, part := range parts {
		table := part.(Table)
		var groups []string
		for _, row := range table.Rows {
			if row.Group != "" {
				groups = append(groups, row.Group)
				continue
			}
			if len(row.Cells) != len(table.Columns) || noNumber.MatchString(strings.Join(row.Cells, " ")) {
				t.Errorf("%s: %v", table.ID, row.Cells)
			}
			if i == 0 {
				if seen[row.Cells[0]] {
					t.Errorf("%s stands twice", row.Cells[0])
				}
				seen[row.Cells[0]] = true
				if row.URL != tableID(row.Cells[0])+".html" {
					t.Errorf("%s leads to %s", row.Cells[0], row.URL)
				}
			}
		}
		if !slices.Equal(groups, shelves) {
			t.Errorf("%s: groups %q, want %q", table.ID, groups, shelves)
		}
		spans := 0
		for _, g := range table.Groups {
			spans += g.Span
		}
		if spans != len(table.Columns) {
			t.Errorf("%s: headings span %d columns of %d", table.ID, spans, len(table.Columns))
		}
	}
	for _, l := range allLooks() {
		if !seen[l.r.Name] {
			t.Errorf("%s is missing", l.r.Name)
		}
	}
	for _, name := range common {
		if !seen[name] {
			t.Errorf("%s is called common and is not offered", name)
		}
	}
	metric := parts[0].(Table)
	n := 0
	for _, o := range readOutside(t) {
		i := slices.Index(compared[:], o.t)
		if i < 0 {
			continue
		}
		cells := rowOf(metric, lookAt(t, o.refrigerant).r.Name)
		column := 1 + 2*i
		if o.dew && cells[column+1] != "same" {
			column++
		} else if o.dew {
			continue
		}
		n++
		got, want := number(t, cells[column]), (o.p-101325)/1000
		tolerance := half(cells[column])*(1+1e-9) + o.tolerance*o.p/1000
		if d := got - want; !(math.Abs(d) <= tolerance) {
			t.Errorf("%s at %v K: got %v, want %.3f kPa gauge, difference %g, tolerance %g (%s)", o.refrigerant, o.t, got, want, d, tolerance, o.source)
		}
	}
	if n < 15 {
		t.Errorf("%d cells compared, want 15 or more", n)
	}
}

// TestFacts: every sheet is whole, and what it cites is in the bibliography.
func TestFacts(t *testing.T) {
	for _, l := range allLooks() {
		f := newFacts(l)
		if len(f.Key) != 5 || len(f.Rest) != 7 || len(f.Law) != 3 || len(f.Jumps) != 3 {
			t.Errorf("%s: %d, %d and %d facts, %d jumps", l.r.Name, len(f.Key), len(f.Rest), len(f.Law), len(f.Jumps))
		}
		for _, fact := range slices.Concat(f.Key, f.Rest, f.Law) {
			if fact.Label == "" || len(fact.Lines) == 0 {
				t.Errorf("%s: an empty fact %+v", l.r.Name, fact)
			}
			for _, line := range fact.Lines {
				if line.Text == "" || noNumber.MatchString(line.Text) {
					t.Errorf("%s, %s: %q", l.r.Name, fact.Label, line.Text)
				}
				for _, c := range line.Cites {
					if c.Number < 1 || c.Number > len(f.Sources) || "#"+f.Sources[c.Number-1].ID != c.Href {
						t.Errorf("%s, %s: citation %+v names none of %d sources", l.r.Name, fact.Label, c, len(f.Sources))
					}
				}
			}
		}
		for _, key := range metricSources() {
			if _, ok := source.Lookup(key); !ok {
				t.Errorf("no source %s", key)
			}
		}
	}
}
