"""Outside values for slots in a box with one driver, by scipy: python3 slots.py > slots.json (about a minute).

Differential evolution over all places of driver, slot and fold. Slot, fold and driver are judged in the axes of the box,
by the distance of a rectangle from a circle and by intervals.
"""

import json
import sys

import numpy as np
import scipy
from scipy.optimize import differential_evolution

MARGIN = 0.002
EDGE = 0.005
GAP = 0.005
T = 0.018


def apart(low, high, driver, inner):
    """Cuboids against the driver, a cylinder behind the front or the left panel."""
    n = driver["normal"]
    a = [k for k in range(3) if k != n]
    nearest = np.clip(driver["centre"][:, a], low[:, a], high[:, a])
    near = np.linalg.norm(nearest - driver["centre"][:, a], axis=1) < driver["cutoutDiameter"] / 2 - 1e-9
    return ~(near & (low[:, n] < driver["reach"] - 1e-9))


def longest(case, folded, seed):
    size = np.array(case["inner"])
    d, v = case["driver"], case["vent"]
    n = {"left": 0, "front": 2}[d["face"]]
    pd = [k for k in range(3) if k != n]
    reach = max(0, d["depth"] - T)
    half = max(d["cutoutDiameter"] / 2 + MARGIN, d["outerDiameter"] / 2 + EDGE - T)
    wall, long, short = v["wall"], v["longSide"], v["shortSide"]
    walls = v["walls"]
    outer = [long + (1 if walls == 2 else 2) * wall, short + (2 if walls == 0 else 1) * wall]

    def lengths(x, along, sign):
        """The short side lies along `along`, the fold goes there."""
        m = x.shape[0]
        across = 1 - along
        dc = np.zeros((m, 3))
        dc[:, pd] = half + x[:, 0:2] * (size[pd] - 2 * half)
        driver = {"normal": n, "centre": dc, "reach": reach, "cutoutDiameter": d["cutoutDiameter"]}
        low, high = np.zeros((m, 3)), np.zeros((m, 3))
        ok = np.full(m, True)
        for k, width, panel, at in [(along, outer[1], walls > 0, x[:, 2]), (across, outer[0], walls > 1, x[:, 3])]:
            margin = 0 if panel else max(MARGIN, EDGE - T)
            room = size[k] - width - 2 * margin
            if room < 0:
                return np.full(m, -1.0)
            start = np.where(at < 0.5, 0, room) if panel else margin + at * room
            if k == along and panel and folded:
                start = np.full(m, 0 if sign > 0 else room)
            low[:, k], high[:, k] = start, start + width
        if n == 2:
            a = [0, 1]
            nearest = np.clip(dc[:, a], low[:, a], high[:, a])
            ok &= np.linalg.norm(nearest - dc[:, a], axis=1) >= d["outerDiameter"] / 2 + GAP - 1e-9
        if not folded:
            good, bad = np.zeros(m), np.full(m, size[2])
            def free(e):
                h = high.copy()
                h[:, 2] = e
                return apart(low, h, driver, size)
            for _ in range(40):
                mid = np.where(free(bad), bad, (good + bad) / 2)
                f = free(mid)
                good, bad = np.where(f, mid, good), np.where(f, bad, mid)
            way = good - v["clearance"]
            return np.where(ok & (way >= 0), T + way, -1.0)
        own = wall if walls == 0 else 0
        depth = np.full(m, size[2]) if walls else outer[1] + x[:, 4] * (size[2] - outer[1])
        h = high.copy()
        h[:, 2] = depth
        ok &= apart(low, h, driver, size)
        # The second leg, between its outer board or panel at `depth` and one board before its air.
        l2, h2 = low.copy(), high.copy()
        l2[:, 2], h2[:, 2] = depth - outer[1], depth
        inner_edge = high[:, along] - wall * (walls > 0) if sign > 0 else low[:, along] + wall * (walls > 0)
        room = size[along] - inner_edge if sign > 0 else inner_edge
        def free(e):
            l, g = l2.copy(), h2.copy()
            if sign > 0:
                l[:, along], g[:, along] = inner_edge, inner_edge + e
            else:
                l[:, along], g[:, along] = inner_edge - e, inner_edge
            return apart(l, g, driver, size)
        good, bad = np.zeros(m), np.maximum(room, 0)
        for _ in range(40):
            mid = np.where(free(bad), bad, (good + bad) / 2)
            f = free(mid)
            good, bad = np.where(f, mid, good), np.where(f, bad, mid)
        way = good - v["clearance"]
        # The air turns about the edge where the inner boards of both legs meet, on their air sides: the first leg ends
        # there, the second one begins there, a board before the outside of the first.
        first = depth - short - own
        radius = short / 2
        # The inner board of the second leg ends on that of the first, so that it stays out of the panel only where the first leg
        # is at least as long as it is thick; the second leg passes the edge of the first board in any case.
        good = ok & (way >= 0) & (first >= wall) & (own + way >= wall)
        return np.where(good, T + first + np.pi / 2 * radius + own + way, -1.0)

    best = 0.0
    for along in (0, 1):
        for sign in (1, -1) if folded else (1,):
            found = differential_evolution(
                lambda x: -lengths(np.atleast_2d(x.T), along, sign), [(0, 1)] * 5, vectorized=True,
                updating="deferred", popsize=30, maxiter=300, tol=1e-12, seed=seed, polish=False)
            best = max(best, -found.fun)
    return best


def main():
    driver = lambda face, o, cut, depth: {"face": face, "outerDiameter": o, "cutoutDiameter": cut, "depth": depth}
    slot = lambda walls, long, short, wall: {"walls": walls, "longSide": long, "shortSide": short, "wall": wall, "clearance": short}
    cases = [
        {"inner": [0.264, 0.364, 0.314], "driver": driver("front", 0.2, 0.18, 0.09), "vent": slot(1, 0.2, 0.04, 0.012)},
        {"inner": [0.264, 0.364, 0.314], "driver": driver("front", 0.2, 0.18, 0.09), "vent": slot(2, 0.2, 0.04, 0.012)},
        # No room behind the panel for the fold and the boards of both legs.
        {"inner": [0.264, 0.364, 0.05], "driver": driver("front", 0.2, 0.18, 0.03), "vent": slot(1, 0.2, 0.04, 0.012)},
        {"inner": [0.3, 0.34, 0.25], "driver": driver("front", 0.22, 0.2, 0.11), "vent": slot(0, 0.15, 0.03, 0.006)},
        {"inner": [0.28, 0.3, 0.32], "driver": driver("left", 0.2, 0.18, 0.15), "vent": slot(1, 0.18, 0.05, 0.009)},
        {"inner": [0.24, 0.3, 0.3], "driver": driver("left", 0.21, 0.19, 0.17), "vent": slot(0, 0.1, 0.04, 0.009)},
    ]
    rows = [{**case, "straight": longest(case, False, 1), "folded": longest(case, True, 1)} for case in cases]
    json.dump({"program": f"scipy {scipy.__version__}, numpy {np.__version__}", "slots": rows}, sys.stdout, indent=1)


main()
