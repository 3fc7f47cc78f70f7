// Package vacuum computes how gas leaves a system through tubes and hoses to a
// vacuum pump: the flow of air through long round tubes from the atmosphere to
// molecular flow, the share of a pump's speed that reaches the far end, and the
// time of a pump-down. It also scales a leak that was measured into a vacuum to
// the pressure and the gas of the running system.
//
// SI throughout: m, m³, Pa absolute, s, kg, K. The constants are those of air
// at 20 °C. Water vapour flows a little more easily, so for it the times are
// too long rather than too short.
package vacuum
