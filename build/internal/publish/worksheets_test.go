package publish

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestWorksheetList: worksheets stand under the first stage that holds them;
// one that no stage holds serves at any stage and comes first.
func TestWorksheetList(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	thrice := o.Supply.WorksheetPages[0]
	thrice.ID, thrice.Title, thrice.Summary = "thrice", "Thrice", "Triples a number: slowly. It shows how."
	o.Supply.WorksheetPages = append(o.Supply.WorksheetPages, thrice)
	mustBuild(t, New(o))
	out := filepath.Join(root, "public")
	got := read(t, out, "worksheets.html")
	want := regexp.MustCompile(`<h2>At any stage</h2><a href="./worksheets/thrice.html">Thrice</a><h2>1\. [^<]*</h2><a href="./worksheets/twice.html">Twice</a>`)
	if !want.MatchString(got) {
		t.Errorf("got %s\nwant in it %s", got, want)
	}
}

// TestWorksheetScript: only pages that hold a worksheet load its script, and
// the single file carries it.
func TestWorksheetScript(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	o.Single = filepath.Join(root, "one.html")
	mustBuild(t, New(o))
	out := filepath.Join(root, "public")
	for name, holds := range map[string]bool{"stages/hold.html": true, "worksheets/twice.html": true, "index.html": false, "about/limits.html": false, "worksheets.html": false} {
		if got := strings.Contains(read(t, out, name), "assets/worksheets."); got != holds {
			t.Errorf("%s: loads the script of worksheets: %v, want %v", name, got, holds)
		}
	}
	one := read(t, root, "one.html")
	for _, part := range []string{`document.title+="!"`, `document.title+="="`} {
		if !strings.Contains(one, part) {
			t.Errorf("the single file lacks %s", part)
		}
	}
}

// TestStoredScript: only the page that shows what is stored loads its script.
// The phone stores that script too, and the single file carries it.
func TestStoredScript(t *testing.T) {
	root := tree(t, small)
	write(t, root, "content/about/limits.md", small["content/about/limits.md"]+"\n:: stored\n")
	o := options(root)
	o.Single = filepath.Join(root, "one.html")
	mustBuild(t, New(o))
	out := filepath.Join(root, "public")
	name := regexp.MustCompile(`assets/stored\.[0-9a-f]{16}\.js`)
	for page, holds := range map[string]bool{"about/limits.html": true, "stages/hold.html": false, "index.html": false} {
		if got := name.MatchString(read(t, out, page)); got != holds {
			t.Errorf("%s: loads the script of what is stored: %v, want %v", page, got, holds)
		}
	}
	if got := name.FindString(read(t, out, "worker.js")); got == "" || got != name.FindString(read(t, out, "about/limits.html")) {
		t.Errorf("got %q in the list of what phones store, want the script that the page names", got)
	}
	if !strings.Contains(read(t, root, "one.html"), `document.title+="&"`) {
		t.Errorf("the single file lacks the script")
	}
}

func TestBrief(t *testing.T) {
	long := strings.Repeat("word ", 30)
	for _, c := range []struct{ purpose, want string }{
		{"Doubles a number.", "Doubles a number."},
		{"Pressure and temperature: bubble, dew. More.", "Pressure and temperature."},
		{"How much to add. By weight: always.", "How much to add."},
		{"Whether it is tight, and why.", "Whether it is tight, and why."},
		{"How much air, " + long + ".", "How much air."},
	} {
		if got := brief(c.purpose); got != c.want {
			t.Errorf("%q: got %q, want %q", c.purpose, got, c.want)
		}
	}
}

func TestAlsoIn(t *testing.T) {
	for _, c := range []struct {
		stages []int
		want   string
	}{{nil, ""}, {[]int{5}, "also in stage 5"}, {[]int{5, 9}, "also in stages 5 and 9"}, {[]int{2, 5, 9}, "also in stages 2, 5 and 9"}} {
		if got := alsoIn(c.stages); got != c.want {
			t.Errorf("%v: got %q, want %q", c.stages, got, c.want)
		}
	}
}
