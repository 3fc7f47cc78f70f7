package publish

import (
	"context"
	"encoding/json"
	"fmt"
	"html/template"
	"path"
	"slices"
	"strings"
	"sync"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// Pages that the build makes besides those in content. A content page with one
// of these ids gives the made page its title, summary and opening words.
const (
	frontID      = "index"
	contentsID   = "contents"
	worksheetsID = "worksheets"
	tablesID     = "tables"
	sourcesID    = "about/sources"
	checkedID    = "about/checked"
	licencesID   = "about/licences"

	notFoundFile = "404.html"
)

func worksheetID(id string) string { return "worksheets/" + id }
func tableID(id string) string     { return "tables/" + id }

// madeIDs are the ids of all made pages.
func (p *Publisher) madeIDs() map[string]bool {
	ids := map[string]bool{}
	for _, id := range []string{frontID, contentsID, worksheetsID, tablesID, sourcesID, checkedID, licencesID} {
		ids[id] = true
	}
	for _, w := range p.o.Supply.WorksheetPages {
		ids[worksheetID(w.ID)] = true
	}
	for _, t := range p.o.Supply.TablePages {
		ids[tableID(t.ID)] = true
	}
	return ids
}

// madeURLs are their addresses, for the check of links.
func (p *Publisher) madeURLs() []string {
	var urls []string
	for id := range sorted(p.madeIDs()) {
		urls = append(urls, id+".html")
	}
	return urls
}

// madeUnits makes the pages that stand in no Markdown file. It needs the
// results of all content pages.
func (p *Publisher) madeUnits(e *edition) ([]*unit, []report.Problem) {
	m := maker{p: p, e: e, usedIn: map[string][]Link{}, citedIn: map[string][]Link{}}
	m.collect()
	m.front()
	m.contents()
	m.worksheets()
	m.tables()
	m.about()
	if p.o.Base != "" {
		m.notFound()
	}
	return m.units, m.problems
}

// maker gathers made pages.
type maker struct {
	p        *Publisher
	e        *edition
	units    []*unit
	problems []report.Problem

	usedIn  map[string][]Link // worksheet id: pages that hold it
	citedIn map[string][]Link // source key: pages that cite it
}

// collect goes through the content pages once.
func (m *maker) collect() {
	made := m.p.madeIDs()
	for _, pg := range readingOrder(m.e.content.book) {
		k := m.e.content.pages[pg]
		if k == nil || made[pg.ID] {
			continue
		}
		link := *pageLink(pg)
		for i, use := range k.result.Worksheets {
			if !slices.ContainsFunc(k.result.Worksheets[:i], func(u markup.Use) bool { return u.ID == use.ID }) {
				m.usedIn[use.ID] = append(m.usedIn[use.ID], link)
			}
		}
		for _, cited := range k.result.Sources {
			m.citedIn[cited.Key] = append(m.citedIn[cited.Key], link)
		}
	}
}

func readingOrder(b *page.Book) []*page.Page {
	order := slices.Clone(b.Order)
	in := make(map[*page.Page]bool, len(order))
	for _, pg := range order {
		in[pg] = true
	}
	for _, pg := range b.Pages {
		if !in[pg] {
			order = append(order, pg)
		}
	}
	return order
}

// unit starts a made page. A content page of the same id replaces title and
// summary; withBody says whether the layout has room for its text.
func (m *maker) unit(id, kind, layout, title, summary string, crumb *Link, withBody bool) *unit {
	f := m.e.frame
	f.ID, f.Kind, f.Title, f.Summary, f.Base, f.Crumb = id, kind, title, summary, base(id), crumb
	u := &unit{frame: f, layout: layout}
	if pg := m.e.content.book.Page(id + ".md"); pg != nil {
		u.page = pg
		u.frame.Title, u.frame.Summary, u.frame.Updated = pg.Title, pg.Summary, updated(pg)
		m.e.content.known(pg)
		if text := strings.TrimSpace(string(pg.Body)); text != "" && !withBody {
			m.problems = append(m.problems, pg.Problem(pg.BodyLine, "this page is made by the build and has no room for text of its own", "keep the header, and put the text on another page"))
		}
	}
	u.search = true
	m.units = append(m.units, u)
	return u
}

// depends says what the page is made from. Call it last.
func (m *maker) depends(u *unit, on ...any) {
	var body []byte
	if u.page != nil {
		body = u.page.Body
	}
	u.inputs = digestOf(u.frame.ID, u.frame.Title, u.frame.Summary, u.frame.Updated, u.frame.Crumb, u.frame.Prev, u.frame.Next, body, on)
}

func item(pg *page.Page) ListItem {
	return ListItem{Title: pg.Title, URL: pg.URL, Summary: pg.Summary, Stage: pg.Stage}
}

// front is the first page: the stages of the job, then everything beside them.
func (m *maker) front() {
	u := m.unit(frontID, "front", "front", "Change the compressor, keep the next one alive",
		"Find why it failed, change it safely, prove the work, and leave a record.", nil, false)
	u.search = false // everybody knows the way here
	var stages []Stage
	for _, s := range m.e.content.book.Stages {
		stage := Stage{Number: s.Number, Title: s.Title, Summary: s.Summary}
		for _, pg := range s.Pages {
			stage.Pages = append(stage.Pages, item(pg))
		}
		stages = append(stages, stage)
	}
	shelves := []ListGroup{{Title: "Worksheets", Items: m.worksheetShelf()}, {Title: "Tables", Items: m.tableShelf()}}
	for _, g := range m.contentsGroups() {
		g.Items = slices.DeleteFunc(g.Items, func(i ListItem) bool {
			return i.Stage > 0 || i.URL == "index.html" || strings.HasPrefix(i.URL, "worksheets") || strings.HasPrefix(i.URL, "tables")
		})
		shelves = append(shelves, shorten(g))
	}
	shelves = slices.DeleteFunc(shelves, func(g ListGroup) bool { return len(g.Items) == 0 })
	for i := range shelves {
		if shelves[i].Title == "" {
			shelves[i].Title = "More pages"
		}
	}
	u.data = func(f Frame, _ *markup.Result) (any, error) {
		return FrontData{Frame: f, Stages: stages, Shelves: shelves}, nil
	}
	m.depends(u, stages, shelves)
}

// shorten keeps the front page a page: of a long group it shows the beginning
// and the way to the rest.
func shorten(g ListGroup) ListGroup {
	const most, shown = 12, 8
	if n := len(g.Items); n > most {
		g.Items = append(slices.Clone(g.Items[:shown]), ListItem{Title: fmt.Sprintf("All %d pages", n), URL: "contents.html"})
	}
	return g
}

// contents is the reading order as one page.
func (m *maker) contents() {
	u := m.unit(contentsID, "list", "list", "Contents", "Every page of the handbook, in reading order.", nil, false)
	u.search = false
	groups := m.contentsGroups()
	for _, e := range flatten(m.e.content.book.Contents) {
		if _, ok := m.entryItem(e); !ok && e.Target != "" {
			m.problems = append(m.problems, report.Problem{File: m.p.contentsFile(), Line: e.Line, Text: "there is nothing called " + e.Target, Hint: m.nearest(e.Target)})
		}
	}
	listed := map[string]bool{}
	for _, g := range groups {
		for _, i := range g.Items {
			listed[i.URL] = true
		}
	}
	// What the reading order leaves out is made, so every page can be found.
	rest := ListGroup{Title: "More"}
	for _, i := range []ListItem{
		{Title: "Worksheets", URL: "worksheets.html"},
		{Title: "Tables", URL: "tables.html"},
		{Title: "Sources", URL: sourcesID + ".html"},
		{Title: "How each worksheet was checked", URL: checkedID + ".html"},
		{Title: "Licences", URL: licencesID + ".html"},
	} {
		if !listed[i.URL] {
			rest.Items = append(rest.Items, i)
		}
	}
	if len(rest.Items) > 0 {
		groups = append(groups, rest)
	}
	u.data = func(f Frame, _ *markup.Result) (any, error) {
		return ListData{Frame: f, Intro: f.Summary, Find: true, Groups: groups}, nil
	}
	m.depends(u, groups)
}

// contentsGroups turns the reading order into groups of links. Links outside a
// group come first, without a heading.
func (m *maker) contentsGroups() []ListGroup {
	var groups []ListGroup
	for _, top := range m.e.content.book.Contents {
		if len(top.Children) == 0 {
			if len(groups) == 0 || groups[len(groups)-1].Title != "" {
				groups = append(groups, ListGroup{})
			}
			if i, ok := m.entryItem(top); ok {
				groups[len(groups)-1].Items = append(groups[len(groups)-1].Items, i)
			}
			continue
		}
		g := ListGroup{Title: top.Title}
		entries := flatten(top.Children)
		if top.Target != "" {
			entries = append([]*page.Entry{top}, entries...)
		}
		for _, e := range entries {
			if i, ok := m.entryItem(e); ok {
				g.Items = append(g.Items, i)
			}
		}
		groups = append(groups, g)
	}
	return slices.DeleteFunc(groups, func(g ListGroup) bool { return len(g.Items) == 0 })
}

// entryItem turns one line of the reading order into a link. A line without a
// target only groups others.
func (m *maker) entryItem(e *page.Entry) (ListItem, bool) {
	if e.Page != nil {
		return item(e.Page), true
	}
	s := m.p.o.Supply
	kind, id, _ := strings.Cut(e.Target, ":")
	switch {
	case kind == "worksheet" && id != "":
		if i := slices.IndexFunc(s.WorksheetPages, func(w WorksheetPage) bool { return w.ID == id }); i >= 0 {
			return m.worksheetItem(s.WorksheetPages[i]), true
		}
	case kind == "table" && id != "":
		if i := slices.IndexFunc(s.TablePages, func(t TablePage) bool { return t.ID == id }); i >= 0 {
			return m.tableItem(s.TablePages[i]), true
		}
	case m.p.madeIDs()[strings.TrimSuffix(e.Target, ".html")] && strings.HasSuffix(e.Target, ".html"):
		return ListItem{Title: e.Title, URL: path.Clean(e.Target)}, true
	}
	return ListItem{}, false
}

// nearest is a hint for a target that is not there.
func (m *maker) nearest(target string) string {
	var known []string
	for _, w := range m.p.o.Supply.WorksheetPages {
		known = append(known, "worksheet:"+w.ID)
	}
	for _, t := range m.p.o.Supply.TablePages {
		known = append(known, "table:"+t.ID)
	}
	known = append(known, m.p.madeURLs()...)
	return report.DidYouMean(target, known)
}

func (m *maker) worksheetItem(w WorksheetPage) ListItem {
	return ListItem{Title: w.Title, URL: worksheetID(w.ID) + ".html", Summary: brief(w.Summary)}
}

// brief is the first statement of a purpose: in a list of many, each gets one
// line or two.
func brief(purpose string) string {
	const most = 120 // bytes
	end := len(purpose)
	for _, mark := range []string{". ", ": "} {
		if i := strings.Index(purpose[:end], mark); i > 0 {
			end = i
		}
	}
	if i := strings.Index(purpose, ", "); end > most && i > 0 {
		end = i
	}
	return strings.TrimSuffix(purpose[:end], ".") + "."
}

func (m *maker) tableItem(t TablePage) ListItem {
	return ListItem{Title: t.Title, URL: tableID(t.ID) + ".html", Summary: t.Summary}
}

// worksheetShelf is the worksheets for the front page: all of them while they
// are few; when there are many, the way to their list. Each stands in its step
// anyway.
func (m *maker) worksheetShelf() []ListItem {
	const few = 6
	pages := m.p.o.Supply.WorksheetPages
	if len(pages) <= few {
		var items []ListItem
		for _, w := range pages {
			items = append(items, m.worksheetItem(w))
		}
		return items
	}
	return []ListItem{{Title: "All worksheets", URL: "worksheets.html", Summary: fmt.Sprintf("%d, in the order of the job", len(pages))}}
}

// worksheetGroups are the worksheets by stage, in the order of the job. A
// worksheet belongs to the first stage with a page that holds it; one that no
// stage page holds serves at any stage.
func (m *maker) worksheetGroups() []ListGroup {
	byStage := map[int][]ListItem{}
	for _, w := range m.p.o.Supply.WorksheetPages {
		var at []int
		for _, page := range m.usedIn[w.ID] {
			if page.Stage > 0 && !slices.Contains(at, page.Stage) {
				at = append(at, page.Stage)
			}
		}
		slices.Sort(at)
		item, stage := m.worksheetItem(w), 0
		if len(at) > 0 {
			stage = at[0]
			item.Note = alsoIn(at[1:])
		}
		byStage[stage] = append(byStage[stage], item)
	}
	groups := []ListGroup{{Title: "At any stage", Items: byStage[0]}}
	for _, s := range m.e.content.book.Stages {
		groups = append(groups, ListGroup{Title: fmt.Sprintf("%d. %s", s.Number, s.Title), Items: byStage[s.Number]})
	}
	return slices.DeleteFunc(groups, func(g ListGroup) bool { return len(g.Items) == 0 })
}

// alsoIn names the later stages that a worksheet serves too.
func alsoIn(stages []int) string {
	switch len(stages) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("also in stage %d", stages[0])
	}
	words := make([]string, len(stages))
	for i, s := range stages {
		words[i] = fmt.Sprint(s)
	}
	last := len(words) - 1
	return "also in stages " + strings.Join(words[:last], ", ") + " and " + words[last]
}

