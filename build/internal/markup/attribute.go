package markup

import (
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// cutID takes a final {#id} off a segment. The id is "" when there is none.
func cutID(segment text.Segment, source []byte) (text.Segment, string) {
	trimmed := segment.TrimRightSpace(source)
	value := source[trimmed.Start:trimmed.Stop]
	if len(value) < 4 || value[len(value)-1] != '}' {
		return segment, ""
	}
	for i := len(value) - 2; i > 0; i-- {
		switch c := value[i]; {
		case c == '#' && value[i-1] == '{':
			id := string(value[i+1 : len(value)-1])
			trimmed.Stop = trimmed.Start + i - 1
			return trimmed.TrimRightSpace(source), id
		case c == '{' || c == '}' || util.IsSpace(c):
			return segment, ""
		}
	}
	return segment, ""
}

// validID tells whether an id is lower-case letters, digits and hyphens, with a letter or digit at both ends.
func validID(id string) bool {
	for i := 0; i < len(id); i++ {
		c := id[i]
		inner := c == '-' && i > 0 && i < len(id)-1
		if !inner && !('a' <= c && c <= 'z') && !('0' <= c && c <= '9') {
			return false
		}
	}
	return id != ""
}

const idHint = "use lower-case letters, digits and single hyphens"

// setLines gives a block lines of a paragraph for inline Markdown: the first starts behind a label of skip bytes, spaces
// at the left of each line and at the end are dropped, and so are empty lines, which goldmark's inline parser cannot
// take. It takes a final {#id} off when withID is set. The slice is changed: its paragraph is about to go.
func setLines(n ast.Node, lines []text.Segment, skip int, source []byte, withID bool) (id string) {
	filled := lines[:0]
	for i, segment := range lines {
		segment = segment.TrimLeftSpace(source)
		if i == 0 {
			segment.Start += min(skip, segment.Len())
			segment = segment.TrimLeftSpace(source)
		}
		if segment.Len() > 0 {
			filled = append(filled, segment)
		}
	}
	kept := n.Lines()
	kept.AppendAll(filled)
	last := kept.Len() - 1
	if last < 0 {
		return ""
	}
	segment := kept.At(last)
	segment = segment.TrimRightSpace(source)
	if withID {
		segment, id = cutID(segment, source)
	}
	if segment.Len() > 0 {
		kept.Set(last, segment)
	} else {
		kept.SetSliced(0, last)
	}
	if last := kept.Len() - 1; id != "" && last >= 0 { // the id had a line of its own
		segment := kept.At(last)
		kept.Set(last, segment.TrimRightSpace(source))
	}
	return id
}
