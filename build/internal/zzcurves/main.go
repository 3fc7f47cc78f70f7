package main

import (
	"bytes"
	"fmt"
	"math"
	"os"

	"github.com/andybalholm/brotli"

	"changeout/calc/property/refrigerant"
)

func main() {
	var all []byte
	var lens, total = 0, 0
	var cols [40][]byte
	type rec struct{kind int; s series}
	var recs []rec
	var dcols [4][40][]byte
	var prev [4][64]int64
	for _, r := range refrigerant.All() {
		tLow, tHigh := r.Range()
		tLow = max(tLow, min(198.15, 0.5*r.Critical.T))
		s0, s1 := math.Sqrt(1-tHigh/(1.01*r.Critical.T)), math.Sqrt(1-tLow/(1.01*r.Critical.T))
		at := func(x float64) float64 { s := (s0+s1)/2 + x*(s1-s0)/2; return min(max((1.01*r.Critical.T)*(1-s*s), tLow), tHigh) }
		RM := 8.31446261815324 / r.MolarMass
		var bub []float64
		pb := func(x float64) (float64, error) { p, err := r.BubbleAtT(at(x)); return math.Log(p.P / r.Critical.P), err }
		kinds := []func(x float64) (float64, error){
			pb,
			func(x float64) (float64, error) { p, err := r.BubbleAtT(at(x)); return math.Log(p.RhoLiquid / r.Critical.Rho), err },
			func(x float64) (float64, error) { p, err := r.DewAtT(at(x)); return math.Log(p.RhoVapor * at(x) * RM / r.Critical.P) - sum(bub, x), err },
			func(x float64) (float64, error) { p, err := r.DewAtT(at(x)); return math.Log(p.P / r.Critical.P) - sum(bub, x), err },
		}
		if len(r.Components) == 1 {
			kinds = kinds[:3]
		}
		fmt.Printf("%-12s", r.Name)
		for i, f := range kinds {
			c, err := interpolate(f)
			if err != nil {
				fmt.Println(r.Name, err)
				os.Exit(1)
			}
			tol := 0.95e-6
			if i == 0 { tol = 0.55e-6 }
			s, w := quantise(c, tol)
			if i == 0 {
				bub = s.floats()
			}
			b := encode(s)
			all = append(all, b...)
			lens += len(s.Terms)
			total++
			recs=append(recs,rec{i,s})
			var cur [64]int64
			for k, t := range s.Terms {
				cur[k]=t
				dcols[i][k] = append(dcols[i][k], encode(series{0, []int64{t-prev[i][k]}})[2:]...)
			}
			prev[i]=cur
			for k, t := range s.Terms {
				cols[k] = append(cols[k], encode(series{0, []int64{t}})[2:]...)
			}
			fmt.Printf(" %2d/%d %.2g %d |", len(s.Terms), s.Bits, w, len(b))
		}
		fmt.Println()
	}
	fmt.Println(total, "curves", lens, "terms", len(all), "bytes, brotli", br(all), br(bytes.Join(cols[:], nil)))
	var d [][]byte
	for i := range dcols { d=append(d,dcols[i][:]...) }
	var mean [4][64]float64
	var cnt [4]float64
	for _, r := range recs { cnt[r.kind]++; for k,t:=range r.s.floats() { mean[r.kind][k]+=t } }
	for i:=range mean { for k:=range mean[i] { mean[i][k]/=cnt[i] } }
	var tb []byte
	var tc [64][]byte
	var tk [4][]byte
	for _, r := range recs {
		u:=series{Bits:r.s.Bits}
		for k,t:=range r.s.Terms { u.Terms=append(u.Terms, t-int64(math.Round(math.Ldexp(mean[r.kind][k],r.s.Bits)))) }
		tb=append(tb,encode(u)...)
		tk[r.kind]=append(tk[r.kind],encode(u)...)
		for k,t:=range u.Terms { tc[k]=append(tc[k],encode(series{0,[]int64{t}})[2:]...) }
	}
	fmt.Println("template", len(tb), br(tb), br(bytes.Join(tk[:],nil)), br(bytes.Join(tc[:],nil)))
	fmt.Println("delta", br(bytes.Join(d, nil)))
}

func br(b []byte) int {
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, 11)
	w.Write(b)
	w.Close()
	return out.Len()
}
