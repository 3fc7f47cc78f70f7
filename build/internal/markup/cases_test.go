package markup

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"changeout/build/internal/page"
)

// The specification of the blocks is testdata/markup, in the form of goldmark's own test files. A case is
//
//	number: title
//	OPTIONS: {"kind": "procedure"}        (this line may be missing)
//	//- - - - - - - - -//
//	source
//	//- - - - - - - - -//
//	expected
//	//= = = = = = = = = = = = = = = = = = = = = = = =//
//
// Expected is the HTML, and then the page must have no problems; in files named problems-… it is the problems, one a line
// as “line: text — hint”. Lines of such a source count from 1. Run one case with -run 'TestCases/caution/2'.
const (
	partSeparator = "//- - - - - - - - -//"
	caseSeparator = "//= = = = = = = = = = = = = = = = = = = = = = = =//"
	casesFolder   = "../../../testdata/markup"
)

var update = flag.Bool("update", false, "write what the program gives into the case files; read the diff afterwards")

type testCase struct {
	number           int
	title, options   string
	source, expected string
}

func TestCases(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(casesFolder, "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no case files in %s (%v)", casesFolder, err)
	}
	converter := New(testEnv(t))
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".txt")
		t.Run(name, func(t *testing.T) {
			cases := readCases(t, file)
			if len(cases) == 0 {
				t.Fatalf("%s holds no case", file)
			}
			for i := range cases {
				c := &cases[i]
				t.Run(strconv.Itoa(c.number), func(t *testing.T) {
					result := converter.Convert(testPage(t, c))
					got := string(result.HTML)
					if strings.HasPrefix(name, "problems-") {
						got = problemLines(result)
					} else if len(result.Problems) > 0 && !*update {
						t.Errorf("%s, case %d, %s: unexpected problems\n%s", file, c.number, c.title, problemLines(result))
					}
					got = strings.TrimRight(got, "\n") + "\n"
					if *update {
						c.expected = got
					} else if got != c.expected {
						t.Errorf("%s, case %d, %s\nsource:\n%s\ndifference (- want, + got):\n%s\nIf the change is meant: go test ./build/internal/markup -run TestCases -update, then read the diff.",
							file, c.number, c.title, c.source, diff(c.expected, got))
					}
				})
			}
			if *update {
				writeCases(t, file, cases)
			}
		})
	}
}

func readCases(t *testing.T, file string) []testCase {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var cases []testCase
	for block := range strings.SplitSeq(string(data), caseSeparator+"\n") {
		if strings.TrimSpace(block) == "" {
			continue
		}
		parts := strings.Split(block, partSeparator+"\n")
		if len(parts) != 3 {
			t.Fatalf("%s: a case has %d parts, want 3 (head, source, expected):\n%s", file, len(parts), block)
		}
		head, options, _ := strings.Cut(strings.TrimSpace(parts[0]), "\n")
		number, title, _ := strings.Cut(head, ":")
		n, err := strconv.Atoi(number)
		if err != nil || n != len(cases)+1 {
			t.Fatalf("%s: case is numbered %q, want %d", file, number, len(cases)+1)
		}
		cases = append(cases, testCase{n, strings.TrimSpace(title), strings.TrimPrefix(options, "OPTIONS:"), parts[1], parts[2]})
	}
	return cases
}

