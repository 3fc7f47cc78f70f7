package searchindex_test

import (
	"bytes"
	"os"
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

// TestSize holds what the pages put into the index. The whole, with worksheets
// and tables, is measured by "make bench" beside its budget of 60 kB; they add
// about a fifth. The limit leaves room for the handbook to grow.
func TestSize(t *testing.T) {
	_, _, file := handbook(t)
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, brotli.BestCompression)
	w.Write(file)
	w.Close()
	t.Logf("index of the pages: %d bytes, %d brotli", len(file), b.Len())
	if limit := 60000; !(b.Len() < limit) {
		t.Errorf("got %d bytes brotli, want less than %d: index fewer kinds of passages", b.Len(), limit)
	}
}
