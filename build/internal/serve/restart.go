package serve

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"

	"changeout/build/internal/module"
	"changeout/build/internal/report"
)

// ErrCannotRestart is returned where a running program cannot be replaced.
var ErrCannotRestart = errors.New("this system cannot replace a running program")

// Restart compiles pkg in root and replaces the running program with it: same
// process, same arguments, same terminal. With compile errors the running
// program stays and the errors come back. args are those after the program
// name; the port that is in use should be among them, so that an open page
// finds the server again.
func Restart(ctx context.Context, root, pkg string, args []string) ([]report.Problem, error) {
	if runtime.GOOS == "windows" {
		return nil, ErrCannotRestart
	}
	user, err := os.UserCacheDir()
	if err != nil {
		return nil, err
	}
	dir := filepath.Join(user, "changeout", "serve")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	// One file for all restarts; go build replaces it while the old program
	// still runs from the file it had opened.
	file := filepath.Join(dir, "changeout-build")
	if problems := module.CompileProgram(ctx, root, pkg, file); len(problems) > 0 {
		return problems, nil
	}
	return nil, replace(file, append([]string{file}, args...))
}
