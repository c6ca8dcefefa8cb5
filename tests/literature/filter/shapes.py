"""Writes shapes.json: low-pass and high-pass of each shape, shelves and pole shifts, by scipy.signal from zeros and poles.

Where scipy has the shape its poles are taken (butter, bessel with norm='mag', cheby1). Chebyshev poles are moved so that the corner
passes half the power of frequency 0, found by bisection. The Legendre poles come from Papoulis' integral in exact fractions.
Linkwitz-Riley is a Butterworth filter twice. Run: python3 shapes.py
"""

import json
from fractions import Fraction
from pathlib import Path

import numpy as np
import scipy
from scipy import optimize, signal

CORNER = 24.0
frequencies = [2.0, 12.0, 24.0, 30.0, 48.0, 240.0]
omega = 2 * np.pi * np.array(frequencies)


def level(zeros, poles, gain):
    _, h = signal.freqs_zpk(zeros, poles, gain, omega)
    return (20 * np.log10(abs(h))).tolist()


def poly_mul(a, b):
    out = [Fraction(0)] * (len(a) + len(b) - 1)
    for i, x in enumerate(a):
        for k, y in enumerate(b):
            out[i + k] += x * y
    return out


def legendre_poles(order):
    """Integral from -1 to 2 w^2 - 1 of (sum a_k P_k(x))^2, times (x + 1) for even orders, scaled to 1 at 1."""
    half = (order - 1) // 2
    p = [[Fraction(1)], [Fraction(0), Fraction(1)]]
    for k in range(1, half + 1):
        rising = [Fraction(2 * k + 1, k + 1) * c for c in [Fraction(0)] + p[k]]
        for i, c in enumerate(p[k - 1]):
            rising[i] -= Fraction(k, k + 1) * c
        p.append(rising)
    total = [Fraction(0)] * (half + 1)
    for k in range(half + 1):
        if order % 2 == 0 and (half - k) % 2 == 1:
            continue
        for i, c in enumerate(p[k]):
            total[i] += (2 * k + 1) * c
    inside = poly_mul(total, total)
    if order % 2 == 0:
        inside = poly_mul(inside, [Fraction(1), Fraction(1)])
    integral = [Fraction(0)] + [c / (k + 1) for k, c in enumerate(inside)]
    # x = 2 y - 1, y = w^2
    out = [Fraction(0)]
    for c in reversed(integral):
        out = poly_mul(out, [Fraction(-1), Fraction(2)])
        out[0] += c
    out[0] = Fraction(0)
    scale = sum(out)
    squared = [float(c / scale) for c in out]
    while squared[-1] == 0:
        squared.pop()
    squared[0] = 1.0
    # |D|^2 in y = -s^2
    s_squared = [c * (-1) ** k for k, c in enumerate(squared)]
    roots = np.sqrt(np.roots(s_squared[::-1]).astype(complex))
    return np.where(roots.real > 0, -roots, roots)


def half_power(poles):
    gain = np.prod(-poles).real

    def miss(w):
        return abs(gain / np.prod(1j * w - poles)) ** 2 - 0.5

    return optimize.brentq(miss, 0.9, 30, xtol=1e-15, rtol=1e-15)


def poles_of(shape, order, ripple):
    if shape == "butterworth":
        return signal.buttap(order)[1]
    if shape == "bessel":
        return signal.besselap(order, norm="mag")[1]
    if shape == "legendre":
        return legendre_poles(order)
    if shape == "linkwitz-riley":
        return np.concatenate([signal.buttap(order // 2)[1]] * 2)
    poles = signal.cheb1ap(order, ripple)[1]
    # The highest frequency that passes half the power of frequency 0.
    return poles / half_power(poles)


def row(shape, order, ripple=0):
    poles = poles_of(shape, order, ripple)
    w0 = 2 * np.pi * CORNER
    low = w0 * poles
    high = w0 / poles
    denominator = np.poly(poles).real[::-1]
    return {
        "shape": shape,
        "order": order,
        "ripple": ripple,
        "denominator": (denominator / denominator[0]).tolist(),
        "lowPass": level([], low, np.prod(-low).real),
        "highPass": level(np.zeros(order), high, 1),
    }


def pair(f, q):
    w = 2 * np.pi * f
    return np.roots([1, w / q, w * w])


def shift(f0, q0, f1, q1):
    return {"f0": f0, "Q0": q0, "f1": f1, "Q1": q1, "level": level(pair(f0, q0), pair(f1, q1), 1)}


def shelf(order, corner, gain, q):
    """Zeros and poles at corner * G^(+-1/2n), where G is the gain as a ratio."""
    part = 10 ** (gain / 20 / (2 * order))
    if order == 1:
        zeros, poles = [-2 * np.pi * corner * part], [-2 * np.pi * corner / part]
    else:
        zeros, poles = pair(corner * part, q), pair(corner / part, q)
    return {"order": order, "corner": corner, "gain": gain, "Q": q, "level": level(zeros, poles, 1)}


rows = (
    [row("butterworth", n) for n in range(1, 9)]
    + [row("bessel", n) for n in range(1, 9)]
    + [row("legendre", n) for n in range(2, 9)]
    + [row("linkwitz-riley", n) for n in (2, 4, 6, 8)]
    + [row("chebyshev", n, r) for r in (0.001, 0.5, 3.0) for n in range(2, 9)]
)
fixtures = {
    "program": f"scipy {scipy.__version__}",
    "corner": CORNER,
    "frequencies": frequencies,
    "rows": rows,
    "shifts": [shift(55, 1.1, 30, 0.6), shift(30, 0.05, 300, 50), shift(300, 50, 30, 0.05)],
    "shelves": [shelf(1, 24, 6, 0), shelf(1, 24, -40, 0), shelf(2, 30, 40, 0.5**0.5), shelf(2, 24, -6, 0.05), shelf(2, 24, 12, 50)],
}
Path(__file__).with_name("shapes.json").write_text(json.dumps(fixtures, indent=1) + "\n")
