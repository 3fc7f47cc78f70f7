package refrigerant

import (
	"fmt"
	"math"
	"testing"
	"time"

	"changeout/calc/property/saturation"
)

func TestScan(t *testing.T) {
	t0 := time.Now()
	n := 0
	bad := 0
	for _, r := range All() {
		if err := r.engine.prepare(); err != nil {
			fmt.Println(r.Name, "PREPARE", err, r.engine.tMin, r.engine.tMax)
		}
		w := r.engine.take()
		nfirst := 0
		for _, k := range []saturation.Kind{saturation.Bubble, saturation.Dew} {
			last := 0.0
			for i := 0; i <= 60; i++ {
				T := r.engine.tMin + (r.engine.tMax-r.engine.tMin)*float64(i)/60
				n++
				w.saturation.Scratch(k, T)
				if !w.saturation.Newton(k, 0) {
					nfirst++
				}
				st, err := w.saturation.AtT(k, T)
				if err != nil {
					fmt.Println(r.Name, k, "T", T, err)
					bad++
					continue
				}
				if !(st.P > last) {
					fmt.Println(r.Name, k, "NOT MONOTONE", T, st.P, last)
				}
				last = st.P
				st2, err := w.saturation.AtP(k, st.P, r.engine.tMin, r.engine.tMax)
				if err != nil || !(math.Abs(st2.T/T-1) < 1e-9) {
					fmt.Println(r.Name, k, "P", T, st2.T, err)
					bad++
				}
			}
		}
		if nfirst > 0 {
			fmt.Println(r.Name, "first fails", nfirst)
		}
	}
	fmt.Println(n, bad, time.Since(t0))
}
