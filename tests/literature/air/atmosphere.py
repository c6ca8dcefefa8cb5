"""Prints pressure over altitude by integrating the hydrostatic equation: no closed form, no geopotential altitude.

dp/dZ = -g M p/(R T), g = g0 (r0/(r0 + Z))^2, dT/dZ = L g/g0, with the constants of the US Standard Atmosphere 1976.
Run: python3 atmosphere.py
"""
from scipy.integrate import solve_ivp

G0, M, R, R0, LAPSE = 9.80665, 28.9644e-3, 8.31432, 6356766.0, -0.0065


def slope(z, state):
    p, T = state
    g = G0 * (R0 / (R0 + z)) ** 2
    return [-g * M * p / (R * T), LAPSE * g / G0]


for z in (-5000, -2500, 5500, 11000):
    end = solve_ivp(slope, (0, z), [101325.0, 288.15], method="DOP853", rtol=1e-13, atol=1e-9).y[:, -1]
    print(z, f"{end[0]:.12g}", f"{end[1]:.12g}")
