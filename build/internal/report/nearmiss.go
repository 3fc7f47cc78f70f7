package report

import (
	"slices"
	"strings"
)

// Nearest gives the known word closest to word, or "" when none is close enough to be a slip of the finger.
// Close enough is at most one edit for every three letters, and at least one; capitals do not count.
// Of several as close it is the first by the alphabet: the order of known says nothing.
func Nearest(word string, known []string) string {
	folded := strings.ToLower(word)
	// Never all letters: a and b are not near.
	best, nearest := "", min(max(1, len(folded)/3), len(folded)-1)
	for _, k := range known {
		if difference := len(k) - len(word); difference > nearest || -difference > nearest {
			continue
		}
		if d := distance(folded, strings.ToLower(k)); d < nearest || d == nearest && (best == "" || k < best) {
			best, nearest = k, d
		}
	}
	return best
}

// DidYouMean gives the hint for an unknown word: the nearest known one, the short list of all, or "".
func DidYouMean(word string, known []string) string {
	if near := Nearest(word, known); near != "" {
		return "did you mean " + near + "?"
	}
	// A list longer than this is no longer read; the author looks it up instead.
	const readable = 12
	if len(known) == 0 || len(known) > readable {
		return ""
	}
	sorted := slices.Sorted(slices.Values(known))
	return "known: " + strings.Join(sorted, ", ")
}

// distance counts the insertions, deletions, replacements and swaps of neighbours that turn a into b
// (the restricted Damerau-Levenshtein distance, over bytes: ids are plain ASCII).
func distance(a, b string) int {
	before := make([]int, len(b)+1) // row i-2
	last := make([]int, len(b)+1)   // row i-1
	row := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
