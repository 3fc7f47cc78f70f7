#!/usr/bin/env python3
"""Viscosities from CoolProp, and the estimate computed a second time, as check values.

    python3 testdata/reference/viscosity.py            write the files
    python3 testdata/reference/viscosity.py --check    compute again and compare with the committed files

Needs: pip install CoolProp. coolprop-correlations.csv holds CoolProp's viscosity where it uses the same publication as ours.
estimates.csv holds the residual entropy scaling of Martinek et al. (2025), written here a second time from the paper's form, on
CoolProp's densities and residual entropies, with the parameters read from calc/property/viscosity/parameters.go.
Where CoolProp 8.0.0 has another equation for a fluid (R-22, R-32, R-143a, R-152a, R-601 and others) its viscosity is not used: it is an
older estimate, and for R-22 and R-601 it is 20 % below the measurements.
"""
import math
import os
import re
import sys

import CoolProp
import CoolProp.CoolProp as CP

from saturation import ROOT, catalogue, coolprop_name

OUT = os.path.join(ROOT, "testdata", "published", "viscosity")
PARAMETERS = os.path.join(ROOT, "calc", "property", "viscosity", "parameters.go")

# Fluids for which both programs use the same publication; the range, K, of the rows.
PUBLISHED = {
    "R-123": (255, 420), "R-125": (175, 420), "R-134a": (172, 420), "R-E170": (234, 372), "R-290": (100, 420),
    "R-600": (140, 420), "R-600a": (120, 420), "R-717": (200, 420), "R-718": (274, 420), "R-728": (70, 420), "R-732": (60, 420),
    "R-740": (85, 420), "R-744": (217, 420),
}
PSEUDO = {"R-404A": "R404A", "R-407C": "R407C", "R-410A": "R410A", "R-507A": "R507A", "R-729": "Air"}
ESTIMATED = ["R-22", "R-32", "R-1234yf", "R-1234ze(E)", "R-143a", "R-227ea", "R-448A", "R-449A", "R-452B", "R-454A", "R-454B", "R-454C",
             "R-455A", "R-513A", "R-407F", "R-422D", "R-407A", "R-450A"]
BOLTZMANN, AVOGADRO = 1.380649e-23, 6.02214076e23

# Tolerances, relative. Correlations: same coefficients and densities equal to 1e-8; what is left is the last digits of Avogadro's
# number (2019 and before: 9e-8 of the virial term). R-744: the paper's own gas constant and molar mass are as old as it is. Pseudo-pure
# blends: a molar mass rounded to 1e-6 meets a sixth power of density. Water: CoolProp adds the critical enhancement, which is
# below 1e-5 outside the neighbourhood of the critical point. Estimates: blends are equal in density and entropy to 1e-6.
TOL = {"correlation": 1e-6, "R-718": 1e-4, "R-744": 1e-5, "pseudo-pure": 5e-6, "estimate": 1e-5}


def row(name, quantity, where, unit, value, tolerance, source, locator):
    return f"{name},{quantity},{where},{unit},{value:.10g},Pa s,{tolerance:g},{source},{locator},library"


def correlations():
    where = f"HEOS {CoolProp.__version__}"
    for name, (low, high) in PUBLISHED.items():
        state = CP.AbstractState("HEOS", coolprop_name(name))
        tol = TOL.get(name, TOL["correlation"])
        top = min(high, 0.97 * state.T_critical())
        for i in range(6):
            T = round(low + (top - low) * i / 5, 2)
            for q, phase in ((0, "liquid"), (1, "vapor")):
                state.update(CP.QT_INPUTS, q, T)
                yield row(name, f"saturated {phase}", f"{T:.2f}", "K", state.viscosity(), tol, "coolprop-8", where)
        for T, p in ((300, 1e5), (350, 6e6), (400, 6e6), (420, 3e5)):
            if T > high:
                continue
            state.update(CP.PT_INPUTS, p, T)
            yield row(name, "single phase", f"{T:.2f};{p:.10g}", "K;Pa", state.viscosity(), tol, "coolprop-8", where)
    # Pseudo-pure fluids: their density differs from the mixture model's, so temperature and density are given.
    for name, fluid in PSEUDO.items():
        state = CP.AbstractState("HEOS", fluid)
        for T in (230, 260, 290, 320, 400):
            for rho in (1, 20, 60, 900, 1200):
                if name == "R-729" and rho > 100:
                    continue
                state.specify_phase(CP.iphase_gas)
                state.update(CP.DmassT_INPUTS, rho, T)
                yield row(name, "given density", f"{T:.2f};{rho:.10g}", "K;kg/m3", state.viscosity(), TOL["pseudo-pure"], "coolprop-8", where)
    # Air at a pressure, for the short form that takes the density of the ideal gas: 0.1 % is what it claims.
    state = CP.AbstractState("HEOS", "Air")
    for T in (200, 250, 300, 400, 500):
        for p in (1e4, 101325, 1e6):
            state.update(CP.PT_INPUTS, p, T)
            yield row("R-729", "given pressure", f"{T:.2f};{p:.10g}", "K;Pa", state.viscosity(), 1e-3, "coolprop-8", where)


