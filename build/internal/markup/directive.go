package markup

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"changeout/build/internal/report"
)

// directives are lines that start with two colons, at the left edge or inside a step:
//
//	:: worksheet vacuum-hold
//	:: table water-boiling-point
//	:: wait 30 min | Fire watch | Look at the joint every 10 minutes.
//	:: wait 10 min, together | Hold, 10 minutes
//	:: write pressure-after-10 | Pressure 10 minutes after isolation | micron
//	:: write sensors | Each sensor: shown and measured | °C, several
//	:: write loss | Change of weight in 5 minutes | g, signed
//	:: assessment
//	:: stored
//	:: job
type directives struct{}

func (directives) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithBlockParsers(util.Prioritized(directiveParser{}, priorityDirective)))
	register(m, directiveRenderer{})
}

var (
	kindEmbed         = ast.NewNodeKind("Embed")
	kindWait          = ast.NewNodeKind("Wait")
	kindWrite         = ast.NewNodeKind("Write")
	kindDirectiveText = ast.NewNodeKind("DirectiveText")
	kindBadDirective  = ast.NewNodeKind("BadDirective")
)

// embedNode is a worksheet, a table computed at build, or the assessment of causes.
type embedNode struct {
	ast.BaseBlock
	table      bool
	assessment bool
	job        bool
	report     bool
	id         string
	html       []byte
}

