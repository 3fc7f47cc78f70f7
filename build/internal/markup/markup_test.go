package markup

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/yuin/goldmark"
	"golang.org/x/net/html"

	"changeout/build/internal/page"
)

const minisite = "../../../testdata/minisite"

// minibook reads the small handbook, and an environment that knows what it names.
func minibook(t testing.TB) (*page.Book, Env) {
	t.Helper()
	book, problems := page.Read(page.Layer{FS: os.DirFS(minisite), Name: "minisite"})
	for _, p := range problems {
		t.Errorf("minisite: %s", p)
	}
	env := testEnv(t)
	env.Glossary, env.Hazards = book.Glossary, book.Hazards
	return book, env
}

func TestMinisiteHasNoProblems(t *testing.T) {
	book, env := minibook(t)
	c := New(env)
	for _, p := range book.Pages {
		for _, problem := range c.Convert(p).Problems {
			t.Errorf("%s", problem)
		}
	}
}

// TestResult checks what the program learns about a page besides its HTML; lines count in the file, header included.
func TestResult(t *testing.T) {
	book, env := minibook(t)
	r := New(env).Convert(book.Page("stages/hold-a-vacuum.md"))
	check := func(what string, got, want any) {
		t.Helper()
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: got  %v\nwant %v", what, got, want)
		}
	}
	check("headings", len(r.Headings), 9)
	check("first heading", r.Headings[0], Heading{2, "what-this-achieves", "What this achieves", 9})
	check("steps", len(r.Steps), 7)
	check("third step", r.Steps[2], Step{3, "if-the-drive-must-be-opened", "If the drive must be opened, measure across its capacitors first.", 41})
	check("cautions", r.Cautions, []Caution{{"stored-charge", "WARNING", 26}, {"pressure", "WARNING", 30}, {"wet-board", "NOTICE", 46}})
	check("waits", r.Waits, []Wait{{"gauge-settles", "Gauge settles", "2–5 min", 300, 44}, {"hold", "Hold", "10 min", 600, 55}})
	check("writes", len(r.Writes), 5)
	check("a field", r.Writes[1], Write{"after-10", "Pressure after 10 minutes", "micron", 56})
	check("worksheets", r.Worksheets, []Use{{"vacuum-hold", 60}})
	check("tables", r.Tables, []Use{{"water-boiling-point", 90}})
	check("terms", r.Terms, []Use{{"hold-test", 11}, {"micron", 12}})
	check("links", r.Links, []Link{{"stages/valve.svg", "", true, 20}, {"", "step-pull-down", false, 69}})
	check("first id", r.IDs[0], Use{"what-this-achieves", 9})
}

// TestConvertIsSafeForConcurrentUse converts the same pages on several goroutines and wants the same bytes from each.
func TestConvertIsSafeForConcurrentUse(t *testing.T) {
	book, env := minibook(t)
	c := New(env)
	want := map[string]string{}
	for _, p := range book.Pages {
		want[p.Path] = string(c.Convert(p).HTML)
	}
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			for range 20 {
				for _, p := range book.Pages {
					if got := string(c.Convert(p).HTML); got != want[p.Path] {
						t.Errorf("%s: HTML differs between runs\n%s", p.Path, diff(want[p.Path], got))
						return
					}
				}
			}
		})
	}
	wg.Wait()
}

// TestEmptyEnvironment: a page that names what nothing knows gives problems, and still its words.
func TestEmptyEnvironment(t *testing.T) {
	p := &page.Page{Path: "a.md", File: "a.md", Kind: page.Reference, BodyLine: 1,
		Body: []byte("Text [@key] [[term]].\n\n> WARNING (flame): A.\n> Consequence: B.\n> Avoid: C.\n\n:: worksheet w\n\n1. [ ] Light the torch.\n")}
	r := New(Env{}).Convert(p)
	want := "1: unknown source key “key” — known: common-practice, from-memory, makers-manual\n1: unknown term “term”\n" +
		"3: unknown hazard “flame”\n7: unknown worksheet “w”\n"
	if got := problemLines(r); got != want {
		t.Errorf("problems: got\n%s\nwant\n%s", got, want)
	}
	if !strings.Contains(string(r.HTML), "Text <span class=\"co-cite\">[key]</span> term.") {
		t.Errorf("words are lost: %s", r.HTML)
	}
}

