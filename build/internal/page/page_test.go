package page

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"changeout/build/internal/report"
)

const goodHeader = "---\ntitle: Hold\nsummary: One sentence.\nkind: procedure\nstage: 8\nupdated: 2026-11-25\n---\nBody.\n"

func TestParse(t *testing.T) {
	p, problems := Parse("stages/hold.md", "content/stages/hold.md", []byte(goodHeader))
	if len(problems) > 0 {
		t.Errorf("problems: got %v, want none", problems)
	}
	want := Page{Path: "stages/hold.md", ID: "stages/hold", URL: "stages/hold.html", File: "content/stages/hold.md", Title: "Hold",
		Summary: "One sentence.", Kind: Procedure, Stage: 8, Updated: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), BodyLine: 8}
	body := string(p.Body)
	p.Body = nil
	if fmt.Sprint(*p) != fmt.Sprint(want) {
		t.Errorf("got  %+v\nwant %+v", *p, want)
	}
	if body != "Body.\n" {
		t.Errorf("body: got %q, want %q", body, "Body.\n")
	}
	if got := p.Base(); got != "../" {
		t.Errorf("Base: got %q, want ../", got)
	}
}

func TestParseTakesWindowsLinesAndByteOrderMark(t *testing.T) {
	p, problems := Parse("a.md", "a.md", []byte("\ufeff"+strings.ReplaceAll(goodHeader, "\n", "\r\n")))
	if len(problems) > 0 || p.Title != "Hold" || string(p.Body) != "Body.\n" || p.BodyLine != 8 {
		t.Errorf("got title %q, body %q on line %d, problems %v", p.Title, p.Body, p.BodyLine, problems)
	}
}

func TestHeaderProblems(t *testing.T) {
	for _, c := range []struct {
		name, source string
		want         []string
	}{
		{"no header", "Words.\n", []string{"a.md:1: page has no header — " + headerExample}},
		{"empty file", "", []string{"a.md:1: page has no header — " + headerExample}},
		{"not closed", "---\ntitle: A\n", []string{"a.md:1: header is not closed — put --- on a line of its own below the last key"}},
		{"unknown key, near miss", strings.Replace(goodHeader, "summary", "sumary", 1), []string{
			"a.md:1: header has no summary — add a line “summary: …”",
			"a.md:3: unknown header key sumary — did you mean summary?"}},
		{"unknown key", strings.Replace(goodHeader, "stage: 8", "stage: 8\nauthor: me", 1), []string{
			"a.md:6: unknown header key author — known: kind, stage, summary, title, updated"}},
		{"key twice", strings.Replace(goodHeader, "stage: 8", "stage: 8\nstage: 9", 1), []string{
			"a.md:6: header key stage is given twice — first on line 5"}},
		{"no colon, empty value", strings.Replace(goodHeader, "title: Hold", "title:\nwords", 1), []string{
			"a.md:2: header key title is empty", "a.md:3: header line is not “key: value”: words"}},
		{"bad kind", strings.Replace(goodHeader, "procedure", "recipe", 1), []string{"a.md:4: kind is recipe — use procedure or reference"}},
		{"stage too high", strings.Replace(goodHeader, "stage: 8", "stage: 11", 1), []string{"a.md:5: stage is 11 — use a whole number from 1 to 10"}},
		{"stage no number", strings.Replace(goodHeader, "stage: 8", "stage: NaN", 1), []string{"a.md:5: stage is NaN — use a whole number from 1 to 10"}},
		{"procedure without stage", strings.Replace(goodHeader, "stage: 8\n", "", 1), []string{"a.md:1: header has no stage — add a line “stage: …”"}},
		{"bad day", strings.Replace(goodHeader, "2026-11-25", "2026-02-30", 1), []string{"a.md:6: updated is 2026-02-30 — write the day as 2026-11-25"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, problems := Parse("a.md", "a.md", []byte(c.source))
			if p == nil || p.Title == "" {
				t.Errorf("page is not usable: %+v", p)
			}
			compare(t, report.Sorted(problems), c.want)
		})
	}
}

