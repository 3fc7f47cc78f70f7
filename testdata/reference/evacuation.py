"""Check values of the worksheets pump-down and moisture-in, computed a second way.

The pump-down is integrated by quadrature over the far pressure with a root search for the pressure at the pump; the program
steps along the pump's pressure with closed forms. Both use the same published formulas: these values check the programming.
Run: python3 testdata/reference/evacuation.py   (needs scipy and CoolProp)
"""
import math
import CoolProp.CoolProp as C
from scipy.integrate import quad
from scipy.optimize import brentq

MICRON = 101325 / 760000
CFM = 0.028316846592 / 60
RT, ETA = 84147.0, 1.82e-5


def passed(d, l, p1, p2):
    """Flow through a tube, Pa m3/s: the least of Knudsen's formula, Blasius friction and choking."""
    pm = (p1 + p2) / 2
    knudsen = (1350 * d**4 * pm + 121 * d**3 * (1 + 192 * d * pm) / (1 + 237 * d * pm)) / l * (p1 - p2)
    area = math.pi / 4 * d * d
    k = 0.3164 * (math.pi * d * ETA * RT / 4) ** 0.25 * l / d / (RT * area**2)
    return min(knudsen, ((p1 * p1 - p2 * p2) / k) ** (1 / 1.75), 200 * area * p1)


def flow(d, l, speed, base, p):
    p2 = brentq(lambda x: passed(d, l, p, x) - speed * (x - base), base, p, xtol=1e-13, rtol=1e-14)
    return speed * (p2 - base), p2


def dry(d, l, speed, base, volume, p0, p1):
    f = lambda u: volume * math.exp(u) / flow(d, l, speed, base, math.exp(u))[0]
    return quad(f, math.log(p1), math.log(p0), limit=400, epsrel=1e-7)[0]


if __name__ == "__main__":
    s = 6 * CFM
    for d in (4.8e-3, 7.9e-3, 11e-3, 19e-3):
        row = []
        for m in (10000, 2000, 500, 200):
            q, p2 = flow(d, 1.5, s, 0.001, m * MICRON)
            row.append(f"{100 * q / (m * MICRON * s):.3f}")
        q, p2 = flow(d, 1.5, s, 0.001, 500 * MICRON)
        t = dry(d, 1.5, s, 0.001, 0.06, 101325, 500 * MICRON)
        w = 1e-3 * 461.523 * 293.15 / q
        print(f"{d*1e3:5.1f} mm  shares {row}  mean {(500 + p2 / MICRON) / 2:.2f} micron  pump {p2 / MICRON:.3f}  dry {t / 60:.3f} min  1 g {w / 3600:.4f} h")
    for d in (4.8e-3, 7.9e-3):
        q, _ = flow(d, 1.5, s, 0.001, 500 * MICRON)
        pm = (500 * MICRON + flow(d, 1.5, s, 0.001, 500 * MICRON)[1]) / 2
        print(d, "conductance", 1e3 * q / (500 * MICRON - flow(d, 1.5, s, 0.001, 500 * MICRON)[1]), "L/s")
    for t, rh in ((10, 1), (20, 1), (30, 1), (28, 0.7)):
        print(t, rh, 1e3 * rh * C.PropsSI("D", "T", 273.15 + t, "Q", 1, "Water"), "g/m3")
    c = 0.7 * C.PropsSI("P", "T", 301.15, "Q", 1, "Water") / (461.523 * 301.15)
    D = 0.2178e-4 * (301.15 / 273.15) ** 1.81
    d, l, sec = 25.3e-3, 6.0, 4 * 3600.0
    area = math.pi / 4 * d * d
    fo = D * sec / l**2
    total = sum((1 - math.exp(-n * n * math.pi**2 * fo)) / n**2 for n in range(1, 20000))
    low = area * c * l * (fo + 2 / math.pi**2 * total)
    air = 0.1 * math.sqrt(9.80665 * d**5 * 10 / 301.15) * sec + 0.08 * 10 / 301.15 * (1 + sec / 86400)
    print("diffused", low * 1e3, "g; air moved", air * 1e3, "L; most", (low + air * c) * 1e3, "g; ppm", low / 6 * 1e6, (low + air * c) / 6 * 1e6)
