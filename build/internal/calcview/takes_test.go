package calcview

import (
	"strings"
	"testing"
)

func TestStepField(t *testing.T) {
	for _, c := range []struct{ unit, id, input, want string }{
		{"°C", "", "", "°C,*°F sign"},
		{"K", "", "", "K,*°F sign"},
		{"bar gauge", "", "", "bar gauge,kPa gauge,MPa gauge,*psi gauge,in Hg vacuum sign"},
		{"kPa", "", "", "kPa,bar,mbar,*psi,in H₂O sign"},
		{"micron", "", "", "micron,Pa,mbar,torr,kPa"},
		{"kg", "", "", "kg,g,*lb,oz"},
		{"g", "", "", "g,kg,lb,*oz"},
		{"lb", "", "", "lb,+kg,g,oz"},
		{"L", "", "", "L,m³,ft³,mL,*fl oz"},
		{"L/min", "", "", "L/min,m³/s,m³/h,L/s,cfm,*ft³/h"},
		{"mm", "", "", "mm,*in size"},
		{"MΩ", "", "", "MΩ,Ω,kΩ,GΩ words"},
		{"V DC", "", "", ""}, {"V", "", "", ""}, {"h", "", "", ""}, {"N·m", "", "", ""}, {"text", "", "", ""},
		{"micron", "vacuum-hold", "log", "micron,Pa,mbar,torr,kPa"},
		{"MPa gauge", "standing-pressure", "start-pressure", "MPa gauge,kPa gauge,bar gauge,*psi gauge sign"},
		{"V", "supply", "v12", ""},
	} {
		f := stepField(c.unit, c.id, c.input)
		got := strings.Join(f.Units, ",")
		for word, is := range map[string]bool{"sign": f.Signed, "words": f.Words, "size": f.Size} {
			if is {
				got += " " + word
			}
		}
		if got != c.want {
			t.Errorf("%s for %s %s: got %q, want %q", c.unit, c.id, c.input, got, c.want)
		}
		if c.id == "" || c.input == "log" {
			continue
		}
		for _, u := range f.Units {
			if wrong := takes(c.id, c.input, "", strings.TrimLeft(u, "*+")); wrong != "" {
				t.Errorf("%s may be chosen for %s %s, but %s", u, c.id, c.input, wrong)
			}
		}
	}
}

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