def parameters():
    out = {}
    with open(PARAMETERS, encoding="utf-8") as f:
        for m in re.finditer(r'\{"(R-[^"]+)", ([\d.]+), ([\d.]+), \[5\]float32\{([^}]*)\}, \[3\]float32\{([^}]*)\}\}', f.read()):
            out[m.group(1)] = ([float(x) for x in m.group(4).split(",")], [float(x) for x in m.group(5).split(",")])
    return out


def estimate(names, z, masses, T, rho, s, table):
    """Martinek et al. (2025); rho in mol/m3, s = -s_r/R."""
    gas = [1e-6 * sum(c * T ** (4 - k) for k, c in enumerate(table[n][0])) for n in names]
    dilute = 0
    for i in range(len(z)):
        phi = [(1 + (gas[i] / gas[j]) ** 0.5 * (masses[j] / masses[i]) ** 0.25) ** 2 / (8 * (1 + masses[i] / masses[j])) ** 0.5 for j in range(len(z))]
        dilute += z[i] * gas[i] / sum(x * y for x, y in zip(z, phi))
    n = [sum(x * table[name][1][k] for x, name in zip(z, names)) for k in range(3)]
    mean = sum(x * m for x, m in zip(z, masses)) / AVOGADRO
    up = math.exp(n[0] * s**1.8 + n[1] * s**2.4 + n[2] * s**2.8) - 1
    return dilute + up / s ** (2 / 3) * (rho * AVOGADRO) ** (2 / 3) * (mean * BOLTZMANN * T) ** 0.5


def estimates():
    table, where = parameters(), f"own program on HEOS {CoolProp.__version__}"
    for name, critical, shares in catalogue():
        if name not in ESTIMATED:
            continue
        names = [c for c, _ in shares]
        masses = [CP.PropsSI("M", coolprop_name(c)) for c in names]
        moles = [p / m for (_, p), m in zip(shares, masses)]
        z = [x / sum(moles) for x in moles]
        state = CP.AbstractState("HEOS", "&".join(coolprop_name(c) for c in names))
        if len(names) > 1:
            state.set_mole_fractions(z)
        for T in (243.15, 263.15, 283.15, 298.15, 313.15):
            if T > 0.95 * (critical or state.T_critical()):
                continue
            for q, phase in ((0, "liquid"), (1, "vapor")):
                try:
                    state.update(CP.QT_INPUTS, q, T)
                except ValueError as e:
                    print(f"left out: {name} {phase} {T} K: {str(e)[:80]}", file=sys.stderr)
                    continue
                v = estimate(names, z, masses, T, state.rhomolar(), -state.smolar_residual() / state.gas_constant(), table)
                yield row(name, f"saturated {phase}", f"{T:.2f}", "K", v, TOL["estimate"], "martinek-jced-2025", where)


HEAD = {
    "coolprop-correlations.csv": "# Viscosity from CoolProp {version} (HEOS) where it uses the same publication as ours: a check of the programming, not of the\n# equations. Written by testdata/reference/viscosity.py, which also checks it (--check). Tolerance is relative.\n",
    "estimates.csv": "# Residual entropy scaling (Martinek et al. 2025) computed a second time by testdata/reference/viscosity.py on densities and\n# entropies of CoolProp {version} (HEOS): a check of the programming. Tolerance is relative.\n",
}


def main(args):
    sys.stdout.reconfigure(line_buffering=True)
    bad = 0
    for file, lines in (("coolprop-correlations.csv", list(correlations())), ("estimates.csv", list(estimates()))):
        path = os.path.join(OUT, file)
        if "--check" not in args:
            with open(path, "w", encoding="utf-8") as f:
                f.write(HEAD[file].format(version=CoolProp.__version__) + "refrigerant,quantity,input,input_unit,expected,unit,tolerance,source,locator,read\n" + "\n".join(lines) + "\n")
            print(f"{path}: {len(lines)} rows")
            continue
        with open(path, encoding="utf-8") as f:
            old = [l for l in f.read().splitlines() if l and not l.startswith("#")][1:]
        have = {tuple(l.split(",")[:4]): float(l.split(",")[4]) for l in old}
        new = {tuple(l.split(",")[:4]): float(l.split(",")[4]) for l in lines}
        for key in sorted(have.keys() | new.keys()):
            a, b = have.get(key), new.get(key)
            if a is None or b is None or not abs(a / b - 1) < 1e-7:
                bad += 1
                print(f"{file}: {','.join(key)}: committed {a}, computed {b}")
        print(f"{path}: {len(new)} rows compared")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
