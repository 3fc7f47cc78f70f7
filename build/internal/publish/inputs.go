package publish

import (
	"context"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"
)

// stamp is what a file looks like from outside. A file whose stamp is the same
// is taken as unchanged, as make does.
type stamp struct {
	size    int64
	changed time.Time
}

// inputs are the stamps of everything a site is made from.
type inputs struct {
	content []map[string]stamp // one for each layer
	site    map[string]stamp
	code    map[string]stamp // Go files that the module and the licences depend on
}

// look takes the stamps. It reads folders only, no file.
func (o Options) look() inputs {
	var in inputs
	for _, layer := range o.layers() {
		in.content = append(in.content, stamps(layer.FS, "."))
	}
	root := os.DirFS(o.Root)
	in.site = stamps(root, "site")
	in.code = map[string]stamp{}
	for _, name := range []string{"calc", "wasm", "go.mod", "go.sum"} {
		maps.Copy(in.code, stamps(root, name))
	}
	return in
}

// stamps walks one folder, or looks at one file. What cannot be read is left
// out: reading it later says why. The files are looked at side by side, which
// in a handbook of thousands of pages takes 10 ms off each edit.
func stamps(fsys fs.FS, root string) map[string]stamp {
	var names []string
	fs.WalkDir(fsys, root, func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
		case d.IsDir() && name != root && unused(d.Name()):
			return fs.SkipDir
		case !d.IsDir() && !unused(d.Name()):
			names = append(names, name)
		}
		return nil
	})
	found := make([]stamp, len(names))
	numbers := make([]int, len(names))
	for i := range numbers {
		numbers[i] = i
	}
	parallel(context.Background(), numbers, func(i int) {
		if info, err := fs.Stat(fsys, names[i]); err == nil {
			found[i] = stamp{info.Size(), info.ModTime()}
		}
	})
	all := make(map[string]stamp, len(names))
	for i, name := range names {
		if found[i] != (stamp{}) {
			all[name] = found[i]
		}
	}
	return all
}

// unused is true for names that never reach the site: hidden files, notes that
// start with an underscore, tests and the tools' folders.
func unused(base string) bool {
	return strings.HasPrefix(base, ".") || strings.HasPrefix(base, "_") || strings.HasSuffix(base, "~") ||
		base == "node_modules" || base == "browsertest" ||
		strings.HasSuffix(base, ".test.ts") || strings.HasSuffix(base, "_test.go")
}

// sameSite and sameCode tell whether a part changed since before.
func (in inputs) sameSite(before inputs) bool { return maps.Equal(in.site, before.site) }
func (in inputs) sameCode(before inputs) bool { return maps.Equal(in.code, before.code) }

// edited compares the content with before. If the only difference is that some
// pages were edited, it returns their paths in the content tree. Otherwise the
// content has to be read as a whole.
func (in inputs) edited(before inputs) (pages []string, ok bool) {
	if len(in.content) != len(before.content) {
		return nil, false
	}
	for i, layer := range in.content {
		if len(layer) != len(before.content[i]) {
			return nil, false
		}
		for name, s := range layer {
			old, known := before.content[i][name]
			switch {
			case !known:
				return nil, false
			case old == s:
			case path.Ext(name) != ".md":
				return nil, false
			default:
				pages = append(pages, name)
			}
		}
	}
	return pages, true
}

// WatchFolders lists the folders whose files make the site, for the preview
// server.
func (p *Publisher) WatchFolders() []string {
	o := p.o
	dirs := []string{o.Content}
	for _, name := range []string{"site", "calc", "wasm", "build"} {
		dirs = append(dirs, filepath.Join(o.Root, name))
	}
	if o.Company != "" {
		dirs = append(dirs, o.Company)
	}
	return dirs
}

// OutputFolder is where the site is.
func (p *Publisher) OutputFolder() string { return p.o.Out }
