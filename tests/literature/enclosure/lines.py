"""Writes lines.json: drivers in lines that taper, lose and are filled, by scipy, without steps and without chain matrices.

Pressure p and flow U along a line obey dp/dx = -z U, dU/dx = -y p, with z = jωρ/(S (1 - Fv)) and y = jωS/(ρc²) (1 + (γ - 1) Ft).
F is 2J1(x)/(x J0(x)), x = a s √-j, for a round wall; its layer is `loss` times as thick. A fill adds σ/jωρ to 1/(1 - Fv), and
σ/jωρPr to 1/(1 - Ft) (rigid fibres, low frequencies; zwikker1949). The equations are integrated from both ends of the line to
the driver, from a wall or from the mass of air in the opening. The driver is V = Re i + Bl v, Bl i = Zm v + Sd (p_front - p_rear).

Run: python3 lines.py
"""

import json
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import jve

RHO, C, MU, GAMMA, PR = 1.1769, 347.23, 1.846e-5, 1.4017, 0.841**2
SD, MMS, CMS, RMS, RE, BL = 0.033, 0.086, 4e-4, 3.6, 5.6, 14.3


def share(a, s):
    x = a * s * np.sqrt(-1j)
    return 2 * jve(1, x) / (x * jve(0, x))


def immittances(S, w, loss, sigma):
    """z and y of a place."""
    a = np.sqrt(S / np.pi)
    sv = np.sqrt(RHO * w / MU)
    st = sv * np.sqrt(PR)
    Fv, Ft = (share(a, sv / loss), share(a, st / loss)) if loss else (0, 0)
    still = 1 / (1 - Fv) + sigma / (1j * w * RHO)
    warm = 1 / (1 - Ft) + sigma / (1j * w * RHO * PR)
    return 1j * w * RHO / S * still, 1j * w * S / (RHO * C * C) * (1 + (GAMMA - 1) * (1 - 1 / warm))


def area(part, x):
    S, L = part["area"], part["length"]
    if "conicalTo" in part:
        return (np.sqrt(S) + (np.sqrt(part["conicalTo"]) - np.sqrt(S)) * x / L) ** 2
    if "exponentialTo" in part:
        return S * (part["exponentialTo"] / S) ** (x / L)
    if "wedgeTo" in part:
        return S + (part["wedgeTo"] - S) * x / L
    return S


def walk(parts, state, start, stop, w):
    """Integrates pressure and flow (counted away from the start of the line) from one place to another."""
    begin = 0.0
    pieces = []
    for part in parts:
        end = begin + part["length"]
        low, high = max(min(start, stop), begin), min(max(start, stop), end)
        if high - low > 1e-12:
            pieces.append((part, begin, low, high))
        begin = end
    for part, begin, low, high in pieces if stop > start else reversed(pieces):

        def slopes(x, at, part=part, begin=begin):
            z, y = immittances(area(part, x - begin), w, part.get("wallLoss", 1), part.get("flowResistivity", 0))
            return np.array([-z * at[1], -y * at[0]])

        span = (low, high) if stop > start else (high, low)
        state = solve_ivp(slopes, span, state, method="DOP853", rtol=1e-12, atol=1e-18).y[:, -1]
    return state


def box(case, f):
    """Cone velocity and flow of the opening, per volt."""
    w = 2 * np.pi * f
    parts, at = case["parts"], case["driverAt"]
    total = sum(part["length"] for part in parts)
    opening = case.get("opening")
    mass = None if opening is None else 1j * w * RHO * opening["endCorrection"] / opening["area"]
    place = None if opening is None else opening["at"]
    # A wall at the start: pressure 1, no flow. What enters the line from the driver towards the start, per pressure there.
    p, u = walk(parts, np.array([1, 0], complex), 0, at, w)
    towards_start = -u / p
    # The far side, from its end back to the driver.
    state = np.array([1, 0], complex)
    mouth = None
    if place is not None and abs(place - total) < 1e-9:
        state = np.array([mass, 1], complex)
        mouth = 1
    else:
        if place is not None:
            state = walk(parts, state, total, place, w)
            out = state[0] / mass
            state = np.array([state[0], state[1] + out])
            mouth = out
        p, u = walk(parts, state, total if place is None else place, at, w)
    if mouth is not None and abs(place - total) < 1e-9:
        p, u = walk(parts, state, total, at, w)
    towards_end = u / p
    rear = 1 / (towards_start + towards_end)
    Zm = RMS + 1j * w * MMS + 1 / (1j * w * CMS) + SD**2 * rear
    velocity = BL / RE / (Zm + BL**2 / RE)
    # The cone draws Sd v from the line: the pressure at its rear is -rear Sd v.
    out = 0 if mouth is None else -rear * SD * velocity / p * mouth
    return velocity, out


