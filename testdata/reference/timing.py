#!/usr/bin/env python3
"""Times CoolProp's low-level interface (AbstractState) at the states of calc/property/gridtest/bench_test.go.

    python3 testdata/reference/timing.py        one JSON object: version, and microseconds by refrigerant and kind of state

    bubble, dew     QT_INPUTS: pressure and both densities at a temperature
    vapor, liquid   PT_INPUTS: density, h, s, cp, cv and speed of sound; CoolProp finds the phase, as ours does
    ... phase given the same with the phase imposed beforehand, which spares CoolProp the search (ours has no such door)

The fastest of some passes counts, in favour of CoolProp. The call from Python costs some 0.1 µs a property.
make bench runs it. Exit code 3: CoolProp is not installed (pip install CoolProp).
"""
import json
import sys
import time

try:
    import CoolProp
    import CoolProp.CoolProp as CP
except ImportError:
    sys.exit(3)

import saturation

REFRIGERANTS = ("R-32", "R-134a", "R-410A", "R-448A", "R-454B")
# The same in bench_test.go.
SATURATED = [235.0 + i for i in range(64)]
VAPOR = [(280 + 0.5 * i, 3e5) for i in range(64)]
LIQUID = [(250 + 0.5 * i, 3e6) for i in range(64)]


def passes(run, states):
    """Microseconds a state, the fastest pass of some 0.4 s, and how many states could not be solved."""
    good, failed = [], 0
    for s in states:
        try:
            run(s)
            good.append(s)
        except ValueError:
            failed += 1
    best, end = float("inf"), time.perf_counter() + 0.4
    while good and (best == float("inf") or time.perf_counter() < end):
        start = time.perf_counter()
        for s in good:
            run(s)
        best = min(best, (time.perf_counter() - start) / len(good))
    return {"us": best * 1e6, "failed": failed}


def main():
    out = {}
    shares_of = {name: shares for name, _, shares in saturation.catalogue()}
    for name in REFRIGERANTS:
        shares = shares_of[name]
        names = [saturation.coolprop_name(c) for c, _ in shares]
        state = CP.AbstractState("HEOS", "&".join(names))
        if len(shares) > 1:
            moles = [p / CP.PropsSI("M", n) for (_, p), n in zip(shares, names)]
            state.set_mole_fractions([x / sum(moles) for x in moles])

        def saturated(q):
            def run(T):
                state.update(CP.QT_INPUTS, q, T)
                state.p()
                state.saturated_liquid_keyed_output(CP.iDmolar)
                state.saturated_vapor_keyed_output(CP.iDmolar)
            return run

        def single(s):
            state.update(CP.PT_INPUTS, s[1], s[0])
            state.rhomass()
            state.hmass()
            state.smass()
            state.cpmass()
            state.cvmass()
            state.speed_sound()

        state.unspecify_phase()
        out[name + "/bubble"] = passes(saturated(0), SATURATED)
        if len(shares) > 1:
            out[name + "/dew"] = passes(saturated(1), SATURATED)
        out[name + "/vapor"] = passes(single, VAPOR)
        out[name + "/liquid"] = passes(single, LIQUID)
        state.specify_phase(CP.iphase_gas)
        out[name + "/vapor, phase given"] = passes(single, VAPOR)
        state.specify_phase(CP.iphase_liquid)
        out[name + "/liquid, phase given"] = passes(single, LIQUID)
    json.dump({"version": CoolProp.__version__, "times": out}, sys.stdout, indent=1)
    print()


if __name__ == "__main__":
    main()
