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

// Line is one curve or set of points, in the units of the axes. Its name stands
// beside it, so that nobody has to look up which line is which.
type Line struct {
	Class string // co-chart__fit, co-chart__data …
	Name  string
	X, Y  []float64
	Dots  bool // points rather than a line
}

// Level is a horizontal line across the chart with words beside it.
type Level struct {
	Class string
	Label string // with the level's own value: limit 1000 micron
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
	marks          []Mark
}

// The drawing's own units; the style sheet scales it to the page. On a phone of
// 360 px one unit is 0.9 px and the letters are as large as the text.
const (
	width, right, bottom = 360.0, 12.0, 56.0
	plot                 = 190.0      // height between the axes
	row                  = 24.0       // height of a line of words
	letter, digit        = 11.0, 12.5 // widths, of a wide face
)

type frame struct {
	x0, x1, y0, y1 float64
	log            bool
	left, top      float64 // margins: as wide as the tick words, as high as the words above
	taken          *[]box  // where words stand already
}

// box is a part of the drawing.
type box struct{ x0, y0, x1, y1 float64 }

func (f frame) x(v float64) float64 {
	return f.left + (v-f.x0)/(f.x1-f.x0)*(width-f.left-right)
}

func (f frame) y(v float64) float64 {
	a, b := f.y0, f.y1
	if f.log {
		v, a, b = math.Log(math.Max(v, a)), math.Log(a), math.Log(b)
	}
	return f.top + (b-v)/(b-a)*plot
}

// foot is where the x axis is drawn.
func (f frame) foot() float64 { return f.top + plot }

// SVG draws the chart. It returns "" when there is nothing finite to draw.
func (c *Chart) SVG() string {
	f, ok := c.fit()
	if !ok {
		return ""
	}
	var b strings.Builder
	b.WriteString(`<svg class="co-chart" viewBox="0 0 360 ` + num(f.foot()+bottom) + `" role="img" aria-label="`)
	b.WriteString(escape(c.Label))
	b.WriteString(`">`)
	c.axes(&b, f)
	var words strings.Builder // over the lines
	for _, m := range c.marks {
		if drawable(m.X) && drawable(m.Y) && m.Y > 0 {
			p := place{f.x(m.X) + m.DX, f.y(m.Y) + m.DY, m.Anchor}
			*f.taken = append(*f.taken, p.box(m.Label))
			text(&words, "co-chart__mark", p.x, p.y, p.anchor, m.Label)
		}
	}
	name := func(dots bool) {
		for _, l := range c.Lines {
			if l.Dots == dots {
				c.drawName(&words, f, l)
			}
		}
	}
	name(true) // a point has few places for its name
	for i, l := range c.Levels {
		if !drawable(l.Y) || l.Y < f.y0 || l.Y > f.y1 {
			continue
		}
		// A further level too near to be named would only be a riddle.
		if c.nameLevel(&words, f, l) || i == 0 {
			path(&b, l.Class, "M"+num(f.left)+" "+num(f.y(l.Y))+"H"+num(width-right))
		}
	}
	for _, l := range c.Lines {
		if l.Dots {
			drawDots(&b, f, l)
		} else {
			drawLine(&b, f, l)
		}
	}
	name(false)
	b.WriteString(words.String())
	for i, s := range c.title() {
		text(&b, "co-chart__verdict", 2, 19+row*float64(i), "start", s)
	}
	b.WriteString("</svg>")
	return b.String()
}

// title breaks the words above the chart into lines that fit it.
func (c *Chart) title() []string {
	const most = 27 // bold letters in the width
	var lines []string
	for w := range strings.SplitSeq(c.Words, " ") {
		n := len(lines)
		if n > 0 && len(lines[n-1])+1+len(w) <= most {
			lines[n-1] += " " + w
		} else if w != "" {
			lines = append(lines, w)
		}
	}
	return lines
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
	f.top, f.taken = row*float64(len(c.title())+1)+8, new([]box)
	for _, v := range ticks(f.y0, f.y1, 5, f.log) {
		f.left = math.Max(f.left, 10+digit*float64(letters(label(v))))
	}
	return f, true
}

