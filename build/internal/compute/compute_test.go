package compute

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/published"
)

func run(args ...string) (string, error) {
	var out bytes.Buffer
	err := Run(args, &out)
	return out.String(), err
}

// writeLog puts a hold log into a file and returns its name.
func writeLog(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

const leak = "minutes,micron\n0,380\n5,680\n10,980\n15,1280\n20,1580\n25,1880\n30,2180\n"

func TestLists(t *testing.T) {
	out, err := run()
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range catalog.All() {
		if !strings.Contains(out, w.ID) || !strings.Contains(out, w.Purpose) {
			t.Errorf("the list lacks %s", w.ID)
		}
		sheet, err := run(w.ID)
		if err != nil {
			t.Fatal(err)
		}
		for i := range w.Inputs {
			in := &w.Inputs[i]
			if !strings.Contains(sheet, "  "+in.ID+" ") || !strings.Contains(sheet, in.Label) || (in.BoundReason != "" && !strings.Contains(sheet, in.BoundReason)) {
				t.Errorf("%s: the list of inputs lacks %s, its label or the reason of its bounds", w.ID, in.ID)
			}
		}
		for _, o := range w.Outputs {
			if !strings.Contains(sheet, "  "+o.ID+" ") {
				t.Errorf("%s: the list lacks output %s", w.ID, o.ID)
			}
		}
	}
}

func TestGoodInput(t *testing.T) {
	log := writeLog(t, leak)
	for _, c := range []struct {
		args []string
		want []string
	}{
		{[]string{"saturation", "refrigerant=410a", "pressure=118psig"}, []string{"Dew temperature", "39.8\u00a0°F", "[kunz-jced-2012"}},
		{[]string{"saturation", "refrigerant=R-410A", "temperature=25C"}, []string{"Bubble pressure", "kPa gauge"}},
		{[]string{"charge-adjustment", "system=multi-split", "refrigerant=R-410A", "nameplate=20lb", "already=0lb", "lines=3/8\" 30ft / 1/2in 10ft"}, []string{"In the liquid lines", "\u00a0lb", "estimate"}},
		{[]string{"charge-adjustment", "system=multi-split", "refrigerant=R-410A", "nameplate=9.4kg", "already=0kg", "lines=9.52 28 0.061 / 6.35 12 0.022"}, []string{"(add)", "1.972\u00a0kg", "11.372\u00a0kg"}},
		{[]string{"vacuum-hold", "log=@" + log, "ambient-start=20C", "ambient-end=20C", "volume=45L"}, []string{"(leak)", "60\u00a0micron/min", "0.0060\u00a0Pa·m³/s"}},
	} {
		out, err := run(c.args...)
		if err != nil {
			t.Errorf("%q: %v", c.args, err)
		}
		for _, w := range c.want {
			if !strings.Contains(out, w) {
				t.Errorf("%q: the answer lacks %q:\n%s", c.args, w, out)
			}
		}
	}
}

// TestJSONShape: exactly the keys that the design names, for every published
// case that has an answer, with the same numbers as the door gives.
func TestJSONShape(t *testing.T) {
	for _, w := range catalog.All() {
		cases, err := published.Load(os.DirFS("../../../testdata/published"), w.ID)
		if err != nil {
			t.Fatal(err)
		}
		last := ""
		for _, c := range cases {
			if key := published.Key(c.Inputs); c.Output == "problem" || key == last {
				continue
			} else {
				last = key
			}
			args := []string{"-json", w.ID}
			for _, f := range c.Inputs {
				args = append(args, f.Input+"="+f.Text)
			}
			out, err := run(args...)
			if err != nil {
				t.Errorf("%s: %v", c.Name, err)
				continue
			}
			var raw map[string]json.RawMessage
			var answer jsonAnswer
			if err := errors.Join(json.Unmarshal([]byte(out), &raw), json.Unmarshal([]byte(out), &answer)); err != nil {
				t.Fatalf("%s: %v:\n%s", c.Name, err, out)
			}
			var keys []string
			for k := range raw {
				keys = append(keys, k)
			}
			slices.Sort(keys)
			if want := []string{"outputs", "steps", "verdict", "warnings", "worksheet"}; !slices.Equal(keys, want) {
				t.Errorf("%s: keys %v, want %v", c.Name, keys, want)
			}
			if string(raw["warnings"]) == "null" || string(raw["steps"]) == "null" || string(raw["outputs"]) == "null" {
				t.Errorf("%s: an empty list is written as null: %s", c.Name, out)
			}
			a := calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: c.Inputs})
			if answer.Worksheet != w.ID || len(answer.Outputs) != len(a.Outputs) || len(answer.Steps) != len(a.Steps) || len(answer.Warnings) != len(a.Warnings) {
				t.Errorf("%s: JSON and door differ: %s", c.Name, out)
			}
			for _, o := range a.Outputs {
				got := answer.Outputs[o.ID]
				// JSON writes the shortest text that gives the same float64 back.
				if d := got.Value - o.Value; d != 0 || got.Unit != o.SIUnit || got.Text != o.Text || math.IsNaN(got.Value) {
					t.Errorf("%s %s: got %+v, want %+v, difference %g, tolerance 0 (the door)", c.Name, o.ID, got, o, d)
				}
			}
			if a.Verdict != nil && answer.Verdict != a.Verdict.ID {
				t.Errorf("%s: verdict %q, want %q", c.Name, answer.Verdict, a.Verdict.ID)
			}
		}
	}
}

