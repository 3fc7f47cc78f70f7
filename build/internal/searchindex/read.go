package searchindex

import (
	"fmt"
	"strconv"
	"strings"

	"changeout/build/internal/markup"
	"changeout/build/internal/page"
)

// An Index is a file as it was written, for the check of search.md and for
// tests. The phone has its own reader.
type Index struct {
	Units   int
	Sayings []page.Saying
	Pages   []Page
}

// Read reads what Join wrote.
func Read(b []byte) (Index, error) {
	var x Index
	number := 0
	for line := range strings.Lines(string(b)) {
		number++
		fields := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		for i, f := range fields {
			fields[i] = escapes.Replace(f)
		}
		switch {
		case fields[0] == "U" && len(fields) >= 5:
			x.Units++
		case fields[0] == "S" && len(fields) == 3:
			x.Sayings = append(x.Sayings, page.Saying{Said: strings.Split(fields[1], "|"), Means: strings.Split(fields[2], "|")})
		case fields[0] == "P" && len(fields) == 6:
			p := Page{URL: fields[1] + ".html", Kind: "reference", Title: fields[4], Summary: fields[5]}
			for kind, letter := range kinds {
				if letter == fields[2] {
					p.Kind = kind
				}
			}
			if fields[3] != "" {
				n, err := strconv.Atoi(fields[3])
				if err != nil {
					return x, fmt.Errorf("line %d: stage %q", number, fields[3])
				}
				p.Stage = n
			}
			x.Pages = append(x.Pages, p)
		case len(fields) == 2 && fields[0] != "" && len(x.Pages) > 0:
			p := &x.Pages[len(x.Pages)-1]
			kind := markup.PassageKind(fields[0][0])
			p.Places = append(p.Places, markup.Passage{Kind: kind, ID: p.id(kind, fields[0][1:], fields[1]), Text: fields[1]})
		default:
			return x, fmt.Errorf("line %d is no record: %.60q", number, line)
		}
	}
	return x, nil
}

var escapes = strings.NewReplacer(`\\`, `\`, `\l`, "<")
