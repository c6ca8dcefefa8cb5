"""A vented box whose coil warms up and whose vent loses, by roads that share nothing with the packages:
1. two thermal stages over time (scipy solve_ivp, Radau);
2. one sine in balance with coil temperature and vent speed (scipy fsolve), and the drives at which limits are reached (brentq);
3. a spectrum with one temperature of the coil (brentq on the temperature);
4. heat of a class-B stage as the mean of (rail - voltage) times current over a period (quad);
5. curves over the travel (brentq).
Writes heat.json. Run: python3 heat.py
"""
import json
import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq, fsolve

rho, c = 1.2, 343.2
Re, Le, Bl, Mms, Cms, Rms, Sd = 5.6, 0.8e-3, 13.5, 0.085, 0.00062, 2.4, 0.033
V, fb, QL, area = 0.045, 27.0, 10.0, np.pi * 0.0375**2
Cab = V / (rho * c**2)
wb = 2 * np.pi * fb
Map, Ral = 1 / (wb**2 * Cab), QL / (wb * Cab)
Rv, Rm, tv, tm, alpha = 3.5, 1.5, 6.0, 1200.0, 0.00393


def warmed(P, t):
    Cv, Cm = tv / Rv, tm / Rm

    def slope(_, y):
        flow = (y[0] - y[1]) / Rv
        return [(P - flow) / Cv, (flow - y[1] / Rm) / Cm]

    y = solve_ivp(slope, (0, t), [0, 0], method="Radau", rtol=1e-11, atol=1e-12).y[:, -1]
    return y[0], y[1]


def circuit(f, e, R, loss):
    """rms: cone speed, vent flow, radiated flow, current; `loss` is acoustic, in the vent."""
    w = 2 * np.pi * f
    Zc = R + 1j * w * Le
    Zm = 1j * w * Mms + Rms + 1 / (1j * w * Cms) + Bl**2 / Zc
    Zv = 1j * w * Map + loss
    Zb = 1 / (1j * w * Cab + 1 / Ral + 1 / Zv)
    v = (Bl * e / Zc) / (Zm + Sd**2 * Zb)
    p = -Sd * v * Zb
    return v, p / Zv, Sd * v + p / Zv + p / Ral, (e - Bl * v) / Zc


def level(f, flow):
    return 20 * np.log10(rho * f * abs(flow) / 20e-6)


def in_balance(f, e, K, n=1):
    """Rise of the coil and peak speed in the vent that agree with a drive. n drivers like this one do it n times over."""

    def off(y):
        _, U, _, i = circuit(f, e, Re * (1 + alpha * y[0] * 100), 4 / (3 * np.pi) * rho * K * y[1] / area)
        return [(Rv + Rm) * abs(i) ** 2 * Re * (1 + alpha * y[0] * 100) / 100 - y[0], np.sqrt(2) * abs(U) / area - y[1]]

    v, U, _, i = circuit(f, e, Re, 0)
    start = [min((Rv + Rm) * abs(i) ** 2 * Re / 200, 2), np.sqrt(2) * abs(U) / area / 2]
    y, _, ok, why = fsolve(off, start, xtol=1e-13, full_output=True)
    assert np.max(np.abs(off(y))) < 1e-10, (f, e, K, why)
    rise = y[0] * 100
    return rise, y[1], circuit(f, e, Re * (1 + alpha * rise), 4 / (3 * np.pi) * rho * K * y[1] / area)


out = {}
P, t = [30, 30, 30, 30, 80], [0.5, 6, 60, 900, 7200]
rows = [warmed(a, b) for a, b in zip(P, t)]
out["warming"] = dict(power=P, time=t, coil=[r[0] for r in rows], magnet=[r[1] for r in rows])

f, e, K = [20, 27, 35, 50, 80, 150, 27, 35], [20, 20, 20, 20, 20, 20, 40, 40], [0, 0, 0, 0, 0, 0, 1.5, 1.5]
rows = [in_balance(*row) for row in zip(f, e, K)]
free = [circuit(a, b, Re, 0) for a, b in zip(f, e)]
out["hot"] = dict(
    f=f, volts=e, K=K,
    rise=[r[0] for r in rows],
    current=[abs(r[2][3]) for r in rows],
    level=[level(a, r[2][2]) for a, r in zip(f, rows)],
    compression=[20 * np.log10(abs(x[2]) / abs(r[2][2])) for x, r in zip(free, rows)],
    travel=[np.sqrt(2) * abs(r[2][0]) / (2 * np.pi * a) for a, r in zip(f, rows)],
)

# Drives at which limits are reached, with a hot coil and a lossy vent.
K = 1.5


def compression(f, e):
    """Of the vent alone, with a cold coil, at the speed that the vent has at this drive."""
    u = in_balance(f, e, K)[1]
    lossy = circuit(f, 1, Re, 4 / (3 * np.pi) * rho * K * u / area)[2]
    return 20 * np.log10(abs(circuit(f, 1, Re, 0)[2]) / abs(lossy))


def stage(f, e, Vs):
    i = in_balance(f, e, K)[2][3]
    return quad(
        lambda x: (Vs * np.sign(np.sin(x)) - np.sqrt(2) * e * np.sin(x - np.angle(i))) * np.sqrt(2) * abs(i) * np.sin(x),
        0, 2 * np.pi, points=[np.pi], epsabs=1e-11, epsrel=1e-12,
    )[0] / (2 * np.pi)


