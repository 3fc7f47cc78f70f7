package cause

import (
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

type rect struct{ x, y, w, h float64 }

func (r rect) meets(o rect) bool {
	return r.x < o.x+o.w && o.x < r.x+r.w && r.y < o.y+o.h && o.y < r.y+r.h
}

func rectsOf(t *testing.T, svg, class string) []rect {
	t.Helper()
	var out []rect
	for _, m := range regexp.MustCompile(`<rect class="`+class+`" x="(-?\d+)" y="(-?\d+)" width="(\d+)" height="(\d+)"`).FindAllStringSubmatch(svg, -1) {
		var v [4]float64
		for i := range v {
			f, err := strconv.ParseFloat(m[i+1], 64)
			if err != nil {
				t.Fatal(err)
			}
			v[i] = f
		}
		out = append(out, rect{v[0], v[1], v[2], v[3]})
	}
	return out
}

// TestDrawing: whatever one to four causes and their arrows are, labels meet no
// label and no box, and everything stands on the sheet.
func TestDrawing(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	names := []string{"Contamination left from the last failure", "Low indoor airflow", "Brazing scale and dirt", "Oil trapped or lost"}
	most := 0
	for n := range 1000 {
		causes, mechanisms := 1+n%4, 1+n/4%4
		m := &Model{}
		for i := range causes {
			m.Causes = append(m.Causes, Cause{ID: "c" + strconv.Itoa(i), Name: names[i]})
		}
		for range mechanisms {
			m.Mechanisms = append(m.Mechanisms, Mechanism{Name: "Debris: scoring and sticking"})
		}
		var facts Facts
		for range 40 {
			facts = append(facts, Present)
			m.Findings = append(m.Findings, Finding{})
		}
		var arrows []Arrow
		for c := range causes {
			for k := range mechanisms {
				if k == c%mechanisms || r.Float64() < 0.5 {
					facts := []int{7, 18, 29, 30}[:r.IntN(5)]
					arrows = append(arrows, Arrow{Cause: c, Mechanism: k, Facts: facts, Proven: len(facts) > 1 && r.IntN(2) > 0})
				}
			}
		}
		for k := range mechanisms {
			if at := len(arrows); at > 0 {
				arrows = append(arrows, Arrow{Cause: -1, Mechanism: k, Facts: []int{11, 12}[:r.IntN(3)]})
			}
		}
		svg := Draw(m, facts, arrows)
		size := regexp.MustCompile(`viewBox="0 0 (\d+) (\d+)"`).FindStringSubmatch(svg)
		if size == nil {
			t.Fatalf("no view box in %s", svg)
		}
		width, _ := strconv.ParseFloat(size[1], 64)
		height, _ := strconv.ParseFloat(size[2], 64)
		labels, boxes := rectsOf(t, svg, "co-chain__label"), rectsOf(t, svg, "co-chain__box")
		if got := strings.Count(svg, `<text class="co-chain__number"`); got != len(labels) || got == 0 {
			t.Fatalf("%d numbers, %d labels", got, len(labels))
		}
		if len(boxes) < 3 || len(boxes) > 2*mostBoxes+1 {
			t.Errorf("%d boxes, want 3 to 7", len(boxes))
		}
		most = max(most, len(labels))
		for i, a := range append(labels, boxes...) {
			if a.x < 0 || a.y < 0 || a.x+a.w > width || a.y+a.h > height {
				t.Errorf("drawing %d: %v leaves the sheet of %v by %v", n, a, width, height)
			}
			for k, b := range append(labels, boxes...) {
				if k > i && a.meets(b) {
					t.Errorf("drawing %d: %v covers %v in %s", n, a, b, svg)
				}
			}
		}
		if t.Failed() {
			return
		}
	}
	t.Logf("1000 drawings, up to %d arrows", most)
}

// TestWordsFit: the longest words of the model fit the boxes of a full row.
func TestWordsFit(t *testing.T) {
	for _, word := range []string{"Contamination", "Restriction,", "overstress", "compressor"} {
		w := (wideSheet - 4 - (mostBoxes-1)*boxGap) / mostBoxes
		if got := letterWidth * float64(len(word)); got > float64(w-8) {
			t.Errorf("%s takes %.0f, want at most %d", word, got, w)
		}
	}
}
