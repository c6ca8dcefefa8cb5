"""Writes horns.json: chain matrices of lossy horns, the horn equation with the wall losses of the local radius integrated
by scipy (solve_ivp, scipy.special.jve). Nothing of it is stepped.

Run: python3 horns.py
"""

import json
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp
from scipy.special import jve

RHO, C, MU, GAMMA, PR = 1.1769, 347.23, 1.846e-5, 1.4017, 0.841**2


def share(r):
    x = r * np.sqrt(-1j)
    return 2 * jve(1, x) / (x * jve(0, x))


def chain(radius, length, f):
    w = 2 * np.pi * f

    def slopes(x, y):
        a = radius(x)
        S = np.pi * a * a
        s = a * np.sqrt(RHO * w / MU)
        z = 1j * w * RHO / S / (1 - share(s))
        g = 1j * w * S / (RHO * C * C) * (1 + (GAMMA - 1) * share(s * np.sqrt(PR)))
        # Pressure and flow towards the far end.
        return np.array([-z * y[1], -g * y[0]])

    # From the far end back: columns (1, 0) and (0, 1) there become A, C and B, D here.
    columns = []
    for far in ([1, 0], [0, 1]):
        at = solve_ivp(slopes, (length, 0), np.array(far, complex), method="DOP853", rtol=1e-12, atol=1e-16).y[:, -1]
        columns.append(at)
    (a, c), (b, d) = columns
    return [[float(v.real), float(v.imag)] for v in (a, b, c, d)]


def cone(x):
    return 0.03 + 0.1 * x  # 30 mm to 50 mm over 200 mm


def exponential(x):
    return 0.02 * np.exp(np.log(3) * x / 0.3)  # 20 mm to 60 mm over 300 mm


rows = [
    {"profile": name, "f": f, "chain": chain(radius, length, f)}
    for name, radius, length in (("cone", cone, 0.2), ("exponential", exponential, 0.3))
    for f in (20.0, 40.0, 150.0, 400.0, 900.0)
]
Path(__file__).with_suffix(".json").write_text(json.dumps(rows, indent=1) + "\n")
