package calcview

import (
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"changeout/build/internal/markup"
	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/unit"
)

var noNumber = regexp.MustCompile(`NaN|\bInf\b|[+−-]Inf`)

// TestForms: every declaration becomes a whole form.
func TestForms(t *testing.T) {
	for _, w := range catalog.All() {
		f := NewForm(w, 2, "../")
		if f.Example == nil || len(f.Example.Outputs) == 0 || len(f.Example.Steps) == 0 || len(f.Example.Inputs) != len(w.Example) {
			t.Errorf("%s: the worked example is missing or empty: %+v", w.ID, f.Example)
		}
		if len(f.Inputs) != len(w.Inputs) || len(f.Outputs) != len(w.Outputs) || len(f.Sources) != len(w.Sources) || len(f.Cautions) != len(w.Cautions) {
			t.Errorf("%s: the form lacks inputs, outputs, sources or cautions", w.ID)
		}
		if f.PageURL != "" || NewForm(w, 3, "").PageURL == "" {
			t.Errorf("%s: only an embedded form leads to the worksheet's own page", w.ID)
		}
		ids := map[string]bool{}
		for i, in := range f.Inputs {
			if in.FieldID == "" || ids[in.FieldID] || in.Label == "" {
				t.Errorf("%s %s: field id %q, label %q", w.ID, in.ID, in.FieldID, in.Label)
			}
			ids[in.FieldID] = true
			checkUnits(t, w, &w.Inputs[i], in)
		}
	}
}

// checkUnits: the first unit is the metric default, each is offered once, and
// the default written in it is the declared one.
func checkUnits(t *testing.T, w *calc.Worksheet, in *calc.Input, v Input) {
	t.Helper()
	if in.Kind != calc.Quantity {
		return
	}
	if in.Quantity == unit.Date { // written year first, in no unit
		if v.Bounds == "" || len(v.Units) != 0 || len(in.Units) != 1 {
			t.Errorf("%s %s: bounds %q, %d units shown of %d, want none of 1", w.ID, in.ID, v.Bounds, len(v.Units), len(in.Units))
		}
		return
	}
	if v.Bounds == "" || len(v.Units) != len(in.Units) {
		t.Errorf("%s %s: bounds %q, %d units, want %d", w.ID, in.ID, v.Bounds, len(v.Units), len(in.Units))
	}
	for _, u := range v.Units {
		if label := in.Quantity.Unit(u.ID).Label; !strings.HasSuffix(u.Bounds, strings.TrimSpace(" "+label)+".") || !strings.Contains(u.Bounds, " to ") || noNumber.MatchString(u.Bounds) {
			t.Errorf("%s %s: bounds in %s: %q", w.ID, in.ID, u.ID, u.Bounds)
		}
	}
	if want := calc.DefaultUnit(in.Quantity, in.Units, unit.SI).ID; v.Units[0].ID != want {
		t.Errorf("%s %s: first unit %s, want %s", w.ID, in.ID, v.Units[0].ID, want)
	}
	if in.Default == "" {
		return
	}
	env := unit.Env{Atmosphere: unit.StandardAtmosphere}
	n := unit.ParseNumber(in.Default)
	want := in.Quantity.Unit(n.Rest).ToSI(n.Value, env)
	for _, u := range v.Units {
		m := unit.ParseNumber(u.Default)
		got := in.Quantity.Unit(u.ID).ToSI(m.Value, env)
		// Defaults are written to six figures.
		if d := got - want; m.Trouble != unit.NumberFine || !(math.Abs(d) <= 1e-5*math.Max(1, math.Abs(want))) {
			t.Errorf("%s %s: default %q %s is %v, want %v, difference %g, tolerance %g (declared %s)", w.ID, in.ID, u.Default, u.ID, got, want, d, 1e-5*math.Max(1, math.Abs(want)), in.Default)
		}
	}
}

