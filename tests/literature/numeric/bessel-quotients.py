"""Writes bessel-quotients.json: J1/J0 and J2/J0 over the complex plane by mpmath with 60 digits.

Run: python3 bessel-quotients.py
"""

import json
from pathlib import Path

import mpmath as mp

mp.mp.dps = 60
rows = []
sizes = [1e-9, 1e-3, 0.3, 0.999, 1.001, 2.5, 7.0, 15.0, 24.99, 25.01, 60.0, 300.0]
for size in sizes:
    # Along the diagonals, on which boundary layers lie, near both axes, and between.
    for degrees in (-45, 45, 135, -135, 10, 80, -90, 170, 63):
        z = mp.mpf(size) * mp.expj(mp.radians(degrees))
        re, im = float(mp.re(z)), float(mp.im(z))
        z = mp.mpc(re, im)
        j0, j1, j2 = (mp.besselj(n, z) for n in range(3))
        a, b = j1 / j0, j2 / j0
        rows.append([re, im] + [float(v) for v in (mp.re(a), mp.im(a), mp.re(b), mp.im(b))])
for x in (0.5, 3.0, 20.0, 40.0, 250.0):
    j0, j1, j2 = (mp.besselj(n, x) for n in range(3))
    rows.append([x, 0.0, float(j1 / j0), 0.0, float(j2 / j0), 0.0])
text = "[\n" + ",\n".join("  " + json.dumps(row) for row in rows) + "\n]\n"
Path(__file__).with_suffix(".json").write_text(text)
