"""Writes motion.json: a nonlinear driver in a vented box over time, by an adaptive solver on the equations of motion.

States: flux of the coil (or nothing), cone velocity and displacement (outwards), pressure of the air in the box, vent flow
(outwards), rise of coil and magnet in K. Drive: a sine that starts at 0 s. Air 1.2 kg/m³, 343 m/s. All numbers invented.
Run: python3 motion.py
"""
import json
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp

RHO, C = 1.2, 343.0
DRIVER = dict(Re=5.6, Le=0.9e-3, Bl=14.3, Mms=0.086, Cms=0.4e-3, Rms=3.6, Sd=0.033)
BOX = dict(netVolume=0.06, fb=28.0, ventArea=0.006, QL=7.0, QA=50.0, QP=60.0, sourceResistance=0.1)
REACH = 0.012
CURVES = dict(forceFactor=[0.05, -0.4, 0, -0.1], stiffness=[0.1, 0.9], inductance=[-0.35, 0.05])
LOSS = dict(outward=1.5, inward=1.1)
STOP = dict(outward=0.009, inward=0.008, stiffness=200)
HEAT = dict(coilRise=1.2, coilTime=0.2, magnetRise=0.8, magnetTime=60.0, perKelvin=0.00393)


def value_and_slope(coefficients, x):
    p = np.polynomial.Polynomial([1, *coefficients])
    xi = x / REACH
    if abs(xi) > 1:
        return p(np.sign(xi)), 0.0
    return p(xi), p.deriv()(xi) / REACH


def motion(volts, frequency, until, whole):
    d, b = DRIVER, BOX
    wb = 2 * np.pi * b["fb"]
    Cab = b["netVolume"] / (RHO * C**2)
    mass = 1 / (wb**2 * Cab)
    Ral, Rab, Rap = b["QL"] / (wb * Cab), 1 / (wb * Cab * b["QA"]), wb * mass / b["QP"]
    Rc, Cc = HEAT["coilRise"], HEAT["coilTime"] / HEAT["coilRise"]
    Rm, Cm = HEAT["magnetRise"], HEAT["magnetTime"] / HEAT["magnetRise"]

    def current(t, state):
        flux, v, x, _, _, Tc, _ = state
        if whole:
            return flux / (d["Le"] * value_and_slope(CURVES["inductance"], x)[0])
        Bl = d["Bl"] * value_and_slope(CURVES["forceFactor"], x)[0]
        return (volts * np.sin(2 * np.pi * frequency * t) - Bl * v) / (d["Re"] + b["sourceResistance"])

    def slopes(t, state):
        flux, v, x, p, U, Tc, Tm = state
        i = current(t, state)
        Bl = d["Bl"] * value_and_slope(CURVES["forceFactor"], x)[0]
        force = Bl * i
        Re = d["Re"]
        rise = 0.0
        if whole:
            force += 0.5 * i**2 * d["Le"] * value_and_slope(CURVES["inductance"], x)[1]
            Re *= 1 + HEAT["perKelvin"] * Tc
            rise = volts * np.sin(2 * np.pi * frequency * t) - (Re + b["sourceResistance"]) * i - Bl * v
            depth = max(x - STOP["outward"], 0) + min(x + STOP["inward"], 0)
            force -= STOP["stiffness"] * depth / d["Cms"]
        into = (-d["Sd"] * v - U - p / Ral) / (1 + Rab / Ral)
        box = p + Rab * into
        force += -value_and_slope(CURVES["stiffness"], x)[0] * x / d["Cms"] - d["Rms"] * v + d["Sd"] * box
        K = LOSS["outward"] if U > 0 else LOSS["inward"]
        lost = 0.5 * RHO * K * U * abs(U) / b["ventArea"] ** 2
        power = Re * i**2
        return [
            rise,
            force / d["Mms"],
            v,
            into / Cab,
            (box - Rap * U - lost) / mass,
            (power - (Tc - Tm) / Rc) / Cc if whole else 0.0,
            ((Tc - Tm) / Rc - Tm / Rm) / Cm if whole else 0.0,
        ]

    times = np.linspace(0, until, 6)[1:]
    # Radau and DOP853 must agree, or the tolerance means nothing.
    runs = [
        solve_ivp(slopes, (0, until), np.zeros(7), method=m, t_eval=times, rtol=r, atol=1e-16, max_step=1e-4)
        for m, r in (("DOP853", 1e-12), ("LSODA", 1e-11))
    ]
    sizes = np.abs(runs[0].y).max(axis=1)
    off = (np.abs(runs[0].y - runs[1].y).max(axis=1)[sizes > 0] / sizes[sizes > 0]).max()
    y = runs[0].y
    columns = dict(
        displacement=y[2].tolist(),
        coneVelocity=y[1].tolist(),
        ventAirSpeed=(y[4] / BOX["ventArea"]).tolist(),
        current=[float(current(t, s)) for t, s in zip(times, y.T)],
    )
    if whole:
        columns["coilRise"] = y[5].tolist()
    return dict(volts=volts, frequency=frequency, times=times.tolist(), solversAgreeTo=float(off), columns=columns)


cases = {
    "motor, suspension and vent": motion(20.0, 30.0, 0.1, False),
    "inductance, heat and stop too": motion(40.0, 30.0, 0.1, True),
}
for name, case in cases.items():
    print(name, "solvers agree to", case["solversAgreeTo"], "displacements", case["columns"]["displacement"])
made = dict(
    driver=DRIVER, box=BOX, reach=REACH, curves=CURVES, loss=LOSS, stop=STOP, heat=HEAT, cases=cases,
)
Path(__file__).with_suffix(".json").write_text(json.dumps(made, indent=1, ensure_ascii=False) + "\n")
