//go:build !wasip1

package main

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/andybalholm/brotli"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/published"
	"changeout/calc/unit"
	"changeout/wasm/wire"
)

var compiled = sync.OnceValues(func() ([]byte, error) {
	dir, err := os.MkdirTemp("", "changeout-wasm-test-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "module.wasm")
	// The very file that phones load: the build program makes it, and may not be imported from here.
	cmd := exec.Command("go", "run", "../build", "-module", file)
	if out, err := cmd.CombinedOutput(); err != nil {
		os.Stderr.Write(out)
		return nil, err
	}
	return os.ReadFile(file)
})

// machineCode keeps what wazero made of the module from one test to the next.
var machineCode = wazero.NewCompilationCache()

// phone is the module as a page has it: started once, asked many times.
type phone struct {
	ctx                      context.Context
	memory                   api.Memory
	request, evaluate, reply api.Function
}

func start(t testing.TB) *phone {
	t.Helper()
	code, err := compiled()
	if err != nil {
		t.Fatalf("the module does not build: %v", err)
	}
	ctx := context.Background()
	runtime := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfig().WithCompilationCache(machineCode))
	t.Cleanup(func() { runtime.Close(ctx) })
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	m, err := runtime.InstantiateWithConfig(ctx, code, wazero.NewModuleConfig().WithStartFunctions("_initialize").WithStderr(os.Stderr))
	if err != nil {
		t.Fatal(err)
	}
	p := &phone{ctx: ctx, memory: m.Memory(), request: m.ExportedFunction("request"), evaluate: m.ExportedFunction("evaluate"), reply: m.ExportedFunction("reply")}
	if p.request == nil || p.evaluate == nil || p.reply == nil {
		t.Fatalf("the module exports %v, want request, evaluate and reply", m.ExportedFunctionDefinitions())
	}
	return p
}

func (p *phone) call(t testing.TB, f api.Function, args ...uint64) int32 {
	t.Helper()
	out, err := f.Call(p.ctx, args...)
	if err != nil {
		t.Fatalf("%s%v trapped: %v", f.Definition().Name(), args, err)
	}
	return int32(out[0])
}

// ask sends bytes and returns the reply.
func (p *phone) ask(t testing.TB, message []byte) string {
	t.Helper()
	n := uint64(len(message))
	at := p.call(t, p.request, n)
	if !p.memory.Write(uint32(at), message) {
		t.Fatalf("request(%d) gave %d, outside the memory of %d bytes", n, at, p.memory.Size())
	}
	length := p.call(t, p.evaluate, n)
	b, ok := p.memory.Read(uint32(p.call(t, p.reply)), uint32(length))
	if !ok {
		t.Fatalf("the reply of %d bytes lies outside the memory", length)
	}
	return string(b)
}

// TestModuleAnswersAsNative: every published case, in both families of units,
// gives the same answer on the phone as here. 1e-10 relative is the design's
// bound: math.Exp and math.Pow differ in the last places between the two. A
// difference of two temperatures near 300 K is held to 1e-10 of 300 K. The
// bounds of a fitted hold get 1e-9: the curves of a slow release and of a leak
// are nearly parallel, and the fit magnifies the last place a million times.
// The texts, of two or three figures, must still be the same.
func TestModuleAnswersAsNative(t *testing.T) {
	p := start(t)
	worst := map[string]float64{}
	for _, w := range catalog.All() {
		cases, err := published.Load(os.DirFS("../testdata/published"), w.ID)
		if err != nil {
			t.Fatal(err)
		}
		last := ""
		for _, c := range append(cases, published.Case{Name: "example", Inputs: w.Example}) {
			if key := published.Key(c.Inputs); key == last {
				continue
			} else {
				last = key
			}
			for _, system := range []unit.System{unit.Either, unit.InchPound} {
				req := calc.Request{Worksheet: w.ID, System: system, Fields: c.Inputs}
				want := wire.DecodeAnswer(wire.EncodeAnswer(calc.Evaluate(w, req)))
				got := wire.DecodeAnswer(p.ask(t, []byte(wire.EncodeRequest(req))))
				compare(t, w, c, want, got, worst)
			}
		}
	}
	for id, d := range worst {
		t.Logf("%s: largest relative difference %.2g", id, d)
	}
}

