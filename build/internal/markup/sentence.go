package markup

import (
	"bytes"
	"strconv"
	"unicode/utf8"

	"github.com/yuin/goldmark/util"

	"changeout/build/internal/typeset"
)

// checkSentences reports sentences of the collected text that have too many words.
func (w *walker) checkSentences(limit int, what string, line int) {
	words, start := 0, 0
	afterNumber := false
	end := func(offset int) {
		if words > limit {
			w.problem(w.plainLine(start, line),
				what+" has a sentence of "+strconv.Itoa(words)+" words: “"+opening(w.plain[start:offset])+" …”",
				"at most "+strconv.Itoa(limit)+" words; make two sentences of it")
		}
		words = 0
	}
	for i := 0; i < len(w.plain); {
		if util.IsSpace(w.plain[i]) {
			i++
			continue
		}
		from := i
		for i < len(w.plain) && !util.IsSpace(w.plain[i]) {
			i++
		}
		token := w.plain[from:i]
		if isWord(token) {
			if words == 0 {
				start = from
			}
			// A number and its unit are read as one word.
			if !afterNumber || !typeset.IsUnit(token) {
				words++
			}
			afterNumber = '0' <= token[len(token)-1] && token[len(token)-1] <= '9'
		}
		if endsSentence(token) {
			end(i)
			afterNumber = false
		}
	}
	end(len(w.plain))
}

// opening gives the first words of a sentence, enough to find it.
func opening(sentence []byte) string {
	const enough = 40 // bytes
	if len(sentence) <= enough {
		return string(bytes.TrimSpace(sentence))
	}
	cut := bytes.LastIndexByte(sentence[:enough], ' ')
	if cut <= 0 {
		cut = enough
		for cut > 0 && !utf8.RuneStart(sentence[cut]) {
			cut--
		}
	}
	return string(sentence[:cut])
}

// isWord tells whether a token has a letter or digit; dashes and plus signs standing alone are no words.
func isWord(token []byte) bool {
	for i, c := range token {
		if wordRune(rune(c)) {
			if c < 0x80 {
				return true
			}
			// Letters such as µ and Δ count, typographic marks, arrows and signs such as – “ → ≤ do not.
			r, _ := utf8.DecodeRune(token[i:])
			if r != utf8.RuneError && (r < 0x2000 || r > 0x22FF) && r != '×' && r != '±' && r != '÷' {
				return true
			}
		}
	}
	return false
}

// endsSentence tells whether a token closes a sentence. The usual abbreviations and single initials do not.
func endsSentence(token []byte) bool {
	end := len(token)
	for end > 0 {
		switch c := token[end-1]; {
		case c == ')' || c == ']' || c == '"' || c == '\'' || c == '*' || c == '_':
			end--
			continue
		case end > 2 && c >= 0x80 && (bytes.HasSuffix(token[:end], []byte("”")) || bytes.HasSuffix(token[:end], []byte("’"))):
			end -= 3
			continue
		case c == '!' || c == '?':
			return true
		case c != '.':
			return false
		}
		break
	}
	if end == 0 {
		return false
	}
	switch word := token[:end-1]; string(bytes.TrimLeft(word, "(\"'[")) {
	case "e.g", "i.e", "approx", "Approx", "no", "No", "fig", "Fig", "vs", "cf", "ca", "etc", "ed", "sec":
		return false
	}
	return true
}
