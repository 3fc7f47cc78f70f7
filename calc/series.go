package calc

import (
	"math"
	"strconv"
	"strings"

	words "changeout/calc/text"
	"changeout/calc/unit"
)

// A series is typed, pasted or read from a file as plain text: one row a
// line, or rows parted by " / " on one line. Fields are parted by tabs,
// semicolons, commas or spaces, whichever the text uses. A first line of words
// is a header that names columns and units; blank lines and lines that start
// with # are skipped.
//
// What the header leaves open is asked about, never guessed. The answer comes
// back in the companion field ID.columns, one entry a field of the text:
// column:unit, column:clock, or - for a field to ignore.

// layout says what each field of a row is.
type layout struct {
	column []int        // index into Input.Columns, or -1
	unit   []*unit.Unit // nil for a clock column
	said   []bool       // the header or an answer names the unit, so another one in a cell contradicts it
	split  int          // the field that was joined with the one after it
}

const clockUnit = "clock"

// parseSeries reads the text of a series input.
func (r *Run) parseSeries(in *Input, field Field, columns string) (*Rows, bool) {
	lines := dataLines(field.Text)
	if len(lines) == 0 {
		r.problem(in, FewRows, in.Label+": no rows were found; enter "+allowed(in, r)+".")
		return nil, false
	}
	sep := separatorOf(lines)
	table := make([][]string, len(lines))
	for i, l := range lines {
		table[i] = splitFields(l, sep)
	}
	split := joinDates(table)
	header := isHeader(table[0])
	body := table
	if header {
		body = table[1:]
	}
	if len(body) < in.MinRows {
		r.problem(in, FewRows, in.Label+": "+count(len(body), "row")+" given; at least "+strconv.Itoa(in.MinRows)+" are needed.")
		return nil, false
	}
	if len(body) > in.MaxRows {
		r.problem(in, ManyRows, in.Label+": "+count(len(body), "row")+" given; at most "+strconv.Itoa(in.MaxRows)+" are taken.")
		return nil, false
	}
	var plan layout
	var ok bool
	switch {
	case columns != "":
		plan, ok = r.layoutFromAnswer(in, columns, table[0], body)
	case header:
		plan, ok = r.layoutFromHeader(in, table[0], body)
	default:
		plan, ok = r.layoutByOrder(in, body[0])
	}
	if !ok {
		return nil, false
	}
	plan.split = split
	return r.readRows(in, plan, body, sep)
}

// dataLines splits a text into its lines with content.
func dataLines(text string) []string {
	text = strings.TrimPrefix(text, "\ufeff")
	text = words.Swap(text, "\r\n", "\n", "\r", "\n")
	if !strings.Contains(strings.TrimSpace(text), "\n") {
		text = strings.ReplaceAll(text, " / ", "\n")
	}
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		trimmed := strings.TrimSpace(line)
		if trimmed == "" || strings.HasPrefix(trimmed, "#") {
			continue
		}
		out = append(out, strings.Trim(line, " "))
	}
	return out
}

// separatorOf finds what parts the fields: tab, semicolon, comma, or ' ' for
// white space. A comma between digits with other white space between fields
// is a decimal comma.
func separatorOf(lines []string) byte {
	var tab, semi, comma, spaced int
	for _, l := range lines {
		if strings.Contains(l, "\t") {
			tab++
		}
		if strings.Contains(l, ";") {
			semi++
		}
		if strings.Contains(l, ",") {
			comma++
			if fields := strings.Fields(l); len(fields) > 1 && !strings.Contains(l, ", ") && !strings.Contains(l, " ,") && startsDigit(fields[0]) && startsDigit(fields[1]) && !strings.Contains(fields[0], ":") && !isDate(fields[0]) {
				spaced++
			}
		}
	}
	half := (len(lines) + 1) / 2
	switch {
	case tab >= half:
		return '\t'
	case semi >= half:
		return ';'
	case comma >= half && spaced < half:
		return ','
	}
	return ' '
}

func startsDigit(s string) bool { return s != "" && (s[0] >= '0' && s[0] <= '9' || s[0] == '-') }

