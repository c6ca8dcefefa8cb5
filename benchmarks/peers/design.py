"""What is asked of a whole design, as numpy and scipy would do it: an alignment by a solver of equations, builds at random, a map of vents.

usage: design.py time alignment|builds|map SECONDS
"""
import json
import sys
from math import pi, sqrt
from time import perf_counter, process_time

import numpy as np
from scipy.optimize import fsolve

MMS, CMS, RMS, RE, BL, SD = 0.072, 0.39e-3, 3.4, 5.6, 14.0, 0.033
WS = 1 / sqrt(MMS * CMS)
QTS = WS * MMS / (RMS + BL**2 / RE)
QL = 7.0
RHO, C = 1.2041, 343.2


def alignment():
    """QB3 of the driver: the printed equations of the leaky vented box in the tuning ratio, compliance ratio and parameter."""

    def residual(x):
        h, alpha, a1 = np.exp(x)
        a2 = a1**2 / 2
        a3 = (a2**2 + 2) / (2 * a1)
        return [
            1 / (sqrt(h) * QTS) + sqrt(h) / QL - a1,
            h + (alpha + 1) / h + 1 / (QL * QTS) - a2,
            sqrt(h) / QTS + 1 / (sqrt(h) * QL) - a3,
        ]

    return fsolve(residual, np.log([1.0, 1.0, 3.0]), xtol=1e-12)


def builds():
    """10,000 builds at 200 frequencies: polynomials of the box in arrays over builds, level and f3 of each."""
    random = np.random.default_rng(7)
    n = 10_000
    cms = CMS * (1 + 0.08 * random.standard_normal(n))
    bl = BL * (1 + 0.03 * random.standard_normal(n))
    cab = 0.04 / (RHO * C**2) * (1 + 0.03 * (2 * random.random(n) - 1))
    mass = 1 / ((2 * pi * 30) ** 2 * 0.04 / (RHO * C**2)) * (1 + 0.05 * (2 * random.random(n) - 1))
    leak = QL / (2 * pi * 30 * 0.04 / (RHO * C**2))
    f = np.geomspace(10, 200, 200)
    s = 2j * pi * f[:, None]
    air = s * cab + 1 / (s * mass) + 1 / leak
    moving = RMS + s * MMS + 1 / (s * cms) + bl**2 / RE + SD**2 / air
    flow = bl / RE * SD / moving / air * s * cab
    level = 20 * np.log10(np.abs(flow) * f[:, None])
    top = 20 * np.log10(bl * SD / (2 * pi * MMS * RE))
    below = level < top - 3.0103
    last = f.size - 1 - np.argmax(below[::-1], axis=0)
    return f[last]


def vent_map():
    """100 × 100 vents: flow at 32 frequencies, width, length, pipe resonance, and whether the box of each volume holds it.

    Ends are those at low frequency, and a vent lies along one edge or two: the driver is not looked at, as it is in ours.
    """
    volume = (0.01 + 0.0006 * np.arange(100))[:, None]
    fb = (16 + 0.5 * np.arange(100))[None, :]
    f = np.geomspace(30, 100, 32)
    s = 2j * pi * f
    cab = volume / (RHO * C**2)
    mass = 1 / ((2 * pi * fb) ** 2 * cab)
    leak = QL / (2 * pi * fb * cab)
    vent = 1 / (s * mass[..., None])
    air = s * cab[..., None] + vent + 1 / leak[..., None]
    moving = RMS + s * MMS + 1 / (s * CMS) + BL**2 / RE + SD**2 / air
    pressure = BL / RE * SD / moving / air
    level = np.abs(pressure * s * cab[..., None]) * f * RHO
    flow = sqrt(2) * 20e-6 * 10 ** (96 / 20) * np.abs(pressure * vent) / level
    area = flow.max(axis=-1) / 17
    diameter = np.sqrt(4 * area / pi)
    effective = area * C**2 / ((2 * pi * fb) ** 2 * volume)
    length = effective - (0.8217 + 0.6133) * diameter / 2
    resonance = C / (2 * effective)
    gross = volume + 0.002 + pi / 4 * (diameter + 0.006) ** 2 * np.maximum(length, 0)
    edges = np.array([0.48, 0.42, 0.4])
    share = np.linspace(0.3, 1, 200)
    inner = np.prod(edges[None, :] * share[:, None] - 0.036, axis=1)
    size = np.interp(gross, inner, share, right=2)
    width, height, depth = (edges[:, None, None] * size) - 0.036
    straight = depth - diameter
    bent = depth + np.maximum(width, height) - 2 * diameter
    cases = [length <= 0, size > 1, length <= straight, length <= bent]
    return diameter, length, resonance, np.select(cases, [0, 1, 2, 3], 4)


def measure(call, seconds):
    call()
    wall, cpu = [], []
    end = perf_counter() + seconds
    calls = 1
    while True:
        start = perf_counter()
        for _ in range(calls):
            call()
        if perf_counter() - start > 0.01:
            break
        calls *= 2
    while perf_counter() < end or len(wall) < 5:
        before, start = process_time(), perf_counter()
        for _ in range(calls):
            call()
        wall.append((perf_counter() - start) / calls)
        cpu.append((process_time() - before) / calls)
    return {"wall": wall, "cpu": cpu}


_, _, what, seconds = sys.argv
print(json.dumps(measure({"alignment": alignment, "builds": builds, "map": vent_map}[what], float(seconds))))