func TestSlug(t *testing.T) {
	for words, want := range map[string]string{
		"Stored charge!": "stored-charge", "The maker’s manual": "the-makers-manual", "maker's": "makers", "R-410A": "r-410a", "  a  b ": "a-b", "µm": "m", "…": "",
	} {
		if got := Slug(words); got != want {
			t.Errorf("Slug(%q): got %q, want %q", words, got, want)
		}
	}
	if got, want := string(AppendSlug([]byte("step-"), "one two three four", 2)), "step-one-two"; got != want {
		t.Errorf("two words: got %q, want %q", got, want)
	}
}

// tree is a small handbook; tests change it before they read it.
func tree() fstest.MapFS {
	file := func(s string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(s)} }
	reference := func(title string) *fstest.MapFile {
		return file("---\ntitle: " + title + "\nsummary: S.\nkind: reference\nupdated: 2026-11-25\n---\n\nBody of " + title + ".\n")
	}
	return fstest.MapFS{
		"index.md":        reference("Start"),
		"stages/hold.md":  file(goodHeader),
		"stages/fig.svg":  file("<svg/>"),
		"about/limits.md": reference("Limits"),
		"about/glossary.md": file("---\ntitle: Glossary\nsummary: S.\nkind: reference\nupdated: 2026-11-25\n---\n\nWords.\n\n" +
			"## micron\n\nA small\npressure.\n\nMore.\n\n## RCL (refrigerant concentration limit)\n\nA limit.\n"),
		"hazards.md": file("# Hazards\n\n| Word | Meaning |\n| --- | --- |\n| DANGER | will kill |\n\n" +
			"| Hazard | Words | Lowest |\n|---|---|---|\n| stored charge | DC link, `capacitor*` | **WARNING** |\n"),
		"contents.md":   file("# Contents\n\n- [Start](index.md)\n- The job\n  - [Hold it](stages/hold.md)\n- About\n  - [Limits](about/limits.md)\n  - [Saturation](worksheet:saturation)\n  1. [Glossary](./about/glossary.md#top)\n"),
		"stages.md":     file("1. Find: why.\n2. Make safe: lock\n   it off.\n3. [Test](x.md): oil.\n"),
		"_draft.md":     file("left out"),
		".git/config":   file("left out"),
		"_notes/old.md": file("left out"),
	}
}

func TestRead(t *testing.T) {
	book, problems := Read(Layer{tree(), "content"})
	compare(t, report.Sorted(problems), nil)
	got := ""
	for _, p := range book.Pages {
		got += p.Path + " "
	}
	if want := "about/glossary.md about/limits.md index.md stages/hold.md "; got != want {
		t.Errorf("pages: got %s, want %s", got, want)
	}
	got = ""
	for _, p := range book.Order {
		got += p.ID
		if p.Prev != nil {
			got += "<" + p.Prev.ID
		}
		if p.Next != nil {
			got += ">" + p.Next.ID
		}
		got += " "
	}
	if want := "index>stages/hold stages/hold<index>about/limits about/limits<stages/hold>about/glossary about/glossary<about/limits "; got != want {
		t.Errorf("order: got  %s\nwant %s", got, want)
	}
	if got, want := entries(book.Contents), "Start=index.md The job( Hold it=stages/hold.md ) About( Limits=about/limits.md Saturation:worksheet:saturation Glossary=about/glossary.md ) "; got != want {
		t.Errorf("contents: got  %s\nwant %s", got, want)
	}
	if got, want := fmt.Sprintf("%d|%s|%s|%s|%s|%s", len(book.Stages), book.Stages[1].Title, book.Stages[1].Summary,
		book.Stages[2].Title, book.Stages[2].Summary, book.Stages[0].Title), "3|Make safe|lock it off.|Test|oil.|Find"; got != want {
		t.Errorf("stages: got %q, want %q", got, want)
	}
	if len(book.Assets) != 1 || book.Assets[0].Path != "stages/fig.svg" {
		t.Errorf("assets: got %v, want stages/fig.svg", book.Assets)
	} else if data, err := book.Assets[0].Read(); err != nil || string(data) != "<svg/>" {
		t.Errorf("asset: got %q, %v", data, err)
	}
}

