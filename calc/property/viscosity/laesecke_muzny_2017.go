package viscosity

import "math"

// LaeseckeMuzny2017 is the correlation for R-744 (carbon dioxide): A. Laesecke and C. D. Muzny, J. Phys. Chem. Ref. Data 46
// (2017) 013107. Dilute gas: equation 4; residual: equations 8 and 9 with the constants of table 8 (locators from memory),
//
//	Δη = ηt (c₁ Tr ρr³ + (ρr² + ρr^γ)/(Tr - c₂)),   Tr = T/Tt,   ρr = ρ/ρt,
//
// Tt = 216.592 K and ρt = 1178.53 kg/m³ the liquid at the triple point, ηt = ρt^(2/3) √(R Tt) / (M^(1/6) N^(1/3)).
var LaeseckeMuzny2017 = Correlation{
	Name: "R-744", Source: "laesecke-jpcrd-2017", MinT: 216.592, MaxT: 2000, MaxP: 100e6,
	Sigma: 0.378421, Epsilon: 200.76,
	Virial:  vogel1998Virial,
	special: laeseckeMuzny,
}

func laeseckeMuzny(T, rho float64) (dilute, residual float64) {
	const tripleT, tripleRho, mass, scale = 216.592, 1178.53, 0.0440098, 94.3604912 // scale is ηt, µPa s
	cube, root := math.Exp(math.Log(T)/3), math.Sqrt(T)
	dilute = 1005.5 * root / (1749.354893188350 - 369.069300007128*math.Sqrt(cube) + 5423856.34887691*math.Exp(-2.21283852168356*cube) +
		(-269503.247933569+73145.021531826*cube)*math.Exp(-cube) + 5.34368649509278*root)
	if rho == 0 {
		return dilute, 0
	}
	t, d := T/tripleT, rho*mass/tripleRho
	return dilute, scale * (0.360603235428487*t*d*d*d + (d*d+math.Exp(8.06282737481277*math.Log(d)))/(t-0.121550806591497))
}
