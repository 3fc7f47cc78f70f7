package module

import "encoding/binary"

// Once the functions of stub are empty, whatever only they called is dead too.
// The Go linker decided what to keep before that, so the decision is made
// again here: a function stays if it is exported, if a function that stays
// calls it or holds its address, or if its address stands anywhere in memory
// outside the function tables (closures, interface tables, methods).

// The linker numbers functions from firstFunction; the address of a function is
// its number shifted by 16 bits (cmd/link/internal/wasm, funcValueOffset).
const (
	firstFunction = 0x1000
	addressShift  = 16
)

// reachable marks the functions that may run, by their place in the code
// section. imported is the number of functions before them.
func reachable(bodies [][]byte, imported int, exported []int, memory []byte, tables functionTables) ([]bool, error) {
	live := make([]bool, len(bodies))
	var queue []int
	mark := func(i int) {
		if i >= 0 && i < len(bodies) && !live[i] {
			live[i] = true
			queue = append(queue, i)
		}
	}
	// address takes a value that may be a function's address, absolute or from
	// the start of the code.
	address := func(v uint64) {
		if v&(1<<addressShift-1) == 0 {
			mark(int(v>>addressShift) - firstFunction)
			mark(int(v >> addressShift))
		}
	}
	for _, e := range exported {
		mark(e - imported)
	}
	for at := 0; at+4 <= len(memory); at += 4 {
		if at >= tables.start && at < tables.end {
			continue
		}
		if v := binary.LittleEndian.Uint32(memory[at:]); v != 0 {
			address(uint64(v))
		}
	}
	for len(queue) > 0 {
		i := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		err := scan(bodies[i], func(called int) { mark(called - imported) }, func(v int64) {
			address(uint64(v))
			mark(int(v) - firstFunction)
		})
		if err != nil {
			return nil, err
		}
	}
	return live, nil
}

// scan walks the instructions of a function body and reports the functions it
// calls and the integer constants it holds (core specification, section 5.4).
func scan(body []byte, call func(int), constant func(int64)) error {
	r := reader{b: body}
	for range r.unsigned() { // groups of locals: a count and a type
		r.unsigned()
		r.skip(1)
	}
	for len(r.b) > 0 && !r.bad {
		op := r.byte()
		switch {
		case op == 0x02 || op == 0x03 || op == 0x04: // block, loop, if: a type
			r.signed()
		case op == 0x0c || op == 0x0d || op >= 0x20 && op <= 0x26: // br, br_if, local, global, table
			r.unsigned()
		case op == 0x0e: // br_table
			for range r.unsigned() + 1 {
				r.unsigned()
			}
		case op == 0x10:
			call(int(r.unsigned()))
		case op == 0x11: // call_indirect: a type and a table
			r.unsigned()
			r.unsigned()
		case op >= 0x28 && op <= 0x3e: // loads and stores: alignment and offset
			r.unsigned()
			r.unsigned()
		case op == 0x3f || op == 0x40: // memory.size, memory.grow
			r.skip(1)
		case op == 0x41 || op == 0x42: // i32.const, i64.const
			constant(r.signed())
		case op == 0x43:
			r.skip(4)
		case op == 0x44:
			r.skip(8)
		case op == 0xfc:
			switch sub := r.unsigned(); {
			case sub <= 7: // saturating conversions
			case sub == 10: // memory.copy
				r.skip(2)
			case sub == 11: // memory.fill
				r.skip(1)
			default:
				return errWasm
			}
		case op <= 0x01 || op == 0x05 || op == 0x0b || op == 0x0f || op == 0x1a || op == 0x1b || op >= 0x45 && op <= 0xc4: // no operand
		default:
			return errWasm
		}
	}
	if r.bad {
		return errWasm
	}
	return nil
}

// reader takes numbers off the front of a body; bad is set when it ends early.
type reader struct {
	b   []byte
	bad bool
}

func (r *reader) skip(n int) {
	if n > len(r.b) {
		r.bad, n = true, len(r.b)
	}
	r.b = r.b[n:]
}

func (r *reader) byte() byte {
	if len(r.b) == 0 {
		r.bad = true
		return 0
	}
	c := r.b[0]
	r.b = r.b[1:]
	return c
}

func (r *reader) unsigned() uint64 {
	v, n := binary.Uvarint(r.b)
	if n <= 0 {
		r.bad, r.b = true, nil
		return 0
	}
	r.b = r.b[n:]
	return v
}

func (r *reader) signed() int64 {
	v, n := signed(r.b)
	if n <= 0 {
		r.bad, r.b = true, nil
		return 0
	}
	r.b = r.b[n:]
	return v
}
