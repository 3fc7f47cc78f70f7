package markup

import (
	"bytes"
	"strconv"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// tables are GFM tables in a box that scrolls sideways on a narrow screen.
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
	columns    [][]byte // column titles for data-label, nil when cells carry none
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
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		w.readRow(row, PassageTable)
	}
}

// readRow reads the cells of a row and keeps their text, with dots between.
func (w *walker) readRow(row ast.Node, kind PassageKind) {
	w.row = w.row[:0]
	for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
		w.collect(cell)
		if words := bytes.TrimSpace(w.plain); len(words) > 0 {
			if len(w.row) > 0 {
				w.row = append(w.row, betweenCells...)
			}
			w.row = append(w.row, words...)
		}
	}
	w.passage(kind, "", w.row)
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
	_, _ = w.WriteString(`<section class="co-scroll" tabindex="0" aria-label`)
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

func (tableRenderer) table(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString("<table class=\"co-table\">\n")
	} else {
		_, _ = w.WriteString("</table>")
	}
	return ast.WalkContinue, nil
}

func (tableRenderer) header(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString("<thead><tr>")
		return ast.WalkContinue, nil
	}
	_, _ = w.WriteString("</tr></thead>\n")
	if node.NextSibling() != nil {
		_, _ = w.WriteString("<tbody>\n")
	}
	return ast.WalkContinue, nil
}

func (tableRenderer) row(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.WriteString("<tr>")
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
		_, _ = w.WriteString(`<th scope="col"`)
	} else {
		_, _ = w.WriteString("<td")
	}
	if n.Alignment == east.AlignRight || n.Alignment == east.AlignCenter {
		_, _ = w.WriteString(` class="co-table__`)
		_, _ = w.WriteString(n.Alignment.String())
		_ = w.WriteByte('"')
	}
	if wide, ok := n.Parent().Parent().Parent().(*wideTableNode); ok && !header && wide.columns != nil {
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
