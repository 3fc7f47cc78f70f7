package serve

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"changeout/build/internal/report"
)

// logBuffer can be read while the server writes to it.
type logBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *logBuffer) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *logBuffer) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

// eventually waits for something a watcher brings about. The limit only ends a
// test that has failed; a good run takes some milliseconds.
func eventually(t *testing.T, what string, ok func() bool) {
	t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if ok() {
			return
		}
	}
	t.Fatalf("waited in vain: %s", what)
}

func get(t *testing.T, url string) string {
	t.Helper()
	r, err := http.Get(url)
	if err != nil {
		return err.Error()
	}
	defer r.Body.Close()
	b, _ := io.ReadAll(r.Body)
	return string(b)
}

// start runs a server over a folder whose "build" copies content/page.md to
// out/index.html, and refuses the text "broken".
func start(t *testing.T, o Options) (address string, content string, log *logBuffer) {
	t.Helper()
	content, out := t.TempDir(), t.TempDir()
	log = &logBuffer{}
	o.Out, o.Log = out, log
	o.Watch = append(o.Watch, content, filepath.Join(content, "not-there"))
	o.Rebuild = func(context.Context) []report.Problem {
		b, err := os.ReadFile(filepath.Join(content, "page.md"))
		if err != nil || string(b) == "broken" {
			return []report.Problem{{File: "content/page.md", Line: 1, Text: "broken page"}}
		}
		write(t, filepath.Join(out, "index.html"), string(b))
		return nil
	}
	write(t, filepath.Join(content, "page.md"), "first")
	o.Rebuild(context.Background())

	ready := make(chan string, 1)
	o.Ready = func(a string) { ready <- a }
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- Run(ctx, o) }()
	select {
	case address = <-ready:
	case err := <-ended:
		t.Fatalf("the server did not start: %v", err)
	}
	t.Cleanup(func() {
		cancel()
		if err := <-ended; err != nil {
			t.Errorf("got error %v at the end, want none", err)
		}
		if c, err := net.DialTimeout("tcp", strings.TrimSuffix(strings.TrimPrefix(address, "http://"), "/"), time.Second); err == nil {
			c.Close()
			t.Errorf("the port is still open after the end")
		}
	})
	return address, content, log
}

func TestRun(t *testing.T) {
	address, content, log := start(t, Options{})
	if !strings.HasPrefix(address, "http://127.0.0.1:") || !strings.Contains(log.String(), address) {
		t.Errorf("got address %s and log %q, want a loopback address that was printed", address, log)
	}
	if got := get(t, address); got != "first" {
		t.Errorf("got %q, want the first page", got)
	}
	page := filepath.Join(content, "page.md")

	write(t, page, "second")
	eventually(t, "the changed page", func() bool { return get(t, address) == "second" })

	// As many editors save: another file, then a rename over the page.
	write(t, filepath.Join(content, ".page.md.swp"), "noise")
	write(t, filepath.Join(content, "page.new"), "third")
	if err := os.Rename(filepath.Join(content, "page.new"), page); err != nil {
		t.Fatal(err)
	}
	eventually(t, "the page saved by rename", func() bool { return get(t, address) == "third" })

	write(t, page, "broken")
	eventually(t, "the problem", func() bool { return strings.Contains(log.String(), "content/page.md:1: broken page") })
	if got := get(t, address); got != "third" {
		t.Errorf("got %q beside a problem, want the old site", got)
	}
	write(t, page, "fourth")
	eventually(t, "the mended page", func() bool { return get(t, address) == "fourth" })

	// A folder that appears later is watched too.
	write(t, filepath.Join(content, "new", "deep", "x.md"), "x")
	eventually(t, "the new folder", func() bool { return strings.Contains(log.String(), "new") })
	before := strings.Count(log.String(), "rebuilt")
	write(t, filepath.Join(content, "new", "deep", "x.md"), "changed")
	eventually(t, "a change in the new folder", func() bool { return strings.Count(log.String(), "rebuilt") > before })
}

func TestGoFileRestarts(t *testing.T) {
	calls := make(chan int, 10)
	var mu sync.Mutex
	answer := func() ([]report.Problem, error) {
		return []report.Problem{{File: "calc/x.go", Line: 3, Text: "undefined: y"}}, nil
	}
	address, content, log := start(t, Options{Restart: func(_ context.Context, port int) ([]report.Problem, error) {
		if port < DefaultPort {
			t.Errorf("got port %d, want the one in use", port)
		}
		calls <- 1
		mu.Lock()
		defer mu.Unlock()
		return answer()
	}})
	write(t, filepath.Join(content, "x.go"), "package calc")
	<-calls
	eventually(t, "the compile error", func() bool { return strings.Contains(log.String(), "calc/x.go:3: undefined: y") })
	if got := get(t, address); got != "first" {
		t.Errorf("got %q beside a compile error, want the old site", got)
	}
	mu.Lock()
	answer = func() ([]report.Problem, error) { return nil, ErrCannotRestart }
	mu.Unlock()
	write(t, filepath.Join(content, "x.go"), "package calc // mended")
	<-calls
	eventually(t, "the hint to start again", func() bool {
		return strings.Contains(log.String(), "start it again") && strings.Contains(log.String(), "rebuilt")
	})
	// One write can be two events on a busy machine: let the last write's settle.
	for settled := false; !settled; {
		select {
		case <-calls:
		case <-time.After(300 * time.Millisecond):
			settled = true
		}
	}
	// A test file is not part of the program.
	before := strings.Count(log.String(), "rebuilt")
	write(t, filepath.Join(content, "x_test.go"), "package calc")
	eventually(t, "a plain rebuild", func() bool { return strings.Count(log.String(), "rebuilt") > before })
	if len(calls) != 0 {
		t.Errorf("the program was compiled again for a test file")
	}
}

func TestPorts(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	port := taken.Addr().(*net.TCPAddr).Port
	_, err = listen(port)
	if err == nil || !strings.Contains(err.Error(), fmt.Sprint(port)) || !strings.Contains(err.Error(), "-port") {
		t.Errorf("got %v for a taken port, want a sentence that names it and -port", err)
	}

	first, err := listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	second, err := listen(0)
	if err != nil {
		t.Fatalf("got %v, want the next free port", err)
	}
	defer second.Close()
	if a, b := first.Addr().(*net.TCPAddr), second.Addr().(*net.TCPAddr); b.Port <= a.Port || a.Port < DefaultPort || !a.IP.IsLoopback() || !b.IP.IsLoopback() {
		t.Errorf("got %v and %v, want two loopback ports from %d on", a, b, DefaultPort)
	}
}

func TestNoSite(t *testing.T) {
	err := Run(context.Background(), Options{Out: filepath.Join(t.TempDir(), "none"), Log: io.Discard})
	if err == nil || !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v, want an error that says the folder is not there", err)
	}
}

func TestCleanBase(t *testing.T) {
	for give, want := range map[string]string{"": "/", "/": "/", "handbook": "/handbook/", "/a/b": "/a/b/", "/a/b/": "/a/b/"} {
		if got := cleanBase(give); got != want {
			t.Errorf("cleanBase(%q) = %q, want %q", give, got, want)
		}
	}
}
