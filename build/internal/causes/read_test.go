package causes

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"changeout/build/internal/page"
	"changeout/build/internal/report"
	"changeout/calc"
	"changeout/calc/cause"
	"changeout/calc/unit"
)

// small is a whole model in one page: two causes, one mechanism, five checks. Its lines are numbered in the problems.
const small = `---
title: Small
summary: A model for tests; invented.
kind: reference
updated: 2026-01-01
---
| Cause | Name | Prior | Again | What removes it | Source |
| --- | --- | --- | --- | --- | --- |
| dust | Dust in the coil | 0.2 | yes | Clean it. [How](../stages/clean.md#step-wash) | [@book] |
| luck | Bad luck | 0.1 | no | Nothing. | editorial |

| Mechanism | Name | What happens | Source |
| --- | --- | --- | --- |
| heat | Heat | It burns. | [@book, page 3] |

| Cause | Leads to | Source |
| --- | --- | --- |
| dust | heat ++ | editorial |

## Looks

| Check | Question | If yes, it reads | Fact | How | Effort | From |
| --- | --- | --- | --- | --- | --- | --- |
| grey | Is it grey? | It is grey | colour | [Look](../stages/clean.md) | 5 min, look | |
| slow | Is the air slow? | Air slow | air | [Measure](worksheet:air) | 30 min, tools, before a part | air share < 70 %; yes only; not if odd |
| cat | Was there a black cat? | A black cat | cat | [Ask](../stages/clean.md) | 1 min, look | |
| thirteen | Was it the thirteenth? | The thirteenth | day | [Ask](../stages/clean.md) | 1 min, look | air: yes odd; no fine |
| burnt | Is it burnt? | Burnt | burn | [Look](../stages/clean.md) | 9 min, danger | |

## What they say

| Check | Sign of | Leak | Weights | Source |
| --- | --- | --- | --- | --- |
| grey | causes | 0.1 | dust ++, luck − | [@book] |
| slow | causes | 0.05 | dust +++ | [@book] |
| cat | causes | 0.05 | luck 0.6 | editorial |
| thirteen | causes | 0.05 | luck + | editorial |
| burnt | mechanisms | 0.05 | heat ++ | editorial |
`

// air is a worksheet with one output and two verdicts.
func air(id string) *calc.Worksheet {
	if id != "air" {
		return nil
	}
	return &calc.Worksheet{ID: "air", Title: "Air", Outputs: []calc.Output{{ID: "share", Label: "Share", Quantity: unit.Fraction, Units: []string{"%"}}},
		Verdicts: []calc.Verdict{{ID: "fine", Title: "Fine"}, {ID: "odd", Title: "Odd"}}}
}

