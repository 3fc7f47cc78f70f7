package causes

import (
	"path"
	"slices"
	"strconv"
	"strings"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
	"changeout/calc"
	"changeout/calc/cause"
)

// join resolves the address of a file against the page that names it.
func join(from, file string) string { return path.Join(path.Dir(from), file) }

type reader struct {
	lookup   func(id string) *calc.Worksheet
	m        *Model
	problems []report.Problem

	causes, mechanisms, checks map[string]row
	led, weighed               map[string]row // rows that give leads of a cause, weights of a check
}

func (r *reader) add(p report.Problem) { r.problems = append(r.problems, p) }

// Read gathers the model from the pages below [Folder]. lookup gives a worksheet by its id, or nil. Without such pages
// there is no model and no problem; with a problem there is no model.
func Read(book *page.Book, lookup func(id string) *calc.Worksheet) (*Model, []report.Problem) {
	r := &reader{lookup: lookup, m: &Model{}, causes: map[string]row{}, mechanisms: map[string]row{}, checks: map[string]row{},
		led: map[string]row{}, weighed: map[string]row{}}
	var all []*table
	var first *page.Page
	for _, p := range book.Pages {
		if strings.HasPrefix(p.Path, Folder) {
			if first == nil {
				first = p
			}
			all = append(all, tables(p)...)
		}
	}
	if first == nil {
		return nil, nil
	}
	// What is named comes before what names it, in whatever order the pages stand.
	for _, k := range []struct {
		first, mark string
		columns     []string
		read        func(row)
	}{
		{"cause", "prior", []string{"cause", "name", "prior", "again", "what removes it", "source"}, r.cause},
		{"mechanism", "what happens", []string{"mechanism", "name", "what happens", "source"}, r.mechanism},
		{"cause", "leads to", []string{"cause", "leads to", "source"}, r.leads},
		{"check", "question", []string{"check", "question", "if yes, it reads", "fact", "how", "effort", "from"}, r.check},
		{"check", "leak", []string{"check", "sign of", "leak", "weights", "source"}, r.weights},
	} {
		read := false
		for _, t := range all {
			if !strings.EqualFold(t.titles[0], k.first) || !t.has(k.mark) {
				continue
			}
			read = true
			if missing := slices.IndexFunc(k.columns, func(c string) bool { return !t.has(c) }); missing >= 0 {
				r.add(t.page.Problem(t.line, "table has no column “"+k.columns[missing]+"”", report.DidYouMean(k.columns[missing], t.titles)))
				continue
			}
			for _, row := range t.rows {
				k.read(row)
			}
		}
		if !read {
			r.add(first.Problem(1, "the pages below "+Folder+" have no table “"+strings.Join(k.columns, " | ")+"”", ""))
		}
	}
	if len(r.problems) == 0 {
		r.whole(first)
	}
	if len(r.problems) > 0 {
		return nil, report.Sorted(r.problems)
	}
	return r.m, nil
}

// id reads the first cell and notes it; false when the row cannot be used.
func (r *reader) id(at row, what, title string, known map[string]row) (string, bool) {
	id := at.cell(title)
	if !wordOfID.MatchString(id) {
		r.add(at.problem("id of a "+what+" is “"+id+"”", "use lower-case words with hyphens"))
		return "", false
	}
	if before, taken := known[id]; taken {
		r.add(at.problem(what+" "+id+" stands twice", before.t.page.File+":"+strconv.Itoa(before.line)))
		return "", false
	}
	known[id] = at
	r.source(at)
	return id, true
}

// text reads a cell that must hold words.
func (r *reader) text(at row, title string) string {
	s := plain(at.cell(title))
	switch {
	case s == "":
		r.add(at.problem("the cell “"+title+"” is empty", ""))
	case strings.Contains(s, "<"):
		r.add(at.problem("“<” stands in the cell “"+title+"”", "write “under”"))
	}
	return s
}

// source asks for a citation or the word editorial. Keys are judged with the page.
func (r *reader) source(at row) {
	if !at.t.has("source") {
		return
	}
	if s := at.cell("source"); !citationMark.MatchString(s) && !strings.EqualFold(s, "editorial") {
		r.add(at.problem("row has no source", "cite one, [@key], or write editorial"))
	}
}

