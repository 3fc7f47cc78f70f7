package airside_test

import (
	"testing"
	"fmt"

	"changeout/calc/formula/airside"
	"changeout/calc/property/moistair"
	"changeout/calc/property/refrigerant"
)

func TestX(t *testing.T) {
	ref, _ := refrigerant.Lookup("R-410A")
	const p = 101325
	W := moistair.WetBulb(299.85, 292.55, p)
	c := &airside.Coil{T: 299.85, W: W, P: p, Mass: 0.0627}
	// choose capacity so Ts = 12
	h := moistair.Enthalpy(299.85, W) - moistair.Enthalpy(285.15, moistair.Saturated(285.15, p))
	if err := c.Rated(0.0627*.8*h, .2, 280.15); err != nil {
		t.Fatal(err)
	}
	k, err := airside.NewCompressor(ref, 280.15)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []float64{1, .9, .8, .7, .6, .5, .4, .3, .2} {
		T, q, ok := c.Settle(f, k)
		fmt.Printf("%.1f %.1f %.3f %v | %.1f %.0f\n", f, T-273.15, q/c.Heat, ok, c.Hold(f, c.Heat)-273.15, k.Pressure(T))
	}
	fmt.Println(c.FlowFor(c.Heat*k.Share(273.15), 273.15), c.FlowFor(c.Heat, 273.15))
}

func BenchmarkCompressor(b *testing.B) {
	ref, _ := refrigerant.Lookup("R-448A")
	for b.Loop() {
		airside.NewCompressor(ref, 280.15)
	}
}
func BenchmarkSettle(b *testing.B) {
	ref, _ := refrigerant.Lookup("R-410A")
	W := moistair.WetBulb(299.85, 292.55, 101325)
	c := &airside.Coil{T: 299.85, W: W, P: 101325, Mass: 0.0627}
	c.Rated(1000, .2, 280.15)
	k, _ := airside.NewCompressor(ref, 280.15)
	for b.Loop() {
		c.Settle(.5, k)
	}
}
