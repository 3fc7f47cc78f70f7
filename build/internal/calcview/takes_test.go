package calcview

import (
	"strings"
	"testing"
)

func TestTakes(t *testing.T) {
	for _, c := range []struct{ id, input, row, unit, want string }{
		{"vacuum-hold", "log", "5", "micron", ""},
		{"vacuum-hold", "ambient-start", "", "°C", ""},
		{"running-state", "suction-pressure", "", "bar gauge", ""},
		{"vacuum-hold", "log", "5", "°F", "no column of the log is in °F"},
		{"vacuum-hold", "log", "", "micron", "takes rows"},
		{"vacuum-hold", "ambient-start", "5", "°C", "takes rows"},
		{"vacuum-hold", "ambient", "", "°C", "has no input “ambient”"},
		{"vacuum-hold", "ambient-start", "", "kPa", "is not in kPa but in °C, °F"},
		{"vacuum-hold", "refrigerant", "", "°C", "is not a quantity"},
	} {
		if got := takes(c.id, c.input, c.row, c.unit); c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("takes(%s, %s, %q, %s): got %q, want %q", c.id, c.input, c.row, c.unit, got, c.want)
		}
	}
}