// TestShelves: a long list of choices is grouped and lacks none; the group that
// people look for stands first.
func TestShelves(t *testing.T) {
	in := newInput(catalog.Saturation, catalog.Saturation.Input("refrigerant"))
	grouped := map[string]bool{}
	for _, s := range in.Shelves {
		if !slices.Contains(shelves, s.Label) || len(s.Options) == 0 {
			t.Errorf("got a group %q of %d", s.Label, len(s.Options))
		}
		for _, o := range s.Options {
			if grouped[o[0]] || o[1] == "" {
				t.Errorf("%q (%q) stands twice or has no label", o[0], o[1])
			}
			grouped[o[0]] = true
		}
	}
	for _, o := range catalog.Saturation.Input("refrigerant").Options {
		if !grouped[o.ID] {
			t.Errorf("%s is in no group", o.ID)
		}
	}
	if first := in.Shelves[0]; len(in.Options) != 0 || len(first.Options) != len(common) || !slices.Contains(first.Options, [2]string{"R-410A", "R-410A"}) {
		t.Errorf("got %d options outside groups and first %v, want none and those met in air conditioning", len(in.Options), first)
	}
}

// TestColumnNames: what stands over the empty rows of a series, for metric and
// for US units, is what the door reads back as that column in that unit.
func TestColumnNames(t *testing.T) {
	both := 0
	for _, w := range catalog.All() {
		for i, v := range NewForm(w, 2, "").Inputs {
			in := &w.Inputs[i]
			if in.Kind != calc.Series {
				continue
			}
			for _, us := range []bool{false, true} {
				names := make([]string, len(v.Columns))
				for c, column := range v.Columns {
					names[c] = column.ID
					if us && column.IP != "" {
						names[c] = column.IP
						both++
						if in.Columns[c].Quantity.Unit(strings.TrimPrefix(column.IP, in.Columns[c].ID+"_")).Label != column.IPUnit {
							t.Errorf("%s %s: column %s is labelled %s", w.ID, in.ID, column.IP, column.IPUnit)
						}
					}
				}
				text := strings.Join(names, ",") + strings.Repeat("\n"+strings.Repeat("1,", len(names)-1)+"1", max(in.MinRows, 1))
				for _, p := range calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: append(chosen(w, in), calc.Field{Input: in.ID, Text: text})}).Problems {
					if p.Input == in.ID && (p.Code == calc.ColumnUnit || p.Code == calc.UnknownColumn) {
						t.Errorf("%s: “%s” is not understood: %s", w.ID, names, p.Sentence)
					}
				}
			}
		}
	}
	if both < 8 {
		t.Errorf("got %d columns with a US name, want those of tubes, lengths, masses and temperatures", both)
	}
}

// chosen makes the choices that an input is asked under.
func chosen(w *calc.Worksheet, in *calc.Input) []calc.Field {
	var fields []calc.Field
	for _, when := range in.When {
		fields = append(fields, calc.Field{Input: when.Input, Text: when.Is[0]})
	}
	return fields
}

// TestEmbedded: inside a procedure the form is whole, and what only a reader at
// a desk needs is left to the worksheet's own page.
func TestEmbedded(t *testing.T) {
	for _, w := range catalog.All() {
		f := NewForm(w, 3, "../")
		if len(f.Inputs) != len(w.Inputs) || len(f.Cautions) != len(w.Cautions) || len(f.Limits) != len(w.Limits) {
			t.Errorf("%s: inputs, cautions, limits or the worked example are missing", w.ID)
		}
		if len(f.Sources) > 0 || f.Example != nil || f.PageURL == "" {
			t.Errorf("%s: got sources, working or chart inside another page, or no way to its own page", w.ID)
		}
	}
}

func TestConditions(t *testing.T) {
	f := NewForm(catalog.ChargeAdjustment, 2, "")
	for id, want := range map[string]string{"nameplate": "method=weight", "airflow-proved": "method=readings&system=single-split-fixed|single-split-valve", "system": ""} {
		for _, in := range f.Inputs {
			if in.ID == id && in.When != want {
				t.Errorf("%s: condition %q, want %q", id, in.When, want)
			}
		}
	}
}

func TestWaterTables(t *testing.T) {
	for _, part := range waterTable() {
		table := part.(Table)
		if len(table.Rows) < 15 {
			t.Errorf("%s: %d rows", table.ID, len(table.Rows))
		}
		for _, row := range table.Rows {
			if len(row.Cells) != len(table.Columns) || noNumber.MatchString(strings.Join(row.Cells, " ")) {
				t.Errorf("%s: %v", table.ID, row.Cells)
			}
			// standards.md section 7: 1000 micron is 133.3 Pa, −17.31 °C; 20 °C holds 2339.2 Pa, 17,545 micron.
			if row.Cells[0] == "1000" && (row.Cells[1] != "133.3" || row.Cells[2] != "−17.3" || row.Cells[4] != "ice") {
				t.Errorf("1000 micron: got %v, want 133.3 Pa, −17.3 °C, ice (iapws-r14-08)", row.Cells)
			}
			if row.Cells[0] == "20" && (row.Cells[2] != "17\u202f545" && row.Cells[2] != "17\u202f550" || row.Cells[3] != "2339") {
				t.Errorf("20 °C: got %v, want 17 545 micron, 2339 Pa (wagner-pruss-2002)", row.Cells)
			}
		}
	}
}