func entries(list []*Entry) string {
	s := ""
	for _, e := range list {
		s += e.Title
		switch {
		case e.Page != nil:
			s += "=" + e.Page.Path
		case e.Target != "":
			s += ":" + e.Target
		}
		if len(e.Children) > 0 {
			s += "( " + entries(e.Children) + ")"
		}
		s += " "
	}
	return s
}

func TestGlossary(t *testing.T) {
	book, _ := Read(Layer{tree(), "content"})
	for words, want := range map[string]string{"micron": "micron", "Microns": "micron", "RCL": "rcl", "refrigerant concentration limit": "rcl", "nothing": "", "": ""} {
		term, ok := book.Glossary.Find(words)
		if term.ID != want || ok != (want != "") {
			t.Errorf("Find(%q): got %q, %v; want %q", words, term.ID, ok, want)
		}
	}
	if got, want := book.Glossary.Terms[0].Definition, "A small pressure."; got != want {
		t.Errorf("definition: got %q, want %q", got, want)
	}
	if got := book.Glossary.Terms[1].Line; got != 17 {
		t.Errorf("line of RCL: got %d, want 17", got)
	}
}

func TestHazards(t *testing.T) {
	book, _ := Read(Layer{tree(), "content"})
	h, ok := book.Hazards.Find("stored-charge")
	if got, want := fmt.Sprintf("%v %q %q %v %v %d", ok, h.Name, h.Words, h.Lowest, len(book.Hazards.Rows), h.Line), `true "stored charge" ["dc link" "capacitor*"] WARNING 1 9`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if !(Notice < Caution && Caution < Warning && Warning < Danger) {
		t.Error("signal words are not in the order of gravity")
	}
	for word, want := range map[string]Signal{"danger": Danger, "Notice": Notice, "": NoSignal, "HAZARD": NoSignal} {
		if got := ParseSignal(word); got != want {
			t.Errorf("ParseSignal(%q): got %v, want %v", word, got, want)
		}
	}
}

func TestListProblems(t *testing.T) {
	fs := tree()
	fs["contents.md"] = &fstest.MapFile{Data: []byte("- [Hold](stages/hodl.md)\n- [A](index.md)\n- [B](index.md)\n")}
	fs["stages.md"] = &fstest.MapFile{Data: []byte("1. A: a.\n3. B: b.\n3. C: c.\n")}
	fs["hazards.md"] = &fstest.MapFile{Data: []byte("| Hazard | Words | Lowest |\n|---|---|---|\n| a | b | LOUD |\n| a | b | NOTICE |\n| c |\n")}
	fs["about/glossary.md"] = &fstest.MapFile{Data: []byte("---\ntitle: G\nsummary: S.\nkind: reference\nupdated: 2026-11-25\n---\n## micron\n\nA.\n\n## Micron\n\nB.\n\n## torr\n")}
	_, problems := Read(Layer{fs, "content"})
	compare(t, report.Sorted(problems), []string{
		"content/about/glossary.md:11: term Micron is defined twice — first on line 7",
		"content/about/glossary.md:15: term torr has no definition — write a paragraph below it",
		"content/contents.md:1: no page stages/hodl.md — did you mean stages/hold.md?",
		"content/contents.md:3: page index.md is listed twice — a page has one place in the reading order",
		"content/hazards.md:3: lowest signal word is “LOUD” — use DANGER, WARNING, CAUTION or NOTICE",
		"content/hazards.md:4: hazard a stands twice in the table",
		"content/hazards.md:5: row has fewer than three cells — hazard | words in a step that call for it | lowest signal word",
		"content/stages.md:2: stage is numbered 3 — the next number is 2",
	})
}

