"""Outside values for boxes that are no cuboid, by scipy: python3 prisms.py > prisms.json.

Volumes: convex hulls of the corners of the solid, and of the region behind all its panels as an intersection of half spaces; where the section
is not convex or round, quadrature of its exact curves. Angles between panels: by their normals. Modes that keep apart:
differential evolution over the ratios of a box.
"""

import json
from fractions import Fraction

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.optimize import brentq, differential_evolution
from scipy.spatial import ConvexHull, Delaunay, HalfspaceIntersection


def solid(section, length):
    return np.array([[x, y, z] for x, y in section for z in (0, length)])


def convex(section, length, t, name, sizes):
    """A prism of a convex section: its hull, what lies behind its panels, and half the angle at each corner of the section."""
    hull = ConvexHull(solid(section, length))
    planes = np.unique(hull.equations.round(12), axis=0)
    behind = planes.copy()
    behind[:, 3] += t
    middle = hull.points.mean(axis=0)
    inside = ConvexHull(HalfspaceIntersection(behind, middle).intersections)
    corners = hull.points[np.abs(hull.points[:, 2]) < 1e-12][:, :2]
    flat = ConvexHull(corners)
    corners = corners[flat.vertices]
    triangles = corners[Delaunay(corners).simplices]
    (a, b, c) = (triangles[:, k] for k in range(3))
    areas = np.abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0]) / 2
    lengths = np.hypot(*(np.roll(corners, -1, axis=0) - corners).T)
    sides = {tuple(p[:2]): p[:2] for p in planes if abs(p[2]) < 0.5}
    normals = np.array(sorted(sides.values(), key=lambda n: np.arctan2(n[1], n[0])))
    between = [np.pi - np.arccos(np.clip(a @ b, -1, 1)) for a, b in zip(normals, np.roll(normals, -1, axis=0))]
    return {
        "name": name,
        "sizes": sizes,
        "length": length,
        "thickness": t,
        "outer": hull.volume,
        "inner": inside.volume,
        # The surface of the inner region without both ends.
        "innerSides": inside.area - 2 * inside.volume / (length - 2 * t),
        "middle": ((areas[:, None] * triangles.mean(axis=1)).sum(axis=0) / areas.sum()).tolist(),
        # The panels along the axis lie between those across it.
        "panels": sorted([length - 2 * t] * len(corners) + lengths.tolist() + 2 * np.ptp(corners, axis=0).tolist()),
        "halves": sorted(angle / 2 for angle in between),
    }


def wedge(across, up, top, length, t):
    section = [(0, 0), (across, 0), (top, up), (0, up)] if top > 0 else [(0, 0), (across, 0), (0, up)]
    return convex(section, length, t, "wedge", {"across": across, "up": up, **({"top": top} if top > 0 else {})})


def corner(across, up, length, t):
    return convex([(0, up), (across, 0), (across, up)], length, t, "corner", {"across": across, "up": up})


def strips(name, sizes, length, t, outer, inner, middle):
    """Sections as strips between exact curves: lists of (from, to, height)."""

    def area(parts):
        return sum(quad(height, low, high, epsabs=1e-14, epsrel=1e-13, limit=200)[0] for low, high, height in parts)

    return {
        "name": name,
        "sizes": sizes,
        "length": length,
        "thickness": t,
        "outer": area(outer) * length,
        "inner": area(inner) * (length - 2 * t),
        "middle": middle,
    }


def cylinder(d, length, t):
    def circle(r):
        # By the angle, so that the integrand is smooth at the rim.
        return [(-np.pi / 2, np.pi / 2, lambda a: 2 * (r * np.cos(a)) ** 2)]

    return strips("cylinder", {"diameter": d}, length, t, circle(d / 2), circle(d / 2 - t), [d / 2, d / 2])


def quarter(r, length, t):
    """The front is round about the corner; the two straight panels lie within t of it."""
    R = r - t
    most = np.arcsin(t / R)
    inner = [(most, np.pi / 2 - most, lambda a: R * np.cos(a) * max(0.0, R * np.cos(a) - t))]
    area, moment = quad(lambda x: np.sqrt(r**2 - x**2), 0, r)[0], quad(lambda x: x * np.sqrt(r**2 - x**2), 0, r)[0]
    middle = r - moment / area
    return strips("quarterRound", {"radius": r}, length, t, [(0, np.pi / 2, lambda a: (r * np.cos(a)) ** 2)], inner, [middle, middle])


def middle_of(parts, floors):
    """The centroid of strips that stand on floors."""
    area = across = upwards = 0
    for (low, high, height), floor in zip(parts, floors):
        under = floor if callable(floor) else lambda x: 0
        area += quad(height, low, high, epsabs=1e-14)[0]
        across += quad(lambda x: x * height(x), low, high, epsabs=1e-14)[0]
        upwards += quad(lambda x: height(x) * (under(x) + height(x) / 2), low, high, epsabs=1e-14)[0]
    return [across / area, upwards / area]


