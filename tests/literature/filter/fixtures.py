"""Writes fixtures.json: high-pass filters by scipy.signal, response and group delay.

The group delay comes from poles and zeros, a road of its own: sum of -re(p) / |jw - p|^2 over the poles (zeros at s = 0
add none). Run: python3 fixtures.py
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy import signal

frequencies = [0.5, 5.0, 12.0, 20.0, 24.0, 30.0, 48.0, 120.0, 1000.0, 20000.0]


def response(zeros, poles):
    omega = 2 * np.pi * np.array(frequencies)
    _, h = signal.freqs_zpk(zeros, poles, 1, omega)
    delay = [sum(-p.real / abs(1j * w - p) ** 2 for p in poles) for w in omega]
    return {"re": h.real.tolist(), "im": h.imag.tolist(), "level": (20 * np.log10(abs(h))).tolist(), "delay": delay}


def butterworth(order, corner):
    zeros, poles, gain = signal.butter(order, 2 * np.pi * corner, "highpass", analog=True, output="zpk")
    assert abs(gain - 1) < 1e-12
    return {"order": order, "corner": corner} | response(zeros, poles)


def by_q(order, corner, q):
    w = 2 * np.pi * corner
    sections = [np.roots([1, w / one, w * w]) for one in q] + ([[-w]] if order % 2 else [])
    poles = np.concatenate(sections)
    return {"order": order, "corner": corner, "Q": q} | response(np.zeros(order), poles)


def ends(corner):
    """Butterworth of the greatest order at a corner in rad/s, two decades about it as far as 1e-4 to 1e7 Hz reach."""
    zeros, poles, _ = signal.butter(8, corner, "highpass", analog=True, output="zpk")
    omega = np.geomspace(max(corner / 100, 2e-4 * np.pi * 1.01), min(corner * 100, 2e7 * np.pi * 0.99), 6)
    _, h = signal.freqs_zpk(zeros, poles, 1, omega)
    # Ascending powers of s, from the poles.
    denominator = np.poly(poles).real[::-1].tolist()
    return {"corner": corner, "frequencies": (omega / (2 * np.pi)).tolist(), "denominator": denominator,
            "re": h.real.tolist(), "im": h.imag.tolist()}


fixtures = {
    "program": f"scipy {scipy.__version__}",
    "frequencies": frequencies,
    "butterworth": [butterworth(order, 24.0) for order in (1, 2, 3, 4)],
    "ends": [ends(corner) for corner in (1.001e-5, 150.0, 0.999e9)],
    # Least, usual and greatest Q, and the mixed orders.
    "byQ": [by_q(1, 24.0, []), by_q(2, 24.0, [0.05]), by_q(2, 24.0, [2.0]), by_q(2, 24.0, [50.0]), by_q(3, 30.0, [1.4]),
            by_q(4, 20.0, [0.6, 2.5])],
}
Path(__file__).with_name("fixtures.json").write_text(json.dumps(fixtures, indent=1) + "\n")
