package publish

import (
	"errors"
	"html/template"
	"io/fs"
	"os"
	"path"
	"regexp"
	"strconv"

	"changeout/build/internal/report"
)

// layouts that every site has; each makes one set with the base and all
// components.
var layouts = []string{"page", "front", "list", "worksheet", "table"}

// templates are the parsed sets by layout name, and "single".
type templates map[string]*template.Template

// parseTemplates reads the templates of a site folder. Files are parsed one by
// one so that a mistake is reported with its file and line.
func parseTemplates(site fs.FS, name string) (templates, []report.Problem) {
	var problems []report.Problem
	parse := func(t *template.Template, file string) {
		b, err := fs.ReadFile(site, file)
		if err != nil {
			problems = append(problems, report.Problem{File: path.Join(name, file), Text: "this template is needed and cannot be read", Hint: reason(err)})
			return
		}
		if _, err := t.New(file).Parse(string(b)); err != nil {
			problems = append(problems, templateProblem(path.Join(name, file), err))
		}
	}
	components, err := fs.Glob(site, "components/*/*.tmpl")
	if err != nil {
		return nil, []report.Problem{{File: name, Text: err.Error()}}
	}
	shared := template.New("shared")
	for _, file := range components {
		parse(shared, file)
	}
	sets := templates{}
	for _, layout := range append([]string{"single"}, layouts...) {
		t, err := shared.Clone()
		if err != nil {
			return nil, []report.Problem{{File: name, Text: err.Error()}}
		}
		if layout != "single" {
			parse(t, "layouts/base.tmpl")
		}
		parse(t, "layouts/"+layout+".tmpl")
		sets[layout] = t
	}
	return sets, report.Sorted(problems)
}

// templateLine finds the place in a message of package template.
var templateLine = regexp.MustCompile(`^(?:html/)?template: ?([^:]*):(\d+)(?::\d+)?: (.*)$`)

func templateProblem(file string, err error) report.Problem {
	p := report.Problem{File: file, Text: err.Error()}
	if m := templateLine.FindStringSubmatch(err.Error()); m != nil {
		p.Line, _ = strconv.Atoi(m[2])
		p.Text = m[3]
	}
	return p
}

// executeProblem is for an error while a page was drawn: it names the template
// and says for which page.
func executeProblem(id string, err error) report.Problem {
	p := templateProblem("site", err)
	if m := templateLine.FindStringSubmatch(err.Error()); m != nil {
		p.File = "site/" + m[1]
	}
	p.Hint = "while drawing the page " + id
	return p
}

// reason shortens a file error to what a person needs.
func reason(err error) string {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err.Error()
	}
	return err.Error()
}

// dirFS is os.DirFS; a folder that is not there reads as a problem later.
func dirFS(dir string) fs.FS { return os.DirFS(dir) }
