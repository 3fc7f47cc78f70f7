package page

import (
	"bytes"
	"strconv"
	"strings"
	"time"

	"changeout/build/internal/report"
)

// headerKeys are all the keys a header may hold. A page says nothing that the program does not understand.
var headerKeys = []string{"title", "summary", "kind", "stage", "updated"}

const headerExample = "start the file with ---, then title, summary, kind, (stage,) updated, then ---"

// readHeader fills the page from the header and sets Body and BodyLine.
func (p *Page) readHeader(source []byte) []report.Problem {
	source = bytes.TrimPrefix(source, []byte("\ufeff"))
	if bytes.IndexByte(source, '\r') >= 0 {
		source = bytes.ReplaceAll(source, []byte("\r\n"), []byte("\n"))
	}
	p.Body, p.BodyLine = source, 1

	rest, ok := bytes.CutPrefix(source, []byte("---\n"))
	if !ok {
		return []report.Problem{p.Problem(1, "page has no header", headerExample)}
	}
	var problems []report.Problem
	add := func(line int, text, hint string) { problems = append(problems, p.Problem(line, text, hint)) }

	lines := make(map[string]int, len(headerKeys)) // key: line where it stands
	for number := 2; ; number++ {
		raw, after, more := bytes.Cut(rest, []byte("\n"))
		line := strings.TrimSpace(string(raw))
		if line == "---" {
			p.Body, p.BodyLine = after, number+1
			break
		}
		if !more {
			add(1, "header is not closed", "put --- on a line of its own below the last key")
			return problems
		}
		rest = after
		if line == "" {
			continue
		}
		key, value, ok := strings.Cut(line, ":")
		key, value = strings.TrimSpace(key), unquote(strings.TrimSpace(value))
		if !ok {
			add(number, "header line is not “key: value”: "+line, "")
			continue
		}
		if lines[key] != 0 {
			add(number, "header key "+key+" is given twice", "first on line "+strconv.Itoa(lines[key]))
			continue
		}
		lines[key] = number
		if value == "" {
			add(number, "header key "+key+" is empty", "")
			continue
		}
		switch key {
		case "title":
			p.Title = value
		case "summary":
			p.Summary = value
		case "kind":
			if value != Procedure && value != Reference {
				add(number, "kind is "+value, "use "+Procedure+" or "+Reference)
				continue
			}
			p.Kind = value
		case "stage":
			n, err := strconv.Atoi(value)
			if err != nil || n < 1 || n > lastStage {
				add(number, "stage is "+value, "use a whole number from 1 to "+strconv.Itoa(lastStage))
				continue
			}
			p.Stage = n
		case "updated":
			day, err := time.Parse(time.DateOnly, value)
			if err != nil {
				add(number, "updated is "+value, "write the day as 2026-11-25")
				continue
			}
			p.Updated = day
		default:
			add(number, "unknown header key "+key, report.DidYouMean(key, headerKeys))
		}
	}
	for _, key := range headerKeys {
		needed := key != "stage" || p.Kind == Procedure
		if needed && lines[key] == 0 {
			add(1, "header has no "+key, "add a line “"+key+": …”")
		}
	}
	return problems
}

// unquote drops a pair of double quotes round a value, which people used to other tools write.
func unquote(s string) string {
	if len(s) >= 2 && s[0] == '"' && s[len(s)-1] == '"' {
		return s[1 : len(s)-1]
	}
	return s
}
