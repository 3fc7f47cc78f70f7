package publish

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"changeout/build/internal/searchindex"
)

// cubes is a table page with all there is: facts above it, a short name, packed.
var cubes = TablePage{ID: "cubes", Title: "Cubes", Summary: "Cubes of <numbers>.", Group: "Rare numbers", Short: "x³", Note: "3", Packed: true,
	Lead:   func() (any, error) { return "Known since long.", nil },
	Tables: func() ([]any, error) { return []any{[]int{1, 8, 27}}, nil }}

// TestSingleFile reads the file as a browser does and follows everything that
// points somewhere.
func TestSingleFile(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	o.Single = filepath.Join(t.TempDir(), "handbook.html")
	o.Supply.TablePages = append(o.Supply.TablePages, cubes)
	s := mustBuild(t, New(o))
	text := read(t, filepath.Dir(o.Single), "handbook.html")
	if s.Single != int64(len(text)) {
		t.Errorf("got size %d in the summary, want %d", s.Single, len(text))
	}
	if strings.Contains(read(t, root, "public/worker.js"), "handbook.html") {
		t.Errorf("the single file is in the offline list")
	}
	doc, err := html.Parse(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]bool{}
	var order []string
	blocks := map[string]string{}
	for n := range doc.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		if id := attribute(n, "id"); id != "" {
			if ids[id] {
				t.Errorf("the id %s stands twice", id)
			}
			ids[id] = true
			if n.Data == "section" {
				order = append(order, id)
			}
			if n.Data == "script" && n.FirstChild != nil {
				blocks[id] = n.FirstChild.Data
			}
		}
	}
	if got := strings.Join(order, " "); !strings.HasPrefix(got, "index contents ") || !strings.Contains(got, "stages/hold") || !strings.Contains(got, "worksheets/twice") || len(order) != 13 {
		t.Errorf("got sections %s, want all 13 pages, the front page first", got)
	}
	// What is packed is part of the document too.
	docs := []*html.Node{doc}
	var mains map[string]string
	if err := json.Unmarshal(unpack(t, blocks["co-packed"]), &mains); err != nil {
		t.Fatal(err)
	}
	for page, main := range mains {
		if !ids[page] {
			t.Errorf("the packed page %s has no section", page)
		}
		part, err := html.Parse(strings.NewReader(main))
		if err != nil {
			t.Fatal(err)
		}
		for n := range part.Descendants() {
			if id := attribute(n, "id"); id != "" {
				if ids[id] || !strings.HasPrefix(id, page+"/") {
					t.Errorf("packed page %s: the id %s stands twice or does not begin with the page's", page, id)
				}
				ids[id] = true
			}
		}
		docs = append(docs, part)
	}
	links := map[string]bool{}
	for _, doc := range docs {
		for n := range doc.Descendants() {
			checkAddresses(t, n, ids, links)
		}
	}
	for _, want := range []string{"#stages/hold", "#about/limits/when", "#about/glossary/term-micron", "#stages/hold/source-book", "#worksheets/twice"} {
		if !links[want] {
			t.Errorf("no link to %s", want)
		}
	}
	// A worksheet that stands on a procedure page too is packed.
	if !strings.Contains(mains["worksheets/twice"], `aria-describedby="worksheets/twice/twice-hint worksheets/twice/twice-error"`) {
		t.Errorf("a list of ids was not rewritten")
	}

	if module := unpack(t, blocks["co-module"]); !strings.HasSuffix(string(module), "pretended") {
		t.Errorf("got module %q, want the one that was built", module)
	}

	// A packed page keeps its title and summary in sight; its HTML is in the
	// block, with addresses that work inside the file.
	if !strings.Contains(text, `<section id="tables/cubes" data-page="tables/cubes" data-packed><h1>Cubes</h1>`+"\n"+`<p>Cubes of &lt;numbers&gt;.</p></section>`) {
		t.Errorf("the packed page has no title and summary of its own")
	}
	if !strings.Contains(text, "<h1>Squares</h1>") || !strings.Contains(text, "<td>9") || strings.Contains(text, "<td>27") {
		t.Errorf("want the squares readable without script, and the cubes packed")
	}
	main := mains["tables/cubes"]
	for _, want := range []string{"<h1>Cubes</h1>", "27", `id="tables/cubes/lead"`, `href="#tables/cubes/lead"`, `href="#about/limits/when"`} {
		if !strings.Contains(main, want) {
			t.Errorf("packed page %q: want %s in it", main, want)
		}
	}
	if !strings.Contains(mains["about/licences"], "Go&#39;s &lt;terms&gt;") || strings.Contains(text, "&lt;terms&gt;") || len(mains) != 4 {
		t.Errorf("%d packed pages, want 4: cubes, licences, checks, worksheet. Licences: %s", len(mains), mains["about/licences"])
	}

	index, err := searchindex.Read([]byte(blocks["co-search"]))
	if err != nil || len(index.Pages) < 5 {
		t.Fatalf("got %d pages in the search index and %v", len(index.Pages), err)
	}
	for _, e := range index.Pages {
		page := strings.TrimSuffix(e.URL, ".html")
		if !ids[page] {
			t.Errorf("the search index names %s, which is no page of the file", e.URL)
		}
		for _, place := range e.Places {
			if place.ID != "" && !ids[page+"/"+place.ID] {
				t.Errorf("the search index names %s/%s, which is not in the file", e.URL, place.ID)
			}
		}
	}
}

