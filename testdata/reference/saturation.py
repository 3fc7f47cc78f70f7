#!/usr/bin/env python3
"""Saturation and single-phase states of every refrigerant of the catalogue from CoolProp (HEOS backend), as check values.

    python3 testdata/reference/saturation.py            write the files
    python3 testdata/reference/saturation.py --check    compute again and compare with the committed files
    python3 testdata/reference/saturation.py R-410A R-32 ...   only these, to standard output

Needs: pip install CoolProp. Compositions are read from calc/property/refrigerant/blend.go (mass %), so that a blend added
there is covered here. A state that CoolProp cannot solve is left out and named on standard error.
"""
import math
import os
import re
import sys
import zlib

import CoolProp
import CoolProp.CoolProp as CP

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
OUT = os.path.join(ROOT, "testdata", "published", "saturation")
CATALOGUE = os.path.join(ROOT, "calc", "property", "refrigerant")

NAMES = {
    "R-744": "CarbonDioxide", "R-717": "Ammonia", "R-718": "Water", "R-728": "Nitrogen", "R-740": "Argon",
    "R-732": "Oxygen", "R-704": "Helium", "R-290": "n-Propane", "R-600a": "IsoButane", "R-600": "n-Butane",
    "R-601a": "Isopentane", "R-601": "n-Pentane", "R-170": "Ethane", "R-1270": "Propylene", "R-E170": "DimethylEther",
    "R-C318": "RC318", "R-152a": "R152A", "R-227ea": "R227EA", "R-236fa": "R236FA",
}

# More temperatures for what technicians meet most; five for the rest.
FIELD = {"R-22", "R-32", "R-134a", "R-290", "R-744", "R-1234yf", "R-410A", "R-407C", "R-404A", "R-454B", "R-448A", "R-449A", "R-452B",
         "R-507A", "R-513A", "R-454C", "R-455A", "R-466A", "R-438A", "R-422D", "R-427A", "R-407A", "R-407F"}

# Tolerances, relative. Both programs use the same coefficients; what is left is CoolProp's own convergence, which for
# mixtures is some 1e-8 and worse near the critical point, and for pure fluids some 1e-9.
TOL = {"pure": 1e-8, "blend": 1e-6}


def coolprop_name(name):
    return NAMES.get(name, name.replace("R-", "R", 1))


def catalogue():
    """Gives (designation, critical temperature or None, [(component, mass %)]) for pure fluids and blends."""
    out = []
    with open(os.path.join(CATALOGUE, "pure.go"), encoding="utf-8") as f:
        for m in re.finditer(r'^\t\{"(R-[^"]+)", "[^"]*",', f.read(), re.M):
            out.append((m.group(1), None, [(m.group(1), 100.0)]))
    with open(os.path.join(CATALOGUE, "blend.go"), encoding="utf-8") as f:
        for m in re.finditer(r'^\t\{"(R-[^"]+)", "[^"]*", ([\d.]+), .*\[\]share\{(.*)\}\},$', f.read(), re.M):
            shares = [(a, float(b)) for a, b in re.findall(r'\{"([^"]+)", ([\d.]+)\}', m.group(3))]
            out.append((m.group(1), float(m.group(2)), shares))
    return out


def temperatures(name, critical, lowest):
    low, high = max(lowest, 203.15), 0.95 * critical
    if low > high:
        low = lowest
    n = 9 if name in FIELD else 5
    return [round(low + (high - low) * i / (n - 1), 2) if 0 < i < n - 1 else (math.ceil(low * 100) / 100 if i == 0 else math.floor(high * 100) / 100)
            for i in range(n)]


def rows(name, critical, shares):
    state = CP.AbstractState("HEOS", "&".join(coolprop_name(c) for c, _ in shares))
    masses = [CP.PropsSI("M", coolprop_name(c)) for c, _ in shares]
    kind = "pure"
    if len(shares) > 1:
        kind = "blend"
        moles = [p / m for (_, p), m in zip(shares, masses)]
        z = [x / sum(moles) for x in moles]
        state.set_mole_fractions(z)
    lowest = max(CP.PropsSI("Ttriple", coolprop_name(c)) for c, _ in shares) + 0.01
    if critical is None:
        critical = state.T_critical()
    tol = TOL[kind]
    for T in temperatures(name, critical, lowest):
        for q, point in ((0, "bubble"), (1, "dew")):
            if kind == "pure" and q == 1:
                continue
            try:
                state.update(CP.QT_INPUTS, q, T)
                p = state.p()
                if kind == "pure":
                    liquid = state.saturated_liquid_keyed_output(CP.iDmass)
                    vapor = state.saturated_vapor_keyed_output(CP.iDmass)
                else:
                    liquid = state.saturated_liquid_keyed_output(CP.iDmolar) * sum(x * m for x, m in zip(state.mole_fractions_liquid(), masses))
                    vapor = state.saturated_vapor_keyed_output(CP.iDmolar) * sum(x * m for x, m in zip(state.mole_fractions_vapor(), masses))
            except Exception as e:  # the library raises ValueError with many texts
                print(f"left out: {name} {point} {T} K: {str(e)[:80]}", file=sys.stderr)
                continue
            if not (liquid > vapor > 0 and p > 0):
                print(f"left out: {name} {point} {T} K: p {p}, densities {liquid}, {vapor}", file=sys.stderr)
                continue
            where = f"HEOS {CoolProp.__version__}"
            for quantity, value, unit in ((f"{point} pressure", p, "Pa"), (f"{point} liquid density", liquid, "kg/m3"), (f"{point} vapor density", vapor, "kg/m3")):
                yield f"{name},{quantity},{T:.2f},K,{value:.11g},{unit},{tol:g},coolprop-8,{where},library"


