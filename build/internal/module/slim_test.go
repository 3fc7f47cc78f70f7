package module

import (
	"bytes"
	"context"
	"encoding/binary"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// busy is a program that allocates, grows its stack, starts
// goroutines, recovers from a panic and can be made to crash: everything that
// reads the function tables while it runs.
var busy = map[string]string{
	"go.mod": "module example\n\ngo 1.24\n",
	"wasm/main.go": `package main

import _ "unsafe"

//go:linkname setGCPercent runtime/debug.setGCPercent
func setGCPercent(int32) int32

func init() { setGCPercent(-1) }

func main() {}

type node struct{ next *node; pad [40]byte; n int64 }

func deep(n int64) int64 {
	var room [64]int64
	room[n&63] = n
	if n == 0 {
		return 0
	}
	return deep(n-1) + room[n&63]
}

func caught(v []int64, i int64) (out int64) {
	defer func() {
		if recover() != nil {
			out = -1
		}
	}()
	return v[i]
}

//go:wasmexport work
func work(n int64) int64 {
	var head *node
	done := make(chan int64)
	for round := range int64(20) {
		head = nil
		for i := range n {
			head = &node{next: head, n: i}
		}
		go func() { done <- deep(1000 + round) }()
		if got := <-done; got != (1000+round)*(1001+round)/2 {
			return -2
		}
	}
	var sum int64
	for p := head; p != nil; p = p.next {
		sum += p.n
	}
	if caught([]int64{1, 2}, 5) != -1 {
		return -3
	}
	return sum
}

//go:wasmexport crash
func crash(i int64) int64 { return []int64{1}[i] }
`,
}

// linked compiles a tree without slimming it.
func linked(t *testing.T, root string) []byte {
	t.Helper()
	b, err := compile(context.Background(), Options{Root: root, Package: "./wasm"}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestSlimRuns: the slimmed program computes what the whole one does, through
// much allocation, grown stacks, goroutines and a recovered panic, and a crash
// still ends in an error and not in a wrong answer.
func TestSlimRuns(t *testing.T) {
	whole := linked(t, tree(t, busy))
	small, err := slim(whole)
	if err != nil {
		t.Fatal(err)
	}
	if len(small) >= len(whole)*95/100 {
		t.Errorf("got %d bytes of %d, want at least a twentieth less", len(small), len(whole))
	}
	for name, b := range map[string][]byte{"whole": whole, "slim": small} {
		ctx := context.Background()
		r := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfig())
		wasi_snapshot_preview1.MustInstantiate(ctx, r)
		m, err := r.InstantiateWithConfig(ctx, b, wazero.NewModuleConfig().WithStartFunctions("_initialize"))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		const n = 20000
		got, err := m.ExportedFunction("work").Call(ctx, n)
		if err != nil || got[0] != n*(n-1)/2 {
			t.Errorf("%s: work gave %v, %v; want %d", name, got, err, n*(n-1)/2)
		}
		if got, err := m.ExportedFunction("crash").Call(ctx, 7); err == nil {
			t.Errorf("%s: crash gave %v, want an error", name, got)
		}
		r.Close(ctx)
	}
}

// TestSlimTakesOutNames: no name of a function or of a source file is left.
func TestSlimTakesOutNames(t *testing.T) {
	small, err := slim(linked(t, tree(t, busy)))
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"runtime.mallocgc", "example/wasm/main.go", "main.deep"} {
		if bytes.Contains(small, []byte(word)) {
			t.Errorf("the slimmed module still holds %q", word)
		}
	}
}

// TestListedFunctionsExist: every entry of the lists stands for a function that the
// linker of this Go really links; a stale entry would hide a lost saving.
func TestListedFunctionsExist(t *testing.T) {
	sections, err := wasmSections(linked(t, tree(t, busy)))
	if err != nil {
		t.Fatal(err)
	}
	memory, err := memoryOf(sections)
	if err != nil {
		t.Fatal(err)
	}
	tables, err := locate(memory)
	if err != nil {
		t.Fatal(err)
	}
	_, done, err := stub(sections, memory, tables)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range slices.Concat(describers, collectors) {
		if !slices.ContainsFunc(done.listed, func(name string) bool { return listed([]string{d}, name) }) {
			t.Errorf("no function is called %q", d)
		}
	}
	for _, name := range done.listed {
		if !strings.HasPrefix(name, "runtime.") {
			t.Errorf("%s is emptied and is not of the runtime", name)
		}
	}
}

// TestSlimKeepsWhatItCannotRead: damaged or foreign files come back unchanged
// with an error, and never panic.
func TestSlimKeepsWhatItCannotRead(t *testing.T) {
	good := linked(t, tree(t, small))
	random := rand.New(rand.NewPCG(1, 2))
	inputs := [][]byte{nil, []byte("\x00asm"), []byte("\x00asm\x01\x00\x00\x00"), []byte("<html>"), good[:len(good)/2]}
	for range 40 {
		b := bytes.Clone(good)
		for range 1 + random.IntN(4) {
			b[8+random.IntN(4000)] = byte(random.IntN(256))
		}
		inputs = append(inputs, b)
	}
	for i, in := range inputs {
		if out, err := slim(in); err != nil && !bytes.Equal(out, in) {
			t.Errorf("input %d: an error and a changed file", i)
		}
	}
	header := bytes.Clone(good)
	head := append(binary.LittleEndian.AppendUint32(nil, tableMagic), 0, 0, 1, 8)
	header[bytes.Index(header, head)] ^= 0x10
	if _, err := slim(header); err == nil {
		t.Error("tables with another magic number were changed")
	}
}

// TestMemoryThereAndBack: the data section survives being laid out and cut.
func TestMemoryThereAndBack(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		memory := make([]byte, 1+random.IntN(3000))
		for at := 0; at < len(memory); at += random.IntN(60) {
			for k := at; k < min(len(memory), at+random.IntN(40)); k++ {
				memory[k] = byte(random.IntN(256))
			}
			at++
		}
		got, err := readMemory(writeMemory(memory))
		if err != nil {
			t.Fatal(err)
		}
		if want := bytes.TrimRight(memory, "\x00"); !bytes.Equal(bytes.TrimRight(got, "\x00"), want) {
			t.Fatalf("got %x, want %x", got, want)
		}
	}
}

