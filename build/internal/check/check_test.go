package check

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

const minisite = "../../../testdata/minisite"

// environment knows what the small handbook names.
func environment(book *page.Book) markup.Env {
	return markup.Env{
		Worksheets: markup.Embeds{IDs: []string{"vacuum-hold"}, HTML: func(id string, place markup.Place) ([]byte, error) {
			return fmt.Appendf(nil, "<section data-worksheet=%q>%s<p id=\"inside-worksheet\"></p></section>", id, place.Cite("common-practice", "")), nil
		}},
		Tables:   markup.Embeds{IDs: []string{"water-boiling-point"}},
		Glossary: book.Glossary,
		Hazards:  book.Hazards,
	}
}

func convert(book *page.Book) map[*page.Page]*markup.Result {
	c := markup.New(environment(book))
	results := map[*page.Page]*markup.Result{}
	for _, p := range book.Pages {
		results[p] = c.Convert(p)
	}
	return results
}

// build makes a site of the simplest frame from the book, as publish does with its layout.
func build(book *page.Book, results map[*page.Page]*markup.Result) map[string][]byte {
	files := map[string][]byte{
		"worksheets/vacuum-hold.html":     []byte("<html lang=\"en\"><title>W</title>"),
		"tables/water-boiling-point.html": []byte("<html lang=\"en\"><title>T</title>"),
	}
	for _, p := range book.Pages {
		files[p.URL] = fmt.Appendf(nil, "<!doctype html>\n<html lang=\"en\"><title>%s</title>\n<main id=\"main\">\n%s</main>\n", p.Title, results[p].HTML)
	}
	for _, a := range book.Assets {
		data, _ := a.Read()
		files[a.Path] = data
	}
	return files
}

var generated = []string{"worksheets/vacuum-hold.html", "tables/water-boiling-point.html"}

// TestMinisite takes the small handbook from files to finished HTML and wants no problem anywhere.
func TestMinisite(t *testing.T) {
	book, problems := page.Read(page.Layer{FS: os.DirFS(minisite), Name: "minisite"})
	results := convert(book)
	for _, r := range results {
		problems = append(problems, r.Problems...)
	}
	problems = append(problems, Book(book, results, generated)...)
	problems = append(problems, Output(build(book, results))...)
	compare(t, problems, nil)
	if len(book.Pages) != 3 || len(book.Stages) != 10 || len(book.Glossary.Terms) != 2 || len(book.Hazards.Rows) != 3 {
		t.Errorf("got %d pages, %d stages, %d terms, %d hazards; want 3, 10, 2, 3",
			len(book.Pages), len(book.Stages), len(book.Glossary.Terms), len(book.Hazards.Rows))
	}
}

func TestBookProblems(t *testing.T) {
	head := func(title, more string) string {
		return "---\ntitle: " + title + "\nsummary: S.\nkind: reference\n" + more + "updated: 2026-11-25\n---\n"
	}
	content := fstest.MapFS{
		"contents.md": {Data: []byte("- [A](stages/a.md)\n")},
		"stages.md":   {Data: []byte("1. Find: it.\n")},
		"index.md":    {Data: []byte(head("Start", ""))},
		"stages/a.md": {Data: []byte(head("A", "stage: 2\n") + "\n" + // body from line 8
			"[gone](b-and-c.md)\n" + // 9
			"[moved](limits.md)\n" +
			"[anchor](../about/limits.md#wieght)\n" +
			"[good](../about/limits.md#weight) [good](../about/limits.md#main)\n" +
			"[list](../contents.md)\n" +
			"[no ending](../about/limits)\n" +
			"[built](../about/limits.html)\n" +
			"[generated](../worksheets/vacuum-hold.html) [not generated](../worksheets/zzz.html)\n" +
			"![A picture](fig.svg) ![A lost picture](fgi.svg)\n")},
		"stages/fig.svg":  {Data: []byte("<svg/>")},
		"about/limits.md": {Data: []byte(head("A", "") + "\n## Weight\n")},
	}
	book, problems := page.Read(page.Layer{FS: content, Name: "content"})
	for _, p := range problems {
		if !strings.Contains(p.Text, "no table of hazards") {
			t.Fatalf("unexpected: %s", p)
		}
	}
	results := convert(book)
	compare(t, Book(book, results, generated), []string{
		"content/about/limits.md:1: page has no place in contents.md — add a line “- [A](about/limits.md)” there",
		"content/stages/a.md:1: stage 2 is not in stages.md",
		"content/stages/a.md:1: title “A” is that of another page — content/about/limits.md",
		"content/stages/a.md:9: dead link: there is no page stages/b-and-c.md — pages are linked relative to the page that links",
		"content/stages/a.md:10: dead link: there is no page stages/limits.md — did you mean ../about/limits.md?",
		"content/stages/a.md:11: dead link: there is no #wieght on about/limits.md — did you mean #weight?",
		"content/stages/a.md:13: dead link: there is no page contents.md — it is a list, not a page; link to index.md",
		"content/stages/a.md:14: dead link: there is no about/limits — pages are linked by their file: add .md",
		"content/stages/a.md:16: dead link: there is no worksheets/zzz.html — put the file beside the page, or mend the address",
		"content/stages/a.md:17: dead image: there is no stages/fgi.svg — put the file beside the page, or mend the address",
	})
	if got := Book(book, results, nil); len(got) != 9 {
		t.Errorf("without a list of generated addresses: got %d problems, want 9 (links to .html are left to Output)", len(got))
	}
}

