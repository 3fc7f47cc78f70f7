package publish

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
)

// The budgets these are read against: a cold build of 5,000 pages takes at
// most twice the time of bare goldmark that converts and writes the same
// files, with less than 200 MB of heap; one edited page is in the output
// within 150 ms, the watcher's pause of 25 ms included.
//
//	go test ./build/internal/publish -run '^$' -bench 5000 -benchtime 3x

const manyPages = 5000

// bigPage is a page of ordinary length (about 4 kB) that uses every block.
func bigPage(i int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "---\ntitle: Page %d\nsummary: What to do in case %d.\nkind: reference\nupdated: 2026-01-%02d\n---\n\n## What this achieves\n\n", i, i, i%28+1)
	for range 4 {
		b.WriteString("The compressor pumps vapour, and a [[micron]] of water in the oil spoils it sooner than a technician expects. Read the plate *before* the panel comes off, note the serial number, and keep the note with the job. [@book]\n\n")
	}
	b.WriteString("## Before you start\n\n> WARNING (stored charge): The link capacitors stay charged after the power is off.\n> Consequence: The charge can kill.\n> Avoid: Isolate, wait the marked time, then measure before you touch.\n\n## Steps\n\n")
	for n := 1; n <= 12; n++ {
		fmt.Fprintf(&b, "%d. [ ] If the pipe number %d is warm, wait until the hand can stay on it. [@book, page %d]\n\n   Why: Hot copper oxidises as soon as air reaches it, and the scale travels.\n\n", n, n, i+n)
	}
	b.WriteString(":: wait 30 min | Fire watch | Look at the joint and the hidden side every 10 minutes.\n\n:: write pressure | Pressure after 10 minutes | micron\n\nDecide: What did the test show? [@book]\n\n| Colour | Class | Do |\n| --- | --- | --- |\n")
	for n := range 8 {
		fmt.Fprintf(&b, "| shade %d | class %d | Change the drier and look again after %d hours. |\n", n, n/2, n*12)
	}
	fmt.Fprintf(&b, "\n## What beginners get wrong\n\n- They open the valve too fast.\n- They trust one gauge.\n- They forget [the next page](page-%d.md#what-this-achieves).\n", (i+1)%100)
	return b.String()
}

// manyContent writes the big tree once for all benchmarks of a run.
var manyContent = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "changeout-bench-")
	if err != nil {
		return "", err
	}
	put := func(name, text string) {
		file := filepath.Join(dir, filepath.FromSlash(name))
		if err == nil {
			err = os.MkdirAll(filepath.Dir(file), 0o755)
		}
		if err == nil {
			err = os.WriteFile(file, []byte(text), 0o644)
		}
	}
	var contents strings.Builder
	contents.WriteString("# Contents\n\n- About\n  - [Words](about/glossary.md)\n")
	for i := range manyPages {
		if i%100 == 0 {
			fmt.Fprintf(&contents, "- Part %d\n", i/100)
		}
		name := fmt.Sprintf("part-%02d/page-%d.md", i/100, i%100)
		fmt.Fprintf(&contents, "  - [Page %d](%s)\n", i, name)
		put(name, bigPage(i))
	}
	put("contents.md", contents.String())
	for _, name := range []string{"stages.md", "hazards.md", "index.md", "about/glossary.md"} {
		put(name, small["content/"+name])
	}
	return dir, err
})

func TestMain(m *testing.M) {
	code := m.Run()
	if benchmarked {
		if dir, err := manyContent(); err == nil {
			os.RemoveAll(dir)
		}
	}
	os.Exit(code)
}

var benchmarked bool

func bigOptions(b *testing.B) Options {
	b.Helper()
	benchmarked = true
	content, err := manyContent()
	if err != nil {
		b.Fatal(err)
	}
	// The real templates, styles and scripts, copied so that nobody edits them
	// while the clock runs; only the module is pretended.
	root := b.TempDir()
	real := os.DirFS("../../..")
	for name := range stamps(real, "site") {
		text, err := fs.ReadFile(real, name)
		if err != nil {
			b.Fatal(err)
		}
		write(b, root, name, string(text))
	}
	write(b, root, "go.mod", small["go.mod"])
	o := options(root)
	o.Supply.WorksheetPages, o.Supply.TablePages = nil, nil
	o.Content, o.Out = content, filepath.Join(b.TempDir(), "public")
	return o
}

