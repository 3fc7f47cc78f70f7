package searchindex

import (
	"regexp"
	"strings"
	"unicode"
)

// Words parts a text as the phone does (site's components/search/words.ts; testdata/search/words.txt holds both to the
// same): lower case, accents of Latin letters off, numbers with their decimals, and for a hyphen the parts and the
// whole. It serves the check of search.md and the tests.
func Words(text string) []string {
	var words []string
	runes := []rune(text)
	before, end := "", -1 // the word before, and where it ended
	for i := 0; i < len(runes); {
		if !unicode.IsLetter(runes[i]) && !unicode.IsNumber(runes[i]) {
			i++
			continue
		}
		start := i
		i = wordEnd(runes, i)
		word := fold(runes[start:i])
		words = append(words, word)
		if end >= 0 && end == start-1 && strings.ContainsRune("-‐‑", runes[end]) {
			words = append(words, before+word)
		}
		before, end = word, i
	}
	return words
}

// wordEnd gives the end of the word that starts at i: a number with its decimals and the letters behind it, or letters
// and what follows them, an apostrophe between letters too.
func wordEnd(runes []rune, i int) int {
	at := func(i int, is func(rune) bool) bool { return i < len(runes) && is(runes[i]) }
	if digit(runes[i]) {
		for at(i, digit) || at(i, func(r rune) bool { return r == '.' || r == ',' || r == '\u202f' }) && at(i+1, digit) {
			i++
		}
		for at(i, unicode.IsLetter) {
			i++
		}
		return i
	}
	for i++; at(i, unicode.IsLetter) || at(i, unicode.IsNumber) || at(i, apostrophe) && at(i+1, unicode.IsLetter); {
		i++
	}
	return i
}

func digit(r rune) bool      { return '0' <= r && r <= '9' }
func apostrophe(r rune) bool { return r == '\'' || r == '’' }

// accented letters of Latin alphabets, and what they are without the accent.
var plain = strings.NewReplacer("à", "a", "á", "a", "â", "a", "ã", "a", "ä", "a", "å", "a", "ç", "c", "è", "e", "é", "e", "ê", "e", "ë", "e",
	"ì", "i", "í", "i", "î", "i", "ï", "i", "ñ", "n", "ò", "o", "ó", "o", "ô", "o", "õ", "o", "ö", "o", "ù", "u", "ú", "u", "û", "u", "ü", "u", "’", "", "'", "")

// thousands finds 2,000 as people type it and 17\u202f545 as pages show it: what groups the digits parts nothing.
var (
	thousands = regexp.MustCompile(`^\d{1,3}([,\x{202f}]\d{3})+(\.|[^\d,\x{202f}]|$)`)
	groups    = strings.NewReplacer(",", "", "\u202f", "")
)

func fold(word []rune) string {
	s := plain.Replace(strings.ToLower(string(word)))
	if thousands.MatchString(s) {
		s = groups.Replace(s)
	}
	return s
}
