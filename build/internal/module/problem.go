package module

import (
	"context"
	"errors"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"changeout/build/internal/report"
)

// compilerLine is how the Go command reports: file:line:column: text.
var compilerLine = regexp.MustCompile(`^(?:vet: )?([^\s:][^:]*\.(?:go|s|mod)):(\d+)(?::\d+)?: (.*)$`)

// compileProblems turns what the Go command printed into problems: one for
// each line with a place, or one for the whole text if no line has a place.
func compileProblems(o Options, err error) []report.Problem {
	if errors.Is(err, exec.ErrNotFound) {
		return problem("the Go command was not found, so the WebAssembly module cannot be built", "install Go and put its bin folder on the PATH")
	}
	if errors.Is(err, context.Canceled) {
		return problem("the build of the WebAssembly module was stopped", "")
	}
	var ce *commandError
	if !errors.As(err, &ce) {
		return problem("the WebAssembly module cannot be built: "+err.Error(), "")
	}
	var found []report.Problem
	for line := range strings.SplitSeq(ce.stderr, "\n") {
		m := compilerLine.FindStringSubmatch(strings.TrimSpace(line))
		if m == nil {
			// A tab continues the message before.
			if strings.HasPrefix(line, "\t") && len(found) > 0 {
				found[len(found)-1].Text += " " + strings.TrimSpace(line)
			}
			continue
		}
		file := filepath.FromSlash(m[1])
		if filepath.IsAbs(file) {
			if rel, err := filepath.Rel(o.Root, file); err == nil {
				file = rel
			}
		}
		number, _ := strconv.Atoi(m[2])
		found = append(found, report.Problem{File: filepath.ToSlash(filepath.Clean(file)), Line: number, Text: m[3]})
	}
	if len(found) == 0 {
		return []report.Problem{{File: strings.TrimPrefix(o.Package, "./"), Text: "the program cannot be compiled: " + oneLine(ce.Error())}}
	}
	return found
}

func problem(text, hint string) []report.Problem {
	return []report.Problem{{File: "wasm", Text: text, Hint: hint}}
}

// oneLine joins what the Go command printed, so that a problem stays one line.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
