package markup

import (
	"bytes"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// headings gives every heading an id: the author's {#id}, or the slug of its words.
type headings struct{}

func (headings) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithBlockParsers(
		util.Prioritized(headingParser{parser.NewATXHeadingParser()}, priorityHeading)))
}

// headingParser is goldmark's, and takes {#id} off the line. (goldmark's own attribute option would also let style
// and class through, and costs a reader for each heading.)
type headingParser struct{ parser.BlockParser }

func (p headingParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	n, state := p.BlockParser.Open(parent, reader, pc)
	if n == nil || n.Lines().Len() == 0 {
		return n, state
	}
	segment, id := cutID(n.Lines().At(0), reader.Source())
	if id != "" {
		n.Lines().Set(0, segment)
		n.SetAttribute(attributeID, id)
	}
	return n, state
}

var attributeID = []byte("id")

func (w *walker) readHeading(n *ast.Heading) {
	line := w.blockLine(n)
	w.collect(n)
	words := bytes.TrimSpace(w.plain)
	var id string
	if given, ok := n.Attribute(attributeID); ok {
		id = given.(string)
		if !validID(id) {
			w.problem(line, "heading id is "+id, idHint)
		}
		w.claim(id, line, "")
	} else {
		prefix := ""
		if n.Level == 2 && w.page.Path == page.GlossaryPath {
			prefix = page.TermPrefix
			words, _, _ = bytes.Cut(words, []byte(" ("))
		}
		id = w.free(w.slug(prefix, words, 0, "section"), line)
		n.SetAttribute(attributeID, id)
	}
	heading := Heading{n.Level, id, string(bytes.TrimSpace(w.plain)), line}
	switch {
	case len(words) == 0:
		w.problem(line, "heading has no words", "")
	case n.Level == 1:
		w.problem(line, "heading of level 1", "the page’s title comes from its header; start with ##")
	case n.Level > w.level+1:
		w.problem(line, "heading jumps from level "+strconv.Itoa(w.level)+" to level "+strconv.Itoa(n.Level),
			"use "+strings.Repeat("#", w.level+1))
	}
	w.level = n.Level
	w.heading = heading.Text
	w.result.Headings = append(w.result.Headings, heading)
	if w.page.Path == page.GlossaryPath {
		w.passage(PassageTerm, id, w.plain)
	} else {
		w.passage(PassageHeading, id, w.plain)
	}
	if n.Level == 2 && w.page.Kind == page.Procedure {
		w.sections.add(heading, n.Lines())
	}
}

// procedureSections are the parts of a procedure in their order.
var procedureSections = [...]string{
	"What this achieves",
	"What you need",
	"Before you start",
	"Steps",
	"Decide",
	"Write down",
	"What beginners get wrong",
	"What makes the job fail again",
	"Stop and call for help",
}

const (
	sectionBefore = 2
	sectionSteps  = 3
	sectionDecide = 4 // optional; decisions may also stand inside Steps
)

// sections follows the ## headings of a procedure.
type sections struct {
	seen   [len(procedureSections)]int // line of the first heading
	last   int                         // highest section so far, counted from 1
	others []Heading                   // headings that are no section; kept for near misses
	late   []Heading                   // sections that stand after a later one

	before, after int // the text of “Before you start”: positions in the body
	open          bool
}

func (s *sections) add(h Heading, lines *text.Segments) {
	if s.open && lines.Len() > 0 {
		s.after, s.open = lines.At(0).Start, false
	}
	name, _, _ := strings.Cut(h.Text, ":")
	section := -1
	for i, known := range procedureSections {
		if strings.EqualFold(strings.TrimSpace(name), known) {
			section = i
		}
	}
	if section < 0 {
		s.others = append(s.others, h)
		return
	}
	if s.seen[section] == 0 {
		s.seen[section] = h.Line
	}
	if section+1 < s.last && !(section == sectionSteps && s.last == sectionDecide+1) {
		s.late = append(s.late, h) // Steps and Decide may take turns
		return
	}
	s.last = max(s.last, section+1)
	if section == sectionBefore && lines.Len() > 0 {
		s.before, s.after, s.open = lines.At(0).Stop, -1, true
	}
}

// finishSections reports missing and misplaced sections once the whole page was read.
func (w *walker) finishSections() {
	if w.page.Kind != page.Procedure {
		return
	}
	s := &w.sections
	var missing []string
	for i, line := range s.seen {
		if line == 0 && i != sectionDecide {
			missing = append(missing, procedureSections[i])
		}
	}
	for _, h := range s.others {
		if near := report.Nearest(h.Text, missing); near != "" {
			w.problem(h.Line, "section “"+h.Text+"” is not one of a procedure", "did you mean “"+near+"”?")
		}
	}
	for _, name := range missing {
		w.problem(w.page.BodyLine, "section “"+name+"” is missing", "add “## "+name+"” in its place")
	}
	for _, h := range s.late {
		w.problem(h.Line, "section “"+h.Text+"” is out of order",
			"the order is "+strings.Join(procedureSections[:], " · "))
	}
	if s.seen[sectionBefore] > 0 {
		end := s.after
		if end < 0 {
			end = len(w.source)
		}
		lower := bytes.ToLower(w.source[s.before:max(s.before, end)])
		for _, needed := range [...]struct{ word, text string }{
			{"local code", "local codes"}, {"manual", "the maker’s manual"}, {"licen", "licensed practice"},
		} {
			if !bytes.Contains(lower, []byte(needed.word)) {
				w.problem(s.seen[sectionBefore], "“Before you start” does not name "+needed.text,
					"say that local codes, the maker’s manual and licensed practice govern")
			}
		}
	}
}