wanted = [
    ("travel", 22, lambda f, e: np.sqrt(2) * abs(in_balance(f, e, K)[2][0]) / (2 * np.pi * f) - 0.006),
    ("coil temperature", 80, lambda f, e: in_balance(f, e, K)[0] - 80),
    ("vent compression", 27, lambda f, e: compression(f, e) - 1.5),
    ("amplifier heat", 120, lambda f, e: stage(f, e, 60) - 60),
]
out["reached"] = []
for name, f, off in wanted:
    drive = brentq(lambda e: off(f, e), 0.5, 15 if name == "amplifier heat" else 42, xtol=1e-13, rtol=1e-14)
    out["reached"].append(dict(name=name, f=f, volts=drive, level=level(f, in_balance(f, drive, K)[2][2])))

# A spectrum.
spectrum = dict(frequencies=[25, 40, 63, 100, 160], share=[0.1, 0.3, 0.3, 0.2, 0.1], crest=3.5)


def programme(E, hot=True):
    def heat(rise):
        R = Re * (1 + alpha * rise)
        return sum(s * abs(circuit(f, E, R, 0)[3]) ** 2 * R for f, s in zip(spectrum["frequencies"], spectrum["share"]))

    rise = brentq(lambda x: (Rv + Rm) * heat(x) - x, 0, 1e5, xtol=1e-12, rtol=1e-14) if hot else 0
    R = Re * (1 + alpha * rise)
    lines = [circuit(f, E, R, 0) for f in spectrum["frequencies"]]
    mean = lambda values: np.sqrt(sum(s * abs(x) ** 2 for s, x in zip(spectrum["share"], values)))
    return rise, heat(rise), lines, mean


rise, power, lines, mean = programme(25)
out["programme"] = dict(
    **spectrum, volts=25, rise=rise, power=power,
    level=20 * np.log10(mean([rho * f * x[2] / 20e-6 for f, x in zip(spectrum["frequencies"], lines)])),
    compression=[
        20 * np.log10(abs(circuit(f, 25, Re, 0)[2]) / abs(x[2])) for f, x in zip(spectrum["frequencies"], lines)
    ],
)


def peak_travel(E, hot):
    _, _, lines, mean = programme(E, hot)
    return spectrum["crest"] * mean([x[0] / (2 * np.pi * f) for f, x in zip(spectrum["frequencies"], lines)])


out["greatestProgramme"] = dict(
    travel=[brentq(lambda E: peak_travel(E, hot) - 0.006, 0.1, 100, xtol=1e-13, rtol=1e-14) for hot in (False, True)],
    temperature=brentq(lambda E: programme(E)[0] - 90, 0.1, 100, xtol=1e-13, rtol=1e-14),
)

# Class B: V, A, phase.
load = [(40, 20, 3, 0), (40, 28, 4, 1.2), (40, 10, 2, -0.7), (60, 5, 6, 1.5707963267948966)]
stage_heat = [
    quad(
        lambda x: (Vs * np.sign(np.sin(x)) - np.sqrt(2) * u * np.sin(x + phase)) * np.sqrt(2) * i * np.sin(x),
        0, 2 * np.pi, points=[np.pi], epsabs=1e-11, epsrel=1e-12,
    )[0] / (2 * np.pi)
    for Vs, u, i, phase in load
]
out["classB"] = dict(supply=[a[0] for a in load], volts=[a[1] for a in load], current=[a[2] for a in load],
                     phase=[a[3] for a in load], heat=stage_heat)
i = circuit(60, 20, Re, 0)[3]
Vs = 40
out["amplifier"] = dict(f=60, volts=20, supply=Vs, delivered=20 * i.real, heat=quad(
    lambda x: (Vs * np.sign(np.sin(x)) - np.sqrt(2) * 20 * np.sin(x - np.angle(i))) * np.sqrt(2) * abs(i) * np.sin(x),
    0, 2 * np.pi, points=[np.pi], epsabs=1e-11, epsrel=1e-12)[0] / (2 * np.pi))

# Curves over the travel, in metres: lopsided ones, of which one side falls first.
bl = [13.5, 60.0, -4.2e4, 0, -1e7]
k = [1600.0, -9e3, 6e6, 0, 2e10]
value = lambda list, x: sum(b * x**j for j, b in enumerate(list))
out["curves"] = dict(
    bl=bl, stiffness=k,
    blTravel=min(brentq(lambda x: value(bl, side * x) - 0.82 * bl[0], 0, 0.012, xtol=1e-16, rtol=1e-14) for side in (1, -1)),
    stiffnessTravel=min(
        brentq(lambda x: value(k, side * x) - k[0] / 0.75, 1e-3, 0.012, xtol=1e-16, rtol=1e-14) for side in (1, -1)
    ),
)
# Pink noise: power as 1/f, in cells of a twenty-fourth of an octave; what each holds, and where half of that lies below.
edges = 25 * 2 ** (np.arange(73) / 24)
inside = lambda a, b: quad(lambda f: 1 / f, a, b, epsabs=1e-14, epsrel=1e-13)[0]
cells = [(edges[j], edges[j + 1]) for j in (0, 30, 71)]
out["pink"] = dict(
    cell=[0, 30, 71],
    share=[inside(*cell) / inside(25, 200) for cell in cells],
    frequency=[brentq(lambda f: inside(a, f) - inside(a, b) / 2, a, b, xtol=1e-13, rtol=1e-14) for a, b in cells],
)
# A mechanical limit of 10 mm, of which a fifth is kept free.
out["damage"] = dict(f=22, Xmech=0.010, volts=brentq(
    lambda e: np.sqrt(2) * abs(circuit(22, e, Re, 0)[0]) / (2 * np.pi * 22) - 0.008, 1, 100, xtol=1e-13, rtol=1e-14))

with open("heat.json", "w") as file:
    json.dump(out, file, indent=1)
    file.write("\n")