func compare(t *testing.T, w *calc.Worksheet, c published.Case, want, got calc.Answer, worst map[string]float64) {
	t.Helper()
	where := w.ID + ", " + c.Name
	if len(got.Problems) != len(want.Problems) || len(got.Outputs) != len(want.Outputs) || (got.Verdict == nil) != (want.Verdict == nil) {
		t.Errorf("%s: module %+v, native %+v", where, got, want)
		return
	}
	for i, o := range got.Outputs {
		n := want.Outputs[i]
		scale := math.Abs(n.Value)
		if out := w.Output(n.ID); out.Quantity == unit.TemperatureDifference {
			scale = math.Max(scale, 300)
		}
		d := math.Abs(o.Value - n.Value)
		relative := 1e-10
		if n.ID == "leak-rise-low" || n.ID == "leak-rise-high" || n.ID == "leak-rate-high" {
			relative = 1e-9
		}
		if scale > 0 {
			worst[w.ID] = math.Max(worst[w.ID], d/scale)
		}
		if o.ID != n.ID || o.Text != n.Text || o.SIUnit != n.SIUnit || !(d <= relative*scale) {
			t.Errorf("%s: %s: module %.17g %q, native %.17g %q, difference %g, tolerance %g (%s)", where, o.ID, o.Value, o.Text, n.Value, n.Text, d, relative*scale, c.Source)
		}
	}
	for i, problem := range got.Problems {
		n := want.Problems[i]
		if problem.Input != n.Input || problem.Code != n.Code || problem.Sentence != n.Sentence || len(problem.Suggest) != len(n.Suggest) {
			t.Errorf("%s: module %+v, native %+v", where, problem, n)
		}
	}
	if g, n := got.Verdict, want.Verdict; g != nil && (g.ID != n.ID || g.Tone != n.Tone || g.Title != n.Title || g.Sentence != n.Sentence) {
		t.Errorf("%s: module %+v, native %+v", where, *g, *n)
	}
	sameStrings(t, where+" warnings", got.Warnings, want.Warnings)
	sameStrings(t, where+" advice", got.Advice, want.Advice)
	if len(got.Steps) != len(want.Steps) || len(got.Charts) != len(want.Charts) {
		t.Errorf("%s: module %d steps and %d charts, native %d and %d", where, len(got.Steps), len(got.Charts), len(want.Steps), len(want.Charts))
		return
	}
	for i := range got.Steps {
		// A score or a residual printed beside the fit may round the other way; labels and sources may not differ.
		if got.Steps[i].Label != want.Steps[i].Label || got.Steps[i].Cite != want.Steps[i].Cite {
			t.Errorf("%s: module %+v, native %+v", where, got.Steps[i], want.Steps[i])
		}
	}
}

func sameStrings(t *testing.T, where string, got, want []string) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: module %q, native %q", where, got, want)
		return
	}
	for i := range got {
		if got[i] != want[i] {
			t.Errorf("%s: module %q, native %q", where, got[i], want[i])
		}
	}
}

// TestGarbageNeverTraps: a trap ends the module until the page is loaded
// again, so no message may cause one.
func TestGarbageNeverTraps(t *testing.T) {
	p := start(t)
	random := rand.New(rand.NewPCG(1, 2))
	for _, message := range []string{"", "\n", "\t\t\t", "worksheet\n", "worksheet\tno-such\n", "worksheet\tsaturation\nin\trefrigerant\t\x00\xff\t\n", "worksheet\tvacuum-hold\nin\tlog\t\\\t\\\n"} {
		p.ask(t, []byte(message))
	}
	valid := wire.EncodeRequest(calc.Request{Worksheet: "vacuum-hold", Fields: catalog.VacuumHold.Example})
	for range 300 {
		damaged := []byte(valid)
		for range 1 + random.IntN(8) {
			damaged[random.IntN(len(damaged))] = byte(random.UintN(256))
		}
		p.ask(t, damaged[:random.IntN(len(damaged)+1)])
		noise := make([]byte, random.IntN(400))
		for i := range noise {
			noise[i] = byte(random.UintN(256))
		}
		p.ask(t, noise)
	}
	// Lengths that a page should never send.
	for _, n := range []int32{-1, 0, math.MinInt32, math.MaxInt32} {
		p.call(t, p.evaluate, uint64(uint32(n)))
	}
	for _, n := range []int32{-1, 0, math.MinInt32} {
		p.call(t, p.request, uint64(uint32(n)))
	}
	// And it still answers.
	a := wire.DecodeAnswer(p.ask(t, []byte(wire.EncodeRequest(calc.Request{Worksheet: "saturation", Fields: catalog.Saturation.Example}))))
	if len(a.Outputs) == 0 {
		t.Errorf("after garbage the module answers %+v", a)
	}
	unknown := wire.DecodeAnswer(p.ask(t, []byte("worksheet\tno-such\n")))
	if len(unknown.Problems) != 1 || unknown.Problems[0].Code != calc.UnknownWorksheet {
		t.Errorf("unknown worksheet: got %+v", unknown)
	}
}