func (n *embedNode) Kind() ast.NodeKind            { return kindEmbed }
func (n *embedNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// waitNode is a timer. Its children are the title and, perhaps, a note.
type waitNode struct {
	ast.BaseBlock
	given   string // {#id}, or ""
	id      string
	length  string
	seconds int

	together bool   // with the waits before and after it that say so too, as far as the next that does not
	group    string // id of the first of those
}

func (n *waitNode) Kind() ast.NodeKind            { return kindWait }
func (n *waitNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// writeNode is a field to write down. Its child is the label.
type writeNode struct {
	ast.BaseBlock
	id   string
	unit string // as shown behind the field, or text, time, photo number

	several bool // readings in the one field
	signed  bool
	field   Field
	units   string // number of its list of units on this page, and the list where it stands first: 2=bar gauge,*psi gauge
	to      *take  // the input of a worksheet below that may take it over; nil for none
}

func (n *writeNode) Kind() ast.NodeKind            { return kindWrite }
func (n *writeNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// directiveTextNode is a part of a directive that may hold inline Markdown.
type directiveTextNode struct {
	ast.BaseBlock
	role string // title, note or label
	id   string // of the element, or what the label is for
}

func (n *directiveTextNode) Kind() ast.NodeKind { return kindDirectiveText }
func (n *directiveTextNode) Dump(source []byte, level int) {
	ast.DumpHelper(n, source, level, nil, nil)
}

// badDirectiveNode is a line that is not understood; it prints nothing.
type badDirectiveNode struct {
	ast.BaseBlock
	text, hint string
}

func (n *badDirectiveNode) Kind() ast.NodeKind            { return kindBadDirective }
func (n *badDirectiveNode) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

type directiveParser struct{}

func (directiveParser) Trigger() []byte             { return []byte{':'} }
func (directiveParser) CanInterruptParagraph() bool { return true }
func (directiveParser) CanAcceptIndentedLine() bool { return false }

func (directiveParser) Continue(ast.Node, text.Reader, parser.Context) parser.State {
	return parser.Close
}
func (directiveParser) Close(ast.Node, text.Reader, parser.Context) {}

func (directiveParser) Open(_ ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, segment := reader.PeekLine()
	at := pc.BlockOffset()
	if at < 0 || at+1 >= len(line) || line[at] != ':' || line[at+1] != ':' {
		return nil, parser.NoChildren
	}
	source := reader.Source()
	rest := text.NewSegment(max(segment.Start, segment.Start+at+2-segment.Padding), segment.Stop)
	rest = rest.TrimRightSpace(source)
	reader.AdvanceToEOL()
	return parseDirective(rest, source), parser.NoChildren
}

var directiveNames = []string{"worksheet", "table", "wait", "write", "assessment", "job", "report", "stored"}

// Forms for hints.
const (
	waitForm  = "write :: wait 30 min | Title | Note"
	together  = ", together" // behind the length of waits that one tap starts
	several   = ", several"  // behind the unit of a field that asks for more than one reading
	signed    = ", signed"   // behind the unit of a difference that may be below zero
	writeForm = "write :: write id | Label | unit (or text, time, photo number)"
)

func parseDirective(rest text.Segment, source []byte) ast.Node {
	var parts []text.Segment
	for start := rest.Start; ; {
		end := bytes.IndexByte(source[start:rest.Stop], '|')
		if end < 0 {
			parts = append(parts, trimSegment(start, rest.Stop, source))
			break
		}
		parts = append(parts, trimSegment(start, start+end, source))
		start += end + 1
	}
	name, argument, _ := strings.Cut(string(source[parts[0].Start:parts[0].Stop]), " ")
	argument = strings.TrimSpace(argument)
	switch name {
	case "worksheet", "table":
		if argument == "" || len(parts) > 1 || strings.ContainsAny(argument, " \t") {
			return &badDirectiveNode{text: "directive “" + name + "” takes one id", hint: "write :: " + name + " id"}
		}
		return &embedNode{table: name == "table", id: argument}
	case "assessment":
		if argument != "" || len(parts) > 1 {
			return &badDirectiveNode{text: "directive “assessment” takes nothing behind it", hint: "write :: assessment"}
		}
		return &embedNode{assessment: true}
	case "job":
		if argument != "" || len(parts) > 1 {
			return &badDirectiveNode{text: "directive “job” takes nothing behind it", hint: "write :: job"}
		}
		return &embedNode{job: true}
	case "report":
		if argument != "" || len(parts) > 1 {
			return &badDirectiveNode{text: "directive “report” takes nothing behind it", hint: "write :: report"}
		}
		return &embedNode{report: true}
	case "stored":
		if argument != "" || len(parts) > 1 {
			return &badDirectiveNode{text: "directive “stored” takes nothing behind it", hint: "write :: stored"}
		}
		return &embedNode{html: []byte(storedHTML)}
	case "wait":
		return parseWait(argument, parts, source)
	case "write":
		return parseWrite(argument, parts, source)
	}
	return &badDirectiveNode{text: "unknown directive “:: " + name + "”", hint: report.DidYouMean(name, directiveNames)}
}

// storedHTML is where site/components/stored shows what is stored on the phone. Without script it says what to do instead.
const storedHTML = `<div class="co-stored" data-stored=""><p>This part shows what is stored on this phone. It needs script. Without it, test with flight mode as below.</p></div>
`

func trimSegment(start, stop int, source []byte) text.Segment {
	s := text.NewSegment(start, stop)
	s = s.TrimLeftSpace(source)
	return s.TrimRightSpace(source)
}

func parseWait(length string, parts []text.Segment, source []byte) ast.Node {
	length, inGroup := strings.CutSuffix(length, together)
	seconds, shown, ok := parseLength(length)
	if !ok {
		return &badDirectiveNode{text: "length of a wait is “" + length + "”", hint: "write 30 min, 2 h, 90 s, 1 h 30 min, or a range 2-5 min"}
	}
	if len(parts) < 2 || parts[1].Len() == 0 || len(parts) > 3 {
		return &badDirectiveNode{text: "wait needs a title, and may have one note", hint: waitForm}
	}
	n := &waitNode{length: shown, seconds: seconds, together: inGroup}
	last := len(parts) - 1
	parts[last], n.given = cutID(parts[last], source)
	appendText(n, "title", parts[1])
	if len(parts) == 3 && parts[2].Len() > 0 {
		appendText(n, "note", parts[2])
	}
	return n
}

func parseWrite(id string, parts []text.Segment, source []byte) ast.Node {
	if len(parts) < 3 || len(parts) > 4 || parts[1].Len() == 0 || parts[2].Len() == 0 {
		return &badDirectiveNode{text: "write needs an id, a label and a unit", hint: writeForm}
	}
	if !validID(id) {
		return &badDirectiveNode{text: "id of a field is “" + id + "”", hint: idHint}
	}
	n := &writeNode{id: id, unit: string(source[parts[2].Start:parts[2].Stop])}
	n.unit, n.several = strings.CutSuffix(n.unit, several)
	n.unit, n.signed = strings.CutSuffix(n.unit, signed)
	if len(parts) == 4 {
		if n.to = parseTake(string(source[parts[3].Start:parts[3].Stop])); n.to == nil {
			return &badDirectiveNode{text: "what takes a field over is “" + string(source[parts[3].Start:parts[3].Stop]) + "”", hint: takeForm}
		}
	}
	appendText(n, "label", parts[1])
	return n
}

func appendText(parent ast.Node, role string, segment text.Segment) {
	n := &directiveTextNode{role: role}
	n.SetPos(segment.Start)
	n.Lines().Append(segment)
	parent.AppendChild(parent, n)
}

// rangeMarks are the ways people write a range.
var rangeMarks = strings.NewReplacer("–", "-", "—", "-", " to ", "-")

// parseLength reads “30 min”, “1 h 30 min” or a range “2-5 min”, and gives the seconds of the longer end.
func parseLength(s string) (seconds int, shown string, ok bool) {
	// The longest wait of the job is a night or a week-end; beyond this it is a slip of the keyboard.
	const longest = 14 * 24 * 3600
	s = rangeMarks.Replace(s)
	var show strings.Builder
	total := 0.0
	rest := strings.TrimSpace(s)
	if rest == "" {
		return 0, "", false
	}
	for rest != "" {
		var numbers []float64
		for {
			end := 0
			for end < len(rest) && ('0' <= rest[end] && rest[end] <= '9' || rest[end] == '.') {
				end++
			}
			v, err := strconv.ParseFloat(rest[:end], 64)
			if err != nil {
				return 0, "", false
			}
			numbers = append(numbers, v)
			show.WriteString(rest[:end])
			rest = strings.TrimSpace(rest[end:])
			after, more := strings.CutPrefix(rest, "-")
			if !more {
				break
			}
			show.WriteString("–")
			rest = strings.TrimSpace(after)
		}
		if len(numbers) > 2 || len(numbers) == 2 && numbers[1] <= numbers[0] {
			return 0, "", false
		}
		end := 0
		for end < len(rest) && 'a' <= rest[end] && rest[end] <= 'z' {
			end++
		}
		unit := 0.0
		switch rest[:end] {
		case "s", "sec", "second", "seconds":
			unit = 1
		case "min", "minute", "minutes":
			unit = 60
		case "h", "hour", "hours":
			unit = 3600
		default:
			return 0, "", false
		}
		show.WriteByte(' ')
		show.WriteString(rest[:end])
		total += numbers[len(numbers)-1] * unit
		rest = strings.TrimSpace(rest[end:])
		if rest != "" {
			show.WriteByte(' ')
		}
	}
	if !(total >= 1 && total <= longest) {
		return 0, "", false
	}
	return int(total + 0.5), show.String(), true
}

func (w *walker) readEmbed(n *embedNode) {
	if n.html != nil { // what is stored: drawn when it was read
		w.result.Drawn, w.result.Stored = true, true
		return
	}
	line := w.line(n.Pos())
	if n.assessment {
		w.readAssessment(n, line)
		return
	}
	if n.job {
		w.claim("job-file", line, "a page has one job file")
		w.result.Drawn = true
		n.html = []byte(`<div class="co-job" id="job-file" data-job-file data-causes="` + w.env.Causes + `"><noscript><p>The job file needs script. The pages and the tables do not.</p></noscript></div>` + "\n")
		return
	}
	if n.report {
		w.claim("report", line, "a page has one report")
		w.result.Drawn = true
		n.html = []byte(`<section class="co-report" id="report" data-report="` + w.env.Causes + `"><noscript><p>The report needs script. The pages and the tables do not.</p></noscript></section>` + "\n")
		return
	}
	embeds, what := &w.env.Worksheets, "worksheet"
	used := &w.result.Worksheets
	if n.table {
		embeds, what = &w.env.Tables, "table"
		used = &w.result.Tables
	}
	if !embeds.known[n.id] {
		w.problem(line, "unknown "+what+" “"+n.id+"”", report.DidYouMean(n.id, embeds.IDs))
		return
	}
	*used = append(*used, Use{n.id, line})
	var from []byte
	if !n.table {
		from = w.takenBy(n.id)
	}
	if embeds.HTML == nil {
		n.html = []byte(`<p><a href="` + w.page.Base() + embeds.URL(n.id) + `">` + n.id + "</a></p>\n")
		return
	}
	w.hasEmbeds = true
	html, err := embeds.HTML(n.id, Place{Base: w.page.Base(), Cite: func(key, locator string) []byte {
		item := citationItem{key: key, locator: locator}
		w.cite(&item, line)
		var out output
		item.write(&out)
		return out.bytes
	}})
	if err != nil {
		w.problem(line, what+" “"+n.id+"” cannot be drawn: "+err.Error(), "")
		return
	}
	n.html = append(from, html...)
}

// readAssessment draws the questions of the cause model.
func (w *walker) readAssessment(n *embedNode, line int) {
	if w.env.Assessment == nil {
		w.problem(line, "there is no cause model to assess with", "its tables belong into pages below causes/")
		return
	}
	w.hasEmbeds = true
	html, err := w.env.Assessment(w.page.Base())
	if err != nil {
		w.problem(line, "the assessment cannot be drawn: "+err.Error(), "")
		return
	}
	w.claim("assess", line, "a page has one assessment")
	w.result.Drawn = true
	n.html = html
}

func (w *walker) readWait(n *waitNode) {
	line := w.line(n.Pos())
	var title []byte
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		part, ok := c.(*directiveTextNode)
		if !ok {
			continue
		}
		w.collect(part)
		if part.role == "title" {
			title = bytes.Clone(bytes.TrimSpace(w.plain))
		} else {
			w.checkSentences(whyWords, "note of a wait", line)
		}
	}
	n.id = n.given
	if n.id == "" {
		n.id = w.slug("", title, 0, "timer")
	} else if !validID(n.id) {
		w.problem(line, "id of a wait is "+n.id, idHint)
		n.id = w.slug("", []byte(n.id), 0, "timer")
	}
	w.claim("wait-"+n.id, line, "end one of the lines with an id of its own, for example {#"+n.id+"-again}")
	n.FirstChild().(*directiveTextNode).id = "wait-" + n.id + "-title"
	w.passage(PassageWait, "wait-"+n.id, []byte(string(title)+" · "+n.length))
	w.result.Waits = append(w.result.Waits, Wait{n.id, string(title), n.length, n.seconds, line})
	if !n.together {
		w.endGroup()
		return
	}
	if w.grouped == 0 {
		w.group, w.groupLine = n.id, line
	}
	w.grouped++
	n.group = w.group
}

// endGroup closes a row of waits that start together.
func (w *walker) endGroup() {
	if w.grouped == 1 {
		w.problem(w.groupLine, "a wait alone cannot start together", "write “"+together+"” behind the length of the next wait of the page too")
	}
	w.grouped = 0
}

func (w *walker) readWrite(n *writeNode) {
	line := w.line(n.Pos())
	w.collect(n)
	n.FirstChild().(*directiveTextNode).id = "write-" + n.id
	w.claim("write-"+n.id, line, "each field of a page has an id of its own")
	w.passage(PassageWrite, "write-"+n.id, w.plain)
	w.result.Writes = append(w.result.Writes, Write{n.id, string(bytes.TrimSpace(w.plain)), n.unit, line})
	if w.env.Worksheets.Field != nil {
		var to take
		if n.to != nil {
			to = *n.to
		}
		n.field = w.env.Worksheets.Field(n.unit, to.worksheet, to.input)
	}
	n.units = w.unitList(n.field.Units)
	if n.to != nil {
		w.takes = append(w.takes, taken{take: *n.to, write: n.id, unit: n.unit, line: line})
	}
}

// unitList numbers the lists of units of a page, so that each stands on it once.
func (w *walker) unitList(units []string) string {
	if len(units) < 2 {
		return ""
	}
	list := strings.Join(units, ",")
	if i := slices.Index(w.units, list); i >= 0 {
		return strconv.Itoa(i)
	}
	w.units = append(w.units, list)
	return strconv.Itoa(len(w.units)-1) + "=" + list
}

type directiveRenderer struct{}

func (r directiveRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindEmbed, r.embed)
	reg.Register(kindWait, r.wait)
	reg.Register(kindWrite, r.write)
	reg.Register(kindDirectiveText, r.text)
}

func (directiveRenderer) embed(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		_, _ = w.Write(node.(*embedNode).html)
	}
	return ast.WalkContinue, nil
}

