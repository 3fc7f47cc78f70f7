package water

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"strconv"
	"testing"
)

// TestPublished compares with the rows of testdata/published/water. Tolerances are relative and stand in the file, with the reason.
func TestPublished(t *testing.T) {
	f, err := os.Open("../../../testdata/published/water/saturation.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	scale := map[string]float64{"K": 1, "Pa": 1, "MPa": 1e6}
	functions := map[string]func(float64) (float64, error){
		"ice_pressure": IcePressure, "liquid_pressure": LiquidPressure, "saturation_pressure": SaturationPressure,
		"boiling_temperature": BoilingTemperature, "if97_pressure": SaturationPressureIF97, "if97_temperature": SaturationTemperatureIF97,
	}
	if len(rows) < 20 {
		t.Fatalf("got %d rows, want at least 20", len(rows))
	}
	for _, row := range rows[1:] {
		number := func(i int) float64 {
			v, err := strconv.ParseFloat(row[i], 64)
			if err != nil {
				t.Fatalf("%v: %v", row, err)
			}
			return v
		}
		fn := functions[row[0]]
		if fn == nil || scale[row[2]] == 0 || scale[row[4]] == 0 {
			t.Fatalf("unknown quantity or unit in %v", row)
		}
		got, err := fn(number(1) * scale[row[2]])
		if err != nil {
			t.Errorf("%v: %v", row, err)
			continue
		}
		want, tol := number(3)*scale[row[4]], number(5)
		if d := math.Abs(got-want) / want; !(d <= tol) {
			t.Errorf("%s(%s %s): got %.10g, want %.10g, relative difference %.2g, tolerance %.2g, source %s %s", row[0], row[1], row[2], got, want, d, tol, row[6], row[7])
		}
	}
}

// The inverse must give back the temperature. 1e-11: the saturation line loses about two digits in ln p near the critical point.
func TestInverse(t *testing.T) {
	for k := 50.0; k < CriticalTemperature; k += 0.37 {
		p, err := SaturationPressure(k)
		if err != nil {
			t.Fatal(err)
		}
		got, err := BoilingTemperature(p)
		if err != nil || !(math.Abs(got-k) <= 1e-11*k) {
			t.Fatalf("BoilingTemperature(SaturationPressure(%g)) got %.15g, difference %.2g, tolerance %.2g, error %v", k, got, got-k, 1e-11*k, err)
		}
	}
	for _, p := range []float64{TriplePressure, math.Nextafter(TriplePressure, 0)} {
		if got, err := BoilingTemperature(p); err != nil || !(math.Abs(got-TripleTemperature) < 1e-4) {
			t.Errorf("BoilingTemperature(%g) got %g, want the triple point, error %v", p, got, err)
		}
	}
}

// Two independent equations of IAPWS for the same line. R7-97 states agreement within the uncertainty of the skeleton table,
// 0.03 % in pressure; the largest difference found here is smaller.
func TestAgainstIF97(t *testing.T) {
	for k := TripleTemperature; k < CriticalTemperature; k += 0.5 {
		a, _ := LiquidPressure(k)
		b, err := SaturationPressureIF97(k)
		if err != nil || !(math.Abs(a-b) <= 3e-4*b) {
			t.Fatalf("%g K: Wagner and Pruss %g Pa, IF97 %g Pa, tolerance 0.03 %%", k, a, b)
		}
		back, err := SaturationTemperatureIF97(b)
		if err != nil || !(math.Abs(back-k) < 1e-7) {
			t.Fatalf("%g K: IF97 gives back %g K", k, back)
		}
	}
}

// Rising all along; ice and liquid meet at the triple point (the two equations differ there by 1e-6).
func TestShape(t *testing.T) {
	last := 0.0
	for k := 50.0; k < CriticalTemperature; k += 0.05 {
		p, err := SaturationPressure(k)
		if err != nil || !(p > last) {
			t.Fatalf("%g K: %g Pa after %g Pa, %v", k, p, last, err)
		}
		last = p
	}
	i, _ := IcePressure(TripleTemperature)
	l, _ := LiquidPressure(TripleTemperature)
	if !(math.Abs(i-l) < 1e-6*i) {
		t.Errorf("triple point: ice %.9g, liquid %.9g Pa", i, l)
	}
}

func TestRange(t *testing.T) {
	for _, k := range []float64{math.NaN(), math.Inf(1), -1, 0, 49.99, 647.1} {
		if p, err := SaturationPressure(k); !errors.Is(err, ErrTemperature) || p == p {
			t.Errorf("SaturationPressure(%g) got %g, %v, want NaN and ErrTemperature", k, p, err)
		}
	}
	if _, err := LiquidPressure(273.15); !errors.Is(err, ErrTemperature) {
		t.Errorf("LiquidPressure below the triple point: got %v", err)
	}
	if _, err := IcePressure(273.17); !errors.Is(err, ErrTemperature) {
		t.Errorf("IcePressure above the triple point: got %v", err)
	}
	for _, p := range []float64{math.NaN(), math.Inf(1), -1, 0, 22.1e6} {
		if k, err := BoilingTemperature(p); !errors.Is(err, ErrPressure) || k == k {
			t.Errorf("BoilingTemperature(%g) got %g, %v, want NaN and ErrPressure", p, k, err)
		}
	}
}

func BenchmarkBoilingTemperature(b *testing.B) {
	for b.Loop() {
		if _, err := BoilingTemperature(66.66); err != nil {
			b.Fatal(err)
		}
	}
}
