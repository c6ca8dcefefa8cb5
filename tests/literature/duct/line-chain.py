"""Writes line-chain.json: chain matrix of a uniform lossy tube by mpmath, 40 digits.

Series impedance jωρ/(S(1 − F(viscous))) and shunt admittance jωS/(ρc²)(1 + (γ − 1)F(thermal)) of a length, with
F = 2J1(x)/(xJ0(x)): Γ is the root of their product, Z that of their quotient. Run: python3 line-chain.py
"""
import json
from pathlib import Path

from mpmath import besselj, cosh, mp, mpc, mpf, pi, sinh, sqrt

mp.dps = 40
RHO, C, MU, GAMMA, PRANDTL = mpf("1.1769"), mpf("347.23"), mpf("1.846e-5"), mpf("1.4017"), mpf("0.841") ** 2


def layer(a, w, diffusivity):
    x = a * sqrt(w / diffusivity) * sqrt(mpc(0, -1))
    return 2 * besselj(1, x) / (x * besselj(0, x))


def line(a, f):
    """Γ and Z."""
    w, area = 2 * pi * f, pi * a**2
    series = mpc(0, w) * RHO / (area * (1 - layer(a, w, MU / RHO)))
    shunt = mpc(0, w) * area / (RHO * C**2) * (1 + (GAMMA - 1) * layer(a, w, MU / (RHO * PRANDTL)))
    return sqrt(series * shunt), sqrt(series / shunt)


def chain(a, length, f):
    g, z = line(a, f)
    return {"A": cosh(g * length), "B": z * sinh(g * length), "C": sinh(g * length) / z}


if __name__ == "__main__":
    rows = []
    for a, length, f in [("0.025", "0.15", 40), ("0.05", "0.2", 30), ("0.05", "0.2", 700), ("0.0125", "0.1", 80)]:
        parts = chain(mpf(a), mpf(length), mpf(f))
        values = {f"{n}.{p}": float(getattr(v, {"re": "real", "im": "imag"}[p])) for n, v in parts.items() for p in ("re", "im")}
        rows.append({"a": float(a), "L": float(length), "f": f, **values})
    # Just below the first wave across the tube: 2ka = 3.66 and 3.62, against 3.68.
    cut_on = []
    for a, f in [("0.075", 1350), ("0.005", 20000)]:
        g, z = line(mpf(a), f)
        values = {"attenuation": g.real, "velocity": 2 * pi * f / g.imag, "impedance": (z * pi * mpf(a) ** 2 / (RHO * C)).real}
        cut_on.append({"a": float(a), "f": f, **{name: float(value) for name, value in values.items()}})
    out = {"note": "line-chain.py beside this file wrote it", "rows": rows, "cutOn": cut_on}
    Path(__file__).with_name("line-chain.json").write_text(json.dumps(out, indent=1) + "\n")