// peakHeap runs f and returns the highest heap it saw, in MB.
func peakHeap(f func()) float64 {
	done, result := make(chan bool), make(chan uint64)
	go func() {
		var peak uint64
		var m runtime.MemStats
		for tick := time.NewTicker(10 * time.Millisecond); ; {
			runtime.ReadMemStats(&m)
			peak = max(peak, m.HeapInuse)
			select {
			case <-done:
				result <- peak
				return
			case <-tick.C:
			}
		}
	}()
	f()
	close(done)
	return float64(<-result) / 1e6
}

// reportCPU adds the processor time of one round, cleaning up included.
func reportCPU(b *testing.B) func() {
	start := cpuTime()
	b.ResetTimer()
	return func() { b.ReportMetric((cpuTime()-start).Seconds()*1000/float64(b.N), "cpu-ms/op") }
}

func BenchmarkColdBuild5000(b *testing.B) {
	o := bigOptions(b)
	out := o.Out
	var peak float64
	defer reportCPU(b)()
	for i := range b.N {
		b.StopTimer()
		o.Out = fmt.Sprintf("%s-%d", out, i)
		runtime.GC()
		b.StartTimer()
		peak = max(peak, peakHeap(func() { mustBuild(b, New(o)) }))
		b.StopTimer()
		os.RemoveAll(o.Out)
		b.StartTimer()
	}
	b.ReportMetric(peak, "MB-heap")
}

// BenchmarkBareGoldmark5000 is the yardstick: read, convert with tables, write,
// one file after the other.
func BenchmarkBareGoldmark5000(b *testing.B) { bare(b, 1) }

// BenchmarkBareGoldmarkParallel5000 is the same on all processors.
func BenchmarkBareGoldmarkParallel5000(b *testing.B) { bare(b, runtime.GOMAXPROCS(0)) }

func bare(b *testing.B, workers int) {
	o := bigOptions(b)
	md := goldmark.New(goldmark.WithExtensions(extension.GFM))
	defer reportCPU(b)()
	for i := range b.N {
		out := fmt.Sprintf("%s-%d", o.Out, i)
		names := make(chan string, 64)
		var wg sync.WaitGroup
		for range workers {
			wg.Go(func() {
				for name := range names {
					source, err := os.ReadFile(filepath.Join(o.Content, name))
					var buffer bytes.Buffer
					if err == nil {
						err = md.Convert(source, &buffer)
					}
					if err == nil {
						err = os.WriteFile(filepath.Join(out, strings.TrimSuffix(name, ".md")+".html"), buffer.Bytes(), 0o644)
					}
					if err != nil {
						b.Error(err)
					}
				}
			})
		}
		for page := range manyPages {
			dir := fmt.Sprintf("part-%02d", page/100)
			if page%100 == 0 {
				if err := os.MkdirAll(filepath.Join(out, dir), 0o755); err != nil {
					b.Fatal(err)
				}
			}
			names <- fmt.Sprintf("%s/page-%d.md", dir, page%100)
		}
		close(names)
		wg.Wait()
		b.StopTimer()
		os.RemoveAll(out)
		b.StartTimer()
	}
}

// BenchmarkIncremental5000 edits one page, as the preview server does.
func BenchmarkIncremental5000(b *testing.B) { incremental(b, "\nEdit %d.\n", 2) }

// BenchmarkIncrementalStep5000 adds a table row, which the search index of all
// pages holds too: it is joined and written anew.
func BenchmarkIncrementalStep5000(b *testing.B) {
	incremental(b, "\n| Found | Means |\n| --- | --- |\n| noise %d | edit |\n", 3)
}

func incremental(b *testing.B, edit string, written int) {
	o := bigOptions(b)
	o.Version = "preview"
	p := New(o)
	mustBuild(b, p)
	name := filepath.Join(o.Content, "part-25", "page-50.md")
	source, err := os.ReadFile(name)
	if err != nil {
		b.Fatal(err)
	}
	defer os.WriteFile(name, source, 0o644)
	var worst time.Duration
	defer reportCPU(b)()
	for i := range b.N {
		b.StopTimer()
		if err := os.WriteFile(name, fmt.Appendf(source, edit, i), 0o644); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		start := time.Now()
		s, problems := p.Build(context.Background())
		worst = max(worst, time.Since(start))
		if len(problems) > 0 || s.Written != written {
			b.Fatalf("got %+v and %v, want the page, the worker and what holds its text written", s, problems)
		}
	}
	b.ReportMetric(float64(worst.Milliseconds()), "ms-worst")
}
