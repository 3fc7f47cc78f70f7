#!/usr/bin/env python3
"""Check values of moist air and of the worksheet "airflow" from psychrolib (equations of the ASHRAE Handbook).

    python3 testdata/reference/psychrometrics.py            write testdata/published/moistair/psychrolib.csv and fill in rows of airflow.csv
    python3 testdata/reference/psychrometrics.py --check    compute again and compare with the committed values

In testdata/published/worksheets/airflow.csv only rows whose source is psychrolib are touched. The coil and the compressor are
computed here a second time: psychrolib for the air, CoolProp for the refrigerant at every trial, nothing tabulated.

Needs: pip install psychrolib CoolProp (see requirements.txt).
"""
import csv
import importlib.metadata
import io
import math
import os
import sys

import psychrolib as ps

import worksheets as ws

ps.SetUnitSystem(ps.SI)
VERSION = importlib.metadata.version("psychrolib")
PUBLISHED = os.path.join(ws.ROOT, "testdata", "published")
STATES = os.path.join(PUBLISHED, "moistair", "psychrolib.csv")
SHEET = os.path.join(PUBLISHED, "worksheets", "airflow.csv")

FLOW = {"m3/h": 1 / 3600, "L/s": 1e-3, "m3/s": 1.0, "cfm": 0.3048**3 / 60}
POWER = {"kW": 1e3, "W": 1.0, "ton": 12000 * 1055.05585262 / 3600}
VELOCITY = {"m/s": 1.0, "ft/min": 0.3048 / 60}
AREA = {"m2": 1.0, "ft2": 0.3048**2}


def states():
    """Yields dry bulb °C, humidity kind, its value, pressure Pa, and W, h kJ/kg, v m³/kg."""
    for p in (101325.0, 84556.0):
        for t in (-5.0, 5.0, 15.0, 24.0, 27.0, 35.0, 45.0):
            for rh in (0.1, 0.4, 0.5, 0.8, 1.0):
                yield t, "relative", rh, p, ps.GetHumRatioFromRelHum(t, rh, p)
            for depression in (0.5, 3.0, 6.0):
                wet = t - depression
                w = ps.GetHumRatioFromTWetBulb(t, wet, p)
                if w > 1e-7:  # psychrolib puts its floor in place of a negative value
                    yield t, "wet-bulb", wet, p, w


def state_rows():
    for t, kind, value, p, w in states():
        yield [f"{t:g}", kind, f"{value:g}", f"{p:g}", f"{w:.9f}", f"{ps.GetMoistAirEnthalpy(t, w):.3f}", f"{ps.GetMoistAirVolume(t, w, p):.8f}"]


def bisect(low, high, holds):
    for _ in range(45):
        middle = (low + high) / 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high


class Compressor:
    def __init__(self, name, inputs):
        self.r = ws.Refrigerant(name)
        self.liquid = self.enthalpy(0, 313.15)

    def enthalpy(self, quality, t):
        _, p, _ = self.r.at(quality, temperature=t)
        self.r.state.update(ws.CP.PQ_INPUTS, p, quality)
        return self.r.state.hmass()

    def at_mid(self, mid):
        """Pressure whose mid-point of bubble and dew is mid, K."""
        off = lambda x: (self.r.at(0, pressure=math.exp(x))[0] + self.r.at(1, pressure=math.exp(x))[0]) / 2 - mid
        x1 = math.log(self.r.at(0, temperature=mid)[1])
        x0, y0, y1 = x1 - 0.02, off(x1 - 0.02), off(x1)
        while abs(y1) > 1e-9:  # secant in ln p, in which the line is almost straight
            x0, y0, x1 = x1, y1, x1 - y1 * (x1 - x0) / (y1 - y0)
            y1 = off(x1)
        return math.exp(x1)

    def takes(self, mid):
        p = self.at_mid(mid)
        rho = self.r.at(1, pressure=p)[2]
        h, _ = self.r.vapour(p)
        return rho * (h - self.liquid)


def quantity(text, table):
    number, unit = text.split()
    return float(number) * table[unit]


