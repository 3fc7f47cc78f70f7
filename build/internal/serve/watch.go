package serve

import (
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

const (
	// quiet is how long nothing may change before a build starts: editors
	// write a file in several steps.
	quiet = 25 * time.Millisecond
	// patience bounds the wait when files keep changing, as in a checkout.
	patience = 500 * time.Millisecond
)

// watcher collects changes below some folders into batches.
type watcher struct {
	inner   *fsnotify.Watcher
	out     string
	changes chan []string
	errors  chan error
	done    chan struct{}
}

// watch starts to watch the folders, and folders that appear in them later.
// Folders that do not exist are left out; out is never watched.
func watch(dirs []string, out string) (*watcher, error) {
	inner, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	out, err = filepath.Abs(out)
	if err != nil {
		return nil, err
	}
	w := &watcher{inner: inner, out: out, changes: make(chan []string), errors: make(chan error), done: make(chan struct{})}
	for _, dir := range dirs {
		if !exists(dir) {
			continue
		}
		if err := w.add(dir); err != nil {
			inner.Close()
			return nil, err
		}
	}
	go w.loop()
	return w, nil
}

func (w *watcher) Changes() <-chan []string { return w.changes }
func (w *watcher) Errors() <-chan error     { return w.errors }

// Close stops the watcher.
func (w *watcher) Close() error {
	err := w.inner.Close()
	<-w.done
	return err
}

// add watches a folder and the folders in it.
func (w *watcher) add(dir string) error {
	return filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			// Removed while we looked: its parent reports that.
			return nil
		}
		if !d.IsDir() {
			return nil
		}
		if name != dir && noise(name) || w.isOut(name) {
			return filepath.SkipDir
		}
		return w.inner.Add(name)
	})
}

func (w *watcher) isOut(name string) bool {
	abs, err := filepath.Abs(name)
	return err == nil && (abs == w.out || strings.HasPrefix(abs, w.out+string(filepath.Separator)))
}

// noise is true for files that editors and tools make for themselves.
func noise(name string) bool {
	base := filepath.Base(name)
	return strings.HasPrefix(base, ".") || strings.HasPrefix(base, "#") || strings.HasSuffix(base, "~") ||
		strings.HasSuffix(base, ".tmp") || strings.HasSuffix(base, ".swp") || base == "node_modules" || base == "4913"
}

// loop gathers names until it has been quiet for a moment, then sends them.
// While the receiver is still busy with a build, it goes on gathering.
func (w *watcher) loop() {
	defer close(w.done)
	names := map[string]bool{}
	var first time.Time
	timer := time.NewTimer(time.Hour)
	timer.Stop()
	var ready []string
	var send chan []string
	for {
		select {
		case event, ok := <-w.inner.Events:
			if !ok {
				return
			}
			if event.Op == fsnotify.Chmod || noise(event.Name) || w.isOut(event.Name) {
				continue
			}
			if event.Has(fsnotify.Create) && exists(event.Name) {
				// Files may already be in it, so the folder itself counts as a change.
				if err := w.add(event.Name); err != nil {
					w.report(err)
				}
			}
			if len(names) == 0 {
				first = time.Now()
			}
			names[event.Name] = true
			timer.Reset(max(0, min(quiet, patience-time.Since(first))))
		case <-timer.C:
			ready = slices.Sorted(maps.Keys(names))
			if len(ready) > 0 {
				send = w.changes
			}
		case send <- ready:
			clear(names)
			send = nil
		case err, ok := <-w.inner.Errors:
			if !ok {
				return
			}
			w.report(err)
		}
	}
}

func (w *watcher) report(err error) {
	select {
	case w.errors <- err:
	default: // the server is busy; the next change builds everything anyway
	}
}
