package catalog_test

import (
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
)

// Between what proves vapour (half a kelvin) and what a gauge and a clamp can be wrong by, the answer says that liquid may be there.
func TestSaturationDoubtsLittleSuperheat(t *testing.T) {
	for _, c := range []struct {
		line    string
		verdict string
		warns   bool
	}{
		{"11.2 C", "superheated", true},
		{"12.2 C", "superheated", true},
		{"13.2 C", "superheated", false}, // 80 psig is dew at 10.4 °C
		{"7 C", "two-phase", false},
	} {
		a := evaluate(catalog.Saturation, []calc.Field{{Input: "refrigerant", Text: "R-407C"}, {Input: "pressure", Text: "80 psig"}, {Input: "line-temperature", Text: c.line}})
		if len(a.Problems) > 0 || a.Verdict == nil {
			t.Fatalf("%s: %v", c.line, a.Problems)
		}
		warns := strings.Contains(strings.Join(a.Warnings, " "), "liquid may be in this line")
		if a.Verdict.ID != c.verdict || warns != c.warns {
			t.Errorf("line at %s: %s, warns %v; want %s, %v (%s)", c.line, a.Verdict.ID, warns, c.verdict, c.warns, a.Verdict.Sentence)
		}
	}
}