class Coil:
    """h in J/kg, temperatures in °C."""

    def __init__(self, i):
        self.p = ws.atmosphere(i)
        self.t = ws.kelvin(i["air-on"]) - 273.15
        self.w = self.humidity(i, "on", self.t)
        self.h = ps.GetMoistAirEnthalpy(self.t, self.w)
        self.v = ps.GetMoistAirVolume(self.t, self.w, self.p)
        q = lambda key, table: quantity(i[key], table)
        way = i.get("flow-by", "flow")
        if way == "flow":
            flow = q("flow", FLOW)
        elif way == "face":
            flow = q("velocity", VELOCITY) * q("area", AREA)
        else:
            rise, u = ws.split(i["rise"])
            flow = q("heater", POWER) * self.v / ((1006 + 1860 * self.w) * (rise if u == "K" else rise / 1.8))
        self.rated = q("rated-flow", FLOW)
        self.share = flow / self.rated
        self.mass = self.rated / self.v
        if i["unit"] == "running":
            self.t2 = ws.kelvin(i["air-off"]) - 273.15
            self.w2 = self.humidity(i, "off", self.t2)
            self.h2 = ps.GetMoistAirEnthalpy(self.t2, self.w2)
            r = ws.Refrigerant(i["refrigerant"])
            p1 = ws.pascal(i["suction-pressure"], self.p)
            self.te = (r.at(0, pressure=p1)[0] + r.at(1, pressure=p1)[0]) / 2 - 273.15
            slope = (self.w - self.w2) / (self.t - self.t2)
            over = lambda t: self.w2 + slope * (t - self.t2) - ps.GetSatHumRatio(t, self.p)
            t = self.t2
            while t > self.te and over(t) < 0:
                t -= 0.001
            self.ts = max(t, self.te)
            self.anchor = self.share
            self.part = (self.h - self.h2) / (self.h - self.surface(self.ts))
            self.heat = self.mass * self.share * (self.h - self.h2)
        else:
            self.te = ws.kelvin(i.get("rated-evaporating", "7 C")) - 273.15
            self.anchor, self.part = 1.0, 0.8
            self.heat = q("rated-capacity", POWER)
            self.ts = self.surface_for(self.h - self.heat / (self.mass * self.part))
        self.ntu = -math.log(1 - self.part)
        self.resistance = (self.ts - self.te) / self.heat

    def humidity(self, i, side, t):
        if f"{side}-relative" in i:
            return ps.GetHumRatioFromRelHum(t, ws.split(i[f"{side}-relative"])[0] / 100, self.p)
        return ps.GetHumRatioFromTWetBulb(t, ws.kelvin(i[f"{side}-wet"]) - 273.15, self.p)

    def surface(self, t):
        return ps.GetMoistAirEnthalpy(t, min(self.w, ps.GetSatHumRatio(t, self.p)))

    def surface_for(self, h):
        return bisect(-70, self.t, lambda t: self.surface(t) >= h)

    def grip(self, f):
        return self.mass * f * (1 - math.exp(-self.ntu * (f / self.anchor) ** -0.2))

    def flow_for(self, heat, te):
        drive = self.h - self.surface(te + self.resistance * heat)
        return bisect(0.001, 20, lambda f: self.grip(f) * drive >= heat)

    def settle(self, f, k):
        one, grip = k.takes(self.te + 273.15), self.grip(f)

        def holds(t):
            q = self.heat * k.takes(t + 273.15) / one
            return grip * (self.h - self.surface(t + self.resistance * q)) <= q

        t = bisect(-38, min(28, self.t), holds)
        return t, self.heat * k.takes(t + 273.15) / one