// checkAddresses: nothing is loaded from outside, and every link inside the
// file leads to an id.
func checkAddresses(t *testing.T, n *html.Node, ids, links map[string]bool) {
	t.Helper()
	if n.Type != html.ElementNode {
		return
	}
	for _, a := range n.Attr {
		switch a.Key {
		case "src", "srcset", "data", "poster", "action", "background":
			if !strings.HasPrefix(a.Val, "data:") {
				t.Errorf("<%s %s=%q> loads something from outside the file", n.Data, a.Key, a.Val)
			}
		case "href":
			target, inside := strings.CutPrefix(a.Val, "#")
			if n.Data == "link" || (!inside && !strings.HasPrefix(a.Val, "https://example.org/")) {
				t.Errorf("<%s href=%q> leads out of the file", n.Data, a.Val)
			}
			if inside && !ids[target] {
				t.Errorf("href=%q leads nowhere", a.Val)
			}
			links[a.Val] = true
		case "for", "aria-labelledby", "aria-describedby":
			if first := strings.Fields(a.Val)[0]; n.Data == "label" && !ids[first] {
				t.Errorf("<%s %s=%q> names no element", n.Data, a.Key, a.Val)
			}
		}
	}
}

// unpack reverses pack.
func unpack(t *testing.T, text string) []byte {
	t.Helper()
	b, err := base64.StdEncoding.DecodeString(strings.TrimSpace(text))
	if err != nil {
		t.Fatal(err)
	}
	z, err := gzip.NewReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if b, err = io.ReadAll(z); err != nil {
		t.Fatal(err)
	}
	return b
}

// TestTableLists: a group whose tables have short names is a grid of them.
func TestTableLists(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	o.Supply.TablePages = append(o.Supply.TablePages, cubes)
	mustBuild(t, New(o))
	got := read(t, root, "public/tables.html")
	for _, want := range []string{`<h2>Numbers</h2><a href="./tables/squares.html">Squares</a>`, `<h2>Rare numbers</h2>Side by side: <a href="./tables/cubes.html">x³</a> 3`} {
		if !strings.Contains(got, want) {
			t.Errorf("got %s, want %s in it", got, want)
		}
	}
	if page := read(t, root, "public/tables/cubes.html"); !strings.Contains(page, "Known since long.") || !strings.Contains(page, "27") {
		t.Errorf("got %s, want the facts and the table on the page", page)
	}
}

