// probe runs the author checks over a content folder without the rest of the build.
package main

import (
	"fmt"
	"os"

	"changeout/build/internal/check"
	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
	"changeout/calc/source"
)

type src struct{}

func (src) Source(key string) (string, string, string, bool) {
	s, ok := source.Lookup(key)
	return s.Title, s.Address, "", ok
}
func (src) Keys() (k []string) {
	for _, s := range source.All() {
		k = append(k, s.Key)
	}
	return
}

func main() {
	book, problems := page.Read(page.Layer{FS: os.DirFS("content"), Name: "content"})
	var list report.List
	list.Add(problems...)
	c := markup.New(markup.Env{Sources: src{}, Worksheets: markup.Embeds{IDs: []string{"saturation", "charge-adjustment", "vacuum-hold"}},
		Tables: markup.Embeds{IDs: []string{"water-boiling-point", "r-22", "r-32", "r-134a", "r-290", "r-404a", "r-407c", "r-410a", "r-454b", "r-744", "r-1234yf"}}, Glossary: book.Glossary, Hazards: book.Hazards})
	results := map[*page.Page]*markup.Result{}
	for _, p := range book.Pages {
		results[p] = c.Convert(p)
		list.Add(results[p].Problems...)
		r := results[p]
		fmt.Println(p.Path, len(p.Body), "->", len(r.HTML), "steps", len(r.Steps), "cautions", len(r.Cautions), "waits", len(r.Waits), "writes", len(r.Writes), "sources", len(r.Sources), "terms", len(r.Terms), "links", len(r.Links), "ws", len(r.Worksheets), "tables", len(r.Tables))
	}
	list.Add(check.Book(book, results, nil)...)
	n, _ := list.Print(os.Stdout)
	fmt.Println(n, "problems;", len(book.Pages), "pages;", len(book.Glossary.Terms), "terms;", len(book.Hazards.Rows), "hazards;", len(book.Stages), "stages")
}
