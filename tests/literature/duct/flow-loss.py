"""Losses of flow that swings to and fro, from their definitions: the fundamental of a quadratic law of two directions by quadrature,
and the friction factor as the root of the implicit law 1/√f = −2 log10(ε/(3.7 D) + 2.51/(Re √f)). Writes flow-loss.json.
Run: python3 flow-loss.py
"""
import json
import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq


def fundamental(out, into, rho, u):
    def pressure(t):
        s = u * np.sin(t)
        return 0.5 * rho * (out if s > 0 else into) * s * abs(s)

    half = [quad(lambda t: pressure(t) * np.sin(t), a, a + np.pi, epsabs=1e-13)[0] for a in (0, np.pi)]
    return sum(half) / np.pi / u


def friction(reynolds, rough):
    law = lambda y: y + 2 * np.log10(rough / 3.7 + 2.51 * y / reynolds)
    return brentq(law, 1, 40, xtol=1e-14) ** -2


cases = [(0.5, 0.5, 5.0), (1.5, 2.0, 10.0), (5.6, 1.0, 30.0)]
reynolds, rough = [4e3, 2e4, 1e5, 1e6], [0.0, 1e-4, 1e-3, 0.02]
wall = []
rho, mu = 1.2, 1.82e-5
for u, f, d, length in [(10, 30, 0.075, 0.25), (25, 30, 0.075, 0.25), (40, 20, 0.1, 0.4)]:
    turbulent = friction(rho * u * d / mu, 0) * length / d
    # By quadrature: the pressure of the whole swing with this factor. The layer of laminar flow: shear μu/δ at the wall, in phase.
    delta = np.sqrt(2 * mu / (rho * 2 * np.pi * f))
    laminar = (4 / d) * length * mu / delta
    wall.append({"u": u, "f": f, "d": d, "L": length, "laminar": laminar, "r": max(laminar, fundamental(turbulent, turbulent, rho, u))})
json.dump(
    {
        "fundamental": {
            "out": [a for a, _, _ in cases],
            "into": [b for _, b, _ in cases],
            "u": [u for _, _, u in cases],
            "r": [fundamental(a, b, 1.2, u) for a, b, u in cases],
        },
        "friction": {"reynolds": reynolds, "rough": rough, "f": [friction(a, b) for a, b in zip(reynolds, rough)]},
        "wall": {k: [w[k] for w in wall] for k in ("u", "f", "d", "L", "laminar", "r")},
    },
    open("flow-loss.json", "w"),
    indent=1,
)
