package publish

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// precache is the list a phone must hold to work without a signal: every file
// of the site but the worker itself. Its digest names the cache, so "something
// changed" and "another cache" are one fact.
//
// Each entry is a name, the SHA-256 of the bytes, and their number: the worker
// lets a file in only if both are right, and it can say how much is done.
//
// The list, its digest, and the version and date that people see are written
// as constants before the bundled worker. That costs no bundling when a page
// was edited, and the worker source sees the same names that a bundler's define
// would give it.
//
// Braces stand around everything, and nothing before the first one: a script
// that was cut anywhere is no script, so no browser installs half a worker.
func precache(files map[string]stored, worker []byte, version, date string) (script []byte, digest string) {
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
		list = append(list, `",`...)
		list = strconv.AppendInt(list, files[name].size, 10)
		list = append(list, ']')
	}
	list = append(list, "\n]"...)
	sum := sha256.Sum256(list)
	digest = hex.EncodeToString(sum[:])
	edition, _ := json.Marshal([]string{version, date})
	return slices.Concat([]byte(`{const __VERSION__="`+digest+`",__EDITION__=`), edition, []byte(",__PRECACHE__="), list, []byte(";\n"), bytes.TrimSpace(worker), []byte("\n}\n")), digest
}
