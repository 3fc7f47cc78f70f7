package serve

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
)

func site(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		write(t, filepath.Join(dir, filepath.FromSlash(name)), text)
	}
	return dir
}

func write(t *testing.T, file, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

var long = strings.Repeat("A line of a page that is long enough to be compressed.\n", 100)

func request(t *testing.T, h http.Handler, method, url string, head map[string]string) *http.Response {
	t.Helper()
	r := httptest.NewRequest(method, url, nil)
	for k, v := range head {
		r.Header.Set(k, v)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func TestAnswers(t *testing.T) {
	dir := site(t, map[string]string{
		"index.html":                          "<p>front",
		"stages/hold.html":                    long,
		"stages/index.html":                   "<p>stages",
		"about/x.txt":                         "x",
		"404.html":                            "<p>gone",
		"assets/app.0123456789abcdef.js":      "1",
		"assets/app.0123456789abcdef.css":     "p{}",
		"assets/module.0123456789abcdef.wasm": "\x00asm",
		"worker.js":                           "2",
		"manifest.webmanifest":                "{}",
		"icon.svg":                            "<svg/>",
		".changeout-1/secret.html":            "unfinished",
	})
	outside := filepath.Join(t.TempDir(), "outside.txt")
	write(t, outside, "outside")
	if err := os.Symlink(outside, filepath.Join(dir, "link.txt")); err != nil {
		t.Log("no symbolic links here:", err)
	}
	h, err := NewHandler(dir, "/handbook/")
	if err != nil {
		t.Fatal(err)
	}
	defer h.Close()
	const forever, always = "public, max-age=31536000, immutable", "no-cache"
	for _, c := range []struct {
		method, url string
		status      int
		kind, cache string
		body        string
	}{
		{"GET", "/handbook/", 200, "text/html; charset=utf-8", always, "<p>front"},
		{"HEAD", "/handbook/", 200, "text/html; charset=utf-8", always, ""},
		{"GET", "/handbook/stages/", 200, "text/html; charset=utf-8", always, "<p>stages"},
		{"GET", "/handbook/stages/hold.html", 200, "text/html; charset=utf-8", always, long},
		{"GET", "/handbook/assets/app.0123456789abcdef.js", 200, "text/javascript; charset=utf-8", forever, "1"},
		{"GET", "/handbook/assets/app.0123456789abcdef.css", 200, "text/css; charset=utf-8", forever, "p{}"},
		{"GET", "/handbook/assets/module.0123456789abcdef.wasm", 200, "application/wasm", forever, "\x00asm"},
		{"GET", "/handbook/worker.js", 200, "text/javascript; charset=utf-8", always, "2"},
		{"GET", "/handbook/manifest.webmanifest", 200, "application/manifest+json", always, "{}"},
		{"GET", "/handbook/icon.svg", 200, "image/svg+xml", always, "<svg/>"},
		{"GET", "/handbook/stages", 302, "", "", ""},
		{"GET", "/handbook", 302, "", "", ""},
		{"GET", "/", 302, "", "", ""},
		{"GET", "/handbook/none.html", 404, "text/html; charset=utf-8", always, "<p>gone"},
		{"GET", "/handbook/about/", 404, "", "", ""},
		{"GET", "/handbook/none.js", 404, "text/plain; charset=utf-8", "", ""},
		{"GET", "/elsewhere.js", 404, "text/plain; charset=utf-8", "", ""},
		{"GET", "/handbook/.changeout-1/secret.html", 404, "", "", ""},
		{"GET", "/handbook/../../outside.txt", 404, "", "", ""},
		{"GET", "/handbook/link.txt", 404, "", "", ""},
		{"POST", "/handbook/", 405, "", "", ""},
	} {
		r := request(t, h, c.method, c.url, nil)
		body, _ := io.ReadAll(r.Body)
		if r.StatusCode != c.status {
			t.Errorf("%s %s: got status %d, want %d", c.method, c.url, r.StatusCode, c.status)
		}
		if got := r.Header.Get("Content-Type"); c.kind != "" && got != c.kind {
			t.Errorf("%s %s: got type %q, want %q", c.method, c.url, got, c.kind)
		}
		if got := r.Header.Get("Cache-Control"); c.cache != "" && got != c.cache {
			t.Errorf("%s %s: got cache rule %q, want %q", c.method, c.url, got, c.cache)
		}
		if (c.body != "" || c.method == "HEAD") && string(body) != c.body {
			t.Errorf("%s %s: got %q, want %q", c.method, c.url, body, c.body)
		}
		if strings.Contains(string(body), "outside") || strings.Contains(string(body), "unfinished") {
			t.Errorf("%s %s: a file outside the site was sent", c.method, c.url)
		}
	}
}

func TestCompression(t *testing.T) {
	h, err := NewHandler(site(t, map[string]string{"index.html": long, "small.html": "small", "p.png": long}), "/")
	if err != nil {
		t.Fatal(err)
	}
	defer h.Close()
	for _, c := range []struct{ url, accept, want string }{
		{"/", "gzip, deflate, br, zstd", "br"},
		{"/", "gzip, br;q=0", "gzip"},
		{"/", "gzip;q=0.5", "gzip"},
		{"/", "identity", ""},
		{"/", "", ""},
		{"/small.html", "br", ""},
		{"/p.png", "br", ""},
	} {
		r := request(t, h, "GET", c.url, map[string]string{"Accept-Encoding": c.accept})
		if got := r.Header.Get("Content-Encoding"); got != c.want {
			t.Errorf("%s with %q: got encoding %q, want %q", c.url, c.accept, got, c.want)
		}
		body, _ := io.ReadAll(r.Body)
		switch c.want {
		case "br":
			body, err = io.ReadAll(brotli.NewReader(bytes.NewReader(body)))
		case "gzip":
			var z *gzip.Reader
			if z, err = gzip.NewReader(bytes.NewReader(body)); err == nil {
				body, err = io.ReadAll(z)
			}
		}
		if err != nil {
			t.Errorf("%s with %q: %v", c.url, c.accept, err)
		}
		if c.url == "/" && string(body) != long {
			t.Errorf("%s with %q: got %d bytes after unpacking, want %d", c.url, c.accept, len(body), len(long))
		}
	}
}

func TestNotModified(t *testing.T) {
	dir := site(t, map[string]string{"index.html": long})
	h, err := NewHandler(dir, "/")
	if err != nil {
		t.Fatal(err)
	}
	defer h.Close()
	first := request(t, h, "GET", "/", map[string]string{"Accept-Encoding": "br"})
	tag := first.Header.Get("ETag")
	if r := request(t, h, "GET", "/", map[string]string{"Accept-Encoding": "br", "If-None-Match": tag}); r.StatusCode != http.StatusNotModified {
		t.Errorf("got status %d with the same tag, want 304", r.StatusCode)
	}
	if plain := request(t, h, "GET", "/", nil).Header.Get("ETag"); plain == tag {
		t.Errorf("got tag %s for both encodings, want two", tag)
	}
	write(t, filepath.Join(dir, "index.html"), long+"one more")
	if r := request(t, h, "GET", "/", map[string]string{"Accept-Encoding": "br", "If-None-Match": tag}); r.StatusCode != http.StatusOK {
		t.Errorf("got status %d after a change, want 200", r.StatusCode)
	}
}
