package module

import (
	"encoding/binary"
	"strings"
)

// What the Go runtime links only to describe a crash, to trace the scheduler
// or to profile. Nobody can ask for any of it on a phone, so stub replaces the
// bodies by the one instruction that stops the module, as the crash itself
// would. An entry that ends in "*" stands for all names that start so.
//
// Names are as the linker writes them in the name section: runtime.(*T).f is
// runtime.__T_.f.
var describers = []string{
	// descriptions of a crash
	"runtime.print*", "runtime.traceback*", "runtime.goroutineheader", "runtime.hexdump*", "runtime.__hexdumper_.*",
	"runtime.dopanic_m", "runtime.panicwrap", "runtime.badPointer", "runtime.dumpgstatus", "runtime.gcDumpObject",
	"runtime.__mspan_.reportZombies", "runtime.__Frames_.*", "runtime.fpunwindExpand", "runtime.fpTracebackPartialExpand",
	// tracing and debugging switched on by an environment variable
	"runtime.schedtrace*", "runtime.checkFinalizersAndCleanups*", "runtime.dumpScanStats", "runtime.dumpStacksRec", "runtime.dumpTypesRec",
	"runtime.traceAdvance*", "runtime.traceStack", "runtime.traceReadCPU", "runtime.traceSyncBatch", "runtime.traceRegisterLabelsAndReasons",
	"runtime.traceLocker.[A-Z]*", "runtime.traceLocker.e*", "runtime.traceWriter.*", "runtime.traceEventWriter.*", "runtime.makeTraceFrame*",
	"runtime.__traceMap_.*", "runtime.__traceRegionAlloc_.*", "runtime.__traceStackTable_.*", "runtime.__traceStringTable_.*", "runtime.__traceTypeTable_.*",
	"runtime.__traceBuf_.*",
	// profiles
	"runtime.__profBuf_.*", "runtime.stkbucket", "runtime.saveblockevent", "runtime.doRecordGoroutineProfile*",
	// types of plugins, which a phone does not load
	"runtime.typesEqual",
}

// describes reports whether a function is in the list above.
func describes(name string) bool {
	for _, d := range describers {
		d, open := strings.CutSuffix(d, "*")
		capital := false
		if d, capital = strings.CutSuffix(d, "[A-Z]"); capital {
			open = len(name) > len(d) && name[len(d)] >= 'A' && name[len(d)] <= 'Z'
			if !open {
				continue
			}
		}
		if name == d || open && strings.HasPrefix(name, d) {
			return true
		}
	}
	return false
}

// trap is a function body without locals that stops at once.
var trap = []byte{0, 0x00, endOp}

// stub empties the functions that only describe, and drops the name section
// that it found them by. It returns the names it emptied.
func stub(sections []section) ([]section, []string, error) {
	var names map[int]string
	imported, code := 0, -1
	kept := sections[:0:0]
	for _, s := range sections {
		switch s.id {
		case customSection:
			if body, ok := cutName(s.body, "name"); ok {
				names = functionNames(body)
				continue
			}
		case importSection:
			n, _ := binary.Uvarint(s.body) // the linker imports functions only
			imported = int(n)
		case codeSection:
			code = len(kept)
		}
		kept = append(kept, s)
	}
	if names == nil || code < 0 {
		return sections, nil, errWasm
	}
	body := kept[code].body
	count, k := binary.Uvarint(body)
	if k <= 0 {
		return sections, nil, errWasm
	}
	out := append([]byte(nil), body[:k]...)
	body = body[k:]
	var emptied []string
	for i := range int(count) {
		n, k := binary.Uvarint(body)
		if k <= 0 || uint64(len(body)-k) < n {
			return sections, nil, errWasm
		}
		function := body[k : k+int(n)]
		if name := names[imported+i]; describes(name) {
			emptied = append(emptied, name)
			function = trap
		}
		out = binary.AppendUvarint(out, uint64(len(function)))
		out = append(out, function...)
		body = body[k+int(n):]
	}
	kept[code].body = out
	return kept, emptied, nil
}

// cutName takes a custom section's name off its body, if it is this one.
func cutName(body []byte, name string) ([]byte, bool) {
	n, k := binary.Uvarint(body)
	if k <= 0 || uint64(len(body)-k) < n || string(body[k:k+int(n)]) != name {
		return nil, false
	}
	return body[k+int(n):], true
}

// functionNames reads the function names of a name section (core
// specification, appendix "Name Section"); nil if it cannot be read.
func functionNames(body []byte) map[int]string {
	for len(body) > 1 {
		id := body[0]
		n, k := binary.Uvarint(body[1:])
		if k <= 0 || uint64(len(body)-1-k) < n {
			return nil
		}
		sub := body[1+k : 1+k+int(n)]
		body = body[1+k+int(n):]
		if id != 1 {
			continue
		}
		names := map[int]string{}
		count, k := binary.Uvarint(sub)
		if k <= 0 {
			return nil
		}
		sub = sub[k:]
		for range count {
			index, k := binary.Uvarint(sub)
			if k <= 0 {
				return nil
			}
			size, j := binary.Uvarint(sub[k:])
			if j <= 0 || uint64(len(sub)-k-j) < size {
				return nil
			}
			names[int(index)] = string(sub[k+j : k+j+int(size)])
			sub = sub[k+j+int(size):]
		}
		return names
	}
	return nil
}
