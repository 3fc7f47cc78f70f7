package publish

import (
	"bytes"
	"html/template"
	"iter"
	"maps"
	"slices"
	"strings"
	"sync"

	"changeout/build/internal/licences"
	"changeout/build/internal/markup"
)

// about makes the three pages that give an account of the handbook: its
// sources, how its worksheets were checked, and whose software is in it.
func (m *maker) about() {
	s := m.p.o.Supply
	crumb := &Link{Title: "Contents", URL: "contents.html"}
	m.aboutPage(sourcesID, "Sources", "Every source of a number in this handbook, and how it was read.", crumb,
		"sources", m.sourceGroups())
	m.aboutPage(checkedID, "How each worksheet was checked", "Published values beside what the worksheets gave when this handbook was built.", crumb,
		"checked", s.Checked)
	m.aboutPage(licencesID, "Licences", "The software in this handbook and its licences.", crumb,
		"licences", licenceGroups(m.e.shelf.licences))
}

// aboutPage adds a page in the page layout: opening words, then a made part.
func (m *maker) aboutPage(id, title, summary string, crumb *Link, name string, data any) {
	u := m.unit(id, "reference", "page", title, summary, crumb, true)
	u.packed = id != sourcesID // licences and checks are long, and nobody needs them on a roof
	u.data = func(f Frame, r *markup.Result) (any, error) {
		var b bytes.Buffer
		b.WriteString(string(body(r)))
		err := accounts().ExecuteTemplate(&b, name, account{f.Base, data})
		return PageData{Frame: f, Body: trusted(b.Bytes())}, err
	}
	m.depends(u, data)
}

// account is what a part of an account page is drawn from.
type account struct {
	Base string
	Data any
}

// sourceGroup is a group of the bibliography with the pages that cite it.
type sourceGroup struct {
	Title, Intro string
	Items        []sourceItem
}

type sourceItem struct {
	SourceEntry
	CitedIn []Link
}

func (m *maker) sourceGroups() []sourceGroup {
	var groups []sourceGroup
	for _, g := range m.p.o.Supply.Bibliography {
		group := sourceGroup{Title: g.Title, Intro: g.Intro}
		for _, entry := range g.Items {
			group.Items = append(group.Items, sourceItem{entry, m.citedIn[entry.Key]})
		}
		groups = append(groups, group)
	}
	return groups
}

// licenceGroup separates what is on the phone as code from what made pages.
type licenceGroup struct {
	ID, Title, Intro string
	Items            []licences.Item
}

func licenceGroups(items []licences.Item) []licenceGroup {
	groups := []licenceGroup{
		{ID: "in-the-module", Title: "In the module that phones load", Intro: "This list was taken from the module when it was compiled."},
		{ID: "made-the-pages", Title: "Libraries that made the pages", Intro: "These ran when the handbook was built."},
	}
	for _, i := range items {
		at := 1
		if i.Linked {
			at = 0
		}
		groups[at].Items = append(groups[at].Items, i)
	}
	return slices.DeleteFunc(groups, func(g licenceGroup) bool { return len(g.Items) == 0 })
}

// accounts are the templates of these pages. They use the classes of prose and
// tables only, so the site needs no style of their own.
var accounts = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{"anchor": anchor}).Parse(`
{{- define "sources"}}{{$base := .Base}}
{{- range .Data}}
<section>
<h2 id="{{anchor .Title}}">{{.Title}}</h2>
{{with .Intro}}<p>{{.}}</p>{{end}}
<ul class="co-sources__list">
{{- range .Items}}
<li id="source-{{.Key}}">{{.Text}}{{with .Read}} <span class="co-sources__read">{{.}}</span>{{end}}
{{- if .CitedIn}}<br>Cited in: {{range $i, $l := .CitedIn}}{{if $i}}, {{end}}<a href="{{$base}}{{.URL}}">{{.Title}}</a>{{end}}.{{end}}</li>
{{- end}}
</ul>
</section>
{{- end}}{{end}}

{{define "checked"}}{{$base := .Base}}
{{- range .Data}}
<h2 id="{{.ID}}">{{.Title}}</h2>
{{with .Intro}}<p>{{.}}</p>{{end}}
<p><a href="{{$base}}worksheets/{{.ID}}.html">Open this worksheet</a></p>
{{- if .Rows}}
<section class="co-scroll co-scroll--broad" tabindex="0" aria-label="Checks of {{.Title}}"><table class="co-table co-table--words" role="table">
<thead role="rowgroup"><tr role="row"><th scope="col" role="columnheader">Given<th scope="col" role="columnheader">Value<th scope="col" role="columnheader">Published<th scope="col" role="columnheader">This handbook<th scope="col" role="columnheader">Difference<th scope="col" role="columnheader">Allowed<th scope="col" role="columnheader">Source<th scope="col" role="columnheader">Read</thead>
<tbody role="rowgroup">
{{- range .Rows}}
<tr role="row"><th scope="row" role="rowheader" data-label="Given">{{.Inputs}}<td role="cell" data-label="Value">{{.Quantity}}<td role="cell" data-label="Published">{{.Expected}}<td role="cell" data-label="This handbook">{{.Got}}<td role="cell" data-label="Difference">{{.Difference}}<td role="cell" data-label="Allowed">{{.Tolerance}}<td role="cell" data-label="Source">{{.Source}}<td role="cell" data-label="Read">{{.Read}}
{{- end}}
</tbody></table></section>
{{- else}}
<p>No published value was found for this worksheet.</p>
{{- end}}
{{- end}}{{end}}

{{define "licences"}}
{{- range .Data}}
<section>
<h2 id="{{.ID}}">{{.Title}}</h2>
<p>{{.Intro}}</p>
{{- range .Items}}
<h3 id="{{anchor .Name}}">{{.Name}} {{.Version}}</h3>
<p>{{.Role}}</p>
{{- range .Texts}}
<details><summary>{{.File}}</summary>
<pre class="co-licence" tabindex="0">{{.Body}}</pre></details>
{{- end}}{{end}}
</section>
{{- end}}{{end}}`))
})

// anchor makes an id out of a title.
func anchor(title string) string {
	return strings.Trim(strings.Map(func(r rune) rune {
		switch {
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		}
		return '-'
	}, title), "-")
}

// sorted goes through a map in the order of its keys.
func sorted[V any](m map[string]V) iter.Seq2[string, V] {
	return func(yield func(string, V) bool) {
		for _, k := range slices.Sorted(maps.Keys(m)) {
			if !yield(k, m[k]) {
				return
			}
		}
	}
}
