package chart

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

var nan, inf = math.NaN(), math.Inf(1)

// wellFormed reads the drawing as XML and returns how many of each element it holds.
func wellFormed(t *testing.T, svg string) map[string]int {
	t.Helper()
	count := map[string]int{}
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return count
		}
		if err != nil {
			t.Fatalf("not well formed: %v\n%s", err, svg)
		}
		if e, ok := token.(xml.StartElement); ok {
			count[e.Name.Local]++
			for _, a := range e.Attr {
				if a.Name.Local == "style" || strings.HasPrefix(a.Name.Local, "on") {
					t.Errorf("attribute %s: the content policy forbids it", a.Name.Local)
				}
			}
		}
	}
}

var noNumber = regexp.MustCompile(`NaN|Inf|e\+`)

func TestDrawing(t *testing.T) {
	c := Chart{Label: `Hold <log> & "limit"`, XTitle: "minutes", YTitle: "micron", Words: "Leak: find it",
		Lines: []Line{{Class: "co-chart__fit", X: []float64{0, 10, 20, 30}, Y: []float64{300, 400, nan, 600}},
			{Class: "co-chart__data", X: []float64{0, 10, inf, 30}, Y: []float64{310, 390, 500, 610}, Dots: true}},
		Levels: []Level{{Class: "co-chart__limit", Label: "limit", Y: 1000}}}
	svg := c.SVG()
	n := wellFormed(t, svg)
	if n["circle"] != 3 || noNumber.MatchString(svg) || !strings.Contains(svg, "Hold &lt;log&gt; &amp; &quot;limit&quot;") || !strings.Contains(svg, `role="img"`) {
		t.Errorf("%d circles, want 3, escaped words and no infinite place:\n%s", n["circle"], svg)
	}
	if strings.Count(svg, "co-chart__limit") != 1 {
		t.Errorf("the limit is not drawn: it is above the data and must widen the axis:\n%s", svg)
	}
}

func TestNothingToDraw(t *testing.T) {
	for _, c := range []Chart{{}, {Lines: []Line{{X: []float64{nan}, Y: []float64{1}}}}, {LogY: true, Lines: []Line{{X: []float64{1}, Y: []float64{-1}}}}, {Levels: []Level{{Y: 5}}}} {
		if got := c.SVG(); got != "" {
			t.Errorf("%+v: got %q, want nothing", c, got)
		}
	}
}

// TestManyPoints: a log of 20,000 rows does not become 20,000 circles.
func TestManyPoints(t *testing.T) {
	l := Line{Class: "co-chart__data", Dots: true}
	for i := range 20000 {
		l.X, l.Y = append(l.X, float64(i)), append(l.Y, float64(i%7))
	}
	if n := wellFormed(t, (&Chart{Lines: []Line{l}}).SVG())["circle"]; n < 100 || n > 200 {
		t.Errorf("%d circles, want 100 to 200", n)
	}
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		a, b float64
		want []float64
	}{
		{0, 30, []float64{0, 10, 20, 30}}, {0, 1080, []float64{0, 500, 1000}}, {0, 5, []float64{0, 1, 2, 3, 4, 5}}, {-40, 40, []float64{-40, -20, 0, 20, 40}}, {0, 0.07, []float64{0, 0.02, 0.04, 0.06}},
	} {
		got := ticks(c.a, c.b, 5, false)
		if !slices.EqualFunc(got, c.want, func(x, y float64) bool { return math.Abs(x-y) <= 1e-12*math.Max(1, math.Abs(y)) }) {
			t.Errorf("ticks(%v, %v): got %v, want %v", c.a, c.b, got, c.want)
		}
	}
	// Ranges that a step cannot count through must end all the same.
	for _, c := range [][2]float64{{1e18, 1e18 + 256}, {0, 1e300}, {-1e300, 1e300}, {0, 5e-324}} {
		if n := len(ticks(c[0], c[1], 5, false)); n > 12 {
			t.Errorf("ticks(%v): %d of them", c, n)
		}
	}
	if got := ticks(90, 1200, 5, true); !slices.Equal(got, []float64{100, 200, 500, 1000}) {
		t.Errorf("logarithmic ticks: got %v", got)
	}
}