// TestLongLog: the largest log a worksheet takes passes through the memory.
func TestLongLog(t *testing.T) {
	p := start(t)
	var b bytes.Buffer
	b.WriteString("seconds,micron\n")
	in := catalog.VacuumHold.Input("log")
	for i := range in.MaxRows {
		fmt.Fprintf(&b, "%d,%d\n", 2*i, 400+i%3)
	}
	req := calc.Request{Worksheet: "vacuum-hold", Fields: []calc.Field{{Input: "log", Text: b.String()}, {Input: "ambient-start", Text: "20 C"}, {Input: "ambient-end", Text: "20 C"}}}
	begin := time.Now()
	got := wire.DecodeAnswer(p.ask(t, []byte(wire.EncodeRequest(req))))
	took := time.Since(begin)
	want := calc.Evaluate(catalog.VacuumHold, req)
	if got.Verdict == nil || want.Verdict == nil || got.Verdict.ID != want.Verdict.ID {
		t.Errorf("%d rows: module %+v, native %+v", in.MaxRows, got, want.Problems)
	}
	t.Logf("%d rows, %d KB: %v in wazero", in.MaxRows, b.Len()/1024, took.Round(time.Millisecond))
}

// BenchmarkModule measures the answer to one press of a key, in wazero: a
// browser's compiler is of the same order. The example of each worksheet.
func BenchmarkModule(b *testing.B) {
	p := start(b)
	for _, w := range catalog.All() {
		message := []byte(wire.EncodeRequest(calc.Request{Worksheet: w.ID, Fields: w.Example}))
		b.Run(w.ID, func(b *testing.B) {
			for b.Loop() {
				p.ask(b, message)
			}
		})
	}
}

// BenchmarkSize prints the module's size as a phone downloads it; the budget
// is 650 KB.
func BenchmarkSize(b *testing.B) {
	code, err := compiled()
	if err != nil {
		b.Fatal(err)
	}
	var small bytes.Buffer
	for b.Loop() {
		small.Reset()
		w := brotli.NewWriterLevel(&small, brotli.BestCompression)
		w.Write(code)
		w.Close()
	}
	b.ReportMetric(float64(len(code))/1024, "KB")
	b.ReportMetric(float64(small.Len())/1024, "KB-brotli")
}

// TestLeavesLittle: the module frees nothing, and a page starts a fresh one
// when it has grown to 48 MB. A key press is one answer, so an answer that left
// more than 1 MB would make that felt while typing.
func TestLeavesLittle(t *testing.T) {
	const n = 40
	for _, w := range catalog.All() {
		p := start(t)
		message := []byte(wire.EncodeRequest(calc.Request{Worksheet: w.ID, Fields: w.Example}))
		p.ask(t, message)
		before := p.memory.Size()
		for range n {
			p.ask(t, message)
		}
		if each := (p.memory.Size() - before) / n; each > 1<<20 {
			t.Errorf("%s: an answer leaves %d KB, want at most 1024", w.ID, each>>10)
		} else {
			t.Logf("%s: an answer leaves %d KB", w.ID, each>>10)
		}
	}
}

// TestThousandAnswers: a page asks at every press of a key for hours. The same
// question gets the same answer, and the test prints what one takes here.
func TestThousandAnswers(t *testing.T) {
	p := start(t)
	n := 1000
	if testing.Short() {
		n = 100
	}
	message := []byte(wire.EncodeRequest(calc.Request{Worksheet: "saturation", Fields: catalog.Saturation.Example}))
	first := p.ask(t, message)
	begin := time.Now()
	for range n {
		if got := p.ask(t, message); got != first {
			t.Fatalf("the same question got another answer:\n%s\n%s", got, first)
		}
	}
	took := time.Since(begin)
	t.Logf("saturation: %d evaluations in %v, %.3f ms each (wazero)", n, took.Round(time.Millisecond), took.Seconds()*1000/float64(n))
}
