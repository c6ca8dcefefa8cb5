"""Boxes of alignments that the tables do not have, from what the alignments ask of the level alone: equal tops, no slope, no curvature.

Every box is an acoustic circuit over the resonance of its driver, with moving mass and suspension of 1; nothing is expanded to
polynomials. Starts are rough; mpmath solves to 30 digits. Run: python3 zeros.py > zeros.json
"""
import json
import sys
from mpmath import mp, mpf, mpc, diff, findroot, log, log10, sqrt

mp.dps = 30
HALF_POWER = 10 * log10(2)
OWN = mpf(4) / 5


def level(box):
    """dB over the level far above in a closed box."""
    return lambda w: 20 * log10(abs(box(mpc(0, w))))


def driven(s, QT, Z):
    return 1 / (s + 1 / mpf(QT) + 1 / s + Z)


def vented(QT, QL, alpha, h):
    C = 1 / alpha
    leak = h * C / QL if QL else 0
    return lambda s: s * driven(s, QT, 1 / (s * C + 1 / (s / (h * h * C)) + leak)) * (s * C) / (s * C + h * h * C / s + leak)


def passive(QT, kappa, Qm, alpha, mass):
    """kappa: compliance of the radiator over that of the driver; mass: of the radiator over that of the driver, acoustic.

    Qm is that of the radiator at OWN times the resonance of the driver, which is its resonance without the mass that is added.
    """
    C = 1 / alpha
    def box(s):
        Y = s * C + 1 / (s * mass + 1 / (OWN * kappa * Qm) + 1 / (s * kappa))
        return s * driven(s, QT, 1 / Y) * s * C / Y
    return box


def chamber(s, alpha, h, QL):
    """Impedance of a chamber with a vent, and the admittance of vent and leak."""
    C = 1 / alpha
    out = h * h * C / s + (h * C / QL if QL else 0)
    return 1 / (s * C + out), out


def fourth(QT, QL, rear, front, h):
    def box(s):
        Z, out = chamber(s, front, h, QL)
        return s * driven(s, QT, rear / s + Z) * Z * out
    return box


def parallel(QT, QL, rear, hr, front, hf):
    def box(s):
        Zr, outr = chamber(s, rear, hr, QL)
        Zf, outf = chamber(s, front, hf, QL)
        return s * driven(s, QT, Zr + Zf) * (Zf * outf - Zr * outr)
    return box


def series(QT, QL, rear, hr, front, hf):
    """The vent of the rear chamber leads into the front one; both leaks lead outside."""
    def box(s):
        vent = hr * hr / rear / s
        leak = lambda a, h: h / a / QL if QL else mpf(0)
        # Pressures behind (b) and in front (f) of a cone that moves one unit of air forwards.
        a11, a22 = s / rear + vent + leak(rear, hr), s / front + vent + leak(front, hf) + hf * hf / front / s
        det = a11 * a22 - vent * vent
        b, f = (-a22 + vent) / det, (a11 - vent) / det
        U = driven(s, QT, f - b)
        return s * U * (f * (hf * hf / front / s + leak(front, hf)) + b * leak(rear, hr))
    return box


def slope(f, n=1):
    return lambda w: diff(f, w, n)


def solve(equations, start):
    return [mpf(x) for x in findroot(equations, [mpf(x) for x in start], tol=1e-18, maxsteps=60)]


def crossing(f, top, low, high):
    g = lambda w: f(w) - top + HALF_POWER
    low, high = mpf(low), mpf(high)
    for _ in range(100):
        middle = sqrt(low * high)
        if (g(middle) > 0) == (g(low) > 0): low = middle
        else: high = middle
    return middle


def highest(f, low, high, n=600):
    w = [low * (mpf(high) / low) ** (mpf(i) / n) for i in range(n + 1)]
    return w, [f(x) for x in w]


