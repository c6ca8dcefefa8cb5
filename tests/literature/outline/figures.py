"""Outside values for plane figures, by scipy: python3 figures.py > figures.json.

Convex figures: hulls of random points, their triangulation, and the intersection of half planes for what panels leave within.
Other figures: quadrature over strips between given curves, which knows nothing of corners. Largest discs: a search over all
points of the edge.
"""

import json

import numpy as np
import scipy
from scipy.integrate import quad
from scipy.optimize import minimize_scalar
from scipy.spatial import ConvexHull, Delaunay, HalfspaceIntersection

random = np.random.default_rng(7)


def centroid(points):
    triangles = points[Delaunay(points).simplices]
    a, b, c = triangles[:, 0], triangles[:, 1], triangles[:, 2]
    areas = np.abs(np.cross(np.c_[b - a, 0 * a[:, :1]], np.c_[c - a, 0 * a[:, :1]])[:, 2]) / 2
    return (areas[:, None] * triangles.mean(axis=1)).sum(axis=0) / areas.sum()


def clearance(corners, point):
    """Distance to the edge, by a bounded search along each side."""
    least = np.inf
    for a, b in zip(corners, np.roll(corners, -1, axis=0)):
        found = minimize_scalar(lambda s: np.hypot(*(a + s * (b - a) - point)), bounds=(0, 1), options={"xatol": 1e-12})
        least = min(least, found.fun, np.hypot(*(a - point)), np.hypot(*(b - point)))
    return least


def convex():
    hull = ConvexHull(random.random((random.integers(4, 12), 2)) * [0.8, 0.5] + [0.1, 0.05])
    corners = hull.points[hull.vertices]
    sides = np.roll(corners, -1, axis=0) - corners
    normals = np.c_[sides[:, 1], -sides[:, 0]] / np.hypot(*sides.T)[:, None]
    thickness = random.uniform(0.006, 0.03, len(corners))
    offsets = -(normals * corners).sum(axis=1) + thickness
    middle = centroid(corners)
    if (normals @ middle + offsets).max() > -0.01:
        return convex()
    inner = ConvexHull(HalfspaceIntersection(np.c_[normals, offsets], middle).intersections)
    return {
        "corners": corners.tolist(),
        "thickness": thickness.tolist(),
        "area": hull.volume,
        "perimeter": hull.area,
        "centroid": middle.tolist(),
        "clearance": clearance(corners, middle),
        "least": corners.min(axis=0).tolist(),
        "greatest": corners.max(axis=0).tolist(),
        "within": inner.volume,
        "around": inner.area,
        "middleWithin": centroid(inner.points[inner.vertices]).tolist(),
    }


def step(across, up, front, reach, t):
    """An L: low up to `reach`, then as high as `up`. Panels of one thickness follow it inside."""

    def height(x):
        return front if x < reach else up

    def within(x):
        return max(0, (front if x < reach + t else up) - 2 * t)

    def over(f, low, high, at):
        return quad(f, low, at, epsabs=1e-15)[0] + quad(f, at, high, epsabs=1e-15)[0]

    moment = over(lambda x: x * height(x), 0, across, reach)
    area = over(height, 0, across, reach)
    return {
        "sizes": [across, up, front, reach],
        "thickness": t,
        "area": area,
        "centroid": [moment / area, over(lambda x: height(x) ** 2 / 2, 0, across, reach) / area],
        "within": over(within, t, across - t, reach + t),
    }


def arc(radius, angle, deviation):
    """The area of a sector by quadrature of its circle."""
    area, _ = quad(lambda direction: radius**2 / 2, 0, angle)
    end = [radius * np.cos(angle), radius * np.sin(angle)]
    return {"end": end, "radius": radius, "angle": angle, "deviation": deviation, "area": area}


print(
    json.dumps(
        {
            "program": f"scipy {scipy.__version__}",
            "convex": [convex() for _ in range(8)],
            "steps": [step(0.6, 0.42, 0.2, 0.38, 0.018), step(0.5, 0.5, 0.12, 0.1, 0.012)],
            "arcs": [arc(0.15, 2 * np.pi, 1e-4), arc(0.5, np.pi / 2, 1e-3), arc(0.03, 0.4, 1e-4)],
        },
        indent=1,
    )
)
