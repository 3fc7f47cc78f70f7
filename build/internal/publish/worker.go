package publish

import (
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
	list := make([]byte, 0, 120*len(names))
	list = append(list, '[')
	for i, name := range names {
		if i > 0 {
			list = append(list, ',')
		}
		sum := files[name].sum
		quoted, _ := json.Marshal(name) // a string always can be written
		list = append(list, "\n["...)
		list = append(list, quoted...)
		list = append(list, `,"`...)
		list = hex.AppendEncode(list, sum[:])
		list = append(list, `"]`...)
	}
	list = append(list, "\n]"...)
	sum := sha256.Sum256(list)
	digest = hex.EncodeToString(sum[:])
	return slices.Concat([]byte(`const __VERSION__="`+digest+`",__PRECACHE__=`), list, []byte(";\n"), worker), digest
}
