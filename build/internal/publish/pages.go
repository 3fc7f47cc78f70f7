package publish

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"math"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"changeout/build/internal/causes"
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
	terms := digestOf(b.Glossary.Terms, b.Hazards.Rows, e.content.causes.name())
	stages := map[int]string{}
	for _, s := range b.Stages {
		stages[s.Number] = s.Title
	}
	crumbs := crumbs(b.Contents)
	units := make([]*unit, 0, len(ordered))
	for _, pg := range ordered {
		if made[pg.ID] {
			continue
		}
		units = append(units, pageUnit(e, pg, crumbs[pg], stages[pg.Stage], terms))
	}
	return units
}

func pageUnit(e *edition, pg *page.Page, crumb *Link, stage string, terms [sha256.Size]byte) *unit {
	f := e.frame
	f.ID, f.Kind, f.Title, f.Summary, f.Base = pg.ID, pg.Kind, pg.Title, pg.Summary, base(pg.ID)
	f.Updated = updated(pg)
	f.Crumb = crumb
	if f.Crumb == nil {
		f.Crumb = &Link{Title: "Contents", URL: "contents.html"}
	}
	f.Prev, f.Next = pageLink(pg.Prev), pageLink(pg.Next)
	return &unit{
		frame:  f,
		layout: "page",
		page:   pg,
		packed: strings.HasPrefix(pg.ID, causes.Folder), // long tables for whoever checks the cause model
		inputs: pageDigest(f, pg, stage, e.content.bodyDigest(pg), terms),
		data: func(f Frame, r *markup.Result) (any, error) {
			f.Leads = len(r.Steps) > 0
			f.Sheets, f.Drawn, f.Stored = len(r.Worksheets)+len(r.Writes) > 0, r.Drawn, r.Stored
			return PageData{Frame: f, Stage: pg.Stage, StageTitle: stage, Body: trusted(r.HTML), Steps: len(r.Steps), Parts: parts(r)}, nil
		},
	}
}

const fewParts = 5 // a page with fewer sections shows them soon enough

// parts lists the sections of a long page and the steps in each.
func parts(r *markup.Result) []Part {
	var list []Part
	steps := r.Steps
	for i, h := range r.Headings {
		if h.Level != 2 {
			continue
		}
		next := math.MaxInt
		for _, later := range r.Headings[i+1:] {
			if later.Level == 2 {
				next = later.Line
				break
			}
		}
		part := Part{Title: sectionTitle(h.Text), ID: h.ID}
		n := 0
		for n < len(steps) && steps[n].Line < next {
			n++
		}
		switch {
		case n == 1:
			part.Steps = fmt.Sprint("step ", steps[0].Number)
		case n == 2:
			part.Steps = fmt.Sprint("steps ", steps[0].Number, " and ", steps[1].Number)
		case n > 2:
			part.Steps = fmt.Sprint("steps ", steps[0].Number, " to ", steps[n-1].Number)
		}
		steps = steps[n:]
		list = append(list, part)
	}
	if len(list) < fewParts {
		return nil
	}
	return list
}

// sectionTitle leaves out that a section holds steps: the numbers beside it say so.
func sectionTitle(text string) string {
	title, ok := strings.CutPrefix(text, "Steps: ")
	if !ok {
		return text
	}
	first, size := utf8.DecodeRuneInString(title)
	return string(unicode.ToUpper(first)) + title[size:]
}

// pageDigest covers what one page is made from. It runs for every page at each
// build, so it writes bytes and no JSON.
func pageDigest(f Frame, pg *page.Page, stage string, body, terms [sha256.Size]byte) [sha256.Size]byte {
	b := make([]byte, 0, 1024)
	text := func(s string) {
		b = binary.AppendUvarint(b, uint64(len(s))) // keeps two texts from being read as one
		b = append(b, s...)
	}
	link := func(l *Link) {
		if l == nil {
			text("")
			return
		}
		text(l.URL)
		text(l.Title)
		b = binary.AppendVarint(b, int64(l.Stage))
	}
	for _, s := range []string{f.ID, f.Kind, f.Title, f.Summary, f.Updated, stage, pg.File} {
		text(s)
	}
	link(f.Crumb)
	link(f.Prev)
	link(f.Next)
	b = binary.AppendVarint(b, int64(pg.Stage))
	b = binary.AppendVarint(b, int64(pg.BodyLine))
	b = append(b, body[:]...)
	b = append(b, terms[:]...)
	return sha256.Sum256(b)
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
