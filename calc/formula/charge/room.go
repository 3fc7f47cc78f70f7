package charge

// RoomCharge returns the largest releasable mass for a room:
//
//	m = RCL × V × f
//
// with the refrigerant concentration limit in kg/m³, the volume of the
// smallest room in m³, and f = 0.5 where people cannot leave by themselves
// (institutional occupancy), else 1. Result in kg. Source: ASHRAE 15 as
// restated in its interpretation 4 to the 2013 edition, and for the half value
// a trade article on it.
func RoomCharge(rcl, volume, factor float64) float64 { return rcl * volume * factor }