func writeCases(t *testing.T, file string, cases []testCase) {
	t.Helper()
	var b strings.Builder
	for _, c := range cases {
		fmt.Fprintf(&b, "%d: %s\n", c.number, c.title)
		if c.options != "" {
			fmt.Fprintf(&b, "OPTIONS:%s\n", c.options)
		}
		fmt.Fprintf(&b, "%s\n%s%s\n%s%s\n\n", partSeparator, c.source, partSeparator, c.expected, caseSeparator)
	}
	if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

func testPage(t *testing.T, c *testCase) *page.Page {
	t.Helper()
	p := &page.Page{Path: "stages/test.md", File: "test.md", Kind: page.Reference, Title: "Test", Body: []byte(c.source), BodyLine: 1}
	if c.options != "" {
		var o struct{ Kind, Path string }
		if err := json.Unmarshal([]byte(c.options), &o); err != nil {
			t.Fatalf("case %d: options: %v", c.number, err)
		}
		if o.Kind != "" {
			p.Kind = o.Kind
		}
		if o.Path != "" {
			p.Path = o.Path
		}
	}
	return p
}

func problemLines(r *Result) string {
	var b strings.Builder
	for _, p := range r.Problems {
		b.WriteString(strings.TrimPrefix(p.String(), p.File+":") + "\n")
	}
	if b.Len() == 0 {
		return "(none)\n"
	}
	return b.String()
}

// diff shows both texts line by line, with the lines they share once, and spaces at line ends visible.
func diff(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	// Longest common subsequence; case texts are short.
	table := make([][]int, len(a)+1)
	for i := range table {
		table[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i] == b[j] {
				table[i][j] = table[i+1][j+1] + 1
			} else {
				table[i][j] = max(table[i+1][j], table[i][j+1])
			}
		}
	}
	visible := func(s string) string {
		trimmed := strings.TrimRight(s, " \t")
		return trimmed + strings.Repeat("·", len(s)-len(trimmed)) + "\n"
	}
	var out strings.Builder
	for i, j := 0, 0; i < len(a) || j < len(b); {
		switch {
		case i < len(a) && j < len(b) && a[i] == b[j]:
			out.WriteString("  " + visible(a[i]))
			i, j = i+1, j+1
		case j == len(b) || i < len(a) && table[i+1][j] >= table[i][j+1]:
			out.WriteString("- " + visible(a[i]))
			i++
		default:
			out.WriteString("+ " + visible(b[j]))
			j++
		}
	}
	return out.String()
}

func TestDiffShowsBothSides(t *testing.T) {
	got := diff("a\nb \nc\n", "a\nB\nc\n")
	want := "  a\n- b·\n+ B\n  c\n  \n"
	if got != want {
		t.Errorf("diff: got\n%q, want\n%q", got, want)
	}
}

// testSources is a bibliography of four entries.
type testSources map[string][3]string

func (s testSources) Source(key string) (label, url, kind string, ok bool) {
	e, ok := s[key]
	return e[0], e[1], e[2], ok
}

func (s testSources) Keys() []string {
	var keys []string
	for k := range s {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func testEnv(t testing.TB) Env {
	t.Helper()
	content := fstest.MapFS{
		"hazards.md": {Data: []byte("| Hazard | Words | Lowest |\n| --- | --- | --- |\n" +
			"| stored charge | DC link, capacitor* | WARNING |\n| flame | torch, flame | WARNING |\n" +
			"| hot parts | hot pipe | CAUTION |\n| wet board | splash | NOTICE |\n")},
		"about/glossary.md": {Data: []byte("---\ntitle: Glossary\nsummary: Words.\nkind: reference\nupdated: 2026-11-25\n---\n\n" +
			"## micron\n\nA thousandth of a millimetre of mercury.\n\n## RCL (refrigerant concentration limit)\n\nA limit.\n")},
	}
	book, problems := page.Read(page.Layer{FS: content, Name: "content"})
	for _, p := range problems {
		t.Fatalf("test content: %s", p)
	}
	return Env{
		Sources: testSources{
			"cfr-82-156":  {"40 CFR 82.156 <Evacuation>", "https://example.org/cfr?a=1&b=2", "print"},
			"practice-58": {"Brazing article", "example.org/58", "secondary"},
			"copper-book": {"Copper tube handbook", "", "memory"},
			"z535":        {"ANSI Z535.4", "", ""},
		},
		Worksheets: Embeds{IDs: []string{"saturation", "vacuum-hold"}, Field: func(unit, _, _ string) Field {
			if unit == "°C" {
				return Field{Units: []string{"°C", "*°F"}, Signed: true}
			}
			return Field{}
		}, HTML: func(id string, place Place) ([]byte, error) {
			if id == "saturation" {
				return fmt.Appendf(nil, "<section data-worksheet=\"%s\" data-root=\"%s\">Worked%s</section>\n",
					id, place.Base, place.Cite("z535", "table 1")), nil
			}
			return fmt.Appendf(nil, "<section data-worksheet=\"%s\"></section>\n", id), nil
		}},
		Tables: Embeds{IDs: []string{"water-boiling-point"}},
		Assessment: func(base string) ([]byte, error) {
			return fmt.Appendf(nil, "<section id=\"assess\" data-root=\"%s\"></section>\n", base), nil
		},
		Glossary: book.Glossary,
		Hazards:  book.Hazards,
	}
}