// splitFields cuts a line into fields; double quotes protect separators.
func splitFields(line string, sep byte) []string {
	if sep == ' ' {
		return strings.Fields(line)
	}
	var fields []string
	var b strings.Builder
	quoted := false
	for i := 0; i < len(line); i++ {
		c := line[i]
		switch {
		case quoted && c == '"' && i+1 < len(line) && line[i+1] == '"':
			b.WriteByte(c) // a doubled mark stands for one
			i++
		case quoted && c == '"':
			quoted = false
		case c == '"' && strings.TrimSpace(b.String()) == "" && strings.IndexByte(line[i+1:], '"') >= 0:
			quoted = true // elsewhere it is an inch sign
			b.Reset()
		case c == sep && !quoted:
			fields = append(fields, strings.TrimSpace(b.String()))
			b.Reset()
		default:
			b.WriteByte(c)
		}
	}
	return append(fields, strings.TrimSpace(b.String()))
}

// joinDates makes one field of a date and the time of day in the field after
// it, which is how loggers often write them. It returns the place of the date,
// or of the end where there is none.
func joinDates(table [][]string) int {
	dateAndTime := func(fields []string, i int) bool {
		if i+1 >= len(fields) || !isDate(fields[i]) {
			return false
		}
		_, ok := timeOfDay(fields[i+1])
		return ok
	}
	sample := table[len(table)/2]
	at := 0
	for at < len(sample) && !dateAndTime(sample, at) {
		at++
	}
	for i, fields := range table {
		// A header parted by spaces may name both with one word.
		named := i == 0 && isHeader(fields) && at+1 < len(sample) && len(fields) >= len(sample)
		if named || dateAndTime(fields, at) {
			fields[at] += " " + fields[at+1]
			table[i] = append(fields[:at+1], fields[at+2:]...)
		}
	}
	return at
}

// isHeader reports whether a first line is words: no field starts like a
// number, a date or a time of day.
func isHeader(fields []string) bool {
	letters := false
	for _, f := range fields {
		if startsDigit(f) || strings.HasPrefix(f, "+") || strings.HasPrefix(f, ".") || strings.HasPrefix(f, "−") {
			return false
		}
		letters = letters || f != ""
	}
	return letters
}

// layoutByOrder takes the columns in the order declared, in their first unit.
func (r *Run) layoutByOrder(in *Input, first []string) (layout, bool) {
	var plan layout
	for i, f := range first {
		if i >= len(in.Columns) {
			if strings.TrimSpace(f) == "" {
				continue
			}
			r.problem(in, UnknownColumn, in.Label+": the rows hold "+count(len(first), "field")+
				" and no header; give a header such as “"+exampleHeader(in)+"”.")
			return plan, false
		}
		c := &in.Columns[i]
		plan.column = append(plan.column, i)
		if c.Clock && isClock(f) {
			plan.unit = append(plan.unit, nil)
		} else {
			plan.unit = append(plan.unit, c.Quantity.Unit(c.Units[0]))
		}
		plan.said = append(plan.said, false)
	}
	return plan, r.complete(in, plan, first)
}

// layoutFromHeader reads names and units from the header's words.
func (r *Run) layoutFromHeader(in *Input, header []string, body [][]string) (layout, bool) {
	first := body[0]
	plan := layout{column: make([]int, len(header)), unit: make([]*unit.Unit, len(header)), said: make([]bool, len(header))}
	taken := make([]bool, len(in.Columns))
	open := -1 // a field whose column is known but not its unit
	for i, h := range header {
		plan.column[i] = -1
		c, u := r.recogniseColumn(in, h)
		if c < 0 || taken[c] {
			continue
		}
		taken[c] = true
		plan.column[i], plan.unit[i], plan.said[i] = c, u, u != nil
		if in.Columns[c].Clock && i < len(first) && isClock(first[i]) {
			plan.unit[i] = nil // a time of day, whatever the header says
			continue
		}
		if u == nil && len(in.Columns[c].Units) == 1 {
			u = in.Columns[c].Quantity.Unit(in.Columns[c].Units[0]) // nothing to choose
			plan.unit[i] = u
		}
		if u == nil && ownUnits(&in.Columns[c], body, i) {
			plan.unit[i] = in.Columns[c].Quantity.Unit(in.Columns[c].Units[0]) // no cell uses it
			continue
		}
		if u == nil && open < 0 {
			open = i
		}
	}
	if open >= 0 {
		r.askColumnUnit(in, plan, header, first, open)
		return plan, false
	}
	return plan, r.complete(in, plan, header)
}

