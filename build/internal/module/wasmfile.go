package module

import (
	"encoding/binary"
	"errors"
)

// The parts of the WebAssembly binary format (core specification, section 5)
// that slim needs: sections, and the data section's segments.

const (
	customSection = 0
	importSection = 2
	exportSection = 7
	codeSection   = 10
	dataSection   = 11
	i32Const      = 0x41
	endOp         = 0x0b
	wasmPreamble  = 8
)

var errWasm = errors.New("the module is not a WebAssembly file that can be read; it is kept whole")

type section struct {
	id   byte
	body []byte
}

// wasmSections splits a file into its sections. The bodies share its memory.
func wasmSections(wasm []byte) ([]section, error) {
	if len(wasm) < wasmPreamble || string(wasm[:4]) != "\x00asm" {
		return nil, errWasm
	}
	var list []section
	for rest := wasm[wasmPreamble:]; len(rest) > 0; {
		n, k := binary.Uvarint(rest[1:])
		if k <= 0 || uint64(len(rest)-1-k) < n {
			return nil, errWasm
		}
		body := rest[1+k:]
		list = append(list, section{rest[0], body[:n]})
		rest = body[n:]
	}
	return list, nil
}

func joinSections(list []section) []byte {
	out := []byte("\x00asm\x01\x00\x00\x00")
	for _, s := range list {
		out = append(out, s.id)
		out = binary.AppendUvarint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out
}

// readMemory lays the segments of the data section out in one memory image.
func readMemory(body []byte) ([]byte, error) {
	count, k := binary.Uvarint(body)
	if k <= 0 {
		return nil, errWasm
	}
	body = body[k:]
	var memory []byte
	for range count {
		if len(body) < 2 || body[0] != 0 || body[1] != i32Const {
			return nil, errWasm // not an active segment of memory 0 at a constant address
		}
		at, k := signed(body[2:])
		if k <= 0 || at < 0 || len(body) < 2+k+1 || body[2+k] != endOp {
			return nil, errWasm
		}
		body = body[3+k:]
		n, k := binary.Uvarint(body)
		if k <= 0 || uint64(len(body)-k) < n || at > 1<<30 {
			return nil, errWasm
		}
		if need := int(at) + int(n); need > len(memory) {
			memory = append(memory, make([]byte, need-len(memory))...)
		}
		copy(memory[at:], body[k:k+int(n)])
		body = body[k+int(n):]
	}
	if len(body) != 0 {
		return nil, errWasm
	}
	return memory, nil
}

// gap is the run of zeros from which a new segment is shorter than the zeros.
const gap = 16

// writeMemory cuts a memory image into segments without long runs of zeros:
// memory starts as zeros.
func writeMemory(memory []byte) []byte {
	var segments []byte
	count := 0
	for at := 0; at < len(memory); {
		if memory[at] == 0 {
			at++
			continue
		}
		end, zeros := at, 0
		for i := at; i < len(memory) && zeros < gap; i++ {
			if memory[i] != 0 {
				end, zeros = i+1, 0
			} else {
				zeros++
			}
		}
		segments = append(segments, 0, i32Const)
		segments = appendSigned(segments, int64(at))
		segments = append(segments, endOp)
		segments = binary.AppendUvarint(segments, uint64(end-at))
		segments = append(segments, memory[at:end]...)
		count++
		at = end
	}
	return append(binary.AppendUvarint(nil, uint64(count)), segments...)
}

// signed reads a signed LEB128 number and returns its length, 0 if it is cut.
func signed(b []byte) (int64, int) {
	var v int64
	for i, c := range b[:min(len(b), 10)] {
		v |= int64(c&0x7f) << (7 * i)
		if c&0x80 == 0 {
			if c&0x40 != 0 && i < 9 {
				v |= -1 << (7 * (i + 1))
			}
			return v, i + 1
		}
	}
	return 0, 0
}

func appendSigned(out []byte, v int64) []byte {
	for {
		c := byte(v & 0x7f)
		v >>= 7
		if v == 0 && c&0x40 == 0 || v == -1 && c&0x40 != 0 {
			return append(out, c)
		}
		out = append(out, c|0x80)
	}
}
