// Package report holds what is wrong with the content as data: file, line, what is wrong, and a hint.
//
// Everything that reads content collects problems instead of stopping at the first one, so that an author sees all of
// them at once, in the order of the files. Start with [List].
package report

import (
	"cmp"
	"io"
	"slices"
	"strconv"
	"sync"
)

// A Problem is one thing an author has to mend.
type Problem struct {
	File string // path as the author knows it, for example content/stages/evacuate-and-hold.md
	Line int    // counted from 1; 0 when the problem belongs to the whole file
	Text string // what is wrong, one clause without a full stop
	Hint string // what to do, or ""
}

// String gives the line that is printed: file:line: text — hint.
func (p Problem) String() string {
	s := p.File
	if p.Line > 0 {
		s += ":" + strconv.Itoa(p.Line)
	}
	if s != "" {
		s += ": "
	}
	s += p.Text
	if p.Hint != "" {
		s += " — " + p.Hint
	}
	return s
}

// Compare orders problems by file, line, text and hint.
func Compare(a, b Problem) int {
	return cmp.Or(
		cmp.Compare(a.File, b.File),
		cmp.Compare(a.Line, b.Line),
		cmp.Compare(a.Text, b.Text),
		cmp.Compare(a.Hint, b.Hint),
	)
}

// A List collects problems. The zero value is ready, and several goroutines may add to it.
type List struct {
	mu       sync.Mutex
	problems []Problem
}

// Add puts problems on the list.
func (l *List) Add(problems ...Problem) {
	if len(problems) == 0 {
		return
	}
	l.mu.Lock()
	l.problems = append(l.problems, problems...)
	l.mu.Unlock()
}

// Empty tells whether nothing was added.
func (l *List) Empty() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return len(l.problems) == 0
}

// Sorted gives every problem once, ordered by file and line. The result belongs to the caller.
func (l *List) Sorted() []Problem {
	l.mu.Lock()
	defer l.mu.Unlock()
	return Sorted(l.problems)
}

// Sorted gives a copy of problems, ordered by file and line, without repeats.
func Sorted(problems []Problem) []Problem {
	sorted := slices.Clone(problems)
	slices.SortFunc(sorted, Compare)
	return slices.Compact(sorted)
}

// Print writes one line a problem, in order, and gives the number of lines.
func (l *List) Print(w io.Writer) (int, error) {
	sorted := l.Sorted()
	for i, p := range sorted {
		if _, err := io.WriteString(w, p.String()+"\n"); err != nil {
			return i, err
		}
	}
	return len(sorted), nil
}
