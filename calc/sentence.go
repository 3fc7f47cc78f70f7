package calc

import (
	"strconv"
	"strings"

	"changeout/calc/unit"
)

// short cuts what a person typed to what a sentence can hold.
func short(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	runes := []rune(s)
	if len(runes) > 40 {
		return string(runes[:39]) + "…"
	}
	return s
}

// plainNumber writes a number as a person would type it back.
func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// allowed says what an input takes, in the person's default unit.
func allowed(in *Input, r *Run) string {
	if in.Kind == Series {
		var names []string
		for _, c := range in.Columns {
			if !c.Optional {
				names = append(names, c.Label)
			}
		}
		return "at least " + count(in.MinRows, "row") + " of " + joined(names, " and ")
	}
	return allowedIn(in, DefaultUnit(in.Quantity, in.Units, r.system), r)
}

// allowedBeside says what an input takes in the unit chosen beside it.
func (r *Run) allowedBeside(in *Input, chosen string) string {
	if in.Kind == Quantity && chosen != "" {
		if u := in.Quantity.Unit(chosen); u != nil {
			return allowedIn(in, u, r)
		}
	}
	return allowed(in, r)
}

// allowedIn says what range an input takes, in a unit.
func allowedIn(in *Input, u *unit.Unit, r *Run) string {
	return u.Range(in.Low, in.High, r.env)
}

func reason(in *Input) string {
	if in.BoundReason == "" {
		return ""
	}
	return " (" + in.BoundReason + ")"
}

func unitList(in *Input) string {
	if len(in.Units) > 0 {
		return strings.Join(in.Units, ", ")
	}
	ids := make([]string, len(in.Quantity.Units))
	for i := range in.Quantity.Units {
		ids[i] = in.Quantity.Units[i].ID
	}
	return strings.Join(ids, ", ")
}

// optionList says what a choice takes, in the words beside its buttons, or where
// a long list is. What is too long for a sentence stands on the form anyway.
func optionList(in *Input) string {
	if in.Listed != "" {
		return "one of the " + strconv.Itoa(len(in.Options)) + " in " + in.Listed
	}
	names := make([]string, len(in.Options))
	for i, o := range in.Options {
		names[i] = "“" + o.Label + "”"
	}
	said := joined(names, " or ")
	if len(names) > 4 || len(said) > 80 {
		return "one"
	}
	return said
}

// joined lists words in a sentence: a, b and c.
func joined(words []string, last string) string {
	n := len(words) - 1
	if n < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n], ", ") + last + words[n]
}

func (r *Run) unknownInput(id string) {
	ids := make([]string, len(r.sheet.Inputs))
	best, bestDistance := "", 3
	for i := range r.sheet.Inputs {
		ids[i] = r.sheet.Inputs[i].ID
		if d := distance(id, ids[i]); d < bestDistance {
			best, bestDistance = ids[i], d
		}
	}
	hint := "; the inputs are " + strings.Join(ids, ", ")
	if best != "" {
		hint = "; did you mean " + best + "?"
	} else {
		hint += "."
	}
	r.answer.Problems = append(r.answer.Problems, Problem{Input: id, Code: UnknownInput,
		Sentence: r.sheet.Title + " has no input “" + short(id) + "”" + hint})
}

// foldWord keeps letters and digits only, in lower case, so that R410A, r-410a
// and R 410A are one word.
func foldWord(s string) string {
	var b strings.Builder
	for i := range len(s) {
		if c := foldByte(s[i]); c != 0 {
			b.WriteByte(c)
		}
	}
	return b.String()
}

// foldsTo reports whether foldWord(s) is folded, without building it: a list
// of a hundred refrigerants is searched at every key press.
func foldsTo(s, folded string) bool {
	n := 0
	for i := range len(s) {
		c := foldByte(s[i])
		if c == 0 {
			continue
		}
		if n >= len(folded) || folded[n] != c {
			return false
		}
		n++
	}
	return n == len(folded)
}

// foldByte gives the lower-case letter or digit, 0 for what is left out; the
// bytes of characters beyond ASCII stay as they are.
func foldByte(c byte) byte {
	switch {
	case c >= 'A' && c <= 'Z':
		return c + 'a' - 'A'
	case c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c > 127:
		return c
	}
	return 0
}

// nearest returns up to so many options whose ids are close to what was typed,
// the closest first; of two equally close, the one that begins alike.
func nearest(folded string, options []Option, most int) []*Option {
	var near []*Option
	var ranks []int
	for i := range options {
		o := &options[i]
		id := foldWord(o.ID)
		far, alike := distance(folded, id), 0
		if far > 2 {
			continue
		}
		for alike < min(len(id), len(folded)) && id[alike] == folded[alike] {
			alike++
		}
		rank := 64*far - alike
		near, ranks = append(near, o), append(ranks, rank)
		for k := len(near) - 1; k > 0 && ranks[k-1] > rank; k-- {
			near[k], near[k-1] = near[k-1], near[k]
			ranks[k], ranks[k-1] = ranks[k-1], ranks[k]
		}
	}
	return near[:min(len(near), most)]
}

// distance is the Levenshtein distance of two short words, at most 64 bytes.
func distance(a, b string) int {
	if len(a) > 64 || len(b) > 64 {
		return 64
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := diagonal
			if a[i-1] != b[j-1] {
				cost++
			}
			diagonal = row[j]
			row[j] = min(cost, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}

// UnknownWorksheetSentence says that no worksheet has that id, and which was
// probably meant or which there are.
func UnknownWorksheetSentence(id string, known []*Worksheet) string {
	ids := make([]string, len(known))
	best, bestDistance := "", 4
	for i, w := range known {
		ids[i] = w.ID
		if d := distance(id, w.ID); d < bestDistance {
			best, bestDistance = w.ID, d
		}
	}
	said := "There is no worksheet “" + short(id) + "”; "
	if best != "" {
		return said + "did you mean " + best + "?"
	}
	return said + "there are " + strings.Join(ids, ", ") + "."
}
