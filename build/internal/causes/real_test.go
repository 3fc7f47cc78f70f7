package causes

import (
	"os"
	"testing"

	"changeout/build/internal/page"
	"changeout/calc/catalog"
	"changeout/calc/cause"
)

// real reads the model of the handbook.
func real(t testing.TB) *Model {
	t.Helper()
	book, problems := page.Read(page.Layer{FS: os.DirFS("../../../content"), Name: "content"})
	for _, p := range problems {
		t.Log(p)
	}
	m, problems := Read(book, catalog.Lookup)
	for _, p := range problems {
		t.Error(p)
	}
	if m == nil {
		t.Fatal("the handbook has no cause model")
	}
	return m
}

// engine is the model as the phone has it.
func engine(t testing.TB) *cause.Model {
	t.Helper()
	m, _, fault := cause.Read(real(t).Engine())
	if fault != nil {
		t.Fatal(fault)
	}
	return m
}

func TestRealModelReads(t *testing.T) {
	m := real(t)
	t.Logf("%d causes, %d mechanisms, %d checks in %d places, %d combinations, %d bytes", len(m.Causes), len(m.Mechanisms), len(m.Checks), len(m.Places), m.states(), len(m.Data()))
}

func BenchmarkAssess(b *testing.B) {
	m := engine(b)
	facts := make(cause.Facts, len(m.Findings))
	for i := range facts {
		if i%4 == 0 {
			facts[i] = cause.State(1 - i/4%2*2)
		}
	}
	for b.Loop() {
		cause.Assess(m, facts)
	}
}
