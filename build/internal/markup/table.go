package markup

import (
	"bytes"
	"strconv"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// tables are GFM tables in a box that scrolls sideways on a narrow screen. A table of words becomes cards there: its cells
// carry the titles of their columns, and roles, because a browser may take a table drawn as blocks for no table.
// goldmark's own renderer is not used: it writes style attributes, which the site's security policy forbids.
type tables struct{}

func (tables) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(
		parser.WithParagraphTransformers(util.Prioritized(extension.NewTableParagraphTransformer(), 200)),
		parser.WithASTTransformers(util.Prioritized(extension.NewTableASTTransformer(), 0)),
	)
	register(m, tableRenderer{})
}

var kindWideTable = ast.NewNodeKind("WideTable")

// wideTableNode stands round a table.
type wideTableNode struct {
	ast.BaseBlock
	label      string   // accessible name, or
	labelledBy string   // id of what names it
	columns    [][]byte // column titles for data-label of a table of words, nil for one of figures
}

func (n *wideTableNode) Kind() ast.NodeKind            { return kindWideTable }
func (n *wideTableNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// readTable wraps an ordinary table; it takes its name from the heading above.
func (w *walker) readTable(table *east.Table) {
	wide := w.wrapTable(table)
	wide.label = w.heading
	if wide.label == "" {
		wide.label = w.page.Title
	}
	longest := 0
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		n := w.readRow(row, PassageTable)
		if row.Kind() != east.KindTableHeader {
			longest = max(longest, n)
		}
	}
	if longest > longestFigure {
		wide.columns = w.readColumns(table.FirstChild())
	}
}

// longestFigure is the longest cell of a table of figures, in letters: “¼ in (4.8 mm)” is one, a sentence is none.
const longestFigure = 24

// broadColumns is from how many columns on words need more than the measure.
const broadColumns = 5

// readRow reads the cells of a row, keeps their text with dots between, and gives the letters of the longest.
func (w *walker) readRow(row ast.Node, kind PassageKind) (longest int) {
	w.row = w.row[:0]
	for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
		w.collect(cell)
		if words := bytes.TrimSpace(w.plain); len(words) > 0 {
			if len(w.row) > 0 {
				w.row = append(w.row, betweenCells...)
			}
			w.row = append(w.row, words...)
			longest = max(longest, utf8.RuneCount(words))
		}
	}
	w.passage(kind, "", w.row)
	return longest
}

var betweenCells = []byte(" · ")

func (w *walker) wrapTable(table *east.Table) *wideTableNode {
	wide := &wideTableNode{}
	wide.SetPos(table.Pos())
	parent := table.Parent()
	parent.ReplaceChild(parent, table, wide)
	wide.AppendChild(wide, table)
	if rows := table.ChildCount() - 1; rows < 1 {
		w.problem(w.line(table.Pos()), "table has no rows", "")
	}
	return wide
}

// readColumns reads the row of titles and gives their plain text.
func (w *walker) readColumns(header ast.Node) [][]byte {
	var columns [][]byte
	for cell := header.FirstChild(); cell != nil; cell = cell.NextSibling() {
		w.collect(cell)
		columns = append(columns, bytes.Clone(bytes.TrimSpace(w.plain)))
	}
	return columns
}

type tableRenderer struct{}

func (r tableRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindWideTable, r.wide)
	reg.Register(east.KindTable, r.table)
	reg.Register(east.KindTableHeader, r.header)
	reg.Register(east.KindTableRow, r.row)
	reg.Register(east.KindTableCell, r.cell)
}

func (tableRenderer) wide(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		_, _ = w.WriteString("</section>\n")
		return ast.WalkContinue, nil
	}
	n := node.(*wideTableNode)
	_, _ = w.WriteString(`<section class="co-scroll`)
	if len(n.columns) >= broadColumns {
		_, _ = w.WriteString(` co-scroll--broad`)
	}
	_, _ = w.WriteString(`" tabindex="0" aria-label`)
	if n.labelledBy != "" {
		_, _ = w.WriteString(`ledby="`)
		_, _ = w.WriteString(n.labelledBy)
	} else {
		_, _ = w.WriteString(`="`)
		_, _ = w.Write(util.EscapeHTML([]byte(n.label)))
	}
	_, _ = w.WriteString(`">`)
	return ast.WalkContinue, nil
}

// role gives the attribute for a part of a table of words, “” for one of figures, which is drawn as a table everywhere.
// part is the table or a row of it.
func role(part ast.Node, name string) string {
	if part.Kind() != east.KindTable {
		part = part.Parent()
	}
	if wide, ok := part.Parent().(*wideTableNode); ok && wide.columns != nil {
		return ` role="` + name + `"`
	}
	return ""
}

func (tableRenderer) table(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		_, _ = w.WriteString("</table>")
		return ast.WalkContinue, nil
	}
	words := role(node, "table")
	_, _ = w.WriteString(`<table class="co-table`)
	if words != "" {
		_, _ = w.WriteString(` co-table--words`)
	}
	_, _ = w.WriteString(`"` + words + ">\n")
	return ast.WalkContinue, nil
}

func (tableRenderer) header(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	group := role(node, "rowgroup")
	if entering {
		_, _ = w.WriteString("<thead" + group + "><tr" + role(node, "row") + ">")
		return ast.WalkContinue, nil
	}
	_, _ = w.WriteString("</tr></thead>\n")
	if node.NextSibling() != nil {
		_, _ = w.WriteString("<tbody" + group + ">\n")
	}
	return ast.WalkContinue, nil
}

func (tableRenderer) row(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString("<tr" + role(node, "row") + ">")
		return ast.WalkContinue, nil
	}
	_, _ = w.WriteString("</tr>\n")
	if node.NextSibling() == nil {
		_, _ = w.WriteString("</tbody>\n")
	}
	return ast.WalkContinue, nil
}

func (tableRenderer) cell(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*east.TableCell)
	header := n.Parent().Kind() == east.KindTableHeader
	if !entering {
		if header {
			_, _ = w.WriteString("</th>")
		} else {
			_, _ = w.WriteString("</td>")
		}
		return ast.WalkContinue, nil
	}
	if header {
		_, _ = w.WriteString(`<th scope="col"` + role(n.Parent(), "columnheader"))
	} else {
		_, _ = w.WriteString("<td" + role(n.Parent(), "cell"))
	}
	if n.Alignment == east.AlignRight || n.Alignment == east.AlignCenter {
		_, _ = w.WriteString(` class="co-table__`)
		_, _ = w.WriteString(n.Alignment.String())
		_ = w.WriteByte('"')
	}
	if wide, ok := n.Parent().Parent().Parent().(*wideTableNode); ok && !header && wide.columns != nil && n.HasChildren() {
		column := 0
		for c := n.PreviousSibling(); c != nil; c = c.PreviousSibling() {
			column++
		}
		if column < len(wide.columns) {
			_, _ = w.WriteString(` data-label="`)
			_, _ = w.Write(util.EscapeHTML(wide.columns[column]))
			_ = w.WriteByte('"')
		}
	}
	_ = w.WriteByte('>')
	return ast.WalkContinue, nil
}

// rowNumber names a row in problems, counted from 1 below the titles.
func rowNumber(row ast.Node) string {
	n := 0
	for r := row.PreviousSibling(); r != nil; r = r.PreviousSibling() {
		n++
	}
	return strconv.Itoa(n)
}
