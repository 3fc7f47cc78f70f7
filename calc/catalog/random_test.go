package catalog_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/unit"
)

// TestRandomInputs: whatever is entered, the answer is finite or a sentence.
func TestRandomInputs(t *testing.T) {
	n := 10000
	if testing.Short() {
		n = 300
	}
	for _, w := range catalog.All() {
		start := time.Now()
		random := rand.New(rand.NewPCG(20261125, 1))
		answered, refused := 0, map[string]int{}
		for range n {
			fields := randomFields(w, random)
			a := evaluate(w, fields)
			if s := sound(a); s != "" {
				t.Fatalf("%s %q: %s", w.ID, fields, s)
			}
			if len(a.Problems) == 0 {
				answered++
			} else {
				refused[a.Problems[0].Code]++
			}
		}
		t.Logf("%s: %d answered, refused %v, %.1f s", w.ID, answered, refused, time.Since(start).Seconds())
		// A generator that is refused every time would test nothing.
		if answered < n/5 {
			t.Errorf("%s: only %d of %d random inputs were answered", w.ID, answered, n)
		}
	}
}

// randomFields fills in the form: mostly what is allowed, sometimes not.
func randomFields(w *calc.Worksheet, random *rand.Rand) []calc.Field {
	var fields []calc.Field
	chosen := map[string]string{}
	pressureOrTemperature := random.IntN(2) == 0
	// Dates that follow one another, and what hangs on them, are not met by chance: there most inputs keep the example's text.
	dated := slices.ContainsFunc(w.Inputs, func(in calc.Input) bool { return in.Kind == calc.Quantity && in.Quantity.Calendar() })
	for i := range w.Inputs {
		in := &w.Inputs[i]
		asked := true
		for _, when := range in.When {
			asked = asked && strings.Contains("|"+strings.Join(when.Is, "|")+"|", "|"+chosen[when.Input]+"|")
		}
		if !asked || (in.Optional && random.IntN(3) == 0) {
			continue
		}
		if w == catalog.Saturation && (in.ID == "pressure" && !pressureOrTemperature || in.ID == "temperature" && pressureOrTemperature) && random.IntN(20) > 0 {
			continue
		}
		f := calc.Field{Input: in.ID}
		if text, ok := textOf(w.Example, in.ID); ok && dated && random.IntN(6) > 0 {
			chosen[in.ID] = text
			fields = append(fields, calc.Field{Input: in.ID, Text: text})
			continue
		}
		switch in.Kind {
		case calc.Choice:
			f.Text = in.Options[random.IntN(len(in.Options))].ID
			chosen[in.ID] = f.Text
		case calc.Quantity:
			if in.Quantity.Calendar() {
				f.Text = in.Quantity.SIUnit().Format(math.Floor(randomWithin(in.Low, in.High, random)))
				break
			}
			units := unitsOf(in)
			f.Unit = units[random.IntN(len(units))]
			f.Text = number(in.Quantity.Unit(f.Unit).FromSI(randomWithin(in.Low, in.High, random), envOf(nil)))
		case calc.Series:
			f.Text = randomRows(in, random)
		}
		fields = append(fields, f)
	}
	return fields
}

// randomWithin spreads over the range by size where it is wide, and goes
// outside now and then.
func randomWithin(low, high float64, random *rand.Rand) float64 {
	u := random.Float64()
	if random.IntN(60) == 0 {
		u = 1.2*u - 0.1
	}
	if low > 0 && high/low > 100 {
		return low * math.Pow(high/low, u)
	}
	return low + u*(high-low)
}

// randomRows writes rows of every column. A column that may be a clock or a
// date runs one way, and a pressure walks, as logs do; now and then neither
// does. Dates and counts are whole, but for a wild count.
func randomRows(in *calc.Input, random *rand.Rand) string {
	rows := in.MinRows + random.IntN(min(24, in.MaxRows-in.MinRows))
	wild := random.IntN(10) == 0
	var b strings.Builder
	last := make([]float64, len(in.Columns))
	optional := random.IntN(2) == 0
	for i := range rows {
		for k := range in.Columns {
			c := &in.Columns[k]
			if c.Optional && !optional {
				continue
			}
			if k > 0 {
				b.WriteByte(';')
			}
			u := c.Quantity.Unit(c.Units[0])
			if c.Quantity.Calendar() {
				if i == 0 || wild {
					last[k] = randomWithin(c.Low, c.High, random)
				} else {
					last[k] += math.Pow(10, random.Float64()*3) - 1
				}
				b.WriteString(u.Format(math.Floor(last[k])))
				continue
			}
			switch {
			case c.Optional && random.IntN(6) == 0:
				continue
			case c.ID == "bore": // fits the tube it stands behind
				last[k] = 0.8 * last[0]
			case c.Clock && !wild:
				last[k] += math.Pow(10, random.Float64()*1.5)
			case i == 0 || wild || in.ID == "lines":
				last[k] = u.FromSI(randomWithin(c.Low, math.Min(c.High, math.Max(2000, 40*c.Low)), random), envOf(nil))
				if in.ID == "lines" && k == 0 {
					last[k] = []float64{6.35, 9.52, 12.7, 15.88, 19.05, 7}[random.IntN(6)]
				}
			default:
				last[k] *= 1 + 0.1*random.NormFloat64()
			}
			if c.Quantity == unit.Count && !wild {
				last[k] = math.Max(1, math.Round(last[k]))
			}
			b.WriteString(number(math.Round(last[k]*100) / 100))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// FuzzEvaluate: no text in any input of any worksheet makes the door panic or
// show a number that is none.
func FuzzEvaluate(f *testing.F) {
	f.Add(byte(0), byte(1), "250 psig", "", byte(4), "1500 m", "si")
	f.Add(byte(0), byte(2), "1,234", "F", byte(0), "410a", "ip")
	f.Add(byte(1), byte(4), "size;length\n3/8\";12,5", "", byte(1), "readings", "")
	f.Add(byte(1), byte(5), "−300 C", "", byte(9), "1e308", "?")
	f.Add(byte(2), byte(0), "minutes,micron\n0,380\n5,400\n9,401", "", byte(3), "500 micron", "")
	f.Add(byte(2), byte(0), "21:45 380 / 21:50 400 / 2:00 420", "x", byte(6), "1e-300 L", "")
	f.Fuzz(func(t *testing.T, sheet, first byte, text, u string, second byte, other, system string) {
		all := catalog.All()
		w := all[int(sheet)%len(all)]
		fields := with(w.Example, calc.Field{Input: w.Inputs[int(second)%len(w.Inputs)].ID, Text: other})
		fields = with(fields, calc.Field{Input: w.Inputs[int(first)%len(w.Inputs)].ID, Text: text, Unit: u})
		a := calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: fields})
		if noNumber.MatchString(text + " " + u + " " + other) {
			return // a sentence may quote it
		}
		if s := sound(a); s != "" {
			t.Errorf("%s %q: %s", w.ID, fields, s)
		}
	})
}
