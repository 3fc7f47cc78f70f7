package gridtest

import (
	"testing"

	"changeout/calc/property/refrigerant"
)

// BenchmarkBesideCoolProp measures the states that testdata/reference/timing.py measures with CoolProp; make bench prints both. A bubble
// or dew point gives pressure and both densities, a vapour or liquid at temperature and pressure all its properties, its phase found.
func BenchmarkBesideCoolProp(b *testing.B) {
	const n = 64 // states of each kind, the same in timing.py
	for _, name := range []string{"R-32", "R-134a", "R-410A", "R-448A", "R-454B"} {
		r, ok := refrigerant.Lookup(name)
		if !ok {
			b.Fatal(name)
		}
		for _, kind := range []struct {
			name string
			at   func(i float64) error
		}{
			{"bubble", func(i float64) error { _, err := r.BubbleAtT(235 + i); return err }},
			{"dew", func(i float64) error { _, err := r.DewAtT(235 + i); return err }},
			{"vapor", func(i float64) error { _, err := r.AtTP(280+0.5*i, 3e5); return err }},
			{"liquid", func(i float64) error { _, err := r.AtTP(250+0.5*i, 3e6); return err }},
		} {
			if kind.name == "dew" && len(r.Components) == 1 {
				continue // the bubble point
			}
			b.Run(name+"/"+kind.name, func(b *testing.B) {
				b.ReportAllocs()
				for i := 0; b.Loop(); i++ {
					if err := kind.at(float64(i % n)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