func readText(t *testing.T, text string) (*Model, []report.Problem) {
	t.Helper()
	book, problems := page.Read(page.Layer{FS: fstest.MapFS{"causes/all.md": {Data: []byte(text)}}, Name: "content"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return Read(book, air)
}

func TestSmallModel(t *testing.T) {
	m, problems := readText(t, small)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	want := "cause\tdust\tDust in the coil\t0.2\trecurs\n" +
		"cause\tluck\tBad luck\t0.1\tpasses\n" +
		"mechanism\theat\tHeat\n" +
		"leads\tdust\theat\t0.7\n" +
		"finding\tgrey\tIt is grey\tcauses\tcolour\t0.1\t5\t0\t-\n" +
		"sign\tgrey\tdust\t0.7\n" +
		"sign\tgrey\tluck\t0.05\n" +
		"finding\tslow\tAir slow\tcauses\tair\t0.05\t30\t1\tbefore\n" +
		"sign\tslow\tdust\t0.85\n"
	if got := m.Engine(); !strings.HasPrefix(got, want) {
		t.Errorf("engine lines: got\n%s\nwant them to start with\n%s", got, want)
	}
	engine, rest, _ := strings.Cut(string(m.Data()), "\n\n")
	if _, _, fault := cause.Read(engine); fault != nil {
		t.Errorf("the engine refuses the lines: %v", fault)
	}
	for _, line := range []string{
		"removes\tdust\tClean it.\tstages/clean.html#step-wash",
		"means\theat\tIt burns.",
		"place\tlooks\tLooks",
		"ask\tslow\tlooks\tIs the air slow?\tMeasure\tworksheets/air.html",
		"limit\tslow\tair\tshare\tbelow\t0.7\tyes\todd",
		"verdict\tthirteen\tair\todd\tfine",
	} {
		if !strings.Contains(rest, line+"\n") {
			t.Errorf("no line %q in\n%s", line, rest)
		}
	}
	v := m.View("assets/causes.txt", "../")
	if len(v.Places) != 1 || len(v.Places[0].Checks) != 5 {
		t.Fatalf("places: got %+v", v.Places)
	}
	c := v.Places[0].Checks[1]
	if c.URL != "../worksheets/air.html" || !c.Before || c.RiskWord != "tools" || c.From == nil || c.From.Words != "yes with “Share” under 70\u00a0%" {
		t.Errorf("view of slow: got %+v %+v", c, c.From)
	}
}

// TestProblems changes one place of the small model and wants one sentence with the line and a hint.
func TestProblems(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		{"prior", "| 0.2 | yes", "| 1.2 | yes", "content/causes/all.md:9: prior is “1.2” — write a probability from 0.001 to 0.5"},
		{"prior not a number", "| 0.2 | yes", "| NaN | yes", "content/causes/all.md:9: prior is “NaN” — write a probability from 0.001 to 0.5"},
		{"again", "| 0.2 | yes", "| 0.2 | maybe", "content/causes/all.md:9: the cell “again” is “maybe” — write yes or no: would it kill the next compressor too?"},
		{"no source", "Nothing. | editorial |", "Nothing. | |", "content/causes/all.md:10: row has no source — cite one, [@key], or write editorial"},
		{"weights without source", "| luck 0.6 | editorial |", "| luck 0.6 | trade |", "content/causes/all.md:36: row has no source — cite one, [@key], or write editorial"},
		{"unknown mechanism", "| dust | heat ++", "| dust | heet ++", "content/causes/all.md:18: there is no mechanism “heet” — did you mean heat?"},
		{"unknown cause in weights", "| dust +++ |", "| dusk +++ |", "content/causes/all.md:35: there is no cause “dusk” — did you mean dust?"},
		{"unknown cause of leads", "| dust | heat ++", "| dist | heat ++", "content/causes/all.md:18: there is no cause “dist” — did you mean dust?"},
		{"unknown check", "| cat | causes", "| bat | causes", "content/causes/all.md:36: there is no check “bat” — did you mean cat?"},
		{"strength", "| dust +++ |", "| dust 1.0 |", "content/causes/all.md:35: strength of dust is “1.0” — write +++, ++, +, −, −− or a number from 0 to 0.99"},
		{"against a lead", "| dust | heat ++", "| dust | heat −", "content/causes/all.md:18: strength of heat is “−” — write +++, ++, +, −, −− or a number from 0 to 0.99"},
		{"under the leak", "| 0.05 | luck + |", "| 0.4 | luck + |", "content/causes/all.md:37: luck + is not above the leak, so it would speak against — lower the leak, or write a number"},
		{"leak", "| causes | 0.05 | dust +++", "| causes | 0 | dust +++", "content/causes/all.md:35: leak is “0” — write a probability from 0.005 to 0.5"},
		{"layer", "| cat | causes |", "| cat | reasons |", "content/causes/all.md:36: “sign of” is “reasons” — write causes or mechanisms"},
		{"twice", "| luck | Bad luck", "| dust | Bad luck", "content/causes/all.md:10: cause dust stands twice — content/causes/all.md:9"},
		{"strengths twice", "| cat | causes", "| slow | causes", "content/causes/all.md:36: strengths of slow stand twice — content/causes/all.md:35"},
		{"cause twice in a row", "dust ++, luck −", "dust ++, dust +", "content/causes/all.md:34: dust stands twice in the row"},
		{"id", "| grey | Is", "| Grey cloud | Is", "content/causes/all.md:24: id of a check is “Grey cloud” — use lower-case words with hyphens"},
		{"no question", "Is it grey?", "It is grey", "content/causes/all.md:24: question does not end with a question mark — ask what can be answered by yes or no"},
		{"no link", "[Look](../stages/clean.md) | 5 min", "Look | 5 min", "content/causes/all.md:24: the cell “how” has no link — link to the step or page that says how: [words](../stages/page.md#step-id)"},
		{"effort", "5 min, look", "5 min, easy", "content/causes/all.md:24: effort is “5 min, easy” — write “15 min, look”, “15 min, tools” or “15 min, danger”, perhaps with “, before a part”"},
		{"unknown worksheet", "air share <", "ear share <", "content/causes/all.md:25: there is no worksheet ear — write the id that “go run ./build compute” lists"},
		{"unknown output", "air share <", "air shore <", "content/causes/all.md:25: worksheet air has no output shore — did you mean share?"},
		{"unknown unit", "< 70 %", "< 70 K", "content/causes/all.md:25: “70 K” is not a value of the output share — known: %"},
		{"unknown verdict", "yes odd;", "yes old;", "content/causes/all.md:27: worksheet air has no verdict “old” — did you mean odd?"},
		{"worksheet not understood", "air share < 70 %", "when the air is slow", "content/causes/all.md:25: the worksheet that answers is not understood: when the air is slow; yes only; not if odd — " + answererHint},
		{"neither yes nor no", "air: yes odd;", "air: perhaps odd;", "content/causes/all.md:27: the worksheet that answers is not understood: air: perhaps odd; no fine — " + answererHint},
		{"column missing", "| Cause | Name | Prior |", "| Cause | Nome | Prior |", "content/causes/all.md:7: table has no column “name” — did you mean Nome?"},
		{"table missing", "| Mechanism | Name | What happens |", "| Mechanism | Name | What comes |", "content/causes/all.md:1: the pages below causes/ have no table “mechanism | name | what happens | source”"},
		{"no weights", "| thirteen | causes | 0.05 | luck + | editorial |\n", "", "content/causes/all.md:27: check thirteen has no weights — give it a row in a table “check | sign of | leak | weights | source”"},
		{"too few facts", "| thirteen | causes | 0.05 | luck + | ", "| thirteen | causes | 0.3 | luck + | ", "content/causes/all.md:10: no two independent facts can speak for luck, so it could never be called the cause — give it checks with different facts"},
		{"end of an element", "Bad luck", "Bad <luck", "content/causes/all.md:10: “<” stands in the cell “name” — write “under”"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if strings.Count(small, c.old) != 1 {
				t.Fatalf("%q stands %d times in the small model", c.old, strings.Count(small, c.old))
			}
			m, problems := readText(t, strings.Replace(small, c.old, c.new, 1))
			if m != nil {
				t.Error("a model came out")
			}
			for _, p := range problems {
				if p.String() == c.want {
					return
				}
			}
			t.Errorf("got %v\nwant %s", problems, c.want)
		})
	}
}

