// Package source is the bibliography of the handbook.
//
// Every number on a page, in a table or in a worksheet names a key of this list.
// One list serves the pages, the worksheets and the tests, so a citation cannot
// drift from its source. A check of the build fails on a key that is not here.
//
// The lists are plain composite literals without maps, so that the linker drops
// them from a program that only passes keys around.
package source

// Source is one entry: where a number comes from, and how far it was read.
// No field is empty; where something is not known, the field says so in words.
type Source struct {
	Key     string // lower-case words joined by hyphens, unique
	Kind    string // one of the kind constants
	Title   string // for trade pages a description, for papers and standards the title
	Author  string // person, body or publication
	Edition string // edition, journal and year, or date
	Locator string // the part that was read or is meant
	Address string // where to look; withheld where it carries a company name
	Read    Read   // how the content reached this handbook
}

// Read says how far a source was read. It is shown with every citation,
// because a number seen in a restatement deserves less trust than one in print.
type Read string

// The four ways a value reached the handbook.
const (
	InPrint   Read = "in print"              // the document itself was read, at least in the part named by the locator
	Secondary Read = "in a secondary source" // read in a restatement, an abstract, a quotation or a library
	Memory    Read = "from memory"           // recalled and not confirmed; verify before use
	Practice  Read = "practice"              // no published source stands behind it
)

// The kinds of source.
const (
	Regulation     = "regulation"
	Standard       = "standard"
	Paper          = "paper"
	Handbook       = "handbook"
	Textbook       = "textbook"
	Library        = "library"
	Manual         = "manual"
	Article        = "article"
	CommonPractice = "practice"
)

// lists returns the lists in the order of the printed bibliography.
func lists() [][]Source {
	return [][]Source{regulations, standards, papers, handbooks, libraries, manuals, trade, special}
}

// All returns every source in the order of the printed bibliography.
// The slice is new on each call; the caller may sort it.
func All() []Source {
	var all []Source
	for _, list := range lists() {
		all = append(all, list...)
	}
	return all
}

// Lookup returns the source with this key, and whether there is one.
// A few hundred short keys are compared one by one: a map would be built at
// start-up on every phone, whether or not a page asks.
func Lookup(key string) (Source, bool) {
	for _, list := range lists() {
		for i := range list {
			if list[i].Key == key {
				return list[i], true
			}
		}
	}
	return Source{}, false
}
