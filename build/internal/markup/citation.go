package markup

import (
	"bytes"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/report"
)

// citations are [@key], [@key, table 35], and several in one bracket: [@key, table 35; @other].
// They are numbered per page in the order of the text, and listed at the end of the page.
type citations struct{}

func (citations) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithInlineParsers(util.Prioritized(citationParser{}, priorityCitation)))
	register(m, citationRenderer{})
}

// Keys that every page may cite although they are no publication.
const (
	keyPractice = "common-practice" // no published source
	keyManual   = "makers-manual"   // the maker's manual governs
	keyMemory   = "from-memory"     // verify before use
)

var specialKeys = []string{keyPractice, keyManual, keyMemory}

// special gives what is printed for a special key, and the end of its class.
func special(key string) (words, class string) {
	switch key {
	case keyPractice:
		return "common practice", "practice"
	case keyManual:
		return "maker’s manual", "manual"
	case keyMemory:
		return "from memory: verify before use", "memory"
	}
	return "", ""
}

var kindCitation = ast.NewNodeKind("Citation")

type citationNode struct {
	ast.BaseInline
	items []citationItem
}

func (n *citationNode) Kind() ast.NodeKind            { return kindCitation }
func (n *citationNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

type citationItem struct {
	key, locator string
	number       int // on the page; 0 for special and unknown keys
}

type citationParser struct{}

func (citationParser) Trigger() []byte { return []byte{'['} }

func (citationParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, _ := block.PeekLine()
	if len(line) < 3 || line[1] != '@' {
		return nil
	}
	var inside string
	if end := bytes.IndexByte(line, ']'); end >= 0 {
		inside = string(line[1:end])
		block.Advance(end + 1)
	} else {
		// The bracket is closed on a later line.
		block.Advance(1)
		segments, ok := block.FindClosure('[', ']', text.FindClosureOptions{Newline: true, Advance: true})
		if !ok {
			return nil
		}
		for i := range segments.Len() {
			segment := segments.At(i)
			inside += string(segment.Value(block.Source()))
		}
		inside = strings.Join(strings.Fields(inside), " ")
	}
	n := &citationNode{items: make([]citationItem, 0, 1)}
	for more := true; more; {
		var one string
		one, inside, more = cutCitation(inside)
		key, locator, _ := strings.Cut(strings.TrimPrefix(strings.TrimSpace(one), "@"), ",")
		n.items = append(n.items, citationItem{key: strings.TrimSpace(key), locator: strings.TrimSpace(locator)})
	}
	return n
}

// cutCitation takes the first citation off; only “;” before an @ parts two, so a locator may hold a semicolon.
func cutCitation(s string) (one, rest string, more bool) {
	for i := range len(s) {
		if s[i] == ';' || s[i] == ',' {
			if after := strings.TrimLeft(s[i+1:], " "); strings.HasPrefix(after, "@") {
				return s[:i], after, true
			}
		}
	}
	return s, "", false
}

func (w *walker) readCitation(n *citationNode) {
	line := w.line(n.Pos())
	for i := range n.items {
		w.cite(&n.items[i], line)
	}
}

// cite resolves a key and gives it its number on the page.
func (w *walker) cite(item *citationItem, line int) {
	w.cited++
	if words, _ := special(item.key); words != "" {
		return
	}
	for i := range w.result.Sources {
		if w.result.Sources[i].Key == item.key {
			item.number = i + 1
			return
		}
	}
	var known []string
	if w.env.Sources != nil {
		if label, url, kind, ok := w.env.Sources.Source(item.key); ok {
			item.number = len(w.result.Sources) + 1
			w.result.Sources = append(w.result.Sources, Cited{item.key, label, url, kind, item.number, line})
			w.claim("source-"+item.key, line, "")
			return
		}
		known = w.env.Sources.Keys()
	}
	w.problem(line, "unknown source key “"+item.key+"”", report.DidYouMean(item.key, append(known, specialKeys...)))
}

type citationRenderer struct{}

func (r citationRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindCitation, r.citation)
}

func (citationRenderer) citation(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		items := node.(*citationNode).items
		for i := range items {
			if i > 0 {
				_ = w.WriteByte(' ')
			}
			items[i].write(w)
		}
	}
	return ast.WalkContinue, nil
}

// write prints the mark that stands in the text.
func (c *citationItem) write(w util.BufWriter) {
	words, class := special(c.key)
	switch {
	case words != "":
		_, _ = w.WriteString(`<span class="co-cite co-cite--`)
		_, _ = w.WriteString(class)
		_, _ = w.WriteString(`">[`)
		_, _ = w.WriteString(words)
		c.writeLocator(w)
		_, _ = w.WriteString(`]</span>`)
	case c.number == 0:
		_, _ = w.WriteString(`<span class="co-cite">[`)
		_, _ = w.Write(util.EscapeHTML([]byte(c.key)))
		c.writeLocator(w)
		_, _ = w.WriteString(`]</span>`)
	default:
		_, _ = w.WriteString(`<a class="co-cite" role="doc-noteref" href="#source-`)
		_, _ = w.WriteString(c.key)
		_, _ = w.WriteString(`">[`)
		_, _ = w.WriteString(strconv.Itoa(c.number))
		c.writeLocator(w)
		_, _ = w.WriteString(`]</a>`)
	}
}

func (c *citationItem) writeLocator(w util.BufWriter) {
	if c.locator != "" {
		_, _ = w.WriteString(", ")
		_, _ = w.Write(util.EscapeHTML([]byte(c.locator)))
	}
}

// readNotes are printed behind a source that was not read in print.
var readNotes = map[string]string{
	"secondary": "read in a secondary source",
	"memory":    "from memory: verify before use",
	"practice":  "common practice",
}

// writeSources prints the list at the end of the page.
func writeSources(w *output, sources []Cited) {
	if len(sources) == 0 {
		return
	}
	_, _ = w.WriteString("<section class=\"co-sources\" aria-labelledby=\"sources\"><h2 id=\"sources\">Sources</h2>\n<ol>\n")
	for _, s := range sources {
		_, _ = w.WriteString(`<li id="source-`)
		_, _ = w.WriteString(s.Key)
		_, _ = w.WriteString(`">`)
		_, _ = w.Write(util.EscapeHTML([]byte(s.Label)))
		if strings.HasPrefix(s.URL, "https://") || strings.HasPrefix(s.URL, "http://") {
			address := util.EscapeHTML([]byte(s.URL))
			_, _ = w.WriteString(` <a class="co-sources__address" rel="external noreferrer" href="`)
			_, _ = w.Write(address)
			_, _ = w.WriteString(`">`)
			_, _ = w.Write(address)
			_, _ = w.WriteString(`</a>`)
		} else if s.URL != "" {
			_, _ = w.WriteString(` <span class="co-sources__address">`)
			_, _ = w.Write(util.EscapeHTML([]byte(s.URL)))
			_, _ = w.WriteString(`</span>`)
		}
		if note := readNotes[s.Kind]; note != "" {
			_, _ = w.WriteString(` <span class="co-sources__read">(`)
			_, _ = w.WriteString(note)
			_, _ = w.WriteString(`)</span>`)
		}
		_, _ = w.WriteString("</li>\n")
	}
	_, _ = w.WriteString("</ol></section>\n")
}