// TestLongChoice: 149 refrigerants stand on lines of their own where they are
// asked for, and in no list of inputs.
func TestLongChoice(t *testing.T) {
	for _, w := range catalog.All() {
		sheet, err := run(w.ID)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.SplitSeq(sheet, "\n") {
			if len(line) > 400 {
				t.Errorf("%s: a line of %d bytes: %.80s…", w.ID, len(line), line)
			}
		}
	}
	names, err := run("saturation", "refrigerant")
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range catalog.Saturation.Input("refrigerant").Options {
		if !strings.Contains(names, "    "+o.ID+" ") {
			t.Errorf("the list of refrigerants lacks %s", o.ID)
		}
	}
}

// TestBadInput: one sentence, and nothing on standard output.
func TestBadInput(t *testing.T) {
	folder := t.TempDir()
	unclear := writeLog(t, "time,vacuum\n0,380\n5,390\n10,400\n")
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"saturate"}, "There is no worksheet “saturate”; did you mean saturation?"},
		{[]string{"-xml", "saturation"}, `compute has no flag "-xml"; it knows -json`},
		{[]string{"saturation", "pressure"}, `"pressure" is not understood; write an input as key=value`},
		{[]string{"saturation", "pressure=1psig", "pressure=2psig"}, "pressure is given twice; give it once"},
		{[]string{"saturation", "presure=1psig"}, "Saturation has no input “presure”; did you mean pressure?"},
		{[]string{"saturation", "refrigerant=R-410A", "pressure=250psi"}, "Pressure: “250psi” does not say gauge or absolute; write psig or psia."},
		{[]string{"saturation", "refrigerant=R-410A", "pressure=1,234psig"}, "Pressure: “1,234psig” can mean 1.234 or 1234; choose one."},
		{[]string{"saturation", "refrigerant=R-410", "pressure=100psig"}, "Refrigerant: “R-410” is not in the list; close to it: R-410A, R-410B, "},
		{[]string{"saturation", "refrigerant=R-41O", "pressure=100psig"}, "Refrigerant: “R-41O” is not in the list; close to it: R-410A, R-410B, "},
		{[]string{"saturation", "refrigerant=propane", "pressure=100psig"}, "Refrigerant: “propane” is not in the list; choose one of the "},
		{[]string{"saturation", "pressure=100psig"}, "choose one from the list."},
		{[]string{"saturation", "line-temperature"}, `"line-temperature" is not understood`},
		{[]string{"saturation", "refrigerant=R-744", "temperature=31C"}, "R-744 at 31\u00a0°C is outside"},
		{[]string{"-json", "saturation", "refrigerant=R-744", "temperature=31C"}, "R-744 at 31\u00a0°C is outside"},
		{[]string{"vacuum-hold", "log=@" + filepath.Join(folder, "none.csv")}, "no such file"},
		{[]string{"vacuum-hold", "log=@" + folder}, "cannot be read"},
		{[]string{"vacuum-hold", "log=@" + unclear}, `Add log.columns="time:min,pressure:?" for min.`},
	} {
		out, err := run(c.args...)
		var failure Failure
		if !errors.As(err, &failure) {
			t.Errorf("%q: got %v and output %q, want a failure", c.args, err, out)
			continue
		}
		if out != "" {
			t.Errorf("%q: standard output holds %q, want nothing", c.args, out)
		}
		if s := failure.Sentence; !strings.Contains(s, c.want) || strings.Contains(s, "\n") || len(s) > 300 {
			t.Errorf("%q:\n got  %q\n want %q on one line of at most 300 bytes", c.args, s, c.want)
		}
	}
}

// TestColumnsAreTaken: what the sentence says to add is understood.
func TestColumnsAreTaken(t *testing.T) {
	log := writeLog(t, "time,vacuum\n"+strings.TrimPrefix(leak, "minutes,micron\n"))
	out, err := run("vacuum-hold", "log=@"+log, "log.columns=time:min,pressure:micron", "ambient-start=20C", "ambient-end=20C")
	if err != nil || !strings.Contains(out, "(leak)") {
		t.Errorf("got %v:\n%s", err, out)
	}
}

// TestHugeFile: a file that is no log is refused before it fills the memory.
func TestHugeFile(t *testing.T) {
	name := writeLog(t, strings.Repeat("0,380\n", maxFile/6+10))
	_, err := run("vacuum-hold", "log=@"+name)
	if err == nil || !strings.Contains(err.Error(), "larger than 8 MB") {
		t.Errorf("got %v, want the size named", err)
	}
}
