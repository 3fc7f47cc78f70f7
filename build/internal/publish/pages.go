package publish

import (
	"strings"
	"time"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
)

// contentUnits frames every content page, in reading order; pages outside it
// follow. Pages that only give a made page its opening words are not among
// them.
func (p *Publisher) contentUnits(e *edition) []*unit {
	b := e.content.book
	ordered := make([]*page.Page, 0, len(b.Pages))
	ordered = append(ordered, b.Order...)
	listed := make(map[*page.Page]bool, len(b.Order))
	for _, pg := range b.Order {
		listed[pg] = true
	}
	for _, pg := range b.Pages {
		if !listed[pg] {
			ordered = append(ordered, pg)
		}
	}
	made := p.madeIDs()
	terms := digestOf(b.Glossary.Terms, b.Hazards.Rows)
	crumbs := crumbs(b.Contents)
	units := make([]*unit, 0, len(ordered))
	for _, pg := range ordered {
		if made[pg.ID] {
			continue
		}
		units = append(units, pageUnit(e, pg, crumbs[pg], terms))
	}
	return units
}

func pageUnit(e *edition, pg *page.Page, crumb *Link, terms any) *unit {
	f := e.frame
	f.ID, f.Kind, f.Title, f.Summary, f.Base = pg.ID, pg.Kind, pg.Title, pg.Summary, base(pg.ID)
	f.Updated = updated(pg)
	f.Crumb = crumb
	if f.Crumb == nil {
		f.Crumb = &Link{Title: "Contents", URL: "contents.html"}
	}
	f.Prev, f.Next = pageLink(pg.Prev), pageLink(pg.Next)
	stage := ""
	if n := pg.Stage; n > 0 {
		for _, s := range e.content.book.Stages {
			if s.Number == n {
				stage = s.Title
			}
		}
	}
	return &unit{
		frame:  f,
		layout: "page",
		page:   pg,
		inputs: digestOf(f.ID, f.Kind, f.Title, f.Summary, f.Updated, f.Crumb, f.Prev, f.Next, pg.Stage, stage, pg.File, pg.BodyLine, pg.Body, terms),
		data: func(f Frame, r *markup.Result) (any, error) {
			return PageData{Frame: f, Stage: pg.Stage, StageTitle: stage, Body: trusted(r.HTML), Steps: len(r.Steps)}, nil
		},
	}
}

// crumbs names the group of the reading order that each page belongs to.
func crumbs(contents []*page.Entry) map[*page.Page]*Link {
	found := map[*page.Page]*Link{}
	for _, group := range contents {
		if len(group.Children) == 0 {
			continue
		}
		link := &Link{Title: group.Title, URL: "contents.html"}
		for _, e := range flatten(group.Children) {
			if e.Page != nil {
				found[e.Page] = link
			}
		}
	}
	return found
}

// flatten lists entries and what is below them in reading order.
func flatten(entries []*page.Entry) []*page.Entry {
	var flat []*page.Entry
	for _, e := range entries {
		flat = append(flat, e)
		flat = append(flat, flatten(e.Children)...)
	}
	return flat
}

func pageLink(pg *page.Page) *Link {
	if pg == nil {
		return nil
	}
	return &Link{Title: pg.Title, URL: pg.URL, Stage: pg.Stage}
}

// base is the way from a page to the site's root. "./" and not "": a link that
// is empty would lead to the page itself.
func base(id string) string {
	if n := strings.Count(id, "/"); n > 0 {
		return strings.Repeat("../", n)
	}
	return "./"
}

func updated(pg *page.Page) string {
	if pg.Updated.IsZero() {
		return ""
	}
	return pg.Updated.Format(time.DateOnly)
}
