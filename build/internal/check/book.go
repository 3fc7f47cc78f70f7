package check

import (
	"changeout/build/internal/markup"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// Book checks links and anchors across pages, that every page stands in contents.md, and that ids are unique.
// results holds the converted page for each page of the book. generated lists addresses that the build makes without a
// Markdown file (worksheets/vacuum-hold.html), from the site's root; nil leaves links to .html addresses to [Output].
func Book(book *page.Book, results map[*page.Page]*markup.Result, generated []string) []report.Problem {
	return nil
}
