package page

import (
	"strconv"
	"strings"

	"changeout/build/internal/report"
)

// lastStage is the number of stages the job has; the handbook follows them and not the trade's textbook order.
const lastStage = 10

// A Stage is one of the ten parts of the job.
type Stage struct {
	Number  int
	Title   string
	Summary string
	Line    int
	Pages   []*Page // pages whose header names this stage, in reading order
}

// readStages reads a numbered list, one stage an item:
//
//  8. Evacuate and hold: pull the water out and prove that it is out.
//
// The title may be a link, and the summary may follow on further indented lines.
func (r *reader) readStages(f *dataFile) {
	b := r.book
	add := func(line int, text, hint string) {
		r.problems = append(r.problems, report.Problem{File: f.name, Line: line, Text: text, Hint: hint})
	}
	for number, line := range strings.Split(string(f.source), "\n") {
		number++
		text, _, ok := listItem(line)
		digits := strings.TrimLeft(line, " ")
		if !ok || digits[0] < '0' || digits[0] > '9' {
			if n := len(b.Stages); n > 0 && strings.HasPrefix(line, "  ") && strings.TrimSpace(line) != "" {
				s := &b.Stages[n-1]
				s.Summary = strings.TrimSpace(s.Summary + " " + strings.TrimLeft(line, " -*"))
			}
			continue
		}
		n, _ := strconv.Atoi(digits[:strings.IndexAny(digits, ".)")])
		if want := len(b.Stages) + 1; n != want {
			add(number, "stage is numbered "+strconv.Itoa(n), "the next number is "+strconv.Itoa(want))
		}
		if n < 1 || n > lastStage {
			add(number, "stage "+strconv.Itoa(n)+" does not exist", "the job has stages 1 to "+strconv.Itoa(lastStage))
			continue
		}
		s := Stage{Number: n, Line: number}
		s.Title, s.Summary = stageText(text)
		b.Stages = append(b.Stages, s)
	}
	for i := range b.Stages {
		s := &b.Stages[i]
		listed := map[*Page]bool{}
		for _, p := range b.Order {
			if p.Stage == s.Number {
				s.Pages, listed[p] = append(s.Pages, p), true
			}
		}
		for _, p := range b.Pages {
			if p.Stage == s.Number && !listed[p] {
				s.Pages = append(s.Pages, p)
			}
		}
	}
}

// stageText splits an item into title and summary.
func stageText(text string) (title, summary string) {
	if link, _, rest, ok := firstLink(text); ok {
		return link, strings.TrimSpace(strings.TrimLeft(rest, " :.-–—*"))
	}
	at, width := len(text), 0
	for _, mark := range []string{": ", " — ", " – ", " - ", ". "} {
		if i := strings.Index(text, mark); i >= 0 && i < at {
			at, width = i, len(mark)
		}
	}
	title, summary = text[:at], text[min(at+width, len(text)):]
	return strings.Trim(title, " *:."), strings.Trim(summary, " *")
}
