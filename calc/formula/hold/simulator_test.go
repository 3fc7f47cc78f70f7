package hold

import (
	"math"
	"math/rand/v2"
	"sort"
)

// The simulator integrates the physics, not the curves that the analysis fits: two volumes joined by a conductance that
// grows with pressure, a choked leak into either, water in oil with a finite amount (well mixed, or diffusing through a slab),
// free water or ice limited by the heat that reaches it, refrigerant in oil, a pipe that lags the air, and a gauge with noise,
// wander, display steps and a top of range. Amounts are kept as the pressure (Pa) they would have in the whole system at the reference
// temperature.

const referenceTemperature = 295.15

type reservoir struct {
	level     float64 // Pa over it when untouched, at the reference temperature
	inventory float64 // Pa in the whole system if all of it came out
	tau       float64 // s
	diffusion bool
	perKelvin float64 // 0: like water; otherwise the relative change per kelvin
	far       bool
	cells     [12]float64
	left      float64
}

type pool struct {
	inventory float64 // Pa
	tau       float64 // s
	heat      float64 // Pa/s, most that the heat flow to it can evaporate
	offset    float64 // K the spot is colder than the pipe
	far       bool
	left      float64
}

type world struct {
	near           float64 // share of the volume at the gauge
	link           float64 // 1/s at 50 Pa: conductance over the whole volume
	viscous        float64 // share of the link that grows with pressure
	dry1, dry2     float64 // Pa at isolation, dry gas
	wet1, wet2     float64 // Pa at isolation, water
	leak           float64 // Pa/s
	leakFar        bool
	oil            []reservoir
	pools          []pool
	air            func(t float64) float64 // K
	pipeLag        float64                 // s
	hold           float64                 // s
	pumpRows       int
	pumpFrom       float64 // Pa at the first pumping row
	spike, reopen  bool
	noise          float64 // relative to (p + 50 micron)
	wander         float64 // relative over the hold
	step           func(p float64) float64
	top            float64 // Pa
	times          []float64
	ambient        TemperatureKind
	ambientNoise   float64
	ambientRounded float64
}

func relativeSaturation(t float64) float64 { return saturation(t) / saturation(referenceTemperature) }

// run integrates to each of the times (s after isolation) and returns the true pressure at the gauge and the pipe temperature.
func (w *world) run(times []float64) (pressure, pipe []float64) {
	n1, n2 := [2]float64{w.dry1, w.wet1}, [2]float64{w.dry2, w.wet2}
	far := 1 - w.near
	oil := append([]reservoir(nil), w.oil...)
	pools := append([]pool(nil), w.pools...)
	for i := range oil {
		oil[i].left = oil[i].inventory
		for k := range oil[i].cells {
			oil[i].cells[k] = 1
		}
	}
	for i := range pools {
		pools[i].left = pools[i].inventory
	}
	temp := w.air(0)
	at := 0
	const dt = 2.0
	add := func(isFar bool, species int, amount float64) { // amount in Pa of the whole system
		if isFar {
			n2[species] += amount / far
		} else {
			n1[species] += amount / w.near
		}
	}
	for t := 0.0; at < len(times); t += dt {
		f := temp / referenceTemperature
		for at < len(times) && times[at] <= t+1e-9 {
			pressure = append(pressure, (n1[0]+n1[1])*f)
			pipe = append(pipe, temp)
			at++
		}
		sat := relativeSaturation(temp)
		mean := (n1[0] + n1[1] + n2[0] + n2[1]) / 2
		link := w.link * (1 - w.viscous + w.viscous*mean/50)
		link = min(link, 0.2*min(w.near, far)) // keeps the explicit step stable
		for s := range 2 {
			flow := link * (n2[s] - n1[s]) * dt
			n1[s] += flow / w.near
			n2[s] -= flow / far
		}
		add(w.leakFar, 0, w.leak*dt)
		for i := range oil {
			o := &oil[i]
			local := n1[1]
			if o.far {
				local = n2[1]
			}
			local *= f
			scale := sat
			species := 1
			if o.perKelvin != 0 {
				scale = math.Exp(o.perKelvin * (temp - referenceTemperature))
				species = 0
				local = 0 // refrigerant: back pressure kept out; the amount is finite
			}
			if o.diffusion {
				// Slab, sealed below, surface in equilibrium with the gas; tau is its slowest time constant.
				n := len(o.cells)
				d := 4 / (math.Pi * math.Pi * o.tau) * float64(n*n)
				surface := local / (o.level * scale)
				var flux [13]float64
				for k := 1; k < n; k++ {
					flux[k] = d * (o.cells[k] - o.cells[k-1])
				}
				flux[0] = 2 * d * (o.cells[0] - surface)
				for k := range n {
					o.cells[k] += dt * (flux[k+1] - flux[k])
				}
				add(o.far, species, dt*flux[0]/float64(n)*o.inventory)
				continue
			}
			drive := o.level*scale*o.left/o.inventory - local
			if species == 0 {
				drive = o.level * scale * o.left / o.inventory
			}
			out := drive * dt / o.tau
			if out > o.left {
				out = o.left
			}
			o.left -= out
			add(o.far, species, out)
		}
		for i := range pools {
			p := &pools[i]
			local := n1[1]
			if p.far {
				local = n2[1]
			}
			out := (saturation(temp-p.offset) - local*f) * dt / p.tau
			out = min(out, p.heat*dt, p.left)
			p.left -= out
			add(p.far, 1, out)
		}
		temp += (w.air(t+dt) - temp) * dt / w.pipeLag
	}
	return pressure, pipe
}

