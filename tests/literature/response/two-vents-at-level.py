"""A box with two unlike vents, each of which loses with the square of its speed, by a road that shares nothing with the packages: the
circuit as complex equations, with both speeds solved at once by scipy (fsolve).
Writes two-vents-at-level.json. Run: python3 two-vents-at-level.py
"""
import json
import numpy as np
from scipy.optimize import fsolve

rho, c = 1.2, 343.2
Re, Bl, Mms, Cms, Rms, Sd = 5.6, 13.5, 0.085, 0.00062, 2.4, 0.033
# rear chamber, front chamber
V, tuned, area, QL = (0.040, 0.015), (30.0, 65.0), (40e-4, 60e-4), 10.0
C = [v / (rho * c**2) for v in V]
M = [1 / ((2 * np.pi * f) ** 2 * cab) for f, cab in zip(tuned, C)]
leak = [QL / (2 * np.pi * f * cab) for f, cab in zip(tuned, C)]


def circuit(f, volts, R):
    """Cone speed, flows of both vents, all that leaves the box, and the current, rms."""
    w = 2 * np.pi * f
    Zm = 1j * w * Mms + Rms + 1 / (1j * w * Cms) + Bl**2 / Re
    Zv = [1j * w * m + r for m, r in zip(M, R)]
    Z = [1 / (1j * w * cab + 1 / ral + 1 / zv) for cab, ral, zv in zip(C, leak, Zv)]
    v = (Bl * volts / Re) / (Zm + Sd**2 * sum(Z))
    p = [-Sd * v * Z[0], Sd * v * Z[1]]
    U = [p[k] / Zv[k] for k in (0, 1)]
    out = sum(U) + sum(p[k] / leak[k] for k in (0, 1))
    return v, U, out, (volts - Bl * v) / Re


def resistances(speeds, K):
    return [4 / (3 * np.pi) * rho * k * abs(u) / a for u, k, a in zip(speeds, K, area)]


def balanced(f, volts, K):
    peaks = lambda U: np.array([np.sqrt(2) * abs(u) / a for u, a in zip(U, area)])
    off = lambda u: peaks(circuit(f, volts, resistances(u, K))[1]) - u
    free = circuit(f, volts, (0, 0))
    u, info, found, _ = fsolve(off, 0.5 * peaks(free[1]), xtol=1e-14, full_output=True)
    assert np.max(np.abs(off(u)) / u) < 1e-10, (f, volts, K)
    v, _, out, i = circuit(f, volts, resistances(u, K))
    compression = 20 * np.log10(abs(free[2]) / abs(out))
    return [*u, abs(out), abs(i), np.sqrt(2) * abs(v) / (2 * np.pi * f), compression, *resistances(u, K)]


cases = [(f, volts, K) for f in (22.0, 30.0, 45.0, 65.0, 90.0) for volts, K in ((2.0, (1.5, 1.2)), (25.0, (1.5, 1.2)), (60.0, (5.6, 0.9)))]
rows = [[float(x) for x in balanced(*case)] for case in cases]
names = ["rearSpeed", "frontSpeed", "flow", "current", "travel", "compression", "rearResistance", "frontResistance"]
json.dump(
    {
        "f": [a for a, _, _ in cases],
        "volts": [b for _, b, _ in cases],
        "rearK": [k[0] for _, _, k in cases],
        "frontK": [k[1] for _, _, k in cases],
        **{name: [row[n] for row in rows] for n, name in enumerate(names)},
    },
    open("two-vents-at-level.json", "w"),
    indent=1,
)
for case, row in zip(cases, rows):
    print(case, "rear %.3f front %.3f m/s, compression %.3f dB" % (row[0], row[1], row[5]))
