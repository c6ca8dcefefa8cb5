"""Drivers in free air and on the air of a box, by the poles of their motion: state matrices of numpy, and no Thiele/Small
parameter. The air is a spring by the adiabatic law, γ p Sd²/V; it resists as ρ c² does in air of 1.18 kg/m³ and 345 m/s.

Writes driven-poles.json beside this file.
"""
import json
from pathlib import Path

import numpy as np

GAMMA, PRESSURE = 1.4, 1.18 * 345.0**2 / 1.4
SETS = [
    dict(Sd=0.0330, Mms=0.0860, Cms=4.0e-4, Rms=3.6, Re=5.6, Bl=14.3, V=0.040, fb=24.0, Rg=0.0, drivers=1, fill=1.0),
    dict(Sd=0.0330, Mms=0.0860, Cms=4.0e-4, Rms=3.6, Re=5.6, Bl=14.3, V=0.040, fb=24.0, Rg=2.8, drivers=1, fill=1.25),
    dict(Sd=0.0132, Mms=0.0250, Cms=8.0e-4, Rms=1.1, Re=6.0, Bl=8.00, V=0.022, fb=34.0, Rg=0.5, drivers=2, fill=1.0),
    dict(Sd=0.0085, Mms=0.0120, Cms=1.5e-3, Rms=0.6, Re=5.4, Bl=5.50, V=0.010, fb=48.0, Rg=0.0, drivers=1, fill=1.0),
]


def motion(Sd, Mms, Cms, Rms, Re, Bl, Rg, stiffness):
    """Frequency and quality factor of the pair of poles of one cone; the coil, closed by Rg, brakes it."""
    brake = Rms + Bl**2 / (Re + Rg)
    poles = np.linalg.eigvals(np.array([[0.0, 1.0], [-(1 / Cms + stiffness) / Mms, -brake / Mms]]))
    w = np.sqrt(np.prod(poles).real)
    return w / (2 * np.pi), w / -np.sum(poles).real


rows = []
for one in SETS:
    V, fb, drivers = one["V"], one["fb"], one["drivers"]
    cone = {key: value for key, value in one.items() if key not in ("V", "fb", "drivers", "fill")}
    # Each cone compresses the air by its own travel and by that of the others, and each coil has its own Rg.
    # A box whose filling gains 1.25 is as springy as one of 1.25 times the volume.
    fs, QT = motion(**cone, stiffness=0.0)
    fc, Qtc = motion(**cone, stiffness=drivers * GAMMA * PRESSURE * cone["Sd"] ** 2 / (one["fill"] * V))
    rows.append(dict(one, fs=fs, QT=QT, fc=fc, Qtc=Qtc, alpha=(fc / fs) ** 2 - 1, h=fb / fs))

Path(__file__).with_suffix(".json").write_text(json.dumps(rows, indent=1) + "\n")