// ownUnits reports whether every filled cell of a column says its unit, as
// 12.7 mm does: then there is nothing to ask.
func ownUnits(c *Column, body [][]string, k int) bool {
	said := false
	for _, fields := range body {
		if k >= len(fields) || strings.TrimSpace(fields[k]) == "" {
			continue
		}
		if c.Quantity.Unit(unit.ParseNumber(fields[k]).Rest) == nil {
			return false
		}
		said = true
	}
	return said
}

// recogniseColumn finds the column and the unit that a header field names.
func (r *Run) recogniseColumn(in *Input, h string) (column int, u *unit.Unit) {
	parts := headerWords(h)
	column = -1
	for c := range in.Columns {
		for _, w := range parts {
			if contains(in.Columns[c].Names, words.Lower(w)) {
				column = c
			}
		}
	}
	for c := range in.Columns {
		if column >= 0 && c != column {
			continue
		}
		col := &in.Columns[c]
		for k := len(parts) - 1; k >= 0; k-- {
			if len(parts) > 1 && k == 0 && contains(col.Names, words.Lower(parts[k])) {
				continue
			}
			if found := col.Quantity.Unit(parts[k]); found != nil && contains(col.Units, found.ID) {
				return c, found
			}
		}
	}
	return column, nil
}

// headerWords splits a header field at everything that is not a letter, digit,
// slash or degree sign.
func headerWords(h string) []string {
	return strings.FieldsFunc(h, func(c rune) bool {
		return !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '/' || c == '"' || c > 127)
	})
}

// askColumnUnit asks for the unit of one column, one suggestion a unit.
func (r *Run) askColumnUnit(in *Input, plan layout, header, first []string, open int) {
	c := &in.Columns[plan.column[open]]
	p := Problem{Input: in.ID, Code: ColumnUnit, Sentence: in.Label + ": column “" + short(header[open]) + "” gives no unit; it can be " +
		strings.Join(c.Units, ", ") + ". Choose one."}
	for _, id := range c.Units {
		var b strings.Builder
		for i := range plan.column {
			if i > 0 {
				b.WriteByte(',')
			}
			switch {
			case i == open:
				b.WriteString(c.ID + ":" + id)
			case plan.column[i] < 0:
				b.WriteByte('-')
			case plan.unit[i] != nil:
				b.WriteString(in.Columns[plan.column[i]].ID + ":" + plan.unit[i].ID)
			case in.Columns[plan.column[i]].Clock && i < len(first) && isClock(first[i]):
				b.WriteString(in.Columns[plan.column[i]].ID + ":" + clockUnit)
			default:
				b.WriteString(in.Columns[plan.column[i]].ID + ":?")
			}
		}
		p.Suggest = append(p.Suggest, Suggestion{Input: in.ID + ".columns", Label: id, Text: b.String()})
	}
	r.answer.Problems = append(r.answer.Problems, p)
}

// layoutFromAnswer reads the companion field. header is the first line of the
// text, for what is still to be asked.
func (r *Run) layoutFromAnswer(in *Input, columns string, header []string, body [][]string) (layout, bool) {
	var plan layout
	parts := strings.Split(columns, ",")
	open := -1
	for i, p := range parts {
		name, u, _ := strings.Cut(strings.TrimSpace(p), ":")
		plan.column = append(plan.column, -1)
		plan.unit = append(plan.unit, nil)
		plan.said = append(plan.said, false)
		for c := range in.Columns {
			if in.Columns[c].ID != name {
				continue
			}
			plan.column[i] = c
			if u != clockUnit || !in.Columns[c].Clock {
				plan.unit[i] = in.Columns[c].Quantity.Unit(u)
				plan.said[i] = plan.unit[i] != nil
				if plan.unit[i] == nil && ownUnits(&in.Columns[c], body, i) {
					plan.unit[i] = in.Columns[c].Quantity.Unit(in.Columns[c].Units[0])
				}
				if plan.unit[i] == nil && open < 0 {
					open = i
				}
			}
		}
	}
	if open >= 0 {
		if open >= len(header) {
			header = parts
		}
		r.askColumnUnit(in, plan, header, body[0], open)
		return plan, false
	}
	return plan, r.complete(in, plan, parts)
}

