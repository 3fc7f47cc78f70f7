package hold

import (
	"math/rand/v2"
	"os"
	"sort"
	"strconv"
	"strings"
	"testing"
)

var verdicts = []Verdict{Tight, Moisture, Leak, LeakAndMoisture, Undetermined}

type tally struct {
	total, right, clear, clearRight, clearUndetermined int
	leakTight, smallTight, hidden                      int
	table                                              map[string]map[Verdict]int
	wrong                                              map[string]int
}

// simulate judges count worlds of a style with a fixed seed.
func simulate(t *testing.T, st style, seed uint64, count int) tally {
	t.Helper()
	y := tally{table: map[string]map[Verdict]int{}, wrong: map[string]int{}}
	verbose := os.Getenv("HOLD_VERBOSE") != ""
	for i := range count {
		r := rand.New(rand.NewPCG(seed, uint64(i)))
		kind := kinds[i%len(kinds)]
		w := draw(st, r, kind)
		log, c, p, pipe := w.record(r)
		l := judgeTruth(w, p, pipe)
		res, err := Analyse(log, c)
		if err != nil {
			t.Errorf("%s log %d (%s): %v", st.name, i, kind, err)
			continue
		}
		row := l.class
		if l.clear {
			row += " (clear-cut)"
		}
		if y.table[row] == nil {
			y.table[row] = map[Verdict]int{}
		}
		y.table[row][res.Verdict]++
		y.total++
		ok := l.right[res.Verdict]
		if l.hidden && res.Verdict == Moisture {
			ok = true
			y.hidden++
		}
		if ok {
			y.right++
		} else {
			y.wrong[row+" called "+string(res.Verdict)]++
		}
		if l.clear {
			y.clear++
			if ok {
				y.clearRight++
			}
			if res.Verdict == Undetermined {
				y.clearUndetermined++
			}
		}
		if res.Verdict == Tight {
			if w.leak >= res.InflowLimit {
				y.leakTight++
				t.Errorf("%s log %d (%s): a leak of %.2f micron/min was called tight", st.name, i, kind, w.leak*60/micron)
			} else if w.leak > 0 {
				y.smallTight++
			}
		}
		if verbose && (!ok || (os.Getenv("HOLD_VERBOSE") == "2" && res.Verdict == Undetermined) || (res.Verdict == Tight && w.leak >= res.InflowLimit)) {
			u := 60 / micron
			best := "-"
			if len(res.Candidates) > 0 {
				best = res.Candidates[0].Model.ID()
			}
			t.Logf("#%d %s/%s clear=%v -> %s reasons %v | leak %.2f level %.0f rel %.0f slow %.0f min | hold %.0f min rows %d used %d p %.0f..%.0f step %.1f noise %.4f amb %d dT %.1f | inflow %.2f/%.2f/%.2f lim %.2f level %.0f/%.0f/%.0f best %s rel %.0f@%.0f eq %.0f@%.0fs infl %.1f stat %.2f T %.2f need %.0f min reopen %v pump %d spike %v",
				i, kind, row, l.clear, res.Verdict, res.Reasons, w.leak*u, w.settled(pipe[0])/micron, w.release()/micron, w.slowest()/60, w.hold/60, len(p), res.RowsUsed, p[0]/micron, p[len(p)-1]/micron,
				w.step(p[len(p)-1])/micron, w.noise, w.ambient, pipe[len(pipe)-1]-pipe[0], res.Inflow.Low*u, res.Inflow.Best*u, res.Inflow.High*u, res.InflowLimit*u,
				res.Level.Low/micron, res.Level.Best/micron, res.Level.High/micron, best, res.Release/micron, res.ReleaseTime/60, res.Equalisation/micron, res.EqualisationTime, 0.0, 0.0, 0.0, res.HoldNeeded/60, w.reopen, w.pumpRows, w.spike)
		}
	}
	return y
}

