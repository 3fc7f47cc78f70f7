package searchindex

import (
	"bytes"
	"strings"
	"testing"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
)

func TestLinesAndRead(t *testing.T) {
	p := Page{URL: "stages/hold.html", Kind: "procedure", Stage: 8, Title: "Hold \\ it", Summary: "Two\n lines,\ttabs.", Places: []markup.Passage{
		{Kind: markup.PassageHeading, ID: "steps", Text: "Steps"},
		{Kind: markup.PassageStep, ID: "step-low", Text: "Stay  < 500\u00a0micron. </script>"},
		{Kind: markup.PassageWhy, Text: " At 20 °C it \\l boils. "},
		{Kind: markup.PassageDecision, ID: "decide-is-the-makers-limit-kept-or", Text: "Is the maker’s limit kept, or not?"},
		{Kind: markup.PassageWait, ID: "wait-hold", Text: "Hold · 10 min"},
		{Kind: markup.PassageCaution, ID: "fire", Text: "It burns."},
		{Kind: Field, ID: "hold-log", Text: "Log of readings"},
		{Kind: Holds, ID: "worksheet-hold", Text: "Works out: x"},
		{Kind: Holds, ID: "table-water", Text: "Water"},
	}}
	file := Join(Head([]page.Saying{{Said: []string{"pull down", "evac"}, Means: []string{"vacuum"}}}), [][]byte{p.Lines()})
	if bytes.ContainsRune(file, '<') {
		t.Errorf("got %q, want no < in it: the index lies inside a page", file)
	}
	for _, want := range []string{"\nh=\t", "\nslow\t", "\ny\t", "\nd=\t", "\nw=\t", "\nc#fire\t", "\nilog\t", "\nx=\t", "\nxwater\t"} {
		if !bytes.Contains(file, []byte(want)) {
			t.Errorf("got %q, want %q in it: an id that follows from its place is not written", file, want)
		}
	}
	x, err := Read(file)
	if err != nil {
		t.Fatal(err)
	}
	if x.Units < 40 || len(x.Pages) != 1 || len(x.Sayings) != 1 || strings.Join(x.Sayings[0].Said, "|") != "pull down|evac" {
		t.Fatalf("got %d units, %+v, %+v", x.Units, x.Sayings, x.Pages)
	}
	got := x.Pages[0]
	if got.URL != p.URL || got.Kind != p.Kind || got.Stage != 8 || got.Title != p.Title || got.Summary != "Two lines, tabs." || len(got.Places) != len(p.Places) {
		t.Errorf("got %+v, want %+v", got, p)
	}
	for i, want := range []string{"Steps", "Stay < 500\u00a0micron. </script>", "At 20 °C it \\l boils.", "Is the maker’s limit kept, or not?"} {
		if got.Places[i].Text != want || got.Places[i].Kind != p.Places[i].Kind || got.Places[i].ID != p.Places[i].ID {
			t.Errorf("place %d: got %+v, want %q", i, got.Places[i], want)
		}
	}
	for i, place := range p.Places {
		if got.Places[i].ID != place.ID {
			t.Errorf("place %d: got id %q, want %q", i, got.Places[i].ID, place.ID)
		}
	}
	if _, err := Read([]byte("what is this\n")); err == nil {
		t.Errorf("got no error from a line that is no record")
	}
}

// TestShortened: what stands round the work is cut down, the work itself never.
func TestShortened(t *testing.T) {
	long := "It works so. At 500 micron it boils. Nobody knows why."
	r := &markup.Result{Passages: []markup.Passage{
		{Kind: markup.PassageStep, ID: "step-a", Text: long},
		{Kind: markup.PassageWhy, Text: long},
		{Kind: markup.PassageWhy, Text: "Hot copper oxidises."},
		{Kind: markup.PassageTerm, Text: long},
		{Kind: markup.PassageTable, Text: "Bore · 12 mm"},
		{Kind: markup.PassageTable, Text: "burnt-before · Yes"},
	}}
	texts := func(kind string) string {
		var list []string
		for _, p := range FromContent(&page.Page{Kind: kind}, r).Places {
			list = append(list, p.Text)
		}
		return strings.Join(list, "|")
	}
	if got, want := texts(page.Procedure), long+"|At 500 micron it boils.|It works so. At 500 micron it boils.|Bore · 12 mm|burnt-before · Yes"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if got, want := texts(page.Reference), long+"|At 500 micron it boils.|It works so. At 500 micron it boils.|Bore"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// TestUnits: the conversions of the index are those of calc/unit, seen from
// outside: 500 micron is 66.66 Pa and 75 psi is 517.1 kPa (NIST SP 811, B.8).
func TestUnits(t *testing.T) {
	head := string(Head(nil))
	for _, want := range []string{"U\tabsolute\t0.1333224\t0\tmicron", "U\tgauge\t6894.757\t0\tpsig\tpsi gauge", "U\teither\t6894.757\t0\tpsi\n", "U\ttemperature\t0.5555556\t459.67\tF\t°F", "U\tduration\t60\t0\tmin", "U\tabsolute\t-3386.389\t-29.92125\tinHgv\tinHg\tin Hg"} {
		if !strings.Contains(head, want) {
			t.Errorf("want the record %q", want)
		}
	}
	seen := map[string]bool{}
	for line := range strings.Lines(head) {
		for _, spelling := range strings.Split(strings.TrimSuffix(line, "\n"), "\t")[4:] {
			if seen[spelling] {
				t.Errorf("the spelling %q stands for two units", spelling)
			}
			seen[spelling] = true
		}
	}
}

func TestCheck(t *testing.T) {
	index := Join(Head(nil), [][]byte{Page{URL: "a.html", Title: "Vacuum", Places: []markup.Passage{{Kind: markup.PassageStep, ID: "step-x", Text: "Open the back-EMF valve."}}}.Lines()})
	says := func(means ...string) []page.Saying {
		return []page.Saying{{Said: []string{"vac"}, Means: means, File: "content/search.md", Line: 7}}
	}
	if got := Check(index, says("vacuum", "back-EMF valve")); len(got) != 0 {
		t.Errorf("got %v, want no problem", got)
	}
	got := Check(index, says("vacuum", "slugging"))
	if want := "content/search.md:7: “slugging” is not said in the handbook: no page has the word “slugging” — write the word that pages use, or take it out"; len(got) != 1 || got[0].String() != want {
		t.Errorf("got  %v\nwant %s", got, want)
	}
}
