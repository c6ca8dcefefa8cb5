"""Writes step.json: sound pressure after a step of 1 V, by scipy.signal.step on the equations of motion.

States: coil current, cone velocity, cone displacement, box pressure, vent flow (outwards). Air 1.2 kg/m³, 343 m/s.
Run: python3 step.py
"""
import json
from pathlib import Path

import numpy as np
from scipy.signal import step

RHO, C = 1.2, 343.0
DRIVER = dict(Re=5.6, Le=0.9e-3, Bl=14.3, Mms=0.086, Cms=0.4e-3, Rms=3.6, Sd=0.033)
BOXES = {
    "vented": dict(Vb=0.06, fb=28.0, QL=7.0, QP=60.0),
    "closed": dict(Vb=0.04, fb=None, QL=None, QP=None),
}


def pressure(Vb, fb, QL, QP, t):
    d = DRIVER
    Cab = Vb / (RHO * C**2)
    leak = 0.0 if QL is None else 2 * np.pi * fb * Cab / QL
    A = np.zeros((5, 5))
    A[0] = [-d["Re"] / d["Le"], -d["Bl"] / d["Le"], 0, 0, 0]
    A[1] = [d["Bl"] / d["Mms"], -d["Rms"] / d["Mms"], -1 / (d["Cms"] * d["Mms"]), d["Sd"] / d["Mms"], 0]
    A[2] = [0, 1, 0, 0, 0]
    A[3] = [0, -d["Sd"] / Cab, 0, -leak / Cab, -1 / Cab]
    flow = np.array([0, d["Sd"], 0, leak, 1])
    if fb is None:
        A[3, 4] = flow[4] = 0
    else:
        mass = 1 / ((2 * np.pi * fb) ** 2 * Cab)
        A[4] = [0, 0, 0, 1 / mass, -(2 * np.pi * fb) / QP]
    keep = [0, 1, 2, 3, 4] if fb else [0, 1, 2, 3]
    A, flow = A[np.ix_(keep, keep)], flow[keep]
    B = np.zeros((len(keep), 1))
    B[0] = 1 / d["Le"]
    _, p = step((A, B, (RHO / (2 * np.pi) * flow @ A)[None, :], [[0.0]]), T=t)
    return p


t = np.linspace(0, 0.1, 201)
out = {
    "note": "Pa at 1 m in half space after a step of 1 V; step.py beside this file wrote it",
    "until": 0.1,
    "points": 201,
    "driver": DRIVER,
    "boxes": {name: {**box, "pressure": [float(x) for x in pressure(**box, t=t)][::10]} for name, box in BOXES.items()},
}
Path(__file__).with_name("step.json").write_text(json.dumps(out, indent=1) + "\n")
