package calcview

import (
	"runtime"
	"slices"
	"strings"
	"sync"

	"changeout/calc/catalog"
	"changeout/calc/property/refrigerant"
	"changeout/calc/property/refrigerant/facts"
)

// compared are the temperatures of the comparison, K: 0, 25 and 45 °C.
var compared = [...]float64{273.15, 298.15, 318.15}

// look is what the lists and the comparison show of one refrigerant.
type look struct {
	r           *refrigerant.Refrigerant
	sheet       facts.Sheet
	bubble, dew [len(compared)]float64 // Pa, 0 where there is no saturated state
	glide       float64                // K, at the bubble pressure of 25 °C, or of the warmest state below it
	hasGlide    bool                   // bubble and dew differ by more than glideMatters somewhere
}

// glideMatters is the glide above which bubble and dew get columns of their
// own, K.
const glideMatters = 0.1

// newLooks looks at every offered refrigerant, all processors at work: the
// first state of a blend is the slow one.
func newLooks() []*look {
	offered := catalog.Offered()
	looks := make([]*look, len(offered))
	next := make(chan int)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := range next {
				looks[i] = newLook(offered[i])
			}
		})
	}
	for i := range offered {
		next <- i
	}
	close(next)
	wg.Wait()
	return looks
}

func newLook(r *refrigerant.Refrigerant) *look {
	l := &look{r: r, sheet: facts.Of(r)}
	for i, k := range compared {
		b, err1 := r.BubbleAtT(k)
		d, err2 := r.DewAtT(k)
		if err1 == nil && err2 == nil {
			l.bubble[i], l.dew[i] = b.P, d.P
		}
	}
	low, high := r.Range()
	for _, k := range []float64{max(low, 233.15), 273.15, min(298.15, high-1), 318.15} {
		b, err := r.BubbleAtT(k)
		if err != nil {
			continue
		}
		d, err := r.DewAtP(b.P)
		if err != nil {
			continue
		}
		glide := d.T - k
		l.hasGlide = l.hasGlide || glide > glideMatters
		if k == min(298.15, high-1) {
			l.glide = max(0, glide)
		}
	}
	return l
}

// common are the refrigerants that stand first in the lists. Common practice:
// no source ranks them for large air conditioning.
var common = []string{"R-22", "R-32", "R-123", "R-134a", "R-290", "R-407C", "R-410A", "R-422D", "R-427A", "R-452B", "R-454B", "R-513A", "R-1233zd(E)", "R-1234ze(E)"}

// shelves are the groups of the lists, in their order.
var shelves = []string{"Met in air conditioning", "Other pure fluids", "Other blends of the 400 series", "Blends of the 500 series"}

// shelf is the group that a refrigerant is listed in.
func (l *look) shelf() string { return shelves[shelfOf(l.r.Name, l.sheet.Kind)] }

// shelfOf gives the place of a refrigerant's group among the shelves.
func shelfOf(name string, kind facts.Kind) int {
	switch {
	case slices.Contains(common, name):
		return 0
	case kind == facts.Pure:
		return 1
	case kind == facts.Zeotrope:
		return 2
	}
	return 3
}

// tableID is the address of a refrigerant's table: r-410a, r-1234ze-e.
func tableID(name string) string {
	return strings.Trim(strings.NewReplacer("(", "-", ")", "").Replace(strings.ToLower(name)), "-")
}
