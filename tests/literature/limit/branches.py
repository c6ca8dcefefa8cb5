"""A driver in a closed box whose force factor and stiffness bend, by roads that share nothing with the packages:
1. one sine balanced: forces over a period are projected on the sine by quadrature, and the balance is solved by scipy (fsolve) from
   many starts, so that every state is found;
2. the equations of motion over time (scipy LSODA), started near each state: where it stays, and the fundamental of its last periods;
3. the amplitude equation of a mass on a spring that stiffens with the cube (Duffing), by numpy's roots of its polynomial.
4. a vented box whose vent loses by the square of the speed of its air, by the roads of 1 and 2: the loss is projected by quadrature too.
Writes branches.json. Run: python3 branches.py
"""
import json
import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import fsolve

rho, c = 1.2, 343.2
Re, Le, Bl0, Mms, Cms, Rms, Sd, V = 5.6, 0.4e-3, 2.5, 0.04, 0.0005, 0.4, 0.033, 0.12
K0, Kb = 1 / Cms, rho * c**2 * Sd**2 / V
upTo = 0.012
bl = [1, 0.0, -2200.0, 0.0, 2.0e6]
k = [1, 0.0, 14000.0, 0.0, 1.0e8]


def curve(cs, x):
    return sum(a * x**n for n, a in enumerate(cs))


theta = 2 * np.pi * np.arange(64) / 64
fundamental = lambda y: 2 * np.mean(y * np.exp(-1j * theta))


def off(y, w, peak):
    """x = X cos(theta); current a cos - b sin; drive of this peak at any phase."""
    X, a, b = y
    x, v, i = X * np.cos(theta), -w * X * np.sin(theta), a * np.cos(theta) - b * np.sin(theta)
    bend, stiff = Bl0 * curve(bl, x), K0 * curve(k, x)
    motion = fundamental(bend * i - stiff * x) - ((Kb - w * w * Mms) * X + 1j * w * Rms * X)
    drive = (Re + 1j * w * Le) * (a + 1j * b) + fundamental(bend * v)
    return [motion.real, motion.imag, abs(drive) / peak - 1]


def states(f, volts):
    w, peak, found = 2 * np.pi * f, np.sqrt(2) * volts, []
    for start in np.linspace(0.0002, upTo, 120):
        y, _, ok, _ = fsolve(off, [start, 0, peak / Re / 3], (w, peak), full_output=True, xtol=1e-14)
        if ok != 1 or not 0 < y[0] < upTo or max(map(abs, off(y, w, peak))) > 1e-9:
            continue
        if not any(abs(y[0] - other[0]) < 1e-7 for other in found):
            found.append(list(y))
    return sorted(found)


def over_time(f, volts, y0, periods=200):
    w = 2 * np.pi * f
    X, a, b = y0
    # The phase of the drive that holds this state.
    drive = (Re + 1j * w * Le) * (a + 1j * b) + fundamental(Bl0 * curve(bl, X * np.cos(theta)) * (-w * X * np.sin(theta)))

    def slope(t, s):
        x, v, i = s
        bend = Bl0 * curve(bl, x)
        e = abs(drive) * np.cos(w * t + np.angle(drive))
        return [v, (bend * i - Rms * v - K0 * curve(k, x) * x - Kb * x) / Mms, (e - Re * i - bend * v) / Le]

    T = 1 / f
    t = np.linspace((periods - 8) * T, periods * T, 8 * 64, endpoint=False)
    run = solve_ivp(slope, (0, periods * T), [1.02 * X, 0, a], "LSODA", t, rtol=1e-9, atol=1e-12)
    return 2 * abs(np.mean(run.y[0] * np.exp(-1j * w * t)))


cases = []
for f, volts in [(30, 8), (50, 10), (54, 10), (56, 8), (57, 12), (60, 10), (90, 10)]:
    for X, a, b in states(f, volts):
        flow = 2 * np.pi * f * X * Sd / np.sqrt(2)
        stays = over_time(f, volts, (X, a, b))
        cases.append({"f": f, "volts": volts, "travel": X, "current": np.hypot(a, b) / np.sqrt(2),
                      "level": 20 * np.log10(rho * f * flow / 20e-6), "overTime": stays,
                      "stays": bool(abs(stays / X - 1) < 0.05)})

duffing = []
for ratio in (1.2, 1.6, 2.0, 2.4, 3.0):
    alpha, zeta = 1.5, 0.02
    roots = np.roots([9 / 16 * alpha**2, 1.5 * alpha * (1 - ratio**2), (1 - ratio**2) ** 2 + (2 * zeta * ratio) ** 2, -1])
    for s in sorted(r.real for r in roots if abs(r.imag) < 1e-9 and r.real > 0):
        duffing.append({"ratio": ratio, "travel": float(np.sqrt(s))})