// settled is the pressure the system would settle at without the leak at a temperature, Pa.
func (w *world) settled(temp float64) float64 {
	dry := w.near*w.dry1 + (1-w.near)*w.dry2
	wet := w.near*w.wet1 + (1-w.near)*w.wet2
	// Water shares itself between gas and reservoirs: find the pressure at which the amounts balance.
	amount := wet
	for _, o := range w.oil {
		if o.perKelvin != 0 {
			dry += o.inventory
		} else {
			amount += o.inventory
		}
	}
	free, cap := 0.0, math.Inf(1)
	for _, p := range w.pools {
		free += p.inventory
		cap = min(cap, saturation(temp-p.offset)*referenceTemperature/temp)
	}
	amount += free
	lo, hi := 0.0, 1e5
	for range 80 {
		x := (lo + hi) / 2
		total := x
		for _, o := range w.oil {
			if o.perKelvin == 0 {
				total += o.inventory * x * temp / referenceTemperature / (o.level * relativeSaturation(temp))
			}
		}
		if total > amount {
			hi = x
		} else {
			lo = x
		}
	}
	return (dry + min(lo, cap)) * temp / referenceTemperature
}

// slowest is the longest time constant of a release that matters (more than 20 micron), s.
func (w *world) slowest() float64 {
	s := 0.0
	for _, o := range w.oil {
		if w.releaseOf(o) > 20*micron {
			t := o.tau
			if !o.diffusion {
				t = o.tau / (1 + o.level/o.inventory)
			}
			s = max(s, t)
		}
	}
	for _, p := range w.pools {
		s = max(s, p.tau, min(p.inventory, saturation(referenceTemperature))/p.heat)
	}
	return s
}

func (w *world) releaseOf(o reservoir) float64 {
	if o.perKelvin != 0 {
		return o.inventory
	}
	wet := w.near*w.wet1 + (1-w.near)*w.wet2
	level := o.level * relativeSaturation(w.air(0))
	return max(0, (level-wet)/(1+level/o.inventory))
}

// release is the size of all releases, Pa.
func (w *world) release() float64 {
	t := w.air(0)
	return w.settled(t) - (w.near*(w.dry1+w.wet1)+(1-w.near)*(w.dry2+w.wet2))*t/referenceTemperature
}

