// Command budget prints each budget of the design beside what was measured on
// this machine. It judges nothing and always exits 0 unless it cannot measure:
// a budget is looked at by a person, because a busy machine is slow.
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"text/tabwriter"

	"github.com/andybalholm/brotli"

	"changeout/build/internal/calcview"
	"changeout/build/internal/publish"
)

type row struct{ what, budget, measured string }

func main() {
	if err := run(context.Background()); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(ctx context.Context) error {
	root, err := os.Getwd()
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "changeout-budget-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	supply, err := calcview.NewSupply(os.DirFS(filepath.Join(root, "site")), os.DirFS(filepath.Join(root, "testdata", "published")))
	if err != nil {
		return err
	}
	single := filepath.Join(dir, "handbook.html")
	options := publish.Options{Root: root, Out: filepath.Join(dir, "public"), Single: single, Date: "2026-01-01", Supply: supply, Progress: os.Stderr}
	summary, problems := publish.New(options).Build(ctx)
	if len(problems) > 0 {
		return fmt.Errorf("the site cannot be built: %v", problems[0])
	}
	rows, err := sizes(options.Out, summary.Single)
	if err != nil {
		return err
	}
	rows = append(rows, engineSpeed(ctx, root, dir)...)
	rows = append(rows, browserSpeed(ctx, root, dir, options.Out, single)...)
	rows = append(rows, publishSpeed(ctx, root)...)
	rows = append(rows, besideCoolProp(ctx, root)...)
	out := tabwriter.NewWriter(os.Stdout, 2, 0, 2, ' ', 0)
	fmt.Fprintln(out, "what\tbudget\tmeasured")
	for _, r := range rows {
		fmt.Fprintf(out, "%s\t%s\t%s\n", r.what, r.budget, r.measured)
	}
	return out.Flush()
}

func compressed(b []byte) int {
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, brotli.BestCompression)
	w.Write(b)
	w.Close()
	return out.Len()
}

func kb(n int) string { return fmt.Sprintf("%.1f KB", float64(n)/1000) }

// sizes measures what goes over the air, file by file.
func sizes(public string, single int64) ([]row, error) {
	var module []byte
	total, assets, largest, largestName, index, forms := 0, 0, 0, "", 0, 0
	err := filepath.WalkDir(public, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		n := compressed(b)
		total += n
		switch filepath.Ext(path) {
		case ".wasm":
			module = b
		case ".css", ".js":
			// Reading and ticking off takes app.css, early.js and app.js; the rest is loaded for forms, search, the job file, paper.
			if name := filepath.Base(path); strings.HasPrefix(name, "app.") || strings.HasPrefix(name, "early.") {
				assets += n
			} else if strings.HasPrefix(name, "worksheets.") {
				forms = n
			}
		case ".txt":
			if strings.HasPrefix(filepath.Base(path), "search-index") {
				index = n
			}
		}
		if filepath.Base(filepath.Dir(path)) == "stages" && n > largest {
			largest, largestName = n, filepath.Base(path)
		}
		return nil
	})
	return []row{
		{"module, everything in it, brotli", "650 KB", kb(compressed(module))},
		{"procedure page with style and script, brotli (largest: " + largestName + ")", "60 KB", kb(largest + assets)},
		{"script of the worksheet forms, loaded beside it, brotli", "-", kb(forms)},
		{"everything needed offline, brotli", "3 MB", kb(total)},
		{"search index, brotli", "60 KB", kb(index)},
		{"single file", "5 MB", fmt.Sprintf("%.2f MB", float64(single)/1e6)},
	}, err
}

// browserSpeed runs site/browsertest/measure.mjs, which needs Node and Chromium.
func browserSpeed(ctx context.Context, root, dir, public, single string) []row {
	rows := []row{{"answer after a key press, Chromium at 4x slowdown, median (worst)", "16 ms", ""}, {"cold open offline to the first answer drawn, new values, 4x slowdown, median (worst)", "1 s", ""},
		{"the same with the values and the answer of last time", "1 s", ""},
		{"search results after a key press, 4x slowdown, median (worst; first tap to first results)", "50 ms", ""}}
	program := filepath.Join(dir, "changeout")
	source := filepath.Join(dir, "source")
	if err := exec.CommandContext(ctx, "go", "build", "-o", program, "./build").Run(); err != nil {
		return unmeasured(rows, err)
	}
	if err := os.Symlink(root, source); err != nil {
		return unmeasured(rows, err)
	}
	cmd := exec.CommandContext(ctx, "node", "browsertest/measure.mjs")
	cmd.Dir = filepath.Join(root, "site")
	cmd.Env = append(os.Environ(), "CHANGEOUT_TEST="+dir)
	out, err := cmd.Output()
	if err != nil {
		return unmeasured(rows, err)
	}
	var m struct{ KeyPressMs, KeyPressWorstMs, ColdMs, ColdWorstMs, ColdKeptMs, ColdKeptWorstMs, SearchMs, SearchWorstMs, SearchFirstMs float64 }
	if err := json.Unmarshal(out, &m); err != nil {
		return unmeasured(rows, err)
	}
	rows[0].measured = fmt.Sprintf("%.1f ms (%.1f ms)", m.KeyPressMs, m.KeyPressWorstMs)
	rows[1].measured = fmt.Sprintf("%.2f s (%.2f s)", m.ColdMs/1000, m.ColdWorstMs/1000)
	rows[2].measured = fmt.Sprintf("%.2f s (%.2f s)", m.ColdKeptMs/1000, m.ColdKeptWorstMs/1000)
	rows[3].measured = fmt.Sprintf("%.1f ms (%.1f ms; %.0f ms)", m.SearchMs, m.SearchWorstMs, m.SearchFirstMs)
	return rows
}

func unmeasured(rows []row, err error) []row {
	for i := range rows {
		rows[i].measured = "not measured: " + err.Error()
	}
	return rows
}

// benchLine finds a benchmark's result in the output of go test.
var benchLine = regexp.MustCompile(`(?m)^Benchmark(\S+?)(?:-\d+)?\s+\d+\s+(.*)$`)

// publishSpeed runs the benchmarks of package publish over 5,000 pages.
func publishSpeed(ctx context.Context, root string) []row {
	cmd := exec.CommandContext(ctx, "go", "test", "-run", "^$", "-bench", "5000", "-benchtime", "1x", "./build/internal/publish")
	cmd.Dir = root
	out, err := cmd.CombinedOutput()
	if err != nil {
		return unmeasured([]row{{"5,000 pages", "2 x bare goldmark, 200 MB; one edit 150 ms", ""}}, fmt.Errorf("%w: %s", err, tail(out)))
	}
	var rows []row
	for _, m := range benchLine.FindAllStringSubmatch(string(out), -1) {
		rows = append(rows, row{"5,000 pages: " + m[1], "cold 2 x bare, 200 MB; one edit 150 ms", strings.Join(strings.Fields(m[2]), " ")})
	}
	return rows
}

func tail(b []byte) string {
	if len(b) > 300 {
		b = b[len(b)-300:]
	}
	return strings.TrimSpace(string(b))
}
