package searchindex_test

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/searchindex"
)

// handbook converts the real pages and writes their index, without worksheets
// and tables, which the computation supplies.
func handbook(t *testing.T) (*page.Book, map[string]*markup.Result, []byte) {
	t.Helper()
	book, problems := page.Read(page.Layer{FS: os.DirFS("../../../content"), Name: "content"})
	for _, p := range problems {
		t.Log(p) // the check of the content judges them
	}
	converter := markup.New(markup.Env{Glossary: book.Glossary, Hazards: book.Hazards})
	results := map[string]*markup.Result{}
	var parts [][]byte
	for _, p := range book.Pages {
		r := converter.Convert(p)
		results[p.URL] = r
		parts = append(parts, searchindex.FromContent(p, r).Lines())
	}
	return book, results, searchindex.Join(searchindex.Head(book.Sayings), parts)
}

// TestEveryStepIsFound: each step stands in the index at its own place with
// all its words, and the place is on the page.
func TestEveryStepIsFound(t *testing.T) {
	_, results, file := handbook(t)
	x, err := searchindex.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	steps := 0
	for _, p := range x.Pages {
		r := results[p.URL]
		words := map[string]string{}
		for _, place := range p.Places {
			if place.ID != "" && !bytes.Contains(r.HTML, []byte(`id="`+place.ID+`"`)) {
				t.Errorf("%s: the index leads to #%s, which is not on the page", p.URL, place.ID)
			}
			if place.Kind == markup.PassageStep {
				words[place.ID] = strings.Join(searchindex.Words(place.Text), " ")
			}
		}
		for _, s := range r.Steps {
			steps++
			if got, want := words["step-"+s.ID], strings.Join(searchindex.Words(s.Text), " "); got != want {
				t.Errorf("%s#step-%s: got words %q, want %q", p.URL, s.ID, got, want)
			}
		}
		delete(results, p.URL)
	}
	for url := range results {
		t.Errorf("the index has no page %s", url)
	}
	if steps < 400 {
		t.Errorf("got %d steps: the handbook has more, and this test would prove little", steps)
	}
}

// TestSayings: no phrase stands alone, and the words of the trade that people
// type most lead somewhere.
func TestSayings(t *testing.T) {
	book, _, _ := handbook(t)
	means := map[string]string{}
	for _, s := range book.Sayings {
		for _, said := range s.Said {
			means[said] = strings.Join(s.Means, "; ")
		}
	}
	for said, want := range map[string]string{"bang": "slugging", "meg test": "insulation", "eev": "electronic expansion valve", "ester": "poe", "n2": "nitrogen", "txv": "thermostatic valve", "jug": "cylinder"} {
		if !strings.Contains(means[said], want) {
			t.Errorf("%q means %q, want %q in it", said, means[said], want)
		}
	}
	if len(book.Sayings) < 60 {
		t.Errorf("got %d rows of search.md, want at least 60", len(book.Sayings))
	}
}

// TestStageNames: a stage has one name. The front page and the list of worksheets take it from stages.md, the page and
// the search from its own header; the contents write it out for whoever reads the source.
func TestStageNames(t *testing.T) {
	book, _, _ := handbook(t)
	for _, s := range book.Stages {
		if len(s.Pages) == 0 || s.Pages[0].Title != s.Title {
			t.Errorf("stage %d is “%s” in stages.md, and its first page is %q", s.Number, s.Title, titles(s.Pages))
		}
	}
	var named func([]*page.Entry)
	named = func(list []*page.Entry) {
		for _, e := range list {
			if e.Page != nil && e.Page.Stage > 0 && e.Title != e.Page.Title {
				t.Errorf("contents.md says “%s”, the page says “%s”", e.Title, e.Page.Title)
			}
			named(e.Children)
		}
	}
	named(book.Contents)
}

// TestGroupedAsWorksheetsDo: from 10\u202f000 on a narrow space groups the digits, as unit.Fixedf writes them; a comma
// could be taken for a decimal sign.
func TestGroupedAsWorksheetsDo(t *testing.T) {
	_, _, file := handbook(t)
	for _, found := range regexp.MustCompile(`.{0,30}\b\d{1,3}(,\d{3})+\b.{0,20}`).FindAll(file, -1) {
		t.Errorf("%q: write 1500, and 17\u202f545 with a narrow no-break space (U+202F)", found)
	}
}

func titles(pages []*page.Page) (list []string) {
	for _, p := range pages {
		list = append(list, p.Title)
	}
	return list
}

// TestSize holds what the pages put into the index. The whole, with worksheets
// and tables, is measured by "make bench" beside its budget of 60 kB; they add
// about 8 kB.
func TestSize(t *testing.T) {
	_, _, file := handbook(t)
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, brotli.BestCompression)
	w.Write(file)
	w.Close()
	t.Logf("index of the pages: %d bytes, %d brotli", len(file), b.Len())
	if limit := 52000; !(b.Len() < limit) {
		t.Errorf("got %d bytes brotli, want less than %d: index fewer kinds of passages", b.Len(), limit)
	}
}
