package markup

import (
	"bytes"
	"strconv"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// steps are numbered lists whose items start with [ ]:
//
//  4. [ ] If the pipe is warm, wait until the hand can stay on it. [@practice-58] {#cool-down}
//
//     Why: Hot copper oxidises as soon as air reaches it.
//
// Numbering goes on through the whole page, and the author writes the numbers.
type steps struct{}

func (steps) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithParagraphTransformers(util.Prioritized(stepPartTransformer{}, priorityStepParts)))
	register(m, stepRenderer{})
}

// Limits of the house style.
const (
	stepWords = 20 // in a sentence of a step
	whyWords  = 25 // in a sentence of an explanation
)

var (
	kindStepList = ast.NewNodeKind("StepList")
	kindStep     = ast.NewNodeKind("Step")
	kindStepText = ast.NewNodeKind("StepText")
	kindWhy      = ast.NewNodeKind("Why")
)

type stepListNode struct {
	ast.BaseBlock
	start int
}

func (n *stepListNode) Kind() ast.NodeKind            { return kindStepList }
func (n *stepListNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

type stepNode struct {
	ast.BaseBlock
	number int
	id     string // without step-
}

func (n *stepNode) Kind() ast.NodeKind            { return kindStep }
func (n *stepNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// stepTextNode is the instruction itself: what stands on the line of the box.
type stepTextNode struct {
	ast.BaseBlock
	number int    // as the author wrote it
	given  string // {#id}, or ""
	id     string
}

func (n *stepTextNode) Kind() ast.NodeKind            { return kindStepText }
func (n *stepTextNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// whyNode is the explanation under a step, folded.
type whyNode struct {
	ast.BaseBlock
	step int
}

func (n *whyNode) Kind() ast.NodeKind            { return kindWhy }
func (n *whyNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

var whyLabel = []byte("Why:")

// stepPartTransformer turns the paragraphs of an item: the first into the step's text, those with “Why:” into folded
// explanations. “Why:” may also follow the text without an empty line.
type stepPartTransformer struct{}

func (stepPartTransformer) Transform(paragraph *ast.Paragraph, reader text.Reader, pc parser.Context) {
	item, ok := paragraph.Parent().(*ast.ListItem)
	if !ok {
		return
	}
	if list, ok := item.Parent().(*ast.List); !ok || !list.IsOrdered() {
		return
	}
	source := reader.Source()
	lines := paragraph.Lines()
	if lines.Len() == 0 {
		return
	}
	segment := lines.At(0)
	segment = segment.TrimLeftSpace(source)
	value := source[segment.Start:segment.Stop]
	var first ast.Node
	boxLength := 0
	if item.FirstChild() == ast.Node(paragraph) {
		box, ticked := cutBox(value)
		if box == 0 {
			return
		}
		w := pc.Get(walkerKey).(*walker)
		if ticked {
			w.problem(w.line(segment.Start), "box of a step is not empty", "write [ ] with one space; the reader ticks it")
		}
		words := &stepTextNode{number: numberBefore(source, segment.Start)}
		words.SetPos(segment.Start)
		first, boxLength = words, box
	} else {
		if item.FirstChild().Kind() != kindStepText || !bytes.HasPrefix(value, whyLabel) {
			return
		}
	}
	current := first
	from, label := 0, boxLength // first line of the current part, and the length of its label
	finish := func(to int) {
		if current == nil {
			return
		}
		words, isText := current.(*stepTextNode)
		given := setLines(current, lines.Sliced(from, to), label, source, isText)
		if isText {
			words.given = given
		}
		current.SetBlankPreviousLines(paragraph.HasBlankPreviousLines())
		item.InsertBefore(item, paragraph, current)
	}
	for i := range lines.Len() {
		segment = lines.At(i)
		segment = segment.TrimLeftSpace(source)
		if bytes.HasPrefix(source[segment.Start:segment.Stop], whyLabel) {
			finish(i)
			why := &whyNode{}
			why.SetPos(segment.Start)
			current, from, label = why, i, len(whyLabel)
		}
	}
	finish(lines.Len())
	item.RemoveChild(item, paragraph)
}

// cutBox gives the length of the box at the start of an item, 0 when there is none. strange tells that it is not “[ ]”.
func cutBox(line []byte) (length int, strange bool) {
	end := bytes.IndexByte(line[:min(len(line), 3)], ']')
	if end < 1 || line[0] != '[' {
		return 0, false
	}
	if end+1 < len(line) && !util.IsSpace(line[end+1]) {
		return 0, false // a link or a citation of one letter
	}
	inside := string(line[1:end])
	if inside != "" && inside != " " && inside != "x" && inside != "X" {
		return 0, false
	}
	return end + 1, inside != " "
}

// numberBefore reads the number of the list item whose text starts at position.
func numberBefore(source []byte, position int) int {
	end := position
	for end > 0 && (source[end-1] == ' ' || source[end-1] == '\t' || source[end-1] == '.' || source[end-1] == ')') {
		end--
	}
	start := end
	for start > 0 && '0' <= source[start-1] && source[start-1] <= '9' {
		start--
	}
	n, _ := strconv.Atoi(string(source[start:end]))
	return n
}

// isStepList tells whether any item has a box.
func isStepList(list *ast.List) bool {
	if !list.IsOrdered() {
		return false
	}
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		if c := item.FirstChild(); c != nil && c.Kind() == kindStepText {
			return true
		}
	}
	return false
}

// readSteps turns a list into steps and reads them.
func (w *walker) readSteps(list *ast.List) {
	parent := list.Parent()
	stepList := &stepListNode{start: list.Start}
	stepList.SetPos(list.Pos())
	parent.ReplaceChild(parent, list, stepList)
	nested := parent.Kind() != ast.KindDocument
	for item := list.FirstChild(); item != nil; {
		next := item.NextSibling()
		words, ok := item.FirstChild().(*stepTextNode)
		if !ok {
			w.problem(w.itemLine(item), "item in a list of steps has no box", "start it with [ ]")
			stepList.AppendChild(stepList, item)
			w.children(item)
			item = next
			continue
		}
		if nested {
			w.problem(w.line(words.Pos()), "step stands inside another block", "lists of steps stand at the left edge")
		}
		step := &stepNode{number: words.number}
		step.SetPos(item.Pos())
		for c := item.FirstChild(); c != nil; {
			after := c.NextSibling()
			step.AppendChild(step, c)
			c = after
		}
		stepList.AppendChild(stepList, step)
		w.readStep(step, words)
		item = next
	}
}

func (w *walker) itemLine(item ast.Node) int {
	if c := item.FirstChild(); c != nil {
		return w.blockLine(c)
	}
	return w.line(item.Pos())
}

func (w *walker) readStep(step *stepNode, words *stepTextNode) {
	line := w.blockLine(words)
	if step.number != w.step+1 {
		w.problem(line, "step is numbered "+strconv.Itoa(step.number),
			"the next number on this page is "+strconv.Itoa(w.step+1))
	}
	w.step = step.number

	w.collect(words)
	plain := bytes.TrimSpace(w.plain)
	if len(plain) == 0 {
		w.problem(line, "step "+strconv.Itoa(step.number)+" is empty", "")
	}
	if bytes.Contains(plain, []byte("{#")) {
		w.problem(line, "id of the step is not understood", "end the step with {#id}; "+idHint)
	}
	if words.given != "" {
		step.id = words.given
		if !validID(step.id) {
			w.problem(line, "step id is "+step.id, idHint)
			step.id = w.slug("", []byte(step.id), 0, "step")
		}
		w.claim("step-"+step.id, line, "")
	} else {
		id := w.slug("step-", plain, 6, strconv.Itoa(step.number))
		if before, taken := w.ids[id]; taken {
			w.problem(line, "step starts with the same words as the step on line "+strconv.Itoa(before),
				"end it with an id of its own, for example {#"+id[len("step-"):]+"-again}")
		}
		step.id = w.free(id, line)[len("step-"):]
	}
	words.id = step.id
	w.result.Steps = append(w.result.Steps, Step{step.number, step.id, string(plain), line})
	w.passage(PassageStep, "step-"+step.id, plain)
	w.checkSentences(stepWords, "step", line)
	w.checkHazards(line)

	w.inStep = true
	for n := words.NextSibling(); n != nil; {
		n = w.node(n)
	}
	w.inStep = false
}

// checkHazards reports a hazard that the step names and for which no caution stands earlier on the page.
// Each hazard is reported once a page: one caution settles all its steps.
func (w *walker) checkHazards(line int) {
	w.scratch = append(w.scratch[:0], w.plain...)
	for i, c := range w.scratch {
		if 'A' <= c && c <= 'Z' {
			w.scratch[i] = c + 'a' - 'A'
		}
	}
	w.hazards.find(w.scratch, func(row int, phrase string) {
		if w.cautioned[row] || w.missed[row] {
			return
		}
		w.missed[row] = true
		hazard := w.hazards.rows[row]
		w.problem(line, "missing caution for “"+hazard.Name+"”: the step says “"+phrase+"”",
			"before the step write > "+hazard.Lowest.String()+" ("+hazard.Name+"): …")
	})
}

func (w *walker) readWhy(n *whyNode) {
	line := w.blockLine(n)
	n.step = w.step
	w.collect(n)
	if len(bytes.TrimSpace(w.plain)) == 0 {
		w.problem(line, "“Why:” is empty", "")
	}
	w.passage(PassageWhy, "", w.plain)
	w.checkSentences(whyWords, "explanation", line)
}

type stepRenderer struct{}

func (r stepRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindStepList, r.list)
	reg.Register(kindStep, r.step)
	reg.Register(kindStepText, r.text)
	reg.Register(kindWhy, r.why)
}

func (stepRenderer) list(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		_, _ = w.WriteString("</ol>\n")
		return ast.WalkContinue, nil
	}
	// The role keeps the list a list in browsers that forget it when CSS removes the numbers.
	_, _ = w.WriteString(`<ol class="co-steps" role="list"`)
	if start := node.(*stepListNode).start; start != 1 {
		_, _ = w.WriteString(` start="` + strconv.Itoa(start) + `"`)
	}
	_, _ = w.WriteString(">\n")
	return ast.WalkContinue, nil
}

func (stepRenderer) step(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		_, _ = w.WriteString("</div></li>\n")
		return ast.WalkContinue, nil
	}
	n := node.(*stepNode)
	_, _ = w.WriteString(`<li class="co-step" id="step-`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`" data-step="`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`"><label class="co-step__tick"><input type="checkbox" data-tick="`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`" aria-labelledby="step-`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`-text"><span class="co-step__number" aria-hidden="true">`)
	_, _ = w.WriteString(strconv.Itoa(n.number))
	_, _ = w.WriteString(`</span></label><div class="co-step__body">`)
	return ast.WalkContinue, nil
}

func (stepRenderer) text(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString(`<p class="co-step__text" id="step-`)
		_, _ = w.WriteString(node.(*stepTextNode).id)
		_, _ = w.WriteString(`-text">`)
	} else {
		_, _ = w.WriteString("</p>\n")
	}
	return ast.WalkContinue, nil
}

func (stepRenderer) why(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString(`<details class="co-why"><summary>Why<span class="co-visually-hidden"> step `)
		_, _ = w.WriteString(strconv.Itoa(node.(*whyNode).step))
		_, _ = w.WriteString(`</span></summary><p>`)
	} else {
		_, _ = w.WriteString("</p></details>\n")
	}
	return ast.WalkContinue, nil
}
