"""Outside values for box geometry, by scipy: python3 geometry.py > geometry.json (some minutes).

Inner cuboids: intersection of half spaces. Volumes: convex hulls and quadrature. Sizes for a volume: bracketed roots.
Longest vents: differential evolution over all places of driver, vent and bend, with a collision test that knows nothing
of closed forms: alternating projections between two convex solids.
"""

import json
import sys

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.optimize import brentq, differential_evolution
from scipy.spatial import ConvexHull, HalfspaceIntersection

FACES = ["left", "right", "bottom", "top", "front", "back"]


def inner(outer, t):
    """Edges of the region behind all six panels."""
    half = []
    for k in range(3):
        low, high = np.zeros(4), np.zeros(4)
        low[k], low[3] = -1, t[2 * k]
        high[k], high[3] = 1, -(outer[k] - t[2 * k + 1])
        half += [low, high]
    inside = np.array([(t[2 * k] + outer[k] - t[2 * k + 1]) / 2 for k in range(3)])
    points = HalfspaceIntersection(np.array(half), inside).intersections
    return np.ptp(points, axis=0), ConvexHull(points).volume


CONES = [(0.07, 0.03), (0.17, 0.08), (0.23, 0.11), (0.42, 0.2)]


def frustum(d, h):
    return quad(lambda z: np.pi * (d / 2 * (1 - z / (2 * h))) ** 2, 0, h)[0]


def tube(d, l):
    """Volume of a round bar: twice the area under the half circle, times its length."""
    return 2 * quad(lambda x: np.sqrt(max(0, d * d / 4 - x * x)), -d / 2, d / 2, epsabs=1e-13)[0] * l


def project(p, axis, c, r, low, high):
    """Nearest points of many solids: cylinders along an axis, or cuboids (axis -1), with centre, radius, bounds."""
    q = np.clip(p, low, high)
    if axis >= 0:
        a = [k for k in range(3) if k != axis]
        v = p[:, a] - c[:, a]
        n = np.linalg.norm(v, axis=1, keepdims=True)
        q[:, a] = c[:, a] + v * np.minimum(1, r / np.maximum(n, 1e-12))
    return q


def apart(one, two, rounds=80):
    p = (one[1] + two[1]) / 2
    for _ in range(rounds):
        q = project(p, *two)
        p = project(q, *one)
    return np.linalg.norm(p - project(p, *two), axis=1) > 2e-5


def block(axis, low, high):
    c = (low + high) / 2
    across = 1 if axis == 0 else 0
    return axis, c, (high[:, across] - low[:, across])[:, None] / 2, low, high


def longest(case, bent, seed):
    size = np.array(case["inner"])
    t = case["thickness"]
    d, v = case["driver"], case["vent"]
    fd, fv = FACES.index(d["face"]), FACES.index(v["face"])
    nd, nv = fd // 2, fv // 2
    pd = [k for k in range(3) if k != nd]
    pv = [k for k in range(3) if k != nv]
    reach = max(0, d["depth"] - t)
    ro, rb, c = v["outerDiameter"] / 2, v["bendRadius"], v["clearance"]
    rf = v["flangeDiameter"] / 2
    lim = lambda half, out, k: np.array([max(half, out - t), size[k] - max(half, out - t)])
    dl = np.array([lim(d["cutoutDiameter"] / 2, d["outerDiameter"] / 2 + case["edgeMargin"], k) for k in pd])
    vl = np.array([lim(ro, rf + case["edgeMargin"], k) for k in pv])

    def lengths(x, along, sign):
        n = x.shape[0]
        dc, vc = np.zeros((n, 3)), np.zeros((n, 3))
        dc[:, pd] = dl[:, 0] + x[:, 0:2] * (dl[:, 1] - dl[:, 0])
        vc[:, pv] = vl[:, 0] + x[:, 2:4] * (vl[:, 1] - vl[:, 0])
        low, high = dc - d["cutoutDiameter"] / 2, dc + d["cutoutDiameter"] / 2
        low[:, nd], high[:, nd] = (size[nd] - reach, size[nd]) if fd % 2 else (0, reach)
        driver = block(nd, low, high)
        # On one face, flange and frame must not meet; by how much they do leads the evolution out.
        meet = np.zeros(n)
        if fd == fv:
            meet = rf + d["outerDiameter"] / 2 + case["gap"] - np.linalg.norm((dc - vc)[:, pv], axis=1)
        ok = meet <= 1e-9
        inward = -1 if fv % 2 else 1
        wall = size[nv] if fv % 2 else 0.0

        def leg(axis, frm, to, centre):
            low, high = centre - ro, centre + ro
            low[:, axis], high[:, axis] = np.minimum(frm, to), np.maximum(frm, to)
            return block(axis, low, high)

        if along is None:
            good, bad = np.zeros(n), np.full(n, size[nv])
            free = lambda e: apart(leg(nv, np.full(n, wall), wall + inward * e, vc), driver)
            first = fixed = 0
        else:
            most = size[nv] - rb - ro
            first = x[:, 4] * most
            cl, ch = vc - ro, vc + ro
            e1, e2 = wall + inward * first, wall + inward * (first + rb + ro)
            cl[:, nv], ch[:, nv] = np.minimum(e1, e2), np.maximum(e1, e2)
            a1, a2 = vc[:, along] - sign * ro, vc[:, along] + sign * rb
            cl[:, along], ch[:, along] = np.minimum(a1, a2), np.maximum(a1, a2)
            ok &= apart(block(-1, cl, ch), driver)
            ok &= apart(leg(nv, np.full(n, wall), e1, vc), driver)
            centre = vc.copy()
            centre[:, nv] = wall + inward * (first + rb)
            start = vc[:, along] + sign * rb
            room = (size[along] - start) if sign > 0 else start
            good, bad = np.zeros(n), np.maximum(room, 0)
            ok &= room >= c
            free = lambda e: apart(leg(along, start, start + sign * e, centre), driver)
            fixed = np.pi / 2 * rb
        full = free(bad)
        for _ in range(22):
            mid = (good + bad) / 2
            f = free(mid)
            good, bad = np.where(f, mid, good), np.where(f, bad, mid)
        good = np.where(full, size[nv] if along is None else np.maximum(room, 0), good)
        ok &= good >= c
        return np.where(ok, t + fixed + first + good - c, -np.maximum(meet, 0))

    best = 0.0
    options = [(k, s) for k in pv for s in (1, -1)] if bent else [(None, 1)]
    for along, sign in options:
        result = differential_evolution(
            lambda x: -lengths(np.atleast_2d(x.T), along, sign), [(0, 1)] * (5 if bent else 4), vectorized=True,
            updating="deferred", popsize=24, maxiter=100, tol=1e-9, seed=seed, polish=False)
        best = max(best, -result.fun)
    return best


