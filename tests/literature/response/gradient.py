"""Writes gradient.json: level, group delay, cut-off, greatest displacement and greatest level, and how they change with each element, by mpmath.

The circuit is solved by hand and every derivative is a central difference at 50 digits; neither knows of adjoint
equations or of the implicit function theorem. 1 V rms, half space, 1 m; air 1.2 kg/m³, 343 m/s.
Run: python3 gradient.py
"""
import json
from pathlib import Path

from mpmath import diff, exp, findroot, log, log10, mp, mpf, pi

mp.dps = 50
RHO, C = mpf("1.2"), mpf(343)
DRIVER = dict(Re="5.6", Le="0.9e-3", Bl="14.3", Mms="0.086", Cms="0.4e-3", Rms="3.6", Sd="0.033")
BOXES = {"closed": ("0.04", None), "vented": ("0.06", "28")}
QL, QP = mpf(7), mpf(60)
FREQUENCIES = [15, 28, 45, 90, 400]


def elements(volume, fb):
    e = {name: mpf(value) for name, value in DRIVER.items()}
    e["Cab"] = mpf(volume) / (RHO * C**2)
    if fb is not None:
        w = 2 * pi * mpf(fb)
        e["vent"] = 1 / (w**2 * e["Cab"])
        e["leak"] = QL / (w * e["Cab"])
        e["ventLoss"] = w * e["vent"] / QP
    return e


def solve(e, f):
    """Cone velocity and radiated flow."""
    s = 2j * pi * f
    box = s * e["Cab"] + ((1 / e["leak"] + 1 / (e["ventLoss"] + s * e["vent"])) if "vent" in e else 0)
    coil = e["Re"] + s * e["Le"]
    moving = s * e["Mms"] + e["Rms"] + 1 / (s * e["Cms"]) + e["Sd"] ** 2 / box + e["Bl"] ** 2 / coil
    v = e["Bl"] / coil / moving
    return v, s * e["Cab"] * e["Sd"] * v / box


level = lambda e, f: 20 * log10(f * RHO * abs(solve(e, f)[1]) / mpf("2e-5"))
reference = lambda e: 20 * log10(RHO * e["Bl"] * e["Sd"] / (2 * pi * e["Mms"] * e["Re"] * mpf("2e-5")))
delay = lambda e, f: -diff(lambda x: log(solve(e, x)[1]).imag, f) / (2 * pi)
displacement = lambda e, f: abs(solve(e, f)[0]) / (2 * pi * f)


def cutoff(e):
    below = lambda f: level(e, f) - reference(e) + 10 * log10(2)
    grid = [mpf(2) * mpf("1.01") ** i for i in range(460)]
    last = max(i for i, f in enumerate(grid) if below(f) < 0)
    return findroot(below, (grid[last], grid[last + 1]), solver="anderson", tol=mpf(10) ** -80)


def greatest(e):
    grid = [30 * mpf("1.002") ** i for i in range(690)]
    best = max(grid, key=lambda f: displacement(e, f))
    if best in (grid[0], grid[-1]):
        return displacement(e, best)
    return displacement(e, findroot(lambda f: diff(lambda x: displacement(e, x), f), best))


XMAX, PE, VOLTAGE = mpf("0.004"), mpf(60), mpf(25)
LIMITS = {
    "travel": lambda e, f: XMAX / mp.sqrt(2) / displacement(e, f),
    "heat": lambda e, f: mp.sqrt(PE / e["Re"]) / abs((1 - e["Bl"] * solve(e, f)[0]) / (e["Re"] + 2j * pi * f * e["Le"])),
    "amplifier voltage": lambda e, f: VOLTAGE,
}
BANDS = [(mpf(27), mpf(110)), (mpf(80), mpf(90)), (mpf(120), mpf(500))]


def within(name, e, f):
    return level(e, f) + 20 * log10(LIMITS[name](e, f))


def binding(e, f):
    return min(LIMITS, key=lambda name: LIMITS[name](e, f))


def least(name, e, band):
    """The frequency of a band where the level within one limit is least."""
    low, high = band
    grid = [low * (high / low) ** (mpf(i) / 600) for i in range(601)]
    best = min(grid, key=lambda f: within(name, e, f))
    if best in (grid[0], grid[-1]):
        return best
    return findroot(lambda f: diff(lambda x: within(name, e, x), f), best)


def slopes(result, e):
    return {n: float(diff(lambda x: result({**e, n: exp(x)}), log(e[n]))) for n in e}


def leastPlayable(e, band):
    name = min(LIMITS, key=lambda name: within(name, e, least(name, e, band)))
    result = lambda e: within(name, e, least(name, e, band))
    return {
        "from": float(band[0]),
        "to": float(band[1]),
        "frequency": float(least(name, e, band)),
        "binding": name,
        "value": float(result(e)),
        "byElement": slopes(result, e),
    }


out = {"note": "gradient.py beside this file wrote it", "driver": {n: float(v) for n, v in DRIVER.items()}, "boxes": {}}
for name, (volume, fb) in BOXES.items():
    e = elements(volume, fb)
    out["boxes"][name] = {
        "level": [
            {
                "frequency": f,
                "value": float(level(e, f)),
                "byElement": slopes(lambda e: level(e, f), e),
                "byFrequency": float(diff(lambda x: level(e, exp(x)), log(mpf(f)))),
            }
            for f in FREQUENCIES
        ],
        "delay": [
            {
                "frequency": f,
                "value": float(delay(e, mpf(f))),
                "byElement": slopes(lambda e: delay(e, mpf(f)), e),
                "byFrequency": float(diff(lambda x: delay(e, exp(x)), log(mpf(f)))),
            }
            for f in FREQUENCIES
        ],
        "cutoff": {"value": float(cutoff(e)), "byElement": slopes(cutoff, e)},
        "greatest": {"value": float(greatest(e)), "byElement": slopes(greatest, e)},
        "playable": [
            {
                "frequency": f,
                "binding": binding(e, mpf(f)),
                "value": float(within(binding(e, mpf(f)), e, mpf(f))),
                "byElement": slopes(lambda e: within(binding(e, mpf(f)), e, mpf(f)), e),
                "byFrequency": float(diff(lambda x: within(binding(e, exp(x)), e, exp(x)), log(mpf(f)))),
            }
            for f in FREQUENCIES
        ],
        "leastPlayable": [leastPlayable(e, band) for band in BANDS],
    }
Path(__file__).with_name("gradient.json").write_text(json.dumps(out, indent=1) + "\n")
