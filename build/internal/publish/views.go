package publish

import "html/template"

// The data that the templates in site/ draw. The comment at the head of each
// template says the same; a changed field changes there too.

// Frame is what every page has around it.
type Frame struct {
	Base           string // way from the page to the site's root, never empty: "./", "../"
	ID             string // page id without .html
	Kind           string // front, procedure, reference, worksheet, list, table
	Title, Summary string
	SiteName       string
	Company        string
	Version        string
	Date           string
	Updated        string // the page's own date, or ""
	Assets         Assets
	Crumb          *Link // where the page belongs, or nil
	Prev, Next     *Link // reading order, or nil
	Sheets         bool  // the page holds a worksheet or fields to write down, and needs their script
	Drawn          bool  // the page holds what a script draws, and needs its style
	Leads          bool  // the page has steps, and the bar at the thumb leads to the next
	Stored         bool  // the page shows what is stored, and needs its script
}

// Link is a title and an address from the site's root.
type Link struct {
	Title, URL string
	Stage      int
}

// Assets are addresses from the site's root.
type Assets struct {
	CSS, Script, Module, Search, Worker, Manifest, Icon string
	Sum                                                 string // digest of the module, for a page without a worker to compare
	Drawn                                               string // the style of pages that a script draws
	Print                                               string // the style of paper
	Worksheets                                          string // the script that only pages with a worksheet load
	Early                                               string // what every page runs before anything is drawn
	Job                                                 string // the script of the job file, which the others load when it is needed
	Searching                                           string // the script that the first search loads
	Assessing                                           string // the script of the page that assesses
	Calculator                                          string // the worker that runs the module
	Stored                                              string // the script of the page that shows what is stored
	Touch                                               string // PNG for home screens that take no SVG
	Single                                              string
}

// PageData is for layouts/page.tmpl.
type PageData struct {
	Frame
	Stage      int // 0 for none
	StageTitle string
	Body       template.HTML
	Steps      int
	Parts      []Part
}

// Part is a section of a long page: its title, its address on the page, and the steps in it ("steps 9 to 20"), or "".
type Part struct{ Title, ID, Steps string }

// FrontData is for layouts/front.tmpl.
type FrontData struct {
	Frame
	Stages  []Stage
	Shelves []ListGroup
}

// Stage is one of the ten parts of the job.
type Stage struct {
	Number         int
	Title, Summary string
	Pages          []ListItem
}

// ListData is for layouts/list.tmpl.
type ListData struct {
	Frame
	Intro  string
	Find   bool
	Groups []ListGroup
}

// ListGroup is a heading and links.
type ListGroup struct {
	Title, Intro string
	Grid         bool // short titles, drawn side by side
	Items        []ListItem
}

// ListItem is one link with a line of text.
type ListItem struct {
	Title, URL, Summary, Note string
	Stage                     int
}

// WorksheetData is for layouts/worksheet.tmpl.
type WorksheetData struct {
	Frame
	Form   any
	UsedIn []Link
}

// TableData is for layouts/table.tmpl.
type TableData struct {
	Frame
	Lead   any // facts above the tables, or nil
	Tables []any
	Body   template.HTML
}

// SingleData is for layouts/single.tmpl.
type SingleData struct {
	Frame
	CSS    template.CSS
	Script template.JS
	Module template.HTML // base64 of the gzipped module
	Search template.HTML // the search index as its file holds it
	Causes template.HTML // the cause model as its data file holds it, or ""
	Packed template.HTML // base64 of gzipped JSON: page id to HTML
	Pages  []SinglePage
}

// SinglePage is one page as a section of the single file.
type SinglePage struct {
	ID, Kind, Title string
	Packed          bool // Main only says what the page is; its HTML is in SingleData.Packed
	Main            template.HTML
}
