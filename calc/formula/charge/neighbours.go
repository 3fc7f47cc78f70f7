package charge

// Neighbours returns the standard tubes next below and next above a bore, m,
// each with a bore at least 1 % away. A tube with no outside diameter: none.
func Neighbours(bore float64) (smaller, larger Tube) {
	for _, t := range tubes {
		tube := Tube{Outside: t.od * 0.0254, Wall: t.wall * 0.0254}
		switch {
		case tube.Bore() < 0.99*bore:
			smaller = tube
		case tube.Bore() > 1.01*bore && larger.Outside == 0:
			larger = tube
		}
	}
	return smaller, larger
}
