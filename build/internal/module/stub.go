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

// The garbage collector's marking and sweeping. The module switches collection
// off when it starts (wasm/heap.go), so none of it can run; the allocator,
// which gives memory back before that, and what starts the idle goroutines stay.
var collectors = []string{
	"runtime.gcStart*", "runtime.gcMark*", "runtime.gcDrain*", "runtime.gcAssistAlloc*", "runtime.gcParkAssist", "runtime.gcWakeAllAssists", "runtime.gcFlushBgCredit",
	"runtime.gcBgMark*", "runtime.gcSweep", "runtime.__gcWork_.*", "runtime.__gcControllerState_.startCycle", "runtime.__gcControllerState_.endCycle",
	"runtime.__gcControllerState_.findRunnableGCWorker", "runtime.markroot*", "runtime.scanblock", "runtime.scanstack*", "runtime.scanframeworker",
	"runtime.scanConservative", "runtime.greyobject", "runtime.shade", "runtime.wbBufFlush*", "runtime.bulkBarrierPreWrite*", "runtime.sweepone", "runtime.__sweepLocked_.*",
	"runtime.__mheap_.reclaimChunk", "runtime.suspendG", "runtime.resumeG", "runtime.freeSpecial",
}

// unused reports whether a function is in one of the lists above.
func unused(name string) bool { return listed(describers, name) || listed(collectors, name) }

func listed(list []string, name string) bool {
	for _, d := range list {
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

// stubs is what stub did: the names it emptied because they are listed, and
// which functions can still run, by their place in the code section.
type stubs struct {
	listed []string
	live   []bool
}

// stub empties the functions that are listed as unused, then those that only
// they called, and drops the name section that it found them by.
func stub(sections []section, memory []byte, tables functionTables) ([]section, stubs, error) {
	var names map[int]string
	var exported []int
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
		case exportSection:
			exported = exportedFunctions(s.body)
		case codeSection:
			code = len(kept)
		}
		kept = append(kept, s)
	}
	if names == nil || code < 0 || exported == nil {
		return sections, stubs{}, errWasm
	}
	bodies, err := functionBodies(kept[code].body)
	if err != nil {
		return sections, stubs{}, err
	}
	var emptied []string
	for i := range bodies {
		if name := names[imported+i]; unused(name) {
			emptied = append(emptied, name)
			bodies[i] = trap
		}
	}
	live, err := reachable(bodies, imported, exported, memory, tables)
	if err != nil {
		return sections, stubs{}, err
	}
	out := binary.AppendUvarint(nil, uint64(len(bodies)))
	for i, b := range bodies {
		if !live[i] {
			b = trap
		}
		out = binary.AppendUvarint(out, uint64(len(b)))
		out = append(out, b...)
	}
	kept[code].body = out
	return kept, stubs{emptied, live}, nil
}

// functionBodies splits a code section. The bodies share its memory.
func functionBodies(body []byte) ([][]byte, error) {
	r := reader{b: body}
	n := r.unsigned()
	if r.bad || n > uint64(len(body)) {
		return nil, errWasm
	}
	bodies := make([][]byte, n)
	for i := range bodies {
		size := r.unsigned()
		if r.bad || size > uint64(len(r.b)) {
			return nil, errWasm
		}
		bodies[i] = r.b[:size]
		r.skip(int(size))
	}
	return bodies, nil
}

// exportedFunctions returns the indices of the functions a module exports.
func exportedFunctions(body []byte) []int {
	r := reader{b: body}
	var list []int
	for range r.unsigned() {
		r.skip(int(min(r.unsigned(), uint64(len(body)))))
		kind, index := r.byte(), r.unsigned()
		if r.bad {
			return nil
		}
		if kind == 0 {
			list = append(list, int(index))
		}
	}
	return list
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
