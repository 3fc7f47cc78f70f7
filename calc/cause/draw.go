package cause

import (
	"strconv"
	"strings"

	"changeout/calc/text"
)

// The drawing of the chain: root causes in the upper row, mechanisms below,
// the failed compressor at the foot. A proven arrow is a full line, any other
// is dashed and carries a question mark. Numbers on an arrow are the facts that
// back it, counted through the findings present. Classes only: the style sheet
// owns colours and weights.

const (
	drawingWidth = 360
	boxGap       = 12
	lineHeight   = 17
	rowGap       = 62
	letterWidth  = 7.6 // of the bold 14 px face, generous
	mostBoxes    = 3   // in a row; what is less probable is left out of the drawing, not of the list
)

// box is one box of the drawing.
type box struct {
	x, y, w, h int
	lines      []string
}

// Draw returns the chain as SVG text.
func Draw(m *Model, facts Facts, arrows []Arrow) string {
	var causes, mechanisms []int
	for _, a := range arrows {
		if a.Cause >= 0 && !has(causes, a.Cause) && len(causes) < mostBoxes {
			causes = append(causes, a.Cause)
		}
	}
	for _, a := range arrows {
		if a.Cause >= 0 && has(causes, a.Cause) && !has(mechanisms, a.Mechanism) && len(mechanisms) < mostBoxes {
			mechanisms = append(mechanisms, a.Mechanism)
		}
	}
	upper := row(len(causes), 6, func(i int) string { return m.Causes[causes[i]].Name })
	middle := row(len(mechanisms), foot(upper)+rowGap, func(i int) string { return m.Mechanisms[mechanisms[i]].Name })
	lower := row(1, foot(middle)+rowGap, func(int) string { return "Failed compressor" })
	height := foot(lower) + 6

	var b strings.Builder
	b.WriteString(text.Say(`<svg class="co-chain" viewBox="0 0 360 {}" role="img" aria-label="Chain from root cause to failed part; the list below says the same">`, strconv.Itoa(height)))
	for _, a := range arrows {
		to := at(mechanisms, a.Mechanism)
		if to < 0 {
			continue
		}
		if a.Cause < 0 {
			drawArrow(&b, facts, a, middle[to], lower[0], 1, 2)
		} else if from := at(causes, a.Cause); from >= 0 {
			drawArrow(&b, facts, a, upper[from], middle[to], 1+(from+to)%2, 3)
		}
	}
	for _, boxes := range [][]box{upper, middle, lower} {
		for _, x := range boxes {
			drawBox(&b, x)
		}
	}
	b.WriteString("</svg>")
	return b.String()
}

// row lays n boxes out side by side.
func row(n, y int, name func(int) string) []box {
	if n == 0 {
		return nil
	}
	w := (drawingWidth - 4 - (n-1)*boxGap) / n
	boxes := make([]box, n)
	most := 0
	for i := range boxes {
		boxes[i] = box{x: 2 + i*(w+boxGap), y: y, w: w, lines: wrap(name(i), int(float64(w-12)/letterWidth))}
		most = max(most, len(boxes[i].lines))
	}
	for i := range boxes {
		boxes[i].h = most*lineHeight + 14
	}
	return boxes
}

func foot(boxes []box) int {
	if len(boxes) == 0 {
		return 0
	}
	return boxes[0].y + boxes[0].h
}

// wrap breaks words into lines of at most so many letters; a longer word
// stands alone.
func wrap(s string, letters int) []string {
	var lines []string
	for w := range strings.FieldsSeq(s) {
		last := len(lines) - 1
		if last >= 0 && len(lines[last])+1+len(w) <= letters {
			lines[last] += " " + w
		} else {
			lines = append(lines, w)
		}
	}
	return lines
}

func drawBox(b *strings.Builder, x box) {
	b.WriteString(text.Say(`<rect class="co-chain__box" x="{}" y="{}" width="{}" height="{}"/>`,
		strconv.Itoa(x.x), strconv.Itoa(x.y), strconv.Itoa(x.w), strconv.Itoa(x.h)))
	top := x.y + (x.h-len(x.lines)*lineHeight)/2 + 13
	for i, l := range x.lines {
		b.WriteString(text.Say(`<text class="co-chain__name" text-anchor="middle" x="{}" y="{}">{}</text>`,
			strconv.Itoa(x.x+x.w/2), strconv.Itoa(top+i*lineHeight), escape(l)))
	}
}

// drawArrow draws from the foot of one box to the head of another, with its
// label at share/of of the way, so that crossing arrows keep their labels apart.
func drawArrow(b *strings.Builder, facts Facts, a Arrow, from, to box, share, of int) {
	x1, y1 := from.x+from.w/2, from.y+from.h
	x2, y2 := to.x+to.w/2, to.y
	class := "co-chain__arrow co-chain__arrow--open"
	label := "?"
	if a.Proven {
		class = "co-chain__arrow"
	}
	if len(a.Facts) > 0 {
		numbers := make([]string, 0, 4)
		for _, f := range a.Facts {
			if len(numbers) == 3 {
				numbers = append(numbers, "…")
				break
			}
			numbers = append(numbers, strconv.Itoa(Number(facts, f)))
		}
		label = strings.Join(numbers, " ")
		if !a.Proven {
			label += " ?"
		}
	}
	n := strconv.Itoa
	b.WriteString(text.Say(`<path class="{}" d="M{} {}L{} {}M{} {}L{} {}L{} {}"/>`, class,
		n(x1), n(y1), n(x2), n(y2-2), n(x2-6), n(y2-10), n(x2), n(y2-2), n(x2+6), n(y2-10)))
	x, y := x1+(x2-x1)*share/of, y1+(y2-y1)*share/of
	w := 14 + 8*len([]rune(label))
	b.WriteString(text.Say(`<rect class="co-chain__label" x="{}" y="{}" width="{}" height="22" rx="11"/><text class="co-chain__number" text-anchor="middle" x="{}" y="{}">{}</text>`,
		n(x-w/2), n(y-11), n(w), n(x), n(y+5), label))
}

// Number counts a present finding through the present ones, from 1: the
// evidence number that the drawing, the list and the report share.
func Number(facts Facts, finding int) int {
	n := 0
	for f := 0; f <= finding && f < len(facts); f++ {
		if facts[f] == Present {
			n++
		}
	}
	return n
}

func has(list []int, v int) bool { return at(list, v) >= 0 }

func at(list []int, v int) int {
	for i, x := range list {
		if x == v {
			return i
		}
	}
	return -1
}

func escape(s string) string {
	return text.Swap(s, "&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")
}