// worksheets is the list of worksheets, then each on its own page.
func (m *maker) worksheets() {
	list := m.unit(worksheetsID, "list", "list", "Worksheets", "Work out a value, with the working and the sources shown.", nil, false)
	groups := m.worksheetGroups()
	list.data = func(f Frame, _ *markup.Result) (any, error) {
		return ListData{Frame: f, Intro: f.Summary, Find: true, Groups: groups}, nil
	}
	m.depends(list, groups)
	for _, w := range m.p.o.Supply.WorksheetPages {
		u := m.unit(worksheetID(w.ID), "worksheet", "worksheet", w.Title, w.Summary, &Link{Title: "Worksheets", URL: "worksheets.html"}, false)
		u.places = places(w.Places)
		used := m.usedIn[w.ID]
		u.packed = len(used) > 0 // the form stands on a procedure page too, which is not packed
		u.data = func(f Frame, _ *markup.Result) (any, error) {
			form, err := w.Form(f.Base)
			f.Sheets = true
			return WorksheetData{Frame: f, Form: form, UsedIn: used}, err
		}
		m.depends(u, used)
	}
}

// tableShelf is the tables for the front page: all of them while they are few;
// when there are many, those that stand alone and the way to the rest.
func (m *maker) tableShelf() []ListItem {
	const few = 6
	pages := m.p.o.Supply.TablePages
	if len(pages) == 0 {
		return nil
	}
	if len(pages) <= few {
		var items []ListItem
		for _, t := range pages {
			items = append(items, m.tableItem(t))
		}
		return items
	}
	var items []ListItem
	rest := 0
	for _, g := range m.tableGroups() {
		if len(g.Items) == 1 {
			items = append(items, g.Items[0])
		} else {
			rest += len(g.Items)
		}
	}
	if rest > 0 {
		items = append(items, ListItem{Title: "All tables", URL: "tables.html", Summary: fmt.Sprintf("%d more, by group", rest)})
	}
	return items
}

