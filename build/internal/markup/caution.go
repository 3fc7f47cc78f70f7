package markup

import (
	"bytes"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// cautions are block quotes that open with a signal word:
//
//	> WARNING (stored charge): The link capacitors stay charged.
//	> Consequence: The charge can kill.
//	> Avoid: Isolate, wait the marked time, then measure.
type cautions struct{}

func (cautions) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(
		parser.WithBlockParsers(util.Prioritized(cautionParser{parser.NewBlockquoteParser()}, priorityCaution)),
		parser.WithParagraphTransformers(util.Prioritized(cautionPartTransformer{}, priorityCautionParts)),
	)
	register(m, cautionRenderer{})
}

var (
	kindCaution     = ast.NewNodeKind("Caution")
	kindCautionPart = ast.NewNodeKind("CautionPart")
)

type cautionNode struct {
	ast.BaseBlock
	signal page.Signal
	hazard string // id
	name   string // as written in brackets
	id     string // attribute
}

func (n *cautionNode) Kind() ast.NodeKind            { return kindCaution }
func (n *cautionNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// The parts of a caution; their classes are made from the names.
type cautionRole int

const (
	roleHazard cautionRole = iota
	roleConsequence
	roleAvoid
	roleOther // text that belongs to none
)

var cautionRoles = [...]string{"hazard", "consequence", "avoid", "other"}

type cautionPartNode struct {
	ast.BaseBlock
	role cautionRole
}

func (n *cautionPartNode) Kind() ast.NodeKind            { return kindCautionPart }
func (n *cautionPartNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// cautionParser is the block quote's, for quotes that open with a signal word.
type cautionParser struct{ parser.BlockParser }

func (p cautionParser) Open(parent ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, _ := reader.PeekLine()
	at := pc.BlockOffset()
	if at < 0 || at >= len(line) || line[at] != '>' {
		return nil, parser.NoChildren
	}
	signal, _ := cutSignal(bytes.TrimLeft(line[at+1:], " \t"))
	if signal == page.NoSignal {
		return nil, parser.NoChildren
	}
	quote, state := p.BlockParser.Open(parent, reader, pc)
	if quote == nil {
		return nil, state
	}
	return &cautionNode{signal: signal}, state
}

// cutSignal takes a signal word off a line, when a bracket or colon follows so that it is not the start of a sentence.
// Emphasis round it and the form [!WARNING], known from other tools, are taken too and reported by the walk.
func cutSignal(line []byte) (page.Signal, []byte) {
	start := 0
	for start < len(line) && bytes.IndexByte([]byte("*_[!"), line[start]) >= 0 {
		start++
	}
	end := start
	for end < len(line) && ('a' <= line[end]|0x20 && line[end]|0x20 <= 'z') {
		end++
	}
	if n := end - start; n < len("DANGER") || n > len("CAUTION") {
		return page.NoSignal, line
	}
	signal := page.ParseSignal(string(line[start:end]))
	rest := bytes.TrimLeft(line[end:], "*_] \t")
	if signal == page.NoSignal {
		return signal, line
	}
	opens := len(rest) > 0 && (rest[0] == '(' || rest[0] == ':') || start > 0 && line[start-1] == '!'
	if !opens {
		return page.NoSignal, line
	}
	return signal, rest
}

// cautionPartTransformer splits the paragraph of a caution into its parts before inline Markdown is read, so that
// emphasis and links stay inside their part.
type cautionPartTransformer struct{}

func (cautionPartTransformer) Transform(paragraph *ast.Paragraph, reader text.Reader, pc parser.Context) {
	caution, ok := paragraph.Parent().(*cautionNode)
	if !ok {
		return
	}
	w := pc.Get(walkerKey).(*walker)
	source := reader.Source()
	lines := paragraph.Lines()
	first := caution.FirstChild() == ast.Node(paragraph)
	var part *cautionPartNode
	from, label := 0, 0 // the part's first line, and the length of its label
	for i := range lines.Len() {
		segment := lines.At(i)
		segment = segment.TrimLeftSpace(source)
		value := source[segment.Start:segment.Stop]
		role, skip := roleOther, 0
		if signal, rest := cutSignal(value); signal != page.NoSignal {
			if first && i == 0 {
				role, skip = roleHazard, len(value)-len(rest)+w.cautionOpening(caution, value, rest, segment.Start)
			} else {
				w.problem(w.line(segment.Start), "second caution in one block quote", "put an empty line between cautions")
			}
		} else if name, n := cutLabel(value); n > 0 {
			role, skip = name, n
		}
		if part == nil || role != roleOther {
			if part != nil {
				setLines(part, lines.Sliced(from, i), label, source, false)
			}
			part, from, label = &cautionPartNode{role: role}, i, skip
			part.SetPos(segment.Start)
			caution.InsertBefore(caution, paragraph, part)
		}
	}
	if part != nil {
		setLines(part, lines.Sliced(from, lines.Len()), label, source, false)
	}
	caution.RemoveChild(caution, paragraph)
}

// cautionOpening reads “(hazard):” and gives its length; value is the whole line, rest what follows the signal word.
func (w *walker) cautionOpening(n *cautionNode, value, rest []byte, position int) int {
	line := w.line(position)
	if word := n.signal.String(); !bytes.HasPrefix(value, []byte(word)) {
		w.problem(line, "signal word is not plain "+word, "write > "+word+" (hazard): …")
	}
	const form = "write > WARNING (hazard): what the danger is"
	if len(rest) == 0 || rest[0] != '(' {
		w.problem(line, "caution names no hazard", form)
		if len(rest) > 0 && rest[0] == ':' {
			return 1
		}
		return 0
	}
	end := bytes.IndexByte(rest, ')')
	if end < 0 {
		w.problem(line, "bracket of the hazard is not closed", form)
		return 1
	}
	n.name = strings.TrimSpace(string(rest[1:end]))
	n.hazard = page.Slug(n.name)
	end++
	if end < len(rest) && rest[end] == ':' {
		return end + 1
	}
	w.problem(line, "no colon after the hazard", form)
	return end
}

// cutLabel finds “Consequence:” or “Avoid:” at the start of a line and gives its length.
func cutLabel(line []byte) (cautionRole, int) {
	for role, label := range [...]string{roleConsequence: "consequence:", roleAvoid: "avoid:"} {
		if label != "" && len(line) >= len(label) && strings.EqualFold(string(line[:len(label)]), label) {
			return cautionRole(role), len(label)
		}
	}
	return roleOther, 0
}

func (w *walker) readCaution(n *cautionNode) {
	line := w.line(n.Pos())
	var has [len(cautionRoles)]bool
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		part, ok := c.(*cautionPartNode)
		switch {
		case !ok:
			w.problem(w.blockLine(c), "caution holds more than text", "a caution has three parts: the hazard, Consequence:, Avoid:")
		case part.role == roleOther:
			w.problem(w.blockLine(c), "text in a caution belongs to no part", "start the line with Consequence: or Avoid:")
		case has[part.role]:
			w.problem(w.blockLine(c), "caution has two parts “"+cautionRoles[part.role]+"”", "")
		default:
			has[part.role] = part.Lines().Len() > 0
		}
	}
	for role, text := range [...]string{roleHazard: "what the danger is", roleConsequence: "Consequence:", roleAvoid: "Avoid:"} {
		if !has[role] {
			w.problem(line, "caution has no part “"+text+"”", "a caution says what the danger is, its consequence, and how to avoid it")
		}
	}
	base := "caution"
	if n.hazard != "" {
		base = "caution-" + n.hazard
		if hazard, ok := w.env.Hazards.Find(n.hazard); !ok {
			w.problem(line, "unknown hazard “"+n.name+"”", report.DidYouMean(n.hazard, w.env.Hazards.IDs()))
		} else if n.signal < hazard.Lowest {
			w.problem(line, n.signal.String()+" is too weak for “"+hazard.Name+"”", "use "+hazard.Lowest.String()+" or a graver word")
		}
		for i, row := range w.hazards.rows {
			if row.ID == n.hazard {
				w.cautioned[i] = true
			}
		}
	}
	if w.inStep {
		w.problem(line, "caution stands inside a step", "put it before the list of steps, without indent")
	}
	n.id = w.free(base, line)
	w.result.Cautions = append(w.result.Cautions, Caution{n.hazard, n.signal.String(), line})
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		w.collect(c)
		if part, ok := c.(*cautionPartNode); ok && part.role == roleHazard {
			w.passage(PassageCaution, n.id, w.plain)
		}
	}
}

