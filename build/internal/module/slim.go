package module

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// slimEdition is part of the cache key: change it with what slim does.
const slimEdition = "5"

// slim takes out of a linked module what only a stack trace needs: the names
// of functions and of source files, and the tables that lead from an
// instruction to its file and line. Nobody reads a stack trace on a phone, and
// together they are a sixth of what it would download. Execution does not use
// them: frames are walked, and the collector finds pointers, by other tables,
// which stay. A trace that is printed all the same shows empty names.
//
// The layout is that of the Go linker since 1.20 (runtime/symtab.go, pcHeader
// and _func). A module with another layout is returned as it is, with an
// error that says so.
func slim(wasm []byte) ([]byte, error) {
	sections, err := wasmSections(wasm)
	if err != nil {
		return wasm, err
	}
	memory, err := memoryOf(sections)
	if err != nil {
		return wasm, err
	}
	tables, err := locate(memory)
	if err != nil {
		return wasm, err
	}
	sections, stubbed, err := stub(sections, memory, tables)
	if err != nil {
		return wasm, err
	}
	if err := blank(memory, tables, stubbed.live); err != nil {
		return wasm, err
	}
	for i, s := range sections {
		if s.id == dataSection {
			sections[i].body = writeMemory(memory)
		}
	}
	return joinSections(sections), nil
}

// memoryOf lays out what a module writes into its memory at the start.
func memoryOf(sections []section) ([]byte, error) {
	for _, s := range sections {
		if s.id == dataSection {
			return readMemory(s.body)
		}
	}
	return nil, errLayout
}

var errLayout = errors.New("the module's tables are not laid out as Go 1.20 to 1.26 does; it is kept whole")

// header of the function tables: runtime.pcHeader on a 64-bit-pointer target.
const (
	tableMagic = 0xfffffff1
	headerSize = 72
	funcSize   = 44 // runtime._func, before its two arrays
)

// systemPrefix is all of a name that execution reads: the scheduler counts
// goroutines whose first function's name starts so apart from the others.
const systemPrefix = "runtime."

// Tables that nothing reads on this target (internal/abi/symtab.go): wasm has
// no asynchronous preemption, and the values of arguments are for traces.
const (
	unsafePoint      = 0
	liveArguments    = 3
	argumentInfo     = 5 // of funcdata
	argumentLiveInfo = 6
)

// functionTables is where the function tables lie in memory.
type functionTables struct {
	start, end                          int
	names, units, files, pctab, functab int
	functions                           int
}

// locate finds the function tables and checks that they are laid out as known.
func locate(memory []byte) (functionTables, error) {
	var t functionTables
	at := findHeader(memory)
	if at < 0 {
		return t, errLayout
	}
	word := func(i int) int { return at + int(binary.LittleEndian.Uint64(memory[at+i*8:])) }
	t = functionTables{start: at, names: word(4), units: word(5), files: word(6), pctab: word(7), functab: word(8),
		functions: int(binary.LittleEndian.Uint64(memory[at+8:]))}
	ordered := at < t.names && t.names <= t.units && t.units <= t.files && t.files <= t.pctab && t.pctab < t.functab
	if !ordered || t.functions < 1 || t.functions > 1<<20 || t.functab+8*t.functions+4 > len(memory) {
		return t, errLayout
	}
	for i := range t.functions {
		f := t.function(memory, i)
		if f+funcSize > len(memory) {
			return t, errLayout
		}
		t.end = max(t.end, f+funcSize+4*(count(memory, f)+int(memory[f+funcSize-1])))
	}
	if t.end > len(memory) {
		return t, errLayout
	}
	return t, nil
}

// function returns the address of the i-th runtime._func.
func (t *functionTables) function(memory []byte, i int) int {
	return t.functab + int(binary.LittleEndian.Uint32(memory[t.functab+8*i+4:]))
}

// code returns the place of the i-th function in the code section.
func (t *functionTables) code(memory []byte, i int) int {
	return int(binary.LittleEndian.Uint32(memory[t.functab+8*i:]) >> addressShift)
}

// count returns the number of pcdata tables of the function at f.
func count(memory []byte, f int) int { return int(binary.LittleEndian.Uint32(memory[f+4*7:])) }

