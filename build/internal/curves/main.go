// Command curves fits the saturation curves of calc/property/curve to the equations of state.
//
//	go run ./build/internal/curves -write    writes calc/property/curve/data.go anew
//	go run ./build/internal/curves           fits anew, compares with that file and fails on a difference
package main

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"changeout/calc/property/curve"
	"changeout/calc/property/refrigerant"
)

func main() {
	write := flag.Bool("write", false, "write the file instead of comparing")
	flag.Parse()
	if err := run(*write); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(write bool) error {
	path, err := committed()
	if err != nil {
		return err
	}
	got, err := generate(list())
	if err != nil {
		return err
	}
	if write {
		return os.WriteFile(path, got, 0o644)
	}
	if err := compare(path, got); err != nil {
		return err
	}
	fmt.Println("the fitted curves are as committed")
	return nil
}

// committed finds the file of the curves.
func committed() (string, error) {
	out, err := exec.Command("go", "list", "-f", "{{.Dir}}", "changeout/calc/property/curve").Output()
	if err != nil {
		return "", fmt.Errorf("go list: %w", err)
	}
	return filepath.Join(strings.TrimSpace(string(out)), "data.go"), nil
}

// list gives the refrigerants that get curves. Helium, oxygen and argon are no charge; nor is nitrogen, but systems are purged
// and tested with it.
func list() []*refrigerant.Refrigerant {
	var list []*refrigerant.Refrigerant
	for _, r := range refrigerant.All() {
		if r.Critical.T > 213.15 || r.Name == "R-728" {
			list = append(list, r)
		}
	}
	return list
}

// compare names the first line that differs.
func compare(path string, got []byte) error {
	want, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	a, b := bytes.Split(got, []byte("\n")), bytes.Split(want, []byte("\n"))
	for i := 0; i < len(a) && i < len(b); i++ {
		if !bytes.Equal(a[i], b[i]) {
			return fmt.Errorf("%s:%d: the equations of state give another curve; if that is meant: go generate ./calc/property/curve\n  committed  %.120s\n  fitted now %.120s", path, i+1, b[i], a[i])
		}
	}
	if len(a) != len(b) {
		return fmt.Errorf("%s has %d lines, %d are fitted now; if that is meant: go generate ./calc/property/curve", path, len(b), len(a))
	}
	return nil
}

// Kinds of series, in the order of package curve.
const (
	bubble = iota
	liquid
	vapor
	dew
	kinds
)

// The error of the vapour's density and of the dew pressure holds that of the bubble pressure, which is fitted first.
var tolerance = [kinds]float64{0.55e-6, 0.95e-6, 0.95e-6, 0.95e-6}

// fit is the curves of one refrigerant.
type fit struct {
	name                  string
	critical, tLow, tHigh float64
	series                []series
	worst                 []float64
}

func (f *fit) record() []byte {
	b := number(nil, uint64(math.Round(f.critical*1000)))
	b = number(b, uint64(math.Round(f.tLow*100)))
	for kind, s := range f.series {
		b = append(b, encode(s, kind)...)
	}
	return b
}

// generate makes the file.
func generate(list []*refrigerant.Refrigerant) ([]byte, error) {
	var fits []fit
	for _, r := range list {
		e, err := newFitter(r)
		if err != nil {
			return nil, err
		}
		f, err := e.fit()
		if err != nil {
			return nil, err
		}
		if err := e.measure(&f); err != nil {
			return nil, err
		}
		fits = append(fits, f)
	}
	return file(fits), nil
}

// fitter samples one refrigerant.
type fitter struct {
	r            *refrigerant.Refrigerant
	critical     float64
	tLow, tHigh  float64
	middle, half float64
	nodes        [kinds][degree + 1]float64
}

func newFitter(r *refrigerant.Refrigerant) (*fitter, error) {
	tLow, tHigh := r.Range()
	reduced := curve.MaxReducedTPure
	if len(r.Components) > 1 {
		reduced = curve.MaxReducedT
	}
	e := &fitter{r: r}
	// Rounded inward, so that the curve does not leave the range of the equations.
	e.critical = math.Floor(tHigh/reduced*1000) / 1000
	e.tLow = math.Ceil(max(tLow, min(198.15, e.critical/2))*100-1e-6) / 100
	e.tHigh = reduced * e.critical
	high, low := math.Sqrt(1-reduced), math.Sqrt(1-e.tLow/e.critical)
	e.middle, e.half = (high+low)/2, (low-high)/2
	for k := range degree + 1 {
		v, err := e.sample(node(k))
		if err != nil {
			return nil, err
		}
		for kind := range v {
			e.nodes[kind][k] = v[kind]
		}
	}
	return e, nil
}

// temperature at x, K; rounding at the ends of the range is cut off.
func (e *fitter) temperature(x float64) float64 {
	s := e.middle + e.half*x
	return min(max(e.critical*(1-s*s), e.tLow), e.tHigh)
}

// sample gives the four logarithms at x.
func (e *fitter) sample(x float64) (v [kinds]float64, err error) {
	T := e.temperature(x)
	b, err := e.r.BubbleAtT(T)
	if err != nil {
		return v, fmt.Errorf("%s: bubble point at %v K: %w", e.r.Name, T, err)
	}
	d, err := e.r.DewAtT(T)
	if err != nil {
		return v, fmt.Errorf("%s: dew point at %v K: %w", e.r.Name, T, err)
	}
	return [kinds]float64{math.Log(b.P), math.Log(b.RhoLiquid), math.Log(d.RhoVapor * T), math.Log(d.P)}, nil
}

// fit finds the series. Those of the vapour are taken relative to the bubble pressure as stored.
func (e *fitter) fit() (fit, error) {
	f := fit{name: e.r.Name, critical: e.critical, tLow: e.tLow, tHigh: e.tHigh}
	n := kinds
	if len(e.r.Components) == 1 {
		n = dew
	}
	var stored []float64 // ln p'
	for kind := range n {
		y := e.nodes[kind]
		if kind == vapor || kind == dew {
			for k := range y {
				y[k] -= sum(stored, node(k))
			}
		}
		s, ok := quantise(interpolate(&y), tolerance[kind], kind)
		if !ok {
			return f, fmt.Errorf("%s: no series of kind %d with at most %d terms is within %.2g", e.r.Name, kind, maxTerms, tolerance[kind])
		}
		if kind == bubble {
			stored = s.floats()
		}
		f.series = append(f.series, s)
	}
	return f, nil
}

// measure compares the series as stored with the equations on a grid, ends included.
func (e *fitter) measure(f *fit) error {
	const grid = 150
	f.worst = make([]float64, len(f.series))
	for i := 0; i <= grid; i++ {
		x := 2*float64(i)/grid - 1
		v, err := e.sample(x)
		if err != nil {
			return err
		}
		p := sum(f.series[bubble].floats(), x)
		for kind, s := range f.series {
			got := p
			if kind != bubble {
				got = sum(s.floats(), x)
			}
			if kind == vapor || kind == dew {
				got += p
			}
			f.worst[kind] = max(f.worst[kind], math.Abs(got-v[kind]))
		}
	}
	for kind, w := range f.worst {
		if !(w < curve.Tolerance) {
			return fmt.Errorf("%s: series of kind %d is off by %.2g, allowed %.2g", f.name, kind, w, curve.Tolerance)
		}
	}
	return nil
}
