"""Writes lossless.json: lines without loss, from the two waves that travel in them, their amplitudes by a linear system.

Mouth: a tube with an impedance at each end, over ρc/S; flow at the mouth over the pressure before the inner end. Cone:
spherical waves exp(∓jkx)/x, entries of the chain matrix. Run: python3 lossless.py
"""
import json
from pathlib import Path

import numpy as np
import scipy
from scipy import linalg

RHO, C = 1.1769, 347.23
INNER, OUTER = 0.01 + 0.2j, 0.05 + 0.3j


def mouth(radius, length, f):
    k, z = 2 * np.pi * f / C, RHO * C / (np.pi * radius**2)
    forth, back = np.exp(-1j * k * length), np.exp(1j * k * length)
    # p = a e^(−jkx) + b e^(jkx), U = (a e^(−jkx) − b e^(jkx))/z; box pressure 1 = p(0) + z·INNER·U(0), p(L) = z·OUTER·U(L).
    a, b = linalg.solve([[1 + INNER, 1 - INNER], [forth * (1 - OUTER), back * (1 + OUTER)]], [1, 0])
    return (a * forth - b * back) / z


def cone(r1, r2, length, f):
    k = 2 * np.pi * f / C
    x1 = length * r1 / (r2 - r1)

    def at(x):
        """Pressure and flow of the two waves."""
        area = np.pi * (r1 * x / x1) ** 2
        waves = np.array([np.exp(-1j * k * x) / x, np.exp(1j * k * x) / x])
        slopes = waves * np.array([-1j * k - 1 / x, 1j * k - 1 / x])
        return np.array([waves, -slopes * area / (2j * np.pi * f * RHO)])

    return at(x1) @ linalg.inv(at(x1 + length))


tubes = [(0.0375, 0.15, 30), (0.0375, 0.15, 400), (0.0375, 0.15, 900)]
cones = [30, 200, 450]
values = [mouth(*tube) for tube in tubes]
matrices = [cone(0.03, 0.05, 0.2, f) for f in cones]
out = {
    "program": f"scipy {scipy.__version__}",
    "radius": [a for a, _, _ in tubes], "length": [length for _, length, _ in tubes], "f": [f for _, _, f in tubes],
    "mouth": {"re": [v.real for v in values], "im": [v.imag for v in values]},
    "cone": {"f": cones, "B": [m[0, 1].imag for m in matrices], "C": [m[1, 0].imag for m in matrices]},
}
Path(__file__).with_name("lossless.json").write_text(json.dumps(out, indent=1) + "\n")