# One state in the vapour and one in the liquid or the dense region, from which enthalpy and entropy are counted.
def states(name, critical, shares):
    """Single-phase rows: density, heat capacities, speed of sound, and differences of enthalpy and entropy."""
    seed = zlib.crc32(name.encode())

    def random():  # a small generator of its own, the same in every version of Python
        nonlocal seed
        seed = (seed * 1103515245 + 12345) % 2**31
        return seed / 2**31

    fluids = [coolprop_name(c) for c, _ in shares]
    state = CP.AbstractState("HEOS", "&".join(fluids))
    masses = [CP.PropsSI("M", f) for f in fluids]
    if len(shares) > 1:
        moles = [p / m for (_, p), m in zip(shares, masses)]
        state.set_mole_fractions([x / sum(moles) for x in moles])
    lowest = max(CP.PropsSI("Ttriple", f) for f in fluids) + 1
    highest = min(min(CP.PropsSI("Tmax", f) for f in fluids), 423.15)
    if critical is None:
        critical = state.T_critical()
    pc = max(p for p in [CP.PropsSI("pcrit", f) for f in fluids])

    def at(T, p, phase):
        state.specify_phase(phase)
        state.update(CP.PT_INPUTS, p, T)
        return (state.rhomass(), state.hmass(), state.smass(), state.cpmass(), state.cvmass(), state.speed_sound())

    def saturated(q, T):
        state.unspecify_phase()
        try:
            state.update(CP.QT_INPUTS, q, T)
            return state.p()
        except Exception:
            return math.nan

    for region in ("vapor", "liquid"):
        first = None
        for _ in range(3):
            if region == "vapor":
                low = max(lowest, 0.65 * critical)
                T = round(low + (highest - low) * random(), 2)
                top = 6e6
                if T < 0.96 * critical:
                    top = 0.95 * saturated(1, T)
                elif T < 1.08 * critical:
                    continue
                p = float(f"{top * (0.02 + 0.98 * random()):.4g}")
                phase = CP.iphase_gas if T < critical else CP.iphase_supercritical
                if T >= critical and p < pc:
                    phase = CP.iphase_supercritical_gas
            else:
                low = max(lowest, 0.6 * critical)
                if low > 0.95 * critical:
                    continue
                T = round(low + (0.95 * critical - low) * random(), 2)
                p = float(f"{saturated(0, T) * 1.02 + 6e6 * random():.4g}")
                phase = CP.iphase_liquid
            if math.isnan(p):
                print(f"left out: {name} {region} {T} K: no saturation", file=sys.stderr)
                continue
            try:
                v = at(T, p, phase)
            except Exception as e:
                print(f"left out: {name} {region} {T} K {p} Pa: {str(e)[:80]}", file=sys.stderr)
                continue
            # CoolProp can land on another branch; a liquid below the critical density is one sign.
            rc = CP.PropsSI("rhocrit", fluids[0]) if len(shares) == 1 else state.rhomolar_reducing() * sum(x * m for x, m in zip(state.get_mole_fractions(), masses))
            if (region == "liquid") != (v[0] > 1.05 * rc) and T < critical:
                print(f"left out: {name} {region} {T} K {p} Pa: density {v[0]}", file=sys.stderr)
                continue
            here = f"{T:.2f};{p:.10g}"
            rows = [("density", v[0], "kg/m3"), ("cp", v[3], "J/(kg K)"), ("cv", v[4], "J/(kg K)"), ("speed of sound", v[5], "m/s")]
            if first:
                rows += [(f"enthalpy from {first[0]}", v[1] - first[1][1], "J/kg"), (f"entropy from {first[0]}", v[2] - first[1][2], "J/(kg K)")]
            else:
                first = (here, v)
            for quantity, value, unit in rows:
                yield f"{name},{quantity},{here},K;Pa,{value:.11g},{unit},{1e-6:g},coolprop-8,HEOS {CoolProp.__version__},library"


STATES_HEAD = """# Single-phase states computed with CoolProp {version} (HEOS backend), the open reference library. Written by
# testdata/reference/saturation.py, which also checks them (--check). Input is temperature;pressure. Enthalpy and entropy are
# differences from the state named in the quantity. Tolerance is relative; for differences it is relative to cp ΔT and R, see the test.
refrigerant,quantity,input,input_unit,expected,unit,tolerance,source,locator,read
"""

HEAD = """# Saturation states computed with CoolProp {version} (HEOS backend), the open reference library. Written by
# testdata/reference/saturation.py, which also checks them (--check). Same published coefficients as ours: this is a check of
# the programming, not of the equations. Tolerance is relative. At a bubble point the vapour is incipient, at a dew point the liquid.
refrigerant,quantity,input,input_unit,expected,unit,tolerance,source,locator,read
"""


def compute(which):
    pure, blend, single = [], [], []
    for name, critical, shares in catalogue():
        if which and name not in which:
            continue
        try:
            lines = list(rows(name, critical, shares))
        except Exception as e:
            print(f"left out: {name}: {str(e)[:80]}", file=sys.stderr)
            continue
        (pure if len(shares) == 1 else blend).extend(lines)
        single.extend(states(name, critical, shares))
    return {"coolprop-pure.csv": pure, "coolprop-blends.csv": blend, "coolprop-states.csv": single}


def main(args):
    check = "--check" in args
    which = {a for a in args if not a.startswith("--")}
    bad = 0
    for file, lines in compute(which).items():
        if which:
            print("\n".join(lines))
            continue
        path = os.path.join(OUT, file)
        if not check:
            with open(path, "w", encoding="utf-8") as f:
                f.write((STATES_HEAD if "states" in file else HEAD).format(version=CoolProp.__version__) + "\n".join(lines) + "\n")
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
