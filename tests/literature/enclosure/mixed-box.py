"""Boxes of drivers unlike each other, by their equations of motion, solved by mpmath; least loads by numpy and scipy.

Unknowns: velocity of each cone, pressure in each chamber, current in each branch. Written from Newton's law, the spring of
the enclosed air and the voltage of a coil, apart from the library. Makes mixed-box.json. All drivers are invented.
"""
import json
from pathlib import Path

import numpy as np
from mpmath import lu_solve, matrix, mp
from scipy.optimize import brentq, minimize_scalar

mp.dps = 40
RHO, C = 1.2, 343.0
LOW = dict(Sd=0.0855, Mms=0.15, Cms=0.25e-3, Rms=6.0, Re=5.5, Bl=18.0, Le=1.1e-3, Xmax=0.012, Pe=300.0)
WIDE = dict(Sd=0.033, Mms=0.03, Cms=0.45e-3, Rms=2.1, Re=3.2, Bl=8.2, R2=5.0, L2=0.7e-3, Xmax=0.006, Pe=80.0)
SMALL = dict(Sd=0.0137, Mms=0.011, Cms=0.9e-3, Rms=0.8, Re=6.4, Bl=6.1, Le=0.3e-3, Xmax=0.004, Pe=40.0)
SOURCE = 0.25
AREA = 0.008
SPEED = 3.0
CLOSED = dict(netVolume=0.02, fillGain=1.15, QL=9.0, QA=12.0)
VENTED = dict(netVolume=0.09, fb=31.0, QL=7.0, QA=60.0, QP=45.0, ventArea=AREA)


def compliance(V, gain=1.0):
    return gain * V / (RHO * C**2)


def chamber_resonance(drivers, Cab):
    """Highest root of det(K - w^2 M) of the cones coupled by the air: a generalised eigenproblem."""
    S = np.array([d["Sd"] for d in drivers])
    K = np.diag([1 / d["Cms"] for d in drivers]) + np.outer(S, S) / Cab
    M = np.diag([d["Mms"] for d in drivers])
    return float(np.sqrt(np.max(np.linalg.eigvals(np.linalg.solve(M, K)).real)))


def closed_admittance(w, box, drivers):
    Cab = compliance(box["netVolume"], box.get("fillGain", 1.0))
    wc = chamber_resonance(drivers, Cab)
    air = 1 / (1 / (1j * w * Cab) + (1 / (wc * Cab * box["QA"]) if "QA" in box else 0))
    leak = wc * Cab / box["QL"] if "QL" in box else 0
    return air, air + leak, 0


def vented_admittance(w, box, _):
    Cab = compliance(box["netVolume"])
    wb = 2 * np.pi * box["fb"]
    Map = 1 / (wb**2 * Cab)
    air = 1 / (1 / (1j * w * Cab) + 1 / (wb * Cab * box["QA"]))
    vent = 1 / (1j * w * Map + wb * Map / box["QP"])
    return air, air + wb * Cab / box["QL"] + vent, vent


def coil(w, d):
    Z = d["Re"] + 1j * w * d.get("Le", 0)
    if "R2" in d:
        Z += 1 / (1 / d["R2"] + 1 / (1j * w * d["L2"]))
    return Z


def mechanical(w, d):
    return 1j * w * d["Mms"] + d["Rms"] + 1 / (1j * w * d["Cms"])


def exactly(A, b):
    return np.array([complex(x) for x in lu_solve(matrix(A.tolist()), matrix(b.tolist()))])


def solve(f, drivers, chamber_of, boxes, loops, solver=np.linalg.solve):
    """drivers: list. loops: currents, each a list of drivers in series across the terminals. All in parallel."""
    w = 2 * np.pi * f
    n, m = len(drivers), len(loops)
    k = len(boxes)
    A = np.zeros((n + k + m + 1, n + k + m + 1), complex)
    b = np.zeros(n + k + m + 1, complex)
    branch = {i: j for j, loop in enumerate(loops) for i in loop}
    air, vents = [], []
    for i, d in enumerate(drivers):
        # mass, damper and spring; force of the coil; the pressure behind pushes the cone outwards
        A[i, i] = mechanical(w, d)
        A[i, n + chamber_of[i]] = -d["Sd"]
        A[i, n + k + branch[i]] = -d["Bl"]
    for c, box in enumerate(boxes):
        inside = [drivers[i] for i in range(n) if chamber_of[i] == c]
        own, whole, vent = (vented_admittance if "fb" in box else closed_admittance)(w, box, inside)
        air.append(own)
        vents.append(vent)
        A[n + c, n + c] = whole
        for i in range(n):
            if chamber_of[i] == c:
                A[n + c, i] = drivers[i]["Sd"]
    for j, loop in enumerate(loops):
        for i in loop:
            A[n + k + j, n + k + j] += coil(w, drivers[i])
            A[n + k + j, i] = drivers[i]["Bl"]
        A[n + k + j, -1] = -1  # terminal voltage
    A[-1, -1] = 1
    A[-1, n + k : n + k + m] = SOURCE
    b[-1] = 1
    x = solver(A, b)
    p = x[n : n + k]
    return dict(
        velocity=list(x[:n]),
        currents=[x[n + k + branch[i]] for i in range(n)],
        current=sum(x[n + k : n + k + m]),
        voltage=x[-1],
        flow=-sum(a * q for a, q in zip(air, p)),
        vents=[v * q for v, q in zip(vents, p)],
    )