type cautionRenderer struct{}

func (r cautionRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindCaution, r.caution)
	reg.Register(kindCautionPart, r.part)
}

// CautionSymbol is a triangle with an exclamation mark; its colours come from the text. Worksheets show it too.
const CautionSymbol = `<svg class="co-caution__symbol" viewBox="0 0 24 22" width="24" height="22" aria-hidden="true" focusable="false">` +
	`<path d="M12 1.5 23 20.5H1Z" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round"/>` +
	`<path d="M12 8v6M12 16.4v1.8" fill="none" stroke="currentColor" stroke-width="2.2"/></svg>`

func (cautionRenderer) caution(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		_, _ = w.WriteString("</aside>\n")
		return ast.WalkContinue, nil
	}
	n := node.(*cautionNode)
	word := n.signal.String()
	_, _ = w.WriteString(`<aside class="co-caution co-caution--`)
	_, _ = w.WriteString(strings.ToLower(word))
	_, _ = w.WriteString(`" role="note" id="`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`" aria-labelledby="`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`-word"><p class="co-caution__word" id="`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`-word">`)
	if n.signal > page.Notice {
		_, _ = w.WriteString(CautionSymbol)
	}
	_, _ = w.WriteString(word)
	_, _ = w.WriteString("</p>\n")
	return ast.WalkContinue, nil
}

func (cautionRenderer) part(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString(`<p class="co-caution__`)
		_, _ = w.WriteString(cautionRoles[node.(*cautionPartNode).role])
		_, _ = w.WriteString(`">`)
	} else {
		_, _ = w.WriteString("</p>\n")
	}
	return ast.WalkContinue, nil
}