func (directiveRenderer) wait(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		_, _ = w.WriteString("</div>\n")
		return ast.WalkContinue, nil
	}
	n := node.(*waitNode)
	_, _ = w.WriteString(`<div class="co-wait" role="group" id="wait-`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`" aria-labelledby="wait-`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`-title" data-wait="`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`" data-seconds="`)
	_, _ = w.WriteString(strconv.Itoa(n.seconds))
	if n.group != "" {
		_, _ = w.WriteString(`" data-together="`)
		_, _ = w.WriteString(n.group)
	}
	_, _ = w.WriteString(`">`)
	return ast.WalkContinue, nil
}

func (directiveRenderer) write(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*writeNode)
	if entering {
		_, _ = w.WriteString(`<p class="co-write">`)
		return ast.WalkContinue, nil
	}
	_, _ = w.WriteString(` <span class="co-write__row"><input type="text" id="write-`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`" data-write="`)
	_, _ = w.WriteString(n.id)
	_, _ = w.WriteString(`" autocomplete="off"`)
	switch n.unit {
	case "text", "time":
		_, _ = w.WriteString(` data-kind="` + n.unit + `">`)
	case "photo number":
		_, _ = w.WriteString(` data-kind="photo" inputmode="numeric">`)
	default:
		if !n.several && !n.field.Size {
			_, _ = w.WriteString(` inputmode="decimal"`)
		}
		_, _ = w.WriteString(` aria-describedby="write-`)
		_, _ = w.WriteString(n.id)
		_, _ = w.WriteString(`-unit"> <span class="co-write__unit" id="write-`)
		_, _ = w.WriteString(n.id)
		_, _ = w.WriteString(`-unit"`)
		if n.units != "" {
			_, _ = w.WriteString(` data-units="`)
			_, _ = w.Write(util.EscapeHTML([]byte(n.units)))
			_ = w.WriteByte('"')
		}
		if keys := n.keys(); keys != "" {
			_, _ = w.WriteString(` data-keys="` + keys + `"`)
		}
		_ = w.WriteByte('>')
		_, _ = w.Write(util.EscapeHTML([]byte(n.unit)))
		_, _ = w.WriteString(`</span>`)
	}
	_, _ = w.WriteString("</span></p>\n")
	return ast.WalkContinue, nil
}

// keys names the buttons that write.ts puts beside the numeric pad: the sign, or letters.
func (n *writeNode) keys() string {
	switch {
	case n.several || n.field.Size:
		return ""
	case n.signed || n.field.Signed:
		return "sign"
	case n.field.Words:
		return "letters"
	}
	return ""
}

func (directiveRenderer) text(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*directiveTextNode)
	switch {
	case n.role == "label" && entering:
		_, _ = w.WriteString(`<label for="`)
		_, _ = w.WriteString(n.id)
		_, _ = w.WriteString(`">`)
	case n.role == "label":
		_, _ = w.WriteString(`</label>`)
	case n.role == "title" && entering:
		_, _ = w.WriteString(`<p class="co-wait__title" id="`)
		_, _ = w.WriteString(n.id)
		_, _ = w.WriteString(`">`)
	case n.role == "title":
		_, _ = w.WriteString(`</p><p class="co-wait__length">`)
		_, _ = w.Write(util.EscapeHTML([]byte(n.Parent().(*waitNode).length)))
		_, _ = w.WriteString(`</p>`)
	case entering:
		_, _ = w.WriteString(`<p class="co-wait__note">`)
	default:
		_, _ = w.WriteString(`</p>`)
	}
	return ast.WalkContinue, nil
}
