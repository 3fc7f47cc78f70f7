package calc_test

import (
	"math"
	"strings"
	"testing"

	"changeout/calc"
)

const micron = 101325.0 / 760000

// TestSeriesText: the ways a log reaches the door, all with the same three
// rows: 0, 1 and 2 minutes; 380.5, 1234 and 1400 micron unless said otherwise.
func TestSeriesText(t *testing.T) {
	minutes := []float64{0, 60, 120}
	standard := []float64{380.5, 1234, 1400}
	for _, c := range []struct {
		name, text, columns string
		time                []float64 // s
		pressure            []float64 // micron
		size                []float64 // mm
	}{
		{"comma, no header", "0,380.5\n1,1234\n2,1400", "", minutes, standard, nil},
		{"comma, header", "minutes,micron\n0,380.5\n1,1234\n2,1400", "", minutes, standard, nil},
		{"comma and space", "minutes, micron\n0, 380.5\n1, 1234\n2, 1400", "", minutes, standard, nil},
		{"columns the other way round", "pressure_micron,time_min\n380.5,0\n1234,1\n1400,2", "", minutes, standard, nil},
		{"other columns are left out", "row,minutes,note,micron\n1,0,start,380.5\n2,1,,1234\n3,2,end,1400", "", minutes, standard, nil},
		{"byte order mark, CRLF, comments, blank lines", "\ufeff# invented\r\nminutes,micron\r\n\r\n0,380.5\r\n# pause\r\n1,1234\r\n2,1400\r\n\r\n", "", minutes, standard, nil},
		{"old line ends", "minutes,micron\r0,380.5\r1,1234\r2,1400", "", minutes, standard, nil},
		{"semicolon, decimal comma", "minutes;micron\n0;380,5\n1;1234\n2;1400", "", minutes, standard, nil},
		{"semicolon, decimal comma and a comma before three digits", "minutes;micron\n0;380,5\n1;1,234\n2;1,400", "", minutes, []float64{380.5, 1.234, 1.4}, nil},
		{"semicolon, decimal point and thousands comma", "minutes;micron\n0;380.5\n1;1,234\n2;1,400", "", minutes, standard, nil},
		{"tab", "minutes\tmicron\n0\t380.5\n1\t1 234\n2\t1 400", "", minutes, standard, nil},
		{"spaces", "minutes micron\n0   380.5\n1   1234\n2   1400", "", minutes, standard, nil},
		{"spaces, decimal comma", "0 380,5\n1 1234\n2 1400,0", "", minutes, standard, nil},
		{"spaces, decimal comma in both columns", "0,0 380,5\n1,0 1234,0\n2,0 1400,0", "", minutes, standard, nil},
		{"quoted thousands", "minutes,micron\n0,380.5\n1,\"1,234\"\n2,\"1,400\"", "", minutes, standard, nil},
		{"quoted everything", "\"minutes\",\"micron\"\n\"0\",\"380.5\"\n\"1\",\"1234\"\n\"2\",\"1400\"", "", minutes, standard, nil},
		{"slashes on one line", "0 380.5 / 1 1234 / 2 1400", "", minutes, standard, nil},
		{"slashes with a header", "minutes,micron / 0,380.5 / 1,1234 / 2,1400", "", minutes, standard, nil},
		{"units in the cells", "0 min,50.729 Pa\n60 s,164.519 Pa\n120 s,186.651 Pa", "", minutes, []float64{380.5, 1234, 1400}, nil},
		{"other units in the header", "elapsed (h);Vacuum [mbar]\n0;0,50729\n1;1,64519\n2;1,86651", "", []float64{0, 3600, 7200}, []float64{380.5, 1234, 1400}, nil},
		{"mtorr", "time_s,p_mTorr,pressure\n0,380.5,x\n60,1234,x\n120,1400,x", "", minutes, standard, nil},
		{"clock", "21:45,380.5\n21:46,1234\n21:47,1400", "", minutes, standard, nil},
		{"clock under a header", "time,micron\n21:45:00,380.5\n21:46:00,1234\n21:47:00,1400", "", minutes, standard, nil},
		{"clock under a header that says minutes", "time_min,micron\n21:45,380.5\n21:46,1234\n21:47,1400", "", minutes, standard, nil},
		{"clock over midnight", "23:59,380.5\n0:00,1234\n0:01,1400", "", minutes, standard, nil},
		{"clock over two midnights", "22:00 380.5\n06:00 1234\n21:00 1240\n05:00 1400", "", []float64{0, 8 * 3600, 23 * 3600, 31 * 3600}, []float64{380.5, 1234, 1240, 1400}, nil},
		{"am and pm", "11:59 pm,380.5\n12:00 am,1234\n12:01 AM,1400", "", minutes, standard, nil},
		{"date and time", "2026-11-25 23:59:00,380.5\n2026-11-26 00:00:00,1234\n2026-11-26T00:01:00Z,1400", "", minutes, standard, nil},
		{"date with slashes", "2026/02/28 23:59,380.5\n2026/03/01 00:00,1234\n2026/03/01 00:01,1400", "", minutes, standard, nil},
		{"leap day", "2028-02-28 12:00;380.5\n2028-02-29 12:00;1234\n2028-03-01 12:00;1400", "", []float64{0, 86400, 172800}, standard, nil},
		{"date and time in two columns", "Date,Time,Pressure (micron)\n2026-11-25,23:59,380.5\n2026-11-26,00:00,1234\n2026-11-26,00:01,1400", "", minutes, standard, nil},
		{"date, time, spaces", "2026-11-25 23:59 380.5\n2026-11-26 00:00 1234\n2026-11-26 00:01 1400", "", minutes, standard, nil},
		{"date, time, spaces, header of two words", "time micron\n2026-11-25 23:59 380.5\n2026-11-26 00:00 1234\n2026-11-26 00:01 1400", "", minutes, standard, nil},
		{"fractions in inches", "minutes,micron,size_in\n0,380.5,3/8\n1,1234,1-1/8\n2,1400,\"1 1/8\"", "", minutes, standard, []float64{9.525, 28.575, 28.575}},
		{"inch signs", "0,380.5,3/8\"\n1,1234,1/2\"\n2,1400,7/8\"", "", minutes, standard, []float64{9.525, 12.7, 22.225}},
		{"inch signs quoted as CSV does", "0,380.5,\"3/8\"\"\"\n1,1234,\"1/2\"\"\"\n2,1400,\"7/8\"\"\"", "", minutes, standard, []float64{9.525, 12.7, 22.225}},
		{"gaps in an optional column", "0,380.5,6.35\n1,1234,\n2,1400", "", minutes, standard, []float64{6.35, math.NaN(), math.NaN()}},
		{"units in the cells under a header without them", "time,pressure,size\n0 min,50.729 Pa,6.35 mm\n60 s,164.519 Pa,\n120 s,1400 micron,1/2 in", "", minutes, standard, []float64{6.35, math.NaN(), 12.7}},
		{"a clock and units in the cells", "time;vacuum\n21:45;380.5 micron\n21:46;164.519 Pa\n21:47;1400 micron", "", minutes, standard, nil},
		{"columns answered", "time;vacuum\n0;380.5\n1;1234\n2;1400", "time:min,pressure:micron", minutes, standard, nil},
		{"columns answered without a header", "380.5;0;x\n1234;1;x\n1400;2;x", "pressure:micron,time:min,-", minutes, standard, nil},
		{"columns answered with a clock", "when;vacuum\n21:45;380.5\n21:46;1234\n21:47;1400", "time:clock,pressure:micron", minutes, standard, nil},
		{"a column that repeats is left out", "minutes,micron,micron\n0,380.5,1\n1,1234,1\n2,1400,1", "", minutes, standard, nil},
	} {
		words := []string{"method=rows", "log=" + c.text}
		if c.columns != "" {
			words = append(words, "log.columns="+c.columns)
		}
		lastRows = nil
		a := ask(words...)
		if len(a.Problems) > 0 || lastRows == nil {
			t.Errorf("%s: refused: %+v", c.name, a.Problems)
			continue
		}
		column(t, c.name, "time", lastRows.Columns[0], c.time, 1, 1e-9)
		// 1e-5: the pascals above are rounded to five or six figures.
		column(t, c.name, "pressure", lastRows.Columns[1], c.pressure, micron, 1e-5)
		column(t, c.name, "size", lastRows.Columns[2], c.size, 1e-3, 1e-12)
	}
}

