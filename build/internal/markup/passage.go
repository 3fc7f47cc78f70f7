package markup

import (
	"bytes"

	"github.com/yuin/goldmark/ast"

	"changeout/build/internal/page"
)

// A Passage is a piece of a page's text that a search can find. Passages stand in the order of the page; one without an
// ID belongs to the place of the passage before it that has one.
type Passage struct {
	Kind PassageKind
	ID   string // id attribute of the place, or ""
	Text string
}

// A PassageKind tells what a passage is.
type PassageKind byte

// The kinds of passages. Paragraphs and lists between them are not listed: on a page made for the job the reader wants
// the step, and the index has to stay small on the phone.
const (
	PassageHeading  PassageKind = 'h'
	PassageStep     PassageKind = 's'
	PassageWhy      PassageKind = 'y' // under a step
	PassageDecision PassageKind = 'd' // the question, then each row
	PassageTable    PassageKind = 't' // each row, titles first
	PassageCaution  PassageKind = 'c' // what the danger is
	PassageWait     PassageKind = 'w'
	PassageWrite    PassageKind = 'f'
	PassageTerm     PassageKind = 'g' // a word of the glossary , then its definition
)

func (w *walker) passage(kind PassageKind, id string, words []byte) {
	if words = bytes.TrimSpace(words); len(words) > 0 {
		w.result.Passages = append(w.result.Passages, Passage{kind, id, string(words)})
	}
}

// readParagraph keeps the definitions of the glossary.
func (w *walker) readParagraph(n *ast.Paragraph) {
	if w.page.Path != page.GlossaryPath || w.level < 2 || w.collecting {
		w.children(n)
		return
	}
	w.collect(n)
	w.passage(PassageTerm, "", w.plain)
}
