package markup

import (
	"slices"
	"strings"
	"sync"

	"github.com/alecthomas/chroma/v2"
	chromahtml "github.com/alecthomas/chroma/v2/formatters/html"
	"github.com/alecthomas/chroma/v2/lexers"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/report"
)

// code colours fenced code at build: chroma sets classes, and the site's CSS gives them colours.
type code struct{ coloured codeCache }

func (c *code) Extend(m goldmark.Markdown) { register(m, codeRenderer{&c.coloured}) }

// A codeCache keeps coloured blocks: chroma takes longer for ten lines than goldmark for a page, and the same samples
// come again on other pages and whenever serve rebuilds.
type codeCache struct {
	mu     sync.Mutex
	blocks map[codeKey]string
}

type codeKey struct{ language, code string }

// mostCodeBlocks bounds the cache; beyond it blocks are coloured anew each time.
const mostCodeBlocks = 500

func (c *codeCache) get(language, code string) string {
	c.mu.Lock()
	html, ok := c.blocks[codeKey{language, code}]
	c.mu.Unlock()
	if ok {
		return html
	}
	html = highlight(codeLexers()[language], code)
	c.mu.Lock()
	if c.blocks == nil {
		c.blocks = map[codeKey]string{}
	}
	if len(c.blocks) < mostCodeBlocks {
		c.blocks[codeKey{language, code}] = html
	}
	c.mu.Unlock()
	return html
}

// codeLanguages are the words that may follow ```. They are few on purpose: the site's CSS and the reader know them.
var codeLanguages = []string{"apache", "bash", "caddyfile", "csv", "go", "holdlog", "json", "nginx", "text"}

// codeLexers holds the lexer of each language; chroma builds them when they are first used.
var codeLexers = sync.OnceValue(func() map[string]chroma.Lexer {
	m := make(map[string]chroma.Lexer, len(codeLanguages))
	for _, language := range codeLanguages {
		switch language {
		case "text":
		case "holdlog":
			m[language] = chroma.Coalesce(holdlog)
		default:
			if lexer := lexers.Get(language); lexer != nil {
				m[language] = chroma.Coalesce(lexer)
			}
		}
	}
	return m
})

// codeFormatter writes classes only; the site allows no inline style.
var codeFormatter = chromahtml.New(chromahtml.WithClasses(true), chromahtml.PreventSurroundingPre(true))

// codeStyle is empty: with classes the formatter needs none.
var codeStyle = chroma.MustNewStyle("changeout", chroma.StyleEntries{})

func (w *walker) readCode(n *ast.FencedCodeBlock) {
	language := string(n.Language(w.source))
	if language != "" && !slices.Contains(codeLanguages, language) {
		w.problem(w.line(n.Pos()), "unknown language of a code block “"+language+"”", report.DidYouMean(language, codeLanguages))
	}
}

type codeRenderer struct{ coloured *codeCache }

func (r codeRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(ast.KindFencedCodeBlock, r.block)
	reg.Register(ast.KindCodeBlock, r.block)
}

func (r codeRenderer) block(w util.BufWriter, source []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	language := ""
	if n, ok := node.(*ast.FencedCodeBlock); ok {
		language = string(n.Language(source))
	}
	// The keyboard must be able to scroll a wide block.
	_, _ = w.WriteString(`<pre class="co-code" tabindex="0"><code`)
	known := slices.Contains(codeLanguages, language)
	if known {
		_, _ = w.WriteString(` class="co-code__` + language + `"`)
	}
	_ = w.WriteByte('>')
	var lines strings.Builder
	for i := range node.Lines().Len() {
		segment := node.Lines().At(i)
		lines.Write(segment.Value(source))
	}
	if known {
		_, _ = w.WriteString(r.coloured.get(language, lines.String()))
	} else {
		_, _ = w.Write(util.EscapeHTML([]byte(lines.String())))
	}
	_, _ = w.WriteString("</code></pre>\n")
	return ast.WalkSkipChildren, nil
}

// highlight gives coloured code; what a lexer cannot read stays plain.
func highlight(lexer chroma.Lexer, code string) string {
	if lexer != nil {
		var out strings.Builder
		tokens, err := lexer.Tokenise(nil, code)
		if err == nil && codeFormatter.Format(&out, codeStyle, tokens) == nil {
			return out.String()
		}
	}
	return string(util.EscapeHTML([]byte(code)))
}
