package markup

import "changeout/build/internal/report"

// A Result is one converted page. Lines count in the page's file.
type Result struct {
	HTML []byte // the body: what goes inside <main> below the title

	Headings   []Heading
	Steps      []Step
	Cautions   []Caution
	Waits      []Wait
	Writes     []Write
	Worksheets []Use   // worksheets embedded, in order
	Tables     []Use   // tables embedded, in order
	Drawn      bool    // the page holds what a script draws: assessment, job file, report, storage
	Stored     bool    // the page shows what is stored on the phone
	Terms      []Use   // glossary terms linked; ID is the term's id
	Sources    []Cited // numbered sources in the order of the list at the end
	Links      []Link
	Passages   []Passage
	IDs        []Use // every id attribute this package wrote, in order; ids inside embeds are not among them

	Problems []report.Problem
}

// A Heading is a section title.
type Heading struct {
	Level    int
	ID, Text string
	Line     int
}

// A Step is one item to tick.
type Step struct {
	Number   int
	ID, Text string // ID without the step- prefix; Text is plain
	Line     int
}

// A Caution is a signal-word panel.
type Caution struct {
	Hazard string // id in the table of hazards
	Word   string // DANGER, WARNING, CAUTION, NOTICE
	Line   int
}

// A Wait is a timer.
type Wait struct {
	ID, Title string
	Length    string // as shown: 2–5 min
	Seconds   int    // what the timer takes: the longer end
	Line      int
}

// A Write is a field to write down.
type Write struct {
	ID, Label, Unit string
	Line            int
}

// A Use is a reference to something by its id.
type Use struct {
	ID   string
	Line int
}

// A Cited source has a number on the page.
type Cited struct {
	Key, Label, URL, Kind string
	Number                int
	Line                  int // of the first citation
}

// A Link is a link or an image to somewhere in the site; links to other hosts are not listed.
type Link struct {
	Path     string // page or file in the content tree (stages/evacuate-and-hold.md), or "" for this page
	Fragment string // without #
	Image    bool
	Line     int
}
