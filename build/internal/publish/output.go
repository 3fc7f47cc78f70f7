package publish

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// RecordFile lists the files of the site with their digests, in the form that
// `sha256sum -c` reads: a company can verify its copy. A later build removes
// only files that stand in it, so nothing else in the folder is ever touched.
const RecordFile = "files.sha256"

const stagingPrefix = ".changeout-"

// sink takes the files of a site. put may be called by several goroutines.
type sink interface {
	put(name string, b []byte) (stored, error)
	keep(name string, s stored)
	list() map[string]stored // all files so far
}

// stored is what is known about a file in the output.
type stored struct {
	sum  [sha256.Size]byte
	size int64
}

// memory is a sink that keeps everything.
type memory struct {
	mu    sync.Mutex
	files map[string][]byte
	sums  map[string]stored
}

func newMemory() *memory { return &memory{files: map[string][]byte{}, sums: map[string]stored{}} }

func (m *memory) put(name string, b []byte) (stored, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, twice := m.files[name]; twice {
		return stored{}, twiceError(name)
	}
	m.files[name] = bytes.Clone(b)
	m.sums[name] = stored{sha256.Sum256(b), int64(len(b))}
	return m.sums[name], nil
}

func (m *memory) list() map[string]stored { return m.sums }

func (m *memory) keep(string, stored) { panic("a site in memory is always made whole") }

type twiceError string

func (e twiceError) Error() string { return "two things would be written to " + string(e) }

// output is a sink that writes changed files into a hidden folder and moves
// them to their places on commit.
type output struct {
	dir     string
	staging string
	// known is what the folder holds as far as we know. Until trusted, that is
	// only what the record says, and bytes are compared before a file is left.
	known   map[string]stored
	trusted bool

	mu     sync.Mutex
	next   map[string]stored
	staged map[string]string // name: file in staging
}

// openOutput starts a build into dir. written is what this process wrote there
// before, or nil for the first build; then the record of the folder is read.
func openOutput(dir string, written map[string]stored) (*output, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	removeLeftovers(dir)
	staging, err := os.MkdirTemp(dir, stagingPrefix)
	if err != nil {
		return nil, err
	}
	o := &output{dir: dir, staging: staging, known: written, trusted: written != nil, next: map[string]stored{}, staged: map[string]string{}}
	if !o.trusted {
		o.known = readRecord(dir)
	}
	return o, nil
}

// removeLeftovers clears hidden folders of builds that were killed. An hour
// leaves a build of another process alone.
func removeLeftovers(dir string) {
	old, _ := filepath.Glob(filepath.Join(dir, stagingPrefix+"*"))
	for _, name := range old {
		if info, err := os.Stat(name); err == nil && info.IsDir() && time.Since(info.ModTime()) > time.Hour {
			os.RemoveAll(name)
		}
	}
}

func (o *output) put(name string, b []byte) (stored, error) {
	s := stored{sha256.Sum256(b), int64(len(b))}
	same := o.unchanged(name, s, b)
	o.mu.Lock()
	if _, twice := o.next[name]; twice {
		o.mu.Unlock()
		return s, twiceError(name)
	}
	o.next[name] = s
	if same {
		o.mu.Unlock()
		return s, nil
	}
	file := filepath.Join(o.staging, strconv.Itoa(len(o.next)))
	o.staged[name] = file
	o.mu.Unlock()
	return s, os.WriteFile(file, b, 0o644)
}

func (o *output) unchanged(name string, s stored, b []byte) bool {
	if o.known[name] != s {
		return false
	}
	if o.trusted {
		return true
	}
	on, err := os.ReadFile(o.path(name))
	return err == nil && bytes.Equal(on, b)
}

func (o *output) keep(name string, s stored) {
	o.mu.Lock()
	o.next[name] = s
	o.mu.Unlock()
}

func (o *output) list() map[string]stored { return o.next }

func (o *output) path(name string) string { return filepath.Join(o.dir, filepath.FromSlash(name)) }

// commit moves the staged files to their places, removes what is no longer
// made and writes the record. The worker comes after all files that it lists:
// a phone that asks in between gets the old worker, whose list no longer fits,
// and installs nothing.
func (o *output) commit() (written, removed int, err error) {
	names := slices.Sorted(maps.Keys(o.staged))
	if i := slices.Index(names, workerFile); i >= 0 {
		names = append(slices.Delete(names, i, i+1), workerFile)
	}
	made := map[string]bool{".": true}
	for _, name := range names {
		if dir := path.Dir(name); !made[dir] {
			if err := os.MkdirAll(o.path(dir), 0o755); err != nil {
				return written, removed, err
			}
			made[dir] = true
		}
		if err := os.Rename(o.staged[name], o.path(name)); err != nil {
			return written, removed, err
		}
		written++
	}
	if removed, err = o.removeStale(); err != nil {
		return written, removed, err
	}
	if written > 0 || removed > 0 || len(o.known) == 0 {
		err = o.writeRecord()
	}
	return written, removed, err
}

// removeStale removes files of the record that are no longer made. os.Root
// keeps it inside the folder even if a link in it leads elsewhere.
func (o *output) removeStale() (removed int, err error) {
	root, err := os.OpenRoot(o.dir)
	if err != nil {
		return 0, err
	}
	defer root.Close()
	for _, name := range slices.Sorted(maps.Keys(o.known)) {
		if _, stays := o.next[name]; stays {
			continue
		}
		if err := root.Remove(name); err == nil {
			removed++
		} else if !errors.Is(err, fs.ErrNotExist) {
			return removed, err
		}
		// Folders that became empty go too; Remove leaves full ones alone.
		for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
			if root.Remove(dir) != nil {
				break
			}
		}
	}
	return removed, nil
}

func (o *output) writeRecord() error {
	b := make([]byte, 0, 100*len(o.next))
	for _, name := range slices.Sorted(maps.Keys(o.next)) {
		sum := o.next[name].sum
		b = hex.AppendEncode(b, sum[:])
		b = append(b, "  "...)
		b = append(b, name...)
		b = append(b, '\n')
	}
	file := filepath.Join(o.staging, "record")
	if err := os.WriteFile(file, b, 0o644); err != nil {
		return err
	}
	return os.Rename(file, o.path(RecordFile))
}

// readRecord reads the record of an earlier build. Names that do not stay
// inside the folder are left out, whoever wrote them.
func readRecord(dir string) map[string]stored {
	known := map[string]stored{}
	f, err := os.Open(filepath.Join(dir, RecordFile))
	if err != nil {
		return known
	}
	defer f.Close()
	for lines := bufio.NewScanner(f); lines.Scan(); {
		digits, name, ok := strings.Cut(lines.Text(), "  ")
		sum, err := hex.DecodeString(digits)
		if !ok || err != nil || len(sum) != sha256.Size || !filepath.IsLocal(filepath.FromSlash(name)) || !fs.ValidPath(name) || name == "." {
			continue
		}
		s := stored{size: -1}
		copy(s.sum[:], sum)
		if info, err := os.Lstat(filepath.Join(dir, filepath.FromSlash(name))); err == nil && info.Mode().IsRegular() {
			s.size = info.Size()
		}
		known[name] = s
	}
	return known
}

// discard removes the hidden folder with whatever was not moved.
func (o *output) discard() { os.RemoveAll(o.staging) }