// record makes the log and the conditions that a technician would hand in.
func (w *world) record(r *rand.Rand) (Log, Conditions, []float64, []float64) {
	p, pipe := w.run(w.times)
	var log Log
	n := len(p)
	for k := range w.pumpRows {
		// The pump pulls the pressure down to the first pressure of the hold.
		u := float64(k) / float64(w.pumpRows)
		log.Time = append(log.Time, float64(k)*60)
		log.Pressure = append(log.Pressure, w.read(r, p[0]*math.Pow(w.pumpFrom/p[0], 1-u), 0))
	}
	shift := float64(w.pumpRows) * 60
	for i := range p {
		log.Time = append(log.Time, w.times[i]+shift)
		log.Pressure = append(log.Pressure, w.read(r, p[i], w.times[i]/w.hold))
	}
	if w.spike && n > 10 {
		k := w.pumpRows + 2 + r.IntN(n-4)
		if r.IntN(2) == 0 {
			log.Pressure[k] = 0
		} else {
			log.Pressure[k] *= 2 + 3*r.Float64()
		}
	}
	if w.reopen && n > 20 {
		// Somebody opens the pump for a tenth of the log, two thirds through; it recovers no further than the first pressure.
		a, b := w.pumpRows+n*2/3, w.pumpRows+n*2/3+n/10+1
		for k := a; k < len(log.Pressure); k++ {
			if k < b {
				log.Pressure[k] = w.read(r, 0.3*p[0], 0)
			} else {
				since := log.Time[k] - log.Time[b]
				at := sort.SearchFloat64s(w.times, since)
				log.Pressure[k] = w.read(r, 0.3*p[0]+(p[min(n-1, at)]-p[0]), 0)
			}
		}
	}
	c := Conditions{AmbientStart: math.NaN(), AmbientEnd: math.NaN(), Target: 500 * micron, Limit: 1000 * micron}
	measure := func(t float64) float64 {
		v := w.air(t) + w.ambientNoise*r.NormFloat64()
		return math.Round((v-273.15)/w.ambientRounded)*w.ambientRounded + 273.15
	}
	switch w.ambient {
	case TemperatureLogged:
		for _, t := range log.Time {
			log.Ambient = append(log.Ambient, measure(max(0, t-shift)))
		}
	case TemperatureEnds:
		c.AmbientStart, c.AmbientEnd = measure(0), measure(w.hold)
	}
	return log, c, p, pipe
}

func (w *world) read(r *rand.Rand, p, u float64) float64 {
	v := p*(1+w.wander*u) + w.noise*(p+50*micron)*r.NormFloat64()
	v = max(v, 0)
	if s := w.step(v); s > 0 {
		v = math.Round(v/s) * s
	}
	return min(v, w.top)
}

// label is what a fair judge who knows the truth, and the quality of the instrument, accepts. It is fixed by the simulated world and
// the way it was recorded, never by what the analysis says.
type label struct {
	class  string
	right  map[Verdict]bool
	clear  bool // a definite verdict is demanded
	hidden bool // a leak under a tenth of the moisture: "moisture" is accepted, and counted apart
}

