package publish

import (
	"html/template"

	"changeout/build/internal/markup"
	"changeout/calc"
)

// Supply is what the computation gives to the site. Package publish knows no
// worksheet: it frames what stands here, in this order.
type Supply struct {
	Sources    markup.Sources // resolves citations in content
	Worksheets markup.Embeds  // draws a worksheet into a content page
	Tables     markup.Embeds  // draws a table into a content page

	WorksheetPages []WorksheetPage
	TablePages     []TablePage
	Declared       func(id string) *calc.Worksheet // what a worksheet declares, for the cause model; nil for an unknown id
	Bibliography   []SourceGroup                   // the page about/sources.html
	Checked        []CheckedWorksheet              // the page about/checked.html
}

// A WorksheetPage is one worksheet on its own page, worksheets/ID.html.
type WorksheetPage struct {
	ID, Title, Summary string
	// Form gives the data that components/worksheet/worksheet.tmpl draws, for a
	// page whose way to the site's root is base. It must be deterministic, and
	// encoding/json must be able to write it (the version is made from that).
	Form func(base string) (any, error)
	// Places gives what a search can find on the page; nil for nothing but the title.
	Places func() []markup.Passage
}

// A TablePage is one or more computed tables on a page of their own,
// tables/ID.html.
type TablePage struct {
	ID, Title, Summary string
	Group              string // tables with the same group are listed together, such as "Vacuum"
	// Short is the name in a list of many, such as "R-410A", and Note a word or
	// two beside it. A group whose tables all have short names is listed as a grid.
	Short, Note string
	// Packed pages are stored compressed in the single file.
	Packed bool
	// Lead gives the data that components/facts/facts.tmpl draws above the
	// tables; nil for none.
	Lead func() (any, error)
	// Tables gives the data that components/table/table.tmpl draws.
	Tables func() ([]any, error)
	// Places gives what a search can find on the page; nil for nothing but the title.
	Places func() []markup.Passage
}

// A SourceGroup is a heading and entries of the bibliography.
type SourceGroup struct {
	Title string
	Intro string
	Items []SourceEntry
}

// A SourceEntry is one source in full.
type SourceEntry struct {
	Key  string
	Text template.HTML // author, title, edition, locator, link
	Read string        // how it was read, in words for people; "" says nothing
}

// A CheckedWorksheet lists the published values one worksheet was held
// against.
type CheckedWorksheet struct {
	ID, Title string
	Intro     string
	Rows      []CheckedRow
}

// A CheckedRow is one published value beside the computed one. All parts are
// text as people read it.
type CheckedRow struct {
	Inputs, Quantity, Expected, Got, Difference, Tolerance string
	Source                                                 template.HTML
	Read                                                   string // in print, secondary, from memory
}