def seat(across, up, front, reach, length, t):
    outer = [(0, reach, lambda x: front), (reach, across, lambda x: up)]
    inner = [(t, reach + t, lambda x: front - 2 * t), (reach + t, across - t, lambda x: up - 2 * t)]
    return strips("underSeat", {"across": across, "up": up, "front": front, "step": reach}, length, t, outer, inner, middle_of(outer, [0, 0, 0]))


def arch(across, up, r, length, t):
    def floor(x, radius):
        return np.sqrt(max(0.0, radius**2 - (across - x) ** 2))

    R = r + t
    start = across - r
    # Within, the floor is that of the bottom panel up to where the arch rises above it.
    rise = across - np.sqrt(R**2 - t**2)
    outer = [(0, start, lambda x: up), (start, across, lambda x: up - floor(x, r))]
    inner = [(t, rise, lambda x: up - 2 * t), (rise, across - t, lambda x: up - t - floor(x, R))]
    return strips("wheelArch", {"across": across, "up": up, "arch": r}, length, t, outer, inner, middle_of(outer, [0, lambda x: floor(x, r)]))


def stack(t):
    """A tower on a plinth, as a union of half-space regions: their hulls, added and taken apart by hand."""
    plinth, tower = (0.4, 0.3, 0.2), (0.2, 0.2, 0.3)
    outer = np.prod(plinth) + np.prod(tower)
    # The panel on the plinth closes all but the air of the tower, which therefore reaches down through it.
    inner = (0.4 - 2 * t) * (0.3 - 2 * t) * (0.2 - 2 * t) + (0.2 - 2 * t) ** 2 * 0.3
    return {"plinth": plinth, "tower": tower, "thickness": t, "outer": outer, "inner": inner}


def length_for(volume, across, up, top, t):
    """The length of a wedge for an inner volume: a bracketed root over hulls."""
    return brentq(lambda length: wedge(across, up, top, length, t)["inner"] - volume, 0.1, 2, xtol=1e-13)


def top_for(volume, across, up, length, t):
    return brentq(lambda top: wedge(across, up, top, length, t)["inner"] - volume, 0.05, across - 1e-3, xtol=1e-13)


def least_step(ratios):
    orders = np.array([(l, m, n) for l in range(7) for m in range(7) for n in range(7) if l + m + n > 0])
    modes = np.sort(np.sqrt((orders / np.array([1, *ratios])) ** 2 @ np.ones(3)))[:8]
    return -np.log2(modes[1:] / modes[:-1]).min()


def contents():
    """What is left of 45 L, in exact fractions: a driver, two radiators, a tube of square outside, a twentieth of bracing, a chamber, a filling."""
    litre, mm = Fraction(1, 1000), Fraction(1, 1000)
    inner = 45 * litre
    taken = {
        "driver": Fraction(16, 10) * litre,
        "radiator": 2 * Fraction(7, 10) * litre,
        "vent": 90 * mm * 60 * mm * 250 * mm,
        "bracing": inner / 20,
        "chamber": 3 * litre,
        "fill": Fraction(345, 1000) / 1380,
    }
    return {"inner": float(inner), "net": float(inner - sum(taken.values())), **{name: float(one) for name, one in taken.items()}}


spread = differential_evolution(least_step, [(1, 2.5), (1, 2.5)], seed=3, tol=1e-12, popsize=60, maxiter=600, polish=True)
print(
    json.dumps(
        {
            "program": f"scipy {scipy.__version__}",
            "prisms": [
                wedge(0.4, 0.34, 0.15, 0.6, 0.018),
                wedge(0.4, 0.34, 0, 0.6, 0.018),
                wedge(0.25, 0.6, 0.2, 0.3, 0.012),
                corner(0.5, 0.4, 0.6, 0.018),
                cylinder(0.3, 0.7, 0.012),
                quarter(0.45, 0.5, 0.018),
                seat(0.6, 0.42, 0.2, 0.38, 0.9, 0.018),
                arch(0.45, 0.5, 0.3, 0.7, 0.015),
            ],
            "stack": stack(0.018),
            "contents": contents(),
            "lengths": [
                {"volume": v, "across": 0.4, "up": 0.34, "top": 0.15, "thickness": 0.018, "length": length_for(v, 0.4, 0.34, 0.15, 0.018)}
                for v in (0.02, 0.04)
            ],
            "tops": [
                {"volume": v, "across": 0.4, "up": 0.34, "length": 0.6, "thickness": 0.018, "top": top_for(v, 0.4, 0.34, 0.6, 0.018)}
                for v in (0.035, 0.05)
            ],
            "spread": {"leastStep": -spread.fun, "ratios": sorted(spread.x.tolist())},
        },
        indent=1,
    )
)