// judgeTruth labels a world. Rules, fixed before the analysis was tuned:
//
//   - The verdict that matches the truth is right. Limits have a band of ±10 % in the level in which both sides are right.
//   - An inflow of at least the stated limit is a leak. Smaller ones are "small": undetermined or leak are right; tight only if the
//     inflow is less than what the instrument resolves or less than half the limit.
//   - A log is clear-cut when the thing to be seen is several times larger than what the instrument and the temperature can blur:
//     then undetermined is wrong. The blur is the standard deviation of a slope from the number of rows, the noise and the display step,
//     half a display step over the hold, 0.5 % of wander, and 7 % of the pressure per kelvin of temperature that nobody measured,
//     or that was measured but moves in step with time and so cannot be told from an inflow.
//   - Amended after the first runs, because two rules contradicted each other: a clear-cut moisture log may hide up to a tenth of its rise
//     in blur and must still be called moisture, so a leak that adds less than a tenth of the release shown may be called moisture too.
//     (What to do is the same, dry and repeat, and the repeat shows the leak.) Both counts are printed.
//   - A leak is clear-cut only if a release with a time constant of 12 h would have bent visibly in that time: a slower one
//     looks the same to anybody.
func judgeTruth(w *world, p, pipe []float64) label {
	limit := 500 * micron / (12 * 3600)
	pLimit := 1000 * micron
	h := w.hold
	n := len(p)
	mean, most := 0.0, 0.0
	for _, v := range p {
		mean += v / float64(n)
		most = max(most, v)
	}
	last := p[n-1]
	step := w.step(last)
	sigma := math.Hypot(w.noise*(mean+50*micron), step/math.Sqrt(12))
	slope := sigma * math.Sqrt(12/float64(n)) / h
	hours := h / 3600
	swing := 0.0
	for _, t := range pipe {
		swing = max(swing, math.Abs(t-pipe[0]))
	}
	kelvin := 0.0
	switch w.ambient {
	case TemperatureNone:
		kelvin = max(swing, min(0.5*hours, 4))
	case TemperatureEnds:
		kelvin = max(swing, min(0.3*hours, 1))
	case TemperatureLogged:
		kelvin = max(swing, min(0.2*hours, 0.5))
	}
	temp := kelvin * 0.07 * mean / h
	blur := 2.6*math.Sqrt(slope*slope+math.Pow(0.5*step/h, 2)+math.Pow(0.005*mean/h, 2)) + temp

	// What leaves so slowly that a day does not bring the pressure to the limit is tight for a hold test: the level is the one after 24 h.
	release := w.release()
	slow := w.slowest()
	level := w.settled(pipe[0])
	if slow > 0 {
		level -= release * math.Exp(-86400/slow)
	}
	// With the temperature the level moves; within the two the truth is on the edge.
	warm := level * w.settled(pipe[n-1]) / w.settled(pipe[0])
	lower, upper := min(level, warm), max(level, warm)
	leak := w.leak
	bend := leak * h * h / (8 * releaseLongest)
	visible := bend > 4*2.5*sigma/math.Sqrt(float64(n)) || last > 1.3*saturation(pipe[n-1])
	over := last >= w.top

	l := label{right: map[Verdict]bool{}}
	allow := func(v ...Verdict) {
		for _, x := range v {
			l.right[x] = true
		}
	}
	plain := !w.reopen && !over && n >= 8 && h >= 20*60
	switch {
	case leak == 0 && lower < 1.1*pLimit:
		l.class = "tight"
		allow(Tight)
		if upper > 0.9*pLimit || most > pLimit {
			allow(Moisture)
			l.class = "tight-edge"
		}
		l.clear = plain && upper < 0.85*pLimit && most < 0.9*pLimit && (release < 20*micron || slow < h/4) && blur < 0.5*limit
	case leak == 0:
		l.class = "moisture"
		allow(Moisture)
		l.clear = plain && lower > 1.2*pLimit && last > 1.1*pLimit && slow < h/3 && blur < max(0.7*limit, 0.1*(last-p[0])/h)
		if lower < 1.2*pLimit && last < pLimit {
			allow(Tight) // so near, and never passed: the limit was kept
		}
	case leak < limit:
		l.class = "small-leak"
		allow(Leak, Undetermined)
		if upper > 0.9*pLimit || last > pLimit {
			allow(Moisture, LeakAndMoisture)
		}
		if blur > leak || leak < limit/2 {
			allow(Tight)
		}
	default:
		wet := lower > 1.1*pLimit
		shown := release
		if slow > 0 {
			shown = release * (1 - math.Exp(-h/slow))
		}
		l.class = "leak"
		switch {
		case wet && shown > 0.25*leak*h:
			l.class = "leak-and-moisture"
			allow(LeakAndMoisture)
			l.hidden = leak*h < 0.1*shown
			l.clear = plain && leak > 1.5*limit && slow < h/5 && leak*math.Pow(0.7*h, 2)/(8*releaseLongest) > 4*2.5*sigma/math.Sqrt(float64(n)) && blur < 0.3*leak && n >= 10
		case wet || shown > 100*micron:
			l.class = "leak-some-release"
			allow(Leak, LeakAndMoisture)
			l.clear = plain && leak > 1.5*limit && slow < h/5 && visible && blur < 0.3*leak
		default:
			allow(Leak)
			l.clear = plain && leak > 1.5*limit && visible && blur < 0.3*leak
		}
	}
	if !l.clear {
		allow(Undetermined)
	}
	return l
}

