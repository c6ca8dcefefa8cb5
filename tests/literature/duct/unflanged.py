"""Writes unflanged.json: the open end of a thin tube by the exact integrals of Levine and Schwinger, eqs. VI.4 and VI.5.

l/a = 1/π ∫_0^ka log(π J1 √(J1² + Y1²)) / (x √(ka² − x²)) dx + 1/π ∫_0^∞ log(1/(2 I1 K1)) / (x √(x² + ka²)) dx
|R| = exp(−2ka/π ∫_0^ka atan(−J1/Y1) / (x √(ka² − x²)) dx)

With x = ka·sin t the root in the first kind goes. Run: python3 unflanged.py
"""
import json
from pathlib import Path

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.special import i1e, j1, k1e, y1


def length(ka):
    def near(t):
        x = ka * np.sin(t)
        return np.log(np.pi * j1(x) * np.hypot(j1(x), y1(x))) / x

    def far(x):
        return -np.log(2 * i1e(x) * k1e(x)) / (x * np.hypot(x, ka))

    options = {"epsabs": 1e-13, "epsrel": 1e-12, "limit": 400}
    parts = [quad(near, 0, np.pi / 2, **options), quad(far, 0, 1, **options), quad(far, 1, np.inf, **options)]
    return sum(part[0] for part in parts) / np.pi


def reflection(ka):
    def angle(t):
        x = ka * np.sin(t)
        return np.arctan2(j1(x), -y1(x)) / x

    return np.exp(-2 * ka / np.pi * quad(angle, 0, np.pi / 2, epsabs=1e-13, epsrel=1e-12, limit=400)[0])


def impedance(ka):
    """Over ρc/S, from the modulus of the reflection and the length."""
    r = -reflection(ka) * np.exp(-2j * ka * length(ka))
    return (1 + r) / (1 - r)


points = [0.01, 0.1, 0.3, 0.6, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.5]
values = [impedance(ka) for ka in points]
out = {
    "program": f"scipy {scipy.__version__}, numpy {np.__version__}",
    "ka": points,
    "length": [length(ka) for ka in points],
    "resistance": [z.real for z in values],
    "reactance": [z.imag for z in values],
}
Path(__file__).with_name("unflanged.json").write_text(json.dumps(out, indent=1) + "\n")
