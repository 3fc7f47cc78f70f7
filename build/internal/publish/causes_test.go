package publish

import (
	"context"
	"maps"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// withCauses adds a cause model of one page, and a page that assesses with it, to the small site.
func withCauses() map[string]string {
	files := maps.Clone(small)
	head := "---\ntitle: Model\nsummary: Causes.\nkind: reference\nupdated: 2026-01-01\n---\n"
	files["content/causes/model.md"] = head + `
| Cause | Name | Prior | Again | What removes it | Source |
| --- | --- | --- | --- | --- | --- |
| dust | Dust | 0.2 | yes | Clean it. | editorial |

| Mechanism | Name | What happens | Source |
| --- | --- | --- | --- |
| heat | Heat | It burns. | [@book] |

| Cause | Leads to | Source |
| --- | --- | --- |
| dust | heat ++ | editorial |

## Looks

| Check | Question | If yes, it reads | Fact | How | Effort | From |
| --- | --- | --- | --- | --- | --- | --- |
| grey | Is it grey? | It is grey | colour | [Look](../about/limits.md#when) | 5 min, look | |
| slow | Is it slow? | It is slow | speed | [Look](../about/limits.md) | 5 min, look | |

| Check | Sign of | Leak | Weights | Source |
| --- | --- | --- | --- | --- |
| grey | causes | 0.1 | dust ++ | editorial |
| slow | causes | 0.1 | dust ++ | editorial |
`
	files["content/stages/assess.md"] = strings.Replace(head, "Model", "Assess", 1) + "\n:: assessment\n"
	files["content/contents.md"] += "- Causes\n  - [Model](causes/model.md)\n  - [Assess](stages/assess.md)\n"
	files["site/components/assess/assess.tmpl"] = `{{define "assess"}}<section id="assess" data-assess="{{.Data}}">{{range .Places}}{{range .Checks}}<p id="finding-{{.ID}}">{{.Question}} <a href="{{.URL}}">{{.How}}</a></p>{{end}}{{end}}</section>{{end}}`
	files["site/layouts/single.tmpl"] = strings.Replace(small["site/layouts/single.tmpl"], "<script>", `<script type="application/octet-stream" id="co-causes">{{.Causes}}</script><script>`, 1)
	return files
}

var dataAddress = regexp.MustCompile(`data-assess="(assets/causes\.[0-9a-f]{16}\.txt)"`)

func TestCauses(t *testing.T) {
	root := tree(t, withCauses())
	o := options(root)
	o.Version = "preview"
	o.Single = filepath.Join(root, "one.html")
	p := New(o)
	mustBuild(t, p)
	out := filepath.Join(root, "public")
	address := func() string {
		t.Helper()
		m := dataAddress.FindStringSubmatch(read(t, out, "stages/assess.html"))
		if m == nil {
			t.Fatalf("no address of the data in %s", read(t, out, "stages/assess.html"))
		}
		return m[1]
	}
	first := address()
	data := read(t, out, first)
	if !strings.HasPrefix(data, "cause\tdust\tDust\t0.2\trecurs\n") || !strings.Contains(data, "\nask\tgrey\tlooks\tIs it grey?\tLook\tabout/limits.html#when\n") {
		t.Errorf("data: got %q", data)
	}
	if worker := read(t, out, "worker.js"); !strings.Contains(worker, first) {
		t.Error("the worker does not keep the data for use without a connection")
	}
	if one := read(t, root, "one.html"); !strings.Contains(one, `id="co-causes">`+data+`</script>`) || !strings.Contains(one, `href="#about/limits/when"`) {
		t.Error("the single file lacks the data, or a link to a step")
	}

	// A weight that changes gives another file, and the page that names it.
	write(t, root, "content/causes/model.md", strings.Replace(withCauses()["content/causes/model.md"], "0.2 | yes", "0.25 | yes", 1))
	mustBuild(t, p)
	if address() == first || !strings.Contains(read(t, out, address()), "\t0.25\t") {
		t.Errorf("the page still names %s", first)
	}

	// A mistake is said with its line, once, and the site stays. A dead link to a step is one.
	for _, c := range []struct{ old, new, want string }{
		{"dust | heat ++", "dust | heet ++", "content/causes/model.md:18: there is no mechanism “heet” — did you mean heat?"},
		{"#when", "#whence", "content/causes/model.md:24: dead link: there is no #whence on about/limits.md — did you mean #when?"},
		{"[@book]", "[@boek]", "content/causes/model.md:14: unknown source key “boek” — did you mean book?"},
	} {
		write(t, root, "content/causes/model.md", strings.Replace(withCauses()["content/causes/model.md"], c.old, c.new, 1))
		_, problems := p.Build(context.Background())
		if len(problems) != 1 || problems[0].String() != c.want {
			t.Errorf("got %v\nwant %s", problems, c.want)
		}
	}
}

// TestNoCauseModel: a page that assesses needs a model.
func TestNoCauseModel(t *testing.T) {
	files := withCauses()
	delete(files, "content/causes/model.md")
	files["content/contents.md"] = strings.Replace(files["content/contents.md"], "  - [Model](causes/model.md)\n", "", 1)
	_, problems := New(options(tree(t, files))).Build(context.Background())
	want := "content/stages/assess.md:8: there is no cause model to assess with — its tables belong into pages below causes/"
	if len(problems) != 1 || problems[0].String() != want {
		t.Errorf("got %v\nwant %s", problems, want)
	}
}