vent = {"fb": 32.0, "area": 0.003, "coefficient": 1.5}
Ca = V / (rho * c**2)
Ma = 1 / ((2 * np.pi * vent["fb"]) ** 2 * Ca)


# The loss has a corner in its second derivative where the flow turns: many points.
turn = 2 * np.pi * (np.arange(2**14) + 0.5) / 2**14


def loss_of(flow):
    u = flow / vent["area"]
    return 0.5 * rho * vent["coefficient"] * np.abs(u) * u


def vented_off(y, w, peak):
    """As `off`, with a flow p cos - q sin out of the vent; the pressure in the box is that of both flows."""
    X, a, b, p, q = y
    x, v, i = X * np.cos(theta), -w * X * np.sin(theta), a * np.cos(theta) - b * np.sin(theta)
    flow = (p * np.cos(turn) - q * np.sin(turn)) * 1e-3
    bend, stiff = Bl0 * curve(bl, x), K0 * curve(k, x)
    pressure = -(Sd * 1j * w * X + (p + 1j * q) * 1e-3) / (1j * w * Ca)
    motion = fundamental(bend * i - stiff * x) + Sd * pressure - (-w * w * Mms + 1j * w * Rms) * X
    air = pressure - 1j * w * Ma * (p + 1j * q) * 1e-3 - 2 * np.mean(loss_of(flow) * np.exp(-1j * turn))
    drive = (Re + 1j * w * Le) * (a + 1j * b) + fundamental(bend * v)
    return [motion.real, motion.imag, air.real, air.imag, abs(drive) / peak - 1]


def vented_states(f, volts):
    w, peak, found = 2 * np.pi * f, np.sqrt(2) * volts, []
    for start in np.linspace(0.0002, upTo, 60):
        for q in (-1, 1):
            y, _, ok, _ = fsolve(vented_off, [start, 0, peak / Re / 3, 0, q * w * start * Sd * 1e3], (w, peak), full_output=True, xtol=1e-14)
            if ok != 1 or not 0 < y[0] < upTo or max(map(abs, vented_off(y, w, peak))) > 1e-9:
                continue
            if not any(abs(y[0] - other[0]) < 1e-7 for other in found):
                found.append(list(y))
    return sorted(found)


def vented_over_time(f, volts, y0, periods=200):
    w = 2 * np.pi * f
    X, a, b, p, q = y0
    drive = (Re + 1j * w * Le) * (a + 1j * b) + fundamental(Bl0 * curve(bl, X * np.cos(theta)) * (-w * X * np.sin(theta)))
    pressure = -(Sd * 1j * w * X + (p + 1j * q) * 1e-3) / (1j * w * Ca)

    def slope(t, s):
        x, v, i, P, U = s
        bend = Bl0 * curve(bl, x)
        e = abs(drive) * np.cos(w * t + np.angle(drive))
        return [v, (bend * i - Rms * v - K0 * curve(k, x) * x + Sd * P) / Mms, (e - Re * i - bend * v) / Le,
                -(Sd * v + U) / Ca, (P - loss_of(U)) / Ma]

    T = 1 / f
    t = np.linspace((periods - 8) * T, periods * T, 8 * 64, endpoint=False)
    run = solve_ivp(slope, (0, periods * T), [1.02 * X, 0, a, pressure.real, p * 1e-3], "LSODA", t, rtol=1e-9, atol=1e-12)
    return 2 * abs(np.mean(run.y[0] * np.exp(-1j * w * t)))


vented = []
for f, volts in [(28, 12), (34, 12), (56, 12), (63, 12), (80, 10)]:
    for y in vented_states(f, volts):
        X, a, b, p, q = y
        w = 2 * np.pi * f
        flow = abs(1j * w * X * Sd + (p + 1j * q) * 1e-3) / np.sqrt(2)
        stays = vented_over_time(f, volts, y)
        vented.append({"f": f, "volts": volts, "travel": X, "current": np.hypot(a, b) / np.sqrt(2),
                       "level": 20 * np.log10(rho * f * flow / 20e-6), "speed": np.hypot(p, q) * 1e-3 / vent["area"],
                       "overTime": stays, "stays": bool(abs(stays / X - 1) < 0.05)})

out = {"driver": {"Re": Re, "Le": Le, "Bl": Bl0, "Mms": Mms, "Cms": Cms, "Rms": Rms, "Sd": Sd, "V": V},
       "upTo": upTo, "bl": bl, "k": k, "cases": cases,
       "vent": vent, "vented": vented,
       "duffing": {"alpha": alpha, "zeta": zeta, "cases": duffing}}
with open("branches.json", "w") as file:
    json.dump(out, file, indent=1, default=float)
    file.write("\n")
for one in cases:
    print(one)
for one in vented:
    print(one)
for one in duffing:
    print(one)
