package chart

// Mark is a point with a word beside it: DX and DY shift the word from the
// point, in the drawing's units; Anchor is start, middle or end.
type Mark struct {
	X, Y   float64
	Label  string
	DX, DY float64
	Anchor string
}

// PressureEnthalpy is a refrigerant circuit on enthalpy and the logarithm of
// absolute pressure, in the units of the axes: saturated liquid and vapour,
// the measured cycle, an ideal compression beside it, and the points measured.
// What is empty is not drawn; values that are no numbers are left out.
type PressureEnthalpy struct {
	Label          string // what it shows, for people who cannot see it
	XTitle, YTitle string
	Liquid, Vapour Line // the dome; it stays open near the critical point, where no saturation is given
	Cycle, Ideal   Line
	Marks          []Mark
}

// SVG draws the diagram. It returns "" when there is nothing finite to draw.
func (d *PressureEnthalpy) SVG() string {
	c := Chart{Label: d.Label, XTitle: d.XTitle, YTitle: d.YTitle, LogY: true, Lines: []Line{
		{Class: "co-chart__line", Name: d.Liquid.Name, X: d.Liquid.X, Y: d.Liquid.Y}, {Class: "co-chart__line", Name: d.Vapour.Name, X: d.Vapour.X, Y: d.Vapour.Y},
		{Class: "co-chart__target", Name: d.Ideal.Name, X: d.Ideal.X, Y: d.Ideal.Y}, {Class: "co-chart__fit", X: d.Cycle.X, Y: d.Cycle.Y}}}
	points := Line{Class: "co-chart__data", Dots: true}
	for _, m := range d.Marks {
		if m.Y > 0 {
			points.X, points.Y = append(points.X, m.X), append(points.Y, m.Y)
		}
	}
	c.Lines, c.marks = append(c.Lines, points), d.Marks
	return c.SVG()
}
