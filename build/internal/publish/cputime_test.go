//go:build unix

package publish

import (
	"syscall"
	"time"
)

// cpuTime is the processor time this process has used: it tells the work done
// on a machine where other programs run too.
func cpuTime() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
