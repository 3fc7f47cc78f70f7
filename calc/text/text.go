// Package text holds the few string operations that worksheets need, in the
// smallest form. The standard library's strings.ToLower and strings.Replacer
// bring the case tables of Unicode and a general machine with them; together
// they would add 30 KB to what every phone downloads. The words handled here
// are unit names, column headers and markup characters, all ASCII.
package text

import "strings"

// Lower turns the letters A to Z to lower case and leaves the rest.
func Lower(s string) string {
	for i := range len(s) {
		if s[i] >= 'A' && s[i] <= 'Z' {
			b := []byte(s)
			for ; i < len(b); i++ {
				if b[i] >= 'A' && b[i] <= 'Z' {
					b[i] += 'a' - 'A'
				}
			}
			return string(b)
		}
	}
	return s
}

// Swap replaces each first string of a pair by the second, reading s once from
// left to right; the earliest pair that fits at a place wins.
func Swap(s string, pairs ...string) string {
	var b strings.Builder
	done := 0
	for i := 0; i < len(s); {
		n := 1
		for k := 0; k < len(pairs); k += 2 {
			if old := pairs[k]; strings.HasPrefix(s[i:], old) {
				b.WriteString(s[done:i])
				b.WriteString(pairs[k+1])
				n, done = len(old), i+len(old)
				break
			}
		}
		i += n
	}
	if done == 0 {
		return s
	}
	b.WriteString(s[done:])
	return b.String()
}

// Say fills the {} marks of a sentence in order. A mark without a value stays,
// so that a test sees it.
func Say(sentence string, values ...string) string {
	var b strings.Builder
	for _, v := range values {
		before, after, ok := strings.Cut(sentence, "{}")
		if !ok {
			break
		}
		b.WriteString(before)
		b.WriteString(v)
		sentence = after
	}
	b.WriteString(sentence)
	return b.String()
}
