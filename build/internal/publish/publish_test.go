package publish

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"changeout/build/internal/markup"
	"changeout/build/internal/searchindex"
)

// files reads an output folder.
func files(t *testing.T, dir string) map[string]string {
	t.Helper()
	found := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			found[name] = read(t, dir, name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func TestFilesOfASite(t *testing.T) {
	root := tree(t, small)
	s := mustBuild(t, New(options(root)))
	got := files(t, filepath.Join(root, "public"))
	var names []string
	hash := regexp.MustCompile(`\.[0-9a-f]{16}\.`)
	for _, name := range slices.Sorted(maps.Keys(got)) {
		names = append(names, hash.ReplaceAllString(name, ".HASH."))
	}
	slices.Sort(names) // the digests decided the order before
	want := []string{
		"about/checked.html", "about/glossary.html", "about/licences.html", "about/limits.html", "about/sources.html",
		"assets/app.HASH.css", "assets/app.HASH.js", "assets/assess.HASH.js", "assets/calculate.HASH.js", "assets/changeout.HASH.wasm", "assets/drawn.HASH.css", "assets/early.HASH.js", "assets/job.HASH.js", "assets/print.HASH.css", "assets/search.HASH.js", "assets/stored.HASH.js", "assets/worksheets.HASH.js",
		"contents.html", "files.sha256", "icon-180.png", "icon-192.png", "icon-512.png", "icon.svg", "index.html", "manifest.webmanifest", "search-index.txt",
		"stages/curve.svg", "stages/hold.html", "tables.html", "tables/squares.html", "worker.js", "worksheets.html", "worksheets/twice.html",
	}
	if !slices.Equal(names, want) {
		t.Errorf("got files\n%s\nwant\n%s", strings.Join(names, "\n"), strings.Join(want, "\n"))
	}
	if s.Pages != 12 || s.Files != len(want)-1 || s.Written != len(want)-1 || s.Removed != 0 {
		t.Errorf("got summary %+v, want 12 pages, %d files, all of them written", s, len(want)-1)
	}

	for name, parts := range map[string][]string{
		"index.html":            {"<title>A small handbook</title>", `1 Hold <a href="./stages/hold.html">Hold a vacuum</a>`, "2 Charge Not written yet.", `<h2>Worksheets</h2><a href="./worksheets/twice.html">`, `<h2>About</h2><a href="./about/limits.html">`},
		"contents.html":         {`<h2>The job</h2><a href="./stages/hold.html">`, `<a href="./worksheets/twice.html">Twice</a>`, `<a href="./tables/squares.html">Squares</a>`, `<a href="./about/sources.html">Sources</a>`, `<h2>More</h2>`, `<a href="./about/licences.html">`},
		"stages/hold.html":      {`data-page="stages/hold"`, `<link rel="stylesheet" href="../assets/app.`, "2026-03-02 2026-03-02", `href="../about/limits.html#when"`, `<form id="twice-form">`, `src="curve.svg"`, `<a href="../about/limits.html">Limits</a>`},
		"worksheets/twice.html": {`<form id="twice-form">`, `<a href="../stages/hold.html">Hold a vacuum</a>`},
		"tables/squares.html":   {"<td>9</td>"},
		"about/sources.html":    {`id="source-book"`, "read in print", `Cited in: <a href="../stages/hold.html">Hold a vacuum</a>`},
		"about/checked.html":    {`id="twice"`, "x = 2", "A book, table 1", `href="../worksheets/twice.html"`},
		"about/licences.html":   {"Go&#39;s &lt;terms&gt;", "Go 1.26", "Inside."},
	} {
		for _, part := range parts {
			if !strings.Contains(got[name], part) {
				t.Errorf("%s: got\n%s\nwant in it: %s", name, got[name], part)
			}
		}
	}
}

func TestHashedNames(t *testing.T) {
	root := tree(t, small)
	p := New(options(root))
	mustBuild(t, p)
	out := filepath.Join(root, "public")
	script := regexp.MustCompile(`assets/app\.([0-9a-f]{16})\.js`)
	find := func() (name, text string) {
		m := script.FindStringSubmatch(read(t, out, "index.html"))
		if m == nil {
			t.Fatal("the front page names no script")
		}
		return m[0], m[1]
	}
	first, digits := find()
	sum := sha256.Sum256([]byte(read(t, out, first)))
	if want := hex.EncodeToString(sum[:8]); digits != want {
		t.Errorf("got digest %s in the name, want %s", digits, want)
	}
	write(t, root, "site/app.ts", "document.title += '?';\n")
	mustBuild(t, p)
	second, _ := find()
	if second == first {
		t.Errorf("got the same name %s for another script", second)
	}
	if _, err := os.Stat(filepath.Join(out, first)); err == nil {
		t.Errorf("the old script %s is still there", first)
	}
	for _, page := range []string{"stages/hold.html", "worksheets/twice.html", "about/licences.html"} {
		if !strings.Contains(read(t, out, page), second) {
			t.Errorf("%s does not name the new script", page)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	first, second := tree(t, small), tree(t, small)
	a, b := options(first), options(second)
	a.Out, b.Out = filepath.Join(t.TempDir(), "a"), filepath.Join(t.TempDir(), "b")
	a.Single, b.Single = filepath.Join(t.TempDir(), "one.html"), filepath.Join(t.TempDir(), "one.html")
	mustBuild(t, New(a))
	mustBuild(t, New(b))
	x, y := files(t, a.Out), files(t, b.Out)
	if !maps.Equal(x, y) {
		for name := range x {
			if x[name] != y[name] {
				t.Errorf("%s differs between two builds:\n%s\n%s", name, x[name], y[name])
			}
		}
	}
	if read(t, filepath.Dir(a.Single), "one.html") != read(t, filepath.Dir(b.Single), "one.html") {
		t.Errorf("the single file differs between two builds")
	}

	// A publisher that got there by edits ends with the bytes of a fresh one.
	p := New(a)
	mustBuild(t, p)
	write(t, first, "content/about/limits.md", strings.Replace(small["content/about/limits.md"], "govern.", "govern. So does the maker.", 1))
	mustBuild(t, p)
	write(t, first, "content/stages/other.md", strings.Replace(small["content/about/limits.md"], "title: Limits", "title: Other", 1))
	write(t, first, "content/contents.md", small["content/contents.md"]+"- [Other](stages/other.md)\n")
	write(t, first, "content/about/limits.md", small["content/about/limits.md"])
	mustBuild(t, p)
	b.Root = first
	mustBuild(t, New(b))
	if x, y := files(t, a.Out), files(t, b.Out); !maps.Equal(x, y) {
		for name := range y {
			if x[name] != y[name] {
				t.Errorf("%s differs between edits and a fresh build:\n%s\n%s", name, x[name], y[name])
			}
		}
	}
}

func TestVersion(t *testing.T) {
	root := tree(t, small)
	p := New(options(root))
	first := mustBuild(t, p)
	if !regexp.MustCompile(`^[0-9a-f]{10}$`).MatchString(first.Version) || len(first.Digest) != 64 {
		t.Errorf("got version %q and digest %q, want 10 and 64 digits", first.Version, first.Digest)
	}
	// Every kind of input gives another version.
	last := first
	for name, text := range map[string]string{
		"content/about/limits.md":          small["content/about/limits.md"] + "\nMore.\n",
		"content/stages/curve.svg":         "<svg xmlns=\"http://www.w3.org/2000/svg\"><path/></svg>",
		"content/stages.md":                small["content/stages.md"] + "3. Prove: measure it.\n",
		"site/app.ts":                      "document.title += '?';\n",
		"site/worker/worker.ts":            small["site/worker/worker.ts"] + "console.log(2);\n",
		"site/layouts/page.tmpl":           small["site/layouts/page.tmpl"] + " ",
		"site/static/manifest.webmanifest": "{}",
		"build/internal/x.go":              "package internal\n",
	} {
		write(t, root, name, text)
		if name == "build/internal/x.go" {
			// The running program cannot change; only a new one sees it.
			p = New(options(root))
		}
		s := mustBuild(t, p)
		if s.Version == last.Version {
			t.Errorf("%s: got the same version %s after a change", name, s.Version)
		}
		if s.Digest == last.Digest {
			t.Errorf("%s: got the same digest after a change", name)
		}
		last = s
	}
	again := mustBuild(t, p)
	if again.Version != last.Version || again.Written != 0 || again.Removed != 0 {
		t.Errorf("got %+v without a change, want version %s and nothing written", again, last.Version)
	}
	// A new process trusts nothing, and still has nothing to write.
	if fresh := mustBuild(t, New(options(root))); fresh.Version != last.Version || fresh.Written != 0 {
		t.Errorf("got %+v from a new publisher, want version %s and nothing written", fresh, last.Version)
	}
}

func TestDate(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	o.Date = "2027-05-06"
	mustBuild(t, New(o))
	if got := read(t, root, "public/stages/hold.html"); !strings.Contains(got, "2027-05-06 2026-03-02") {
		t.Errorf("got %s, want the date of the build and of the page", got)
	}
}

func TestBuildDate(t *testing.T) {
	dir := t.TempDir()
	if _, err := BuildDate(context.Background(), dir, "26.11.2026"); err == nil || !strings.Contains(err.Error(), "26.11.2026") {
		t.Errorf("got %v for a wrong day, want a sentence that names it", err)
	}
	for _, c := range []struct{ given, epoch, want string }{
		{"2026-11-25", "0", "2026-11-25"},
		{"", "1764028799", "2025-11-24"},
		{"", "1764028800", "2025-11-25"},
	} {
		t.Setenv("SOURCE_DATE_EPOCH", c.epoch)
		if got, err := BuildDate(context.Background(), dir, c.given); err != nil || got != c.want {
			t.Errorf("given %q and %q: got %q, %v, want %q", c.given, c.epoch, got, err, c.want)
		}
	}
	t.Setenv("SOURCE_DATE_EPOCH", "yesterday")
	if _, err := BuildDate(context.Background(), dir, ""); err == nil {
		t.Errorf("got no error for a SOURCE_DATE_EPOCH that is no number")
	}
}

func TestPrecache(t *testing.T) {
	root := tree(t, small)
	s := mustBuild(t, New(options(root)))
	out := filepath.Join(root, "public")
	worker := read(t, out, "worker.js")
	m := regexp.MustCompile(`(?s)^\{const __VERSION__="([0-9a-f]{64})",__EDITION__=\["([^"]*)","([^"]*)"\],__PRECACHE__=(\[.*?\n\]);\n(.*)\n\}\n$`).FindStringSubmatch(worker)
	if m == nil {
		t.Fatalf("got %s, want the three constants before the worker, and braces around all", worker)
	}
	var list [][]any
	if err := json.Unmarshal([]byte(m[4]), &list); err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, entry := range list {
		got[fmt.Sprint(entry[0])] = fmt.Sprintf("%v, %.0f bytes", entry[1], entry[2])
	}
	want := map[string]string{}
	for name, text := range files(t, out) {
		if name != "worker.js" && name != RecordFile {
			sum := sha256.Sum256([]byte(text))
			want[name] = fmt.Sprintf("%x, %d bytes", sum, len(text))
		}
	}
	if !maps.Equal(got, want) {
		t.Errorf("got the list\n%v\nwant every other file with its digest\n%v", got, want)
	}
	if m[2] != s.Version || m[3] != "2026-03-02" {
		t.Errorf("got version %q and date %q, want %q and 2026-03-02", m[2], m[3], s.Version)
	}
	sum := sha256.Sum256([]byte(m[4]))
	if m[1] != hex.EncodeToString(sum[:]) || m[1] != s.Digest {
		t.Errorf("got digest %s in the worker and %s in the summary, want %x", m[1], s.Digest, sum)
	}
	if !strings.Contains(m[5], "__VERSION__") {
		t.Errorf("got %s, want the worker to read the constant", m[5])
	}
}

func TestRecord(t *testing.T) {
	root := tree(t, small)
	mustBuild(t, New(options(root)))
	out := filepath.Join(root, "public")
	got := files(t, out)
	for line := range strings.Lines(got[RecordFile]) {
		digits, name, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		sum := sha256.Sum256([]byte(got[name]))
		if digits != hex.EncodeToString(sum[:]) {
			t.Errorf("%s: got %s in the record, want %x", name, digits, sum)
		}
		delete(got, name)
	}
	if delete(got, RecordFile); len(got) > 0 {
		t.Errorf("files without a line in the record: %v", slices.Sorted(maps.Keys(got)))
	}
}

func TestStaleFiles(t *testing.T) {
	root := tree(t, small)
	out := filepath.Join(root, "public")
	write(t, root, "content/extra/deep/page.md", strings.NewReplacer("title: Limits", "title: Extra", "../stages", "../../stages").Replace(small["content/about/limits.md"]))
	write(t, root, "content/contents.md", small["content/contents.md"]+"- [Extra](extra/deep/page.md)\n")
	mustBuild(t, New(options(root)))
	write(t, out, "extra/by-hand.txt", "put here by a person")
	write(t, out, "mine/page.html", "put here by a person")
	if err := os.RemoveAll(filepath.Join(root, "content", "extra")); err != nil {
		t.Fatal(err)
	}
	write(t, root, "content/contents.md", small["content/contents.md"])
	// A line that somebody smuggled into the record must not reach outside.
	outside := filepath.Join(root, "keep.txt")
	write(t, root, "keep.txt", "outside")
	write(t, out, RecordFile, read(t, out, RecordFile)+strings.Repeat("0", 64)+"  ../keep.txt\n")

	s := mustBuild(t, New(options(root)))
	if s.Removed != 1 {
		t.Errorf("got %d removed files, want 1", s.Removed)
	}
	for name, want := range map[string]bool{"extra/deep/page.html": false, "extra/deep": false, "extra/by-hand.txt": true, "mine/page.html": true} {
		_, err := os.Stat(filepath.Join(out, name))
		if there := err == nil; there != want {
			t.Errorf("%s: there is %v, want %v", name, there, want)
		}
	}
	if _, err := os.Stat(outside); err != nil {
		t.Errorf("a file outside the output folder was removed: %v", err)
	}
	leftovers, _ := filepath.Glob(filepath.Join(out, stagingPrefix+"*"))
	if len(leftovers) > 0 {
		t.Errorf("hidden folders are left: %v", leftovers)
	}
}

func TestDamagedOutputIsMended(t *testing.T) {
	root := tree(t, small)
	mustBuild(t, New(options(root)))
	page := read(t, root, "public/stages/hold.html")
	write(t, root, "public/stages/hold.html", strings.Replace(page, "micron", "mikron", 1))
	s := mustBuild(t, New(options(root)))
	if got := read(t, root, "public/stages/hold.html"); got != page || s.Written != 1 {
		t.Errorf("got %d files written, want the damaged page written again", s.Written)
	}
}

func TestProblemsKeepTheOldSite(t *testing.T) {
	root := tree(t, small)
	out := filepath.Join(root, "public")
	p := New(options(root))
	mustBuild(t, p)
	before := files(t, out)
	hold := small["content/stages/hold.md"]
	write(t, root, "content/stages/hold.md", strings.Replace(strings.Replace(hold, "[[micron]]", "[[mikron]]", 1), "limits.md#when", "limits.md#wenn", 1))
	write(t, root, "content/about/limits.md", strings.Replace(small["content/about/limits.md"], "summary:", "sumary:", 1))

	check := func(name string, p *Publisher) {
		t.Helper()
		_, problems := p.Build(context.Background())
		var lines []string
		for _, problem := range problems {
			lines = append(lines, problem.String())
		}
		all := strings.Join(lines, "\n")
		for _, want := range []string{"content/about/limits.md:3:", "sumary", "content/stages/hold.md:11:", "mikron", "#wenn"} {
			if !strings.Contains(all, want) {
				t.Errorf("%s: got\n%s\nwant in it: %s", name, all, want)
			}
		}
		if !slices.IsSorted(lines) {
			t.Errorf("%s: problems are not sorted:\n%s", name, all)
		}
		if after := files(t, out); !maps.Equal(after, before) {
			t.Errorf("%s: the old site changed", name)
		}
	}
	check("after an edit", p)
	check("again without an edit", p)
	check("by a new publisher", New(options(root)))

	write(t, root, "content/stages/hold.md", hold)
	write(t, root, "content/about/limits.md", small["content/about/limits.md"])
	if s := mustBuild(t, p); s.Written != 0 {
		t.Errorf("got %d files written after everything was put back, want 0", s.Written)
	}
}

func TestProblemsOfTheSiteFolder(t *testing.T) {
	for name, c := range map[string]struct {
		file, text string
		want       []string
	}{
		"template":       {"site/layouts/page.tmpl", "{{define \"main\"}}\n{{if}}x{{end}}\n{{end}}", []string{"site/layouts/page.tmpl:2", "missing value"}},
		"unknown field":  {"site/layouts/list.tmpl", "{{define \"main\"}}\n{{.Nonsense}}{{end}}", []string{"site/layouts/list.tmpl:2", "Nonsense"}},
		"script":         {"site/app.ts", "let = 1;\n", []string{"site/app.ts:1"}},
		"style":          {"site/app.css", ".a { colour red }\n", []string{"site/app.css:1"}},
		"contents entry": {"content/contents.md", small["content/contents.md"] + "- [No](worksheet:twise)\n", []string{"content/contents.md:13", "worksheet:twise", "did you mean worksheet:twice?"}},
		"front has text": {"content/index.md", small["content/index.md"] + "\nSome text.\n", []string{"content/index.md:7", "no room"}},
		"taken name":     {"site/static/search-index.txt", "P", []string{"search-index.txt"}},
	} {
		t.Run(name, func(t *testing.T) {
			root := tree(t, small)
			write(t, root, c.file, c.text)
			_, problems := New(options(root)).Build(context.Background())
			var all string
			for _, p := range problems {
				all += p.String() + "\n"
			}
			for _, want := range c.want {
				if !strings.Contains(all, want) {
					t.Errorf("got\n%s\nwant in it: %s", all, want)
				}
			}
			if _, err := os.Stat(filepath.Join(root, "public", "index.html")); err == nil {
				t.Errorf("a page was written beside problems")
			}
		})
	}
}

func TestIncremental(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	o.Version = "preview"
	p := New(o)
	mustBuild(t, p)
	out := filepath.Join(root, "public")

	write(t, root, "content/about/limits.md", small["content/about/limits.md"]+"\nAnother sentence.\n")
	s := mustBuild(t, p)
	// The page and the worker; the index has titles and headings only.
	if s.Written != 2 || !strings.Contains(read(t, out, "about/limits.html"), "Another sentence.") {
		t.Errorf("got %d files written, want the page and the worker", s.Written)
	}

	// A new title reaches the neighbour's link and every list.
	write(t, root, "content/about/limits.md", strings.Replace(small["content/about/limits.md"], "title: Limits", "title: Its limits", 1))
	mustBuild(t, p)
	for _, name := range []string{"stages/hold.html", "contents.html", "index.html", "search-index.txt"} {
		if !strings.Contains(read(t, out, name), "Its limits") {
			t.Errorf("%s does not show the new title", name)
		}
	}

	// A page that cites no longer is no longer listed at the source.
	write(t, root, "content/stages/hold.md", strings.Replace(small["content/stages/hold.md"], " [@book]", "", 1))
	mustBuild(t, p)
	if got := read(t, out, "about/sources.html"); strings.Contains(got, "Cited in") {
		t.Errorf("got %s, want no page that cites the book", got)
	}

	// A changed glossary reaches all pages.
	write(t, root, "content/about/glossary.md", small["content/about/glossary.md"]+"\n## torr\n\nA millimetre of mercury.\n")
	write(t, root, "content/about/limits.md", strings.Replace(small["content/about/limits.md"], "Local codes", "[[torr]] Local codes", 1))
	mustBuild(t, p)
	if got := read(t, out, "about/limits.html"); !strings.Contains(got, "glossary.html#term-torr") {
		t.Errorf("got %s, want a link to the new term", got)
	}
}

func TestCompanyLayer(t *testing.T) {
	root := tree(t, small)
	company := tree(t, map[string]string{
		"contents.md":     "# Cool Rooms Ltd\n\n- [Start](index.md)\n- Ours\n  - [House rules](rules.md)\n- The job\n  - [Hold](stages/hold.md)\n- About\n  - [Limits](about/limits.md)\n  - [Words](about/glossary.md)\n",
		"rules.md":        strings.Replace(small["content/about/limits.md"], "title: Limits", "title: House rules", 1),
		"about/limits.md": strings.Replace(small["content/about/limits.md"], "Local codes govern.", "We say more.", 1),
	})
	write(t, company, "rules.md", strings.ReplaceAll(read(t, company, "rules.md"), "../stages", "stages"))
	o := options(root)
	o.Company = company
	mustBuild(t, New(o))
	out := filepath.Join(root, "public")
	if got := read(t, out, "about/limits.html"); !strings.Contains(got, "We say more.") || !strings.Contains(got, "Cool Rooms Ltd") {
		t.Errorf("got %s, want the company's page and name", got)
	}
	if got := read(t, out, "index.html"); !strings.Contains(got, `<a href="./rules.html">House rules</a>`) {
		t.Errorf("got %s, want a link to the company's own page", got)
	}
}

func TestBasePath(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	mustBuild(t, New(o))
	without := files(t, filepath.Join(root, "public"))
	o.Base = "/handbook"
	mustBuild(t, New(o))
	with := files(t, filepath.Join(root, "public"))
	page := with["404.html"]
	if !strings.Contains(page, `href="/handbook/index.html"`) || !strings.Contains(page, `href="/handbook/assets/app.`) {
		t.Errorf("got %s, want links from the base path", page)
	}
	if strings.Contains(with["worker.js"], "404.html") {
		t.Errorf("the page for wrong addresses is in the offline list")
	}
	// All other addresses are relative, so the pages fit any path as they are.
	absolute := regexp.MustCompile(`(?:href|src)="/`)
	for name, text := range with {
		if name != "404.html" && absolute.MatchString(text) {
			t.Errorf("%s holds an absolute address", name)
		}
		if name != "404.html" && name != RecordFile && name != "worker.js" && without[name] != text {
			t.Errorf("%s depends on the base path", name)
		}
	}
}

func TestSearchIndex(t *testing.T) {
	root := tree(t, small)
	mustBuild(t, New(options(root)))
	index, err := searchindex.Read([]byte(read(t, root, "public/"+searchFile)))
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]searchindex.Page{}
	for _, e := range index.Pages {
		got[e.URL] = e
	}
	hold := got["stages/hold.html"]
	if hold.Title != "Hold a vacuum" || hold.Stage != 1 || len(hold.Places) == 0 || hold.Places[0] != (markup.Passage{Kind: markup.PassageHeading, ID: "what-this-achieves", Text: "What this achieves"}) {
		t.Errorf("got %+v, want title, stage and headings", hold)
	}
	words := got["about/glossary.html"].Places
	if len(words) != 2 || words[0].ID != "term-micron" || words[1].Text != "A thousandth of a millimetre of mercury." {
		t.Errorf("got %+v, want the term and its definition", words)
	}
	if twice := got["worksheets/twice.html"]; twice.Kind != "worksheet" || len(twice.Places) != 1 || twice.Places[0].ID != "twice-x" {
		t.Errorf("got %+v, want the worksheet and its entry", twice)
	}
	if got["tables/squares.html"].Kind != "table" {
		t.Errorf("got %+v, want the table", index.Pages)
	}
	if got["index.html"].URL != "" || got["contents.html"].URL != "" {
		t.Errorf("got %+v, want neither the front page nor the contents, which hold nothing of their own", index.Pages)
	}
	if len(index.Sayings) != 1 || index.Sayings[0].Said[0] != "pull down" || index.Sayings[0].Means[0] != "vacuum" {
		t.Errorf("got sayings %+v, want those of content/search.md", index.Sayings)
	}
	for url := range got {
		if _, err := os.Stat(filepath.Join(root, "public", url)); err != nil {
			t.Errorf("the index names %s, which is not there", url)
		}
	}
}

func TestStopped(t *testing.T) {
	root := tree(t, small)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := New(options(root))
	if _, problems := p.Build(ctx); len(problems) == 0 {
		t.Errorf("got no problem from a build that was stopped")
	}
	mustBuild(t, p)
}

func TestFilesInMemory(t *testing.T) {
	root := tree(t, small)
	p := New(options(root))
	got, problems := p.Files(context.Background())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := os.Stat(filepath.Join(root, "public")); err == nil {
		t.Errorf("the output folder was made")
	}
	mustBuild(t, p)
	want := files(t, filepath.Join(root, "public"))
	delete(want, RecordFile)
	if len(got) != len(want) {
		t.Errorf("got %d files, want %d", len(got), len(want))
	}
	for name, text := range want {
		if string(got[name]) != text {
			t.Errorf("%s differs between memory and folder", name)
		}
	}
}
