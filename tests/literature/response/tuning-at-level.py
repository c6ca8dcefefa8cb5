"""How tuning and quality factor of a vented box change with level, by a road that shares nothing with the packages: the circuit as
complex equations of one sine; the tuning is where the air in the vent lags a quarter of a period behind the cone, and 1/Q adds up from
leak and vent by Small's definitions. Writes tuning-at-level.json. Run: python3 tuning-at-level.py
"""
import json
import numpy as np
from scipy.optimize import brentq, minimize_scalar

rho, c = 1.2, 343.2
Re, Bl, Mms, Cms, Rms, Sd = 5.6, 13.5, 0.085, 0.00062, 2.4, 0.033
V, fb, QL, area = 0.045, 27.0, 10.0, np.pi * 0.0375**2
C = V / (rho * c**2)
wb = 2 * np.pi * fb
M = 1 / (wb**2 * C)
G = wb * C / QL


def solved(f, R):
    w = 2 * np.pi * f
    Zv = 1j * w * M + R
    Zb = 1 / (1j * w * C + G + 1 / Zv)
    v = Bl / Re / (1j * w * Mms + Rms + 1 / (1j * w * Cms) + Bl**2 / Re + Sd**2 * Zb)
    flow = -Sd * v * Zb / Zv
    return v, flow, Re / (1 - Bl * v)


def resistance(f, volts, K):
    if K == 0:
        return 0.0
    r = lambda u: 4 / (3 * np.pi) * rho * K * u / area
    off = lambda u: np.sqrt(2) * volts * abs(solved(f, r(u))[1]) / area - u
    return r(brentq(off, 0, np.sqrt(2) * volts * abs(solved(f, 0)[1]) / area * 1.5, xtol=1e-14))


def told(volts, K):
    tuned = lambda f: (lambda v, flow, _: (v / flow).real)(*solved(f, resistance(f, volts, K)))
    f = brentq(tuned, 20, 40, xtol=1e-13)
    R = resistance(f, volts, K)
    # The leak and the vent: the coefficients of 1 - w^2 M C + R G + j w (M G + R C).
    w = 2 * np.pi * f
    Q = w * M * C / (M * G + R * C)
    load = lambda f: abs(solved(f, resistance(f, volts, K))[2])
    dip = minimize_scalar(load, bounds=(22, 34), method="bounded", options={"xatol": 1e-12}).x
    return f, Q, np.sqrt(2) * volts * abs(solved(f, R)[1]) / area, dip, load(dip)


cases = [(2.0, 1.5), (20.0, 1.5), (40.0, 5.6)]
rows = [told(*case) for case in cases]
small = told(1.0, 0)
names = ("fb", "Q", "speed", "dip", "load")
json.dump(
    {
        "volts": [a for a, _ in cases],
        "K": [k for _, k in cases],
        "small": dict(zip(names, map(float, small))),
        **{name: [float(row[i]) for row in rows] for i, name in enumerate(names)},
    },
    open("tuning-at-level.json", "w"),
    indent=1,
)
print(small, *rows, sep="\n")
