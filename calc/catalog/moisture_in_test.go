package catalog_test

import (
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
)

// TestMoistureGivesNoEmptyBound: an upper figure is never more than oil and
// drier can hold. Beyond that a sentence says so, and the verdict still doubts.
func TestMoistureGivesNoEmptyBound(t *testing.T) {
	seen := map[bool]int{}
	for _, ends := range []string{"one", "two"} {
		for _, open := range []string{"10 min", "4 h", "2 d", "30 d"} {
			for _, drier := range []string{"", "20 g"} {
				fields := []calc.Field{{Input: "open-time", Text: open}, {Input: "air", Text: "30 C"}, {Input: "humidity", Text: "95 %"}, {Input: "bore", Text: "25 mm"},
					{Input: "length", Text: "3 m"}, {Input: "ends", Text: ends}, {Input: "oil", Text: "4 kg"}, {Input: "drier", Text: drier}}
				a := evaluate(catalog.MoistureIn, fields)
				if a.Verdict == nil {
					t.Fatalf("%v: %v", fields, a.Problems)
				}
				hold := 0.01 * 4
				if drier != "" {
					hold += 0.020
				}
				shown := false
				for _, o := range a.Outputs {
					if o.ID != "water-high" {
						continue
					}
					if shown = true; !(o.Value <= hold) {
						t.Errorf("%v: at most %v kg, oil and drier hold %v kg", fields, o.Value, hold)
					}
				}
				said := strings.Contains(strings.Join(a.Warnings, " "), "No upper figure")
				if said == shown {
					t.Errorf("%v: figure shown %v, its absence said %v", fields, shown, said)
				}
				if !shown && a.Verdict.Tone == calc.Good {
					t.Errorf("%v: no upper figure, yet called %s", fields, a.Verdict.ID)
				}
				seen[shown]++
			}
		}
	}
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("with a figure %d, without %d: both must occur", seen[true], seen[false])
	}
}
