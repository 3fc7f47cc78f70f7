package hold

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"
)

// finite walks a value and reports the first NaN or infinity in it.
func finite(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return path
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if s := finite(v.Field(i), path+"."+v.Type().Field(i).Name); s != "" {
				return s
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if s := finite(v.Index(i), path+"[]"); s != "" {
				return s
			}
		}
	}
	return ""
}

func checkResult(t *testing.T, name string, r Result) {
	t.Helper()
	if s := finite(reflect.ValueOf(r), "Result"); s != "" {
		t.Errorf("%s: %s is not finite", name, s)
	}
	if !(r.Inflow.Low <= r.Inflow.Best && r.Inflow.Best <= r.Inflow.High) {
		t.Errorf("%s: inflow %v is out of order", name, r.Inflow)
	}
	switch r.Verdict {
	case Tight:
		if !(r.Inflow.High < r.InflowLimit) {
			t.Errorf("%s: tight with an upper bound of %g, limit %g", name, r.Inflow.High, r.InflowLimit)
		}
	case Moisture, Leak, LeakAndMoisture, Undetermined:
	default:
		t.Errorf("%s: verdict %q", name, r.Verdict)
	}
	sum := 0.0
	for i, c := range r.Candidates {
		sum += c.Weight
		if i > 0 && c.Score < r.Candidates[i-1].Score {
			t.Errorf("%s: candidates out of order", name)
		}
	}
	if len(r.Candidates) > 0 && !(math.Abs(sum-1) < 1e-9) {
		t.Errorf("%s: weights sum to %g", name, sum)
	}
}

// Another origin of time must change nothing but the times.
func TestTimeOrigin(t *testing.T) {
	for i := range 20 {
		r := rand.New(rand.NewPCG(5, uint64(i)))
		log, c, _, _ := draw(tuned, r, kinds[i]).record(r)
		a, err := Analyse(log, c)
		if err != nil {
			t.Fatal(err)
		}
		checkResult(t, kinds[i], a)
		moved := Log{Pressure: log.Pressure, Ambient: log.Ambient}
		for _, v := range log.Time {
			moved.Time = append(moved.Time, v+86400*365)
		}
		b, err := Analyse(moved, c)
		if err != nil {
			t.Fatal(err)
		}
		// The sum of time and origin rounds at 4e-9 s; over a minute that is 1e-10.
		if a.Verdict != b.Verdict || !(math.Abs(a.Inflow.High-b.Inflow.High) <= 1e-4*a.Inflow.High+1e-9) {
			t.Errorf("%s: origin changes %s %v to %s %v", kinds[i], a.Verdict, a.Inflow, b.Verdict, b.Inflow)
		}
	}
}

// The same log must give the same answer, and must not be changed.
func TestRepeatable(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	log, c, _, _ := draw(tuned, r, "leak-and-moist").record(r)
	keep := append([]float64(nil), log.Pressure...)
	a, _ := Analyse(log, c)
	b, _ := Analyse(log, c)
	if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(keep, log.Pressure) {
		t.Error("Analyse is not repeatable or changes its input")
	}
}

// Garbage must give an error or a finite result, never a panic, never "tight" from noise.
func TestGarbage(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for i := range 600 {
		n := 3 + r.IntN(60)
		if i%40 == 0 {
			n = 3000
		}
		var l Log
		at := 0.0
		size := math.Pow(10, 6*r.Float64()-1)
		for k := range n {
			at += math.Pow(10, 4*r.Float64()-1)
			if i%7 == 0 {
				at = float64(k) * 60
			}
			l.Time = append(l.Time, at)
			p := size * r.Float64()
			switch i % 6 {
			case 1:
				p = size
			case 2:
				p = size * math.Exp(3*r.NormFloat64())
			case 3:
				p = float64(r.IntN(3)) * size
			case 4:
				p = 0
			}
			l.Pressure = append(l.Pressure, math.Min(p, MaxPressure))
			if i%3 == 0 {
				a := 250 + 90*r.Float64()
				if r.IntN(4) == 0 {
					a = math.NaN()
				}
				l.Ambient = append(l.Ambient, a)
			}
		}
		c := conditions()
		if i%5 == 0 {
			c.AmbientStart = 250 + 90*r.Float64()
			c.Volume = r.Float64()
		}
		if i%10 == 0 {
			c.AmbientEnd = 250 + 90*r.Float64()
		}
		res, err := Analyse(l, c)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) {
				t.Errorf("log %d: error of type %T", i, err)
			}
			continue
		}
		checkResult(t, "garbage", res)
		if res.Verdict == Tight && (i%6 == 0 || i%6 == 2) && size > 100*micron {
			t.Errorf("log %d: noise of size %g Pa called tight", i, size)
		}
	}
}

