package facts

import "changeout/calc/property/refrigerant"

// laws says what was read of the three bodies of law that a technician meets most. They follow from the constituents and from the warming
// potential by the list that each law uses. States and countries add their own.
func laws(r *refrigerant.Refrigerant) []Law {
	gwps := warming(r)
	return []Law{
		{"Montreal Protocol", montreal(r)},
		{"European Union", european(r, pick(gwps, "EU 2024/573"))},
		{"United States", american(r, pick(gwps, "AR4"))},
	}
}

func montreal(r *refrigerant.Refrigerant) []Statement {
	var out []Statement
	if names := of(r, cfc); len(names) > 0 {
		out = append(out, Statement{"Banned: production of " + list(names) + " ended in 1996 in developed countries and in 2010 in the others.",
			refrigerant.Memory, []string{"montreal-protocol"}})
	}
	if names := of(r, hcfc); len(names) > 0 {
		out = append(out, Statement{"Phased out: production of " + list(names) + " ended in 2020 in developed countries, but for a small rest for servicing. In the others it ends in 2030.",
			refrigerant.Memory, []string{"montreal-protocol"}})
	}
	if has(r, hfc) {
		out = append(out, Statement{"Phased down (Kigali): developed countries cut HFCs by 40 % from 2024, 70 % from 2029, 80 % from 2034 and 85 % from 2036. Most others freeze in 2024 and cut 10 % from 2029.",
			refrigerant.Secondary, []string{"kigali-steps"}})
	}
	if len(out) == 0 {
		out = append(out, Statement{"Not controlled, as far as is known here.", refrigerant.Memory, []string{"montreal-protocol"}})
	}
	return out
}

// european follows Regulations (EU) 2024/590 (ozone) and 2024/573 (fluorinated gases).
func european(r *refrigerant.Refrigerant, gwp refrigerant.Fact) []Statement {
	if names := of(r, cfc, hcfc); len(names) > 0 {
		out := []Statement{{"Banned: " + list(names) + " may not be produced, sold or used, with narrow exceptions.", refrigerant.Secondary, []string{"eu-2024-590"}}}
		if has(r, hcfc) {
			out = append(out, Statement{"Since 1 January 2015 no HCFC may service a system, reclaimed gas included.", refrigerant.Secondary, []string{"eu-hcfc-2015"}})
		}
		return out
	}
	if !has(r, hfc, pfc, hfo, hcfo) {
		return []Statement{{"Outside the regulation on fluorinated gases.", refrigerant.Secondary, []string{"eu573"}}}
	}
	var out []Statement
	if has(r, hfc) {
		out = append(out, Statement{"Phased down: the yearly quota of HFCs falls to zero in 2050.", refrigerant.Secondary, []string{"eu573"}})
	}
	if !gwp.Known() {
		return append(out, Statement{Text: "GWP by the EU list not known here, so its dates cannot be told."})
	}
	if gwp.Value >= 2500 {
		out = append(out, Statement{"Servicing: no new gas since 1 January 2026 in air conditioners and heat pumps, since 1 January 2025 in refrigeration. Reclaimed or recycled gas may serve until 2032 and 2030.",
			refrigerant.Secondary, []string{"eu573-article-13", "eu573"}})
	}
	text := ""
	switch v := gwp.Value; {
	case v >= 750:
		text = "New equipment (GWP of 750 or more): single splits below 3 kg are banned since 1 January 2025. Chillers above 12 kW follow on 1 January 2027, splits above 12 kW on 1 January 2029."
	case v >= 150:
		text = "New equipment (GWP of 150 or more): air-to-air splits up to 12 kW are banned from 1 January 2029. Splits above 12 kW follow on 1 January 2033."
	default:
		text = "New equipment (GWP below 150): no splits up to 12 kW with any fluorinated gas from 1 January 2035."
	}
	return append(out, Statement{text + " Safety rules of the site can give exceptions.", refrigerant.Secondary, []string{"eu573"}})
}

// american follows 40 CFR parts 82 (ozone) and 84 (hydrofluorocarbons).
func american(r *refrigerant.Refrigerant, gwp refrigerant.Fact) []Statement {
	var out []Statement
	if names := of(r, cfc); len(names) > 0 {
		out = append(out, Statement{"Banned: production and import of " + list(names) + " ended on 1 January 1996. Reclaimed gas may still be used.", refrigerant.Memory, []string{"from-memory"}})
	}
	for _, name := range of(r, hcfc) {
		if name == "R-22" || name == "R-142b" {
			out = append(out, Statement{"Phased out: no new or imported " + name + " since 1 January 2020, and no new appliances with it since 1 January 2010. Reclaimed gas may service what exists.",
				refrigerant.Secondary, []string{"epa-r22-equipment", "r22-2020"}})
		} else {
			out = append(out, Statement{"Phased out: until 2029 new " + name + " may only service equipment made before 2020.", refrigerant.Memory, []string{"fr-2020-hcfc"}})
		}
	}
	if has(r, hfc) {
		out = append(out, Statement{"Phased down: the supply of HFCs falls by 85 % until 2036.", refrigerant.Secondary, []string{"trade-153670"}})
		switch {
		case !gwp.Known():
			out = append(out, Statement{Text: "GWP by AR4 not known here, so the limit of 700 cannot be judged."})
		case gwp.Value >= 700:
			out = append(out, Statement{"New comfort cooling (GWP of 700 or more): banned since 1 January 2025, in VRF systems since 1 January 2026. VRF parts made before 2026 may be installed until 1 January 2027, or 2028 under a building permit from before 5 October 2023. An EPA proposal of October 2025 would change dates; its outcome was not read.",
				refrigerant.Secondary, []string{"trade-153670", "fr-2023-transitions", "fr-2024-vrf", "fr-2025-transitions"}})
		default:
			out = append(out, Statement{"New comfort cooling: below the limit of 700.", refrigerant.Secondary, []string{"trade-153670"}})
		}
	}
	if len(out) == 0 {
		out = append(out, Statement{"Outside the limits on HFCs. Each use still needs to be on the list of approved substitutes.", refrigerant.Memory, []string{"from-memory"}})
	}
	return out
}