// column compares a column in SI with what the text says, times a factor.
func column(t *testing.T, name, what string, got, want []float64, factor, relative float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s, %s: got %v, want %v", name, what, got, want)
		return
	}
	for i := range want {
		w := want[i] * factor
		if math.IsNaN(w) && math.IsNaN(got[i]) {
			continue
		}
		if d := got[i] - w; !(math.Abs(d) <= relative*math.Max(1, math.Abs(w))) {
			t.Errorf("%s, %s, row %d: got %v, want %v, difference %g, tolerance %g (the text itself)", name, what, i+1, got[i], w, d, relative*math.Max(1, math.Abs(w)))
		}
	}
}

// TestAskedColumnsAreAnswered follows the suggestions until nothing is asked:
// what the door suggests must be what it understands.
func TestAskedColumnsAreAnswered(t *testing.T) {
	for _, c := range []struct {
		text string
		asks int
	}{
		{"time;vacuum;od\n0;380.5;10\n1;1234;10\n2;1400;10", 3},
		{"time;vacuum;od\n21:45;380.5;10\n21:46;1234;10\n21:47;1400;10", 2},
		{"time,vacuum,od\n0 min,380.5,10 mm\n1 min,1234,\n2 min,1400,3/8 in", 1},                   // only the vacuum leaves its unit open
		{"time,vacuum,od\n0 min,380.5 micron,10 mm\n1 min,1234,10 mm\n2 min,1400 micron,10 mm", 1}, // one bare cell is enough to ask
		{"note,time,vacuum_micron\na,0,380.5\nb,1,1234\nc,2,1400", 1},
	} {
		words := []string{"method=rows", "log=" + c.text}
		asks := 0
		for a := ask(words...); len(a.Problems) > 0; a = ask(words...) {
			p := a.Problems[0]
			if p.Code != calc.ColumnUnit || len(p.Suggest) == 0 || asks > 5 {
				t.Fatalf("%q after %d answers: %+v", c.text, asks, p)
			}
			if strings.Contains(p.Sentence, ":") && strings.Contains(p.Sentence, "?") {
				t.Errorf("%q: the sentence shows the inner answer: %s", c.text, p.Sentence)
			}
			asks++
			words = append(words[:2], p.Suggest[0].Input+"="+p.Suggest[0].Text)
		}
		if asks != c.asks {
			t.Errorf("%q: asked %d times, want %d", c.text, asks, c.asks)
		}
		column(t, c.text, "time", lastRows.Columns[0], []float64{0, 60, 120}, 1, 1e-9)
		column(t, c.text, "pressure", lastRows.Columns[1], []float64{380.5, 1234, 1400}, micron, 1e-9)
	}
}