// complete checks that every required column is there.
func (r *Run) complete(in *Input, plan layout, header []string) bool {
	for c := range in.Columns {
		if in.Columns[c].Optional {
			continue
		}
		found := false
		for _, k := range plan.column {
			found = found || k == c
		}
		if !found {
			r.problem(in, UnknownColumn, in.Label+": no column for "+words.Lower(in.Columns[c].Label)+" was found in “"+
				short(strings.Join(header, ", "))+"”; a header such as “"+exampleHeader(in)+"” is understood.")
			return false
		}
	}
	return true
}

func exampleHeader(in *Input) string {
	var b strings.Builder
	for i, c := range in.Columns {
		if i > 0 {
			b.WriteString(",")
		}
		b.WriteString(c.ID)
		if len(c.Units) > 1 {
			b.WriteString("_" + c.Units[0])
		}
	}
	return b.String()
}

// readRows turns fields into SI values, row by row.
func (r *Run) readRows(in *Input, plan layout, body [][]string, sep byte) (*Rows, bool) {
	rows := &Rows{Columns: make([][]float64, len(in.Columns)), fields: make([]int, len(in.Columns))}
	for k, c := range plan.column {
		if c >= 0 {
			rows.Columns[c] = make([]float64, len(body))
			rows.fields[c] = k + 1
			if k > plan.split {
				rows.fields[c]++ // the time of day was a field of its own
			}
		}
	}
	own := make([]ownUnit, len(in.Columns))
	decimal := commaStyle(plan, body, sep)
	bad := 0
	var clock clockReader
	for i, fields := range body {
		for k, c := range plan.column {
			if c < 0 {
				continue
			}
			text := ""
			if k < len(fields) {
				text = strings.TrimSpace(fields[k])
			}
			u := plan.unit[k]
			v, trouble := r.readCell(&in.Columns[c], &u, text, decimal, &clock)
			rows.Columns[c][i] = v
			own[c].note(i, u, plan.unit[k], text)
			if trouble == "" {
				continue
			}
			bad++
			if bad == 1 {
				r.badRow(in, i, rows.fields[c], ", "+words.Lower(in.Columns[c].Label)+": "+trouble)
			}
		}
		if extra := unplanned(fields, len(plan.column)); extra && sep == ',' {
			bad++
			if bad == 1 {
				r.badRow(in, i, 0, " has "+count(len(fields), "field")+" where "+strconv.Itoa(len(plan.column))+" are expected; if commas are decimal signs, part the fields with semicolons or tabs.")
			}
		}
	}
	if bad > 1 {
		last := &r.answer.Problems[len(r.answer.Problems)-1]
		last.Sentence += " " + count(bad-1, "more field") + " cannot be read either."
	}
	for k, c := range plan.column {
		if c >= 0 && own[c].rows > 0 && (plan.said[k] || own[c].column) {
			r.Warn(in.Label + ", " + own[c].list + ": " + words.Lower(in.Columns[c].Label) + " is written in " + own[c].unit + " there and was converted; the column is in " + plan.unit[k].Label + ".")
		}
	}
	return rows, bad == 0
}

// badRow adds the problem of one row, counted from 0, with the field it is in.
func (r *Run) badRow(in *Input, row, field int, trouble string) {
	r.answer.Problems = append(r.answer.Problems, Problem{Input: in.ID, Code: BadRow, Sentence: in.Label + ": row " + strconv.Itoa(row+1) + trouble, Row: row + 1, Field: field})
}

