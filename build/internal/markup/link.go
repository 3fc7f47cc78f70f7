package markup

import (
	"bytes"
	"path"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/report"
)

// links are ordinary Markdown links. Relative ones to a .md file lead to its .html page; worksheet:id and table:id lead to
// the page of a worksheet or table; other hosts open without telling them where the reader came from.
type links struct{}

func (links) Extend(m goldmark.Markdown) { register(m, linkRenderer{}) }

func (w *walker) readLink(n *ast.Link) {
	line := w.line(n.Pos())
	if !n.HasChildren() {
		w.problem(line, "link has no words", "write [words](address)")
	}
	w.children(n)
	n.Destination = w.resolve(n.Destination, false, line)
}

func (w *walker) readImage(n *ast.Image) {
	line := w.line(n.Pos())
	if !n.HasChildren() {
		w.problem(line, "image has no alternative text", "write ![what the picture shows]("+string(n.Destination)+")")
	}
	w.children(n)
	n.Destination = w.resolve(n.Destination, true, line)
}

func (w *walker) readAutoLink(n *ast.AutoLink) {
	label := n.Label(w.source)
	if w.collecting {
		w.plain = append(w.plain, label...)
	}
}

// resolve gives the address to print and notes links inside the site.
func (w *walker) resolve(destination []byte, image bool, line int) []byte {
	address := string(destination)
	if scheme, rest, ok := strings.Cut(address, ":"); ok && !strings.ContainsAny(scheme, "/#?.") {
		switch {
		case image:
			w.problem(line, "image comes from another place: "+address, "put the picture beside the page; the site asks no other host")
		case scheme == "worksheet":
			return w.resolveEmbed(&w.env.Worksheets, scheme, rest, line)
		case scheme == "table":
			return w.resolveEmbed(&w.env.Tables, scheme, rest, line)
		case scheme != "http" && scheme != "https" && scheme != "mailto" && scheme != "tel":
			w.problem(line, "link to an unknown kind of address: "+address, "use https:, mailto:, tel:, worksheet:, table:, or a path to a .md file")
			return nil
		}
		return destination
	}
	file, fragment, _ := strings.Cut(address, "#")
	switch {
	case file == "" && fragment == "":
		w.problem(line, "link has no address", "")
		return destination
	case file == "":
		w.fragments = append(w.fragments, localLink{fragment, line})
		w.result.Links = append(w.result.Links, Link{"", fragment, image, line})
		return destination
	case strings.HasPrefix(file, "/"):
		w.problem(line, "address starts at the root of a host: "+address, "write it relative to this page, so that the site works in any folder")
		return destination
	}
	target := path.Join(path.Dir(w.page.Path), file)
	if strings.HasPrefix(target, "../") {
		w.problem(line, "address leads out of the handbook: "+address, "")
		return destination
	}
	w.result.Links = append(w.result.Links, Link{target, fragment, image, line})
	if stem, ok := strings.CutSuffix(file, ".md"); ok {
		address = stem + ".html"
		if fragment != "" {
			address += "#" + fragment
		}
		return []byte(address)
	}
	return destination
}

func (w *walker) resolveEmbed(embeds *Embeds, what, rest string, line int) []byte {
	id, _, _ := strings.Cut(rest, "#")
	if !embeds.known[id] {
		w.problem(line, "unknown "+what+" “"+id+"”", report.DidYouMean(id, embeds.IDs))
	}
	return []byte(w.page.Base() + embeds.URL(id) + strings.TrimPrefix(rest, id))
}

// nearID looks for an id that the author of a dead #link may have meant; steps, fields and so on carry a prefix.
func (w *walker) nearID(id string) string {
	known := make([]string, 0, len(w.ids))
	for k := range w.ids {
		known = append(known, k)
	}
	return NearID(id, known)
}

// NearID gives the hint for a fragment that does not exist: an id that is the same behind its prefix (step-, caution-, …),
// or one that is nearly the same.
func NearID(id string, known []string) string {
	best := ""
	for _, k := range known {
		if strings.HasSuffix(k, "-"+id) && (best == "" || len(k) < len(best) || len(k) == len(best) && k < best) {
			best = k
		}
	}
	if best == "" {
		best = report.Nearest(id, known)
	}
	if best == "" {
		return ""
	}
	return "did you mean #" + best + "?"
}

type linkRenderer struct{}

func (r linkRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(ast.KindLink, r.link)
	reg.Register(ast.KindAutoLink, r.autoLink)
}

func (linkRenderer) link(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		_, _ = w.WriteString("</a>")
		return ast.WalkContinue, nil
	}
	n := node.(*ast.Link)
	_, _ = w.WriteString("<a")
	writeExternal(w, n.Destination)
	_, _ = w.WriteString(` href="`)
	_, _ = w.Write(util.EscapeHTML(util.URLEscape(n.Destination, true)))
	_ = w.WriteByte('"')
	if n.Title != nil {
		_, _ = w.WriteString(` title="`)
		_, _ = w.Write(util.EscapeHTML(n.Title))
		_ = w.WriteByte('"')
	}
	_ = w.WriteByte('>')
	return ast.WalkContinue, nil
}

func (linkRenderer) autoLink(w util.BufWriter, source []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	n := node.(*ast.AutoLink)
	url := util.URLEscape(n.URL(source), false)
	if n.AutoLinkType == ast.AutoLinkEmail && !bytes.HasPrefix(url, []byte("mailto:")) {
		url = append([]byte("mailto:"), url...)
	}
	if !bytes.HasPrefix(url, []byte("http")) && !bytes.HasPrefix(url, []byte("mailto:")) {
		url = nil
	}
	_, _ = w.WriteString("<a")
	writeExternal(w, url)
	_, _ = w.WriteString(` href="`)
	_, _ = w.Write(util.EscapeHTML(url))
	_, _ = w.WriteString(`">`)
	_, _ = w.Write(util.EscapeHTML(n.Label(source)))
	_, _ = w.WriteString(`</a>`)
	return ast.WalkContinue, nil
}

func writeExternal(w util.BufWriter, destination []byte) {
	if bytes.HasPrefix(destination, []byte("http:")) || bytes.HasPrefix(destination, []byte("https:")) {
		_, _ = w.WriteString(` rel="external noreferrer"`)
	}
}