// TestSupply: everything that the site asks for is there, and the check values
// are met when the handbook is built.
func TestSupply(t *testing.T) {
	s, err := NewSupply(os.DirFS("../../../site"), os.DirFS("../../../testdata/published"))
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range s.Worksheets.IDs {
		html, err := s.Worksheets.HTML(id, markup.Place{})
		if err != nil || !strings.Contains(string(html), `data-worksheet="`+id+`"`) || noNumber.Match(html) {
			t.Errorf("worksheet %s: %v, %d bytes", id, err, len(html))
		}
	}
	for _, id := range s.Tables.IDs {
		html, err := s.Tables.HTML(id, markup.Place{})
		if err != nil || !strings.Contains(string(html), "<table") || noNumber.Match(html) {
			t.Errorf("table %s: %v, %d bytes", id, err, len(html))
		}
	}
	for _, c := range s.Checked {
		for _, row := range c.Rows {
			if strings.Contains(row.Got, "differs") || row.Read == "" || row.Source == "" || row.Inputs == "" || row.Quantity == "" {
				t.Errorf("%s: %+v", c.ID, row)
			}
		}
	}
}

// TestFigureOfCheckedValues: two figures below the tolerance, nothing that is not zero as zero, words as they are.
func TestFigureOfCheckedValues(t *testing.T) {
	for _, c := range []struct {
		text      string
		tolerance float64
		label     string
		want      string
	}{
		{"39.857625", 0.5, "°F", "39.858 °F"}, {"-8.7e-06", 0.01, "", "under 0.0001"}, {"0", 0.01, "", "0.0000"}, {"1234.5678", 20, "Pa", "1234.6 Pa"},
		{"tight", 0, "", "tight"}, {"tight", 1, "Pa", "tight"}, {"3.25", 0, "K", "3.25"},
	} {
		if got := figure(c.text, c.tolerance, c.label); got != c.want {
			t.Errorf("%q within %g: got %q, want %q", c.text, c.tolerance, got, c.want)
		}
	}
}

// TestMinusOfCheckedValues: the page of checks writes a value below zero as every other page does.
func TestMinusOfCheckedValues(t *testing.T) {
	w := catalog.Lookup("water-point")
	if got := exampleText(w.Input("temperature"), calc.Field{Input: "temperature", Text: "-30 C"}); got != "−30 °C" || minus("-40.81") != "−40.81" || minus("leak-and-moisture") != "leak-and-moisture" {
		t.Errorf("got %q, %q, %q", got, minus("-40.81"), minus("leak-and-moisture"))
	}
}

// A worked example shows the rows of a log under the titles of the form, never as they are typed.
func TestExampleSeries(t *testing.T) {
	seen := map[string]string{}
	for _, w := range catalog.All() {
		f := NewForm(w, 2, "../")
		if f.Example == nil {
			continue
		}
		for _, in := range f.Example.Inputs {
			if strings.Contains(in.Text, "\n") {
				t.Errorf("%s: %s reads %q", w.ID, in.Label, in.Text)
			}
			for _, row := range in.Rows {
				if len(row) != len(in.Heads) {
					t.Errorf("%s: %s has %d titles over %v", w.ID, in.Label, len(in.Heads), row)
				}
			}
			if in.Rows != nil {
				seen[w.ID+" "+in.Label] = strings.Join(in.Heads, " | ") + " # " + in.Text
			}
		}
	}
	for name, want := range map[string]string{
		"charge-adjustment Liquid lines": "Outside diameter, mm | Length, m | Maker's factor, kg/m # ",
		"standing-pressure Log":          "Time, h | Pressure, bar gauge | Temperature, °C # ",
	} {
		if seen[name] != want {
			t.Errorf("%s is %q, want %q", name, seen[name], want)
		}
	}
	for name, got := range seen {
		if strings.Contains(got, "_") {
			t.Errorf("%s: %s", name, got)
		}
		t.Log(name, "=", got)
	}
}
