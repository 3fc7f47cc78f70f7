package markup

import (
	"bytes"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// decisions are tables directly under a paragraph “Decide: question”. First columns: what is found; last column: Do.
type decisions struct{}

func (decisions) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithParagraphTransformers(util.Prioritized(decideTransformer{}, priorityDecide)))
	register(m, decisionRenderer{})
}

var (
	kindDecide   = ast.NewNodeKind("Decide")
	kindDecision = ast.NewNodeKind("Decision")
)

// decideNode is the question; it becomes the caption of the decision.
type decideNode struct {
	ast.BaseBlock
	given string // {#id}, or ""
	id    string // of the caption
}

func (n *decideNode) Kind() ast.NodeKind            { return kindDecide }
func (n *decideNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// decisionNode holds the question and the table.
type decisionNode struct {
	ast.BaseBlock
	id string
}

func (n *decisionNode) Kind() ast.NodeKind            { return kindDecision }
func (n *decisionNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

var decideLabel = []byte("Decide:")

type decideTransformer struct{}

func (decideTransformer) Transform(paragraph *ast.Paragraph, reader text.Reader, _ parser.Context) {
	lines, source := paragraph.Lines(), reader.Source()
	if lines.Len() == 0 {
		return
	}
	segment := lines.At(0)
	segment = segment.TrimLeftSpace(source)
	if !bytes.HasPrefix(source[segment.Start:segment.Stop], decideLabel) {
		return
	}
	n := &decideNode{}
	n.SetPos(segment.Start)
	n.SetBlankPreviousLines(paragraph.HasBlankPreviousLines())
	n.given = setLines(n, lines.Sliced(0, lines.Len()), len(decideLabel), source, true)
	parent := paragraph.Parent()
	parent.InsertBefore(parent, paragraph, n)
	parent.RemoveChild(parent, paragraph)
}

// readDecision joins question and table, and gives the sibling after them.
func (w *walker) readDecision(question *decideNode) ast.Node {
	line := w.line(question.Pos())
	cited := w.cited
	w.collect(question)
	id := ""
	if question.given != "" {
		id = "decide-" + question.given
		if !validID(id) {
			w.problem(line, "id of a decision is "+question.given, idHint)
			id = w.slug("decide-", []byte(question.given), 0, "table")
		}
		w.claim(id, line, "")
	} else {
		id = w.free(w.slug("decide-", w.plain, 6, "table"), line)
	}
	question.id = id + "-question"
	w.passage(PassageDecision, id, w.plain)
	if len(bytes.TrimSpace(w.plain)) == 0 {
		w.problem(line, "“Decide:” asks nothing", "write the question behind the colon")
	}

	parent := question.Parent()
	decision := &decisionNode{id: id}
	decision.SetPos(question.Pos())
	table, ok := question.NextSibling().(*east.Table)
	if !ok {
		w.problem(line, "no table under “Decide:”", "a table must stand directly below it, with the last column Do")
		next := question.NextSibling()
		parent.ReplaceChild(parent, question, decision)
		decision.AppendChild(decision, question)
		return next
	}
	next := table.NextSibling()
	wide := w.wrapTable(table)
	parent.ReplaceChild(parent, question, decision)
	decision.AppendChild(decision, question)
	decision.AppendChild(decision, wide)
	wide.labelledBy = question.id
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		if row.Kind() == east.KindTableHeader {
			wide.columns = w.readColumns(row)
			continue
		}
		w.readRow(row, PassageDecision)
		if last := row.LastChild(); last == nil || !last.HasChildren() {
			w.problem(w.line(row.Pos()), "row "+rowNumber(row)+" of the decision says nothing to do", "fill its last column")
		}
	}
	if n := len(wide.columns); n < 2 || !bytes.EqualFold(wide.columns[n-1], []byte("Do")) {
		w.problem(w.line(table.Pos()), "last column of the decision is not “Do”", "first columns: what is found; last column: Do")
	}
	if w.cited == cited {
		w.problem(line, "decision has no source", "cite one in the question or the table, or [@common-practice]")
	}
	return next
}

type decisionRenderer struct{}

func (r decisionRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindDecision, r.decision)
	reg.Register(kindDecide, r.question)
}

func (decisionRenderer) decision(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString(`<figure class="co-decision" id="`)
		_, _ = w.WriteString(node.(*decisionNode).id)
		_, _ = w.WriteString(`">`)
	} else {
		_, _ = w.WriteString("</figure>\n")
	}
	return ast.WalkContinue, nil
}

func (decisionRenderer) question(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString(`<figcaption id="`)
		_, _ = w.WriteString(node.(*decideNode).id)
		_, _ = w.WriteString(`">`)
	} else {
		_, _ = w.WriteString("</figcaption>\n")
	}
	return ast.WalkContinue, nil
}
