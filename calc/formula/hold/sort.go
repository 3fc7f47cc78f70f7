package hold

// sortFloats sorts v upwards in place (heapsort; Williams, Algorithm 232,
// Comm. ACM 7 (1964) 347). The general sort of the standard library would add
// 6 KB to what every phone downloads and is no faster to a person on a log of
// at most MaxRows.
func sortFloats(v []float64) {
	sortBy(len(v), func(i, j int) bool { return v[i] < v[j] }, func(i, j int) { v[i], v[j] = v[j], v[i] })
}

// sortBy sorts n items by less and swap. Equal items may change places.
func sortBy(n int, less func(i, j int) bool, swap func(i, j int)) {
	sift := func(root, end int) {
		for {
			child := 2*root + 1
			if child >= end {
				return
			}
			if child+1 < end && less(child, child+1) {
				child++
			}
			if !less(root, child) {
				return
			}
			swap(root, child)
			root = child
		}
	}
	for i := n/2 - 1; i >= 0; i-- {
		sift(i, n)
	}
	for end := n - 1; end > 0; end-- {
		swap(0, end)
		sift(0, end)
	}
}

// distinctFloats shortens a sorted slice to one of each value.
func distinctFloats(v []float64) []float64 {
	out := v[:0]
	for i, x := range v {
		if i == 0 || x != v[i-1] {
			out = append(out, x)
		}
	}
	return out
}