func (y tally) print(t *testing.T, name string) {
	rows := make([]string, 0, len(y.table))
	for k := range y.table {
		rows = append(rows, k)
	}
	sort.Strings(rows)
	var b strings.Builder
	for _, k := range rows {
		b.WriteString("\n")
		b.WriteString(pad(k, 36))
		for _, v := range verdicts {
			b.WriteString(pad(itoa(y.table[k][v]), 19))
		}
	}
	head := pad(name, 36)
	for _, v := range verdicts {
		head += pad(string(v), 19)
	}
	t.Logf("\n%s%s\nright %d of %d (%.1f %%); clear-cut %d: right %d (%.1f %%), undetermined %d; leaks called tight %d; small leaks called tight %d; without the amended rule right %.1f %%",
		head, b.String(), y.right, y.total, 100*float64(y.right)/float64(y.total), y.clear, y.clearRight, 100*float64(y.clearRight)/float64(max(1, y.clear)), y.clearUndetermined, y.leakTight, y.smallTight, 100*float64(y.right-y.hidden)/float64(y.total))
	for k, n := range y.wrong {
		t.Logf("  wrong: %-55s %d", k, n)
	}
}

func pad(s string, n int) string { return s + strings.Repeat(" ", max(1, n-len(s))) }

func itoa(n int) string {
	if n == 0 {
		return "."
	}
	s := ""
	for ; n > 0; n /= 10 {
		s = string(rune('0'+n%10)) + s
	}
	return s
}

// The share that must be right is the issue's own, 95 %; a single leak called tight fails. Of clear-cut logs at most an eighth may be
// undetermined, so that the word is not abused: over many seeds the share is 9 %, and 1,600 logs scatter by 1.6 %. The held-out set
// differs in every distribution and is harder (longer equalisation, more swing, coarser and noisier gauges). No threshold was chosen on its
// share of right verdicts; its few leaks called tight were looked into, and gave reasons to be stricter. Its bounds, 92 % and 17 %,
// guard against change and are not a claim; the printed table is.
func demand(t *testing.T, y tally, right, undetermined float64) {
	t.Helper()
	if share := float64(y.right) / float64(y.total); !(share >= right) {
		t.Errorf("right %.3f, want at least %.2f", share, right)
	}
	if y.leakTight != 0 {
		t.Errorf("%d leaks called tight, want none", y.leakTight)
	}
	if share := float64(y.clearUndetermined) / float64(max(1, y.clear)); !(share <= undetermined) || y.clear < y.total/5 {
		t.Errorf("undetermined share of %d clear-cut logs %.3f, want at most %.2f and at least a fifth of all logs clear-cut", y.clear, share, undetermined)
	}
}

func TestConfusionTuned(t *testing.T) {
	y := simulate(t, tuned, 20261125, 1600)
	y.print(t, "tuned set, truth \\ verdict")
	demand(t, y, 0.95, 0.125)
}

func TestConfusionHeldOut(t *testing.T) {
	y := simulate(t, heldOut, 77001, 1600)
	y.print(t, "held-out set, truth \\ verdict")
	demand(t, y, 0.92, 0.17)
}

// TestConfusionSeeds repeats the tuned set with many seeds: HOLD_SEEDS=6 go test -run Seeds -v. It is slow, so only on demand.
func TestConfusionSeeds(t *testing.T) {
	seeds, _ := strconv.Atoi(os.Getenv("HOLD_SEEDS"))
	if seeds == 0 {
		t.Skip("HOLD_SEEDS not set")
	}
	for _, st := range []style{tuned, heldOut} {
		right, total, undetermined, clear, leakTight := 0, 0, 0, 0, 0
		for s := range seeds {
			y := simulate(t, st, uint64(s+1)*1000, 800)
			right, total, leakTight = right+y.right, total+y.total, leakTight+y.leakTight
			clear, undetermined = clear+y.clear, undetermined+y.clearUndetermined
		}
		t.Logf("%s: right %.2f %% of %d; undetermined %.1f %% of %d clear-cut; leaks called tight %d", st.name,
			100*float64(right)/float64(total), total, 100*float64(undetermined)/float64(clear), clear, leakTight)
	}
}
