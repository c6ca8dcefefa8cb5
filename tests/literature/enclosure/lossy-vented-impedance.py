"""Impedances of vented boxes that lose, from their mechanics: the equation of motion of a cone with the air of the box behind
it, which leaves through a vent and a leak, and is lost in absorbent. Drivers, tunings and losses are drawn at random; peaks and
dip are found by scipy; a reading is taken on the upper side of the upper peak.

Writes lossy-vented-impedance.json beside this file.
"""
import json
from pathlib import Path

import numpy as np
from scipy.optimize import minimize_scalar

RHO, C = 1.2041, 343.2
RHO_C2 = RHO * C**2


def impedance(f, Re, Qes, Qms, fs, Vas, V, fb, QL=np.inf, QA=np.inf, QP=np.inf):
    # All pressures and flows behind a cone of 1 m²: masses and stiffnesses are then acoustic ones.
    w, ws, wb = (2 * np.pi * one for one in (f, fs, fb))
    cms, cab = Vas / RHO_C2, V / RHO_C2
    mms = 1 / (ws**2 * cms)
    map_ = 1 / (wb**2 * cab)
    bl2 = ws * mms * Re / Qes
    rms = ws * mms / Qms
    air = 1 / (1 / (1j * w * cab) + 1 / (wb * cab * QA))
    vent = 1 / (1j * w * map_ + wb * map_ / QP)
    leak = wb * cab / QL
    return Re + bl2 / (rms + 1j * w * mms + 1 / (1j * w * cms) + 1 / (air + vent + leak))


def turn(box, sign, low, high):
    grid = np.geomspace(low, high, 40001)
    size = sign * np.abs(impedance(grid, **box))
    at = np.argmax(size)
    if at in (0, len(grid) - 1):
        return None
    return minimize_scalar(lambda f: -sign * abs(impedance(f, **box)), bounds=(grid[at - 2], grid[at + 2]),
                           method="bounded", options=dict(xatol=1e-11)).x


rng = np.random.default_rng(20261130)
rows = []
while len(rows) < 60:
    fs = rng.uniform(25, 60)
    box = dict(Re=round(rng.uniform(2.8, 7.0), 2), Qes=rng.uniform(0.25, 0.7), Qms=rng.uniform(2.5, 10), fs=fs,
               Vas=0.03 * np.exp(rng.uniform(-0.8, 0.8)), V=0.03, fb=fs * rng.uniform(0.65, 1.3),
               QL=[7.0, 5.0, 15.0, 1e4, rng.uniform(5, 30), 5.0][len(rows) % 6])
    # Every sixth box has absorbent and a vent that loses as well.
    if len(rows) % 6 == 5:
        box |= dict(QL=10.0, QA=30.0, QP=40.0)
    L = turn(box, 1, 4, box["fb"])
    H = turn(box, 1, box["fb"], 400)
    M = L and H and turn(box, -1, L, H)
    if not M:
        continue
    flank = 1.15 * H
    size = lambda f: float(abs(impedance(f, **box)))
    rows.append(dict(lowerPeak=L, dip=M, upperPeak=H, peakImpedance=max(size(L), size(H)), flankFrequency=flank,
                     flankImpedance=size(flank), alpha=box["Vas"] / box["V"],
                     Qts=box["Qes"] * box["Qms"] / (box["Qes"] + box["Qms"]), **box))
Path(__file__).with_suffix(".json").write_text(json.dumps(rows, indent=1) + "\n")