cases = {
    "conical pipe": {
        "parts": [{"length": 2.2, "area": 0.02, "conicalTo": 0.045}],
        "driverAt": 0,
        "opening": {"at": 2.2, "area": 0.045, "endCorrection": 0.098},
    },
    "exponential pipe, driver along it": {
        "parts": [{"length": 2.5, "area": 0.04, "exponentialTo": 0.015}],
        "driverAt": 0.8,
        "opening": {"at": 2.5, "area": 0.015, "endCorrection": 0.057},
    },
    "wedge, filled": {
        "parts": [{"length": 2.4, "area": 0.05, "wedgeTo": 0.02, "flowResistivity": 1500}],
        "driverAt": 0.5,
        "opening": {"at": 2.4, "area": 0.02, "endCorrection": 0.066},
    },
    "steps, one filled, walls of boards": {
        "parts": [
            {"length": 0.9, "area": 0.045, "flowResistivity": 3000},
            {"length": 1.3, "area": 0.025, "wallLoss": 1.25},
        ],
        "driverAt": 0.3,
        "opening": {"at": 2.2, "area": 0.025, "endCorrection": 0.073},
    },
    "opening in the side": {
        "parts": [{"length": 1.7, "area": 0.03}],
        "driverAt": 0.2,
        "opening": {"at": 1.25, "area": 0.009, "endCorrection": 0.11},
    },
    "closed and filled": {
        "parts": [{"length": 1.5, "area": 0.03, "conicalTo": 0.004, "flowResistivity": 6000}],
        "driverAt": 0,
    },
}

def vented(case, f):
    """Cone velocity and flow of the vents, per volt. Tubes side by side are worked out one by one."""
    w = 2 * np.pi * f
    vent, V = case["vent"], case["netVolume"]
    S = np.pi * vent["diameter"] ** 2 / 4
    n = vent["count"]
    part = {"length": vent["length"], "area": S, "wallLoss": vent["wallLoss"]}
    outer, inner = (1j * w * RHO * vent[end] / S for end in ("outerCorrection", "innerCorrection"))
    # All vents are one source to the air outside: each meets the pressure of n times its own flow (rayleigh1896 sec. 302).
    outer += n * RHO * w * w / (vent["solidAngle"] * C) if "solidAngle" in vent else 0
    p, u = walk([part], np.array([outer, 1], complex), vent["length"], 0, w)
    tube = n / (p / u + inner)
    Cab = V / (RHO * C * C)
    wb = np.sqrt(n * S * C * C / (V * (vent["length"] + vent["innerCorrection"] + vent["outerCorrection"])))
    leak = wb * Cab / case["QL"]
    air = 1 / (1 / (1j * w * Cab) + 1 / (wb * Cab * case["QA"]))
    rear = 1 / (tube + leak + air)
    Zm = RMS + 1j * w * MMS + 1 / (1j * w * CMS) + SD**2 * rear
    velocity = BL / RE / (Zm + BL**2 / RE)
    return velocity, -rear * SD * velocity * tube / u


vents = {
    "one vent": {
        "netVolume": 0.05,
        "vent": {"diameter": 0.075, "length": 0.35, "count": 1, "wallLoss": 1, "innerCorrection": 0.023, "outerCorrection": 0.031},
        "QL": 8,
        "QA": 40,
    },
    "three long vents with rough walls": {
        "netVolume": 0.04,
        "vent": {"diameter": 0.04, "length": 0.9, "count": 3, "wallLoss": 1.4, "innerCorrection": 0.012, "outerCorrection": 0.016},
        "QL": 15,
        "QA": 100,
    },
    "two vents that radiate": {
        "netVolume": 0.04,
        "vent": {"diameter": 0.07, "length": 0.7, "count": 2, "wallLoss": 1, "innerCorrection": 0.021, "outerCorrection": 0.029, "solidAngle": 2 * np.pi},
        "QL": 15,
        "QA": 100,
    },
}

