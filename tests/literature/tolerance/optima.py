"""Prices of limits, and fronts of random points, by SciPy and NumPy. Writes optima.json.

Prices by three roads: the marginals of a linear programme (HiGHS), the multipliers of a smooth one (SLSQP), and the slope of
its optimum when each limit is eased and the optimum is sought again.
"""

import json
from pathlib import Path

import numpy as np
from scipy.optimize import linprog, minimize, nnls

linear = []
for seed in range(4):
    r = np.random.default_rng(seed)
    n, m = 3, 3
    A = r.uniform(0.2, 1.0, (m, n))
    b = r.uniform(2.0, 3.0, m)
    c = -r.uniform(0.5, 1.5, n)
    free = [(None, None)] * n
    found = linprog(c, A_ub=A, b_ub=b, bounds=free, method="highs")
    while found.status != 0:  # unbounded: take another cost inside the cone of the limits
        c = -(A.T @ r.uniform(0.2, 1.0, m))
        found = linprog(c, A_ub=A, b_ub=b, bounds=free, method="highs")
    linear.append({"objective": list(c), "limits": A.tolist(), "prices": list(-found.ineqlin.marginals)})


# The smallest volume of a made-up box of three numbers, in logarithms: depth, travel and air speed each limit it.
def volume(x):
    return np.exp(x[0])


def volume_slope(x):
    return np.array([np.exp(x[0]), 0.0, 0.0])


def limits(x, b):
    v, f, d = x
    return np.array(
        [
            b[0] - (np.exp(-0.4 * v) + 0.5 * np.exp(0.7 * f)),
            b[1] - (np.exp(-0.3 * f) * (1 + 0.1 * v * v)),
            b[2] - (np.exp(-2 * d - 0.5 * f) + 0.2 * np.exp(d)),
            b[3] - (np.exp(1.5 * d - v) + 0.3 * np.exp(-d)),
        ]
    )


def limit_slopes(x):
    v, f, d = x
    return np.array(
        [
            [-0.4 * np.exp(-0.4 * v), 0.35 * np.exp(0.7 * f), 0],
            [np.exp(-0.3 * f) * 0.2 * v, -0.3 * np.exp(-0.3 * f) * (1 + 0.1 * v * v), 0],
            [0, -0.5 * np.exp(-2 * d - 0.5 * f), -2 * np.exp(-2 * d - 0.5 * f) + 0.2 * np.exp(d)],
            [-np.exp(1.5 * d - v), 0, 1.5 * np.exp(1.5 * d - v) - 0.3 * np.exp(-d)],
        ]
    )


def optimum(b):
    return minimize(
        volume,
        np.array([0.5, 0.2, 0.3]),
        jac=volume_slope,
        constraints={"type": "ineq", "fun": limits, "jac": lambda x, b: -limit_slopes(x), "args": (b,)},
        method="SLSQP",
        options={"ftol": 1e-13, "maxiter": 500},
    )


b = np.array([1.4, 1.0, 0.62, 2.0])
found = optimum(b)
assert found.success, found.message
left = limits(found.x, b)
binding = [i for i in range(4) if left[i] < 1e-7]
step = 1e-4
again = [
    (optimum(b - step * np.eye(4)[i]).fun - optimum(b + step * np.eye(4)[i]).fun) / (2 * step) for i in binding
]
smooth = {
    "objective": list(volume_slope(found.x)),
    "limits": limit_slopes(found.x)[binding].tolist(),
    "multipliers": list(found.multipliers[binding]),
    "again": again,
}
print("binding", binding, "multipliers", smooth["multipliers"], "again", again, "left", left)

# What is no optimum: the part of the slope that no limit holds is the residual of least squares with prices of zero or more.
loose = []
for seed in range(3):
    r = np.random.default_rng(100 + seed)
    A = r.normal(0, 1, (2, 4))
    c = -A.T @ np.array([1.0, 0.3]) + 0.6 * r.normal(0, 1, 4)
    x, residual = nnls(A.T, -c)
    loose.append({"objective": list(c), "limits": A.tolist(), "prices": list(x), "left": residual / np.linalg.norm(c)})
print("prices of what is no optimum", [one["prices"] for one in loose])


def front(points):
    no_worse = (points[None, :, :] <= points[:, None, :]).all(axis=2)
    better = (points[None, :, :] < points[:, None, :]).any(axis=2)
    return np.flatnonzero(~(no_worse & better).any(axis=1))


fronts = []
for seed, count, dimensions, grid in [(1, 60, 2, None), (2, 60, 3, None), (3, 80, 2, 6), (4, 80, 3, 4)]:
    r = np.random.default_rng(seed)
    # Those of a small grid have many equal numbers and equal points.
    points = r.integers(0, grid, (count, dimensions)).astype(float) if grid else r.uniform(0, 1, (count, dimensions)).round(3)
    fronts.append({"points": points.tolist(), "front": front(points).tolist()})

Path(__file__).with_suffix(".json").write_text(
    json.dumps({"linear": linear, "smooth": smooth, "loose": loose, "fronts": fronts}) + "\n"
)
