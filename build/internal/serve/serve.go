// Package serve shows the site on this machine while somebody writes. It
// listens on the loopback address only, watches the folders the site is made
// from, and calls the build again when a file changes. A build with problems
// prints them and leaves the last good site in place.
//
// Pages, tables and worked examples are computed by this very process. When a
// Go file changes, a page built by the old process would show old numbers
// beside a new module. So the program is compiled again and takes the place
// of the running one, on the same port (see restart.go).
package serve

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"time"

	"changeout/build/internal/report"
)

// DefaultPort is tried first when no port is asked for.
const DefaultPort = 8420

// Options says what to serve and what to do on a change.
type Options struct {
	Out   string   // folder with the built site
	Base  string   // path the site is served under, such as "/handbook/"; "/" if empty
	Port  int      // 0: DefaultPort or the next free one
	Watch []string // folders whose files make the site; those that do not exist are left out
	Log   io.Writer

	// Rebuild brings Out up to date. It is never called twice at once.
	Rebuild func(ctx context.Context) []report.Problem

	// Restart is called after a change of a Go file. It returns problems if the
	// changed program does not compile. On success it does not return, or says
	// by ErrCannotRestart that this system cannot replace a running program.
	// port is the one in use: given to the new program, it lets an open page
	// find the server again. nil means: rebuild only.
	Restart func(ctx context.Context, port int) ([]report.Problem, error)

	// Ready, if set, is called with the address once the server answers.
	Ready func(address string)
}

// Run serves until ctx ends. The site must have been built before.
func Run(ctx context.Context, o Options) error {
	base := cleanBase(o.Base)
	handler, err := NewHandler(o.Out, base)
	if err != nil {
		return err
	}
	defer handler.Close()
	listener, err := listen(o.Port)
	if err != nil {
		return err
	}
	watcher, err := watch(o.Watch, o.Out)
	if err != nil {
		listener.Close()
		return err
	}
	defer watcher.Close()

	address := fmt.Sprintf("http://%s%s", listener.Addr(), base)
	fmt.Fprintf(o.Log, "serving %s (stop with Ctrl-C)\n", address)
	server := &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	if o.Ready != nil {
		o.Ready(address)
	}

	for {
		select {
		case <-ctx.Done():
			return stop(server)
		case err := <-failed:
			return err
		case err := <-watcher.Errors():
			fmt.Fprintf(o.Log, "watching files: %v\n", err)
		case changed := <-watcher.Changes():
			o.update(ctx, changed, listener.Addr().(*net.TCPAddr).Port)
		}
	}
}

// update rebuilds after a change and says what happened in one line.
func (o Options) update(ctx context.Context, changed []string, port int) {
	name := shortName(changed[0])
	if len(changed) > 1 {
		name = fmt.Sprintf("%s and %d more", name, len(changed)-1)
	}
	if o.Restart != nil && anyGo(changed) {
		fmt.Fprintf(o.Log, "changed: %s; compiling the program again …\n", name)
		problems, err := o.Restart(ctx, port)
		switch {
		case len(problems) > 0:
			o.print(problems)
			return
		case errors.Is(err, ErrCannotRestart):
			fmt.Fprintln(o.Log, "tables and worked examples still come from the program as it was started; stop it and start it again to see new ones")
		case err != nil:
			fmt.Fprintf(o.Log, "the program could not be started again: %v\n", err)
			return
		}
	}
	start := time.Now()
	if problems := o.Rebuild(ctx); len(problems) > 0 {
		o.print(problems)
		return
	}
	fmt.Fprintf(o.Log, "changed: %s; rebuilt in %d ms\n", name, time.Since(start).Milliseconds())
}

// print shows problems the way the build command does.
func (o Options) print(problems []report.Problem) {
	for _, p := range problems {
		fmt.Fprintln(o.Log, p)
	}
	fmt.Fprintf(o.Log, "problems: %d; the site stays as it was\n", len(problems))
}

// shortName names a file as seen from the folder the program was started in.
func shortName(file string) string {
	if dir, err := os.Getwd(); err == nil {
		if rel, err := filepath.Rel(dir, file); err == nil && filepath.IsLocal(rel) {
			return rel
		}
	}
	return file
}

func anyGo(names []string) bool {
	for _, n := range names {
		if (strings.HasSuffix(n, ".go") && !strings.HasSuffix(n, "_test.go")) || strings.HasSuffix(n, "go.mod") || strings.HasSuffix(n, "go.sum") {
			return true
		}
	}
	return false
}

// stop lets running requests finish, for at most two seconds.
func stop(server *http.Server) error {
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
	defer cancel()
	if err := server.Shutdown(ctx); err != nil {
		return server.Close()
	}
	return nil
}

// listen opens the asked port, or the first free one from DefaultPort on.
// The loopback address keeps a half-written page off the network.
func listen(port int) (net.Listener, error) {
	if port != 0 {
		l, err := net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port))
		if err != nil {
			return nil, fmt.Errorf("port %d cannot be used: %w; choose another with -port", port, err)
		}
		return l, nil
	}
	var first error
	for p := DefaultPort; p < DefaultPort+50; p++ {
		l, err := net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", p))
		if err == nil {
			return l, nil
		}
		if first == nil {
			first = err
		}
	}
	return nil, fmt.Errorf("no free port from %d to %d: %w; choose one with -port", DefaultPort, DefaultPort+49, first)
}

// cleanBase gives the base path one slash at each end.
func cleanBase(base string) string {
	base = strings.Trim(base, "/")
	if base == "" {
		return "/"
	}
	return "/" + base + "/"
}

// exists is for folders that a tree may lack.
func exists(dir string) bool {
	info, err := os.Stat(dir)
	return err == nil && info.IsDir()
}