// TestTooLarge: the limits of the engine and of a phone.
func TestTooLarge(t *testing.T) {
	var rows strings.Builder
	for i := range 41 {
		id := "c" + string(rune('a'+i/20)) + string(rune('a'+i%20))
		rows.WriteString("| " + id + " | Name | 0.1 | yes | It. | editorial |\n")
	}
	text := strings.Replace(small, "| luck | Bad", rows.String()+"| luck | Bad", 1)
	text = strings.Replace(text, "| grey | causes | 0.1 | dust ++", "| grey | causes | 0.1 | "+everyOf(rows.String(), "0.5")+"dust ++", 1)
	text = strings.Replace(text, "| slow | causes | 0.05 | dust +++", "| slow | causes | 0.05 | "+everyOf(rows.String(), "0.5")+"dust +++", 1)
	_, problems := readText(t, text)
	if len(problems) != 1 || !strings.Contains(problems[0].Text, "the model cannot be used: line 41: ") {
		t.Errorf("43 causes: got %v, want the engine's limit", problems)
	}
}

func everyOf(rows, strength string) string {
	var b strings.Builder
	for line := range strings.Lines(rows) {
		b.WriteString(strings.Fields(line)[1] + " " + strength + ", ")
	}
	return b.String()
}

// TestNoModel: a handbook without the folder has no model and no problem.
func TestNoModel(t *testing.T) {
	book, _ := page.Read(page.Layer{FS: fstest.MapFS{}, Name: "content"})
	if m, problems := Read(book, air); m != nil || problems != nil {
		t.Errorf("got %v, %v, want nothing", m, problems)
	}
}

// TestCompanyTunes: a company's page replaces the handbook's page of the same path, and nothing else.
func TestCompanyTunes(t *testing.T) {
	page1, page2, _ := strings.Cut(small, "## What they say")
	head := "---\ntitle: Weights\nsummary: Ours.\nkind: reference\nupdated: 2026-01-01\n---\n"
	base := fstest.MapFS{"causes/a.md": {Data: []byte(page1)}, "causes/b.md": {Data: []byte(head + page2)}}
	ours := fstest.MapFS{"causes/b.md": {Data: []byte(head + strings.Replace(page2, "luck 0.6", "luck 0.5", 1))}}
	for _, c := range []struct {
		layers []page.Layer
		want   string
	}{
		{[]page.Layer{{FS: base, Name: "content"}}, "sign\tcat\tluck\t0.6\n"},
		{[]page.Layer{{FS: base, Name: "content"}, {FS: ours, Name: "company"}}, "sign\tcat\tluck\t0.5\n"},
	} {
		book, _ := page.Read(c.layers...)
		m, problems := Read(book, air)
		if m == nil || !strings.Contains(m.Engine(), c.want) {
			t.Errorf("got %v, want the line %q", problems, c.want)
		}
	}
}

// TestScaleIsPrinted: the table that people read says what the reader does.
func TestScaleIsPrinted(t *testing.T) {
	b, err := os.ReadFile("../../../content/causes/root-causes.md")
	if err != nil {
		t.Fatal(err)
	}
	for sign, want := range map[string]string{"+++": "0.85", "++": "0.7", "+": "0.35", "−": "half of the leak", "−−": "a tenth of the leak"} {
		row := ""
		for line := range strings.Lines(string(b)) {
			if strings.HasPrefix(line, "| "+sign+" |") {
				row = line
			}
		}
		if !strings.Contains(row, "| "+want+" |") {
			t.Errorf("row of %s: got %q, want %s", sign, row, want)
		}
		got, ok := strength(sign, 0.2)
		expect := map[string]float64{"+++": 0.85, "++": 0.7, "+": 0.35, "−": 0.1, "−−": 0.02}[sign]
		if d := got - expect; !ok || !(d < 1e-12 && d > -1e-12) {
			t.Errorf("%s with leak 0.2: got %v, want %v", sign, got, expect)
		}
	}
}

// TestSmallData: a phone loads it once with the page. 45 kB of text are under 12 kB compressed.
func TestSmallData(t *testing.T) {
	if n := len(real(t).Data()); n > 45_000 {
		t.Errorf("the data file has %d bytes, want 45000 or less", n)
	}
}
