package facts

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"changeout/calc/property/refrigerant"
	"changeout/calc/source"
)

// TestWhole: every constituent has a family, every statement a text, a mark and
// known keys, and every sentence at most 25 words.
func TestWhole(t *testing.T) {
	for _, r := range refrigerant.All() {
		for _, c := range r.Components {
			if s := find(c.Name); s.family == "" || s.chemical == "" {
				t.Errorf("%s: constituent %s is not among the substances", r.Name, c.Name)
			}
		}
		s := Of(r)
		statements := []Statement{s.Class, s.Oil, s.Charge}
		for _, l := range s.Laws {
			if len(l.Statements) == 0 {
				t.Errorf("%s: nothing on %s", r.Name, l.Where)
			}
			statements = append(statements, l.Statements...)
		}
		for _, st := range statements {
			known := !strings.Contains(st.Text, "not known")
			if st.Text == "" || known && len(st.Keys) == 0 || !known && st.Read != "" {
				t.Errorf("%s: %+v", r.Name, st)
			}
			for _, k := range st.Keys {
				src, ok := source.Lookup(k)
				if !ok {
					t.Errorf("%s: no source %q behind %q", r.Name, k, st.Text)
				}
				if src.Read == source.Memory && st.Read != refrigerant.Memory {
					t.Errorf("%s: %q rests on %s, which is from memory, and does not say so", r.Name, st.Text, k)
				}
			}
			for _, sentence := range strings.Split(st.Text, ". ") {
				if n := len(strings.FieldsFunc(sentence, unicode.IsSpace)); n > 25 {
					t.Errorf("%s: %d words in %q", r.Name, n, sentence)
				}
			}
		}
		if len(s.GWPs) > len(Lists) || s.OilShort() == "" {
			t.Errorf("%s: %d potentials, oil %q", r.Name, len(s.GWPs), s.OilShort())
		}
	}
}

// TestPotentials against lists of others. Tolerance 0.5: they print whole
// numbers. gwpcsv: the IPCC tables; standards.md, section 2.3: published AR4 values
// of blends, and Annex VI of Regulation 2024/573 worked by its own formula.
func TestPotentials(t *testing.T) {
	for _, c := range []struct {
		name, list string
		want       float64
		source     string
	}{
		{"R-12", "AR4", 10900, "gwpcsv"}, {"R-123", "AR5", 79, "gwpcsv"}, {"R-23", "EU 2024/573", 14800, "eu573"},
		{"R-410A", "AR4", 2088, "eusk"}, {"R-404A", "AR4", 3922, "eusk"}, {"R-407C", "AR4", 1774, "eusk"}, {"R-449A", "AR4", 1397, "vdh"},
		{"R-513A", "AR4", 631, "vdh"},
		// AR4, by hand: 0.738 × 10900 + 0.262 × 124; 0.488 × 1810 + 0.512 × 7370; 0.46 × 14800 + 0.54 × 12200.
		{"R-500", "AR4", 8076.7, "gwpcsv"}, {"R-502", "AR4", 4656.7, "gwpcsv"}, {"R-508B", "AR4", 13396, "gwpcsv"},
	} {
		r, ok := refrigerant.Lookup(c.name)
		if !ok {
			t.Fatalf("no %s", c.name)
		}
		s := Of(r)
		f := s.GWP(c.list)
		if d := f.Value - c.want; !f.Known() || !(math.Abs(d) <= 0.5) {
			t.Errorf("%s, %s: got %v, want %v, difference %g, tolerance 0.5 (%s)", c.name, c.list, f.Value, c.want, d, c.source)
		}
	}
}

// TestLaws: dates and thresholds, as the regulations print them.
func TestLaws(t *testing.T) {
	for _, c := range []struct {
		name, where string
		want        []string
		not         []string
	}{
		{"R-12", "Montreal Protocol", []string{"Banned", "1996", "2010"}, []string{"HFC"}},
		{"R-22", "European Union", []string{"2015", "reclaimed"}, []string{"GWP"}},
		{"R-22", "United States", []string{"1 January 2020", "1 January 2010"}, []string{"700"}},
		{"R-410A", "European Union", []string{"750 or more", "2029", "2027"}, []string{"Servicing"}},
		{"R-410A", "United States", []string{"700 or more", "1 January 2025", "1 January 2026", "5 October 2023"}, nil},
		{"R-404A", "European Union", []string{"Servicing", "1 January 2026", "2032"}, nil},
		{"R-32", "European Union", []string{"150 or more", "2033"}, []string{"750 or more"}},
		{"R-32", "United States", []string{"below the limit of 700"}, nil},
		{"R-454C", "European Union", []string{"below 150", "2035"}, nil},
		{"R-290", "European Union", []string{"Outside"}, []string{"quota"}},
		{"R-744", "Montreal Protocol", []string{"Not controlled"}, nil},
		{"R-1234yf", "Montreal Protocol", []string{"Not controlled"}, []string{"Kigali"}},
	} {
		r, ok := refrigerant.Lookup(c.name)
		if !ok {
			t.Fatalf("no %s", c.name)
		}
		text := ""
		for _, l := range Of(r).Laws {
			if l.Where == c.where {
				for _, s := range l.Statements {
					text += s.Text + " "
				}
			}
		}
		for _, w := range c.want {
			if !strings.Contains(text, w) {
				t.Errorf("%s, %s: %q is not in %q", c.name, c.where, w, text)
			}
		}
		for _, w := range c.not {
			if strings.Contains(text, w) {
				t.Errorf("%s, %s: %q is in %q", c.name, c.where, w, text)
			}
		}
	}
}

// TestPhases: only a pure fluid may leave the cylinder as vapour without a word.
func TestPhases(t *testing.T) {
	for _, r := range refrigerant.All() {
		s := Of(r)
		want := Either
		switch {
		case strings.HasPrefix(r.Name, "R-4"):
			want = LiquidOnly
		case len(r.Components) > 1:
			want = LiquidBetter
		}
		if s.Phase != want || (s.Phase == Either) == r.ChargeAsLiquid {
			t.Errorf("%s: %q, want %q", r.Name, s.Phase, want)
		}
	}
}
