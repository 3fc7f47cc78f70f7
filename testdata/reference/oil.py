#!/usr/bin/env python3
"""Expected values from CoolProp for the worksheets suction-drier and oil-velocity.

    python3 testdata/reference/oil.py [--check]      as worksheets.py, for the files named in RULES below

Needs: pip install CoolProp.
"""
import math
import sys

import CoolProp.CoolProp as CP

import worksheets as base

split, kelvin = base.split, base.kelvin
PSI, FOOT, BTU, POUND = 6894.757293168361, 0.3048, 1055.05585262, 0.45359237
FACTOR = {"K": 1, "F": 1 / 1.8, "kPa": 1e3, "psi": PSI, "%": 0.01, "m/s": 1, "ft/min": FOOT / 60, "kW": 1e3, "ton": 12000 * BTU / 3600,
          "kg/s": 1, "lb/h": POUND / 3600, "kg/m3": 1, "lb/ft3": POUND / FOOT**3, "mm": 1e-3, "in": 0.0254}
BORE = {"28.6 mm": 1.025 * 0.0254, "1.125 in": 1.025 * 0.0254}


def si(text):
    v, u = split(text)
    return v * FACTOR[u]


def gas(r, t, p):
    """Density and enthalpy of the gas."""
    r.state.update(CP.PT_INPUTS, p, t)
    return r.state.rhomass(), r.state.hmass()


def drier(inputs, output, unit):
    r = base.Refrigerant(inputs["refrigerant"])
    t = kelvin(inputs["evaporating"])
    p, drop, first = r.at(1, temperature=t)[1], si(inputs["drop"]), si(inputs["first"])
    if output == "loss":
        return (t - r.at(1, pressure=p - drop)[0]) / FACTOR[unit]
    if output == "rise-loss":
        return (r.at(1, pressure=p - first)[0] - r.at(1, pressure=p - drop)[0]) / FACTOR[unit]
    h, _ = r.vapour(p)
    dense = r.at(1, pressure=p)[2]
    low, high = r.at(1, pressure=p - drop)[0] + 1e-6, t + 5
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if gas(r, middle, p - drop)[1] < h else (low, middle)
    return (1 - gas(r, middle, p - drop)[0] / dense) / FACTOR[unit]


def velocity(inputs, output, unit):
    r = base.Refrigerant(inputs["refrigerant"])
    t = kelvin(inputs["evaporating"])
    rho, h = gas(r, t + si(inputs["superheat"]), r.at(1, temperature=t)[1])
    r.state.update(CP.QT_INPUTS, 0, kelvin(inputs["liquid"]))
    flow = si(inputs["full"]) / (h - r.state.hmass())
    d = BORE.get(inputs["outside"]) or si(inputs["outside"]) - 2 * si(inputs["wall"])
    fast = flow / rho / (math.pi / 4 * d * d)
    value = {"density": rho, "flow": flow, "speed-full": fast, "speed-low": fast * si(inputs["lowest"]) / si(inputs["full"])}
    if output == "shell-speed":
        return fast * (d / si(inputs["shell"])) ** 2
    return value[output] / FACTOR[unit]


base.RULES = {"suction-drier.csv": drier, "oil-velocity.csv": velocity}
base.FILES = list(base.RULES)
# A loss is a difference of two temperatures that both engines solve to 1e-5 K or so; a cost one of two densities.
base.tolerance = lambda file, output, value: 0.002 if output.endswith("loss") else float(f"{2e-4 * abs(value):.2g}") if output == "cost" else float(f"{2e-5 * abs(value):.2g}")

if __name__ == "__main__":
    sys.exit(base.main(sys.argv[1:]))
