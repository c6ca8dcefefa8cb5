"""Writes ranges.json: values at the ends of the ranges that the formulas of ducts and vents state.

Radiation of pistons: double integrals of cos(kr)/(2πr) over the two surfaces, by quadrature, and Struve functions. Necks
and tubes: the line equation and Bessel functions. Run: python3 ranges.py
"""
import json
from importlib import import_module
from pathlib import Path

import numpy as np
import scipy
from mpmath import mpf
from numpy.polynomial.legendre import leggauss
from scipy.integrate import dblquad
from scipy.optimize import brentq
from scipy.special import j1, struve

chain = import_module("line-chain").chain

C = 343.2


def disc(n, m):
    """Points and weights over a disc of radius 1."""
    x, w = leggauss(n)
    r, wr = (x + 1) / 2, w / 2
    t = 2 * np.pi * np.arange(m) / m
    R, T = np.meshgrid(r, t, indexing="ij")
    return (R * np.cos(T)).ravel(), (R * np.sin(T)).ravel(), np.repeat(wr * r, m) * 2 * np.pi / m


def mutual(d, k):
    """Length that each of two discs of radius 1 adds to the other: ∬ cos(kr)/(2πr) over the area of one."""
    x, y, w = disc(30, 60)
    r = np.hypot(d + x[None, :] - x[:, None], y[None, :] - y[:, None])
    return float(w @ (np.cos(k * r) / (2 * np.pi * r)) @ w / np.pi)


def rectangle(aspect, kb):
    """Length over √S of a piston a × b = 1, long side b, at kb: distances (x, y) weigh (a − x)(b − y)."""
    a, b = aspect**-0.5, aspect**0.5
    k = kb / b
    # In polar coordinates the 1/r goes: r from 0 to the border.
    f = lambda r, t: (a - r * np.cos(t)) * (b - r * np.sin(t)) * np.cos(k * r)
    corner = np.arctan2(b, a)
    one = dblquad(f, 0, corner, 0, lambda t: a / np.cos(t), epsabs=1e-13, epsrel=1e-12)[0]
    other = dblquad(f, corner, np.pi / 2, 0, lambda t: b / np.sin(t), epsabs=1e-13, epsrel=1e-12)[0]
    return 4 * (one + other) / (2 * np.pi)


def neck(volume, area, length):
    """Frequency at which k tan(kl) = S/V."""
    k = brentq(lambda k: k * np.tan(k * length) - area / volume, 1e-9, 1.5 / length, xtol=1e-15)
    return k * C / (2 * np.pi)


def tube(a, length, f):
    """Reactance of a lossy tube that ends in nothing, over ω: B/D."""
    parts = chain(*(mpf(str(x)) for x in (a, length, f)))
    return float((parts["B"] / parts["A"]).imag / (2 * np.pi * f))


necks = [(0.01, 1e-5, 0.1), (0.04, 0.0045, 0.2), (0.02, 0.0125, 0.4)]
tubes = [(0.05, 0.0184, 30), (0.05, 0.2, 30), (0.05, 0.921, 30)]
out = {
    "program": f"scipy {scipy.__version__}, numpy {np.__version__}",
    "load": {"ka": 0.3, "reactance": struve(1, 0.6) / 0.3, "resistance": 1 - j1(0.6) / 0.3},
    "mutual": [{"distance": d, "kd": kd, "length": mutual(d, kd / d)} for d in (2.5, 5, 20) for kd in (0.01, 0.25, 0.5)],
    "neighbours": [{"distance": d, "kd": kd, "length": mutual(d, kd / d)} for d in (2.2, 5, 20) for kd in (0.01, 0.5, 1)],
    "rectangle": [{"aspect": q, "kb": kb, "length": rectangle(q, kb)}
                  for q, end in ((1, 0.35), (3, 0.5), (10, 0.5)) for kb in (0.01, 0.2, end)],
    "necks": [{"V": V, "S": S, "l": l, "f": neck(V, S, l)} for V, S, l in necks],
    "tubes": [{"a": a, "L": L, "f": f, "mass": tube(a, L, f)} for a, L, f in tubes],
}
Path(__file__).with_name("ranges.json").write_text(json.dumps(out, indent=1) + "\n")
