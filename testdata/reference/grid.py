#!/usr/bin/env python3
"""A seeded grid of states of every refrigerant of the catalogue, computed with CoolProp (HEOS backend).

    python3 testdata/reference/grid.py              write testdata/published/grid/*.csv.gz
    python3 testdata/reference/grid.py --check      compute again and compare with the committed files
    python3 testdata/reference/grid.py R-410A ...   only these, to standard output

Needs: pip install CoolProp. calc/property/gridtest holds the engine against the files. Two files each for pure fluids and blends:

  saturation  q, T, p, liquid and vapour density, and h and s of the phase that has the composition of the refrigerant: of a
              blend the liquid at the bubble point (q = 0) and the vapour at the dew point (q = 1); of a pure fluid both rows.
              From -50 °C (the triple point where that is higher) to 0.98 of the critical temperature.
  states      T, p, density, h, s, cp, cv, speed of sound of one phase, to 150 °C and 60 bar.

The last columns are what CoolProp's ideal-gas part of a mixture leaves out. It evaluates the ideal part of a component at
Tc/T, where the equation was written in Tr/T with its reducing temperature, and multiplies ln ρ by the ratio of two gas constants.
dh, ds and dc (for cp and cv alike) are the sums over the components as CoolProp gives them for the pure fluid, less what
CoolProp gives for the mixture. They are zero but for rounding where Tr = Tc and the gas constants agree.

CoolProp's own density at (T, p) is the start; Newton's method with CoolProp's own p and dp/drho ends the search, because CoolProp
stops at some 1e-9. A state CoolProp cannot solve is left out; the number left out is printed, and the reasons with --why.
"""
import gzip
import io
import math
import os
import random
import re
import sys
import zlib

import CoolProp
import CoolProp.CoolProp as CP

import saturation

OUT = os.path.join(saturation.ROOT, "testdata", "published", "grid")
SEED = 20261125
SATURATION, STATES = {"pure": 40, "blend": 34}, {"pure": 120, "blend": 90}
MOST_T, MOST_P, LEAST_P = 423.15, 6e6, 1e4
COLUMNS = {"saturation": "refrigerant,q,T,p,liquid,vapor,h,s,dh,ds", "states": "refrigerant,phase,T,p,rho,h,s,cp,cv,w,dh,ds,dc"}
HEAD = """# {what} of {kind} refrigerants, CoolProp {version} (HEOS backend), seed {seed}. SI: K, Pa, kg/m3, J/kg, J/(kg K), m/s.
# Written and checked (--check) by testdata/reference/grid.py, which says what the columns are. Source key coolprop-8, read: library.
"""


class LeftOut(Exception):
    pass