// TestPlaceInSeries: a problem names the row as the boxes on the page number
// it, without header, comments and blank lines, and the field of the text.
func TestPlaceInSeries(t *testing.T) {
	for _, c := range []struct {
		text       string
		row, field int
	}{
		{"# one\n\nminutes,micron\n0,1\n\n1,abc\n# x\n2,3", 2, 2},
		{"micron,note,minutes\n1,a,0\n2,b,1\n3,c,x", 3, 3},
		{"0,1\n1,\n2,3", 2, 2},
		{"Date,Time,Pressure (micron)\n2026-11-25,23:59,380.5\n2026-11-26,00:00,low\n2026-11-26,00:01,1400", 2, 3},
		{"minutes,micron\n0,0,300\n1,0,301\n2,0,302", 1, 0},
		{"minutes,micron\n0,300", 0, 0},
	} {
		p := ask("method=rows", "log="+c.text).Problems
		if len(p) != 1 || p[0].Row != c.row || p[0].Field != c.field {
			t.Errorf("%q: got %+v, want one problem in row %d, field %d", c.text, p, c.row, c.field)
		}
	}
}

// TestOwnUnitsAreSaid: a unit in a cell that is not the column's is converted,
// and said once a column with its rows.
func TestOwnUnitsAreSaid(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"minutes,micron\n0,300\n1,320 Pa\n2,340 pa\n3,335", "Log, rows 2, 3: pressure is written in Pa there and was converted; the column is in micron."},
		{"minutes,micron\n0,300\n1,301 micron\n2,0.5 mbar", "Log, row 3: pressure is written in mbar there and was converted; the column is in micron."},
		{"minutes,micron\n0,30 Pa\n1,31 Pa\n2,32 Pa", "Log, rows 1, 2, 3: pressure is written in Pa there and was converted; the column is in micron."},
		{"0,300\n1,30 Pa\n2,0.5 mbar\n3,32 Pa\n4,33 Pa\n5,34 Pa", "Log, rows 2, 3, 4, 5, 6: pressure is written in Pa or mbar there and was converted; the column is in micron."},
		{"time,vacuum\n0 min,30 Pa\n1 min,31 Pa\n2 min,32 Pa", ""}, // nothing but units in the cells
		{"minutes,micron\n0,300\n1,301\n2,302", ""},
	} {
		a := ask("method=rows", "log="+c.text)
		if got := strings.Join(a.Warnings, "|"); got != c.want || len(a.Problems) > 0 {
			t.Errorf("%q: got %q %v, want %q", c.text, got, a.Problems, c.want)
		}
	}
}

// FuzzSeries: no text makes the reader panic, and what it accepts is finite
// but for gaps in the optional column.
func FuzzSeries(f *testing.F) {
	f.Add("minutes,micron\n0,380\n1,381\n2,382", "")
	f.Add("time;vacuum\n0;1,5\n1;2\n2;3", "time:min,pressure:micron")
	f.Add("\"a\"\"\n2026-11-25 9:00,\"\n/ 1/ 2", "x:y,,-,time:clock,pressure:clock")
	f.Add("2026-11-25,9:00\n2026-11-25\n9:00", "time:?")
	f.Fuzz(func(t *testing.T, text, columns string) {
		lastRows = nil
		a := calc.Evaluate(probe, calc.Request{Fields: []calc.Field{{Input: "method", Text: "rows"}, {Input: "log", Text: text}, {Input: "log.columns", Text: columns}}})
		if len(a.Problems) > 0 {
			for _, p := range a.Problems {
				if p.Sentence == "" || p.Code == "" {
					t.Errorf("%q, %q: a problem without words: %+v", text, columns, p)
				}
			}
			return
		}
		if lastRows == nil || lastRows.Len() < 3 {
			t.Fatalf("%q, %q: accepted without rows", text, columns)
		}
		for k, c := range lastRows.Columns {
			for _, v := range c {
				if math.IsInf(v, 0) || (k < 2 && math.IsNaN(v)) {
					t.Errorf("%q, %q: column %d holds %v", text, columns, k, v)
				}
			}
		}
	})
}
