"""Writes bursts.json: shaped bursts through a closed box, linear and with curves, by closed forms and an adaptive solver.

Air 1.2 kg/m³, 343 m/s; the box is a spring. Bands re the tone by sums of Fourier at 40 lines in the width 1/T, and at the ends of the bands.
All numbers invented. Run: python3 bursts.py
"""
import json
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

RHO, C = 1.2, 343.0
D = dict(Re=5.6, Bl=14.3, Mms=0.086, Cms=0.4e-3, Rms=3.6, Sd=0.033)
VOLUME = 0.04
CYCLES = 6.5
EDGES = [1.5, 2.25, 3.33, 5.66, 8.5, 20]
REACH = 0.012
CASES = {
    "cubic stiffness": dict(stiffness=[0, 0.9], forceFactor=[]),
    "falling force factor": dict(stiffness=[], forceFactor=[0.05, -0.35]),
    "both": dict(stiffness=[0.1, 0.9], forceFactor=[0.05, -0.35]),
}
AIR = RHO * C**2 * D["Sd"] ** 2 / VOLUME
PA = RHO * D["Sd"] / (2 * np.pi)


def burst(f, t):
    inside = (t > 0) & (t < CYCLES / f)
    return np.where(inside, np.sin(np.pi * f * t / CYCLES) ** 2 * np.sin(2 * np.pi * f * t), 0.0)


def burst_transform(f0, f):
    """∫ burst e^(−jωt) dt: three windowed exponentials, each with its complex conjugate."""
    T = CYCLES / f0
    total = np.zeros_like(f, dtype=complex)
    for shift, weight in ((0.0, 0.5), (1 / T, -0.25), (-1 / T, -0.25)):
        for sign in (1, -1):
            w = 2 * np.pi * (sign * (f0 + shift) - f)
            part = np.where(np.abs(w) < 1e-9, T, (np.exp(1j * w * T) - 1) / (1j * np.where(w == 0, 1, w)))
            total += weight * sign / 2j * part
    return total


def transfer(f):
    """Pressure at 1 m over voltage."""
    s = 2j * np.pi * f
    z = s * D["Mms"] + D["Rms"] + 1 / (s * D["Cms"]) + AIR / s + D["Bl"] ** 2 / D["Re"]
    return PA * s * D["Bl"] / D["Re"] / z


def told(spectrum, f, f0):
    """`spectrum` at frequencies; f are lines, to which the ends of the bands are added."""
    def greatest(a, b):
        return np.abs(spectrum(np.array([a * f0, *f[(f > a * f0) & (f < b * f0)], b * f0]))).max()

    tone = greatest(0.5, 1.5)
    levels = [20 * np.log10(greatest(a, b) / tone) for a, b in zip(EDGES, EDGES[1:])]
    own = np.abs(burst_transform(f0, np.linspace(f0 / 2, 1.5 * f0, 20001))).max()
    return levels, 20 * np.log10(tone / own / np.sqrt(2) / 20e-6)


def linear(f0):
    f = np.arange(0.25, 20 * f0, f0 / CYCLES / 400)
    return told(lambda at: burst_transform(f0, at) * transfer(at), f, f0)


def polynomial(coefficients):
    return np.polynomial.Polynomial([1, *coefficients])


def played(case, f0, volts):
    k, b = polynomial(case["stiffness"]), polynomial(case["forceFactor"])
    held = lambda x: np.clip(x / REACH, -1, 1)

    def slopes(t, y):
        x, v = y
        Bl = D["Bl"] * b(held(x))
        force = Bl * (volts * burst(f0, t) - Bl * v) / D["Re"]
        return [v, (force - D["Rms"] * v - (k(held(x)) / D["Cms"] + AIR) * x) / D["Mms"]]

    rate = 400 * f0
    until = 3 * CYCLES / f0
    t = np.arange(0, until, 1 / rate)
    run = solve_ivp(slopes, (0, until), [0, 0], method="DOP853", t_eval=t, rtol=1e-10, atol=1e-13, max_step=0.05 / f0)
    slope = np.array([slopes(at, y)[1] for at, y in zip(t, run.y.T)])
    f = np.arange(0, 20 * f0, f0 / CYCLES / 40)
    spectrum = lambda at: np.array([np.sum(PA * slope * np.exp(-2j * np.pi * one * t)) / rate for one in at])
    levels, level = told(spectrum, f, f0)
    return levels, level, float(np.abs(run.y[0]).max())


made = dict(
    driver=D, volume=VOLUME, reach=REACH, edges=EDGES, curves=CASES,
    linear=[dict(zip(("frequency", "levels", "level"), (f0, *linear(f0)))) for f0 in (20, 31.5, 63)],
    played=[
        dict(zip(("case", "frequency", "volts", "levels", "level", "displacement"), (name, f0, volts, *played(CASES[name], f0, volts))))
        for name, f0, volts in (("cubic stiffness", 25, 25), ("falling force factor", 25, 30), ("both", 40, 45), ("both", 20, 8))
    ],
)
# The drive at which the third harmonic of the cubic spring comes to −25 dB: 2.25 to 3.33 times the tone.
root = brentq(lambda volts: played(CASES["cubic stiffness"], 31.5, volts)[0][1] + 25, 10, 40, xtol=1e-4)
levels, level, displacement = played(CASES["cubic stiffness"], 31.5, root)
made["threshold"] = dict(frequency=31.5, third=-25, volts=root, level=level, levels=levels, displacement=displacement)
print(json.dumps(made["played"], indent=1), made["threshold"], made["linear"])
Path(__file__).with_suffix(".json").write_text(json.dumps(made, indent=1, ensure_ascii=False) + "\n")