func (c *Chart) axes(b *strings.Builder, f frame) {
	for _, v := range ticks(f.y0, f.y1, 5, f.log) {
		y := f.y(v)
		path(b, "co-chart__grid", "M"+num(f.left)+" "+num(y)+"H"+num(width-right))
		text(b, "co-chart__tick", f.left-6, y+7, "end", label(v))
	}
	along := ticks(f.x0, f.x1, 5, false)
	if long := digit * float64(letters(label(along[len(along)-1]))+1) * float64(len(along)); long > width-f.left {
		along = ticks(f.x0, f.x1, 3, false)
	}
	for _, v := range along {
		x := f.x(v)
		path(b, "co-chart__axis", "M"+num(x)+" "+num(f.foot())+"v5")
		text(b, "co-chart__tick", x, f.foot()+23, "middle", label(v))
	}
	path(b, "co-chart__axis", "M"+num(f.left)+" "+num(f.top)+"V"+num(f.foot())+"H"+num(width-right))
	text(b, "co-chart__label", (f.left+width-right)/2, f.foot()+bottom-9, "middle", c.XTitle)
	title := place{2, f.top - 13, "start"}
	*f.taken = append(*f.taken, title.box(c.YTitle))
	text(b, "co-chart__label", title.x, title.y, title.anchor, c.YTitle)
}

// nameLevel writes a level's words at its line, as far to the right as it can.
func (c *Chart) nameLevel(b *strings.Builder, f frame, l Level) bool {
	var places []place
	for k := range 6 {
		x := width - right - 2 - float64(k)*(width-f.left-right)/8
		places = append(places, place{x, f.y(l.Y) - 6, "end"}, place{x, f.y(l.Y) + 20, "end"})
	}
	return c.write(b, f, l.Label, places, l.Y)
}

// drawName writes a line's name beside it, near its end if it can.
func (c *Chart) drawName(b *strings.Builder, f frame, l Line) {
	if l.Name == "" || len(l.X) == 0 {
		return
	}
	const parts = 12
	var places []place
	for k := parts; k >= 0; k-- {
		i, rest := k*(len(l.X)-1)/parts, 0.0
		if !l.Dots { // a straight line has two points only
			rest = float64(k*(len(l.X)-1)%parts) / parts
		}
		next := min(i+1, len(l.X)-1)
		x, y := f.x(l.X[i])*(1-rest)+f.x(l.X[next])*rest, f.y(l.Y[i])*(1-rest)+f.y(l.Y[next])*rest
		if drawable(x) && drawable(y) && y <= f.foot() {
			places = append(places, place{x, y - 8, "end"}, place{x, y - 8, "start"}, place{x, y + 22, "end"}, place{x, y + 22, "start"},
				place{x - 9, y + 7, "end"}, place{x + 9, y + 7, "start"})
		}
	}
	c.write(b, f, l.Name, places, math.NaN())
}

// place is where words may stand: their foot and the end that is held there.
type place struct {
	x, y   float64
	anchor string
}

// box is what the words cover there.
func (p place) box(words string) box {
	long := letter * float64(letters(words))
	x := p.x
	switch p.anchor {
	case "end":
		x -= long
	case "middle":
		x -= long / 2
	}
	return box{x, p.y - 17, x + long, p.y + 5}
}

// write puts the words at the first place where they stand inside the drawing
// and where no curve, no other words and no level but their own is. Where there
// is none a curve may run behind them, but never other words; it reports whether
// they found room.
func (c *Chart) write(b *strings.Builder, f frame, words string, places []place, own float64) bool {
	for pass := range 2 {
		for _, p := range places {
			at := p.box(words)
			free := at.x0 >= f.left+2 && at.x1 <= width-right+2 && at.y0 >= f.top-30 && at.y1 <= f.foot()-1
			for _, t := range *f.taken {
				free = free && (at.x1 < t.x0 || at.x0 > t.x1 || at.y1 < t.y0 || at.y0 > t.y1)
			}
			if pass == 0 {
				free = free && !c.crossed(f, at.x0, at.x1, at.y0, at.y1)
				for _, l := range c.Levels {
					free = free && (l.Y == own || !(f.y(l.Y) > at.y0 && f.y(l.Y) < at.y1))
				}
			}
			if free {
				*f.taken = append(*f.taken, at)
				text(b, "co-chart__label", p.x, p.y, p.anchor, words)
				return true
			}
		}
	}
	return false
}

// letters counts what is drawn: bytes would count a narrow space three times.
func letters(s string) int {
	n := 0
	for range s {
		n++
	}
	return n
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
