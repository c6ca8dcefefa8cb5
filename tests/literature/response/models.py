"""Writes models.json: a closed box with coil and suspension models, by mpmath from the equations of its circuit.

The response is written in s, so that the same function gives the sweep (s = jω), the half-power frequency, the derivatives by
each parameter, and, by a numerical inverse Laplace transform, the step. Air 1.2 kg/m³, 343 m/s.
Run: python3 models.py
"""
import json
from pathlib import Path

from mpmath import diff, fabs, findroot, invertlaplace, log, mp, mpc, mpf, pi, sqrt

mp.dps = 30
RHO, C, VB = mpf("1.2"), mpf(343), mpf("0.04")
D = {k: mpf(v) for k, v in dict(Re="5.6", Bl="14.3", Mms="0.086", Cms="4e-4", Rms="3.6", Sd="0.033").items()}

COILS = {
    "lossyInductor": (("K", "exponent"), (mpf("0.02"), mpf("0.7")), lambda s, K, n: K * s**n),
    "semiInductor": (
        ("Leb", "Le", "K", "Rss"),
        (mpf("1e-4"), mpf("1e-3"), mpf("0.03"), mpf(50)),
        lambda s, Leb, Le, K, Rss: s * Leb + 1 / (1 / (s * Le) + 1 / (K * sqrt(s)) + 1 / Rss),
    ),
    "fourParameterInductor": (
        ("Kr", "Xr", "Ki", "Xi"),
        (mpf("0.0022"), mpf("0.75"), mpf("0.0048"), mpf("0.76")),
        lambda s, Kr, Xr, Ki, Xi: Kr * (s / 1j) ** Xr + 1j * Ki * (s / 1j) ** Xi,
    ),
    "lr2Inductor": (
        ("Le", "R2", "L2"),
        (mpf("3e-4"), mpf(6), mpf("8e-4")),
        lambda s, Le, R2, L2: s * Le + s * L2 * R2 / (R2 + s * L2),
    ),
    "none": ((), (), lambda s: 0 * s),
}
SUSPENSIONS = {
    "logarithmicCreep": (
        ("lambda", "frequency"),
        (mpf("0.1"), mpf(27)),
        lambda s, lam, f0: 1 - lam * log(s / (2 * pi * f0)) / log(10),
    ),
    "hystereticDamping": (("lossFactor",), (mpf("0.1"),), lambda s, eta: 1 / (1 + 1j * eta)),
    "none": ((), (), lambda s: 1 + 0 * s),
}
CASES = [
    ("lossyInductor", "none"),
    ("semiInductor", "none"),
    ("fourParameterInductor", "none"),
    ("lr2Inductor", "none"),
    ("none", "logarithmicCreep"),
    ("none", "hystereticDamping"),
    ("lossyInductor", "logarithmicCreep"),
]
FREQUENCIES = [3, 15, 30, 55, 120, 900]
TIMES = [0.001, 0.003, 0.01, 0.03, 0.08]
NOT_CAUSAL = {"fourParameterInductor", "hystereticDamping"}


def box(coil, suspension, s, coil_numbers=None, suspension_numbers=None, Cms=D["Cms"]):
    """Flow out of the box and impedance for 1 V at the terminals."""
    _, own, Z = COILS[coil]
    _, its, c = SUSPENSIONS[suspension]
    Ze = D["Re"] + Z(s, *(coil_numbers or own))
    Cab = VB / (RHO * C**2)
    Zm = D["Rms"] + s * D["Mms"] + 1 / (s * Cms * c(s, *(suspension_numbers or its))) + D["Sd"] ** 2 / (s * Cab)
    impedance = Ze + D["Bl"] ** 2 / Zm
    return D["Sd"] * D["Bl"] / (Ze * Zm + D["Bl"] ** 2), impedance


jw = lambda f: mpc(0, 2 * pi * f)
pair = lambda z: [float(mpc(z).real), float(mpc(z).imag)]


def half_power(coil, suspension):
    least = RHO * D["Bl"] * D["Sd"] / (2 * pi * D["Mms"] * D["Re"]) / sqrt(2)
    off = lambda f: fabs(box(coil, suspension, jw(f))[0]) * f * RHO - least
    f = mpf(150)
    while off(f) > 0:
        f *= mpf("0.99")
    return findroot(off, (f, f * mpf("1.01")), solver="anderson")


def slopes(coil, suspension, f):
    """∂ ln U / ∂ ln θ for each parameter of the two models, and for Cms."""
    own, its = list(COILS[coil][1]), list(SUSPENSIONS[suspension][1])
    U = box(coil, suspension, jw(f))[0]
    found = {}
    for k, name in enumerate(COILS[coil][0]):
        g = lambda x: box(coil, suspension, jw(f), own[:k] + [x] + own[k + 1 :])[0]
        found["coil." + name] = pair(own[k] * diff(g, own[k]) / U)
    for k, name in enumerate(SUSPENSIONS[suspension][0]):
        g = lambda x: box(coil, suspension, jw(f), None, its[:k] + [x] + its[k + 1 :])[0]
        found["suspension." + name] = pair(its[k] * diff(g, its[k]) / U)
    g = lambda x: box(coil, suspension, jw(f), None, None, x)[0]
    found["suspension.Cms"] = pair(D["Cms"] * diff(g, D["Cms"]) / U)
    return found


def step(coil, suspension):
    """Pressure after a step of 1 V: ρ/2π dU/dt, of which the transform is ρ/2π U(s)."""
    F = lambda s: RHO / (2 * pi) * box(coil, suspension, s)[0]
    return [float(invertlaplace(F, t, method="dehoog", degree=40)) for t in TIMES]


out = []
for coil, suspension in CASES:
    columns = [box(coil, suspension, jw(f)) for f in FREQUENCIES]
    out.append(
        {
            "coil": coil,
            "coilNumbers": {k: float(v) for k, v in zip(COILS[coil][0], COILS[coil][1])},
            "suspension": suspension,
            "suspensionNumbers": {k: float(v) for k, v in zip(SUSPENSIONS[suspension][0], SUSPENSIONS[suspension][1])},
            "pressure": [float(fabs(U) * f * RHO) for (U, _), f in zip(columns, FREQUENCIES)],
            "impedance": [pair(Z) for _, Z in columns],
            "f3": float(half_power(coil, suspension)),
            "slopes": {"f": 40, **slopes(coil, suspension, 40)},
            "step": None if {coil, suspension} & NOT_CAUSAL else step(coil, suspension),
        }
    )
Path(__file__).with_suffix(".json").write_text(
    json.dumps(
        {"frequencies": FREQUENCIES, "times": TIMES, "driver": {k: float(v) for k, v in D.items()}, "netVolume": 0.04, "cases": out},
        indent=1,
    )
    + "\n"
)
