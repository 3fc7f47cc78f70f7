// Package chart draws line charts as SVG text. The same code runs at build
// time and on the phone, so a chart printed in the handbook and one drawn in
// the rain are the same drawing.
//
// Colours, fonts and line weights belong to the style sheet: the SVG carries
// classes only, so that it works in light, in dark and in print, and under a
// content policy that forbids inline style.
package chart

import (
	"math"
	"strconv"
	"strings"

	words "changeout/calc/text"
)

// Line is one curve or set of points, in the units of the axes.
type Line struct {
	Class string // co-chart__fit, co-chart__data …
	X, Y  []float64
	Dots  bool // points rather than a line
}

// Level is a horizontal line across the chart with words beside it.
type Level struct {
	Class string
	Label string
	Y     float64
}

// Chart is what to draw. NaN values are left out.
type Chart struct {
	Label          string // what it shows, for people who cannot see it
	XTitle, YTitle string
	Lines          []Line
	Levels         []Level
	LogY           bool // logarithmic Y axis; values must be above zero
	Words          string
}

// The drawing's own units; the style sheet scales it to the page.
const (
	width, height            = 360.0, 270.0
	left, right, top, bottom = 68.0, 10.0, 26.0, 44.0
)

type frame struct {
	x0, x1, y0, y1 float64
	log            bool
}

func (f frame) x(v float64) float64 {
	return left + (v-f.x0)/(f.x1-f.x0)*(width-left-right)
}

func (f frame) y(v float64) float64 {
	a, b := f.y0, f.y1
	if f.log {
		v, a, b = math.Log(math.Max(v, a)), math.Log(a), math.Log(b)
	}
	return top + (b-v)/(b-a)*(height-top-bottom)
}

// SVG draws the chart. It returns "" when there is nothing finite to draw.
func (c *Chart) SVG() string {
	f, ok := c.fit()
	if !ok {
		return ""
	}
	var b strings.Builder
	b.WriteString(`<svg class="co-chart" viewBox="0 0 360 270" role="img" aria-label="`)
	b.WriteString(escape(c.Label))
	b.WriteString(`">`)
	c.axes(&b, f)
	for _, l := range c.Levels {
		c.drawLevel(&b, f, l)
	}
	for _, l := range c.Lines {
		if l.Dots {
			drawDots(&b, f, l)
		} else {
			drawLine(&b, f, l)
		}
	}
	if c.Words != "" {
		text(&b, "co-chart__verdict", width-right, 17, "end", c.Words)
	}
	b.WriteString("</svg>")
	return b.String()
}

// fit finds the ranges of the axes from everything that is drawn.
func (c *Chart) fit() (frame, bool) {
	f := frame{x0: math.Inf(1), x1: math.Inf(-1), y0: math.Inf(1), y1: math.Inf(-1), log: c.LogY}
	for _, l := range c.Lines {
		for i := range l.X {
			if !drawable(l.X[i]) || !drawable(l.Y[i]) || (c.LogY && l.Y[i] <= 0) {
				continue
			}
			f.x0, f.x1 = math.Min(f.x0, l.X[i]), math.Max(f.x1, l.X[i])
			f.y0, f.y1 = math.Min(f.y0, l.Y[i]), math.Max(f.y1, l.Y[i])
		}
	}
	if f.x0 > f.x1 {
		return f, false
	}
	for _, l := range c.Levels {
		if drawable(l.Y) && (!c.LogY || l.Y > 0) {
			f.y0, f.y1 = math.Min(f.y0, l.Y), math.Max(f.y1, l.Y)
		}
	}
	f.x1 = apart(f.x0, f.x1)
	if c.LogY {
		f.y0 = math.Max(f.y0, 1e-30)
		f.y0, f.y1 = f.y0/1.15, math.Max(f.y0, f.y1)*1.15
	} else {
		if f.y0 > 0 {
			f.y0 = 0
		}
		f.y1 += (f.y1 - f.y0) * 0.08
		f.y1 = apart(f.y0, f.y1)
	}
	return f, true
}

func (c *Chart) axes(b *strings.Builder, f frame) {
	for _, v := range ticks(f.y0, f.y1, 5, f.log) {
		y := f.y(v)
		path(b, "co-chart__grid", "M"+num(left)+" "+num(y)+"H"+num(width-right))
		text(b, "co-chart__tick", left-6, y+4, "end", label(v))
	}
	for _, v := range ticks(f.x0, f.x1, 5, false) {
		x := f.x(v)
		path(b, "co-chart__axis", "M"+num(x)+" "+num(height-bottom)+"v5")
		text(b, "co-chart__tick", x, height-bottom+18, "middle", label(v))
	}
	path(b, "co-chart__axis", "M"+num(left)+" "+num(top)+"V"+num(height-bottom)+"H"+num(width-right))
	text(b, "co-chart__label", (left+width-right)/2, height-7, "middle", c.XTitle)
	text(b, "co-chart__label", 2, 17, "start", c.YTitle) // over the ticks: the verdict has the rest of the line
}