func TestRelative(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"a.md", "b.md", "b.md"}, {"x/a.md", "b.md", "../b.md"}, {"x/a.md", "x/b.md", "b.md"}, {"x/y/a.md", "x/b.md", "../b.md"}, {"a.md", "x/b.md", "x/b.md"}, {"xx/a.md", "x/b.md", "../x/b.md"},
	} {
		if got := relative(c.from, c.to); got != c.want {
			t.Errorf("relative(%q, %q): got %q, want %q", c.from, c.to, got, c.want)
		}
	}
}

func TestOutputProblems(t *testing.T) {
	frame := func(body string) []byte {
		return []byte("<!doctype html>\n<html lang=\"en\"><head><title>T</title></head>\n<body>\n" + body + "\n</body></html>\n")
	}
	for _, c := range []struct {
		name, body string
		want       []string
	}{
		{"a good page", `<p id="a"><a href="#a">x</a> <a href="b.html#b">x</a> <a href="../index.html">x</a> <a href="../">x</a> <a href="">x</a>` +
			` <a href="https://example.org/x#y">x</a> <a href="mailto:a@b.c">x</a> <img src="data:image/png;base64,AA==" alt=""> <a href="b.html?q=1#b">x</a>` +
			` <label for="f">x</label><input id="f" aria-describedby="a f"><script src="../app.js"></script><script type="application/json">{}</script>` +
			` <a href="caf%C3%A9.html">x</a></p>`, nil},
		{"dead file", `<a href="c.html">x</a>`, []string{"x/a.html:4: dead link: there is no x/c.html — did you mean x/a.html?"}},
		{"dead fragment here", `<a href="#weigh">x</a><p id="step-weigh"></p>`, []string{"x/a.html:4: dead link: there is no #weigh on x/a.html — did you mean #step-weigh?"}},
		{"dead fragment there", `<a href="b.html#zzz">x</a>`, []string{"x/a.html:4: dead link: there is no #zzz on x/b.html"}},
		{"dead label", "<p>\n<label for=\"f\">x</label>", []string{`x/a.html:5: for names an id that is not on the page: "f"`}},
		{"dead description", `<p aria-labelledby="a b" id="a">`, []string{`x/a.html:4: aria-labelledby names an id that is not on the page: "b"`}},
		{"id twice, empty id", `<p id="a"></p><p id="a"></p><p id=""></p>`, []string{"x/a.html:4: empty id on <p>", "x/a.html:4: id a is used twice"}},
		{"inline things", "<p style=\"x\" onclick=\"y\"></p>\n<style>p{}</style>\n<script>x</script><script type=\"module\">x</script><a href=\"javascript:x\">x</a>", []string{
			"x/a.html:4: inline handler onclick on <p> — use a data- attribute and a script file",
			"x/a.html:4: inline style on <p> — use a class; the security policy forbids style attributes",
			"x/a.html:5: inline style sheet — the security policy forbids <style>",
			"x/a.html:6: inline script — the security policy forbids scripts without src",
			"x/a.html:6: script in an address on <a>"}},
		{"other hosts", `<img src="https://example.org/a.png"><link rel="stylesheet" href="//example.org/a.css"><a href="/x">x</a>`, []string{
			"x/a.html:4: <img> asks another host: https://example.org/a.png — the site makes no request to any other host",
			"x/a.html:4: <link> asks another host: //example.org/a.css — the site makes no request to any other host",
			"x/a.html:4: address starts at the root of the host: /x — all addresses of the site are relative",
			"x/a.html:4: image has no alternative text"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			compare(t, Output(map[string][]byte{
				"index.html": frame(""), "app.js": nil, "x/a.html": frame(c.body), "x/b.html": frame(`<p id="b"></p>`), "x/café.html": frame(""),
			}), c.want)
		})
	}
	compare(t, Output(map[string][]byte{"a.html": []byte("<p>x</p>")}), []string{
		"a.html:1: page has no title", "a.html:1: page names no language — write <html lang=…>"})
}

func compare(t *testing.T, problems []report.Problem, want []string) {
	t.Helper()
	var got []string
	for _, p := range report.Sorted(problems) {
		got = append(got, p.String())
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("problems: got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
