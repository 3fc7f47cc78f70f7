package chart

import (
	"strings"
	"testing"
)

func diagram() PressureEnthalpy {
	return PressureEnthalpy{Label: `R-410A & "cycle"`, XTitle: "kJ/kg", YTitle: "kPa",
		Liquid: Line{X: []float64{200, 250, 300}, Y: []float64{800, 2000, 4000}}, Vapour: Line{X: []float64{420, 425, 390}, Y: []float64{800, 2000, 4000}},
		Cycle: Line{X: []float64{430, 470, 260, 260, 430}, Y: []float64{1000, 2600, 2600, 1000, 1000}}, Ideal: Line{X: []float64{430, 455}, Y: []float64{1000, 2600}},
		Marks: []Mark{{X: 430, Y: 1000, Label: "1", DX: 6, DY: 14, Anchor: "start"}, {X: 470, Y: 2600, Label: "2", DY: -8, Anchor: "middle"}}}
}

func TestPressureEnthalpy(t *testing.T) {
	d := diagram()
	svg := d.SVG()
	n := wellFormed(t, svg)
	if n["circle"] != 2 || strings.Count(svg, "co-chart__mark") != 2 || strings.Count(svg, "co-chart__line") != 2 || noNumber.MatchString(svg) || !strings.Contains(svg, "&amp; &quot;cycle&quot;") {
		t.Errorf("%d circles, want 2; two marks and two sides of the dome, escaped:\n%s", n["circle"], svg)
	}
	// A logarithmic axis: the middle of 1000 and 4000 kPa is 2000 kPa.
	c := Chart{LogY: true, Lines: []Line{d.Liquid, d.Cycle}}
	f, _ := c.fit()
	if got, want := f.y(2000), (f.y(1000)+f.y(4000))/2; !(got-want < 1e-9 && want-got < 1e-9) {
		t.Errorf("place of 2000: got %v, want %v, half-way between 1000 and 4000", got, want)
	}
}

// TestPressureEnthalpyWithGaps: what was not measured is left out, and nothing
// that is no number reaches the drawing.
func TestPressureEnthalpyWithGaps(t *testing.T) {
	d := diagram()
	d.Ideal, d.Marks = Line{}, []Mark{{X: nan, Y: 1000, Label: "1"}, {X: 430, Y: -1, Label: "2"}, {X: inf, Y: inf, Label: "3"}}
	d.Cycle.X[1], d.Liquid.Y[0] = nan, 0
	svg := d.SVG()
	wellFormed(t, svg)
	if noNumber.MatchString(svg) || strings.Contains(svg, "co-chart__mark") {
		t.Errorf("a mark without a place was drawn:\n%s", svg)
	}
	if got := (&PressureEnthalpy{}).SVG(); got != "" {
		t.Errorf("nothing to draw: got %q", got)
	}
}

func FuzzPressureEnthalpy(f *testing.F) {
	f.Add(200.0, 400.0, 500.0, 4000.0)
	f.Add(-1e300, 5e-324, -3.0, 1e300)
	f.Fuzz(func(t *testing.T, x0, x1, y0, y1 float64) {
		d := diagram()
		d.Cycle = Line{X: []float64{x0, x1}, Y: []float64{y0, y1}}
		d.Marks = []Mark{{X: x0, Y: y0, Label: "1", Anchor: "end"}, {X: x1, Y: y1, Label: "2", Anchor: "start"}}
		if svg := d.SVG(); noNumber.MatchString(svg) {
			t.Errorf("%v %v %v %v: %s", x0, x1, y0, y1, svg)
		} else {
			wellFormed(t, svg)
		}
	})
}
