package searchindex

import (
	"os"
	"strings"
	"testing"
)

// TestWords reads the samples that the TypeScript test reads too.
func TestWords(t *testing.T) {
	b, err := os.ReadFile("../../../testdata/search/words.txt")
	if err != nil {
		t.Fatal(err)
	}
	samples := 0
	for line := range strings.Lines(string(b)) {
		line = strings.TrimSuffix(line, "\n")
		text, want, ok := strings.Cut(line, " =>")
		if strings.HasPrefix(line, "#") || !ok {
			continue
		}
		samples++
		if got := strings.Join(Words(text), " "); got != strings.TrimSpace(want) {
			t.Errorf("Words(%q): got %q, want %q", text, got, strings.TrimSpace(want))
		}
	}
	if samples < 10 {
		t.Fatalf("only %d samples were read: this test would prove nothing", samples)
	}
}
