"""A vent that loses with the square of its speed and has hardly any mass, in a box so large that its flow hardly changes the pressure: the
case in which one sine stands for its flow worst. The equations of motion over time (scipy LSODA), and the fundamental of the last
periods. Its limit is the integral of the square root of a sine over that of a sine's square: 1.112836 instead of 1.085402.
Writes quadratic-vent.json. Run: python3 quadratic-vent.py
"""
import json
import numpy as np
from scipy.integrate import quad, solve_ivp

rho, c = 1.2, 343.2
Re, Bl, Mms, Cms, Rms, Sd = 5.6, 13.5, 0.085, 0.00062, 2.4, 0.033
V, fb, area, f, volts = 1.0, 400.0, np.pi * 0.0375**2, 40.0, 20.0
C = V / (rho * c**2)
M = 1 / ((2 * np.pi * fb) ** 2 * C)
w = 2 * np.pi * f


def speed(K, periods=60):
    def slope(t, y):
        x, v, p, U = y
        e = np.sqrt(2) * volts * np.sin(w * t)
        return [v, (Bl * (e - Bl * v) / Re - Rms * v - x / Cms + Sd * p) / Mms, (-Sd * v - U) / C, (p - 0.5 * rho * K * (U / area) * abs(U / area)) / M]

    t = np.linspace((periods - 4) / f, periods / f, 4 * 2048 + 1)[:-1]
    y = solve_ivp(slope, [0, periods / f], [0, 0, 0, 0], method="LSODA", t_eval=t, rtol=1e-10, atol=1e-13, max_step=1 / f / 200).y
    return 2 * abs(np.mean(y[3] / area * np.exp(-1j * w * t)))


Ks = [0.3, 0.7, 3.0, 30.0, 1e3, 1e5]
limit = 4 / np.pi * quad(lambda t: np.sqrt(np.sin(t)) * np.sin(t), 0, np.pi / 2)[0]
described = np.sqrt(3 * np.pi / 8)
json.dump({"f": f, "volts": volts, "K": Ks, "speed": [float(speed(K)) for K in Ks], "ratio": float(described / limit)}, open("quadratic-vent.json", "w"), indent=1)
print(open("quadratic-vent.json").read())