def layouts():
    base = {"thickness": 0.018, "gap": 0.005, "edgeMargin": 0.005}
    driver = lambda face, o, cut, depth: {"face": face, "outerDiameter": o, "cutoutDiameter": cut, "depth": depth}
    vent = lambda face, d: {"face": face, "diameter": d, "outerDiameter": round(d + 0.006, 6), "flangeDiameter": round(d + 0.02, 6), "clearance": d, "bendRadius": round(d + 0.006, 6)}
    yield "roomy", {**base, "inner": [0.264, 0.364, 0.314], "driver": driver("front", 0.2, 0.18, 0.09), "vent": vent("front", 0.06)}
    yield "deep driver, wide vent", {**base, "inner": [0.27, 0.3, 0.26], "driver": driver("front", 0.21, 0.185, 0.24), "vent": vent("front", 0.08)}
    yield "driver at the back", {**base, "inner": [0.25, 0.3, 0.24], "driver": driver("back", 0.22, 0.2, 0.14), "vent": vent("front", 0.07)}
    yield "driver at the left", {**base, "inner": [0.22, 0.26, 0.3], "driver": driver("left", 0.2, 0.18, 0.13), "vent": vent("front", 0.06)}
    yield "driver on top, vent at the right", {**base, "inner": [0.3, 0.24, 0.21], "driver": driver("top", 0.19, 0.17, 0.16), "vent": vent("right", 0.05)}
    yield "driver at the bottom, vent at the back", {**base, "inner": [0.21, 0.3, 0.22], "driver": driver("bottom", 0.18, 0.16, 0.17), "vent": vent("back", 0.055)}


def main():
    boxes = []
    for outer, t in [([0.336, 0.436, 0.386], [0.018] * 6), ([0.2, 0.3, 0.25], [0.012, 0.012, 0.018, 0.015, 0.024, 0.009]), ([0.9, 0.34, 0.5], [0.03] * 6)]:
        edges, volume = inner(outer, t)
        row = {"outer": outer, "thickness": t, "inner": edges.tolist(), "innerVolume": volume}
        d, h, o, l, beta = 0.17, 0.08, 0.066, 0.2, 0.03
        taken = frustum(d, h) + 2 * tube(o, l)
        row["cutoutDiameter"], row["depthInside"], row["outerDiameter"], row["lengthInside"], row["fraction"] = d, h, o, l, beta
        row["net"] = volume * (1 - beta) - taken
        want = 0.03
        row["want"] = want
        f = lambda size: inner(size, t)[1] * (1 - beta) - taken - want
        row["depth"] = brentq(lambda z: f([outer[0], outer[1], z]), t[4] + t[5] + 1e-4, 9, xtol=1e-14)
        least = max((t[2 * k] + t[2 * k + 1]) / outer[k] for k in range(3))
        row["scale"] = brentq(lambda s: f([s * e for e in outer]), least * 1.001, 9, xtol=1e-14)
        boxes.append(row)
    cones = [{"cutoutDiameter": d, "depthInside": h, "volume": frustum(d, h)} for d, h in CONES]
    vents = []
    for name, case in layouts():
        straight = longest(case, False, 1)
        bent = longest(case, True, 1)
        print(name, straight, bent, file=sys.stderr, flush=True)
        vents.append({"name": name, **case, "straight": straight, "bent": bent})
    json.dump({"program": f"scipy {scipy.__version__}, numpy {np.__version__}", "date": "2026-11-25", "boxes": boxes, "cones": cones, "vents": vents}, sys.stdout, indent=1)


main()
