package serve

import (
	"bytes"
	"compress/gzip"
	"strconv"
	"strings"

	"github.com/andybalholm/brotli"
)

// Compressed answers are not needed on loopback. They are sent so that a
// browser measures here what it would measure from a company's web server.

func compressible(kind string) bool {
	for _, prefix := range []string{"text/", "application/wasm", "application/json", "application/manifest+json", "application/xml", "image/svg+xml"} {
		if strings.HasPrefix(kind, prefix) {
			return true
		}
	}
	return false
}

// encoding picks br, gzip or none from an Accept-Encoding header.
func encoding(accept string) string {
	best := ""
	for part := range strings.SplitSeq(accept, ",") {
		name, params, _ := strings.Cut(strings.TrimSpace(part), ";")
		if q, ok := strings.CutPrefix(strings.TrimSpace(params), "q="); ok {
			if f, err := strconv.ParseFloat(q, 64); err != nil || !(f > 0) {
				continue
			}
		}
		switch strings.ToLower(strings.TrimSpace(name)) {
		case "br":
			return "br"
		case "gzip":
			best = "gzip"
		}
	}
	return best
}

// compressed returns the body in the encoding and keeps it for next time.
func (h *Handler) compressed(enc string, f file) []byte {
	key := enc + f.sum
	h.mu.Lock()
	b, ok := h.boxes[key]
	h.mu.Unlock()
	if ok {
		return b
	}
	var out bytes.Buffer
	if enc == "br" {
		// Level 5 is fast enough to wait for: a page takes about a millisecond.
		w := brotli.NewWriterLevel(&out, 5)
		w.Write(f.bytes)
		w.Close()
	} else {
		w := gzip.NewWriter(&out)
		w.Write(f.bytes)
		w.Close()
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	if len(h.boxes) >= 256 {
		// Old versions of edited pages; start over rather than keep count.
		clear(h.boxes)
	}
	h.boxes[key] = out.Bytes()
	return out.Bytes()
}
