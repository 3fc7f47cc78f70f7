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
	boxGap      = 8
	lineHeight  = 17
	headGap     = 30 // between two rows, and more for each arrow between them
	arrowGap    = 20
	letterWidth = 7.6 // of the bold 14 px face, generous
	mostBoxes   = 3   // in a row; what is less probable is left out of the drawing, not of the list
	labelHeight = 22

	// Three boxes side by side need a wider sheet for the longest words; it is shown as wide, so its letters are smaller.
	narrowSheet = 328
	wideSheet   = 388
)

// box is one box of the drawing.
type box struct {
	x, y, w, h int
	lines      []string
}

// line is an arrow of the drawing with its two ends and the place of its label.
type line struct {
	arrow          *Arrow
	from, to       int // places in the rows
	x1, y1, x2, y2 int
	label          string
	lx, ly         int // middle of the label
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
	untangle(causes, mechanisms, arrows)

	var above, below []line
	for i := range arrows {
		a := &arrows[i]
		to := at(mechanisms, a.Mechanism)
		if to < 0 {
			continue
		}
		if a.Cause < 0 {
			below = append(below, line{arrow: a, from: to})
		} else if from := at(causes, a.Cause); from >= 0 {
			above = append(above, line{arrow: a, from: from, to: to})
		}
	}

	width := narrowSheet
	if len(causes) == mostBoxes || len(mechanisms) == mostBoxes {
		width = wideSheet
	}
	upper := row(width, len(causes), 6, func(i int) string { return m.Causes[causes[i]].Name })
	middle := row(width, len(mechanisms), foot(upper)+headGap+arrowGap*len(above), func(i int) string { return m.Mechanisms[mechanisms[i]].Name })
	lower := row(width, 1, foot(middle)+headGap+arrowGap*len(below), func(int) string { return "Failed compressor" })
	join(facts, width, above, upper, middle)
	join(facts, width, below, middle, lower)

	var b strings.Builder
	b.WriteString(text.Say(`<svg class="co-chain" viewBox="0 0 {} {}" role="img" aria-label="Chain from root cause to failed part; the list below says the same">`, strconv.Itoa(width), strconv.Itoa(foot(lower)+6)))
	for _, lines := range [][]line{above, below} {
		for i := range lines {
			drawLine(&b, &lines[i])
		}
		for i := range lines {
			drawLabel(&b, &lines[i])
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

// untangle puts each mechanism below the middle of its causes, so that few
// arrows cross.
func untangle(causes, mechanisms []int, arrows []Arrow) {
	var middle [mostBoxes]float64
	for i, k := range mechanisms {
		sum, n := 0, 0
		for _, a := range arrows {
			if from := at(causes, a.Cause); a.Mechanism == k && from >= 0 {
				sum, n = sum+from, n+1
			}
		}
		middle[i] = float64(sum) / float64(n) // a mechanism is drawn only when an arrow leads to it
		for j := i; j > 0 && middle[j] < middle[j-1]; j-- {
			middle[j], middle[j-1] = middle[j-1], middle[j]
			mechanisms[j], mechanisms[j-1] = mechanisms[j-1], mechanisms[j]
		}
	}
}

// shares are the places of a label that are tried, in twentieths of the way.
var shares = [...]int{10, 7, 13, 5, 15, 9, 12, 6, 14, 8, 11, 4, 16, 3, 17}

// join leads the lines from the feet of one row to the heads of the next, side
// by side where several share a box, and finds a place for each label.
func join(facts Facts, width int, lines []line, upper, lower []box) {
	for i := range lines {
		l := &lines[i]
		out, in, left, leftIn := 1, 1, 1, 1 // lines that share an end, and this one's place among them
		for k := range lines {
			o := &lines[k]
			if k == i {
				continue
			}
			if o.from == l.from {
				out++
				if o.to < l.to {
					left++
				}
			}
			if o.to == l.to {
				in++
				if o.from < l.from {
					leftIn++
				}
			}
		}
		from, to := upper[l.from], lower[l.to]
		l.x1, l.y1 = from.x+from.w*left/(out+1), from.y+from.h
		l.x2, l.y2 = to.x+to.w*leftIn/(in+1), to.y-2
		l.label = label(facts, l.arrow)
	}
	for i := range lines {
		l := &lines[i]
		least := -1
		half := labelWidth(l.label)/2 + 1
		for _, aside := range [...]int{0, -20, 20} { // beside the line only where nothing on it is free
			for _, share := range shares {
				x, y := l.x1+(l.x2-l.x1)*share/20+aside, l.y1+(l.y2-l.y1)*share/20
				x = min(max(x, half), width-half)
				if n := hidden(lines, i, x, y) + abs(aside); least < 0 || n < least {
					least, l.lx, l.ly = n, x, y
				}
			}
		}
	}
}

// hidden counts what a label would cover: other labels above all, and parts of
// other lines, which it could be taken for a label of.
func hidden(lines []line, i, x, y int) int {
	n, w := 0, labelWidth(lines[i].label)/2+2
	for k := range lines {
		o := &lines[k]
		if k < i && abs(o.lx-x) < w+labelWidth(o.label)/2 && abs(o.ly-y) < labelHeight+2 {
			n += 100
		}
		for s := 0; k != i && s <= 20; s++ {
			if abs(o.x1+(o.x2-o.x1)*s/20-x) < w && abs(o.y1+(o.y2-o.y1)*s/20-y) < labelHeight/2+2 {
				n++
			}
		}
	}
	return n
}

func abs(v int) int { return max(v, -v) }

// row lays n boxes out side by side.
func row(width, n, y int, name func(int) string) []box {
	if n == 0 {
		return nil
	}
	w := (width - 4 - (n-1)*boxGap) / n
	boxes := make([]box, n)
	most := 0
	for i := range boxes {
		boxes[i] = box{x: 2 + i*(w+boxGap), y: y, w: w, lines: wrap(name(i), int(float64(w-20)/letterWidth))}
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

// label is the numbers of the facts that back an arrow, at most three, with a
// question mark while it is not proven.
func label(facts Facts, a *Arrow) string {
	var parts []string
	for i, f := range a.Facts {
		if i == 3 {
			parts = append(parts, "…")
			break
		}
		parts = append(parts, strconv.Itoa(Number(facts, f)))
	}
	if !a.Proven {
		parts = append(parts, "?")
	}
	return strings.Join(parts, " ")
}

func labelWidth(label string) int { return 14 + 8*len([]rune(label)) }

func drawLine(b *strings.Builder, l *line) {
	class := "co-chain__arrow co-chain__arrow--open"
	if l.arrow.Proven {
		class = "co-chain__arrow"
	}
	n := strconv.Itoa
	// The head is a path of its own: dashes would break it.
	b.WriteString(text.Say(`<path class="{}" d="M{} {}L{} {}"/><path class="co-chain__arrow" d="M{} {}L{} {}L{} {}"/>`, class,
		n(l.x1), n(l.y1), n(l.x2), n(l.y2), n(l.x2-6), n(l.y2-8), n(l.x2), n(l.y2), n(l.x2+6), n(l.y2-8)))
}

func drawLabel(b *strings.Builder, l *line) {
	w, n := labelWidth(l.label), strconv.Itoa
	b.WriteString(text.Say(`<rect class="co-chain__label" x="{}" y="{}" width="{}" height="22" rx="11"/><text class="co-chain__number" text-anchor="middle" x="{}" y="{}">{}</text>`,
		n(l.lx-w/2), n(l.ly-labelHeight/2), n(w), n(l.lx), n(l.ly+5), l.label))
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