// blank zeroes the parts of the function tables that only stack traces read,
// and all that describes functions that can no longer run.
func blank(memory []byte, t functionTables, live []bool) error {
	used := make([]bool, t.functab-t.pctab)
	used[0] = true
	before := -1
	for i := range t.functions {
		f := t.function(memory, i)
		values, pointers := count(memory, f), int(memory[f+funcSize-1])
		if k := t.code(memory, i); k < len(live) && !live[k] && before >= 0 {
			clear(memory[f : f+funcSize+4*(values+pointers)])
			copy(memory[t.functab+8*i+4:t.functab+8*i+8], memory[t.functab+8*before+4:])
			continue
		}
		before = i
		field := func(n int) []byte { return memory[f+4*n : f+4*n+4] }
		name := t.names + int(binary.LittleEndian.Uint32(field(1)))
		if name > t.units {
			return errLayout
		}
		clear(field(1))
		if bytes.HasPrefix(memory[name:t.units], []byte(systemPrefix)) {
			field(1)[0] = 1
		}
		clear(field(5))  // pcfile
		clear(field(6))  // pcln
		clear(field(8))  // cuOffset
		clear(field(9))  // startLine
		keep := []int{4} // pcsp: how deep the frame is
		for k := range values {
			if k == unsafePoint || k == liveArguments {
				clear(field(11 + k))
			} else {
				keep = append(keep, 11+k)
			}
		}
		for _, n := range keep {
			if err := markTable(memory[t.pctab:t.functab], used, int(binary.LittleEndian.Uint32(field(n)))); err != nil {
				return err
			}
		}
		for k := range pointers {
			if k == argumentInfo || k == argumentLiveInfo {
				copy(field(11+values+k), "\xff\xff\xff\xff") // none
			}
		}
	}
	clear(memory[t.names:t.pctab])
	copy(memory[t.names+1:], systemPrefix+"\x00")
	for i, u := range used {
		if !u {
			memory[t.pctab+i] = 0
		}
	}
	coarsen(memory, t)
	return nil
}

// The table that leads from an address to its function has a bucket for every
// 4096 bytes of address space (runtime.findfuncbucket); here each function has
// 16. The runtime walks forward from what a bucket says, so a bucket may say a
// function some places before: then long runs of buckets are equal and cost
// nothing to download.
const (
	bucketSize   = 20
	bucketsEach  = 1 << addressShift / 4096
	coarseness   = 32  // functions walked at most, when a stack grows
	bucketsField = 152 // of runtime.moduledata, after the header pointer and six slices
)

// coarsen rounds the buckets down. A module whose table is not where it is
// expected keeps it.
func coarsen(memory []byte, t functionTables) {
	for at := 0; at+bucketsField+8 <= len(memory); at += 8 {
		if binary.LittleEndian.Uint64(memory[at:]) != uint64(t.start) || binary.LittleEndian.Uint64(memory[at+8:]) != uint64(t.names) {
			continue
		}
		table := int(binary.LittleEndian.Uint64(memory[at+bucketsField:]))
		n := (t.functions - 1) * bucketsEach
		if table < 0 || table+n*bucketSize > len(memory) {
			return
		}
		for i := range n {
			b := memory[table+i*bucketSize:]
			if v := binary.LittleEndian.Uint32(b); v > uint32(i/bucketsEach) {
				return // not what it should be
			}
		}
		for i := range n {
			b := memory[table+i*bucketSize:]
			binary.LittleEndian.PutUint32(b, binary.LittleEndian.Uint32(b)/coarseness*coarseness)
		}
		return
	}
}

// findHeader returns the address of the function tables, or -1.
func findHeader(memory []byte) int {
	for at := 0; at+headerSize <= len(memory); at += 8 {
		if binary.LittleEndian.Uint32(memory[at:]) == tableMagic && memory[at+4] == 0 && memory[at+5] == 0 && memory[at+6] == 1 && memory[at+7] == 8 {
			return at
		}
	}
	return -1
}

// markTable marks the bytes of one table of pctab: pairs of variable-length
// numbers, ended by a zero that is not the first.
func markTable(tab []byte, used []bool, at int) error {
	if at == 0 {
		return nil // no table
	}
	for first := true; ; first = false {
		if at >= len(tab) {
			return errLayout
		}
		if tab[at] == 0 && !first {
			used[at] = true
			return nil
		}
		for range 2 {
			for {
				if at >= len(tab) {
					return errLayout
				}
				used[at] = true
				at++
				if tab[at-1]&0x80 == 0 {
					break
				}
			}
		}
	}
}