func TestCompanyLayer(t *testing.T) {
	company := fstest.MapFS{
		"about/limits.md": {Data: []byte("---\ntitle: Our limits\nsummary: S.\nkind: reference\nupdated: 2026-11-25\n---\n")},
		"our/rules.md":    {Data: []byte("---\ntitle: Our rules\nsummary: S.\nkind: reference\nupdated: 2026-11-25\nowner: us\n---\n")},
	}
	book, problems := Read(Layer{tree(), "content"}, Layer{company, "/srv/company"})
	compare(t, report.Sorted(problems), []string{"/srv/company/our/rules.md:6: unknown header key owner — known: kind, stage, summary, title, updated"})
	if p := book.Page("about/limits.md"); p == nil || p.Title != "Our limits" || !p.Company {
		t.Errorf("same path does not replace: %+v", p)
	}
	last := book.Order[len(book.Order)-1]
	if last.Path != "our/rules.md" || last.Prev == nil || last.Prev.Path != "about/glossary.md" {
		t.Errorf("new page is not at the end of the order: %+v", last)
	}
	if got, want := entries(book.Contents[3:]), companyGroup+"( Our rules=our/rules.md ) "; got != want {
		t.Errorf("contents: got %q, want %q", got, want)
	}
}

func TestReread(t *testing.T) {
	fs := tree()
	book, _ := Read(Layer{fs, "content"})
	fs["stages/hold.md"] = &fstest.MapFile{Data: []byte(strings.Replace(goodHeader, "Hold", "Hold longer", 1))}
	p, problems := book.Reread("stages/hold.md")
	if p == nil || p.Title != "Hold longer" || len(problems) > 0 {
		t.Fatalf("got %+v, %v", p, problems)
	}
	if book.Page("stages/hold.md") != p || book.Order[1] != p || book.Order[0].Next != p || book.Order[2].Prev != p || book.Contents[1].Children[0].Page != p {
		t.Error("the old page is still somewhere in the book")
	}
	for _, path := range []string{"about/glossary.md", "hazards.md", "contents.md", "new.md"} {
		if p, _ := book.Reread(path); p != nil {
			t.Errorf("Reread(%s): got a page, want nil: the change reaches further", path)
		}
	}
	delete(fs, "stages/hold.md")
	if p, _ := book.Reread("stages/hold.md"); p != nil {
		t.Error("Reread of a vanished file gives a page")
	}
}

func TestReadOfNothing(t *testing.T) {
	book, problems := Read(Layer{FS: fstest.MapFS{}, Name: "content"}, Layer{})
	if book == nil || book.Glossary == nil || book.Hazards == nil || len(problems) > 0 {
		t.Errorf("got %+v, %v", book, problems)
	}
	_, problems = Read(Layer{FS: os.DirFS("no-such-folder"), Name: "content"})
	if len(problems) != 1 || !strings.Contains(problems[0].Text, "cannot read the folder") {
		t.Errorf("missing folder: got %v, want one problem", problems)
	}
}

func compare(t *testing.T, problems []report.Problem, want []string) {
	t.Helper()
	var got []string
	for _, p := range problems {
		got = append(got, p.String())
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("problems: got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestSayings: every layer's words count, and what is wrong is said.
func TestSayings(t *testing.T) {
	table := "# Words\n\n| People say | Here |\n| --- | --- |\n"
	layer := func(name, rows string) Layer {
		return Layer{FS: fstest.MapFS{SearchPath: {Data: []byte(table + rows)}}, Name: name}
	}
	book, problems := Read(layer("content", "| Bang,  liquid slug | slugging |\n"), layer("ours", "| jug | cylinder, recovery cylinder |\n"))
	if len(problems) != 0 || fmt.Sprint(book.Sayings) != "[{[bang liquid slug] [slugging] content/search.md 5} {[jug] [cylinder recovery cylinder] ours/search.md 5}]" {
		t.Errorf("got %v, problems %v", book.Sayings, problems)
	}
	_, problems = Read(layer("content", "| a | b | c |\n| | b |\n| one two three four five | b |\n| bang | b |\n"), layer("ours", "| bang | c |\n"))
	var got []string
	for _, p := range report.Sorted(problems) {
		got = append(got, p.String())
	}
	want := []string{"content/search.md:5: row has 3 cells — what people say | what this handbook says",
		"content/search.md:6: row has an empty cell — what people say | what this handbook says",
		"content/search.md:7: “one two three four five” has 5 words — a phrase has at most 4",
		"ours/search.md:5: “bang” is explained twice — first in content/search.md:8"}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
