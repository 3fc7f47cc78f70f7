package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// engineRows are the benchmarks of the property engine that have a budget, in µs in the module's target.
var engineRows = []struct{ what, folder, benchmark, budget string }{
	{"fitted curve, pressure from temperature (R-448A dew)", "curve", "CurveDewP", "0.3 µs"},
	{"fitted curve, temperature from pressure (R-448A dew)", "curve", "CurveDewT", "0.3 µs"},
	{"pure saturation at T (R-134a)", "refrigerant", "SaturationR134a", "10 µs"},
	{"pure saturation at p (R-134a)", "refrigerant", "SaturationAtPR134a", "10 µs"},
	{"bubble point at T, five components (R-448A)", "refrigerant", "BubbleR448A", "150 µs"},
	{"dew point at T, five components (R-448A)", "refrigerant", "DewR448A", "150 µs"},
	{"(p, h) flash, five components, two phases (R-448A)", "refrigerant", "FlashPHR448A", "600 µs"},
}

// wasiRunner runs a test program of GOOS=wasip1 under Node, whose engine is that of Chromium.
const wasiRunner = `import { WASI } from 'node:wasi';
import { readFileSync } from 'node:fs';
const [file, ...args] = process.argv.slice(2);
const wasi = new WASI({ version: 'preview1', args: ['test', ...args], preopens: { '/': '/' }, returnOnExit: true });
const module = await WebAssembly.compile(readFileSync(file));
process.exitCode = wasi.start(await WebAssembly.instantiate(module, wasi.getImportObject()));
`

// engineSpeed runs the benchmarks of the property engine in the module's target and natively.
func engineSpeed(ctx context.Context, root, dir string) []row {
	runner := filepath.Join(dir, "wasi.mjs")
	native, module := map[string]string{}, map[string]string{}
	err := os.WriteFile(runner, []byte(wasiRunner), 0o600)
	for _, folder := range []string{"curve", "refrigerant"} {
		var names []string
		for _, r := range engineRows {
			if r.folder == folder {
				names = append(names, r.benchmark)
			}
		}
		for _, target := range []struct {
			env  []string
			into map[string]string
		}{{nil, native}, {[]string{"GOOS=wasip1", "GOARCH=wasm"}, module}} {
			if err == nil {
				err = benchmarks(ctx, root, filepath.Join(dir, "bench"), runner, folder, names, target.env, target.into)
			}
		}
	}
	var rows []row
	for _, r := range engineRows {
		rows = append(rows, row{r.what + ", in the module's target under Node (natively)", r.budget, module[r.benchmark] + " µs (" + native[r.benchmark] + " µs)"})
	}
	if err != nil {
		return unmeasured(rows, err)
	}
	return rows
}

// benchmarks runs the named benchmarks of a property package and keeps the shortest time of four, µs: the first holds the
// compilation of the module, and a busy machine only ever adds.
func benchmarks(ctx context.Context, root, program, runner, folder string, names, env []string, into map[string]string) error {
	compile := exec.CommandContext(ctx, "go", "test", "-c", "-o", program, "./calc/property/"+folder)
	compile.Dir = root
	compile.Env = append(os.Environ(), env...)
	if out, err := compile.CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, tail(out))
	}
	args := []string{"-test.run", "^$", "-test.bench", "^Benchmark(" + strings.Join(names, "|") + ")$", "-test.benchtime", "0.4s", "-test.count", "4"}
	cmd := exec.CommandContext(ctx, program, args...)
	if env != nil {
		cmd = exec.CommandContext(ctx, "node", append([]string{"--no-warnings", runner, program}, args...)...)
	}
	out, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("%w: %s", err, tail(out))
	}
	best := map[string]float64{}
	for _, m := range benchLine.FindAllStringSubmatch(string(out), -1) {
		ns, err := strconv.ParseFloat(strings.Fields(m[2])[0], 64)
		if err != nil {
			return err
		}
		if b, ok := best[m[1]]; !ok || ns < b {
			best[m[1]] = ns
			into[m[1]] = strconv.FormatFloat(ns/1000, 'g', 3, 64)
		}
	}
	for _, name := range names {
		if into[name] == "" {
			return fmt.Errorf("benchmark %s of calc/property/%s gave no time", name, folder)
		}
	}
	return nil
}