class Fluid:
    """One refrigerant in CoolProp, with what the mixture's ideal part leaves out."""

    def __init__(self, name, critical, critical_p, shares):
        self.name = name
        names = [saturation.coolprop_name(c) for c, _ in shares]
        self.state = CP.AbstractState("HEOS", "&".join(names))
        self.pures = [CP.AbstractState("HEOS", n) for n in names]
        self.masses = [p.molar_mass() for p in self.pures]
        self.z = [1.0]
        self.kind = "pure" if len(shares) == 1 else "blend"
        if self.kind == "blend":
            moles = [p / m for (_, p), m in zip(shares, self.masses)]
            self.z = [x / sum(moles) for x in moles]
            self.state.set_mole_fractions(self.z)
        self.molar_mass = sum(x * m for x, m in zip(self.z, self.masses))
        self.critical, self.critical_p = critical, critical_p
        if self.kind == "pure":
            self.critical, self.critical_p = self.state.T_critical(), self.state.p_critical()
        self.lowest = max(p.Ttriple() for p in self.pures)
        self.highest = min(min(p.Tmax() for p in self.pures), MOST_T)
        self.most_p = min(min(p.pmax() for p in self.pures), MOST_P)

    def ideal(self, state, T, rho):
        """dh, ds, dc per kilogram at T, K, and molar density rho; state must be at that T."""
        if self.kind == "pure":
            return 0.0, 0.0, 0.0
        h = s = c = 0.0
        R = state.gas_constant()
        for x, p in zip(self.z, self.pures):
            p.specify_phase(CP.iphase_gas)
            p.update(CP.DmolarT_INPUTS, 1.0, T)  # the ideal part of h and c does not depend on density, that of s as -R ln rho
            Ri, t = p.gas_constant(), p.tau()
            h += x * Ri * T * t * p.dalpha0_dTau()
            s += x * (Ri * (t * p.dalpha0_dTau() - p.alpha0()) - R * math.log(x * rho))
            c -= x * Ri * t * t * p.d2alpha0_dTau2()
        t = state.tau()
        h -= R * T * t * state.dalpha0_dTau()
        s -= R * (t * state.dalpha0_dTau() - state.alpha0())
        c += R * t * t * state.d2alpha0_dTau2()
        return h / self.molar_mass, s / self.molar_mass, c / self.molar_mass

    def saturated(self, q, T):
        st = self.state
        st.unspecify_phase()
        try:
            st.update(CP.QT_INPUTS, q, T)
            p = st.p()
            if self.kind == "pure":
                liquid, vapor = st.saturated_liquid_keyed_output(CP.iDmass), st.saturated_vapor_keyed_output(CP.iDmass)
            else:
                liquid = st.saturated_liquid_keyed_output(CP.iDmolar) * sum(x * m for x, m in zip(st.mole_fractions_liquid(), self.masses))
                vapor = st.saturated_vapor_keyed_output(CP.iDmolar) * sum(x * m for x, m in zip(st.mole_fractions_vapor(), self.masses))
            h, s = st.hmass(), st.smass()
        except ValueError as e:
            raise LeftOut(str(e)[:90])
        if not (liquid > vapor > 0 and p > 0 and math.isfinite(h) and math.isfinite(s)):
            raise LeftOut(f"p {p}, densities {liquid}, {vapor}")
        rho = st.rhomolar()
        dh, ds, _ = self.ideal(st, T, rho)
        return p, liquid, vapor, h, s, dh, ds

    def single(self, T, p, phase):
        st = self.state
        st.specify_phase(phase)
        try:
            st.update(CP.PT_INPUTS, p, T)
            rho = st.rhomolar()
            for _ in range(8):
                st.update(CP.DmolarT_INPUTS, rho, T)
                slope = st.first_partial_deriv(CP.iP, CP.iDmolar, CP.iT)
                if not slope > 0:
                    raise LeftOut(f"unstable at {rho} mol/m3")
                step = (p - st.p()) / slope
                if abs(step) < 1e-13 * rho:
                    break
                rho += step
            st.update(CP.DmolarT_INPUTS, rho, T)
            dh, ds, dc = self.ideal(st, T, rho)
            return st.rhomass(), st.hmass(), st.smass(), st.cpmass(), st.cvmass(), st.speed_sound(), dh, ds, dc
        except ValueError as e:
            raise LeftOut(str(e)[:90])


def number(v):
    return f"{v:.11g}"


def small(v):
    """A correction: eight digits, and nothing where it is rounding."""
    return f"{v:.8g}" if abs(v) > 1e-8 else "0"


def saturation_rows(f, rnd, why):
    """Rows, and ln p over T of both curves, by which the phase of a state is chosen."""
    rows, curves = [], {0: [], 1: []}
    low = max(f.lowest, 223.15)
    high = 0.98 * f.critical
    if low > high - 20:
        low = f.lowest
    n = SATURATION[f.kind]
    for i in range(n):
        part = (i + rnd.random()) / n if 0 < i < n - 1 else i / (n - 1)
        T = round(low + (high - low) * part, 2)
        T = min(max(T, math.ceil(low * 100) / 100), math.floor(high * 100) / 100)
        for q in (0, 1):
            try:
                v = f.saturated(q, T)
            except LeftOut as e:
                why(f"{f.name} q={q} {T} K: {e}")
                continue
            curves[q].append((T, math.log(v[0])))
            rows.append(f"{f.name},{q},{T:.2f}," + ",".join(map(number, v[:5])) + "," + ",".join(map(small, v[5:])))
    return rows, curves


def pressure(curve, T):
    """Pressure on a curve, ln p over 1/T, within some 0.1 %."""
    for (a, pa), (b, pb) in zip(curve, curve[1:]):
        if a <= T <= b:
            return math.exp(pa + (pb - pa) * (1 / T - 1 / a) / (1 / b - 1 / a))
    return math.nan


