"""A nonlinear driver in a vented box over time, as scipy would do it: the equations of motion, by an adaptive solver.

usage: motion.py time SECONDS
"""
import json
import sys
from math import pi, sin
from time import perf_counter, process_time

import numpy as np
from scipy.integrate import solve_ivp

RE, BL, MMS, CMS, RMS, SD = 5.7, 14.3, 0.086, 0.4e-3, 3.6, 0.033
RHO, C, REACH, AREA = 1.1993, 343.99, 0.012, 0.006
WB = 2 * pi * 28
CAB = 0.06 / (RHO * C**2)
MASS = 1 / (WB**2 * CAB)
RAL, RAP = 7 / (WB * CAB), WB * MASS / 60
SOUND = 0.1


def slopes(t, state):
    v, x, p, flow = state
    u = 25 * sin(2 * pi * 30 * t) + 10 * sin(2 * pi * 100 * t)
    xi = x / REACH
    bl = BL * (1 + xi * (0.05 + xi * (-0.4 - 0.1 * xi * xi)))
    stiffness = (1 + xi * (0.1 + 0.9 * xi)) / CMS
    i = (u - bl * v) / RE
    lost = 0.5 * RHO * (1.5 if flow > 0 else 1.1) * flow * abs(flow) / AREA**2
    return (
        (bl * i - stiffness * x - RMS * v + SD * p) / MMS,
        v,
        (-SD * v - flow - p / RAL) / CAB,
        (p - RAP * flow - lost) / MASS,
    )


def call():
    times = np.arange(int(48_000 * SOUND)) / 48_000
    return solve_ivp(slopes, (0, SOUND), [0.0] * 4, method="LSODA", t_eval=times, rtol=1e-6, atol=1e-12)


def main():
    seconds = float(sys.argv[2])
    wall, cpu = [], []
    end = perf_counter() + seconds
    call()
    while perf_counter() < end or len(wall) < 5:
        before, start = process_time(), perf_counter()
        call()
        wall.append((perf_counter() - start) / SOUND)
        cpu.append((process_time() - before) / SOUND)
    print(json.dumps({"wall": wall, "cpu": cpu}))


main()