func (r *reader) cause(at row) {
	id, ok := r.id(at, "cause", "cause", r.causes)
	if !ok {
		return
	}
	c := Cause{ID: id, Name: r.text(at, "name"), Removes: r.text(at, "what removes it")}
	_, c.Page = link(at.t.page, at.cell("what removes it"))
	if c.Prior, ok = number(at.cell("prior"), 0.001, 0.5); !ok {
		r.add(at.problem("prior is “"+at.cell("prior")+"”", "write a probability from 0.001 to 0.5"))
	}
	switch strings.ToLower(at.cell("again")) {
	case "yes":
		c.Again = true
	case "no":
	default:
		r.add(at.problem("the cell “again” is “"+at.cell("again")+"”", "write yes or no: would it kill the next compressor too?"))
	}
	r.m.Causes = append(r.m.Causes, c)
}

func (r *reader) mechanism(at row) {
	if id, ok := r.id(at, "mechanism", "mechanism", r.mechanisms); ok {
		r.m.Mechanisms = append(r.m.Mechanisms, Mechanism{id, r.text(at, "name"), r.text(at, "what happens")})
	}
}

// owner finds the row that a row of strengths belongs to.
func (r *reader) owner(at row, what string, known, done map[string]row) (string, bool) {
	id := at.cell(what)
	if _, ok := known[id]; !ok {
		r.add(at.problem("there is no "+what+" “"+id+"”", report.DidYouMean(id, keys(known))))
		return "", false
	}
	if before, twice := done[id]; twice {
		r.add(at.problem("strengths of "+id+" stand twice", before.t.page.File+":"+strconv.Itoa(before.line)))
		return "", false
	}
	done[id] = at
	r.source(at)
	return id, true
}

func (r *reader) leads(at row) {
	id, ok := r.owner(at, "cause", r.causes, r.led)
	if !ok {
		return
	}
	i := slices.IndexFunc(r.m.Causes, func(c Cause) bool { return c.ID == id })
	r.m.Causes[i].Leads = r.strengths(at, at.cell("leads to"), 0, "mechanism", r.mechanisms)
}

// strengths reads “floodback ++, slugging 0.1”. leak is zero where nothing can speak against.
func (r *reader) strengths(at row, cell string, leak float64, what string, known map[string]row) []Weight {
	var list []Weight
	for part := range strings.SplitSeq(cell, ",") {
		words := strings.Fields(part)
		if len(words) != 2 {
			r.add(at.problem("strength is not understood: “"+strings.TrimSpace(part)+"”", "write an id and a strength, “airflow ++”, with commas between"))
			continue
		}
		if _, ok := known[words[0]]; !ok {
			r.add(at.problem("there is no "+what+" “"+words[0]+"”", report.DidYouMean(words[0], keys(known))))
			continue
		}
		p, ok := strength(words[1], leak)
		switch {
		case !ok:
			r.add(at.problem("strength of "+words[0]+" is “"+words[1]+"”", strengthHint))
		case slices.ContainsFunc(list, func(w Weight) bool { return w.To == words[0] }):
			r.add(at.problem(words[0]+" stands twice in the row", ""))
		case strings.HasPrefix(words[1], "+") && p <= leak:
			r.add(at.problem(words[0]+" "+words[1]+" is not above the leak, so it would speak against", "lower the leak, or write a number"))
		default:
			list = append(list, Weight{words[0], p})
		}
	}
	return list
}

func (r *reader) check(at row) {
	id, ok := r.id(at, "check", "check", r.checks)
	if !ok {
		return
	}
	c := Check{ID: id, Question: r.text(at, "question"), Statement: r.text(at, "if yes, it reads"), Facts: r.facts(at)}
	if !strings.HasSuffix(c.Question, "?") {
		r.add(at.problem("question does not end with a question mark", "ask what can be answered by yes or no"))
	}
	if c.How, c.Page = link(at.t.page, at.cell("how")); c.Page == "" {
		r.add(at.problem("the cell “how” has no link", "link to the step or page that says how: [words](../stages/page.md#step-id)"))
	}
	if c.Minutes, c.Risk, c.Before, ok = effort(at.cell("effort")); !ok {
		r.add(at.problem("effort is “"+at.cell("effort")+"”", "write “15 min, look”, “15 min, tools” or “15 min, danger”, perhaps with “, before a part”"))
	}
	c.From = r.answerer(at, at.cell("from"))
	c.Place = r.place(at.t.heading)
	r.m.Checks = append(r.m.Checks, c)
}

// facts reads the words of the column “fact”, with commas between.
func (r *reader) facts(at row) []string {
	var list []string
	for word := range strings.SplitSeq(r.text(at, "fact"), ",") {
		id := page.Slug(strings.TrimSpace(word))
		if id == "" || slices.Contains(list, id) {
			r.add(at.problem("the cell “fact” is “"+at.cell("fact")+"”", "write what the check is about; more words with commas between"))
		}
		list = append(list, id)
	}
	return list
}