def cutoff(f, top, low, high):
    """From above: the first frequency at which the level is half power below the top."""
    w, L = highest(f, mpf(low), mpf(high))
    for i in range(len(w) - 1, 0, -1):
        if L[i] >= top - HALF_POWER > L[i - 1]: return crossing(f, top, w[i - 1], w[i])


def edges(f, top):
    w, L = highest(f, mpf(0.05), mpf(12))
    best = max(range(len(w)), key=lambda i: L[i])
    lower = next(i for i in range(best, 0, -1) if L[i - 1] < top - HALF_POWER)
    upper = next(i for i in range(best, len(w)) if L[i + 1] < top - HALF_POWER)
    return crossing(f, top, w[lower - 1], w[lower]), crossing(f, top, w[upper], w[upper + 1])


def shelf(depth, QT, QL, start):
    def equations(a, h, w):
        f = level(vented(QT, QL, a, h))
        return [f(w) + depth, slope(f)(w), slope(f, 2)(w)]
    a, h, w = solve(equations, start)
    f = level(vented(QT, QL, a, h))
    # The geometric mean of the poles is at the square root of h.
    return [depth, QL, QT, a, h, cutoff(f, 0, 0.2, 20), h / w ** 2]


def quasi(QT, kappa, Qm, start):
    """|G|⁻² − 1 begins with the third power of y = 1/ω²: neither the first nor the second is there but through the zeros."""
    def excess(a, m):
        # (|D|² − |N|²) over ω⁸ as a polynomial in y, by interpolation at five places.
        N2 = lambda y: (1 - y / (m * kappa)) ** 2 + y / (OWN * kappa * Qm * m) ** 2
        G = passive(QT, kappa, Qm, a, m)
        ys = [mpf(k) / 3 for k in range(1, 6)]
        values = [N2(y) * (1 / abs(G(mpc(0, 1 / sqrt(y)))) ** 2 - 1) for y in ys]
        A = mp.matrix([[y ** k for k in range(5)] for y in ys])
        return mp.lu_solve(A, mp.matrix(values))
    def equations(a, m):
        c = excess(a, m)
        return [c[1], c[2]]
    a, m = solve(equations, start)
    f = level(passive(QT, kappa, Qm, a, m))
    return [kappa, Qm, QT, a, m, cutoff(f, 0, 0.2, 20)]


def ripple(QT, kappa, Qm, start):
    """Two equal tops, and between them a dip to the level far above."""
    def equations(a, m, w1, wd, w2):
        f = level(passive(QT, kappa, Qm, a, m))
        return [slope(f)(w1), slope(f)(wd), slope(f)(w2), f(w1) - f(w2), f(wd)]
    a, m, w1, _, _ = solve(equations, start)
    f = level(passive(QT, kappa, Qm, a, m))
    return [kappa, Qm, QT, a, m, cutoff(f, 0, 0.2, 20), f(w1)]


def geddes(S, Q, QT, QL, start):
    """Two equal tops, one at a zero of y² + middle y + 1 over the geometric mean of the poles, where the level is lower by the ripple."""
    S, Q = mpf(S), mpf(Q)
    middle = (2 * S * S - 1) / (2 * S * Q) ** 2 - 2
    root = sqrt(middle ** 2 / 4 - 1)
    places = [sqrt(-middle / 2 - root), sqrt(-middle / 2 + root)]
    def equations(rear, front, h):
        f = level(fourth(QT, QL, rear, front, h))
        mean = ((1 + rear) * h * h) ** mpf('0.25')
        low, high = [mean * x for x in places]
        return [slope(f)(low), f(low) - f(high), f(low) - f(mean) + 10 * log10(4 * S * S * (1 - S * S))]
    rear, front, h = solve(equations, start)
    f = level(fourth(QT, QL, rear, front, h))
    mean = ((1 + rear) * h * h) ** mpf('0.25')
    return [S, Q, QL, QT, rear, front, h, *edges(f, f(mean * places[0]))]


