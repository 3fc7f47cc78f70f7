#!/usr/bin/env python3
"""Turns the collected equations (the folder of published parameters) into check values for the tests.

    python3 testdata/reference/published_points.py FOLDER     FOLDER holds fluids/ and pseudo_pure/

Writes pure-check-points.csv (saturation states solved in extended precision, stored with each equation) and
pseudo-pure.csv (the bubble and dew pressure curves of Lemmon's 2003 pseudo-pure equations, evaluated here).
"""
import json
import math
import os
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
OUT = os.path.join(ROOT, "testdata", "published", "saturation")
NAMES = {
    "CarbonDioxide": "R-744", "Ammonia": "R-717", "Water": "R-718", "Nitrogen": "R-728", "Argon": "R-740", "Oxygen": "R-732",
    "Helium": "R-704", "n-Propane": "R-290", "IsoButane": "R-600a", "n-Butane": "R-600", "Isopentane": "R-601a", "n-Pentane": "R-601",
    "Ethane": "R-170", "Propylene": "R-1270", "DimethylEther": "R-E170", "RC318": "R-C318", "R152A": "R-152a", "R227EA": "R-227ea",
    "R236FA": "R-236fa",
}
COLUMNS = "refrigerant,quantity,input,input_unit,expected,unit,tolerance,source,locator,read\n"


def name(n):
    return NAMES.get(n, n.replace("R", "R-", 1))


def check_points(folder):
    out = ["# Saturation states of pure fluids solved in extended precision, as stored with each equation of state in the fluid files of\n",
           "# the open reference library CoolProp (state of 23 July 2026; keys CHECK_POINTS). Tolerance is relative; 1e-9 leaves room\n",
           "# for the rounding of 64-bit arithmetic at vapour pressures far below one pascal.\n", COLUMNS]
    for file in sorted(os.listdir(os.path.join(folder, "fluids"))):
        with open(os.path.join(folder, "fluids", file), encoding="utf-8") as f:
            d = json.load(f)
        for i, c in enumerate(d["CHECK_POINTS"], 1):
            for q, k, u in (("saturation pressure", "p(mp) / Pa", "Pa"), ("liquid density", "rho'(mp) / mol/m^3", "mol/m3"),
                            ("vapor density", "rho''(mp) / mol/m^3", "mol/m3")):
                out.append(f"{name(file[:-5])},{q},{c['T / K']!r},K,{c[k]!r},{u},1e-9,coolprop-8,{file} check point {i},library\n")
    return out


def pseudo_pure(folder):
    out = ["# Bubble and dew pressure of four blends from the pseudo-pure equations of Lemmon, Int. J. Thermophys. 24 (2003) 991, fitted\n",
           "# on their own, evaluated from the coefficients as collected in CoolProp. Tolerance is relative: the two models agree\n",
           "# within about 0.03 %; 0.05 % allows for the ends of the range.\n", COLUMNS]
    for n in ("R404A", "R407C", "R410A", "R507A"):
        with open(os.path.join(folder, "pseudo_pure", n + ".json"), encoding="utf-8") as f:
            d = json.load(f)
        for key, quantity in (("pL", "bubble pressure"), ("pV", "dew pressure")):
            a = d["ANCILLARIES"][key]
            for c in range(-50, 56, 15):
                T = c + 273.15
                th = 1 - T / a["T_r"]
                u = sum(x * th ** e for x, e in zip(a["n"], a["t"]))
                if a["using_tau_r"]:
                    u *= a["T_r"] / T
                out.append(f"{name(n)},{quantity},{T:.2f},K,{a['reducing_value'] * math.exp(u):.8g},Pa,5e-4,lemmon-ijt-2003,{key} curve,library\n")
    return out


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    for file, lines in (("pure-check-points.csv", check_points(sys.argv[1])), ("pseudo-pure.csv", pseudo_pure(sys.argv[1]))):
        with open(os.path.join(OUT, file), "w", encoding="utf-8") as f:
            f.writelines(lines)
        print(f"{os.path.join(OUT, file)}: {len(lines)} lines")
