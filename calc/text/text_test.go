package text

import (
	"strings"
	"testing"
)

func TestLowerAgreesWithStandardLibraryOnASCII(t *testing.T) {
	for _, s := range []string{"", "abc", "ABC", "kPaG", "R-1234ze(E)", "µm Hg", "lb/1000ft3"} {
		if got, want := Lower(s), strings.ToLower(s); got != want {
			t.Errorf("Lower(%q): got %q, want %q", s, got, want)
		}
	}
}

func TestSwapAgreesWithReplacer(t *testing.T) {
	pairs := []string{"\\\\", "\\", "\\t", "\t", "\\n", "\n", "°", "", "<", "&lt;"}
	r := strings.NewReplacer(pairs...)
	for _, s := range []string{"", "plain", `a\tb`, `\\t`, `\\\n°<x`, "°C", `end\`} {
		if got, want := Swap(s, pairs...), r.Replace(s); got != want {
			t.Errorf("Swap(%q): got %q, want %q", s, got, want)
		}
	}
}

func TestSay(t *testing.T) {
	if got, want := Say("{} of {}, {}", "1", "2"), "1 of 2, {}"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
