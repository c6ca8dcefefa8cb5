"""Sweep of the vented box in numpy: as it is usually written, and with polynomials handed over.

    sweep.py <file.json> check <form> <set>            columns as JSON
    sweep.py <file.json> time <form> <set> <seconds>   JSON: seconds a call by the clock and by the processor

form: usual (complex arithmetic on the network's formulas) or algebra (real polynomials in -w^2); set: A or B.
"""
import json
import sys
import time

import numpy as np

REFERENCE = 20e-6


def usual_network(e, f):
    s = 2j * np.pi * f
    electrical = e["sourceResistance"] + e["Re"] + s * e["Le"]
    mechanical = e["Rms"] + s * e["Mms"] + 1 / (s * e["Cms"])
    air = 1 / (s * e["Cab"]) + e["absorption"]
    vent = s * e["vent"] + e["ventLoss"]
    box = 1 / (1 / air + 1 / vent + 1 / e["leak"])
    velocity = e["Bl"] / electrical / (mechanical + e["Bl"] ** 2 / electrical + e["Sd"] ** 2 * box)
    pressure = -e["Sd"] * velocity * box
    current = (1 - e["Bl"] * velocity) / electrical
    return -pressure / air, velocity, pressure / vent, current


def usual_a(case):
    e, f = case["values"], case["f"]
    return lambda: usual_network(e, f)


def real_columns(case, flow, velocity, current, terminals, air_speed):
    f, drive = case["f"], case["drive"]
    impedance = terminals / current
    return (
        20 * np.log10(np.abs(flow) * f * (case["density"] * drive / REFERENCE)),
        np.angle(1j * flow),
        np.abs(velocity) * (np.sqrt(2) * drive) / (2 * np.pi * f),
        np.abs(air_speed) * (np.sqrt(2) * drive),
        np.abs(impedance),
        np.angle(impedance),
    )


def usual_b(case):
    e, f = case["values"], case["f"]

    def call():
        flow, velocity, vent, current = usual_network(e, f)
        terminals = 1 - e["sourceResistance"] * current
        columns = real_columns(case, flow, velocity, current, terminals, vent / case["ventArea"])
        return (*columns, -np.gradient(np.unwrap(columns[1]), 2 * np.pi * f))

    return call


def polynomials_of(rows, w):
    """All rows at once, P(jw): even powers are real and odd ones imaginary, each a small matrix times powers of -w^2."""
    powers = np.empty((rows.shape[1] // 2, len(w)))
    powers[0] = 1
    np.multiply(w, -w, out=powers[1])
    for k in range(2, len(powers)):
        np.multiply(powers[k - 1], powers[1], out=powers[k])
    return rows[:, 0::2] @ powers, rows[:, 1::2] @ powers * w


def algebra_columns(polynomials, f):
    w = f * (2 * np.pi / polynomials["scale"])
    a, b = polynomials_of(polynomials["rows"], w)
    unit = 1 / (a[0] * a[0] + b[0] * b[0])
    u, v = a[0] * unit, -b[0] * unit
    return a[1:] * u - b[1:] * v, a[1:] * v + b[1:] * u


def padded(polynomials):
    """Rows of an even count of coefficients."""
    rows = np.array(polynomials["rows"])
    return {**polynomials, "rows": np.pad(rows, ((0, 0), (0, rows.shape[1] % 2)))}


def algebra_a(case):
    f, polynomials = case["f"], padded(case["A"])
    return lambda: tuple(zip(*algebra_columns(polynomials, f)))


def slopes(rows, w):
    """Re(P'/P) for P(s), s = jw."""
    a, b = polynomials_of(rows, w)
    derived = np.pad(rows * np.arange(rows.shape[1]), ((0, 0), (0, 1)))[:, 1:]
    p, q = polynomials_of(derived, w)
    return (p * a + q * b) / (a * a + b * b)


def algebra_b(case):
    f, drive, polynomials = case["f"], case["drive"], padded(case["B"])
    first_two = polynomials["rows"][:2]

    def call():
        re, im = algebra_columns(polynomials, f)
        flow, velocity, current, terminals, air_speed = np.hypot(re, im)
        x, y, a, b = re[2], im[2], re[3], im[3]
        delays = slopes(first_two, f * (2 * np.pi / polynomials["scale"]))
        return (
            20 * np.log10(flow * f * (case["density"] * drive / REFERENCE)),
            np.arctan2(re[0], -im[0]),
            velocity * (np.sqrt(2) * drive) / (2 * np.pi * f),
            air_speed * (np.sqrt(2) * drive),
            terminals / current,
            np.arctan2(b * x - a * y, a * x + b * y),
            (delays[0] - delays[1]) / polynomials["scale"],
        )

    return call


def measure(call, seconds):
    now, used = time.perf_counter, time.process_time
    warm = now() + seconds / 4
    calls = 1
    while True:
        start = now()
        for _ in range(calls):
            call()
        took = now() - start
        if took < 0.01:
            calls *= 2
        elif now() >= warm:
            break
    wall, cpu = [], []
    end = now() + seconds
    while now() < end or len(wall) < 5:
        before, start = used(), now()
        for _ in range(calls):
            call()
        wall.append((now() - start) / calls)
        cpu.append((used() - before) / calls)
    return {"wall": wall, "cpu": cpu}


def plain(column):
    if isinstance(column, tuple):
        return [column[0].tolist(), column[1].tolist()]
    if np.iscomplexobj(column):
        return [column.real.tolist(), column.imag.tolist()]
    return column.tolist()


def main():
    path, what, form, columns = sys.argv[1:5]
    with open(path, encoding="utf8") as file:
        case = json.load(file)
    case["f"] = np.array(case["frequencies"])
    forms = {"usualA": usual_a, "usualB": usual_b, "algebraA": algebra_a, "algebraB": algebra_b}
    call = forms[form + columns](case)
    if what == "check":
        print(json.dumps([plain(column) for column in call()]))
    else:
        print(json.dumps(measure(call, float(sys.argv[5]))))


main()