// TestWithoutWords: the overlay drops the words for pages, keeps the words the
// phone shows, and still compiles.
func TestWithoutWords(t *testing.T) {
	root := tree(t, map[string]string{
		"go.mod":          "module example\n\ngo 1.24\n",
		"calc/calc.go":    "package calc\n\ntype Input struct{ Label, Help string }\ntype Worksheet struct{ ID, Purpose string; Inputs []Input }\n",
		"calc/words/w.go": "package words\n\nfunc Join(a, b string) string { return a + b }\n",
		"calc/catalog/a.go": `package catalog

import ("example/calc"; "example/calc/words")

var A = &calc.Worksheet{ID: "alpha", Purpose: words.Join("purpose ", "of alpha"), Inputs: inputs()}

func inputs() []calc.Input {
	in := func(label, help string) calc.Input { return calc.Input{Label: label, Help: help} }
	return []calc.Input{{Label: "label one", Help: "help one"}, in("label two", "help two")}
}
`,
		"wasm/main.go": "package main\n\nimport \"example/calc/catalog\"\n\nfunc main() {}\n\n//go:wasmexport f\nfunc f(i int32) int32 { a := catalog.A; return int32(len(a.ID) + len(a.Purpose) + len(a.Inputs[i].Label) + len(a.Inputs[i].Help)) }\n",
	})
	before, err := os.ReadFile(filepath.Join(root, "calc", "catalog", "a.go"))
	if err != nil {
		t.Fatal(err)
	}
	m, _ := build(t, root, "off")
	for _, word := range []string{"help one", "help two", "of alpha"} {
		if bytes.Contains(m.Bytes, []byte(word)) {
			t.Errorf("the module holds %q, which only pages show", word)
		}
	}
	for _, word := range []string{"label one", "label two"} {
		if !bytes.Contains(m.Bytes, []byte(word)) {
			t.Errorf("the module lacks %q", word)
		}
	}
	if after, _ := os.ReadFile(filepath.Join(root, "calc", "catalog", "a.go")); !bytes.Equal(before, after) {
		t.Error("the source file was changed")
	}
}