// ownUnit is what the cells of a column say of units that are not the column's.
type ownUnit struct {
	rows       int
	list, unit string
	column     bool // some cell is in the column's unit
}

// note takes down the unit that a row, counted from 0, was read in.
func (o *ownUnit) note(row int, u, column *unit.Unit, text string) {
	if u == column {
		o.column = o.column || text != ""
		return
	}
	o.rows++
	switch {
	case o.rows == 1:
		o.list, o.unit = "row "+strconv.Itoa(row+1), u.Label
	case o.rows == 2:
		o.list = "rows" + o.list[len("row"):] + ", " + strconv.Itoa(row+1)
	case o.rows <= 5:
		o.list += ", " + strconv.Itoa(row+1)
	case o.rows == 6:
		o.list += " and more"
	}
	if !strings.Contains(o.unit, u.Label) {
		o.unit += " or " + u.Label
	}
}

func unplanned(fields []string, planned int) bool {
	for i := planned; i < len(fields); i++ {
		if startsDigit(strings.TrimSpace(fields[i])) {
			return true
		}
	}
	return false
}

// readCell reads one field, and puts the unit that the cell says in place of
// the column's. An empty field of an optional column is NaN inside.
func (r *Run) readCell(c *Column, in **unit.Unit, text string, decimal commaMeaning, clock *clockReader) (float64, string) {
	if text == "" {
		if c.Optional {
			return math.NaN(), ""
		}
		return 0, "nothing is entered."
	}
	u := *in
	if u == nil {
		s, ok := clock.seconds(text)
		if !ok {
			return 0, "“" + short(text) + "” is not a time of day such as 21:45."
		}
		return s, ""
	}
	if c.Quantity.Calendar() {
		day, rest, ok := unit.SplitDate(text)
		if !ok || rest != "" {
			return 0, "“" + short(text) + "” is not a date such as 2026-11-25."
		}
		return r.inColumn(c, u, day, text)
	}
	n := unit.ParseNumber(text)
	if n.Rest != "" {
		own := c.Quantity.Unit(n.Rest)
		if own == nil {
			return 0, "“" + short(text) + "” is not a number in " + u.Label + "."
		}
		u, *in = own, own
	}
	switch n.Trouble {
	case unit.NumberTwoWays:
		switch decimal {
		case commaDecimal:
			n.Value = n.Ways[0]
		case commaThousands:
			n.Value = n.Ways[1]
		default:
			return 0, "“" + short(text) + "” can mean " + plainNumber(n.Ways[0]) + " or " + plainNumber(n.Ways[1]) + "; write it without the comma."
		}
	case unit.NumberFine:
	default:
		return 0, "“" + short(text) + "” is not a number."
	}
	return r.inColumn(c, u, u.ToSI(n.Value, r.env), text)
}

// inColumn judges the bounds of a column.
func (r *Run) inColumn(c *Column, u *unit.Unit, si float64, text string) (float64, string) {
	if !(si >= c.Low && si <= c.High) {
		return 0, strings.TrimSuffix("“"+short(text)+"” is outside "+u.Range(c.Low, c.High, r.env), " ") + "."
	}
	return si, ""
}

type commaMeaning int

const (
	commaOpen commaMeaning = iota
	commaDecimal
	commaThousands
)

// commaStyle settles what a comma before three digits means from the rest of
// the text: a comma before any other count of digits shows a decimal comma; a
// decimal point anywhere, or commas that part the fields, show thousands.
func commaStyle(plan layout, body [][]string, sep byte) commaMeaning {
	style := commaOpen
	if sep == ',' {
		return commaThousands
	}
	for _, fields := range body {
		for k, c := range plan.column {
			if c < 0 || k >= len(fields) || plan.unit[k] == nil {
				continue
			}
			f := fields[k]
			n := unit.ParseNumber(f)
			if n.Trouble != unit.NumberFine {
				continue
			}
			if strings.Contains(f, ",") && !strings.Contains(f, ".") && strings.Count(f, ",") == 1 {
				return commaDecimal
			}
			if strings.Contains(f, ".") {
				style = commaThousands
			}
		}
	}
	return style
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
