package catalog_test

import (
	"testing"

	"changeout/calc"
	"changeout/calc/catalog"
)

// BenchmarkExample measures one answer of each worksheet's worked example on
// this machine; wasm has the same in the module.
func BenchmarkExample(b *testing.B) {
	for _, w := range catalog.All() {
		b.Run(w.ID, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				calc.Evaluate(w, calc.Request{Worksheet: w.ID, Fields: w.Example})
			}
		})
	}
}
