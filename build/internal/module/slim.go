package module

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// slimEdition is part of the cache key: change it with what slim does.
const slimEdition = "4"

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
	tables, err := blank(memory)
	if err != nil {
		return wasm, err
	}
	if sections, _, err = stub(sections, memory, tables); err != nil {
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

// blank zeroes the parts of the function tables that only stack traces read,
// and returns where the tables lie.
func blank(memory []byte) (tables [2]int, err error) {
	at := findHeader(memory)
	if at < 0 {
		return tables, errLayout
	}
	word := func(i int) int { return at + int(binary.LittleEndian.Uint64(memory[at+i*8:])) }
	functions := int(binary.LittleEndian.Uint64(memory[at+8:]))
	names, units, files, pctab, functab := word(4), word(5), word(6), word(7), word(8)
	if !(at < names && names <= units && units <= files && files <= pctab && pctab <= functab && functab+8*functions+4 <= len(memory)) {
		return tables, errLayout
	}
	end := functab
	used := make([]bool, functab-pctab)
	used[0] = true
	for i := range functions {
		f := functab + int(binary.LittleEndian.Uint32(memory[functab+8*i+4:]))
		if f+funcSize > len(memory) {
			return tables, errLayout
		}
		field := func(n int) []byte { return memory[f+4*n : f+4*n+4] }
		name := names + int(binary.LittleEndian.Uint32(field(1)))
		values, pointers := int(binary.LittleEndian.Uint32(field(7))), int(memory[f+funcSize-1])
		end = max(end, f+funcSize+4*(values+pointers))
		if name > units || f+funcSize+4*(values+pointers) > len(memory) {
			return tables, errLayout
		}
		clear(field(1))
		if bytes.HasPrefix(memory[name:units], []byte(systemPrefix)) {
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
			if err := markTable(memory[pctab:functab], used, int(binary.LittleEndian.Uint32(field(n)))); err != nil {
				return tables, err
			}
		}
		for k := range pointers {
			if k == argumentInfo || k == argumentLiveInfo {
				copy(field(11+values+k), "\xff\xff\xff\xff") // none
			}
		}
	}
	clear(memory[names:pctab])
	copy(memory[names+1:], systemPrefix+"\x00")
	for i, u := range used {
		if !u {
			memory[pctab+i] = 0
		}
	}
	return [2]int{at, end}, nil
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
