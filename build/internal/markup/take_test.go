package markup

import (
	"strings"
	"testing"

	"changeout/build/internal/page"
)

func TestTakes(t *testing.T) {
	env := Env{Worksheets: Embeds{IDs: []string{"hold"}, HTML: func(string, Place) ([]byte, error) { return []byte("<section></section>"), nil },
		Takes: func(_, input, _, unit string) string {
			if input == "log" && unit != "micron" {
				return "no column of the log is in " + unit
			}
			return ""
		}}}
	convert := func(body string) *Result {
		return New(env).Convert(&page.Page{ID: "x", Path: "x.md", Title: "X", Body: []byte(body), BodyLine: 1})
	}
	r := convert(":: write a | Pressure after 5 minutes | micron | hold log 5\n\n:: write b | Air | °C | hold ambient\n\n:: worksheet hold\n\n:: write c | Later | micron\n")
	if len(r.Problems) > 0 {
		t.Errorf("problems: %v", r.Problems)
	}
	if want := `<template data-take="hold" data-from="a|log|5|micron;b|ambient||°C"></template>` + "\n<section>"; !strings.Contains(string(r.HTML), want) {
		t.Errorf("want %s in:\n%s", want, r.HTML)
	}
	for _, c := range []struct{ body, want string }{
		{":: write a | P | micron | hold log 5", "field “a” goes to the worksheet “hold”, which does not stand below it"},
		{":: worksheet hold\n\n:: write a | P | micron | hold log 5", "does not stand below it"},
		{":: write a | P | Pa | hold log 5\n\n:: worksheet hold", "no column of the log is in Pa"},
		{":: write a | P | micron | hold", "what takes a field over is “hold”"},
		{":: write a | P | micron | hold log five", "what takes a field over is “hold log five”"},
	} {
		r := convert(c.body)
		if len(r.Problems) != 1 || !strings.Contains(r.Problems[0].String(), c.want) {
			t.Errorf("%q: problems %v, want one with %q", c.body, r.Problems, c.want)
		}
	}
}
