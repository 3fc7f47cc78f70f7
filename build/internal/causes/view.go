package causes

import (
	"strings"

	"changeout/calc/unit"
)

// View is what components/assess/assess.tmpl draws; the comment at its head says the same.
type View struct {
	Data   string // address of the data file, from the site's root
	Base   string // way from the page to the site's root
	Places []PlaceView
}

// PlaceView is a heading with its checks.
type PlaceView struct {
	ID, Title string
	Checks    []CheckView
}

// CheckView is one question. Addresses lead from the page.
type CheckView struct {
	ID, Question, Fact, How, URL, Minutes, RiskWord string
	Risk                                            int
	Before                                          bool
	From                                            *FromView
}

// FromView says in words which worksheet answers the question.
type FromView struct{ ID, Title, URL, Words string }

// View prepares the page. data is the address of the data file, base the way from the page to the site's root.
func (m *Model) View(data, base string) View {
	v := View{Data: data, Base: base}
	for _, p := range m.Places {
		v.Places = append(v.Places, PlaceView{ID: p.ID, Title: p.Title})
	}
	for _, c := range m.Checks {
		k := CheckView{ID: c.ID, Question: c.Question, Fact: c.Facts[0], How: c.How, URL: base + c.Page, Minutes: short(c.Minutes), RiskWord: risks[c.Risk], Risk: c.Risk, Before: c.Before}
		if a := c.From; a != nil {
			k.From = &FromView{ID: a.Worksheet.ID, Title: a.Worksheet.Title, URL: base + "worksheets/" + a.Worksheet.ID + ".html", Words: a.words()}
		}
		p := &v.Places[c.Place]
		p.Checks = append(p.Checks, k)
	}
	return v
}

func (a *Answerer) words() string {
	if a.Output != nil {
		u := a.Output.Quantity.Unit(a.Unit)
		return "yes with “" + a.Output.Label + "” " + pick(a.Above, "over ", "under ") + strings.TrimSpace(u.Limit(a.Limit, unit.Env{})+"\u00a0"+u.Label)
	}
	titles := func(ids []string) string {
		var t []string
		for _, id := range ids {
			t = append(t, "“"+a.Worksheet.Verdict(id).Title+"”")
		}
		return strings.Join(t, " or ")
	}
	switch {
	case len(a.No) == 0:
		return "yes with " + titles(a.Yes)
	case len(a.Yes) == 0:
		return "no with " + titles(a.No)
	}
	return "yes with " + titles(a.Yes) + ", no with " + titles(a.No)
}