// tableGroups are the tables by group, both in the order of the supply.
func (m *maker) tableGroups() []ListGroup {
	var groups []ListGroup
	for _, t := range m.p.o.Supply.TablePages {
		i := slices.IndexFunc(groups, func(g ListGroup) bool { return g.Title == t.Group })
		if i < 0 {
			i = len(groups)
			groups = append(groups, ListGroup{Title: t.Group, Grid: true})
		}
		item := m.tableItem(t)
		if t.Short == "" {
			groups[i].Grid = false
		} else {
			item.Title, item.Summary, item.Note = t.Short, "", t.Note
		}
		groups[i].Items = append(groups[i].Items, item)
	}
	return groups
}

// tables is the list of tables, then each on its own page.
func (m *maker) tables() {
	list := m.unit(tablesID, "list", "list", "Tables", "Values computed when this handbook was built, to read and to print.", nil, false)
	groups := m.tableGroups()
	list.data = func(f Frame, _ *markup.Result) (any, error) {
		return ListData{Frame: f, Intro: f.Summary, Groups: groups}, nil
	}
	m.depends(list, groups)
	for _, t := range m.p.o.Supply.TablePages {
		u := m.unit(tableID(t.ID), "table", "table", t.Title, t.Summary, &Link{Title: "Tables", URL: "tables.html"}, true)
		u.packed, u.places = t.Packed, places(t.Places)
		u.data = func(f Frame, r *markup.Result) (any, error) {
			c := m.p.supplied.computed(t)
			return TableData{Frame: f, Lead: c.lead, Tables: c.tables, Body: body(r)}, c.err
		}
		m.depends(u)
	}
}

