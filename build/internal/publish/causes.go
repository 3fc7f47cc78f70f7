package publish

import (
	"bytes"
	"html/template"
	"path/filepath"

	"changeout/build/internal/causes"
	"changeout/build/internal/page"
	"changeout/build/internal/report"
)

// assessment is the cause model of the content with its data file. A nil one stands for content without a model; one
// without a model for a model with problems, which draws nothing because the problems say enough.
type assessment struct {
	model *causes.Model
	file  string // address of the data file, from the site's root
	bytes []byte
	site  string // the folder with the templates
}

// readCauses reads the cause model; nil when the content has none, or has problems.
func (p *Publisher) readCauses(book *page.Book) (*assessment, []report.Problem) {
	m, problems := causes.Read(book, p.o.Supply.Declared)
	if m == nil && len(problems) == 0 {
		return nil, nil
	}
	if m == nil {
		return &assessment{}, problems
	}
	data := m.Data()
	return &assessment{m, hashedName("causes.txt", data), data, filepath.Join(p.o.Root, "site")}, problems
}

func (a *assessment) name() string {
	if a == nil {
		return ""
	}
	return a.file
}

func (a *assessment) data() []byte {
	if a == nil {
		return nil
	}
	return a.bytes
}

// put hands the data file to the sink.
func (a *assessment) put(to sink) []report.Problem {
	if a == nil || a.model == nil {
		return nil
	}
	if _, err := to.put(a.file, a.bytes); err != nil {
		return []report.Problem{writeProblem(err)}
	}
	return nil
}

// drawer gives what the converter calls for “:: assessment”. The template is read at each call: one page asks.
func (a *assessment) drawer() func(base string) ([]byte, error) {
	if a == nil {
		return nil
	}
	return func(base string) ([]byte, error) {
		if a.model == nil {
			return nil, nil
		}
		t, err := template.ParseFS(dirFS(a.site), "components/assess/*.tmpl")
		if err != nil {
			return nil, err
		}
		var b bytes.Buffer
		err = t.ExecuteTemplate(&b, "assess", a.model.View(a.file, base))
		return b.Bytes(), err
	}
}
