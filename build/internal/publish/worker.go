package publish

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"maps"
	"slices"
	"strings"
)

// precache is the list a phone must hold to work without a signal: every file
// of the site but the worker itself. Its digest names the cache, so "something
// changed" and "another cache" are one fact.
//
// Both are written as two constants before the bundled worker. That costs no
// bundling when a page was edited, and the worker source sees the same names
// that a bundler's define would give it.
func precache(files map[string]stored, worker []byte) (script []byte, digest string) {
	names := slices.Sorted(maps.Keys(files))
	names = slices.DeleteFunc(names, func(name string) bool {
		return name == workerFile || name == RecordFile || name == notFoundFile ||
			strings.HasSuffix(name, ".br") || strings.HasSuffix(name, ".gz")
	})
	var list bytes.Buffer
	list.Grow(len(names) * 110)
	list.WriteByte('[')
	var digits [2 * sha256.Size]byte
	for i, name := range names {
		if i > 0 {
			list.WriteByte(',')
		}
		sum := files[name].sum
		hex.Encode(digits[:], sum[:])
		quoted, _ := json.Marshal(name) // a string always can be written
		list.WriteString("\n[")
		list.Write(quoted)
		list.WriteString(`,"`)
		list.Write(digits[:])
		list.WriteString(`"]`)
	}
	list.WriteString("\n]")
	sum := sha256.Sum256(list.Bytes())
	digest = hex.EncodeToString(sum[:])

	var out bytes.Buffer
	out.Grow(list.Len() + len(worker) + 200)
	out.WriteString(`const __VERSION__="` + digest + "\",__PRECACHE__=")
	out.Write(list.Bytes())
	out.WriteString(";\n")
	out.Write(worker)
	return out.Bytes(), digest
}