def state_rows(f, rnd, curves, why):
    rows = []
    low = max(f.lowest + 0.5, 223.15)
    top = 0.98 * f.critical  # where saturation ends
    if low > top - 20:
        low = f.lowest + 0.5
    wanted = STATES[f.kind]
    tries = 0
    while len(rows) < wanted and tries < 6 * wanted:
        tries += 1
        region = ("liquid", "vapor", "above")[tries % 3]
        if region == "above" and not f.highest > top:
            continue
        T0, T1 = (low, min(top, f.highest)) if region != "above" else (top, f.highest)
        T = round(T0 + (T1 - T0) * rnd.random(), 2)
        even, share = rnd.random() < 0.5, rnd.random()

        def between(a, b):
            return float(f"{a + (b - a) * share if even else a * (b / a) ** share:.5g}")

        if region == "liquid":
            bubble = 1.005 * pressure(curves[0], T)
            if not bubble < f.most_p:
                continue
            p, phase = between(bubble, f.most_p), CP.iphase_liquid
        elif region == "vapor":
            dew = min(0.995 * pressure(curves[1], T), f.most_p)
            if not dew > 0:
                continue
            p, phase = between(min(LEAST_P, dew / 10), dew), CP.iphase_gas
        else:
            p = between(LEAST_P, f.most_p)
            # Around the critical point no state is given (refrigerant.AtTP says where); the box here is a little wider.
            if T < 1.06 * f.critical and 0.7 * f.critical_p < p < 1.2 * f.critical_p:
                continue
            if p > f.critical_p:
                phase = CP.iphase_supercritical if T > f.critical else CP.iphase_liquid
            else:
                phase = CP.iphase_supercritical_gas if T > f.critical and f.kind == "pure" else CP.iphase_gas
        try:
            v = f.single(T, p, phase)
        except LeftOut as e:
            why(f"{f.name} {region} {T} K, {p} Pa: {e}")
            continue
        if not all(map(math.isfinite, v)):
            why(f"{f.name} {region} {T} K, {p} Pa: {v}")
            continue
        rows.append(f"{f.name},{region},{T:.2f},{p:.5g}," + ",".join(map(number, v[:6])) + "," + ",".join(map(small, v[6:])))
    return rows


def critical_pressures():
    """Of the blends, from the catalogue."""
    with open(os.path.join(saturation.CATALOGUE, "blend.go"), encoding="utf-8") as f:
        return {name: float(p) for name, p in re.findall(r'^\t\{"(R-[^"]+)", "[^"]*", [\d.]+, (\d+),', f.read(), re.M)}


def compute(which, why):
    pressures = critical_pressures()
    files = {(kind, what): [] for kind in ("pure", "blend") for what in COLUMNS}
    for name, critical, shares in saturation.catalogue():
        if which and name not in which:
            continue
        try:
            f = Fluid(name, critical, pressures.get(name), shares)
        except ValueError as e:
            print(f"left out: {name}: {str(e)[:90]}", file=sys.stderr)
            continue
        rnd = random.Random(SEED ^ zlib.crc32(name.encode()))
        rows, curves = saturation_rows(f, rnd, why)
        files[f.kind, "saturation"] += rows
        files[f.kind, "states"] += state_rows(f, rnd, curves, why)
    return files


def text(kind, what, rows):
    return HEAD.format(what=what.capitalize(), kind=kind, version=CoolProp.__version__, seed=SEED) + COLUMNS[what] + "\n" + "\n".join(rows) + "\n"


def compare(path, kind, what, rows):
    """Number of values of the committed file that differ by more than 1e-8, or of a correction by more than 1e-4 of it."""
    with gzip.open(path, "rt", encoding="utf-8") as f:
        old = [l.split(",") for l in f.read().splitlines() if not l.startswith("#")][1:]
    new = [l.split(",") for l in rows]
    bad = 0
    if len(old) != len(new):
        print(f"{path}: {len(old)} rows committed, {len(new)} computed")
        bad += 1
    names = COLUMNS[what].split(",")
    for a, b in zip(old, new):
        if a[:3] != b[:3]:
            print(f"{path}: committed state {a[:4]}, computed {b[:4]}")
            return bad + 1
        for column, x, y in zip(names[3:], a[3:], b[3:]):
            x, y = float(x), float(y)
            scale = max(abs(x), {"h": 1e5, "s": 1e3}.get(column, 0))
            if column in ("dh", "ds", "dc"):
                ok = abs(x - y) <= 1e-4 * abs(x) + 1e-6
            else:
                ok = abs(x - y) <= 1e-8 * scale
            if not ok:
                print(f"{path}: {','.join(a[:3])} {column}: committed {x}, computed {y}")
                bad += 1
    print(f"{path}: {len(new)} states compared")
    return bad


def main(args):
    left = []

    def why(text):
        left.append(text)
        if "--why" in args:
            print("left out:", text, file=sys.stderr)

    which = {a for a in args if not a.startswith("--")}
    files = compute(which, why)
    bad = 0
    for (kind, what), rows in files.items():
        if which:
            print("\n".join(rows))
            continue
        path = os.path.join(OUT, f"{kind}-{what}.csv.gz")
        if "--check" in args:
            bad += compare(path, kind, what, rows)
            continue
        os.makedirs(OUT, exist_ok=True)
        data = io.BytesIO()
        with gzip.GzipFile(fileobj=data, mode="wb", mtime=0, compresslevel=9) as z:
            z.write(text(kind, what, rows).encode())
        with open(path, "wb") as out:
            out.write(data.getvalue())
        print(f"{path}: {len(rows)} states, {len(data.getvalue())} bytes")
    print(f"{sum(map(len, files.values()))} states; {len(left)} not solved by CoolProp {CoolProp.__version__} and left out", file=sys.stderr)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
