package publish

import (
	"bytes"
	"encoding/base64"
	"path"
	"regexp"
	"slices"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

// rewriter moves pages into one document. Every id gets the page id in front
// of it, so that two pages never share one, and every link between pages
// becomes a link inside the document.
type rewriter struct {
	pages map[string]bool   // ids of all pages in the document
	files map[string][]byte // figures and samples, to go in as data
}

// references are attributes that hold one id or several with spaces between.
var references = []string{"for", "list", "form", "headers", "aria-labelledby", "aria-describedby", "aria-controls", "aria-owns", "aria-details", "aria-flowto", "aria-activedescendant", "aria-errormessage"}

// rewrite returns the children of a page's main element, ready for the
// document.
func (r *rewriter) rewrite(id string, main []byte) ([]byte, error) {
	context := &html.Node{Type: html.ElementNode, Data: "main", DataAtom: atom.Main}
	nodes, err := html.ParseFragment(bytes.NewReader(main), context)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	for _, n := range nodes {
		r.element(id, n)
		for d := range n.Descendants() {
			r.element(id, d)
		}
		if err := html.Render(&b, n); err != nil {
			return nil, err
		}
	}
	return endTags.ReplaceAll(b.Bytes(), nil), nil
}

// endTags may be left out: the next cell or row ends the one before. The large
// tables are a tenth shorter without them, on a phone that stores the file.
var endTags = regexp.MustCompile(`</t[dhr]>`)

// paint finds references in drawings: fill="url(#shade)".
var paint = regexp.MustCompile(`url\(#([^)]+)\)`)

func (r *rewriter) element(id string, n *html.Node) {
	if n.Type != html.ElementNode {
		return
	}
	radio := n.Data == "input" && attribute(n, "type") == "radio"
	for i := range n.Attr {
		a := &n.Attr[i]
		switch {
		case a.Key == "id", a.Key == "name" && radio:
			a.Val = id + "/" + a.Val
		case slices.Contains(references, a.Key):
			ids := strings.Fields(a.Val)
			for k := range ids {
				ids[k] = id + "/" + ids[k]
			}
			a.Val = strings.Join(ids, " ")
		case a.Key == "href":
			r.link(id, n, a)
		case a.Key == "src":
			if file, ok := r.files[resolve(id, a.Val)]; ok {
				a.Val = dataURI(a.Val, file)
			}
		case strings.Contains(a.Val, "url(#"):
			a.Val = paint.ReplaceAllString(a.Val, "url(#"+id+"/$1)")
		}
	}
}

// link turns an address into one that works inside the document.
func (r *rewriter) link(id string, n *html.Node, a *html.Attribute) {
	address, fragment, hasFragment := strings.Cut(a.Val, "#")
	switch {
	case address == "" && fragment == "":
		return
	case address == "":
		a.Val = "#" + id + "/" + fragment
		return
	case external(address):
		return
	}
	target := resolve(id, address)
	if file, ok := r.files[target]; ok {
		// A data address can be saved but not opened, hence the name for saving.
		a.Val = dataURI(target, file)
		if n.Data == "a" && attribute(n, "download") == "" {
			n.Attr = append(n.Attr, html.Attribute{Key: "download", Val: path.Base(target)})
		}
		return
	}
	page, isPage := strings.CutSuffix(target, ".html")
	if !isPage || !r.pages[page] {
		return
	}
	a.Val = "#" + page
	if hasFragment && fragment != "" {
		a.Val += "/" + fragment
	}
}

// resolve gives the address from the site's root of a link on a page.
func resolve(id, address string) string {
	address, _, _ = strings.Cut(address, "?")
	target := path.Join(path.Dir(id), address)
	if strings.HasSuffix(address, "/") || target == "." {
		target = path.Join(target, "index.html")
	}
	return target
}

// external is true for addresses with a scheme or a host.
func external(address string) bool {
	if strings.HasPrefix(address, "//") || strings.HasPrefix(address, "/") {
		return true
	}
	scheme, _, ok := strings.Cut(address, ":")
	return ok && !strings.ContainsAny(scheme, "/.")
}

func attribute(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func dataURI(name string, b []byte) string {
	kind := dataTypes[strings.ToLower(path.Ext(name))]
	if kind == "" {
		kind = "application/octet-stream"
	}
	return "data:" + kind + ";base64," + base64.StdEncoding.EncodeToString(b)
}

// dataTypes are the types of files that may lie beside a page. The system's
// table differs between machines.
var dataTypes = map[string]string{
	".csv": "text/csv", ".gif": "image/gif", ".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".json": "application/json",
	".pdf": "application/pdf", ".png": "image/png", ".svg": "image/svg+xml", ".txt": "text/plain", ".webp": "image/webp",
}