// Dropping the tail of a log row by row must never panic, and must never turn a plain leak tight.
func TestEveryLength(t *testing.T) {
	for _, kind := range []string{"leak", "moist", "leak-masked", "moist-pool"} {
		r := rand.New(rand.NewPCG(8, 8))
		w := draw(tuned, r, kind)
		w.times = every(7200, 120)
		w.hold = 7200
		log, c, _, _ := w.record(r)
		for n := MinRows; n <= len(log.Time); n++ {
			l := Log{Time: log.Time[:n], Pressure: log.Pressure[:n]}
			if log.Ambient != nil {
				l.Ambient = log.Ambient[:n]
			}
			res, err := Analyse(l, c)
			if err != nil {
				t.Fatalf("%s, %d rows: %v", kind, n, err)
			}
			checkResult(t, kind, res)
			if res.Verdict == Tight && w.leak >= res.InflowLimit {
				t.Errorf("%s, %d rows: called tight", kind, n)
			}
		}
	}
}

func TestInputErrors(t *testing.T) {
	good := func() (Log, Conditions) {
		return Log{Time: []float64{0, 60, 120, 180}, Pressure: []float64{50, 51, 52, 53}, Ambient: []float64{293, 293, 293, 293}}, conditions()
	}
	cases := []struct {
		name  string
		spoil func(*Log, *Conditions)
		fault Fault
		row   int
	}{
		{"time stands still", func(l *Log, _ *Conditions) { l.Time[2] = 60 }, TimeNotAfter, 3},
		{"time goes back", func(l *Log, _ *Conditions) { l.Time[3] = 90 }, TimeNotAfter, 4},
		{"time missing", func(l *Log, _ *Conditions) { l.Time[1] = math.NaN() }, TimeNotFinite, 2},
		{"pressure missing", func(l *Log, _ *Conditions) { l.Pressure[1] = math.NaN() }, PressureMissing, 2},
		{"pressure negative", func(l *Log, _ *Conditions) { l.Pressure[3] = -1 }, PressureOutside, 4},
		{"pressure of the wrong unit", func(l *Log, _ *Conditions) { l.Pressure[0] = 4e5 }, PressureOutside, 1},
		{"ambient in °C", func(l *Log, _ *Conditions) { l.Ambient[2] = 20 }, AmbientOutside, 3},
		{"two rows", func(l *Log, _ *Conditions) { *l = Log{Time: l.Time[:2], Pressure: l.Pressure[:2]} }, FewRows, 0},
		{"lengths", func(l *Log, _ *Conditions) { l.Pressure = l.Pressure[:3] }, LengthsDiffer, 0},
		{"ambient length", func(l *Log, _ *Conditions) { l.Ambient = l.Ambient[:3] }, LengthsDiffer, 0},
		{"too many rows", func(l *Log, _ *Conditions) {
			*l = Log{Time: make([]float64, MaxRows+1), Pressure: make([]float64, MaxRows+1)}
		}, ManyRows, 0},
		{"limit below target", func(_ *Log, c *Conditions) { c.Limit = c.Target }, LimitOutside, 0},
		{"target missing", func(_ *Log, c *Conditions) { c.Target = math.NaN() }, LimitOutside, 0},
		{"inflow limit negative", func(_ *Log, c *Conditions) { c.InflowLimit = -1 }, InflowOutside, 0},
		{"volume missing", func(_ *Log, c *Conditions) { c.Volume = math.NaN() }, VolumeOutside, 0},
		{"half a minute", func(l *Log, _ *Conditions) { l.Time = []float64{0, 10, 20, 30} }, SpanOutside, 0},
		{"start temperature", func(_ *Log, c *Conditions) { c.AmbientStart = 20 }, AmbientOutside, 0},
	}
	for _, c := range cases {
		l, cond := good()
		c.spoil(&l, &cond)
		_, err := Analyse(l, cond)
		var e *Error
		if !errors.As(err, &e) || e.Fault != c.fault || e.Row != c.row || e.Error() == "" {
			t.Errorf("%s: got %v, want fault %d in row %d", c.name, err, c.fault, c.row)
		}
	}
	l, cond := good()
	l.Time = []float64{0, 60, 60, 180}
	l.Pressure = []float64{50, 51, 51, 53}
	if _, err := Analyse(l, cond); err != nil {
		t.Errorf("a row written twice: got %v, want no error", err)
	}
}