// body is the text of a content page, or nothing.
func body(r *markup.Result) template.HTML {
	if r == nil {
		return ""
	}
	return trusted(r.HTML)
}

// notFound answers for an address that does not exist. It is shown at any
// depth, so its links start at the base path; that is why it is made only when
// the base path was given.
func (m *maker) notFound() {
	u := m.unit("404", "reference", "page", "This page is not here", "The address may be old. Search from the contents.", &Link{Title: "Contents", URL: "contents.html"}, false)
	u.search = false
	u.frame.Base = "/" + strings.Trim(m.p.o.Base, "/") + "/"
	if u.frame.Base == "//" {
		u.frame.Base = "/"
	}
	u.data = func(f Frame, _ *markup.Result) (any, error) {
		return PageData{Frame: f, Body: template.HTML(`<p><a href="` + template.HTMLEscapeString(f.Base) + `index.html">To the first page</a></p>`)}, nil
	}
	m.depends(u, u.frame.Base)
}

// supplied keeps what the computation gave: it is the same as long as the
// program runs, and some of it takes time.
type supplied struct {
	mu      sync.Mutex
	byTable map[string]func() computed
	digest  []byte
}

// computed is what stands on the page of a table.
type computed struct {
	lead   any
	tables []any
	err    error
}

// computed computes the tables of a page once.
func (s *supplied) computed(t TablePage) computed {
	s.mu.Lock()
	compute := s.byTable[t.ID]
	if compute == nil {
		compute = sync.OnceValue(func() (c computed) {
			if c.tables, c.err = t.Tables(); c.err == nil && t.Lead != nil {
				c.lead, c.err = t.Lead()
			}
			return c
		})
		if s.byTable == nil {
			s.byTable = map[string]func() computed{}
		}
		s.byTable[t.ID] = compute
	}
	s.mu.Unlock()
	return compute()
}

// supplyDigest covers everything that the computation puts into pages.
func (p *Publisher) supplyDigest() []byte {
	if p.supplied.digest != nil {
		return p.supplied.digest
	}
	s := p.o.Supply
	var all []any
	for _, w := range s.WorksheetPages {
		form, err := w.Form("./")
		if err != nil {
			continue // drawing the page reports it
		}
		all = append(all, w.ID, w.Title, w.Summary, form)
	}
	// The tables are most of the arithmetic of a build: all processors at work.
	parallel(context.Background(), s.TablePages, func(t TablePage) { p.supplied.computed(t) })
	for _, t := range s.TablePages {
		c := p.supplied.computed(t)
		if c.err != nil {
			continue
		}
		all = append(all, t.ID, t.Title, t.Summary, t.Group, t.Short, t.Note, c.lead, c.tables)
	}
	all = append(all, s.Bibliography, s.Checked)
	b, err := json.Marshal(all)
	if err != nil {
		panic("publish: the data of worksheets and tables must be plain: " + err.Error())
	}
	d := digestOf(b)
	p.supplied.digest = d[:]
	return p.supplied.digest
}
