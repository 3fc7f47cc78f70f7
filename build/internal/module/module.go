// Package module makes the WebAssembly file that phones load. It runs the Go
// command for wasip1, so nothing but Go is needed, and returns the bytes.
//
// The flags are chosen so that the same sources give the same bytes on every
// machine: file names are trimmed, the build id is cleared, and the state of
// the version control is left out. Hashed file names depend on this.
package module

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"changeout/build/internal/report"
)

// Options says what to build and where.
type Options struct {
	Root     string    // the folder that holds go.mod
	Package  string    // import path relative to Root; "./wasm" if empty
	CacheDir string    // folder that keeps finished modules; the user's cache folder if empty, "off" for none
	Progress io.Writer // slow steps are announced here; nil means quiet
}

// Module is one finished WebAssembly file.
type Module struct {
	Bytes  []byte
	SHA256 string // hexadecimal digest of Bytes
}

// target is the environment the module is built in. It also clears what a
// person's own settings could change in the output.
var target = []string{
	"GOOS=wasip1", "GOARCH=wasm", "CGO_ENABLED=0",
	"GOFLAGS=", "GOWASM=", "GOWORK=off",
	"GOEXPERIMENT=nogreenteagc", // the older collector's remains are smaller
}

// flags of the build; each is part of the cache key.
var flags = []string{
	"-buildmode=c-shared",   // a reactor: exports that can be called, no main
	"-trimpath",             // no folder names of this machine
	"-buildvcs=false",       // the commit id would change the bytes of an unchanged module
	"-ldflags=-w -buildid=", // no debugging tables, no build id; slim drops the names once it has used them
	// No write barriers: the module does not collect garbage, see wasm/heap.go.
	// Inlining copies code, and copied code is what a phone downloads: without
	// it the module is 60 KB smaller (brotli). The property engine keeps it,
	// because its solvers are what takes the time. The last flag that matches a
	// package counts.
	"-gcflags=all=-wb=false -l",
	"-gcflags=math=-wb=false",
	"-gcflags=changeout/calc/property/...=-wb=false",
}

// Build returns the module, from the cache when no source of it has changed.
// Compile errors come back as problems with file and line.
func Build(ctx context.Context, o Options) (*Module, []report.Problem) {
	if o.Package == "" {
		o.Package = "./wasm"
	}
	cache, err := openCache(o.CacheDir)
	if err != nil {
		return nil, problem("the cache folder for the WebAssembly module cannot be used: "+err.Error(), "set -cache or the HOME variable to a folder that can be written")
	}
	overlay, err := withoutWords(o.Root)
	if err != nil {
		return nil, compileProblems(o, err)
	}
	key, err := sourceKey(ctx, o, overlay)
	if err != nil {
		return nil, compileProblems(o, err)
	}
	if b := cache.get(key); b != nil {
		return newModule(b), nil
	}
	if o.Progress != nil {
		fmt.Fprintln(o.Progress, "building the WebAssembly module (the first time takes up to a minute) …")
	}
	start := time.Now()
	linked, err := compile(ctx, o, overlay)
	if err != nil {
		return nil, compileProblems(o, err)
	}
	b, err := slim(linked)
	if err != nil && o.Progress != nil {
		fmt.Fprintln(o.Progress, err)
	}
	cache.put(key, b)
	if o.Progress != nil {
		fmt.Fprintf(o.Progress, "module built in %.1f s, %.2f MB\n", time.Since(start).Seconds(), float64(len(b))/1e6)
	}
	return newModule(b), nil
}

func newModule(b []byte) *Module {
	sum := sha256.Sum256(b)
	return &Module{Bytes: b, SHA256: hex.EncodeToString(sum[:])}
}

// compile runs go build into a private folder and reads the file back.
func compile(ctx context.Context, o Options, overlay map[string][]byte) ([]byte, error) {
	dir, err := os.MkdirTemp("", "changeout-module-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "module.wasm")
	args := append([]string{"build"}, flags...)
	if len(overlay) > 0 {
		description, err := writeOverlay(dir, overlay)
		if err != nil {
			return nil, err
		}
		args = append(args, "-overlay", description)
	}
	args = append(args, "-o", file, o.Package)
	if _, err := goCommand(ctx, o.Root, target, args...); err != nil {
		return nil, err
	}
	b, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	if !bytes.HasPrefix(b, []byte("\x00asm")) {
		return nil, errors.New("go build did not write a WebAssembly file; the package must be a main package")
	}
	return b, nil
}

// CompileProgram compiles a program for this machine into file. The preview
// server uses it to start itself again after a change of a Go file.
func CompileProgram(ctx context.Context, root, pkg, file string) []report.Problem {
	if _, err := goCommand(ctx, root, nil, "build", "-o", file, pkg); err != nil {
		return compileProblems(Options{Root: root, Package: pkg}, err)
	}
	return nil
}

// commandError keeps what the Go command printed.
type commandError struct {
	args   []string
	stderr string
	err    error
}

func (e *commandError) Error() string {
	text := strings.TrimSpace(e.stderr)
	if text == "" {
		text = e.err.Error()
	}
	return "go " + e.args[0] + ": " + text
}

func (e *commandError) Unwrap() error { return e.err }

// goCommand runs the Go command in dir and returns its standard output.
func goCommand(ctx context.Context, dir string, env []string, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir = dir
	// PWD keeps a symbolic link in the path from showing up as another folder.
	cmd.Env = append(append(os.Environ(), "PWD="+dir), env...)
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	if err := cmd.Run(); err != nil {
		return nil, &commandError{args: args, stderr: stderr.String(), err: err}
	}
	return stdout.Bytes(), nil
}
