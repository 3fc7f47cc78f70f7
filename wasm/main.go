//go:build wasip1

// Command wasm is the module that phones load: exports only, no arithmetic.
//
// The page asks for a buffer with request, writes the request text into it,
// calls evaluate (a worksheet) or assess (a failure) and reads the reply at the address that reply gives. The texts
// are described in packages wire and cause.
package main

import (
	"unsafe"

	"changeout/calc"
	"changeout/calc/catalog"
	"changeout/calc/cause"
	"changeout/wasm/wire"
)

var (
	input  []byte
	output []byte
)

func main() {}

// request returns the address of a buffer of n bytes for the request text.
//
//go:wasmexport request
func request(n int32) int32 {
	if n < 1 {
		n = 1
	}
	if cap(input) < int(n) {
		input = make([]byte, n)
	}
	input = input[:n]
	return address(input)
}

// evaluate runs the request of n bytes and returns the length of the reply.
//
//go:wasmexport evaluate
func evaluate(n int32) int32 {
	if n < 0 || int(n) > len(input) {
		n = int32(len(input))
	}
	req := wire.DecodeRequest(string(input[:n]))
	w := catalog.Lookup(req.Worksheet)
	if w == nil {
		output = []byte(wire.EncodeAnswer(catalog.Unknown(req.Worksheet)))
	} else {
		output = []byte(wire.EncodeAnswer(calc.Evaluate(w, req)))
	}
	return int32(len(output))
}

// assess weighs findings against root causes: the text of n bytes is the model
// and the facts as package cause reads them. It returns the length of the reply.
//
//go:wasmexport assess
func assess(n int32) int32 {
	if n < 0 || int(n) > len(input) {
		n = int32(len(input))
	}
	output = []byte(cause.Answer(string(input[:n])))
	return int32(len(output))
}

// reply returns the address of the last reply.
//
//go:wasmexport reply
func reply() int32 { return address(output) }

func address(b []byte) int32 { return int32(uintptr(unsafe.Pointer(unsafe.SliceData(b)))) }
