// Package gridtest holds the engine against many states from outside the project. It has tests only, and lies beside the packages
// it tests because it looks at them from where a worksheet does: through package refrigerant.
//
//	grid_test.go       the seeded grid of testdata/published/grid against CoolProp
//	exemptions_test.go the outliers that are understood, each with its reason
//	printed_test.go    tables printed in the papers of the equations
package gridtest

import (
	"bufio"
	"compress/gzip"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const gridFolder = "../../../testdata/published/grid"

// saturated is a row of a file of saturation states: of a blend the bubble point (q = 0) or the dew point (q = 1), of a pure fluid
// the saturated liquid or vapour. h and s are those of the phase that has the composition of the refrigerant.
type saturated struct {
	q                      int
	T, p, liquid, vapor    float64
	h, s                   float64
	idealH, idealS         float64 // what CoolProp's ideal-gas part of a mixture leaves out, see grid.py
	refrigerant, textOfRow string
}

// single is a row of a file of single-phase states.
type single struct {
	phase                   string
	T, p, rho, h, s, cp, cv float64
	w                       float64
	idealH, idealS, idealC  float64
	refrigerant, textOfRow  string
}

// lines gives the rows of one file, split, and its header comments.
func lines(t *testing.T, name string, columns int) (rows [][]string, head string) {
	t.Helper()
	f, err := os.Open(filepath.Join(gridFolder, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	titles := false
	scan := bufio.NewScanner(z)
	for n := 1; scan.Scan(); n++ {
		text := scan.Text()
		if strings.HasPrefix(text, "#") {
			head += text + "\n"
			continue
		}
		c := strings.Split(text, ",")
		if len(c) != columns {
			t.Fatalf("%s:%d: %d columns, want %d", name, n, len(c), columns)
		}
		if !titles {
			titles = true
			continue
		}
		rows = append(rows, c)
	}
	if err := scan.Err(); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return rows, head
}

func numbers(t *testing.T, row []string, to ...*float64) {
	t.Helper()
	for i, p := range to {
		v, err := strconv.ParseFloat(row[i], 64)
		if err != nil {
			t.Fatalf("%v: %v", row, err)
		}
		*p = v
	}
}

func readSaturated(t *testing.T, name string) (out []saturated, head string) {
	t.Helper()
	rows, head := lines(t, name, 10)
	for _, c := range rows {
		r := saturated{refrigerant: c[0], textOfRow: strings.Join(c[:3], " ")}
		if c[1] == "1" {
			r.q = 1
		}
		numbers(t, c[2:], &r.T, &r.p, &r.liquid, &r.vapor, &r.h, &r.s, &r.idealH, &r.idealS)
		out = append(out, r)
	}
	return out, head
}

func readSingle(t *testing.T, name string) (out []single, head string) {
	t.Helper()
	rows, head := lines(t, name, 13)
	for _, c := range rows {
		r := single{refrigerant: c[0], phase: c[1], textOfRow: strings.Join(c[:4], " ")}
		numbers(t, c[2:], &r.T, &r.p, &r.rho, &r.h, &r.s, &r.cp, &r.cv, &r.w, &r.idealH, &r.idealS, &r.idealC)
		out = append(out, r)
	}
	return out, head
}
