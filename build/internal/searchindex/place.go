package searchindex

import (
	"path"
	"strings"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
)

// Ids are an eighth of the index, and most follow from the kind of the place, many from its text too. So a place has a
// code in their stead: "=" for the id that is made of both, "#id" for one that is made otherwise, else what stands
// behind the beginning that places of its kind share. The phone reads codes alike (site's components/search/index.ts).

// begins are the beginnings of ids by kind; an entry of a worksheet begins with the worksheet's own id.
var begins = map[markup.PassageKind]string{
	markup.PassageStep: "step-", markup.PassageWrite: "write-", markup.PassageCaution: "caution-", markup.PassageDecision: "decide-",
	markup.PassageWait: "wait-", markup.PassageTerm: page.TermPrefix, Holds: "table-",
}

// made is how ids begin on this page for places of a kind, and the id that follows from the text.
func (p Page) made(kind markup.PassageKind, text string) (begin, whole string) {
	name := strings.TrimSuffix(path.Base(p.URL), ".html")
	begin = begins[kind]
	limit := 0
	switch kind {
	case Holds:
		return begin, "worksheet-" + name
	case Field:
		begin = name + "-"
	case markup.PassageDecision:
		limit = 6
	}
	label, _, _ := strings.Cut(text, " · ")
	return begin, string(page.AppendSlug([]byte(begin), label, limit))
}

func (p Page) code(place markup.Passage) string {
	begin, whole := p.made(place.Kind, place.Text)
	rest, ok := strings.CutPrefix(place.ID, begin)
	switch {
	case place.ID == "":
		return ""
	case place.ID == whole:
		return "="
	case !ok || rest == "" || strings.ContainsAny(rest[:1], "=#"):
		return "#" + place.ID
	}
	return rest
}

// id is what a code stands for.
func (p Page) id(kind markup.PassageKind, code, text string) string {
	begin, whole := p.made(kind, text)
	switch {
	case code == "":
		return ""
	case code == "=":
		return whole
	case code[0] == '#':
		return code[1:]
	}
	return begin + code
}