def flat6(kind, QT, QL, start):
    """Five derivatives of the level vanish in the middle."""
    def equations(r, hr, fr, hf, w):
        f = level(kind(QT, QL, r, hr, fr, hf))
        return [slope(f, n)(w) for n in range(1, 6)]
    r, hr, fr, hf, w = solve(equations, start)
    f = level(kind(QT, QL, r, hr, fr, hf))
    row = [kind.__name__, 0, QL, QT, r, hr, fr, hf, *edges(f, f(w))]
    if QL: return row
    # Far above, the level is that of s⁴ over the sixth power; in the middle it is that of 1/b³.
    far = hf * hf - (hr * hr if kind is parallel else 0)
    return row + [(far / w ** 2 / 10 ** (f(w) / 20)) ** (mpf(1) / 3)]


def ripple6(kind, height, QT, QL, start, places):
    """Three equal tops and two dips, lower by the ripple."""
    def equations(r, hr, fr, hf, *w):
        f = level(kind(QT, QL, r, hr, fr, hf))
        L = [f(x) for x in w]
        return [slope(f)(x) for x in w] + [L[0] - L[2], L[0] - L[4], L[0] - L[1] - height, L[0] - L[3] - height]
    r, hr, fr, hf, *w = solve(equations, start + places)
    f = level(kind(QT, QL, r, hr, fr, hf))
    return [kind.__name__, height, QL, QT, r, hr, fr, hf, *edges(f, f(w[0]))]


def extremes(kind, QT, QL, start, count=5):
    """Tops and dips of a box near the one that is sought."""
    f = level(kind(QT, QL, *[mpf(x) for x in start]))
    w, L = highest(f, mpf(0.1), mpf(4), 1500)
    found = [w[i] for i in range(1, 1500) if (L[i] - L[i - 1]) * (L[i + 1] - L[i]) < 0]
    return [x for x in found][:count]


def times(a, b):
    product = [mpf(0)] * (len(a) + len(b) - 1)
    for i, x in enumerate(a):
        for k, y in enumerate(b): product[i + k] += x * y
    return product


def stable(squared):
    """The polynomial in s, ascending and with 1 last, whose squared magnitude over x = ω² is this, ascending."""
    roots = [sqrt(-x) for x in mp.polyroots([mpf(c) for c in reversed(squared)], maxsteps=500, extraprec=200)]
    D = [mpc(1)]
    for root in roots: D = times(D, [root if root.real > 0 else -root, 1])
    return [c.real for c in D]


def target_fourth(S, Q):
    k = 2 * S * Q
    s1 = [1, 0, 1]
    parts = [[c * k * k for c in times(s1, s1)], [0] + [2 * S * k * c for c in s1], [0, 0, 1]]
    return ['BP4', S, Q] + [sum(part[i] for part in parts if i < len(part)) / k ** 2 for i in range(5)]


def target_sixth(b):
    flat = [mpf(1)]
    for _ in range(6): flat = times(flat, [-1, 1])
    flat[4] += b ** 6
    return ['BP6', b, 0, *stable(flat)]


def target_shelf(depth, y):
    L = mpf(10) ** (mpf(depth) / 10)
    cube = times(times([1, -y], [1, -y]), [1, -y])
    whole = times(cube, [1, (L - 1) / y ** 3])
    whole[4] += L
    return ['LS4', depth, y, *stable([c / whole[4] for c in whole])]


def told(rows):
    return [[x if isinstance(x, str) else float(mp.nstr(x, 12)) for x in row] for row in rows]


