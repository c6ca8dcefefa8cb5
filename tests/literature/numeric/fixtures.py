"""Writes fixtures.json: values by mpmath (40 digits) and scipy against which the numeric floor is tested.

Run: python3 fixtures.py
"""

import json
from pathlib import Path

import mpmath as mp
import numpy as np
import scipy
import scipy.linalg

mp.mp.dps = 40
rng = np.random.default_rng(20240501)


def complex_rows(values):
    return [[float(mp.re(v)), float(mp.im(v))] for v in values]


def special():
    x = [1e-300, 1e-8, 0.01, 0.1, 0.5, 0.999, 1.0, 1.5, 2.0, 2.404825557695773, 3.0, 3.831705970207512, 5.0, 8.0, 12.5,
         20.0, 24.999, 25.0, 30.0, 39.999, 40.0, 50.0, 100.0, 333.3, 1000.0]
    row = lambda f: [float(f(mp.mpf(v))) for v in x]
    return {
        "x": x,
        "J0": row(lambda v: mp.besselj(0, v)),
        "J1": row(lambda v: mp.besselj(1, v)),
        "H0": row(lambda v: mp.struveh(0, v)),
        "H1": row(lambda v: mp.struveh(1, v)),
    }


def polynomial(name, roots):
    """Exact product of the given roots, coefficients rounded to double, then solved again with 120 digits."""
    mp.mp.dps = 120
    c = [mp.mpc(1)]
    for r in roots:
        c = [(c[k - 1] if k > 0 else 0) - (r * c[k] if k < len(c) else 0) for k in range(len(c) + 1)]
    coefficients = [float(mp.re(v)) for v in c]
    solved = mp.polyroots([mp.mpf(v) for v in reversed(coefficients)], maxsteps=2000, extraprec=600)
    mp.mp.dps = 40
    return {"name": name, "coefficients": coefficients, "roots": complex_rows(solved)}


def polynomials():
    butterworth = [mp.expjpi((2 * k + 8 - 1) / mp.mpf(16)) for k in range(1, 9)]
    spread = [-mp.mpf(10) ** k for k in range(-6, 8, 2)]
    resonances = []
    for f, q in [(30, 0.4), (41, 7), (55, 0.7), (180, 15), (900, 3)]:
        w = 2 * mp.pi * f
        re, im = -w / (2 * q), w * mp.sqrt(mp.mpc(1 - 1 / (4 * mp.mpf(q) ** 2)))
        resonances += [re + 1j * im, re - 1j * im]
    return [
        polynomial("wilkinson 10", [mp.mpf(k) for k in range(1, 11)]),
        polynomial("wilkinson 15", [mp.mpf(k) for k in range(1, 16)]),
        polynomial("butterworth 8", butterworth),
        polynomial("six decades", spread),
        polynomial("resonances in rad/s", resonances),
        polynomial("degree 20 on a circle", [mp.mpf("3.5") * mp.expjpi(mp.mpf(2 * k + 1) / 20) for k in range(20)]),
    ]


def exponentials():
    rows = []
    for name, a in [
        ("rotation", [[0, 1], [-1, 0]]),
        ("nilpotent", [[0, 1, 2], [0, 0, 3], [0, 0, 0]]),
        ("resonance in SI", [[0, 1], [-(2 * np.pi * 35) ** 2, -2 * np.pi * 35 / 0.4]]),
        ("stiff", [[-1e5, 1e3, 0], [0, -1, 2], [5, 0, -300]]),
        ("random 6", rng.normal(size=(6, 6)).tolist()),
        ("random 8, large", (8 * rng.normal(size=(8, 8))).tolist()),
    ]:
        for time in (0.001, 1.0) if name != "random 8, large" else (1.0,):
            mp.mp.dps = 80
            e = mp.expm(mp.matrix(a) * mp.mpf(time), method="taylor")
            mp.mp.dps = 40
            n = len(a)
            rows.append({"name": name, "time": time, "a": [float(v) for r in a for v in r],
                         "expected": [float(e[i, k]) for i in range(n) for k in range(n)]})
    return rows


def systems():
    rows = []
    for n in (1, 2, 5, 12):
        a = rng.normal(size=(n, n)) + 1j * rng.normal(size=(n, n))
        if n > 2:
            a[0, 0] = 0
            a = a * (10.0 ** rng.integers(-4, 5, size=(1, n)))
        b = rng.normal(size=(n, 2)) + 1j * rng.normal(size=(n, 2))
        solve = lambda m: [mp.lu_solve(mp.matrix(m.tolist()), mp.matrix(b[:, c].tolist())) for c in range(2)]
        flat = lambda m: {"re": [float(v) for v in np.real(m).ravel()], "im": [float(v) for v in np.imag(m).ravel()]}
        pack = lambda cols: flat(np.array([[complex(cols[c][i]) for c in range(2)] for i in range(n)]))
        rows.append({"n": n, "a": flat(a), "b": flat(b), "x": pack(solve(a)), "transposed": pack(solve(a.T)),
                     "real": flat(np.array([[float(v) for v in r] for r in np.linalg.solve(a.real, b.real)]))["re"]})
    return rows


fixtures = {
    "made": f"mpmath {mp.__version__}, numpy {np.__version__}, scipy {scipy.__version__}",
    "special": special(),
    "polynomials": polynomials(),
    "exponentials": exponentials(),
    "systems": systems(),
    "golden": [float(mp.findroot(lambda p: p ** (d + 1) - p - 1, 1.3)) for d in range(1, 6)],
}
Path(__file__).with_suffix(".json").write_text(json.dumps(fixtures, indent=1) + "\n")
