package publish

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/base64"
	"encoding/json"
	"html/template"
	"os"
	"path/filepath"
	"slices"

	"changeout/build/internal/report"
	"changeout/build/internal/searchindex"
	"changeout/build/internal/typeset"
)

// writeSingle writes the whole handbook as one file that opens from a phone's
// storage: style, script, module and pages are inside it.
//
// The module is the largest part. It is stored gzipped and then as base64
// (0.8 MB instead of 3.3 MB for 2.5 MB); browsers can unpack gzip themselves
// (DecompressionStream) but not brotli. Where that is missing, the script says
// so in a sentence, and the printed examples and the common tables still read.
// The less common tables, worksheets that stand on a procedure page too, the licences, the checks
// and the tables of the cause model are packed, see packPages.
//
// Inside the output folder the file is part of the site; elsewhere it is
// written beside its place and moved there in one step.
func (p *Publisher) writeSingle(ctx context.Context, e *edition, out *output) (int64, []report.Problem) {
	b, problems := p.single(ctx, e)
	if len(problems) > 0 {
		return 0, problems
	}
	if url := p.singleURL(); url != "" {
		if _, err := out.put(url, b); err != nil {
			return 0, []report.Problem{writeProblem(err)}
		}
		return int64(len(b)), nil
	}
	if err := replaceFile(p.o.Single, b); err != nil {
		return 0, []report.Problem{{File: filepath.ToSlash(p.o.Single), Text: "the single file cannot be written: " + err.Error(), Hint: "choose another with -single"}}
	}
	return int64(len(b)), nil
}

// replaceFile writes a file in one step: readers see the old or the new one.
func replaceFile(name string, b []byte) error {
	dir := filepath.Dir(name)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, stagingPrefix)
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	_, err = f.Write(b)
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err == nil {
		err = os.Chmod(f.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	return err
}

// single makes the bytes.
func (p *Publisher) single(ctx context.Context, e *edition) ([]byte, []report.Problem) {
	units := slices.DeleteFunc(slices.Clone(e.units), func(u *unit) bool { return u.name() == notFoundFile })
	// The front page first: without script the file reads from top to bottom.
	slices.SortStableFunc(units, func(a, b *unit) int { return rank(a) - rank(b) })
	r := &rewriter{pages: map[string]bool{}, files: map[string][]byte{}}
	for _, u := range units {
		r.pages[u.frame.ID] = true
	}
	for _, a := range e.content.book.Assets {
		if b, err := a.Read(); err == nil {
			r.files[a.Path] = b
		}
	}
	for name, b := range e.shelf.static {
		r.files[name] = b
	}

	pages := make([]SinglePage, len(units))
	numbers := make([]int, len(units))
	for i := range numbers {
		numbers[i] = i
	}
	var list report.List
	parallel(ctx, numbers, func(i int) {
		u := units[i]
		data, err := u.data(u.frame, e.content.convert(u.page))
		var b bytes.Buffer
		if err == nil {
			err = e.shelf.templates[u.layout].ExecuteTemplate(&b, "main", data)
		}
		var main []byte
		if err == nil {
			main, err = r.rewrite(u.frame.ID, typeset.Page(b.Bytes()))
		}
		if err != nil {
			list.Add(executeProblem(u.frame.ID, err))
			return
		}
		pages[i] = SinglePage{ID: u.frame.ID, Kind: u.frame.Kind, Title: u.frame.Title, Packed: u.packed, Main: trusted(main)}
	})
	if ctx.Err() != nil {
		list.Add(report.Problem{Text: "the build was stopped"})
	}
	if !list.Empty() {
		return nil, list.Sorted()
	}

	packed, err := packPages(units, pages)
	if err != nil {
		return nil, []report.Problem{executeProblem("of the single file", err)}
	}

	f := e.frame
	f.Kind, f.Base, f.Title = "front", "", SiteName
	f.Summary = "The whole handbook in one file."
	var b bytes.Buffer
	err = e.shelf.templates["single"].ExecuteTemplate(&b, "single", SingleData{
		Frame:  f,
		CSS:    template.CSS(string(e.shelf.css) + string(e.shelf.print) + string(e.shelf.drawn)),
		Script: template.JS(string(e.shelf.js) + string(e.shelf.sheets) + string(e.shelf.job) + string(e.shelf.search) + string(e.shelf.assess) + string(e.shelf.stored)),
		Module: trusted([]byte(pack(e.shelf.module.Bytes))),
		Search: trusted(searchindex.Join(nil, e.searched)),
		Causes: trusted(e.content.causes.data()),
		Packed: packed,
		Pages:  pages,
	})
	if err != nil {
		return nil, []report.Problem{executeProblem("of the single file", err)}
	}
	return b.Bytes(), nil
}

// rank puts the front page first, then the lists, then everything in order.
func rank(u *unit) int {
	switch u.frame.ID {
	case frontID:
		return 0
	case contentsID:
		return 1
	}
	return 2
}

// pack is base64 of gzip at its best level. gzip's header holds no time, so
// the same bytes give the same text.
func pack(data []byte) string {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		panic(err) // the level is a constant
	}
	w.Write(data)
	w.Close()
	return base64.StdEncoding.EncodeToString(b.Bytes())
}

// packPages moves the HTML of packed pages into one compressed block and leaves
// the title and the summary in their place. Together they pack better than one
// by one: the tables are much alike. Pages that people open most stay as they
// are, so that they read without script and in a browser that cannot unpack.
func packPages(units []*unit, pages []SinglePage) (template.HTML, error) {
	mains := map[string]string{}
	for i, p := range pages {
		if p.Packed {
			mains[p.ID] = string(p.Main)
			f := units[i].frame
			pages[i].Main = template.HTML("<h1>" + template.HTMLEscapeString(f.Title) + "</h1>\n<p>" + template.HTMLEscapeString(f.Summary) + "</p>")
		}
	}
	if len(mains) == 0 {
		return "", nil
	}
	var b bytes.Buffer
	to := json.NewEncoder(&b) // a map is written in the order of its keys
	to.SetEscapeHTML(false)
	err := to.Encode(mains)
	return trusted([]byte(pack(b.Bytes()))), err
}
