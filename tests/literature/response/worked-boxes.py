"""Writes worked-boxes.json: one driver in a closed and in a vented box, by its equations of motion, solved by mpmath.

Unknowns: current, cone velocity, box pressure, vent flow, leak flow, all rms. Displacement is peak, the level that of the
flow into the box at 1 m in half space. Run: python3 worked-boxes.py
"""
import json
from pathlib import Path

from mpmath import log10, lu_solve, matrix, mp, mpc, mpf, pi, sqrt

mp.dps = 40
RHO, C, DRIVE = mpf("1.2041"), mpf("343.2"), mpf("2.83")
RE, BL, MMS, CMS = mpf("5.9"), mpf("5.13"), mpf("0.0093"), mpf("0.000735")
RMS, SD = sqrt(MMS / CMS) / mpf("3.35"), mpf("0.008659014751")


def columns(volume, fb, QL, f):
    s = mpc(0, 2 * pi * f)
    cab = volume / (RHO * C**2)
    equations, rest = matrix(5, 5), matrix(5, 1)
    # Re i + Bl v = drive; Bl i = (s Mms + Rms + 1/(s Cms)) v + Sd p; s Cab p = Sd v − vent − leak
    equations[0, 0], equations[0, 1], rest[0] = RE, BL, DRIVE
    equations[1, 0], equations[1, 1], equations[1, 2] = -BL, s * MMS + RMS + 1 / (s * CMS), SD
    equations[2, 1], equations[2, 2], equations[2, 3], equations[2, 4] = SD, -s * cab, -1, -1
    equations[3, 3] = equations[4, 4] = 1
    if fb is not None:
        wb = 2 * pi * fb
        equations[3, 2] = -(wb**2) * cab / s
        equations[4, 2] = -wb * cab / QL
    current, velocity, _, vent, leak = lu_solve(equations, rest)
    flow = SD * velocity - vent - leak
    return {
        "displacement": sqrt(2) * 1000 * abs(velocity / s),
        "level": 20 * log10(RHO * f * abs(flow) / mpf("20e-6")),
        "impedance": abs(DRIVE / current),
        "ventFlow": abs(vent),
    }


BOXES = {
    "closed": (("0.036", None, None), ("20", "40", "60", "80", "100", "200")),
    "vented": (("0.02815", "41.4", "7"), ("20", "30", "41.4", "50", "60", "80", "100", "200")),
}
out = {}
for name, (box, frequencies) in BOXES.items():
    box = [None if number is None else mpf(number) for number in box]
    rows = [columns(*box, mpf(f)) for f in frequencies]
    out[name] = {"frequencies": [float(f) for f in frequencies]}
    out[name] |= {column: [float(row[column]) for row in rows] for column in rows[0]}
del out["closed"]["ventFlow"]
if __name__ == "__main__":
    Path(__file__).with_name("worked-boxes.json").write_text(json.dumps(out, indent=1) + "\n")
