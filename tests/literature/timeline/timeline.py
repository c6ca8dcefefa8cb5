"""Writes timeline.json: a short programme through a vented box, slice by slice, by a road that shares nothing with the packages.

The equations of motion as one linear system, run by scipy (lsim: straight lines between the samples of the drive); greatest values and
strokes of the air are then picked from the whole run, and held against the onsets by their formulas.
Air 1.2 kg/m³, 343 m/s, viscosity 1.81e-5 Pa·s. All numbers invented. Run: python3 timeline.py
"""
import json
from pathlib import Path

import numpy as np
from scipy.signal import lsim

RHO, C, MU = 1.2, 343.0, 1.81e-5
DRIVER = dict(Re=5.6, Le=0.9e-3, Bl=14.3, Mms=0.086, Cms=0.4e-3, Rms=3.6, Sd=0.033)
BOX = dict(netVolume=0.06, fb=28.0, QL=7.0)
DIAMETER = 0.0874
RATE, SLICE, COUNT = 8000, 800, 7760
TRAVEL, HEATED = 0.004, 10.0


def programme(t):
    """Two tones that overlap, a pause, and a softer third."""
    one = np.where(t < 0.35, 30 * np.sin(2 * np.pi * 28 * t), 0)
    two = np.where((t >= 0.2) & (t < 0.5), 9 * np.sin(2 * np.pi * 47 * t), 0)
    three = np.where(t >= 0.75, 3 * np.sin(2 * np.pi * 90 * t), 0)
    return one + two + three


d, area = DRIVER, np.pi * DIAMETER**2 / 4
wb = 2 * np.pi * BOX["fb"]
Cab = BOX["netVolume"] / (RHO * C**2)
Map = 1 / (wb**2 * Cab)
Ral = BOX["QL"] / (wb * Cab)
# current, cone velocity, displacement, pressure in the box, flow in the vent
A = np.array(
    [
        [-d["Re"] / d["Le"], -d["Bl"] / d["Le"], 0, 0, 0],
        [d["Bl"] / d["Mms"], -d["Rms"] / d["Mms"], -1 / (d["Cms"] * d["Mms"]), d["Sd"] / d["Mms"], 0],
        [0, 1, 0, 0, 0],
        [0, -d["Sd"] / Cab, 0, -1 / (Ral * Cab), -1 / Cab],
        [0, 0, 0, 1 / Map, 0],
    ]
)
B = np.array([[1 / d["Le"]], [0], [0], [0], [0]])
rows = np.array([[0, 0, 1, 0, 0], [0, 0, 0, 0, 1 / area], [1, 0, 0, 0, 0]])
t = np.arange(COUNT) / RATE
drive = programme(t)
_, y, _ = lsim((A, B, rows, np.zeros((3, 1))), drive, t)
displacement, speed, current = y.T


def strokes(u):
    """How far the air has gone in its present direction, at each sample."""
    way = np.abs(u) / RATE
    starts = np.flatnonzero(np.diff(np.sign(u), prepend=0) != 0)
    out = np.cumsum(way)
    before = np.zeros(len(u))
    for start in starts:
        before[start:] = out[start - 1] if start > 0 else 0
    return out - before


def onsets(f):
    w = 2 * np.pi * f
    return [
        np.pi / 2 * 0.16 * w * DIAMETER,
        w * DIAMETER / 2,
        10.0,
        10 * np.sqrt(2),
        0.05 * C,
        500 * np.sqrt(MU / RHO * w / 2),
    ]


run = strokes(speed)
slices, lasting = [], 0.0
for start in range(0, COUNT, SLICE):
    part = slice(start, min(COUNT, start + SLICE))
    u, xi = np.max(np.abs(speed[part])), np.max(run[part]) / 2
    at = onsets(u / (2 * np.pi * xi))
    kept = np.exp(-(part.stop - start) / (HEATED * RATE))
    lasting = kept * lasting + (1 - kept) * np.mean(current[part] ** 2)
    slices.append(
        dict(
            displacement=np.max(np.abs(displacement[part])),
            ventAirSpeed=u,
            current=np.max(np.abs(current[part])),
            rms=np.sqrt(np.mean(displacement[part] ** 2)),
            travel=np.max(np.abs(displacement[part])) / TRAVEL,
            heat=np.sqrt(lasting) / 2.0,
            quiet=u / min(at),
            noisy=u / max(at),
        )
    )
names = slices[0].keys()
json.dump(
    {
        "driver": DRIVER,
        "box": BOX,
        "diameter": DIAMETER,
        "rate": RATE,
        "count": COUNT,
        "travel": TRAVEL,
        "current": 2.0,
        "drive": [float(u) for u in drive[::160]],
        "slices": {name: [float(one[name]) for one in slices] for name in names},
        "passed": {name: float(sum(min(SLICE, COUNT - SLICE * i) for i, one in enumerate(slices) if one[name] > 1) / RATE) for name in ("travel", "quiet", "noisy")},
    },
    Path(__file__).with_name("timeline.json").open("w"),
    indent=1,
)
for one in slices:
    print({name: float("%.4g" % value) for name, value in one.items()})
