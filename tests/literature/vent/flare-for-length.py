"""The best quarter-round flares of tubes of a length, by a road that shares nothing with the packages: end corrections and losses from the
printed numbers, diameters by brentq, optima by a fine scan and minimize_scalar.
Writes flare-for-length.json. Run: python3 flare-for-length.py
"""
import json
import numpy as np
from scipy.optimize import brentq, minimize_scalar

c, nu = 343.2, 1.8e-5 / 1.2
RATIO = [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12, 0.16, 0.2]
ENTRANCE = [0.5, 0.44, 0.37, 0.31, 0.26, 0.22, 0.2, 0.15, 0.09, 0.06, 0.03]


def case(L, V, f):
    w = 2 * np.pi * f
    k = w / c
    # Ends in a wide wall and without any, at k (norris1989 and dalmont2001).
    flanged = lambda a: 0.8216 / (1 + (0.77 * k * a) ** 2 / (1 + 0.77 * k * a))
    free = lambda a: 0.6133 * ((1 + 0.044 * (k * a) ** 2) / (1 + 0.19 * (k * a) ** 2) - 0.02 * np.sin(2 * k * a) ** 2)
    end = lambda a, R, sharp: np.sqrt((sharp(a) * a) ** 2 + np.pi**2 / 8 * a * R) - R
    radius = lambda R: brentq(lambda a: np.pi * a * a / (k * k * V) - L - end(a, R, flanged) - end(a, R, free), 1e-5, 10, xtol=1e-15)
    K = lambda a, R: np.interp(R / (2 * a), RATIO, ENTRANCE)
    a0 = radius(0)
    # A thin tube that projects draws in air with a loss of 1, the flush end with 0.5; each exit loses 1.
    K0 = (1 + 1 + 0.5 + 1) / 2

    def loss(R):
        a = radius(R)
        return (K(a, R) + 1) / K0 * (a0 / a) ** 4

    def quiet(R):
        a = radius(R)
        m = a + R
        moved = min(np.pi / 2 * 0.16 * 2 * m, m) * w * np.pi * m * m
        fast = min(10, 500 * np.sqrt(nu * w / 2)) * np.pi * a * a
        return min(moved, fast)

    def best(of):
        grid = np.linspace(1e-4, L / 2, 4001)
        i = int(np.argmin([of(R) for R in grid]))
        return minimize_scalar(of, bounds=(grid[max(i - 1, 0)], grid[min(i + 1, 4000)]), method="bounded", options={"xatol": 1e-13}).x

    def tube(R):
        a = radius(R)
        low = min(np.pi / 2 * 0.16 * 2 * a * w, 10) * np.pi * a * a
        return dict(flare=R, diameter=2 * a, mouth=2 * (a + R), effective=np.pi * a * a / (k * k * V), loss=loss(R) if R > 0 else 1, low=low, high=quiet(R))

    return dict(straight=tube(0), leastLoss=tube(best(loss)), quietest=tube(best(lambda R: -quiet(R))))


cases = [(0.25, 0.045, 27.0), (0.15, 0.04, 40.0), (0.2, 0.02, 35.0), (0.4, 0.06, 30.0)]
rows = [case(*one) for one in cases]
table = {tube: {name: [float(row[tube][name]) for row in rows] for name in rows[0][tube]} for tube in rows[0]}
json.dump({"length": [a for a, _, _ in cases], "volume": [b for _, b, _ in cases], "fb": [f for *_, f in cases], **table}, open("flare-for-length.json", "w"), indent=1)
for row in rows:
    print("gain %.2f dB" % (20 * np.log10(row["quietest"]["high"] / row["straight"]["high"])))
