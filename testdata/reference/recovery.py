#!/usr/bin/env python3
"""Expected values from CoolProp for the worksheets of recovery, purging and the standing pressure test.

    python3 testdata/reference/recovery.py [--check]      as worksheets.py, for the files named in RULES below

Needs: pip install CoolProp.
"""
import math
import sys

import CoolProp.CoolProp as CP

import worksheets as base

split, kelvin, pascal = base.split, base.kelvin, base.pascal
POUND = 0.45359237
PIPE = {"28.6 30": math.pi / 4 * (1.025 * 0.0254) ** 2 * 30}  # size and length of the rows, volume in m3
REFERENCE = (70 + 459.67) / 1.8


def rho(t, p):
    return CP.PropsSI("D", "T", t, "P", p, "Nitrogen")


def pressure(t, d):
    return CP.PropsSI("P", "T", t, "D", d, "Nitrogen")


def cylinder(inputs, output, unit):
    r = base.Refrigerant(inputs["refrigerant"])
    volume = split(inputs["water-capacity"])[0] / 1000

    def liquid(t):
        """Density of the bubbling liquid; its mixture solver fails at single temperatures, so a neighbour 1 mK away may stand in."""
        for step in (0, 1e-3, -1e-3, 2e-3, -2e-3, 5e-3):
            try:
                return r.at(0, temperature=t + step)[2]
            except ValueError:
                continue
        raise ValueError(f"no state near {t} K")

    if output == "rating-needed":
        if inputs["marking"] == "test":
            return (r.at(0, temperature=338.15)[1] - 101325) / 1e5
        return (r.at(0, temperature=328.15)[1] - 101325) / 1.25e5
    warm, guide = liquid(kelvin(inputs["warmest"])), liquid(298.15)
    full = liquid(328.15)
    allowed = min(0.8 * warm, full)
    if output == "guideline":
        return 0.8 * volume * guide
    if output == "allowed":
        return volume * allowed
    want = allowed if output == "liquid-full" else 0.8 * guide
    t0, t1 = 325.0, 327.0
    d0, d1 = liquid(t0), liquid(t1)
    while abs(t1 - t0) > 1e-4:
        t0, t1, d0 = t1, t1 + (want - d1) * (t1 - t0) / (d1 - d0), d1
        d1 = liquid(t1)
    return t1 - 273.15


def level(inputs, output, unit):
    return base.Refrigerant(inputs["refrigerant"]).at(0, temperature=313.15)[1] / 1e3


def purge(inputs, output, unit):
    atm = base.atmosphere(inputs)
    used = (5 * PIPE[inputs["lines"]] + 5e-3 * 30) * rho(REFERENCE, atm)
    if output == "mass":
        return used
    v, t = split(inputs["cylinder"])[0] / 1000, kelvin(inputs["cylinder-temperature"])
    d = rho(t, pascal(inputs["cylinder-pressure"], atm))
    if output == "cylinder-holds":
        return d * v / rho(REFERENCE, 101325)
    return (pressure(t, d - used / v) - atm) / 1e5


def standing(inputs, output, unit):
    atm = base.atmosphere(inputs)
    t1, t2 = kelvin(inputs["start-temperature"]), kelvin(inputs["end-temperature"])
    p1 = pascal(inputs["start-pressure"], atm)
    d = rho(t1, p1)
    p2 = pressure(t2, d)
    slope = pressure(t2 + 0.5, d) - pressure(t2 - 0.5, d)
    if output == "expected":
        return base.from_pascal(p2, unit, atm)
    if output == "slope":
        return slope / 1e3
    missing = p2 - pascal(inputs["end-pressure"], atm)
    if output == "loss":
        return missing / 1e3
    a = 0.001 * 60e5
    u = 2 * math.sqrt((a**2 * (1 + (p2 / p1) ** 2) + 2 * (slope * 0.5) ** 2 + 1e3**2) / 3)
    hidden = u + max(0, missing)
    return {"doubt": u / 1e3, "hidden": hidden / 1e3, "hidden-rate": hidden * 0.06 / 86400}[output]


def tolerance(file, output, value):
    """The reasons stand at the head of each file."""
    if output in ("liquid-full", "guideline-full"):
        return 0.01
    if output in ("loss", "slope"):
        return 0.002
    if output == "rating-needed" and value > 35:
        return 0.15
    return float(f"{max(1e-5 * abs(value), 1e-6):.2g}")


base.RULES = {"recovery-cylinder.csv": cylinder, "recovery-level.csv": level, "purge.csv": purge, "standing-pressure.csv": standing}
base.FILES = list(base.RULES)
base.tolerance = tolerance

if __name__ == "__main__":
    sys.exit(base.main(sys.argv[1:]))
