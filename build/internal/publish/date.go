package publish

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"time"
)

// BuildDate decides the date printed in every page, as 2026-11-25. The clock
// is never asked, so that a build of the same commit gives the same bytes:
//
//  1. given, if it is not empty (the -date flag);
//  2. the variable SOURCE_DATE_EPOCH, seconds since 1970 in UTC;
//  3. the day of the last commit of the repository in root, in UTC;
//  4. "" where there is none; then the newest date in the page headers is used.
func BuildDate(ctx context.Context, root, given string) (string, error) {
	if given != "" {
		if _, err := time.Parse(time.DateOnly, given); err != nil {
			return "", fmt.Errorf("the date %q is not a day; write it as 2026-11-25", given)
		}
		return given, nil
	}
	if epoch, ok := os.LookupEnv("SOURCE_DATE_EPOCH"); ok && epoch != "" {
		seconds, err := strconv.ParseInt(epoch, 10, 64)
		if err != nil {
			return "", fmt.Errorf("SOURCE_DATE_EPOCH is %q; it must be a whole number of seconds", epoch)
		}
		return time.Unix(seconds, 0).UTC().Format(time.DateOnly), nil
	}
	cmd := exec.CommandContext(ctx, "git", "log", "-1", "--format=%ct")
	cmd.Dir = root
	out, err := cmd.Output()
	if err != nil {
		return "", nil
	}
	seconds, err := strconv.ParseInt(string(bytes.TrimSpace(out)), 10, 64)
	if err != nil {
		return "", nil
	}
	return time.Unix(seconds, 0).UTC().Format(time.DateOnly), nil
}
