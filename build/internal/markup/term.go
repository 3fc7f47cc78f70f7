package markup

import (
	"bytes"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// terms are links to the glossary: [[micron]], or [[shown words|term]].
type terms struct{}

func (terms) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithInlineParsers(util.Prioritized(termParser{}, priorityTerm)))
	register(m, termRenderer{})
}

var kindTerm = ast.NewNodeKind("Term")

type termNode struct {
	ast.BaseInline
	shown text.Segment // words in the text
	name  text.Segment // words of the glossary
	href  string       // "" for an unknown term
}

func (n *termNode) Kind() ast.NodeKind            { return kindTerm }
func (n *termNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

type termParser struct{}

func (termParser) Trigger() []byte { return []byte{'['} }

func (termParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	if len(line) < 5 || line[1] != '[' || segment.Padding > 0 {
		return nil
	}
	end := bytes.Index(line, []byte("]]"))
	if end < 2 {
		return nil
	}
	source := block.Source()
	n := &termNode{shown: trimSegment(segment.Start+2, segment.Start+end, source)}
	n.name = n.shown
	if bar := bytes.IndexByte(line[2:end], '|'); bar >= 0 {
		start, bar := n.shown.Start, segment.Start+2+bar
		// In a table the bar is written \|.
		stop := bar
		if stop > start && source[stop-1] == '\\' {
			stop--
		}
		n.shown, n.name = trimSegment(start, stop, source), trimSegment(bar+1, segment.Start+end, source)
	}
	block.Advance(end + 2)
	return n
}

func (w *walker) readTerm(n *termNode) {
	shown := w.source[n.shown.Start:n.shown.Stop]
	if w.collecting {
		w.marks = append(w.marks, mark{len(w.plain), n.shown.Start})
		w.plain = append(w.plain, shown...)
	}
	name := string(w.source[n.name.Start:n.name.Stop])
	term, ok := w.env.Glossary.Find(name)
	if !ok {
		w.problem(w.line(n.Pos()), "unknown term “"+name+"”", report.DidYouMean(name, w.env.Glossary.Names()))
		return
	}
	w.result.Terms = append(w.result.Terms, Use{term.ID, w.line(n.Pos())})
	n.href = "#" + page.TermPrefix + term.ID
	if w.page.Path != page.GlossaryPath {
		n.href = w.page.Base() + glossaryURL + n.href
	}
}

const glossaryURL = "about/glossary.html"

type termRenderer struct{}

func (r termRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindTerm, r.term)
}

func (termRenderer) term(w util.BufWriter, source []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	n := node.(*termNode)
	shown := util.EscapeHTML(source[n.shown.Start:n.shown.Stop])
	if n.href == "" {
		_, _ = w.Write(shown)
		return ast.WalkContinue, nil
	}
	_, _ = w.WriteString(`<a class="co-term" href="`)
	_, _ = w.WriteString(n.href)
	_, _ = w.WriteString(`">`)
	_, _ = w.Write(shown)
	_, _ = w.WriteString(`</a>`)
	return ast.WalkContinue, nil
}
