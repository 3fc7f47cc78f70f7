//go:build wasip1

package main

import _ "unsafe" // for go:linkname

// The module never collects garbage: an answer leaves well under a megabyte
// behind, and the page starts a fresh instance between two answers once the
// memory has grown past its limit (site/module/instance.ts). Nothing is lost by
// that, since an answer depends on its request alone. In exchange no key press
// waits for a collection, and the collector and the write barriers, 50 KB of
// the download, are left out (build/internal/module).
func init() { setGCPercent(-1) }

// setGCPercent is debug.SetGCPercent without its package, which would bring
// fmt and os to every phone.
//
//go:linkname setGCPercent runtime/debug.setGCPercent
func setGCPercent(percent int32) int32
