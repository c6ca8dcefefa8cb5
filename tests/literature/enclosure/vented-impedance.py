"""Impedances of vented boxes without box losses, from their mechanics: the equation of motion of a cone with a box and a
vent behind it. Peaks and dip are found by scipy; a reading is taken on the upper side of the upper peak.

Writes vented-impedance.json beside this file.
"""
import json
from pathlib import Path

import numpy as np
from scipy.optimize import minimize_scalar

RHO_C2 = 141_800.0
SETS = [
    dict(Re=6.0, Bl=8.0, Mms=0.025, Cms=8e-4, Rms=1.1, Sd=0.0132, V=0.022, fb=34.0),
    dict(Re=3.1, Bl=11.0, Mms=0.060, Cms=3e-4, Rms=2.5, Sd=0.0346, V=0.055, fb=41.0),
    dict(Re=5.4, Bl=5.5, Mms=0.012, Cms=1.5e-3, Rms=0.6, Sd=0.0085, V=0.010, fb=48.0),
]


def impedance(f, Re, Bl, Mms, Cms, Rms, Sd, V, fb):
    w = 2 * np.pi * f
    cab = V / RHO_C2
    mass = 1 / ((2 * np.pi * fb) ** 2 * cab)
    air = 1 / (1j * w * cab + 1 / (1j * w * mass))
    return Re + Bl**2 / (Rms + 1j * w * Mms + 1 / (1j * w * Cms) + Sd**2 * air)


def peak(box, low, high):
    grid = np.linspace(low, high, 20001)
    at = grid[np.argmax(np.abs(impedance(grid, **box)))]
    found = minimize_scalar(lambda f: -abs(impedance(f, **box)), bounds=(at * 0.99, at * 1.01), method="bounded",
                            options=dict(xatol=1e-10))
    return found.x


rows = []
for box in SETS:
    ws = 1 / np.sqrt(box["Mms"] * box["Cms"])
    L, H = peak(box, 3, box["fb"] * 0.999), peak(box, box["fb"] * 1.001, 400)
    flank = 1.15 * H
    Qes = ws * box["Mms"] * box["Re"] / box["Bl"] ** 2
    Qms = ws * box["Mms"] / box["Rms"]
    rows.append(dict(lowerPeak=L, dip=box["fb"], upperPeak=H, peakImpedance=float(abs(impedance(H, **box))),
                     flankFrequency=flank, flankImpedance=float(abs(impedance(flank, **box))), Re=box["Re"],
                     fs=ws / 2 / np.pi, Qes=Qes, Qms=Qms, Qts=Qes * Qms / (Qes + Qms)))
Path(__file__).with_suffix(".json").write_text(json.dumps(rows, indent=2) + "\n")
print(json.dumps(rows, indent=1))