func (r *reader) place(title string) int {
	id := page.Slug(title)
	i := slices.IndexFunc(r.m.Places, func(p Place) bool { return p.ID == id })
	if i < 0 {
		i = len(r.m.Places)
		r.m.Places = append(r.m.Places, Place{id, title})
	}
	return i
}

func effort(cell string) (minutes float64, risk int, before, ok bool) {
	parts := strings.Split(cell, ",")
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	if len(parts) == 3 && parts[2] == "before a part" {
		before, parts = true, parts[:2]
	}
	if len(parts) != 2 {
		return 0, 0, false, false
	}
	minutes, ok = number(strings.TrimSuffix(parts[0], " min"), 1, 1000)
	risk = slices.Index(risks, parts[1])
	return minutes, risk, before, ok && risk >= 0
}

func (r *reader) weights(at row) {
	id, ok := r.owner(at, "check", r.checks, r.weighed)
	if !ok {
		return
	}
	c := &r.m.Checks[slices.IndexFunc(r.m.Checks, func(c Check) bool { return c.ID == id })]
	what, known := "cause", r.causes
	switch at.cell("sign of") {
	case "causes":
	case "mechanisms":
		c.Mechanisms = true
		what, known = "mechanism", r.mechanisms
	default:
		r.add(at.problem("“sign of” is “"+at.cell("sign of")+"”", "write causes or mechanisms"))
		return
	}
	if c.Leak, ok = number(at.cell("leak"), 0.005, 0.5); !ok {
		r.add(at.problem("leak is “"+at.cell("leak")+"”", "write a probability from 0.005 to 0.5"))
		return
	}
	c.Weights = r.strengths(at, at.cell("weights"), c.Leak, what, known)
}

// most is how many combinations an assessment may have to weigh: about a tenth of a second on a slow phone.
const most = 150_000

// whole judges what single rows cannot know, and asks the engine.
func (r *reader) whole(first *page.Page) {
	for i := range r.m.Checks {
		if c := &r.m.Checks[i]; len(c.Weights) == 0 {
			r.add(r.checks[c.ID].problem("check "+c.ID+" has no weights", "give it a row in a table “check | sign of | leak | weights | source”"))
		}
	}
	for i := range r.m.Causes {
		c := &r.m.Causes[i]
		if !r.m.canBeNamed(c) {
			r.add(r.causes[c.ID].problem("no two independent facts can speak for "+c.ID+", so it could never be called the cause", "give it checks with different facts"))
		}
	}
	if n := r.m.states(); n > most {
		r.add(first.Problem(1, "the model has "+strconv.Itoa(n)+" combinations to weigh; a phone can take "+strconv.Itoa(most), "leave out causes, mechanisms or leads"))
	}
	if len(r.problems) > 0 {
		return
	}
	if i := strings.IndexByte(string(r.m.Data()), '<'); i >= 0 { // it would end the element that holds the data in the single file
		r.add(first.Problem(0, "“<” stands in a heading, a fact or a link of the model", "write “under”"))
	}
	if _, _, fault := cause.Read(r.m.Engine()); fault != nil {
		r.add(first.Problem(0, "the model cannot be used: "+fault.Error(), ""))
	}
}

// canBeNamed reports whether two checks that share no fact can at least double the odds of a cause directly.
func (m *Model) canBeNamed(c *Cause) bool {
	var speak [][]string
	for _, k := range m.Checks {
		for _, w := range k.Weights {
			if !k.Mechanisms && w.To == c.ID && w.P >= 2*k.Leak {
				speak = append(speak, k.Facts)
			}
		}
	}
	for i, a := range speak {
		for _, b := range speak[:i] {
			if !slices.ContainsFunc(a, func(fact string) bool { return slices.Contains(b, fact) }) {
				return true
			}
		}
	}
	return false
}

// states counts the combinations of mechanisms over all sets of causes that may act together.
func (m *Model) states() int {
	masks := make([]uint, len(m.Causes))
	for i, c := range m.Causes {
		for _, l := range c.Leads {
			masks[i] |= 1 << slices.IndexFunc(m.Mechanisms, func(k Mechanism) bool { return k.ID == l.To })
		}
	}
	var count func(mask uint, place, left int) int
	count = func(mask uint, place, left int) int {
		n := 1
		for k := mask; k != 0; k &= k - 1 {
			n *= 2
		}
		if left > 0 {
			for i := place; i < len(masks); i++ {
				n += count(mask|masks[i], i+1, left-1)
			}
		}
		return n
	}
	return count(0, 0, cause.MaxTogether)
}

func keys(rows map[string]row) []string {
	list := make([]string, 0, len(rows))
	for k := range rows {
		list = append(list, k)
	}
	return list
}
