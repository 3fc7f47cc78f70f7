package check

import (
	"bytes"
	"maps"
	"net/url"
	"path"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/net/html"

	"changeout/build/internal/markup"
	"changeout/build/internal/report"
)

// Output checks the finished site: files maps addresses from the root to bytes. Every internal link and fragment
// resolves, ids are unique in a page, labels point at something, no script, style or handler is inline, nothing is
// asked of another host, and pictures have alternative text.
func Output(files map[string][]byte) []report.Problem {
	o := &outputCheck{files: files, ids: map[string]map[string]bool{}}
	names := slices.Sorted(maps.Keys(files))
	for _, name := range names {
		if strings.HasSuffix(name, ".html") {
			o.read(name)
		}
	}
	for _, r := range o.references {
		o.resolve(r)
	}
	return report.Sorted(o.problems)
}

type outputCheck struct {
	files      map[string][]byte
	ids        map[string]map[string]bool // by file
	references []reference
	problems   []report.Problem
}

// A reference is an address, or the id of an element of the same page.
type reference struct {
	file, what, target string
	line               int
}

func (o *outputCheck) add(file string, line int, text, hint string) {
	o.problems = append(o.problems, report.Problem{File: file, Line: line, Text: text, Hint: hint})
}

// read takes ids and references from one page.
func (o *outputCheck) read(name string) {
	ids := map[string]bool{}
	o.ids[name] = ids
	z := html.NewTokenizer(bytes.NewReader(o.files[name]))
	line := 1
	hasLanguage, hasTitle := false, false
	for {
		kind := z.Next()
		at := line
		line += bytes.Count(z.Raw(), []byte{'\n'})
		if kind == html.ErrorToken {
			break
		}
		if kind != html.StartTagToken && kind != html.SelfClosingTagToken {
			continue
		}
		tag, more := z.TagName()
		element := string(tag)
		attributes := map[string]string{}
		for more {
			var key, value []byte
			key, value, more = z.TagAttr()
			attributes[string(key)] = string(value)
		}
		hasLanguage = hasLanguage || element == "html" && attributes["lang"] != ""
		hasTitle = hasTitle || element == "title"
		o.element(name, element, attributes, ids, at)
	}
	if !hasLanguage {
		o.add(name, 1, "page names no language", "write <html lang=…>")
	}
	if !hasTitle {
		o.add(name, 1, "page has no title", "")
	}
}

func (o *outputCheck) element(file, element string, attributes map[string]string, ids map[string]bool, line int) {
	if id, ok := attributes["id"]; ok {
		switch {
		case id == "":
			o.add(file, line, "empty id on <"+element+">", "")
		case ids[id]:
			o.add(file, line, "id "+id+" is used twice", "")
		}
		ids[id] = true
	}
	for key, value := range attributes {
		switch {
		case key == "style":
			o.add(file, line, "inline style on <"+element+">", "use a class; the security policy forbids style attributes")
		case strings.HasPrefix(key, "on"):
			o.add(file, line, "inline handler "+key+" on <"+element+">", "use a data- attribute and a script file")
		case key == "href" || key == "src" || key == "action" || key == "poster" || key == "data" && element == "object":
			o.reference(file, element, key, value, line)
		case key == "for" && element == "label" || key == "aria-labelledby" || key == "aria-describedby" || key == "aria-controls":
			for id := range strings.FieldsSeq(value) {
				o.references = append(o.references, reference{file, key, "#" + id, line})
			}
		}
	}
	switch element {
	case "style":
		o.add(file, line, "inline style sheet", "the security policy forbids <style>")
	case "script":
		if _, ok := attributes["src"]; !ok && isCode(attributes["type"]) {
			o.add(file, line, "inline script", "the security policy forbids scripts without src")
		}
	case "img":
		if _, ok := attributes["alt"]; !ok {
			o.add(file, line, "image has no alternative text", "")
		}
	}
}

// isCode tells whether a browser would run a script of this type; other types are data.
func isCode(scriptType string) bool {
	switch scriptType {
	case "", "module", "importmap", "speculationrules", "text/javascript", "application/javascript":
		return true
	}
	return false
}

// reference notes an address of this site, and reports what leads elsewhere without the reader's tap.
func (o *outputCheck) reference(file, element, key, value string, line int) {
	u, err := url.Parse(value)
	if err != nil {
		o.add(file, line, "address cannot be read: "+value, "")
		return
	}
	switch {
	case u.Scheme == "data" && key == "src":
		return
	case u.Scheme == "javascript":
		o.add(file, line, "script in an address on <"+element+">", "")
		return
	case u.Scheme != "" || u.Host != "":
		if element != "a" && element != "area" {
			o.add(file, line, "<"+element+"> asks another host: "+value, "the site makes no request to any other host")
		}
		return
	}
	o.references = append(o.references, reference{file, key, value, line})
}

// resolve looks a reference up once all ids are known.
func (o *outputCheck) resolve(r reference) {
	u, err := url.Parse(r.target)
	if err != nil {
		return // reported by reference
	}
	file := r.file
	if u.Path != "" {
		if strings.HasPrefix(u.Path, "/") {
			o.add(r.file, r.line, "address starts at the root of the host: "+r.target, "all addresses of the site are relative")
			return
		}
		file = path.Join(path.Dir(r.file), u.Path)
		if strings.HasSuffix(u.Path, "/") || file == "." || o.files[file] == nil && o.files[path.Join(file, "index.html")] != nil {
			file = path.Join(file, "index.html")
		}
	}
	if _, ok := o.files[file]; !ok {
		o.add(r.file, r.line, "dead link: there is no "+file, report.DidYouMean(file, slices.Collect(maps.Keys(o.files))))
		return
	}
	ids, isPage := o.ids[file]
	if u.Fragment == "" || !isPage || ids[u.Fragment] {
		return
	}
	text := "dead link: there is no #" + u.Fragment + " on " + file
	if r.what != "href" {
		text = r.what + " names an id that is not on the page: " + strconv.Quote(u.Fragment)
	}
	o.add(r.file, r.line, text, markup.NearID(u.Fragment, slices.Sorted(maps.Keys(ids))))
}