if __name__ == "__main__":
    frequencies = [12, 22, 31, 38, 47, 63, 90, 126, 180, 260]
    rows = {}
    for name, case in cases.items():
        values = [box(case, f) for f in frequencies]
        rows[name] = {
            **case,
            "coneVelocity": [part for v, _ in values for part in (v.real, v.imag)],
            "opening flow": [part for _, u in values for part in (complex(u).real, complex(u).imag)],
        }
    others = {}
    high = [14, 22, 28, 35, 48, 90, 170, 230, 420, 460]
    for name, case in vents.items():
        values = [vented(case, f) for f in high]
        others[name] = {
            **case,
            "coneVelocity": [part for v, _ in values for part in (v.real, v.imag)],
            "vent flow": [part for _, u in values for part in (u.real, u.imag)],
        }
    # The tuning of a box of 45 L with a tube of 75 mm and 25 cm: tan kL = S/(kV).
    S = np.pi * 0.075**2 / 4
    tuned = brentq(lambda k: np.tan(0.25 * k) - S / (0.045 * k), 0.01, 5, xtol=1e-15, rtol=1e-15)
    # The length of a lossless tube, with masses at its ends, for which the air of a box and the tube resonate: by integration.
    lengths = []
    for d, n, V, fb, inner, outer in [(0.1, 1, 0.03, 32, 0.031, 0.041), (0.05, 2, 0.05, 40, 0.015, 0.02), (0.125, 1, 0.02, 28, 0.038, 0.051)]:
        S, w = np.pi * d * d / 4, 2 * np.pi * fb

        def reactance(L):
            p, u = walk([{"length": L, "area": S, "wallLoss": 0}], np.array([1j * w * RHO * outer / S, 1], complex), L, 0, w)
            return ((p / u + 1j * w * RHO * inner / S) / n + RHO * C * C / (1j * w * V)).imag

        length = brentq(reactance, 0.001, 0.95 * C / (4 * fb), xtol=1e-13, rtol=1e-13)
        lengths.append({"diameter": d, "count": n, "netVolume": V, "fb": fb, "inner": inner, "outer": outer, "length": length})
    # Vents of 0.25 m as tubes, each its diameter, length, number, wall loss, ends, and the length of its flares: two of 80 mm with
    # flares of 15 mm and 10 mm, and a slot of 300 mm by 20 mm, with the circle of its area and how much more wall it has.
    circle = np.sqrt(4 * 0.3 * 0.02 / np.pi)
    tubes = [
        [0.08, 0.25 - 0.015 - 0.01, 2, 1, 0.03 + 0.015, 0.04 + 0.01, 0.015 + 0.01],
        [circle, 0.25, 1, 2 * (0.3 + 0.02) / (np.pi * circle), 0.03, 0.04, 0],
    ]
    fills = []
    for a, loss, sigma, f in [(0.05, 0, 500, 20), (0.05, 0, 2000, 40), (0.08, 0, 5000, 150), (0.03, 1, 2000, 60), (0.1, 1.3, 0, 40), (0.004, 2, 0, 30), (0.07, 1, 20000, 500)]:
        z, y = immittances(np.pi * a * a, 2 * np.pi * f, loss, sigma)
        g, Z = np.sqrt(z * y), np.sqrt(z / y)
        fills.append({"a": a, "loss": loss, "sigma": sigma, "f": f, "attenuation": g.real, "phaseVelocity": 2 * np.pi * f / g.imag, "re": Z.real, "im": Z.imag})
    out = {"note": "lines.py beside this file wrote it", "frequencies": frequencies, "cases": rows, "vented": {"frequencies": high, "cases": others, "tuning": tuned * C / (2 * np.pi), "lengths": lengths, "tubes": tubes}, "constants": fills}
    Path(__file__).with_name("lines.json").write_text(json.dumps(out, indent=1, ensure_ascii=False) + "\n")
