"""Writes room.json: rooms, walls and crossovers by numpy and scipy, each by another road than ours where there is one.

Power near walls: the mean over all directions of the squared pattern of source and images, by Gauss quadrature on the sphere.
Listener near walls: a sum over the eight signs of the coordinates, in plain complex numbers.
Modes: eigenvalues of the stiffness and mass matrices of Legendre polynomials in a room, as one problem in three dimensions.
Room gain: the spectral factor of 1 + zone^2/far^2, by the roots of that polynomial.
Crossovers: scipy.signal.buttap and freqs_zpk; the crossing by brentq; the best delay by a scan in steps of 20 ns.
Run: python3 room.py
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy import linalg, optimize, signal

C = 343.2
RHO = 1.2041
P0 = 20e-6


def power(k, distances, factors):
    """dB re free air, of a source with images, over the sphere of directions."""
    x, wx = np.polynomial.legendre.leggauss(96)
    phi = (np.arange(192) + 0.5) * 2 * np.pi / 192
    cos, azimuth = np.meshgrid(x, phi, indexing="ij")
    sin = np.sqrt(1 - cos**2)
    n = [cos, sin * np.cos(azimuth), sin * np.sin(azimuth)]
    pattern = np.ones_like(cos)
    for along, d, r in zip(n, distances, factors):
        # Far field of a pair over both sides of the wall: the power that the load takes is the mean of 1 + R cos 2kdn.
        pattern = pattern * (1 + r * np.cos(2 * k * d * along))
    return 10 * np.log10(np.sum(wx[:, None] * pattern) * (2 * np.pi / 192) / (4 * np.pi))


powers = []
for distances, factors in [
    ([0.3], [1]),
    ([0.3, 0.7], [1, 1]),
    ([0.25, 0.55, 1.2], [1, 1, 1]),
    ([0.25, 0.55, 1.2], [0.9, 0.7, 0.95]),
]:
    f = [25.0, 60.0, 120.0, 250.0]
    level = [power(2 * np.pi * one / C, distances, factors) for one in f]
    powers.append({"distances": distances, "factors": factors, "frequencies": f, "level": level})


def corner(f, distances, factors, listener):
    source = np.zeros(3)
    source[: len(distances)] = distances
    k = 2 * np.pi * f / C
    total = 0
    for signs in np.ndindex(*([2] * len(distances))):
        at = source.copy()
        strength = 1.0
        for axis, mirrored in enumerate(signs):
            if mirrored:
                at[axis] *= -1
                strength *= factors[axis]
        r = np.linalg.norm(np.array(listener) - at)
        total += strength * np.exp(-1j * k * r) / (4 * np.pi * r)
    return total / (1 / (2 * np.pi))


corners = []
for distances, factors, listener in [
    ([], [], [1.0, 2.0, -2.0]),
    ([0.0], [1], [0.0, 3.0, 0.0]),
    ([0.3, 0.5], [1, 1], [1.2, 2.5, -1.0]),
    ([0.3, 0.5, 0.0], [0.9, 0.8, 1], [2.5, 1.7, 1.1]),
]:
    f = [20.0, 45.0, 90.0, 180.0]
    h = np.array([corner(one, distances, factors, listener) for one in f])
    corners.append(
        {"distances": distances, "factors": factors, "listener": listener, "frequencies": f, "re": h.real.tolist(), "im": h.imag.tolist()}
    )


def legendre_line(count):
    """Mass and stiffness of Legendre polynomials on an edge of length 1."""
    x, w = np.polynomial.legendre.leggauss(2 * count)
    values = np.array([np.polynomial.legendre.Legendre.basis(i)(x) for i in range(count)])
    slopes = np.array([np.polynomial.legendre.Legendre.basis(i).deriv()(x) if i else 0 * x for i in range(count)])
    return (values * w) @ values.T / 2, (slopes * w) @ slopes.T * 2


def modes(edges, up_to, counts=(16, 12, 9)):
    lines = [legendre_line(count) for count in counts]
    m = [mass * edge for (mass, _), edge in zip(lines, edges)]
    k = [stiffness / edge for (_, stiffness), edge in zip(lines, edges)]
    whole_k = (
        np.kron(k[0], np.kron(m[1], m[2])) + np.kron(m[0], np.kron(k[1], m[2])) + np.kron(m[0], np.kron(m[1], k[2]))
    )
    whole_m = np.kron(m[0], np.kron(m[1], m[2]))
    squares = linalg.eigh(whole_k, whole_m, eigvals_only=True)
    f = C / (2 * np.pi) * np.sqrt(np.maximum(squares, 0))
    return f[(f > 1) & (f <= up_to)].tolist()


rooms = [{"edges": [5.1, 3.7, 2.45], "upTo": 110.0, "frequencies": modes([5.1, 3.7, 2.45], 110.0)}]


def orders(edges, up_to):
    """Which orders belong to them, counted by brute force over a cube of orders."""
    found = [
        (C / 2 * np.sqrt(sum((n / edge) ** 2 for n, edge in zip(order, edges))), order) for order in np.ndindex(9, 9, 9)
    ]
    return [list(order) for f, order in sorted(found) if 0 < f <= up_to]


rooms[0]["orders"] = orders(rooms[0]["edges"], rooms[0]["upTo"])

zones = []
for volume, leak in [(50.0, 0.0), (3.0, 4.0), (30.0, 8.0)]:
    f = np.array([2.0, 6.0, 15.0, 30.0])
    s = 2j * np.pi * f
    cavity = RHO * C**2 / volume / (s + 2 * np.pi * leak)
    free = RHO * s / (2 * np.pi)
    h = cavity / free
    zones.append({"volume": volume, "leakCorner": leak, "frequencies": f.tolist(), "re": h.real.tolist(), "im": h.imag.tolist()})

gains = []
for volume, distance, leak, angle in [(30.0, 1.0, 0.0, 2 * np.pi), (3.0, 1.0, 4.0, 2 * np.pi), (45.0, 2.5, 2.0, np.pi)]:
    f = np.array([1.0, 8.0, 25.0, 60.0, 200.0])
    s = 2j * np.pi * f
    wl = 2 * np.pi * leak
    far = RHO / (angle * distance)  # of s U
    zone = RHO * C**2 / volume  # of U/(s + wl)
    # |far s|^2 + |zone/(s + wl)|^2 over |far s|^2, as polynomials of w^2; its numerator is factored by its roots.
    numerator = [far**2, far**2 * wl**2, zone**2]  # of w^2: w^4, w^2, 1
    roots = np.emath.sqrt(-np.roots(numerator))  # s^2 = -w^2
    left = np.where(roots.real > 0, -roots, roots)
    h = np.prod([s - p for p in left], axis=0) / (s * (s + wl))
    h = h * far / (RHO / (2 * np.pi)) * np.exp(-s * distance / C)
    gains.append(
        {"volume": volume, "distance": distance, "leakCorner": leak, "solidAngle": angle, "frequencies": f.tolist(), "re": h.real.tolist(), "im": h.imag.tolist()}
    )


def shape(family, order):
    if family == "linkwitz-riley":
        p = signal.buttap(order // 2)[1]
        return np.concatenate([p, p])
    return signal.buttap(order)[1]


def low(family, order, corner, f):
    w = 2 * np.pi * corner
    p = shape(family, order) * w
    return signal.freqs_zpk([], p, np.prod(-p).real, 2 * np.pi * np.asarray(f))[1]


def high(family, order, corner, f):
    w = 2 * np.pi * corner
    return signal.freqs_zpk(np.zeros(order), w / shape(family, order), 1.0, 2 * np.pi * np.asarray(f))[1]


def path(f, distance, delay=0.0, sign=1, level=0.0):
    f = np.asarray(f)
    return sign * 10 ** (level / 20) / distance * np.exp(-2j * np.pi * f * (delay + distance / C))


joins = []
for case in [
    {"family": "linkwitz-riley", "order": 4, "corner": 80.0, "boxLevel": 92.0, "boxCorner": 28.0, "mainLevel": 88.0, "mainOrder": 2, "mainCorner": 60.0, "boxDistance": 3.4, "mainDistance": 2.6, "mainDelay": 0.0, "sign": 1, "boxChange": -3.0},
    {"family": "linkwitz-riley", "order": 2, "corner": 100.0, "boxLevel": 90.0, "boxCorner": 30.0, "mainLevel": 90.0, "mainOrder": 4, "mainCorner": 45.0, "boxDistance": 2.0, "mainDistance": 3.0, "mainDelay": 0.001, "sign": -1, "boxChange": 0.0},
    {"family": "butterworth", "order": 3, "corner": 70.0, "boxLevel": 95.0, "boxCorner": 25.0, "mainLevel": 91.0, "mainOrder": 2, "mainCorner": 35.0, "boxDistance": 1.5, "mainDistance": 4.0, "mainDelay": 0.0, "sign": 1, "boxChange": -12.0},
    {"family": "linkwitz-riley", "order": 8, "corner": 90.0, "boxLevel": 92.0, "boxCorner": 32.0, "mainLevel": 89.0, "mainOrder": 1, "mainCorner": 50.0, "boxDistance": 4.5, "mainDistance": 2.0, "mainDelay": 0.0, "sign": 1, "boxChange": 3.0},
]:
    grid = np.geomspace(20, 400, 401)

    def pair(f, case=case):
        box = P0 * 10 ** (case["boxLevel"] / 20) * high("butterworth", 4, case["boxCorner"], f)
        box = box * low(case["family"], case["order"], case["corner"], f) * path(f, case["boxDistance"], level=case["boxChange"])
        main = P0 * 10 ** (case["mainLevel"] / 20) * high("butterworth", case["mainOrder"], case["mainCorner"], f)
        main = main * high(case["family"], case["order"], case["corner"], f)
        return box, main * path(f, case["mainDistance"], case["mainDelay"], case["sign"])

    def ahead(log_f):
        box, main = pair([np.exp(log_f)])
        return 20 * np.log10(abs(box[0]) / abs(main[0]))

    box, main = pair(grid)
    levels = 20 * np.log10(abs(box) / abs(main))
    last = max(i for i in range(400) if levels[i] > 0 >= levels[i + 1])
    fx = float(np.exp(optimize.brentq(ahead, np.log(grid[last]), np.log(grid[last + 1]), xtol=1e-14)))
    b, m = pair([fx])
    # The most by which a straight line between two points of the grid can miss: an eighth of the second difference.
    near_crossing = slice(last - 1, last + 3)
    box_level, phase = 20 * np.log10(abs(box)), np.unwrap(np.angle(box / main))
    bend = {name: np.max(abs(np.diff(y[near_crossing], 2))) / 8 for name, y in [("ahead", levels), ("box", box_level), ("phase", phase)]}
    steps = bend["ahead"] / np.min(abs(np.diff(levels[near_crossing])))
    steepest = {name: np.max(abs(np.diff(y[near_crossing]))) for name, y in [("box", box_level), ("phase", phase)]}
    straight = {
        "frequency": fx * steps * np.log(20) / 400,
        "phaseDifference": bend["phase"] + steps * steepest["phase"],
        "level": bend["box"] + steps * steepest["box"],
    }
    band = (grid >= case["corner"] / 2) & (grid <= case["corner"] * 2)
    f, b_in, m_in = grid[band], box[band], main[band]

    def shortfall(delay, sign):
        total = abs(b_in + sign * m_in * np.exp(-2j * np.pi * f * delay))
        return np.trapezoid(20 * np.log10((abs(b_in) + abs(m_in)) / total), np.log(f)) / np.log(f[-1] / f[0])

    best = {}
    for name, sign in [("normal", 1), ("inverted", -1)]:
        delays = np.arange(-0.02, 0.02, 5e-6)
        near = delays[np.argmin([shortfall(d, sign) for d in delays])]
        fine = near + np.arange(-6e-6, 6e-6, 2e-8)
        values = [shortfall(d, sign) for d in fine]
        best[name] = {"delay": float(fine[np.argmin(values)]), "shortfall": float(min(values))}
    probes = [40, 150, 200, 260, 380]
    joins.append(
        {
            **case,
            "grid": [20, 400, 401],
            "band": [case["corner"] / 2, case["corner"] * 2],
            "probes": probes,
            "probed": grid[probes].tolist(),
            **{
                name: {"re": column[probes].real.tolist(), "im": column[probes].imag.tolist()}
                for name, column in [("box", box), ("main", main), ("sum", box + main)]
            },
            "crossing": {
                "frequency": fx,
                "phaseDifference": float(np.angle(b[0] / m[0])),
                "level": float(20 * np.log10(abs(b[0]) / P0)),
            },
            "straight": straight,
            "best": best,
        }
    )

mains = []
for order, at, level in [(1, 90.0, 85.0), (2, 60.0, 88.0), (4, 45.0, 91.5)]:
    f = [15.0, at, 300.0]
    h = P0 * 10 ** (level / 20) * high("butterworth", order, at, f)
    mains.append({"order": order, "corner": at, "level": level, "frequencies": f, "re": h.real.tolist(), "im": h.imag.tolist()})

paths = []
for distance, delay, sign, level, angle in [(2.0, 0.0, 1, 0.0, 2 * np.pi), (5.0, 0.0023, -1, -4.5, np.pi), (1.0, 0.0, 1, 3.0, 4 * np.pi)]:
    f = [20.0, 63.0, 160.0]
    h = path(f, distance, delay, sign, level) * 2 * np.pi / angle
    paths.append(
        {"distance": distance, "delay": delay, "sign": sign, "level": level, "solidAngle": angle, "frequencies": f, "re": h.real.tolist(), "im": h.imag.tolist()}
    )

f = np.array([30.0, 60.0, 110.0])
two = high("butterworth", 2, 40.0, f) * path(f, 2.0) + high("butterworth", 4, 30.0, f) * path(f, 3.2, 0.0015, -1, 2.0)
sums = [{"frequencies": f.tolist(), "re": two.real.tolist(), "im": two.imag.tolist()}]

fixtures = {
    "program": f"numpy {np.__version__}, scipy {scipy.__version__}",
    "speedOfSound": C,
    "density": RHO,
    "powers": powers,
    "corners": corners,
    "rooms": rooms,
    "zones": zones,
    "gains": gains,
    "paths": paths,
    "sums": sums,
    "mains": mains,
    "joins": joins,
}
Path(__file__).with_name("room.json").write_text(json.dumps(fixtures, indent=1) + "\n")