// TestSingleFileInsideTheSite: beside the pages it is part of the site, is
// linked from them, and goes when it is no longer asked for.
func TestSingleFileInsideTheSite(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	o.Single = filepath.Join(root, "public", "handbook.html")
	inside := New(o)
	mustBuild(t, inside)
	if !inside.OffersSingle() {
		t.Errorf("the site does not offer the file that lies in it")
	}
	if got := read(t, root, "public/files.sha256"); !strings.Contains(got, "  handbook.html\n") {
		t.Errorf("got record\n%s\nwant the single file in it", got)
	}
	if strings.Contains(read(t, root, "public/worker.js"), "handbook.html") {
		t.Errorf("the single file is in the offline list")
	}
	for _, elsewhere := range []string{filepath.Join(root, "handbook.html"), ""} {
		o.Single = elsewhere
		if New(o).OffersSingle() {
			t.Errorf("with the file at %q the site offers it, and it is not there", elsewhere)
		}
	}
	mustBuild(t, New(o))
	if _, err := os.Stat(filepath.Join(root, "public", "handbook.html")); err == nil {
		t.Errorf("the single file is still there")
	}
}

func TestRewrite(t *testing.T) {
	r := &rewriter{
		pages: map[string]bool{"index": true, "stages/hold": true, "about/limits": true},
		files: map[string][]byte{"stages/curve.svg": []byte("<svg/>"), "stages/log.csv": []byte("minutes,micron\n")},
	}
	for _, c := range []struct{ give, want string }{
		{`<p id="a">x</p>`, `<p id="stages/hold/a">x</p>`},
		{`<a href="#a">x</a>`, `<a href="#stages/hold/a">x</a>`},
		{`<a href="../about/limits.html">x</a>`, `<a href="#about/limits">x</a>`},
		{`<a href="../about/limits.html#when">x</a>`, `<a href="#about/limits/when">x</a>`},
		{`<a href="../">x</a>`, `<a href="#index">x</a>`},
		{`<a href="../index.html">x</a>`, `<a href="#index">x</a>`},
		{`<a href="https://example.org/a.html#b">x</a>`, `<a href="https://example.org/a.html#b">x</a>`},
		{`<a href="mailto:a@example.org">x</a>`, `<a href="mailto:a@example.org">x</a>`},
		{`<img src="curve.svg" alt="c">`, `<img src="data:image/svg+xml;base64,PHN2Zy8+" alt="c"/>`},
		{`<a href="log.csv">x</a>`, `<a href="data:text/csv;base64,bWludXRlcyxtaWNyb24K" download="log.csv">x</a>`},
		{`<input type="radio" name="m" id="i"><label for="i">x</label>`, `<input type="radio" name="stages/hold/m" id="stages/hold/i"/><label for="stages/hold/i">x</label>`},
		{`<input name="m" data-tick="m">`, `<input name="m" data-tick="m"/>`},
		{`<p aria-describedby="a b">x</p>`, `<p aria-describedby="stages/hold/a stages/hold/b">x</p>`},
		{`<svg viewBox="0 0 1 1"><clipPath id="c"></clipPath><path clip-path="url(#c)"></path><use xlink:href="#c"></use></svg>`,
			`<svg viewBox="0 0 1 1"><clipPath id="stages/hold/c"></clipPath><path clip-path="url(#stages/hold/c)"></path><use xlink:href="#stages/hold/c"></use></svg>`},
		{`<table><tbody><tr><th>a</th><td>b &lt;/td&gt;</td></tr><tr><td>c</td></tr></tbody></table><p>d</p>`, `<table><tbody><tr><th>a<td>b &lt;/td&gt;<tr><td>c</tbody></table><p>d</p>`},
	} {
		got, err := r.rewrite("stages/hold", []byte(c.give))
		if err != nil || string(got) != c.want {
			t.Errorf("rewrite(%s)\ngot  %s (%v)\nwant %s", c.give, got, err, c.want)
		}
	}
}