// TestEmbeds: what a worksheet cites and how it fails reach the author, with the line of the directive.
func TestEmbeds(t *testing.T) {
	env := testEnv(t)
	env.Worksheets = Embeds{
		IDs: []string{"good", "bad"},
		URL: func(id string) string { return "calc/" + id + "/" },
		HTML: func(id string, place Place) ([]byte, error) {
			if id == "bad" {
				return nil, errors.New("no example")
			}
			return append(place.Cite("z535", "§ 4 <x>"), place.Cite("unknown-key", "")...), nil
		},
	}
	p := &page.Page{Path: "a/b.md", File: "b.md", Kind: page.Reference, BodyLine: 10, Body: []byte("[w](worksheet:good#x)\n\n:: worksheet good\n:: worksheet bad\n")}
	r := New(env).Convert(p)
	want := "12: unknown source key “unknown-key” — known: cfr-82-156, common-practice, copper-book, from-memory, makers-manual, practice-58, z535\n" +
		"13: worksheet “bad” cannot be drawn: no example\n"
	if got := problemLines(r); got != want {
		t.Errorf("problems: got\n%s\nwant\n%s", got, want)
	}
	for _, part := range []string{`<a href="../calc/good/#x">w</a>`, `href="#source-z535">[1, § 4 &lt;x&gt;]</a><span class="co-cite">[unknown-key]</span>`, `<li id="source-z535">`} {
		if !strings.Contains(string(r.HTML), part) {
			t.Errorf("HTML lacks %s:\n%s", part, r.HTML)
		}
	}
}

// corpus gives every source that the tests know: the pages of the small handbook and all cases.
func corpus(t testing.TB) [][]byte {
	t.Helper()
	var sources [][]byte
	files, _ := filepath.Glob(filepath.Join(casesFolder, "*.txt"))
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for block := range strings.SplitSeq(string(data), caseSeparator) {
			if parts := strings.Split(block, partSeparator+"\n"); len(parts) == 3 {
				sources = append(sources, []byte(parts[1]))
			}
		}
	}
	book, _ := page.Read(page.Layer{FS: os.DirFS(minisite), Name: "minisite"})
	for _, p := range book.Pages {
		sources = append(sources, p.Body)
	}
	if len(sources) < 50 {
		t.Fatalf("only %d sources; is testdata in its place?", len(sources))
	}
	return sources
}

// mutate changes a source at random: bytes, lines, spans of other sources, and the marks our blocks are made of.
func mutate(r *rand.Rand, source []byte, all [][]byte) []byte {
	marks := []string{"[", "]", "[@", "[[", "]]", "|", "> ", "> WARNING (", "): ", ":: ", ":: wait ", "1. [ ] ", "   ", "\t", "\n", "\n\n",
		"{#", "}", "Why:", "Decide:", "Consequence:", "Avoid:", "| - | - |\n", "```", "`", "*", "_", "\\", "&", "#", "\x00", "\xff", "µ", "\r\n", "- "}
	b := bytes.Clone(source)
	for range 1 + r.IntN(12) {
		at := 0
		if len(b) > 0 {
			at = r.IntN(len(b))
		}
		end := min(len(b), at+r.IntN(40))
		switch r.IntN(6) {
		case 0: // take a span out
			b = append(b[:at:at], b[end:]...)
		case 1: // put a mark in
			b = append(b[:at:at], append([]byte(marks[r.IntN(len(marks))]), b[at:]...)...)
		case 2: // put a span of another source in
			other := all[r.IntN(len(all))]
			if len(other) > 0 {
				from := r.IntN(len(other))
				span := other[from:min(len(other), from+r.IntN(120))]
				b = append(b[:at:at], append(bytes.Clone(span), b[at:]...)...)
			}
		case 3: // repeat a span
			b = append(b[:end:end], append(bytes.Clone(b[at:end]), b[end:]...)...)
		case 4: // change a byte
			if len(b) > 0 {
				b[at] = byte(r.IntN(256))
			}
		case 5: // cut the end off
			if r.IntN(4) == 0 {
				b = b[:at]
			}
		}
	}
	return b
}

// TestRandomPages feeds pages that are wrong in every way: nothing may panic, every problem has a line inside the file,
// and the HTML stays well formed (each element that is opened is closed in order), so a page cannot break its layout.
func TestRandomPages(t *testing.T) {
	const rounds = 4000
	all := corpus(t)
	c := New(testEnv(t))
	r := rand.New(rand.NewPCG(1, 2)) // fixed, so a failure can be repeated
	for i := range rounds {
		source := mutate(r, all[r.IntN(len(all))], all)
		kind := page.Reference
		if i%2 == 0 {
			kind = page.Procedure
		}
		checkRandom(t, c, source, kind)
		if t.Failed() {
			t.Fatalf("round %d, source:\n%q", i, source)
		}
	}
}

func checkRandom(t *testing.T, c *Converter, source []byte, kind string) {
	t.Helper()
	p := &page.Page{Path: "stages/random.md", File: "random.md", Kind: kind, Title: "Random", Body: source, BodyLine: 1}
	defer func() {
		if reason := recover(); reason != nil {
			t.Fatalf("panic: %v\nsource:\n%q", reason, source)
		}
	}()
	result := c.Convert(p)
	last := 1 + bytes.Count(source, []byte{'\n'})
	for _, problem := range result.Problems {
		if problem.Line < 1 || problem.Line > last || problem.Text == "" {
			t.Errorf("problem outside the file of %d lines: %s", last, problem)
		}
	}
	if text := unbalanced(result.HTML); text != "" {
		t.Errorf("HTML is not well formed: %s\n%s", text, result.HTML)
	}
}