// ---- drawing worlds ----

type style struct {
	name                     string
	equalTau                 [2]float64 // s
	releaseTau               [2]float64
	levels                   [2]float64 // micron, moist levels
	leaks                    [2]float64 // micron/min
	holds                    []float64  // min
	steps                    []float64  // micron; negative: growing with pressure, that many times the usual
	noise                    [2]float64
	viscous                  [2]float64
	swings                   [2]float64 // K
	wander                   float64
	start                    [2]float64 // micron
	tops                     []float64  // micron
	pumpShare, rarelyTouched float64
}

var tuned = style{
	name: "tuned", equalTau: [2]float64{8, 180}, releaseTau: [2]float64{300, 5 * 3600}, levels: [2]float64{1250, 6000},
	leaks: [2]float64{0.7, 120}, holds: []float64{10, 15, 20, 30, 30, 45, 60, 60, 90, 120, 180, 240, 480, 720, 960},
	steps: []float64{1, 1, 5, 5, 10, 10, 25, 50, -1}, noise: [2]float64{0.0003, 0.008}, viscous: [2]float64{0, 0.6},
	swings: [2]float64{0.2, 8}, wander: 0.003, start: [2]float64{120, 480}, tops: []float64{12000, 20000, 25000}, pumpShare: 0.1, rarelyTouched: 0.05,
}

// heldOut differs in every distribution. No threshold was tuned on its share of right verdicts.
var heldOut = style{
	name: "held-out", equalTau: [2]float64{15, 300}, releaseTau: [2]float64{200, 9 * 3600}, levels: [2]float64{1150, 9000},
	leaks: [2]float64{0.75, 60}, holds: []float64{12, 25, 30, 40, 60, 75, 100, 150, 300, 600, 840},
	steps: []float64{1, 2, 5, 10, 20, 50, -0.5, -2}, noise: [2]float64{0.0001, 0.012}, viscous: [2]float64{0.3, 0.9},
	swings: [2]float64{0, 12}, wander: 0.005, start: [2]float64{60, 700}, tops: []float64{15000, 19990, 99000}, pumpShare: 0.15, rarelyTouched: 0.08,
}

func between2(r *rand.Rand, b [2]float64) float64 { return b[0] + (b[1]-b[0])*r.Float64() }
func logBetween(r *rand.Rand, b [2]float64) float64 {
	return math.Exp(between2(r, [2]float64{math.Log(b[0]), math.Log(b[1])}))
}

var kinds = []string{"tight", "tight", "tight-equal", "tight-release", "moist", "moist", "moist-diffusion", "moist-pool", "moist-ice", "refrigerant",
	"slow-release", "leak", "leak", "leak", "leak-near", "small-leak", "leak-masked", "leak-and-moist", "leak-and-moist", "leak-refrigerant"}

