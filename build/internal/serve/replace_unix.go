//go:build unix

package serve

import (
	"os"
	"syscall"
)

// replace puts another program in the place of this one. It returns only on
// failure. Sockets are closed by the system (Go opens them close-on-exec).
func replace(file string, args []string) error {
	return syscall.Exec(file, args, os.Environ())
}