CASES = {
    # 'low' alone across the terminals, 'wide' and 'small' in series beside it
    "one volume": ([LOW, WIDE, SMALL], [0, 0, 0], [VENTED], [[0], [1, 2]]),
    "two volumes": ([LOW, WIDE, SMALL], [0, 1, 1], [VENTED, CLOSED], [[0], [1, 2]]),
}
FREQUENCIES = [5.0, 20.0, 30.999969, 31.0, 47.0, 80.0, 150.0, 400.0, 2000.0]
flat = lambda z: [float(x) for x in np.real(z)] + [float(x) for x in np.imag(z)]
out = {
    "air": dict(density=RHO, speedOfSound=C),
    "drivers": dict(low=LOW, wide=WIDE, small=SMALL),
    "sourceResistance": SOURCE,
    "airSpeedRms": SPEED,
    "vented": VENTED,
    "closed": CLOSED,
    "frequencies": FREQUENCIES,
    "cases": {},
}
for name, case in CASES.items():
    runs = [solve(f, *case, solver=exactly) for f in FREQUENCIES]
    impedance = lambda f: (lambda r: r["voltage"] / r["current"])(solve(f, *case))

    def least(cost, low=20.0, high=200.0):
        grid = np.geomspace(low, high, 4001)
        at = int(np.argmin([cost(f) for f in grid]))
        if at in (0, 4000):
            return float(grid[at])
        return float(minimize_scalar(cost, bounds=(grid[at - 1], grid[at + 1]), method="bounded", options=dict(xatol=1e-9)).x)

    lowest = least(lambda f: abs(impedance(f)))
    steepest = least(lambda f: -abs(np.angle(impedance(f))))
    # greatest drive: each driver's travel and heat, the vent at SPEED, rms
    drivers = case[0]
    drives = []
    for f, run in zip(FREQUENCIES, runs):
        limits = [d["Xmax"] / np.sqrt(2) * 2 * np.pi * f / abs(v) for d, v in zip(drivers, run["velocity"])]
        limits += [np.sqrt(d["Pe"] / d["Re"]) / abs(i) for d, i in zip(drivers, run["currents"])]
        drives.append((min(limits), min([*limits, SPEED * AREA / abs(run["vents"][0])])))
    out["cases"][name] = {
        "flow": flat([r["flow"] for r in runs]),
        "current": flat([r["current"] for r in runs]),
        "voltage": flat([r["voltage"] for r in runs]),
        "airSpeed": flat([r["vents"][0] / AREA for r in runs]),
        "velocity": {n: flat([r["velocity"][i] for r in runs]) for i, n in enumerate(["low", "wide", "small"])},
        "currents": {n: flat([r["currents"][i] for r in runs]) for i, n in enumerate(["low", "wide", "small"])},
        "impedance": [lowest, float(abs(impedance(lowest)))],
        "angle": [steepest, float(np.angle(impedance(steepest)))],
        "drive": [float(a) for a, _ in drives],
        "driveWithVent": [float(b) for _, b in drives],
    }
# The highest resonance of a chamber, also of many drivers, and of nearly equal ones; and what leaves it, all in parallel.
rng = np.random.default_rng(20)
out["resonances"] = []
for n in [1, 2, 3, 8]:
    some = [dict(Sd=10 ** rng.uniform(-2.3, -1), Mms=10 ** rng.uniform(-2.3, -0.7), Cms=10 ** rng.uniform(-3.7, -2.8)) for _ in range(n)]
    Cab = compliance(10 ** rng.uniform(-2, -0.7))
    box = dict(netVolume=Cab * RHO * C**2, QL=5.0)
    whole = [dict(Rms=1.0, Re=6.0, Bl=10.0, **one) for one in some]
    runs = [solve(f, whole, [0] * n, [box], [[i] for i in range(n)], solver=exactly) for f in FREQUENCIES]
    out["resonances"].append(dict(
        drivers=some,
        netVolume=box["netVolume"],
        wc=chamber_resonance(some, Cab),
        flow=flat([r["flow"] for r in runs]),
    ))
Path(__file__).with_name("mixed-box.json").write_text(json.dumps(out, indent=1) + "\n")
