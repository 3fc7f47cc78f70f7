package page

import (
	"cmp"
	"io/fs"
	"path"
	"slices"
	"strings"

	"changeout/build/internal/report"
)

// Files with a fixed place in the content tree.
const (
	ContentsPath = "contents.md"       // the reading order; data, not a page
	StagesPath   = "stages.md"         // the stages of the job; data, not a page
	HazardsPath  = "hazards.md"        // the table of hazards; also a page when it has a header
	GlossaryPath = "about/glossary.md" // a page, and the terms that other pages link to
	SearchPath   = "search.md"         // what people say for the words of the handbook; data, not a page
)

// A Layer is one tree of content. A later layer lies over an earlier one: the same path replaces, new paths add.
type Layer struct {
	FS   fs.FS
	Name string // put before paths in problems, for example content
}

// A Book is everything that was read.
type Book struct {
	Pages    []*Page  // all pages, sorted by path
	Order    []*Page  // pages in reading order
	Contents []*Entry // the reading order as a tree, for menus
	Stages   []Stage  // the stages of the job, in order
	Glossary *Glossary
	Hazards  *Hazards
	Sayings  []Saying // for the search, of all layers
	Assets   []Asset  // files that are not Markdown, sorted by path

	byPath map[string]*Page
	layers map[string]Layer // page path: where it was read
}

// An Asset is a file that goes into the site as it is, for example a figure beside a page.
type Asset struct {
	Path string
	FS   fs.FS
}

// Read gives the file's bytes.
func (a Asset) Read() ([]byte, error) { return fs.ReadFile(a.FS, a.Path) }

// Page finds a page by its path in the content tree; nil when there is none.
func (b *Book) Page(path string) *Page { return b.byPath[path] }

// Read reads the layers, the handbook first. It always gives a usable book; what is wrong is in the problems.
func Read(layers ...Layer) (*Book, []report.Problem) {
	r := reader{book: &Book{byPath: map[string]*Page{}, layers: map[string]Layer{}}}
	files := r.files(layers)
	for _, f := range files {
		r.read(f)
	}
	r.readSayings(layers)
	r.arrange()
	return r.book, r.problems
}

// file is a file of the merged tree.
type file struct {
	path    string
	layer   Layer
	company bool
}

func (f file) name() string { return path.Join(f.layer.Name, f.path) }

type reader struct {
	book     *Book
	problems []report.Problem
	contents *dataFile
	stages   *dataFile
}

// dataFile is a list that people write in Markdown and that is not a page.
type dataFile struct {
	name   string
	source []byte
}

// files lists the merged tree, sorted by path. Names that start with a dot or an underscore are left out.
func (r *reader) files(layers []Layer) []file {
	merged := map[string]file{}
	for i, layer := range layers {
		if layer.FS == nil {
			continue
		}
		err := fs.WalkDir(layer.FS, ".", func(p string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			hidden := p != "." && (strings.HasPrefix(d.Name(), ".") || strings.HasPrefix(d.Name(), "_"))
			switch {
			case d.IsDir() && hidden:
				return fs.SkipDir
			case !d.IsDir() && !hidden:
				merged[p] = file{p, layer, i > 0}
			}
			return nil
		})
		if err != nil {
			r.problems = append(r.problems, report.Problem{File: layer.Name, Text: "cannot read the folder: " + err.Error()})
		}
	}
	files := make([]file, 0, len(merged))
	for _, f := range merged {
		files = append(files, f)
	}
	slices.SortFunc(files, func(a, b file) int { return cmp.Compare(a.path, b.path) })
	return files
}

func (r *reader) read(f file) {
	if !strings.HasSuffix(f.path, ".md") {
		r.book.Assets = append(r.book.Assets, Asset{f.path, f.layer.FS})
		return
	}
	source, err := fs.ReadFile(f.layer.FS, f.path)
	if err != nil {
		r.problems = append(r.problems, report.Problem{File: f.name(), Text: "cannot read the file: " + err.Error()})
		return
	}
	switch f.path {
	case ContentsPath:
		r.contents = &dataFile{f.name(), source}
		return
	case SearchPath:
		return // every layer's counts, see readSayings
	case StagesPath:
		r.stages = &dataFile{f.name(), source}
		return
	case HazardsPath:
		r.book.Hazards = r.readHazards(f.name(), source)
		if !strings.HasPrefix(string(source), "---\n") {
			return
		}
	}
	p, problems := Parse(f.path, f.name(), source)
	p.Company = f.company
	r.problems = append(r.problems, problems...)
	r.book.Pages = append(r.book.Pages, p)
	r.book.byPath[p.Path] = p
	r.book.layers[p.Path] = f.layer
	if f.path == GlossaryPath {
		r.book.Glossary = r.readGlossary(p)
	}
}

// arrange builds what needs all pages: reading order, neighbours, stages.
func (r *reader) arrange() {
	b := r.book
	if b.Glossary == nil {
		b.Glossary = &Glossary{}
	}
	if b.Hazards == nil {
		b.Hazards = &Hazards{}
	}
	if r.contents != nil {
		r.readContents(r.contents)
	}
	r.addCompanyPages()
	if r.stages != nil {
		r.readStages(r.stages)
	}
	for i, p := range b.Order {
		if i > 0 {
			p.Prev = b.Order[i-1]
			p.Prev.Next = p
		}
	}
}

// Reread reads one page again after its file changed and puts the new page into the book.
// It gives nil when the change may reach further than the page itself (a new or vanished file, a list, the glossary);
// then the whole book must be read again. Menus show titles, so compare the new Title with the old one.
func (b *Book) Reread(treePath string) (*Page, []report.Problem) {
	old := b.byPath[treePath]
	if old == nil || treePath == GlossaryPath || treePath == HazardsPath {
		return nil, nil
	}
	source, err := fs.ReadFile(b.layers[treePath].FS, treePath)
	if err != nil {
		return nil, nil
	}
	p, problems := Parse(treePath, old.File, source)
	p.Company, p.Prev, p.Next = old.Company, old.Prev, old.Next
	if p.Prev != nil {
		p.Prev.Next = p
	}
	if p.Next != nil {
		p.Next.Prev = p
	}
	b.byPath[treePath] = p
	replace(b.Pages, old, p)
	replace(b.Order, old, p)
	replaceEntries(b.Contents, old, p)
	for i := range b.Stages {
		replace(b.Stages[i].Pages, old, p)
	}
	return p, problems
}

func replace(pages []*Page, old, p *Page) {
	if i := slices.Index(pages, old); i >= 0 {
		pages[i] = p
	}
}
