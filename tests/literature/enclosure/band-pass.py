"""The numbers of band-pass boxes with losses, from the definitions: prints what band-pass.test.ts expects."""
from math import pi, sqrt

rho, c = 1.18, 345.0
fs, Vas, Sd = 36.0, 0.048, 0.033


def vented(V, fb, QL, QA, QP, area):
    C = V / (rho * c * c)
    w = 2 * pi * fb
    M = 1 / (w * w * C)
    return [C, QL / (w * C), 1 / (w * C * QA), M, w * M / QP, 1 / area]


def closed(V, gain, QL, QA):
    C = gain * V / (rho * c * c)
    # The driver in the rear chamber: fs times the root of 1 + Vas over the volume that the chamber acts as.
    w = 2 * pi * fs * sqrt(1 + Vas / (gain * V))
    return [C, QL / (w * C), 1 / (w * C * QA)]


print("front", vented(0.017, 77, 7, 40, 60, 60e-4))
print("rear", vented(0.044, 31, 9, 30, 50, 80e-4))
print("closed", closed(0.044, 1.2, 9, 30))
