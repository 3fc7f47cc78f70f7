package compute

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/unit"
)

var update = flag.Bool("update", false, "write the answers of the demonstration job anew")

const (
	root          = "../../.."
	demonstration = root + "/site/components/job/demonstration.json"
)

// The parts of a job file that this test reads; see site/components/job/schema.ts.
type demoInput struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Text  string `json:"text"`
	Unit  string `json:"unit"`
	Shown string `json:"shown"`
}
type demoOutput struct {
	ID     string   `json:"id"`
	Label  string   `json:"label"`
	SI     *float64 `json:"si"`
	SIUnit string   `json:"siUnit"`
	Text   string   `json:"text"`
	Main   bool     `json:"main"`
}
type demoVerdict struct {
	ID    string `json:"id"`
	Tone  string `json:"tone"`
	Title string `json:"title"`
	Text  string `json:"text"`
}
type demoResult struct {
	ID        string       `json:"id"`
	Worksheet string       `json:"worksheet"`
	Title     string       `json:"title"`
	Page      string       `json:"page"`
	System    string       `json:"system"`
	Inputs    []demoInput  `json:"inputs"`
	Outputs   []demoOutput `json:"outputs"`
	Verdict   *demoVerdict `json:"verdict"`
	Warnings  []string     `json:"warnings"`
	Time      string       `json:"time"`
	Version   string       `json:"version"`
	Note      string       `json:"note"`
}

// The people and the building of the demonstration job are invented; its answers are what the worksheets say.
// go test ./build/internal/compute -run Demonstration -update writes them anew.
func TestDemonstrationJobIsComputed(t *testing.T) {
	file := map[string]any{}
	b, err := os.ReadFile(demonstration)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, &file); err != nil {
		t.Fatal(err)
	}
	job := file["jobs"].([]any)[0].(map[string]any)
	raw, _ := json.Marshal(job["results"])
	var results []demoResult
	if err := json.Unmarshal(raw, &results); err != nil {
		t.Fatal(err)
	}
	if len(results) == 0 {
		t.Fatal("the demonstration job holds no worksheet answer")
	}
	for i := range results {
		want := answerAgain(t, results[i])
		if *update {
			results[i] = want
			continue
		}
		compareAnswers(t, results[i], want)
	}
	if !*update {
		return
	}
	job["results"] = results
	var out strings.Builder
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(file); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(demonstration, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

// answerAgain works the answer out from its inputs.
func answerAgain(t *testing.T, r demoResult) demoResult {
	t.Helper()
	w := catalog.Lookup(r.Worksheet)
	if w == nil {
		t.Fatalf("%s: there is no worksheet %s", r.ID, r.Worksheet)
	}
	req := calc.Request{Worksheet: w.ID, System: unit.SI}
	for i, in := range r.Inputs {
		req.Fields = append(req.Fields, calc.Field{Input: in.ID, Text: in.Text, Unit: in.Unit})
		declared := w.Input(in.ID)
		if declared == nil {
			t.Fatalf("%s: %s has no input %s", r.ID, w.ID, in.ID)
		}
		r.Inputs[i].Label = declared.Label
		r.Inputs[i].Shown = in.Text
		if u := declaredUnit(declared, in.Unit); u != nil {
			r.Inputs[i].Shown = in.Text + " " + u.Label
		}
		for _, o := range declared.Options {
			if o.ID == in.Text {
				r.Inputs[i].Shown = o.Label
			}
		}
	}
	a := calc.Evaluate(w, req)
	if len(a.Problems) > 0 {
		t.Fatalf("%s: %s", r.ID, a.Problems[0].Sentence)
	}
	r.Title, r.Outputs, r.Verdict, r.Warnings = w.Title, []demoOutput{}, nil, append([]string{}, a.Warnings...)
	for _, o := range a.Outputs {
		si := o.Value
		r.Outputs = append(r.Outputs, demoOutput{o.ID, o.Label, &si, o.SIUnit, o.Text, o.Main})
	}
	if v := a.Verdict; v != nil {
		r.Verdict = &demoVerdict{v.ID, string(v.Tone), v.Title, v.Sentence}
	}
	return r
}

func compareAnswers(t *testing.T, got, want demoResult) {
	t.Helper()
	const hint = "; write it anew with -update"
	if got.Verdict == nil || want.Verdict == nil || *got.Verdict != *want.Verdict {
		if got.Verdict != nil || want.Verdict != nil {
			t.Errorf("%s: got verdict %+v, want %+v%s", got.ID, got.Verdict, want.Verdict, hint)
		}
	}
	if len(got.Outputs) != len(want.Outputs) {
		t.Fatalf("%s: got %d outputs, want %d%s", got.ID, len(got.Outputs), len(want.Outputs), hint)
	}
	for i, w := range want.Outputs {
		g := got.Outputs[i]
		if g.ID != w.ID || g.Text != w.Text || g.SI == nil {
			t.Errorf("%s: got %s %q, want %s %q%s", got.ID, g.ID, g.Text, w.ID, w.Text, hint)
			continue
		}
		// The file holds the shortest text of the double; other processors differ in the last places.
		tolerance := 1e-9 * math.Max(1e-9, math.Abs(*w.SI))
		if !(math.Abs(*g.SI-*w.SI) <= tolerance) {
			t.Errorf("%s %s: got %v, want %v, difference %v, tolerance %v%s", got.ID, g.ID, *g.SI, *w.SI, *g.SI-*w.SI, tolerance, hint)
		}
	}
}

// What the demonstration job ticks, writes down and finds must be there to be ticked, written down and found.
func TestDemonstrationJobFitsTheContent(t *testing.T) {
	var file struct {
		Jobs []struct {
			Demo     bool
			Title    string
			Ticks    map[string]any
			Fields   map[string]any
			Findings map[string]any
		}
	}
	b, err := os.ReadFile(demonstration)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, &file); err != nil {
		t.Fatal(err)
	}
	page := func(id string) string {
		b, err := os.ReadFile(path.Join(root, "content", id+".md"))
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	for _, job := range file.Jobs {
		if !job.Demo {
			t.Errorf("%s is not marked as invented", job.Title)
		}
		if len(job.Ticks) == 0 || len(job.Fields) == 0 || len(job.Findings) == 0 {
			t.Errorf("%s: got %d ticks, %d fields, %d findings, want some of each", job.Title, len(job.Ticks), len(job.Fields), len(job.Findings))
		}
		for place := range job.Ticks {
			id, step, _ := strings.Cut(place, "#")
			if !strings.Contains(page(id), "{#"+step+"}") {
				t.Errorf("there is no step %s", place)
			}
		}
		for place := range job.Fields {
			id, name, _ := strings.Cut(place, "#")
			if !strings.Contains(page(id), ":: write "+name+" |") {
				t.Errorf("there is no field %s", place)
			}
		}
		findings := page("causes/findings")
		for id := range job.Findings {
			if !regexp.MustCompile(`(?m)^\| ` + regexp.QuoteMeta(id) + ` \|`).MatchString(findings) {
				t.Errorf("there is no check %s", id)
			}
		}
	}
}

func declaredUnit(in *calc.Input, id string) *unit.Unit {
	if in.Quantity == nil || id == "" {
		return nil
	}
	return in.Quantity.Unit(id)
}
