package publish

import (
	"bytes"
	"encoding/json"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
)

// searchEntry is one page in search-index.json. The names are short because
// every phone loads the file; site/templates describes them too.
type searchEntry struct {
	URL     string      `json:"u"` // from the site's root
	Title   string      `json:"t"`
	Kind    string      `json:"k"` // procedure, reference, worksheet, table
	Stage   int         `json:"n,omitempty"`
	Summary string      `json:"d,omitempty"`
	Parts   [][2]string `json:"s,omitempty"` // id and plain text of headings and steps
}

// pageEntry makes the entry of a content page.
func pageEntry(p *page.Page, r *markup.Result) searchEntry {
	e := searchEntry{URL: p.URL, Title: p.Title, Kind: p.Kind, Stage: p.Stage, Summary: p.Summary}
	h, s := r.Headings, r.Steps
	// Both lists are in the order of the page; merged by line they stay so.
	for len(h) > 0 || len(s) > 0 {
		if len(s) == 0 || (len(h) > 0 && h[0].Line <= s[0].Line) {
			e.Parts = append(e.Parts, [2]string{h[0].ID, h[0].Text})
			h = h[1:]
		} else {
			e.Parts = append(e.Parts, [2]string{"step-" + s[0].ID, s[0].Text})
			s = s[1:]
		}
	}
	return e
}

func (e searchEntry) json() []byte {
	b, err := json.Marshal(e)
	if err != nil {
		panic(err) // strings and numbers only
	}
	return b
}

// searchIndex joins the entries, one a line.
func searchIndex(entries [][]byte) []byte {
	var b bytes.Buffer
	b.WriteString("[\n")
	b.Write(bytes.Join(entries, []byte(",\n")))
	b.WriteString("\n]\n")
	return b.Bytes()
}
