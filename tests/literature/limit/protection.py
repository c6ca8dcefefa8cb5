"""Writes protection.json: the corners of high-passes that just hold the travel of closed and vented boxes, by brute force.

Displacement and response functions of Small's papers on 200,000 frequencies of the band; the corner is raised in steps of a thousandth
until no frequency passes the share of the displacement at 0 Hz, then halved between. f3 by a scan from above, delay from the poles.
Run: python3 protection.py
"""

import json
from pathlib import Path

import numpy as np
from scipy import optimize, signal

BAND = [1.0, 200.0]
f = np.geomspace(*BAND, 200_000)


def closed(fc, q):
    def both(freq):
        u = 1j * np.asarray(freq) / fc
        d = 1 + u / q + u * u
        return 1 / d, u * u / d
    return both


def vented(fs, qt, h, alpha, ql):
    leak = 1 / ql if ql else 0.0
    def both(freq):
        s = 2j * np.pi * np.asarray(freq)
        tb, ts = 1 / (2 * np.pi * h * fs), 1 / (2 * np.pi * fs)
        d = (s**4 * tb**2 * ts**2 + s**3 * (tb**2 * ts / qt + tb * ts**2 * leak)
             + s**2 * ((alpha + 1) * tb**2 + tb * ts * leak / qt + ts**2) + s * (tb * leak + ts / qt) + 1)
        return (s**2 * tb**2 + s * tb * leak + 1) / d, s**4 * tb**2 * ts**2 / d
    return both


def poles_of(shape):
    """Poles of the low-pass over its corner."""
    family, order = shape[:2]
    if family == "butterworth":
        return signal.buttap(order)[1]
    if family == "bessel":
        return signal.besselap(order, norm="mag")[1]
    if family == "linkwitz-riley":
        return np.concatenate([signal.buttap(order // 2)[1]] * 2)
    poles = signal.cheb1ap(order, shape[2])[1]
    gain = abs(np.prod(poles))
    return poles / optimize.brentq(lambda w: (gain / abs(np.prod(1j * w - poles))) ** 2 - 0.5, 0.9, 30, xtol=1e-15)


def high_pass(poles, corner, freq):
    x = corner / (1j * np.asarray(freq))
    return np.prod([-p / (x - p) for p in poles], axis=0)


def f3_of(gain):
    size = np.abs(gain(f))
    last = np.nonzero(size < 0.5**0.5)[0][-1]
    return optimize.brentq(lambda x: abs(gain(np.array([x]))[0]) ** 2 - 0.5, f[last], f[last + 1], xtol=1e-13)


def solve(box, share, shape):
    poles = poles_of(shape)
    travel = np.abs(box(f)[0]) / share
    worst = lambda c: np.max(travel * np.abs(high_pass(poles, c, f)))
    corner = 1.0
    step = 1.02
    while worst(corner) > 1:
        corner *= step
    low, high = corner / step, corner
    # Finer steps find what the coarse ones passed over.
    fine = np.linspace(low, high, 21)
    high = next(c for c in fine[1:] if worst(c) <= 1)
    low = high - (fine[1] - fine[0])
    for _ in range(45):
        middle = (low + high) / 2
        low, high = (middle, high) if worst(middle) > 1 else (low, middle)
    corner = high
    at = f[np.argmax(travel * np.abs(high_pass(poles, corner, f)))]
    bare = f3_of(lambda x: box(x)[1])
    behind = f3_of(lambda x: box(x)[1] * high_pass(poles, corner, x))
    w = 2 * np.pi * bare
    hp = 2 * np.pi * corner / poles
    delay = float(np.sum(-hp.real / np.abs(1j * w - hp) ** 2))
    level = float(-20 * np.log10(abs(high_pass(poles, corner, np.array([bare]))[0])))
    return {"shape": list(shape), "corner": corner, "bindingAt": at, "f3": behind, "depth": behind - bare, "delay": delay, "level": level}


usual = [("butterworth", n) for n in (1, 2, 3, 4)] + [("bessel", n) for n in (2, 3, 4)] + [("linkwitz-riley", n) for n in (2, 4)]
more = [("chebyshev", 4, 0.5), ("butterworth", 8), ("linkwitz-riley", 8)]
boxes = [
    ("closed", {"Qtc": 0.7071067811865476}, closed(50, 0.5**0.5), 0.5),
    ("closed", {"Qtc": 1.1}, closed(50, 1.1), 0.9),
    ("vented", {"QL": 0, "Qts": 0.3826834324, "h": 1, "alpha": 1.414213562}, vented(30, 0.3826834324, 1, 1.414213562, 0), 0.3),
    ("vented", {"QL": 7, "Qts": 0.33, "h": 1.2, "alpha": 2.4}, vented(30, 0.33, 1.2, 2.4, 7), 0.25),
]
rows = []
for kind, values, box, share in boxes:
    bare = f3_of(lambda x: box(x)[1])
    found = []
    for shape in usual + more:
        found.append(solve(box, share, shape))
    rows.append({"kind": kind, "values": values, "share": share, "f3": bare, "filters": found})
    print(kind, share, [(r["shape"], round(r["corner"], 2), round(r["bindingAt"], 2), round(r["depth"], 2)) for r in found])
Path(__file__).with_name("protection.json").write_text(json.dumps({"band": BAND, "rows": rows}, indent=1) + "\n")
