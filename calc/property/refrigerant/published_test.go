package refrigerant_test

import (
	"bufio"
	"errors"
	"math"
	"os"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"testing"

	"changeout/calc/property/refrigerant"
)

const statesFile = "../../../testdata/published/saturation/coolprop-states.csv"

// row is one check value of testdata/published/saturation.
type row struct {
	refrigerant, quantity, inputUnit, unit, source, locator string
	inputText                                               string
	input, expected, tolerance                              float64
	where                                                   string
}

// readRows reads one file. Columns: refrigerant, quantity, input, input_unit, expected, unit, tolerance, source, locator, read.
func readRows(t *testing.T, path string) []row {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var rows []row
	header := false
	scan := bufio.NewScanner(f)
	for line := 1; scan.Scan(); line++ {
		text := scan.Text()
		if text == "" || strings.HasPrefix(text, "#") {
			continue
		}
		c := strings.Split(text, ",")
		if len(c) != 10 {
			t.Fatalf("%s:%d: %d columns, want 10", path, line, len(c))
		}
		if !header {
			header = true
			continue
		}
		r := row{refrigerant: c[0], quantity: c[1], inputText: c[2], inputUnit: c[3], unit: c[5], source: c[7], locator: c[8],
			where: filepath.Base(path) + ":" + strconv.Itoa(line)}
		for i, p := range map[int]*float64{2: &r.input, 4: &r.expected, 6: &r.tolerance} {
			if i == 2 && strings.Contains(c[2], ";") {
				continue // temperature;pressure, read where it is used
			}
			if *p, err = strconv.ParseFloat(c[i], 64); err != nil {
				t.Fatalf("%s: column %d: %v", r.where, i+1, err)
			}
		}
		switch c[9] {
		case "print", "secondary", "library", "memory", "computed":
		default:
			t.Fatalf("%s: read is %q", r.where, c[9])
		}
		rows = append(rows, r)
	}
	if err := scan.Err(); err != nil {
		t.Fatal(err)
	}
	if len(rows) == 0 {
		t.Fatalf("%s: no rows", path)
	}
	return rows
}

// answer computes the quantity of a row.
func answer(r row) (float64, error) {
	ref, ok := refrigerant.Lookup(r.refrigerant)
	if !ok {
		return 0, errors.New("not in the catalogue")
	}
	molar := 1.0
	if r.unit == "mol/m3" {
		molar = 1 / ref.MolarMass
	}
	at := ref.BubbleAtT
	what := strings.TrimPrefix(r.quantity, "bubble ")
	if s, ok := strings.CutPrefix(r.quantity, "dew "); ok {
		at, what = ref.DewAtT, s
	}
	p, err := at(r.input)
	if err != nil {
		return 0, err
	}
	switch what {
	case "pressure", "saturation pressure":
		return p.P, nil
	case "liquid density":
		return p.RhoLiquid * molar, nil
	case "vapor density":
		return p.RhoVapor * molar, nil
	}
	return 0, errors.New("unknown quantity " + r.quantity)
}

// TestPublished holds every row of testdata/published/saturation against the equations and logs the worst of each file.
func TestPublished(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/published/saturation/*.csv")
	if err != nil || len(files) < 5 {
		t.Fatalf("files found: %v, %v; want at least 5", files, err)
	}
	sort.Strings(files)
	for _, file := range files {
		if file == statesFile {
			continue // TestStates
		}
		t.Run(strings.TrimSuffix(filepath.Base(file), ".csv"), func(t *testing.T) {
			rows := readRows(t, file)
			worst := map[string]float64{} // by quantity
			at := map[string]row{}
			for _, r := range rows {
				got, err := answer(r)
				if err != nil {
					t.Errorf("%s: %s %s at %v %s: %v", r.where, r.refrigerant, r.quantity, r.input, r.inputUnit, err)
					continue
				}
				diff := got/r.expected - 1
				if !(math.Abs(diff) < r.tolerance) {
					t.Errorf("%s: %s %s at %v %s: got %.12g, want %.12g %s, relative difference %.2g, tolerance %.2g; source %s, %s",
						r.where, r.refrigerant, r.quantity, r.input, r.inputUnit, got, r.expected, r.unit, diff, r.tolerance, r.source, r.locator)
				}
				if math.Abs(diff) > worst[r.quantity] {
					worst[r.quantity], at[r.quantity] = math.Abs(diff), r
				}
			}
			for q, d := range worst {
				t.Logf("%d rows; worst %s: relative %.2g, %s at %v %s", len(rows), q, d, at[q].refrigerant, at[q].input, at[q].inputUnit)
			}
		})
	}
}
