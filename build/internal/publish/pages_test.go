package publish

import (
	"slices"
	"testing"

	"changeout/build/internal/markup"
)

func TestParts(t *testing.T) {
	r := &markup.Result{
		Headings: []markup.Heading{
			{Level: 2, ID: "before", Text: "Before you start", Line: 3}, {Level: 2, ID: "open", Text: "Steps: open the circuit", Line: 10},
			{Level: 3, ID: "detail", Text: "Detail", Line: 14}, {Level: 2, ID: "pull", Text: "Steps: pull", Line: 20},
			{Level: 2, ID: "break", Text: "Steps: break it", Line: 30}, {Level: 2, ID: "write", Text: "Write down", Line: 40},
		},
		Steps: []markup.Step{{Number: 1, Line: 12}, {Number: 2, Line: 16}, {Number: 3, Line: 18}, {Number: 4, Line: 22}, {Number: 5, Line: 31}, {Number: 6, Line: 32}},
	}
	want := []Part{{"Before you start", "before", ""}, {"Open the circuit", "open", "steps 1 to 3"}, {"Pull", "pull", "step 4"}, {"Break it", "break", "steps 5 and 6"}, {"Write down", "write", ""}}
	if got := parts(r); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	r.Headings = r.Headings[:4]
	if got := parts(r); got != nil {
		t.Errorf("a short page has a list of its parts: %q", got)
	}
}
