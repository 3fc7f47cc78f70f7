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
	shown []byte // words in the text
	name  string // words of the glossary
	href  string // "" for an unknown term
}

func (n *termNode) Kind() ast.NodeKind            { return kindTerm }
func (n *termNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

type termParser struct{}

func (termParser) Trigger() []byte { return []byte{'['} }

func (termParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, _ := block.PeekLine()
	if len(line) < 3 || line[1] != '[' || line[2] == '[' {
		return nil
	}
	_, at := block.Position()
	block.Advance(2)
	var inside []byte
	// Words may be wrapped, so the closing brackets may stand on the next line.
	for range 2 {
		line, _ = block.PeekLine()
		if end := bytes.Index(line, closingBrackets); end >= 0 {
			inside = append(inside, line[:end]...)
			block.Advance(end + len(closingBrackets))
			if bytes.IndexByte(inside, '[') >= 0 {
				return nil
			}
			return newTerm(inside, at.Start)
		}
		inside = append(inside, line...)
		block.AdvanceLine()
	}
	return nil
}

var closingBrackets = []byte("]]")

func newTerm(inside []byte, position int) ast.Node {
	n := &termNode{}
	n.SetPos(position)
	shown, name, ok := bytes.Cut(inside, []byte{'|'})
	if !ok {
		name = shown
	}
	// In a table the bar is written \|.
	shown = bytes.TrimSuffix(shown, []byte{'\\'})
	n.shown = bytes.Join(bytes.Fields(shown), []byte{' '})
	n.name = string(bytes.Join(bytes.Fields(name), []byte{' '}))
	return n
}

func (w *walker) readTerm(n *termNode) {
	if w.collecting {
		w.marks = append(w.marks, mark{len(w.plain), n.Pos()})
		w.plain = append(w.plain, n.shown...)
	}
	term, ok := w.env.Glossary.Find(n.name)
	if !ok {
		w.problem(w.line(n.Pos()), "unknown term “"+n.name+"”", report.DidYouMean(n.name, w.env.Glossary.Names()))
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

func (termRenderer) term(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	n := node.(*termNode)
	shown := util.EscapeHTML(n.shown)
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
