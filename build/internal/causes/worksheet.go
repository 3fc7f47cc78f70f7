package causes

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"changeout/build/internal/report"
	"changeout/calc"
	"changeout/calc/unit"
)

// limitForm is “worksheet output < 3 K; yes only; not if verdict, verdict”.
var limitForm = regexp.MustCompile(`^(\S+)\s+(\S+)\s*([<>])\s*([0-9.]+)\s*([^;]*?)\s*(;\s*yes only)?\s*(?:;\s*not if\s+(.+))?$`)

const answererHint = "write “worksheet output < 3 K”, perhaps with “; yes only” and “; not if verdict”, or “worksheet: yes verdict, verdict; no verdict”"

// answerer reads the cell that names a worksheet. It returns nil for an empty cell.
func (r *reader) answerer(at row, cell string) *Answerer {
	if cell == "" {
		return nil
	}
	if m := limitForm.FindStringSubmatch(cell); m != nil {
		return r.limit(at, m)
	}
	id, rest, ok := strings.Cut(cell, ":")
	a := &Answerer{}
	for part := range strings.SplitSeq(rest, ";") {
		word, list, _ := strings.Cut(strings.TrimSpace(part), " ")
		ok = ok && list != "" && (word == "yes" || word == "no")
	}
	if !ok {
		r.add(at.problem("the worksheet that answers is not understood: "+cell, answererHint))
		return nil
	}
	if a.Worksheet = r.worksheet(at, strings.TrimSpace(id)); a.Worksheet == nil {
		return nil
	}
	for part := range strings.SplitSeq(rest, ";") {
		word, list, _ := strings.Cut(strings.TrimSpace(part), " ")
		to := &a.Yes
		if word == "no" {
			to = &a.No
		}
		*to = append(*to, r.verdicts(at, a.Worksheet, list)...)
	}
	return a
}

func (r *reader) limit(at row, m []string) *Answerer {
	a := &Answerer{Worksheet: r.worksheet(at, m[1]), Above: m[3] == ">", Unit: m[5], YesOnly: m[6] != ""}
	if a.Worksheet == nil {
		return nil
	}
	if a.Output = a.Worksheet.Output(m[2]); a.Output == nil {
		r.add(at.problem("worksheet "+m[1]+" has no output "+m[2], report.DidYouMean(m[2], outputs(a.Worksheet))))
		return nil
	}
	u := a.Output.Quantity.Unit(m[5])
	v, err := strconv.ParseFloat(m[4], 64)
	if u == nil || u.Datum != unit.Fixed || err != nil {
		r.add(at.problem("“"+m[4]+" "+m[5]+"” is not a value of the output "+m[2], report.DidYouMean(m[5], a.Output.Units)))
		return nil
	}
	a.Limit = u.ToSI(v, unit.Env{})
	if m[7] != "" {
		a.Not = r.verdicts(at, a.Worksheet, m[7])
	}
	return a
}

func (r *reader) worksheet(at row, id string) *calc.Worksheet {
	if r.lookup == nil {
		return nil
	}
	w := r.lookup(id)
	if w == nil {
		r.add(at.problem("there is no worksheet "+id, "write the id that “go run ./build compute” lists"))
	}
	return w
}

func (r *reader) verdicts(at row, w *calc.Worksheet, list string) []string {
	var known, found []string
	for _, v := range w.Verdicts {
		known = append(known, v.ID)
	}
	for id := range strings.SplitSeq(list, ",") {
		id = strings.TrimSpace(id)
		if !slices.Contains(known, id) {
			r.add(at.problem("worksheet "+w.ID+" has no verdict “"+id+"”", report.DidYouMean(id, known)))
			continue
		}
		found = append(found, id)
	}
	return found
}

func outputs(w *calc.Worksheet) []string {
	var ids []string
	for _, o := range w.Outputs {
		ids = append(ids, o.ID)
	}
	return ids
}
