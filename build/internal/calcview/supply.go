package calcview

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"
	"math"
	"strconv"
	"strings"

	"changeout/build/internal/markup"
	"changeout/build/internal/publish"
	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/published"
	"changeout/calc/source"
)

// NewSupply gathers everything that the computation gives to the site. site is
// the folder with the templates, checks the folder testdata/published.
func NewSupply(site, checks fs.FS) (publish.Supply, error) {
	templates, err := template.ParseFS(site, "components/*/*.tmpl")
	if err != nil {
		return publish.Supply{}, err
	}
	draw := func(name string, data any) ([]byte, error) {
		var b bytes.Buffer
		err := templates.ExecuteTemplate(&b, name, data)
		return b.Bytes(), err
	}
	s := publish.Supply{Sources: Sources{}, Bibliography: bibliography(), Declared: catalog.Lookup}
	s.Worksheets.HTML = func(id string, place markup.Place) ([]byte, error) {
		return draw("worksheet", NewForm(catalog.Lookup(id), 3, place.Base))
	}
	s.Worksheets.Takes = takes
	s.Worksheets.Field = stepField
	for _, w := range catalog.All() {
		s.Worksheets.IDs = append(s.Worksheets.IDs, w.ID)
		s.WorksheetPages = append(s.WorksheetPages, publish.WorksheetPage{ID: w.ID, Title: w.Title, Summary: w.Purpose,
			Form:   func(base string) (any, error) { return NewForm(w, 2, base), nil },
			Places: worksheetPlaces(w)})
		checked, err := checkedWorksheet(w, checks)
		if err != nil {
			return s, err
		}
		s.Checked = append(s.Checked, checked)
	}
	s.TablePages = tablePages()
	tables := map[string]func() ([]any, error){}
	for _, p := range s.TablePages {
		s.Tables.IDs = append(s.Tables.IDs, p.ID)
		tables[p.ID] = p.Tables
	}
	s.Tables.HTML = func(id string, place markup.Place) ([]byte, error) {
		parts, err := tables[id]()
		if err != nil {
			return nil, err
		}
		first := parts[0].(Table)
		first.Heading, first.Base = 3, place.Base+"tables/"
		return draw("table", first)
	}
	return s, nil
}

// tablePages lists the tables: the comparison, one page a refrigerant, and water.
func tablePages() []publish.TablePage {
	looks := newLooks()
	pages := []publish.TablePage{{ID: "compare", Title: "Refrigerants compared", Group: "Side by side",
		Summary: "Pressure at three temperatures, glide, class, GWP, charging phase and oil of every refrigerant here.",
		Tables:  func() ([]any, error) { return compareTables(looks), nil }}}
	for _, shelf := range shelves {
		for _, l := range looks {
			if l.shelf() == shelf {
				pages = append(pages, l.page())
			}
		}
	}
	return append(pages, publish.TablePage{ID: "water-boiling-point", Title: "Boiling point of water in a vacuum",
		Summary: "What a vacuum reading means for the water that is left.", Group: "Vacuum",
		Tables: func() ([]any, error) { return waterTable(), nil }, Places: waterPlaces})
}

// page is the page of one refrigerant. The less common ones are packed in the
// single file.
func (l *look) page() publish.TablePage {
	return publish.TablePage{ID: tableID(l.r.Name), Title: l.r.Name + " pressure and temperature", Summary: l.summary(),
		Group: l.shelf(), Short: l.r.Name, Note: l.r.Class, Packed: l.shelf() != shelves[0],
		Lead:   func() (any, error) { return newFacts(l), nil },
		Tables: func() ([]any, error) { return pressureTables(l), nil }}
}

func (l *look) summary() string {
	if l.hasGlide {
		return l.what() + ". Bubble and dew differ."
	}
	return l.what() + ". One pressure for each temperature."
}

// checkedWorksheet holds a worksheet against its published values and lists
// them for the page that shows how it was checked.
func checkedWorksheet(w *calc.Worksheet, checks fs.FS) (publish.CheckedWorksheet, error) {
	out := publish.CheckedWorksheet{ID: w.ID, Title: w.Title}
	cases, err := published.Load(checks, w.ID)
	if err != nil {
		return out, err
	}
	passed := 0
	for _, c := range cases {
		r := published.Check(w, c, calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: c.Inputs}))
		row := publish.CheckedRow{Inputs: inputsText(w, c), Quantity: quantityText(w, c), Expected: minus(strings.TrimSpace(c.Expected + " " + unitLabel(w, c))), Got: minus(figure(r.Got, c.Tolerance, unitLabel(w, c))),
			Difference: minus(figure(r.Difference, c.Tolerance, "")), Read: c.Read, Source: citeHTML(c)}
		if c.Tolerance > 0 {
			row.Tolerance = "±" + fmt.Sprintf("%g", c.Tolerance)
		}
		if r.OK {
			passed++
		} else {
			row.Got += " (differs)"
		}
		out.Rows = append(out.Rows, row)
	}
	out.Intro = fmt.Sprintf("%d of %d published values were met when this handbook was built.", passed, len(cases))
	return out, nil
}

// figure writes a number to two figures below the tolerance it is held to, with
// its unit; anything else stays as it is.
func figure(text string, tolerance float64, label string) string {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || tolerance <= 0 {
		return text
	}
	places := max(0, 2-int(math.Floor(math.Log10(tolerance))))
	shown := strconv.FormatFloat(v, 'f', places, 64)
	if v != 0 && strings.Trim(shown, "-0.") == "" {
		shown = "under " + strconv.FormatFloat(math.Pow10(-places), 'f', places, 64)
	}
	return strings.TrimSpace(shown + " " + label)
}

// minus writes the sign of a number as the rest of the handbook does.
func minus(s string) string {
	if rest, ok := strings.CutPrefix(s, "-"); ok {
		return "−" + rest
	}
	return s
}

func inputsText(w *calc.Worksheet, c published.Case) string {
	var parts []string
	for _, f := range c.Inputs {
		if in := w.Input(f.Input); in != nil {
			parts = append(parts, in.Label+": "+exampleText(in, f))
		}
	}
	return strings.Join(parts, "; ")
}

func quantityText(w *calc.Worksheet, c published.Case) string {
	switch c.Output {
	case "verdict":
		return "Verdict"
	case "problem":
		return "Refused, with the reason"
	}
	if o := w.Output(c.Output); o != nil {
		return o.Label
	}
	return c.Output
}

func unitLabel(w *calc.Worksheet, c published.Case) string {
	if o := w.Output(c.Output); o != nil {
		if u := o.Quantity.Unit(c.Unit); u != nil {
			return u.Label
		}
	}
	return c.Unit
}

func citeHTML(c published.Case) template.HTML {
	text := template.HTMLEscapeString(c.Source)
	if s, ok := source.Lookup(c.Source); ok {
		text = template.HTMLEscapeString(s.Author + ". " + s.Title)
	}
	if c.Locator != "" {
		text += ", " + template.HTMLEscapeString(c.Locator)
	}
	return template.HTML(text)
}
