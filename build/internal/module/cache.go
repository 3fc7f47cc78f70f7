package module

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// The Go command does not keep linked programs whose build id is cleared, so
// an unchanged module would be linked again at every start (one to two
// seconds). This cache keeps the finished file under a key made of everything
// that can change it.

// sourceKey is a digest of the compiler version, the flags, the environment
// and every source file the module is compiled from. Files of the Go
// distribution are covered by the version.
func sourceKey(ctx context.Context, o Options, overlay map[string][]byte) (string, error) {
	version, err := goCommand(ctx, o.Root, target, "env", "GOVERSION", "GOROOT")
	if err != nil {
		return "", err
	}
	packages, err := list(ctx, o.Root, target, o.Package)
	if err != nil {
		return "", err
	}
	h := sha256.New()
	fmt.Fprintf(h, "%s\n%s\n%q\n%q\n", slimEdition, version, target, flags)
	// go.mod decides language version and GODEBUG defaults.
	files := []string{"go.mod"}
	for _, p := range packages {
		if p.Standard {
			continue
		}
		for _, group := range [][]string{p.GoFiles, p.SFiles, p.HFiles, p.EmbedFiles, p.OtherFiles} {
			for _, name := range group {
				file := filepath.Join(p.Dir, name)
				if rel, err := filepath.Rel(o.Root, file); err == nil && !strings.HasPrefix(rel, "..") {
					file = rel
				}
				files = append(files, file)
			}
		}
		fmt.Fprintf(h, "package %s\n", p.ImportPath)
	}
	slices.Sort(files)
	for _, file := range files {
		// The name without the folder of this machine.
		fmt.Fprintf(h, "file %s\n", filepath.ToSlash(file))
		if !filepath.IsAbs(file) {
			file = filepath.Join(o.Root, file)
		}
		if err := hashFile(h, file); err != nil {
			return "", err
		}
	}
	for _, name := range slices.Sorted(maps.Keys(overlay)) {
		fmt.Fprintf(h, "%d\n", len(overlay[name]))
		h.Write(overlay[name])
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

func hashFile(w io.Writer, name string) error {
	b, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	// The length keeps two files from being read as one.
	fmt.Fprintf(w, "%d\n", len(b))
	_, err = w.Write(b)
	return err
}

// cacheDir is a folder of finished modules; "" keeps nothing.
type cacheDir string

// keep is how many modules stay in the cache: enough to switch between a few
// branches, little enough (about 3 MB each) that nobody has to clean up.
const keep = 8

func openCache(dir string) (cacheDir, error) {
	switch dir {
	case "off":
		return "", nil
	case "":
		user, err := os.UserCacheDir()
		if err != nil {
			// No home folder, as in some containers: build without a cache.
			return "", nil
		}
		dir = filepath.Join(user, "changeout", "module")
	}
	return cacheDir(dir), os.MkdirAll(dir, 0o755)
}

// get returns the module kept under key, or nil. The file starts with the
// digest of the rest, so a damaged file is built again and never shipped.
func (c cacheDir) get(key string) []byte {
	if c == "" {
		return nil
	}
	b, err := os.ReadFile(filepath.Join(string(c), key))
	if err != nil || len(b) < sha256.Size {
		return nil
	}
	sum := sha256.Sum256(b[sha256.Size:])
	if !bytes.Equal(sum[:], b[:sha256.Size]) {
		return nil
	}
	return b[sha256.Size:]
}

// put keeps a module. A failure only costs time at the next start, so it is
// not reported.
func (c cacheDir) put(key string, b []byte) {
	if c == "" {
		return
	}
	f, err := os.CreateTemp(string(c), "new-")
	if err != nil {
		return
	}
	defer os.Remove(f.Name())
	sum := sha256.Sum256(b)
	_, err1 := f.Write(sum[:])
	_, err2 := f.Write(b)
	if err3 := f.Close(); err1 != nil || err2 != nil || err3 != nil {
		return
	}
	if os.Rename(f.Name(), filepath.Join(string(c), key)) == nil {
		c.trim()
	}
}

// trim removes all but the newest modules.
func (c cacheDir) trim() {
	entries, err := os.ReadDir(string(c))
	if err != nil {
		return
	}
	var infos []os.FileInfo
	for _, e := range entries {
		if info, err := e.Info(); err == nil && info.Mode().IsRegular() && len(e.Name()) == 2*sha256.Size {
			infos = append(infos, info)
		}
	}
	slices.SortFunc(infos, func(a, b os.FileInfo) int {
		return cmp.Or(b.ModTime().Compare(a.ModTime()), cmp.Compare(a.Name(), b.Name()))
	})
	for i := keep; i < len(infos); i++ {
		os.Remove(filepath.Join(string(c), infos[i].Name()))
	}
}
