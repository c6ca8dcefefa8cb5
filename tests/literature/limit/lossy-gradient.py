"""Writes lossy-gradient.json: the greatest level of a vented box whose vent loses by its speed, and how it changes with each element.

The circuit is solved by hand, the speed of the air by secants, and every derivative is a central difference at 50 digits; none of
them knows of adjoint equations or of the implicit function theorem. Half space, 1 m; air 1.2 kg/m³, 343 m/s.
Run: python3 lossy-gradient.py
"""
import json
from pathlib import Path

from mpmath import diff, exp, log, log10, mp, mpf, pi, sqrt

mp.dps = 50
C = mpf(343)
DRIVER = dict(Re="5.6", Le="0.9e-3", Bl="14.3", Mms="0.086", Cms="0.4e-3", Rms="3.6", Sd="0.033")
VOLUME, FB, QL, QP, AREA = mpf("0.06"), mpf(28), mpf(7), mpf(60), mpf("0.01")
XMAX, PE, VOLTAGE, AIR = mpf("0.004"), mpf(60), mpf(25), mpf("2.5")
FREQUENCIES = [15, 24, 28, 45, 90, 400]
BANDS = [(mpf(28), mpf(110)), (mpf(120), mpf(500))]

e = {name: mpf(value) for name, value in DRIVER.items()}
w = 2 * pi * FB
e["air.density"] = mpf("1.2")
e["Cab"] = VOLUME / (e["air.density"] * C**2)
e["vent"] = 1 / (w**2 * e["Cab"])
e["leak"] = QL / (w * e["Cab"])
e["ventLoss"] = w * e["vent"] / QP
e["perVentArea"] = 1 / AREA

# Specific resistances by peak speed, frequency and density: that of a jet with K = 1.5 to the first order, and one with invented powers.
LOSSES = {
    "quadratic": lambda u, f, rho: 4 / (3 * pi) * rho * mpf("1.5") * u,
    "powers": lambda u, f, rho: mpf("0.9") * rho * u ** mpf("0.8") * f ** mpf("0.3"),
}


def solve(e, f, R):
    """Velocity of the cone, radiated flow, speed of the air in the vent, and current, per volt, with a resistance in the vent."""
    s = 2j * pi * f
    vent = 1 / (e["ventLoss"] + R + s * e["vent"])
    box = s * e["Cab"] + 1 / e["leak"] + vent
    coil = e["Re"] + s * e["Le"]
    moving = s * e["Mms"] + e["Rms"] + 1 / (s * e["Cms"]) + e["Sd"] ** 2 / box + e["Bl"] ** 2 / coil
    v = e["Bl"] / coil / moving
    pressure = e["Sd"] * v / box
    return v, s * e["Cab"] * pressure, pressure * vent * e["perVentArea"], (1 - e["Bl"] * v) / coil


LIMITS = {
    "travel": (lambda e: XMAX / sqrt(2), lambda told, f: abs(told[0]) / (2 * pi * f)),
    "heat": (lambda e: sqrt(PE / e["Re"]), lambda told, f: abs(told[3])),
    "amplifier voltage": (lambda e: VOLTAGE, lambda told, f: mpf(1)),
    "vent": (lambda e: AIR, lambda told, f: abs(told[2])),
}


def root(of, x):
    """Secants in a variable of size one, to the precision at hand."""
    a, b = x, x + mpf("1e-3")
    at_a, at_b = of(a), of(b)
    for _ in range(200):
        if at_a == at_b or abs(b - a) < mpf(2) ** (10 - mp.prec):
            return b
        a, b, at_a = b, b - max(-1, min(1, at_b * (b - a) / (at_b - at_a))), at_b
        at_b = of(b)
    raise ArithmeticError


def drive(name, loss, e, f):
    """ln of the drive at which a limit is reached, and the resistance in the vent."""
    greatest, value = LIMITS[name]
    resistance = lambda x: LOSSES[loss](exp(x), f, e["air.density"]) * e["perVentArea"]

    def excess(x):
        told = solve(e, f, resistance(x))
        return log(exp(x) / sqrt(2) / abs(told[2]) * value(told, f) / greatest(e))

    x = root(excess, log(mpf(5)))
    R = resistance(x)
    return log(greatest(e) / value(solve(e, f, R), f)), R


def level(name, loss, e, f):
    volts, R = drive(name, loss, e, f)
    return 20 * log10(f * e["air.density"] * abs(solve(e, f, R)[1]) * exp(volts) / mpf("2e-5"))


def slopes(result):
    return {n: float(diff(lambda x: result({**e, n: exp(x)}), log(e[n]))) for n in e}


def single(loss, limits, f):
    name = min(limits, key=lambda name: drive(name, loss, e, f)[0])
    return {
        "frequency": float(f),
        "binding": name,
        "value": float(level(name, loss, e, f)),
        "byElement": slopes(lambda e: level(name, loss, e, f)),
        "byFrequency": float(diff(lambda x: level(name, loss, e, exp(x)), log(f))),
    }


def least(loss, limits, band):
    low, high = band
    mp.dps = 20
    grid = [low * (high / low) ** (mpf(i) / 150) for i in range(151)]
    name, start = min(((n, f) for n in limits for f in grid), key=lambda one: level(one[0], loss, e, one[1]))
    mp.dps = 50

    def place(e):
        if start in (grid[0], grid[-1]):
            return start
        return exp(root(lambda x: diff(lambda y: level(name, loss, e, exp(y)), x), log(start)))

    result = lambda e: level(name, loss, e, place(e))
    return {
        "from": float(low),
        "to": float(high),
        "frequency": float(place(e)),
        "binding": name,
        "value": float(result(e)),
        "byElement": slopes(result),
    }


WISHES = {"all": ["travel", "heat", "amplifier voltage"], "air": ["travel", "heat", "amplifier voltage", "vent"]}
out = {
    "note": "lossy-gradient.py beside this file wrote it",
    "driver": {n: float(v) for n, v in DRIVER.items()},
    "cases": [
        {
            "loss": loss,
            "limits": limits,
            "playable": [single(loss, LIMITS_, mpf(f)) for f in FREQUENCIES],
            "leastPlayable": [least(loss, LIMITS_, band) for band in BANDS],
        }
        for loss in LOSSES
        for limits, LIMITS_ in WISHES.items()
    ],
}
Path(__file__).with_name("lossy-gradient.json").write_text(json.dumps(out, indent=1) + "\n")
