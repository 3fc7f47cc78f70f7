package saturation_test

import (
	"fmt"
	"testing"

	"changeout/calc/property/fluid"
	"changeout/calc/property/mixture"
	"changeout/calc/property/saturation"
)

func TestTry(t *testing.T) {
	for _, n := range []string{"R-32", "R-22", "R-744", "R-290", "R-134a", "R-1234yf", "R-718"} {
		f, _ := fluid.Lookup(n)
		m, _ := mixture.New(f)
		s := saturation.New(m, []float64{1}, 0.75*f.ReducingT)
		st, err := s.AtT(saturation.Bubble, 298.15)
		st2, err2 := s.AtP(saturation.Dew, st.P, f.MinT, f.CriticalT)
		fmt.Println(n, st, err, st2.T, err2)
	}
}
