package report

import (
	"errors"
	"strings"
	"sync"
	"testing"
)

func TestPrintSortsAndDropsRepeats(t *testing.T) {
	var l List
	l.Add(Problem{"b.md", 2, "late", ""}, Problem{"a.md", 10, "tenth", "mend it"})
	l.Add(Problem{"a.md", 2, "second", ""}, Problem{"a.md", 10, "tenth", "mend it"}, Problem{"a.md", 0, "whole file", ""})
	l.Add(Problem{"", 0, "no file", ""})
	var b strings.Builder
	n, err := l.Print(&b)
	want := "no file\na.md: whole file\na.md:2: second\na.md:10: tenth — mend it\nb.md:2: late\n"
	if err != nil || n != 5 || b.String() != want {
		t.Errorf("Print: got %d lines, error %v\n%s\nwant 5 lines\n%s", n, err, b.String(), want)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestPrintPassesErrorsOn(t *testing.T) {
	var l List
	l.Add(Problem{Text: "x"})
	if n, err := l.Print(fullDisk{}); n != 0 || err == nil {
		t.Errorf("Print on a full disk: got %d, %v; want 0 and an error", n, err)
	}
}

func TestListTakesManyWriters(t *testing.T) {
	var l List
	var wg sync.WaitGroup
	if !l.Empty() {
		t.Error("a new list is not empty")
	}
	for i := range 50 {
		wg.Go(func() { l.Add(Problem{"a.md", i, "x", ""}) })
	}
	wg.Wait()
	if got := len(l.Sorted()); got != 50 || l.Empty() {
		t.Errorf("after 50 additions: got %d problems, empty %v; want 50, false", got, l.Empty())
	}
}

func TestNearest(t *testing.T) {
	known := []string{"vacuum-hold", "saturation", "charge-adjustment", "title"}
	for _, c := range []struct{ word, want string }{
		{"vacum-hold", "vacuum-hold"},  // a letter missing
		{"vacuum-hodl", "vacuum-hold"}, // two letters swapped
		{"Saturations", "saturation"},  // capital, and a letter too many
		{"titel", "title"},             // swap in a short word
		{"tilte", "title"},             //
		{"x", ""},                      // nothing near
		{"a", ""}, {"", ""},            //
		{"charge-measurement", "charge-adjustment"}, // five edits of eighteen letters
		{"hold", ""}, // too far
	} {
		if got := Nearest(c.word, known); got != c.want {
			t.Errorf("Nearest(%q): got %q, want %q", c.word, got, c.want)
		}
	}
	// Which of two as close is not left to the order of a map.
	for _, known := range [][]string{{"x/a.html", "x/b.html"}, {"x/b.html", "x/a.html"}} {
		if got := Nearest("x/c.html", known); got != "x/a.html" {
			t.Errorf("Nearest(x/c.html) in %v: got %q, want x/a.html", known, got)
		}
	}
}

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"abc", "", 3}, {"abc", "abc", 0}, {"abc", "acb", 1}, {"kitten", "sitting", 3}, {"ca", "abc", 3}} {
		if got := distance(c.a, c.b); got != c.want {
			t.Errorf("distance(%q, %q): got %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestDidYouMean(t *testing.T) {
	if got, want := DidYouMean("wat", []string{"wait", "write"}), "did you mean wait?"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := DidYouMean("zzz", []string{"write", "wait"}), "known: wait, write"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := DidYouMean("zzz", make([]string, 13)); got != "" {
		t.Errorf("a long list: got %q, want no hint", got)
	}
}
