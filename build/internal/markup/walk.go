package markup

import (
	"bytes"
	"slices"
	"strconv"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

var walkerKey = parser.NewContextKey()

// A walker goes over a page once, in the order of the text. Methods for a construct stand in the construct's file.
type walker struct {
	*Converter
	page   *page.Page
	source []byte
	result *Result

	// Position to line, kept as a cursor because the walk goes forward.
	cursor, cursorLine int

	ids     map[string]int // id attribute: line
	heading string         // text of the last heading
	level   int            // of the last heading; the page's title is level 1
	cited   int            // citations so far, special ones too

	step       int    // number of the last step, 0 before the first
	cautioned  []bool // by row of the table of hazards: a caution stands earlier on the page
	missed     []bool // by row: the missing caution was already reported
	inStep     bool
	hasEmbeds  bool
	group      string // id of the first of the waits that start together, while grouped is not 0
	groupLine  int
	grouped    int      // waits in that group so far
	takes      []taken  // fields that a worksheet below may take over
	units      []string // lists of units that stand on the page
	sections   sections
	fragments  []localLink // links into this page, checked when all ids are known
	plain      []byte      // plain text of the block being read
	marks      []mark      // where pieces of plain come from
	collecting bool
	scratch    []byte
	row        []byte // cells or parts joined for a passage
	out        output // the page's HTML while it is written
}

// A mark says that plain text from offset on stands in the source at position.
type mark struct{ offset, position int }

// A localLink is a link into the page itself.
type localLink struct {
	id   string
	line int
}

func (w *walker) start(c *Converter, p *page.Page) {
	w.Converter, w.page, w.source = c, p, p.Body
	w.result = &Result{}
	if p.Kind == page.Procedure { // room for what nearly every procedure has, by its length
		w.result.IDs = make([]Use, 0, 8+len(p.Body)/300)
		w.result.Headings = make([]Heading, 0, 8+len(p.Body)/2000)
		w.result.Steps = make([]Step, 0, 4+len(p.Body)/500)
	}
	w.cursor, w.cursorLine = 0, p.BodyLine
	w.ids["main"], w.ids["sources"] = 0, 0 // written by the layout, and at the page's end
	w.level = 1
	if n := len(c.hazards.rows); len(w.cautioned) != n {
		w.cautioned, w.missed = make([]bool, n), make([]bool, n)
	}
}

// stop forgets the page but keeps the buffers.
func (w *walker) stop() {
	clear(w.ids)
	clear(w.cautioned)
	clear(w.missed)
	clear(w.fragments)
	*w = walker{ids: w.ids, cautioned: w.cautioned, missed: w.missed, fragments: w.fragments[:0],
		plain: w.plain[:0], marks: w.marks[:0], scratch: w.scratch[:0], row: w.row[:0],
		out: output{w.out.bytes[:0]}}
}

// Transform implements parser.ASTTransformer.
func (walking) Transform(document *ast.Document, _ text.Reader, pc parser.Context) {
	w := pc.Get(walkerKey).(*walker)
	w.children(document)
	w.endGroup()
	w.endTakes()
	w.finishSections()
	for _, f := range w.fragments {
		if _, ok := w.ids[f.id]; ok || w.hasEmbeds {
			continue // ids inside embeds show in the finished HTML only, where package check looks
		}
		w.problem(f.line, "no #"+f.id+" on this page", w.nearID(f.id))
	}
	slices.SortStableFunc(w.result.Problems, report.Compare)
}

func (w *walker) children(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; {
		n = w.node(n)
	}
}

// node reads one node with all below it and gives the next sibling to read.
func (w *walker) node(n ast.Node) ast.Node {
	next := n.NextSibling()
	switch n := n.(type) {
	case *ast.Text:
		if w.collecting {
			w.marks = append(w.marks, mark{len(w.plain), n.Segment.Start})
			w.plain = append(w.plain, n.Segment.Value(w.source)...)
			if n.SoftLineBreak() || n.HardLineBreak() {
				w.plain = append(w.plain, ' ')
			}
		}
	case *ast.String:
		if w.collecting {
			w.plain = append(w.plain, n.Value...)
		}
	case *ast.Heading:
		w.readHeading(n)
	case *ast.List:
		if isStepList(n) {
			w.readSteps(n)
		} else {
			w.children(n)
		}
	case *whyNode:
		w.readWhy(n)
	case *cautionNode:
		w.readCaution(n)
	case *decideNode:
		return w.readDecision(n)
	case *east.Table:
		w.readTable(n)
	case *embedNode:
		w.readEmbed(n)
	case *waitNode:
		w.readWait(n)
	case *ast.Paragraph:
		w.readParagraph(n)
	case *writeNode:
		w.readWrite(n)
	case *badDirectiveNode:
		w.problem(w.line(n.Pos()), n.text, n.hint)
	case *citationNode:
		w.readCitation(n)
	case *termNode:
		w.readTerm(n)
	case *ast.Link:
		w.readLink(n)
	case *ast.Image:
		w.readImage(n)
	case *ast.AutoLink:
		w.readAutoLink(n)
	case *ast.FencedCodeBlock:
		w.readCode(n)
	case *ast.HTMLBlock, *ast.RawHTML:
		w.problem(w.line(n.Pos()), "raw HTML is left out of the page", "use Markdown and the handbook’s own blocks")
	default:
		w.children(n)
	}
	return next
}

// collect reads the children of a block and keeps their plain text in w.plain until the next call.
func (w *walker) collect(n ast.Node) {
	w.plain, w.marks = w.plain[:0], w.marks[:0]
	w.collecting = true
	w.children(n)
	w.collecting = false
	if bytes.IndexByte(w.plain, '\\') >= 0 {
		w.plain, w.marks = append(w.plain[:0], util.UnescapePunctuations(w.plain)...), w.marks[:min(1, len(w.marks))]
	}
	if bytes.IndexByte(w.plain, '&') >= 0 {
		w.plain = append(w.plain[:0], util.ResolveEntityNames(util.ResolveNumericReferences(w.plain))...)
		w.marks = w.marks[:min(1, len(w.marks))]
	}
}

// line gives the line of the file for a position in the body.
func (w *walker) line(position int) int {
	position = max(0, min(position, len(w.source)))
	if position >= w.cursor {
		w.cursorLine += bytes.Count(w.source[w.cursor:position], newline)
	} else {
		w.cursorLine -= bytes.Count(w.source[position:w.cursor], newline)
	}
	w.cursor = position
	return w.cursorLine
}

var newline = []byte{'\n'}

// plainLine gives the line of an offset in the collected text.
func (w *walker) plainLine(offset, fallback int) int {
	line := fallback
	for _, m := range w.marks {
		if m.offset > offset {
			break
		}
		line = w.line(m.position)
	}
	return line
}

// blockLine gives the line on which a block's text starts.
func (w *walker) blockLine(n ast.Node) int {
	if lines := n.Lines(); lines != nil && lines.Len() > 0 {
		return w.line(lines.At(0).Start)
	}
	return w.line(n.Pos())
}

func (w *walker) problem(line int, text, hint string) {
	w.result.Problems = append(w.result.Problems, w.page.Problem(line, text, hint))
}

// claim takes an id that an author chose, or that must be the only one; a second use is a problem.
func (w *walker) claim(id string, line int, hint string) {
	if before, taken := w.ids[id]; taken {
		where := "the page itself uses it"
		if before > 0 {
			where = "first on line " + strconv.Itoa(before)
		}
		if hint != "" {
			where += "; " + hint
		}
		w.problem(line, "id "+id+" is used twice", where)
		return
	}
	w.ids[id] = line
	w.result.IDs = append(w.result.IDs, Use{id, line})
}

// free takes an id made from words, with a number behind it when it is taken.
func (w *walker) free(id string, line int) string {
	if _, taken := w.ids[id]; taken {
		for n := 2; ; n++ {
			numbered := id + "-" + strconv.Itoa(n)
			if _, taken := w.ids[numbered]; !taken {
				id = numbered
				break
			}
		}
	}
	w.ids[id] = line
	w.result.IDs = append(w.result.IDs, Use{id, line})
	return id
}

// slug makes an id from the first limit words, with a prefix; words without a letter or digit give fallback.
func (w *walker) slug(prefix string, words []byte, limit int, fallback string) string {
	w.scratch = append(w.scratch[:0], prefix...)
	w.scratch = page.AppendSlug(w.scratch, words, limit)
	if len(w.scratch) == len(prefix) {
		w.scratch = append(w.scratch, fallback...)
	}
	return string(w.scratch)
}