if __name__ == '__main__':
    fs, Vas = 30, 0.06
    at = lambda v, f: [Vas / v, f / fs]
    four = lambda rv, rt, fv, ft: [*at(rv, rt), *at(fv, ft)]
    shelves = [
        shelf(d, QT, QL, [*at(v, f), w])
        for d, QT, QL, v, f, w in [
            (1, 0.3, 7, 0.03606, 36.387, 1.936), (3, 0.25, 7, 0.035254, 34.586, 1.6425), (3, 0.35, 7, 0.079049, 24.863, 1.0924),
            (6, 0.25, 7, 0.053886, 25.033, 1.0928), (6, 0.4, 7, 0.12716, 17.333, 0.6641), (3, 0.3, 0, 0.05, 28, 1.3),
        ]
    ]
    print('shelves', file=sys.stderr)
    quasis = [
        quasi(QT, 1, 8, [0.06 / v, m]) for QT, v, m in [(0.2, 0.00723, 1.24), (0.25, 0.01218, 1.024), (0.3, 0.01937, 0.774)]
    ] + [quasi(QT, 3, 8, [0.06 / v, m]) for QT, v, m in [(0.2, 0.00726, 2.2), (0.33, 0.0257, 1.5)]]
    tops = [
        ripple(QT, kappa, 8, [0.06 / v, m, *w])
        for QT, kappa, v, m, w in [
            (0.4, 1, 0.0427, 1.80, (1.598, 2.04, 3.677)), (0.5, 3, 0.0858, 1.333, (0.980, 1.244, 2.231)),
            (0.6, 3, 0.1273, 1.301, (0.812, 1.012, 1.784)),
        ]
    ]
    geddeses = [
        geddes(S, Q, QT, QL, [*at(rv, 1)[:1], *at(fv, ft)])
        for S, Q, QT, QL, rv, fv, ft in [
            (0.5, 0.8, 0.35, 0, 0.0142, 0.00735, 68.6), (0.5, 0.8, 0.35, 7, 0.010767, 0.006606, 75.75),
            (0.6, 0.6, 0.33, 7, 0.02, 0.009, 56), (0.6, 0.6, 0.33, 15, 0.022, 0.0095, 55),
        ]
    ]
    print('geddes', file=sys.stderr)
    flats = [
        flat6(kind, QT, QL, [*four(*box), w / fs])
        for kind, QT, QL, box, w in [
            (parallel, 0.3, 0, (0.094946, 16.003, 0.014835, 43.841), 27.61), (parallel, 0.4, 0, (0.1265, 18.576, 0.029036, 41.356), 28.458),
            (series, 0.3, 0, (0.030802, 20.641, 0.02199, 33.989), 27.61), (series, 0.4, 0, (0.042185, 23.467, 0.053648, 32.737), 28.458),
            (parallel, 0.4, 7, (0.18109, 17.3625, 0.02771, 41.03), 27.751), (series, 0.4, 7, (0.044496, 24.046, 0.050603, 27.609), 27.106),
        ]
    ]
    print('flat', file=sys.stderr)
    rippled = []
    for kind, QT, QL, box in [
        (parallel, 0.4, 0, (0.172655, 13.00305, 0.0150277, 43.063633)), (series, 0.4, 0, (0.0451174, 17.77667, 0.01993173, 31.49963)),
        (parallel, 0.5, 7, (0.3674139, 12.6573448, 0.02169174, 40.325218)),
    ]:
        start = four(*box)
        rippled.append(ripple6(kind, 0.5, QT, QL, start, extremes(kind, QT, QL, start)))
    targets = [
        target_fourth(mpf('0.5'), mpf('0.8')), target_fourth(mpf('0.9'), mpf(2)),
        target_sixth(mpf('0.5')), target_sixth(mpf('1.5')),
        target_shelf(1, mpf('0.7')), target_shelf(6, mpf('1.2')),
    ]
    json.dump(
        {'about': 'see zeros.py', 'shelf': told(shelves), 'quasi': told(quasis), 'ripple': told(tops), 'geddes': told(geddeses),
         'flat': told(flats), 'rippled': told(rippled), 'targets': told(targets)}, sys.stdout, indent=1)
