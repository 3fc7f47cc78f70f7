package markup

import (
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"
)

// A togetherWriter writes text as goldmark does, with a no-break space between a number and its unit and inside a number
// such as 10 000: on a phone a line would often end between the two, and half a number reads as another number.
type togetherWriter struct{ html.Writer }

func (t togetherWriter) Write(w util.BufWriter, text []byte) {
	from := 0
	for i := 1; i+1 < len(text); i++ {
		if text[i] != ' ' || !digit(text[i-1]) || !belongs(text[i+1:]) {
			continue
		}
		t.Writer.Write(w, text[from:i])
		_, _ = w.WriteString("\u00a0")
		from = i + 1
	}
	t.Writer.Write(w, text[from:])
}

// belongs tells whether text goes on with three digits or with a unit.
func belongs(text []byte) bool {
	end := 0
	for end < len(text) && !util.IsSpace(text[end]) {
		end++
	}
	if end >= 3 && digit(text[0]) && digit(text[1]) && digit(text[2]) && (end == 3 || !digit(text[3])) {
		return true
	}
	return isUnit(text[:end])
}

func digit(c byte) bool { return '0' <= c && c <= '9' }
