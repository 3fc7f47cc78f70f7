package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// besideCoolProp times the property engine on this machine beside CoolProp's low-level interface at the same states: our
// side is BenchmarkBesideCoolProp, theirs testdata/reference/timing.py. The ratio is their time over ours. Without Python or
// CoolProp it says so in one line.
func besideCoolProp(ctx context.Context, root string) []row {
	const what, wanted = "property engine beside CoolProp, natively", "ratio of several for blends"
	theirs, version, err := coolPropTimes(ctx, root)
	if err != nil {
		return unmeasured([]row{{what, wanted, ""}}, err)
	}
	cmd := exec.CommandContext(ctx, "go", "test", "-run", "^$", "-bench", "BesideCoolProp", "-benchtime", "0.3s", "./calc/property/gridtest")
	cmd.Dir = root
	out, err := cmd.CombinedOutput()
	if err != nil {
		return unmeasured([]row{{what, wanted, ""}}, fmt.Errorf("%w: %s", err, tail(out)))
	}
	var rows []row
	for _, m := range benchLine.FindAllStringSubmatch(string(out), -1) {
		key := strings.TrimPrefix(m[1], "BesideCoolProp/")
		nanoseconds, err := strconv.ParseFloat(strings.Fields(m[2])[0], 64)
		if err != nil {
			return unmeasured([]row{{what, wanted, ""}}, err)
		}
		ours := nanoseconds / 1000
		measured := fmt.Sprintf("%.1f µs; %s", ours, ratio(ours, theirs[key]))
		if t, ok := theirs[key+", phase given"]; ok {
			measured += "; told the phase " + ratio(ours, t)
		}
		name, kind, _ := strings.Cut(key, "/")
		budget := "ratio of several"
		if _, blend := theirs[name+"/dew"]; !blend {
			if budget = "-"; kind == "bubble" {
				measured += " (CoolProp reads a fitted curve here, we solve)"
			}
		}
		rows = append(rows, row{fmt.Sprintf("%s %s, natively, beside CoolProp %s", name, kind, version), budget, measured})
	}
	return rows
}

// coolPropTime is the time of one state, µs, and the number of states that were not solved.
type coolPropTime struct {
	Us     float64
	Failed int
}

func ratio(ours float64, theirs coolPropTime) string {
	if !(theirs.Us > 0) {
		return "CoolProp solves none"
	}
	text := fmt.Sprintf("CoolProp %.1f µs, ratio %.1f", theirs.Us, theirs.Us/ours)
	if theirs.Failed > 0 {
		text += fmt.Sprintf(" (%d states not solved)", theirs.Failed)
	}
	return text
}

func coolPropTimes(ctx context.Context, root string) (map[string]coolPropTime, string, error) {
	python := filepath.Join(root, ".venv", "bin", "python") // make reference installs it
	if _, err := os.Stat(python); err != nil {
		python = "python3"
	}
	cmd := exec.CommandContext(ctx, python, filepath.Join("testdata", "reference", "timing.py"))
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "PYTHONDONTWRITEBYTECODE=1")
	out, err := cmd.Output()
	var exit *exec.ExitError
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, "", errors.New("python3 is not here")
	case errors.As(err, &exit) && exit.ExitCode() == 3:
		return nil, "", errors.New("CoolProp is not installed (make reference installs it)")
	case errors.As(err, &exit):
		return nil, "", fmt.Errorf("timing.py: %w: %s", err, tail(exit.Stderr))
	case err != nil:
		return nil, "", err
	}
	var answer struct {
		Version string
		Times   map[string]coolPropTime
	}
	if err := json.Unmarshal(out, &answer); err != nil {
		return nil, "", err
	}
	return answer.Times, answer.Version, nil
}
