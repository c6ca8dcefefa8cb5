"""A vented box whose vent loses with the square of its speed, by roads that share nothing with the packages:
1. one sine balanced: the circuit as complex equations, solved for the flow of the vent by scipy (fsolve);
2. the equations of motion over time (scipy LSODA), of which the fundamental of the last periods is taken.
Writes at-level.json. Run: python3 at-level.py
"""
import json
import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import fsolve

rho, c = 1.2, 343.2
Re, Bl, Mms, Cms, Rms, Sd = 5.6, 13.5, 0.085, 0.00062, 2.4, 0.033
V, fb, QL, area = 0.045, 27.0, 10.0, np.pi * 0.0375**2
Cab = V / (rho * c**2)
wb = 2 * np.pi * fb
Map = 1 / (wb**2 * Cab)
Ral = QL / (wb * Cab)


def balanced(f, volts, K):
    """Of the one sine that balances: peak speed, radiated flow and current, rms, compression, peak travel, resistance."""
    w = 2 * np.pi * f
    Zm = 1j * w * Mms + Rms + 1 / (1j * w * Cms) + Bl**2 / Re
    Yleak = 1j * w * Cab + 1 / Ral

    def solve(R):
        Zv = 1j * w * Map + R
        # cone pushes the flow Sd v out in front and draws it from the box: pressure in the box
        Zb = 1 / (Yleak + 1 / Zv)
        v = (Bl * volts / Re) / (Zm + Sd**2 * Zb)
        p = -Sd * v * Zb
        U = p / Zv
        out = Sd * v + p / Zv + p / Ral
        return v, U, out, (volts - Bl * v) / Re

    def off(u):
        R = 4 / (3 * np.pi) * rho * K * abs(u[0]) / area
        return np.sqrt(2) * abs(solve(R)[1]) / area - u[0]

    u = fsolve(off, 0.5 * np.sqrt(2) * abs(solve(0)[1]) / area, xtol=1e-13)[0]
    v, U, out, i = solve(4 / (3 * np.pi) * rho * K * u / area)
    _, _, free, _ = solve(0)
    resistance = 4 / (3 * np.pi) * rho * K * u / area
    return u, abs(out), abs(i), 20 * np.log10(abs(free) / abs(out)), np.sqrt(2) * abs(v) / w, resistance


def over_time(f, volts, K, periods=120):
    w = 2 * np.pi * f

    def slope(t, y):
        x, v, p, U = y
        e = np.sqrt(2) * volts * np.sin(w * t)
        return [
            v,
            (Bl * (e - Bl * v) / Re - Rms * v - x / Cms + Sd * p) / Mms,
            (-Sd * v - U - p / Ral) / Cab,
            (p - 0.5 * rho * K * (U / area) * abs(U / area)) / Map,
        ]

    T = 1 / f
    t = np.linspace((periods - 8) * T, periods * T, 8 * 512 + 1)[:-1]
    y = solve_ivp(slope, [0, periods * T], [0, 0, 0, 0], method="LSODA", t_eval=t, rtol=1e-10, atol=1e-12, max_step=T / 50).y
    u = y[3] / area
    bin_of = lambda s, n: 2 * np.abs(np.mean(s * np.exp(-1j * n * w * t)))
    out = Sd * y[1] + y[3] + y[2] / Ral
    return bin_of(u, 1), bin_of(out, 1) / np.sqrt(2), bin_of(out, 3) / np.sqrt(2)


cases = [(f, volts, K) for f in (20.0, 27.0, 40.0) for volts, K in ((2.0, 1.5), (20.0, 1.5), (40.0, 5.6))]
rows = [balanced(*case) for case in cases]
times = [over_time(*case) for case in cases]
json.dump(
    {
        "f": [a for a, _, _ in cases],
        "volts": [b for _, b, _ in cases],
        "K": [k for _, _, k in cases],
        "speed": [float(r[0]) for r in rows],
        "flow": [float(r[1]) for r in rows],
        "current": [float(r[2]) for r in rows],
        "compression": [float(r[3]) for r in rows],
        "travel": [float(r[4]) for r in rows],
        "resistance": [float(r[5]) for r in rows],
        "overTime": {
            "speed": [float(r[0]) for r in times],
            "flow": [float(r[1]) for r in times],
            "third": [float(r[2]) for r in times],
        },
    },
    open("at-level.json", "w"),
    indent=1,
)
for case, a, b in zip(cases, rows, times):
    print(case, "u %.4f %.4f  out %.6g %.6g  compression %.3f  third %.2f dB" % (a[0], b[0], a[1], b[1], a[3], 20 * np.log10(b[2] / b[1])))
