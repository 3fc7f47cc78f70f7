// Package markup turns the body of a page into HTML with the handbook's own blocks, and finds what an author must mend.
//
// It is goldmark with one extension a construct, each in its own file and in goldmark's own shape: parser, node,
// renderer, and a small type that registers them. What needs the whole page (numbers of citations, numbering of steps,
// cautions before steps, ids) happens in one walk over the finished tree, walk.go; after it nodes hold all that their
// renderers print. Start with [New] and [Converter.Convert]; testdata/markup holds the specification as cases.
package markup

import (
	"bytes"
	"sync"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/page"
)

// Priorities of all our parsers and renderers: a lower number is asked first. goldmark's own stand in brackets.
const (
	priorityHeading   = 590 // before the plain # heading [600], whose line it trims
	priorityCaution   = 790 // before the block quote [800], which would take it
	priorityDirective = 950 // before the paragraph [1000]; nothing else starts with a colon

	// Paragraphs are turned after link definitions [100] and tables [200] took their share, because “Decide:” may stand
	// directly above its table.
	priorityCautionParts = 310
	priorityStepParts    = 320
	priorityDecide       = 330

	priorityTerm     = 110 // [[ before [@ before the link [200]
	priorityCitation = 120

	priorityWalk = 1000 // after the table's own transformer [0]

	priorityRenderer = 100 // before the HTML renderer [1000] and the table renderer [500], which we replace in parts
)

// A Converter turns pages into HTML. It is made once and is safe for concurrent use.
type Converter struct {
	env      Env
	markdown goldmark.Markdown
	hazards  *hazardIndex
	walkers  sync.Pool // of *walker, for their buffers
}

// New prepares a converter for an environment.
func New(env Env) *Converter {
	if env.Glossary == nil {
		env.Glossary = &page.Glossary{}
	}
	if env.Hazards == nil {
		env.Hazards = &page.Hazards{}
	}
	env.Worksheets.prepare("worksheets/")
	env.Tables.prepare("tables/")
	return &Converter{
		env: env,
		markdown: goldmark.New(goldmark.WithExtensions(
			headings{}, cautions{}, steps{}, tables{}, decisions{}, directives{}, citations{}, terms{}, links{},
			&code{}, walking{},
		)),
		hazards: newHazardIndex(env.Hazards),
		walkers: sync.Pool{New: func() any { return &walker{ids: map[string]int{}} }},
	}
}

// Convert turns one page into HTML and lists what stands in it. It never fails: what is wrong is in Result.Problems.
func (c *Converter) Convert(p *page.Page) *Result {
	w := c.walkers.Get().(*walker)
	w.start(c, p)
	defer func() {
		w.stop()
		c.walkers.Put(w)
	}()
	pc := parser.NewContext()
	pc.Set(walkerKey, w)
	document := c.markdown.Parser().Parse(text.NewReader(p.Body), parser.WithContext(pc))

	_ = c.markdown.Renderer().Render(&w.out, p.Body, document) // output cannot fail, and neither do our renderers
	writeSources(&w.out, w.result.Sources)
	w.result.HTML = bytes.Clone(w.out.bytes) // the buffer is for the next page; the result keeps no spare room
	return w.result
}

// walking registers the walk over the finished tree.
type walking struct{}

func (walking) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithASTTransformers(util.Prioritized(walking{}, priorityWalk)))
}

// register adds renderers for our nodes; every extension calls it last.
func register(m goldmark.Markdown, r renderer.NodeRenderer) {
	m.Renderer().AddOptions(renderer.WithNodeRenderers(util.Prioritized(r, priorityRenderer)))
}

// output collects HTML. It is a util.BufWriter, which saves goldmark a second buffer.
type output struct{ bytes []byte }

func (o *output) Write(b []byte) (int, error) { o.bytes = append(o.bytes, b...); return len(b), nil }
func (o *output) WriteString(s string) (int, error) {
	o.bytes = append(o.bytes, s...)
	return len(s), nil
}
func (o *output) WriteByte(b byte) error        { o.bytes = append(o.bytes, b); return nil }
func (o *output) WriteRune(r rune) (int, error) { return o.WriteString(string(r)) }
func (o *output) Available() int                { return cap(o.bytes) - len(o.bytes) }
func (o *output) Buffered() int                 { return len(o.bytes) }
func (o *output) Flush() error                  { return nil }
