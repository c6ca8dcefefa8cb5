"""Writes models.json: what curves, losses, holds, heat and harmonics must be, by scipy and numpy. All numbers invented.

Run: python3 models.py
"""
import json
from pathlib import Path

import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.signal import cont2discrete

Poly = np.polynomial.Polynomial

# Polynomials over displacement in reaches; energy of the spring by quadrature, in reaches squared.
places = [-1.2, -0.9, -0.4, 0.1, 0.5, 0.9, 1.3]
bl = Poly([1, 0.05, -0.4, 0, -0.1])
le = Poly([1, -0.35, 0.05])
stiff = Poly([1, 0.1, 0.9])


def held(p, x):
    return float(p(np.clip(x, -1, 1)))


def energy(x):
    points = [p for p in (-1.0, 1.0) if min(0, x) < p < max(0, x)]
    return quad(lambda s: held(stiff, s) * s, 0, x, points=points or None, epsabs=1e-14, epsrel=1e-13)[0]


curves = dict(
    places=places,
    forceFactor=[held(bl, x) for x in places],
    inductance=[held(le, x) for x in places],
    force=[held(stiff, x) * x for x in places],
    energy=[energy(x) for x in places],
)

# A stop from 9 mm outwards and 8 mm inwards, 200 times as stiff: energy by quadrature of the force, m².
depths = [-0.0095, -0.005, 0.0085, 0.011]
stop = dict(
    places=depths,
    energy=[
        quad(lambda s: 200 * (max(s - 0.009, 0) + min(s + 0.008, 0)), 0, x, points=[-0.008] if x < -0.008 else [0.009] if x > 0.009 else None)[0]
        for x in depths
    ],
)

# Holds: transfer of their pulses by quadrature, at parts of the sample rate.
parts = [0.01, 0.1, 0.25, 0.5, 1.3]


def transfer(pulse, a, b, part):
    re = quad(lambda t: pulse(t) * np.cos(2 * np.pi * part * t), a, b, epsabs=1e-14, points=[0.0] if a < 0 else None)[0]
    im = quad(lambda t: -pulse(t) * np.sin(2 * np.pi * part * t), a, b, epsabs=1e-14, points=[0.0] if a < 0 else None)[0]
    return [re, im]


holds = dict(
    parts=parts,
    zero=[transfer(lambda t: 1.0, 0, 1, p) for p in parts],
    first=[transfer(lambda t: 1 - abs(t), -1, 1, p) for p in parts],
)

# A closed box by its state matrices, discretised by both holds, for a pulse and a step.
d = dict(Re=5.6, Le=0.9e-3, Bl=14.3, Mms=0.086, Cms=0.4e-3, Rms=3.6, Sd=0.033)
RHO, C, VB, RATE = 1.2, 343.0, 0.04, 4000.0
stiffness = 1 / d["Cms"] + d["Sd"] ** 2 * RHO * C**2 / VB
A = np.array(
    [
        [-d["Re"] / d["Le"], -d["Bl"] / d["Le"], 0],
        [d["Bl"] / d["Mms"], -d["Rms"] / d["Mms"], -stiffness / d["Mms"]],
        [0, 1, 0],
    ]
)
B = np.array([[1 / d["Le"]], [0], [0]])
unit = RHO / (2 * np.pi) * d["Sd"]
Cm = np.array([unit * A[1], [0, 0, 1], [1, 0, 0]])
drive = np.concatenate([[1.0, -0.5, 0.25], np.sin(np.arange(57) / 5.0)])


def run(method):
    Ad, Bd, Cd, Dd, _ = cont2discrete((A, B, Cm, np.zeros((3, 1))), 1 / RATE, method)
    x = np.zeros(3)
    rows = []
    for u in drive:
        rows.append(Cd @ x + Dd[:, 0] * u)
        x = Ad @ x + Bd[:, 0] * u
    return np.array(rows).T.tolist()


linear = dict(rate=RATE, volume=VB, driver=d, drive=drive.tolist(), zoh=run("zoh"), foh=run("foh"))

# Heat: 20 W for 5 s from cold, by an adaptive solver.
heat = dict(coilRise=1.2, coilTime=2.0, magnetRise=0.8, magnetTime=60.0, power=20.0)
Rc, Cc, Rm, Cmag = 1.2, 2.0 / 1.2, 0.8, 60.0 / 0.8
warm = solve_ivp(
    lambda t, T: [(20 - (T[0] - T[1]) / Rc) / Cc, ((T[0] - T[1]) / Rc - T[1] / Rm) / Cmag],
    (0, 5),
    [0, 0],
    rtol=1e-12,
    atol=1e-12,
    t_eval=[1, 5],
)
heat.update(times=[1, 5], coil=warm.y[0].tolist(), magnet=warm.y[1].tolist(), Rc=Rc, Cc=Cc, Rm=Rm, Cm=Cmag)

# A purely quadratic vent under a pressure cos t: u = sgn(cos) sqrt|cos|. Its harmonics by quadrature.
u = lambda t: np.sign(np.cos(t)) * np.sqrt(abs(np.cos(t)))
harmonics = [4 / np.pi * quad(lambda t: u(t) * np.cos(k * t), 0, np.pi / 2, epsabs=1e-14)[0] for k in (1, 3, 5)]
quadratic = dict(harmonics=harmonics, describing=float(np.sqrt(3 * np.pi / 8)))
print("quadratic vent", quadratic, "ratios", [h / harmonics[0] for h in harmonics])

# Harmonics of a made period, by the fast transform.
period = np.exp(np.sin(2 * np.pi * np.arange(48) / 48)) + 0.3 * np.cos(6 * np.pi * np.arange(48) / 48 + 0.4)
spectrum = np.fft.rfft(period) / 24
fourier = dict(
    period=period.tolist(),
    amplitudes=[float(spectrum[0].real / 2), *np.abs(spectrum[1:9]).tolist()],
    phases=np.angle(spectrum[1:5]).tolist(),
)
sizes = np.abs(spectrum[1:9])
fourier["distortion"] = [sizes[1] / sizes[0], sizes[2] / sizes[0], float(np.sqrt((sizes[1:] ** 2).sum()) / sizes[0])]

# A high tone of 15 periods, modulated in amplitude and phase by one of 3.
t = np.arange(240) / 240
modulated = np.cos(6 * np.pi * t) + (1 + 0.2 * np.cos(6 * np.pi * t) + 0.06 * np.cos(12 * np.pi * t)) * np.cos(
    30 * np.pi * t + 0.1 * np.sin(6 * np.pi * t)
)
sizes = np.abs(np.fft.rfft(modulated)) / 120
fourier["modulated"] = modulated.tolist()
fourier["modulation"] = [(sizes[12] + sizes[18]) / sizes[15], (sizes[9] + sizes[21]) / sizes[15]]

flows = np.array([-0.08, -0.01, 0.002, 0.05, 0.12])
speeds = flows / 0.006
loss = dict(
    flows=flows.tolist(), pressures=(0.5 * RHO * np.where(speeds > 0, 1.5, 1.1) * speeds * np.abs(speeds)).tolist()
)

made = dict(curves=curves, stop=stop, holds=holds, linear=linear, heat=heat, quadratic=quadratic, fourier=fourier, loss=loss)
Path(__file__).with_suffix(".json").write_text(json.dumps(made, indent=1, ensure_ascii=False) + "\n")