// drawLevel writes the words where no curve goes through them: at the right end
// if it can, above the line if it can.
func (c *Chart) drawLevel(b *strings.Builder, f frame, l Level) {
	if !drawable(l.Y) || l.Y < f.y0 || l.Y > f.y1 {
		return
	}
	y := f.y(l.Y)
	path(b, l.Class, "M"+num(left)+" "+num(y)+"H"+num(width-right))
	const letter, above, below = 8.5, -5.0, 16.0 // a letter's width, and the words' foot from the line
	long := letter * float64(len(l.Label))
	ends := [...]struct {
		x      float64
		anchor string
		from   float64
	}{{width - right - 2, "end", width - right - 2 - long}, {left + 4, "start", left + 4}}
	for _, foot := range [...]float64{above, below} {
		for _, e := range ends {
			if y+foot < height-bottom && !c.crossed(f, e.from, e.from+long, y+foot-13, y+foot+4) {
				text(b, "co-chart__label", e.x, y+foot, e.anchor, l.Label)
				return
			}
		}
	}
	text(b, "co-chart__label", ends[0].x, y+above, ends[0].anchor, l.Label)
}

// crossed is true when a curve goes through that part of the drawing.
func (c *Chart) crossed(f frame, x0, x1, y0, y1 float64) bool {
	for _, l := range c.Lines {
		for i := 1; i < len(l.X); i++ {
			ax, ay, bx, by := f.x(l.X[i-1]), f.y(l.Y[i-1]), f.x(l.X[i]), f.y(l.Y[i])
			if ax > bx {
				ax, ay, bx, by = bx, by, ax, ay
			}
			if !(bx >= x0 && ax <= x1) { // NaN too
				continue
			}
			at := func(x float64) float64 {
				if bx == ax {
					return ay
				}
				return ay + (by-ay)*math.Min(1, math.Max(0, (x-ax)/(bx-ax)))
			}
			low, high := at(x0), at(x1)
			if ax == bx {
				low, high = ay, by
			}
			if math.Max(low, high) >= y0 && math.Min(low, high) <= y1 {
				return true
			}
		}
	}
	return false
}

func drawLine(b *strings.Builder, f frame, l Line) {
	var d strings.Builder
	pen := "M"
	for i := range l.X {
		if !drawable(l.X[i]) || !drawable(l.Y[i]) {
			pen = "M"
			continue
		}
		d.WriteString(pen + num(f.x(l.X[i])) + " " + num(f.y(l.Y[i])))
		pen = "L"
	}
	path(b, l.Class, d.String())
}

// drawDots draws at most maxDots points, so that a log of 20,000 rows does not
// become a drawing of 20,000 circles.
func drawDots(b *strings.Builder, f frame, l Line) {
	const maxDots = 160
	step := (len(l.X) + maxDots - 1) / maxDots
	if step < 1 {
		step = 1
	}
	for i := range l.X {
		if i%step != 0 && i != len(l.X)-1 || !drawable(l.X[i]) || !drawable(l.Y[i]) {
			continue
		}
		b.WriteString(`<circle class="` + l.Class + `" cx="` + num(f.x(l.X[i])) + `" cy="` + num(f.y(l.Y[i])) + `" r="2.2"/>`)
	}
}

// ticks returns round values inside a range, about n of them.
func ticks(a, b float64, n int, logarithmic bool) []float64 {
	if logarithmic {
		return logTicks(a, b)
	}
	span := b - a
	step := math.Pow(10, math.Floor(math.Log10(span/float64(n))))
	for _, m := range []float64{1, 2, 5, 10} {
		if span/(step*m) <= float64(n) {
			step *= m
			break
		}
	}
	var out []float64
	first := math.Ceil(a/step - 1e-9)
	for i := range 2 * n {
		v := (first + float64(i)) * step
		if v > b+step*1e-9 {
			break
		}
		out = append(out, v)
	}
	return out
}

func logTicks(a, b float64) []float64 {
	var all, tens []float64
	for e := math.Floor(math.Log10(a)); e <= math.Log10(b); e++ {
		for _, m := range []float64{1, 2, 5} {
			v := m * math.Pow(10, e)
			if v >= a && v <= b {
				all = append(all, v)
				if m == 1 {
					tens = append(tens, v)
				}
			}
		}
	}
	if len(all) > 7 {
		return tens
	}
	return all
}

// drawable leaves out what is no number, and what is so large that the span of
// an axis could not be held.
func drawable(v float64) bool { return math.Abs(v) < 1e30 }

// apart widens a range in which the ends cannot be told apart.
func apart(low, high float64) float64 {
	size := math.Max(math.Abs(low), math.Abs(high))
	if high-low > 1e-9*size && high-low > 1e-30 {
		return high
	}
	return low + math.Max(1, size/1000)
}

func path(b *strings.Builder, class, d string) {
	if d != "" {
		b.WriteString(`<path class="` + class + `" d="` + d + `"/>`)
	}
}

func text(b *strings.Builder, class string, x, y float64, anchor, s string) {
	b.WriteString(`<text class="` + class + `" x="` + num(x) + `" y="` + num(y) + `" text-anchor="` + anchor + `">` + escape(s) + `</text>`)
}

func num(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }

// label writes a tick value with up to four figures, thousands grouped by a
// narrow space from 10,000 on.
func label(v float64) string {
	s := strconv.FormatFloat(v, 'g', 6, 64)
	if strings.ContainsAny(s, "e") {
		s = strconv.FormatFloat(v, 'f', -1, 64)
	}
	if !strings.Contains(s, ".") && v >= 1e4 {
		for i := len(s) - 3; i > 0; i -= 3 {
			s = s[:i] + "\u202f" + s[i:]
		}
	}
	return strings.Replace(s, "-", "−", 1)
}

func escape(s string) string {
	return words.Swap(s, "&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")
}
