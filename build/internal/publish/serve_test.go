package publish

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"changeout/build/internal/report"
	"changeout/build/internal/serve"
)

// TestServedSite builds a site, serves it on loopback, edits it as an author
// would, and asks for the pages over HTTP.
func TestServedSite(t *testing.T) {
	root := tree(t, small)
	o := options(root)
	o.Version, o.Base = "preview", "/handbook/"
	p := New(o)
	mustBuild(t, p)

	var log syncBuffer
	ready, ended := make(chan string, 1), make(chan error, 1)
	ctx, cancel := context.WithCancel(context.Background())
	go func() {
		ended <- serve.Run(ctx, serve.Options{
			Out: p.OutputFolder(), Base: o.Base, Watch: p.WatchFolders(), Log: &log,
			Rebuild: func(ctx context.Context) []report.Problem {
				_, problems := p.Build(ctx)
				return problems
			},
			Ready: func(address string) { ready <- address },
		})
	}()
	var address string
	select {
	case address = <-ready:
	case err := <-ended:
		t.Fatal(err)
	}
	defer func() {
		cancel()
		if err := <-ended; err != nil {
			t.Errorf("got %v at the end, want a graceful stop", err)
		}
	}()

	page := func(name string) string {
		r, err := http.Get(address + name)
		if err != nil {
			return err.Error()
		}
		defer r.Body.Close()
		b, _ := io.ReadAll(r.Body)
		return string(b)
	}
	waitFor := func(name, want string) {
		t.Helper()
		// The limit only ends a test that has failed.
		for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
			if strings.Contains(page(name), want) {
				return
			}
		}
		t.Fatalf("%s never showed %q; the log says\n%s", name, want, log.String())
	}
	if !strings.HasSuffix(address, "/handbook/") {
		t.Errorf("got address %s, want the base path in it", address)
	}
	waitFor("", "A small handbook")
	waitFor("worker.js", `["index.html",`)

	// A page, a style, a template, and a new page.
	write(t, root, "content/about/limits.md", small["content/about/limits.md"]+"\nA later sentence.\n")
	waitFor("about/limits.html", "A later sentence.")
	before := page("index.html")
	write(t, root, "site/app.css", ".co-step { color: navy }\n")
	for end := time.Now().Add(20 * time.Second); page("index.html") == before; time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("the front page never named the new style; the log says\n%s", log.String())
		}
	}
	write(t, root, "site/layouts/page.tmpl", strings.Replace(small["site/layouts/page.tmpl"], "<h1>", "<h1>New: ", 1))
	waitFor("stages/hold.html", "<h1>New: Hold")
	write(t, root, "content/contents.md", small["content/contents.md"]+"- [Other](other/page.md)\n")
	write(t, root, "content/other/page.md", strings.Replace(small["content/about/limits.md"], "title: Limits", "title: Other", 1))
	waitFor("other/page.html", "New: Other")

	// A mistake is printed, and the last good page stays until it is mended.
	write(t, root, "content/about/limits.md", strings.Replace(small["content/about/limits.md"], "title:", "titel:", 1))
	for end := time.Now().Add(20 * time.Second); !strings.Contains(log.String(), "content/about/limits.md:2:"); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("the mistake was never printed; the log says\n%s", log.String())
		}
	}
	if got := page("about/limits.html"); !strings.Contains(got, "A later sentence.") {
		t.Errorf("got %s, want the last good page", got)
	}
	write(t, root, "content/about/limits.md", strings.Replace(small["content/about/limits.md"], "govern.", "govern, always.", 1))
	waitFor("about/limits.html", "govern, always.")
}

// syncBuffer can be read while the server writes to it.
type syncBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (s *syncBuffer) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.Write(p)
}

func (s *syncBuffer) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.String()
}