// draw makes world number i of a style.
func draw(st style, r *rand.Rand, kind string) *world {
	w := &world{near: between2(r, [2]float64{0.1, 0.7}), viscous: between2(r, st.viscous)}
	w.hold = st.holds[r.IntN(len(st.holds))] * 60
	tau := logBetween(r, st.equalTau)
	w.link = w.near * (1 - w.near) / tau
	first := between2(r, st.start) * micron
	share := between2(r, [2]float64{0.15, 0.9})
	w.dry1, w.wet1 = first*(1-share), first*share
	w.dry2, w.wet2 = w.dry1, w.wet1
	uneven := func(jump float64) { // micron the gauge moves when all has evened out
		k := jump * micron / (1 - w.near)
		if first+k < 0.3*first {
			k = -0.7 * first
		}
		w.dry2 = max(0, w.dry1+k*(1-share))
		w.wet2 = max(0, w.wet1+k*share)
	}
	if r.IntN(2) == 0 {
		uneven(between2(r, [2]float64{-60, 180}))
	}
	// Every system keeps some water in its oil, in balance with the gas: it makes the pressure follow the temperature.
	wet := w.near*w.wet1 + (1-w.near)*w.wet2
	w.oil = append(w.oil, reservoir{level: wet, inventory: wet * between2(r, [2]float64{2, 60}), tau: logBetween(r, [2]float64{200, 3000}), far: r.IntN(2) == 0})
	moist := func(diffusion bool) {
		level := logBetween(r, st.levels)*micron + wet
		o := reservoir{level: level, inventory: level * logBetween(r, [2]float64{0.7, 40}), tau: logBetween(r, st.releaseTau), far: r.IntN(2) == 0, diffusion: diffusion}
		if diffusion {
			o.inventory = level * logBetween(r, [2]float64{0.5, 3})
			o.tau = max(o.tau, 2400)
		}
		w.oil[0] = o
	}
	rate := func(b [2]float64) float64 { return logBetween(r, b) * micron / 60 }
	switch kind {
	case "tight-equal":
		uneven(between2(r, [2]float64{80, 350}))
	case "tight-release":
		w.oil[0].level = wet + between2(r, [2]float64{50, 380})*micron
		w.oil[0].inventory = w.oil[0].level * between2(r, [2]float64{3, 40})
		w.oil[0].tau = logBetween(r, st.releaseTau)
	case "moist":
		moist(false)
	case "moist-diffusion":
		moist(true)
	case "moist-pool", "moist-ice":
		p := pool{inventory: logBetween(r, [2]float64{1500, 60000}) * micron, tau: logBetween(r, [2]float64{120, 5400}), heat: logBetween(r, [2]float64{10, 600}) * micron / 60, far: r.IntN(2) == 0}
		if kind == "moist-ice" {
			p.offset = between2(r, [2]float64{22, 36}) // the spot stays frozen
		}
		w.pools = append(w.pools, p)
	case "refrigerant":
		amount := logBetween(r, st.levels) * micron
		w.oil = append(w.oil, reservoir{level: amount, inventory: amount, tau: logBetween(r, st.releaseTau), perKelvin: 0.035, far: r.IntN(2) == 0})
	case "slow-release":
		moist(false)
		w.oil[0].tau = logBetween(r, [2]float64{2, 12}) * w.hold
	case "leak":
		w.leak = rate(st.leaks)
	case "leak-near":
		w.leak = rate([2]float64{0.7, 1.6})
	case "small-leak":
		w.leak = rate([2]float64{0.1, 0.69})
	case "leak-masked":
		w.leak = rate([2]float64{0.7, 8})
		uneven(between2(r, [2]float64{-120, -20}))
	case "leak-and-moist":
		moist(r.IntN(3) == 0)
		w.leak = rate(st.leaks)
	case "leak-refrigerant":
		amount := between2(r, [2]float64{100, 2500}) * micron
		w.oil = append(w.oil, reservoir{level: amount, inventory: amount, tau: logBetween(r, st.releaseTau), perKelvin: 0.035})
		w.leak = rate(st.leaks)
	}
	w.leakFar = r.IntN(2) == 0

	// Weather.
	base := between2(r, [2]float64{283, 306})
	if kind == "moist-ice" {
		base = 295
	}
	// Levels were drawn for the temperature at isolation.
	for i := range w.oil {
		if w.oil[i].perKelvin == 0 {
			w.oil[i].level /= relativeSaturation(base) * base / referenceTemperature
			if w.oil[i].level <= 0 {
				w.oil[i].level = 1
			}
		}
	}
	size := 0.0
	switch r.IntN(4) {
	case 0, 1:
		size = between2(r, [2]float64{0, 0.3})
	case 2:
		size = between2(r, st.swings) * min(1, w.hold/14400)
	case 3:
		size = between2(r, st.swings) * min(1, w.hold/28800)
	}
	if kind == "leak-masked" {
		size = -math.Abs(between2(r, st.swings)) * min(1, w.hold/14400)
	} else if r.IntN(2) == 0 {
		size = -size
	}
	shape := r.IntN(3)
	w.air = func(t float64) float64 {
		u := t / w.hold
		switch shape {
		case 0:
			return base + size*u
		case 1: // night and morning
			return base + size*math.Sin(math.Pi*u)
		}
		return base + size*(1-math.Cos(math.Pi*u))/2
	}
	w.pipeLag = logBetween(r, [2]float64{300, 3000})
	w.ambient = []TemperatureKind{TemperatureNone, TemperatureEnds, TemperatureEnds, TemperatureLogged, TemperatureLogged}[r.IntN(5)]
	w.ambientNoise = between2(r, [2]float64{0, 0.2})
	w.ambientRounded = []float64{0.1, 0.1, 0.5, 1}[r.IntN(4)]

	// Gauge.
	w.noise = logBetween(r, st.noise)
	w.wander = w.wanderDraw(r, st.wander)
	w.top = st.tops[r.IntN(len(st.tops))] * micron
	s := st.steps[r.IntN(len(st.steps))]
	w.step = func(p float64) float64 {
		if s > 0 {
			return s * micron
		}
		switch m := p / micron; {
		case m < 400:
			return -s * 1 * micron
		case m < 1000:
			return -s * 2 * micron
		case m < 3000:
			return -s * 10 * micron
		case m < 10000:
			return -s * 50 * micron
		}
		return -s * 250 * micron
	}
	if s == -0.5 {
		w.step = func(float64) float64 { return 0 } // raw output of a logger
	}

	// Rows.
	switch r.IntN(5) {
	case 0: // logger
		dt := []float64{1, 2, 5, 10, 30}[r.IntN(5)]
		for w.hold/dt > 19000 {
			dt *= 2
		}
		w.times = every(w.hold, dt)
	case 1, 2: // minutes
		dt := 60.0
		if w.hold > 4*3600 {
			dt = 300
		}
		w.times = every(w.hold, dt)
	case 3: // typical sheet: 0 1 2 5 10 15 20 30 ... then at equal spacing
		for _, m := range []float64{0, 1, 2, 5, 10, 15, 20, 25, 30, 45, 60, 90, 120, 180, 240, 300, 360, 420, 480, 600, 720, 840, 960} {
			if m*60 <= w.hold {
				w.times = append(w.times, m*60)
			}
		}
	case 4: // hand-written, uneven
		n := 6 + r.IntN(14)
		w.times = []float64{0}
		for range n {
			w.times = append(w.times, math.Round(w.hold*math.Pow(r.Float64(), 1.3)/60)*60)
		}
		w.times = append(w.times, w.hold)
		sort.Float64s(w.times)
		k := 1
		for i := 1; i < len(w.times); i++ {
			if w.times[i] > w.times[k-1] {
				w.times[k] = w.times[i]
				k++
			}
		}
		w.times = w.times[:k]
	}
	if last := w.times[len(w.times)-1]; last < w.hold {
		w.times = append(w.times, w.hold)
	}
	if r.Float64() < st.pumpShare {
		w.pumpRows = 1 + r.IntN(5)
		w.pumpFrom = first * between2(r, [2]float64{2, 8})
	}
	w.spike = r.Float64() < st.rarelyTouched
	w.reopen = r.Float64() < st.rarelyTouched/2
	return w
}

func (w *world) wanderDraw(r *rand.Rand, most float64) float64 { return most * (2*r.Float64() - 1) }

func every(hold, dt float64) []float64 {
	n := int(hold/dt + 0.5)
	t := make([]float64, n+1)
	for i := range t {
		t[i] = float64(i) * dt
	}
	return t
}