// unbalanced finds the first element that is closed out of order or left open.
func unbalanced(source []byte) string {
	void := map[string]bool{"br": true, "hr": true, "img": true, "input": true}
	var open []string
	z := html.NewTokenizer(bytes.NewReader(source))
	for {
		switch z.Next() {
		case html.ErrorToken:
			if len(open) > 0 {
				return "left open: " + strings.Join(open, " ")
			}
			return ""
		case html.StartTagToken:
			name, _ := z.TagName()
			if !void[string(name)] {
				open = append(open, string(name))
			}
		case html.EndTagToken:
			name, _ := z.TagName()
			if len(open) == 0 || open[len(open)-1] != string(name) {
				return fmt.Sprintf("</%s> inside %v", name, open)
			}
			open = open[:len(open)-1]
		}
	}
}

// FuzzConvert is for longer hunts: go test -fuzz FuzzConvert ./build/internal/markup
func FuzzConvert(f *testing.F) {
	for _, source := range corpus(f) {
		f.Add(source)
	}
	c := New(testEnv(f))
	f.Fuzz(func(t *testing.T, source []byte) { checkRandom(t, c, source, page.Procedure) })
}

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text, shown string
		seconds     int
	}{
		{"30 min", "30 min", 1800}, {"30min", "30 min", 1800}, {"2-5 min", "2–5 min", 300}, {"2 – 5 minutes", "2–5 minutes", 300},
		{"2 to 5 min", "2–5 min", 300}, {"24 h", "24 h", 86400}, {"1 h 30 min", "1 h 30 min", 5400}, {"1.5 h", "1.5 h", 5400}, {"90 s", "90 s", 90},
		{"", "", 0}, {"min", "", 0}, {"30", "", 0}, {"5-2 min", "", 0}, {"1-2-3 min", "", 0}, {"1e9 h", "", 0}, {"NaN h", "", 0}, {"-5 min", "", 0},
		{"999999999999999999999999 h", "", 0}, {"0 s", "", 0}, {".", "", 0}, {"1..2 h", "", 0},
	} {
		seconds, shown, ok := parseLength(c.text)
		if ok != (c.seconds > 0) || ok && (seconds != c.seconds || shown != c.shown) {
			t.Errorf("parseLength(%q): got %d s, %q, %v; want %d s, %q", c.text, seconds, shown, ok, c.seconds, c.shown)
		}
	}
}

func TestSentenceEnds(t *testing.T) {
	for token, want := range map[string]bool{
		"done.": true, "done.)": true, "done.”": true, "done?": true, "done": false, "2.5": false, "e.g.": false, "(e.g.": false, "No.": false, ".": true, "": false, "”": false,
	} {
		if got := endsSentence([]byte(token)); got != want {
			t.Errorf("endsSentence(%q): got %v, want %v", token, got, want)
		}
	}
}

// benchmarkPage is the small handbook's procedure: every block once or more, as a real page has them.
func benchmarkPage(b *testing.B) (*page.Page, Env) {
	book, env := minibook(b)
	return book.Page("stages/hold-a-vacuum.md"), env
}

// The budget of the whole build is twice bare goldmark on the same files. BenchmarkConvert takes turns with bare
// goldmark on the same page and reports the ratio of their quickest runs, which other work on the machine does not disturb.
func BenchmarkConvert(b *testing.B) {
	p, env := benchmarkPage(b)
	c := New(env)
	m := goldmark.New()
	var out bytes.Buffer
	bare := func() {
		out.Reset()
		if err := m.Convert(p.Body, &out); err != nil {
			b.Fatal(err)
		}
	}
	quickest := [2]time.Duration{time.Hour, time.Hour}
	b.SetBytes(int64(len(p.Body)))
	b.ReportAllocs()
	for b.Loop() {
		start := time.Now()
		c.Convert(p)
		quickest[0] = min(quickest[0], time.Since(start))
		b.StopTimer()
		start = time.Now()
		bare()
		quickest[1] = min(quickest[1], time.Since(start))
		b.StartTimer()
	}
	b.ReportMetric(float64(quickest[0].Microseconds()), "µs-quickest")
	b.ReportMetric(float64(quickest[0])/float64(quickest[1]), "x-bare")
}

func BenchmarkBareGoldmark(b *testing.B) {
	p, _ := benchmarkPage(b)
	m := goldmark.New()
	b.SetBytes(int64(len(p.Body)))
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := m.Convert(p.Body, &out); err != nil {
			b.Fatal(err)
		}
	}
}