func TestTickLabels(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{{0, "0"}, {0.30000000000000004, "0.3"}, {1000, "1000"}, {10000, "10\u202f000"}, {1e6, "1\u202f000\u202f000"}, {-5, "−5"}, {0.00001, "0.00001"}} {
		if got := label(c.v); got != c.want {
			t.Errorf("label(%v): got %q, want %q", c.v, got, c.want)
		}
	}
}

// FuzzSVG: whatever is measured, the drawing is well formed and finite.
func FuzzSVG(f *testing.F) {
	f.Add(0.0, 1.0, 300.0, 600.0, 1000.0, false)
	f.Add(-1e300, 1e300, 5e-324, 1e-300, math.Inf(1), true)
	f.Fuzz(func(t *testing.T, x0, x1, y0, y1, level float64, log bool) {
		c := Chart{Label: "x", XTitle: "a", YTitle: "b", LogY: log, Lines: []Line{{Class: "l", X: []float64{x0, x1}, Y: []float64{y0, y1}}, {Class: "d", Dots: true, X: []float64{x1, x0}, Y: []float64{y0, y1}}},
			Levels: []Level{{Class: "v", Label: "limit", Y: level}}}
		if svg := c.SVG(); noNumber.MatchString(svg) {
			t.Errorf("%v %v %v %v %v: %s", x0, x1, y0, y1, level, svg)
		} else if svg != "" {
			wellFormed(t, svg)
		}
	})
}

// Each line has its name beside it, and no name stands on another word, however crowded it is.
func TestNamesStandApart(t *testing.T) {
	c := Chart{Words: "Too high: the readings do not agree", Lines: []Line{{Class: "a", Name: "same speed", X: []float64{20, 60, 100}, Y: []float64{-9, 2, 5}}, {Class: "b", Name: "capacity held", X: []float64{22, 60, 100}, Y: []float64{-26, 2, 7}},
		{Class: "d", Name: "now", Dots: true, X: []float64{62}, Y: []float64{2}}}, Levels: []Level{{Class: "l", Label: "frost, 0 °C", Y: 0}}}
	svg := c.SVG()
	var boxes []box
	for _, m := range regexp.MustCompile(`<text class="co-chart__label" x="([\d.]+)" y="([\d.]+)" text-anchor="(\w+)">(same speed|capacity held|now|frost, 0 °C)<`).FindAllStringSubmatch(svg, -1) {
		x, _ := strconv.ParseFloat(m[1], 64)
		y, _ := strconv.ParseFloat(m[2], 64)
		long := letter * float64(letters(m[4]))
		if m[3] == "end" {
			x -= long
		}
		at := box{x, y - 17, x + long, y + 5}
		for _, o := range boxes {
			if at.x0 < o.x1 && at.x1 > o.x0 && at.y0 < o.y1 && at.y1 > o.y0 {
				t.Errorf("%q stands on another word", m[4])
			}
		}
		boxes = append(boxes, at)
	}
	if len(boxes) != 4 || strings.Count(svg, "co-chart__verdict") != 2 {
		t.Errorf("%d names, want 4, and the verdict in two lines:\n%s", len(boxes), svg)
	}
}

// The words of a level stand where no curve goes through them: above it, or
// below where a curve comes down on it.
func TestLevelWordsClearOfCurves(t *testing.T) {
	down := Line{Class: "a", X: []float64{0, 50, 100}, Y: []float64{100, 60, 51}}
	for _, c := range []struct {
		name  string
		lines []Line
		want  string // where the words are
	}{
		{"no curve near", []Line{{Class: "a", X: []float64{0, 100}, Y: []float64{100, 100}}}, `text-anchor="end">limit<`},
		{"a curve at the right end", []Line{down}, `y="154" text-anchor="end">limit<`},
		{"curves at both ends", []Line{down, {Class: "b", X: []float64{0, 20, 21}, Y: []float64{52, 55, 90}}}, `text-anchor="end">limit<`},
	} {
		svg := (&Chart{Lines: c.lines, Levels: []Level{{Class: "l", Label: "limit", Y: 50}}}).SVG()
		if !strings.Contains(svg, c.want) {
			t.Errorf("%s: got %s, want the words as %s", c.name, svg, c.want)
		}
	}
}
