package serve

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"os"
	"path"
	"regexp"
	"strings"
	"sync"
	"time"
)

// types are the media types of everything the site holds. The table is our
// own because the system's table differs between machines, and a module with
// a wrong type is not compiled while it streams.
var types = map[string]string{
	".css":         "text/css; charset=utf-8",
	".csv":         "text/csv; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".ico":         "image/x-icon",
	".jpg":         "image/jpeg",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".pdf":         "application/pdf",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".txt":         "text/plain; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".webp":        "image/webp",
	".woff2":       "font/woff2",
	".xml":         "application/xml",
}

// hashed is a file name that carries the digest of its content, as publish
// writes it: such a file never changes.
var hashed = regexp.MustCompile(`\.[0-9a-f]{16}\.[a-z0-9]+$`)

// Handler answers requests from the folder of the built site.
type Handler struct {
	root *os.Root // keeps every name inside the folder, links included
	base string

	mu    sync.Mutex
	sums  map[string]sum
	boxes map[string][]byte // compressed bodies by digest and encoding
}

// sum remembers the digest of a file as long as the file looks the same.
type sum struct {
	size    int64
	changed time.Time
	hex     string
}

// NewHandler serves dir under base, which starts and ends with a slash.
func NewHandler(dir, base string) (*Handler, error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fmt.Errorf("the built site cannot be opened: %w", err)
	}
	return &Handler{root: root, base: base, sums: map[string]sum{}, boxes: map[string][]byte{}}, nil
}

// Close releases the folder.
func (h *Handler) Close() error { return h.root.Close() }

func (h *Handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "only GET and HEAD are answered here", http.StatusMethodNotAllowed)
		return
	}
	if h.base != "/" && (r.URL.Path == "/" || r.URL.Path+"/" == h.base) {
		http.Redirect(w, r, h.base, http.StatusFound)
		return
	}
	name, inside := strings.CutPrefix(r.URL.Path, h.base)
	if !inside {
		h.notFound(w, r)
		return
	}
	if name == "" || strings.HasSuffix(name, "/") {
		name += "index.html"
	}
	body, err := h.read(name)
	switch {
	case errors.Is(err, errFolder):
		http.Redirect(w, r, r.URL.Path+"/", http.StatusFound)
	case err != nil:
		h.notFound(w, r)
	default:
		h.send(w, r, name, body, http.StatusOK)
	}
}

var errFolder = errors.New("is a folder")

// file is one file as read for an answer.
type file struct {
	bytes []byte
	sum   string
}

func (h *Handler) read(name string) (file, error) {
	if !fs.ValidPath(name) || hidden(name) {
		return file{}, fs.ErrNotExist
	}
	f, err := h.root.Open(name)
	if err != nil {
		return file{}, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return file{}, err
	}
	if info.IsDir() {
		if _, err := h.root.Stat(name + "/index.html"); err == nil {
			return file{}, errFolder
		}
		return file{}, fs.ErrNotExist
	}
	b, err := io.ReadAll(f)
	if err != nil {
		return file{}, err
	}
	return file{bytes: b, sum: h.digest(name, info, b)}, nil
}

// hidden is true for names with a part that starts with a dot: files that the
// build is still writing.
func hidden(name string) bool {
	return strings.HasPrefix(name, ".") || strings.Contains(name, "/.")
}

func (h *Handler) digest(name string, info fs.FileInfo, b []byte) string {
	h.mu.Lock()
	defer h.mu.Unlock()
	if s, ok := h.sums[name]; ok && s.size == info.Size() && s.changed.Equal(info.ModTime()) && int64(len(b)) == s.size {
		return s.hex
	}
	d := sha256.Sum256(b)
	s := sum{size: int64(len(b)), changed: info.ModTime(), hex: hex.EncodeToString(d[:12])}
	h.sums[name] = s
	return s.hex
}

// send writes one file with its headers. Hashed names may be kept for ever;
// everything else is asked for again each time and answered with "not
// modified" if the digest is the same.
func (h *Handler) send(w http.ResponseWriter, r *http.Request, name string, f file, status int) {
	head := w.Header()
	kind := types[strings.ToLower(path.Ext(name))]
	if kind == "" {
		kind = "application/octet-stream"
	}
	head.Set("Content-Type", kind)
	head.Set("X-Content-Type-Options", "nosniff")
	head.Set("Referrer-Policy", "no-referrer")
	if hashed.MatchString(name) {
		head.Set("Cache-Control", "public, max-age=31536000, immutable")
	} else {
		head.Set("Cache-Control", "no-cache")
	}
	body, tag := f.bytes, f.sum
	if compressible(kind) && len(body) >= 1024 {
		head.Set("Vary", "Accept-Encoding")
		// A range counts bytes of what is sent, so it is answered uncompressed.
		if enc := encoding(r.Header.Get("Accept-Encoding")); enc != "" && r.Header.Get("Range") == "" {
			body, tag = h.compressed(enc, f), f.sum+"-"+enc
			head.Set("Content-Encoding", enc)
		}
	}
	if status != http.StatusOK {
		head.Set("Content-Length", fmt.Sprint(len(body)))
		w.WriteHeader(status)
		if r.Method != http.MethodHead {
			w.Write(body)
		}
		return
	}
	head.Set("ETag", `"`+tag+`"`)
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(body))
}

// notFound sends the site's own page if there is one.
func (h *Handler) notFound(w http.ResponseWriter, r *http.Request) {
	if page, err := h.read("404.html"); err == nil && !strings.Contains(path.Base(r.URL.Path), ".") || err == nil && strings.HasSuffix(r.URL.Path, ".html") {
		h.send(w, r, "404.html", page, http.StatusNotFound)
		return
	}
	http.Error(w, "there is no such file in the site", http.StatusNotFound)
}