def airflow_value(i, output, unit):
    c = Coil(i)
    at = ws.split(i.get("if-flow", "50 %"))[0] / 100
    temperature = lambda t: ws.celsius_or_fahrenheit(t + 273.15, unit)
    if output == "share":
        return 100 * c.share
    if output in ("capacity", "sensible", "latent"):
        m = c.mass * c.share
        total = m * (c.h - c.h2 - (c.w - c.w2) * 4186 * c.t2)
        sensible = m * (1006 + 1860 * c.w2) * (c.t - c.t2)
        return {"capacity": total, "sensible": sensible, "latent": total - sensible}[output] / POWER[unit]
    if output == "surface":
        return temperature(c.ts)
    if output == "bypass":
        return (c.t2 - c.ts) / (c.t - c.ts)
    if output == "frost-capacity":
        return 100 * c.flow_for(c.heat, 0)
    if output in ("if-held", "if-held-pressure"):
        t = c.surface_for(c.h - c.heat / c.grip(at)) - c.resistance * c.heat
        return temperature(t) if output == "if-held" else ws.from_pascal(Compressor(i["refrigerant"], i).at_mid(t + 273.15), unit, c.p)
    k = Compressor(i["refrigerant"], i)
    if output in ("superheat", "superheat-heat", "superheat-air"):
        p, t = ws.pascal(i["suction-pressure"], c.p), ws.kelvin(i["suction-temperature"])
        gas, dry = k.r.single(t, p)[0], k.r.vapour(p)[0]
        part = (gas - dry) / (gas - k.liquid)
        if output == "superheat":
            return ws.difference(t - k.r.at(1, pressure=p)[0], unit)
        return 100 * (part if output == "superheat-heat" else 1 - c.flow_for(c.heat * (1 - part), c.te) / c.share)
    if output == "frost-speed":
        return 100 * c.flow_for(c.heat * k.takes(273.15) / k.takes(c.te + 273.15), 0)
    if output == "evaporating":
        return temperature(c.te if i["unit"] == "running" else c.settle(c.share, k)[0])
    if output == "evaporating-rated":
        return temperature(c.settle(1, k)[0])
    if output == "if-speed":
        return temperature(c.settle(at, k)[0])
    if output == "if-speed-pressure":
        return ws.from_pascal(k.at_mid(c.settle(at, k)[0] + 273.15), unit, c.p)
    if output == "if-speed-capacity":
        return 100 * c.settle(at, k)[1] / c.settle(1, k)[1]
    raise ValueError("no rule for " + output)


def tolerance(output, unit):
    """The reasons stand at the head of airflow.csv."""
    if output in ("surface", "evaporating", "evaporating-rated", "if-speed", "if-held"):
        return 0.05 if unit == "C" else 0.1
    if output in ("frost-speed", "frost-capacity", "if-speed-capacity"):
        return 0.2
    if output == "superheat":
        return 0.01
    if output.startswith("superheat"):
        return 0.05
    if output.endswith("pressure"):
        return {"barg": 0.015, "psig": 0.2}[unit]
    return {"share": 0.001, "bypass": 0.002}.get(output, 0.01)


def main(args):
    check = "--check" in args
    print("psychrolib", VERSION, "CoolProp", ws.CoolProp.__version__)
    bad = 0
    head = ["dry_bulb_C", "humidity", "value", "pressure_Pa", "W", "enthalpy_J_per_kg", "volume_m3_per_kg"]
    rows = list(state_rows())
    if check:
        with open(STATES, encoding="utf-8", newline="") as f:
            committed = list(csv.reader(line for line in f if not line.startswith("#")))[1:]
        if committed != rows:
            bad += 1
            print(STATES, "differs from what is computed now")
    else:
        with open(STATES, "w", encoding="utf-8", newline="") as f:
            f.write(f"# Moist air from psychrolib {VERSION}, written by testdata/reference/psychrometrics.py. Value: share of saturation, or °C wet bulb.\n")
            out = csv.writer(f, lineterminator="\n")
            out.writerow(head)
            out.writerows(rows)
    print(f"psychrolib.csv: {len(rows)} states {'compared' if check else 'written'}")
    with open(SHEET, encoding="utf-8", newline="") as f:
        lines = f.read().split("\n")
    done = 0
    for n, line in enumerate(lines):
        if line.startswith("#") or ",psychrolib," not in line:
            continue
        row = next(csv.reader([line]))
        inputs = dict(part.split("=", 1) for part in (p.strip() for p in row[1].split(";")))
        value = airflow_value(inputs, row[2], row[4])
        done += 1
        if check:
            if not abs(float(row[3]) - value) <= float(row[5]) / 10:
                bad += 1
                print(f"airflow.csv:{n + 1}: committed {row[3]}, computed {value:.8g} {row[4]}")
            continue
        row[3], row[5], row[7] = f"{value:.6g}", f"{tolerance(row[2], row[4]):g}", f"psychrometrics.py, {VERSION}, CoolProp {ws.CoolProp.__version__}"
        out = io.StringIO()
        csv.writer(out, lineterminator="").writerow(row)
        lines[n] = out.getvalue()
    if not check:
        with open(SHEET, "w", encoding="utf-8", newline="") as f:
            f.write("\n".join(lines))
    print(f"airflow.csv: {done} rows {'compared' if check else 'written'}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
