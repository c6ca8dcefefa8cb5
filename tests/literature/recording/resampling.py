"""Writes resampling.json: changes of sample rate by scipy.signal.upfirdn, with a filter made anew from its definition.

Where the ratio is no fraction of small numbers the sum is taken directly. The ripple and the stop band that are promised are read
from the frequency response of the filter. Run: python3 resampling.py
"""

import json
from math import ceil, gcd
from pathlib import Path

import numpy as np
from scipy import signal, special

REACH, SHAPE = 32, 10.06


def kernel(t, r):
    place = np.clip(t / (REACH * r), -1, 1)
    window = special.i0(SHAPE * np.sqrt(1 - place**2)) / special.i0(SHAPE) * (abs(t) < REACH * r)
    return np.sinc(t / r) / r * window


def by_fraction(x, f1, f2):
    up, down = f2 // gcd(f1, f2), f1 // gcd(f1, f2)
    r = max(1, f1 / f2)
    half = ceil(REACH * r)
    taps = kernel(np.arange(-half * up, half * up + 1) / up, r)
    wide = signal.upfirdn(taps, np.concatenate([x, np.zeros(2 * half)]), up, 1)[half * up :]
    return wide[::down][: ceil(len(x) * f2 / f1)]


def directly(x, f1, f2):
    r = max(1, f1 / f2)
    m, n = np.arange(ceil(len(x) * f2 / f1)), np.arange(len(x))
    return kernel(m[:, None] * (f1 / f2) - n, r) @ x


# In units of the lower rate: the band that passes, and the one that does not.
taps = kernel(np.arange(-REACH * 64, REACH * 64 + 1) / 64, 1) / 64
_, passed = signal.freqz(taps, worN=2 * np.pi * np.linspace(0, 0.45, 4001) / 64)
_, stopped = signal.freqz(taps, worN=2 * np.pi * np.linspace(0.55, 32, 400_001) / 64)
ripple = float(20 * np.log10(abs(passed)).max()), float(20 * np.log10(abs(passed)).min())
stop = float(20 * np.log10(abs(stopped).max()))
assert max(map(abs, ripple)) < 1e-4 and stop < -98, (ripple, stop)

random = np.random.default_rng(3)
cases = []
for f1, f2, count in [(44100, 48000, 150), (48000, 44100, 150), (48000, 2000, 960), (8000, 48000, 20), (48000, 48000, 9)]:
    x = np.round(random.normal(size=count), 6)
    y = by_fraction(x, f1, f2)
    assert np.allclose(y, directly(x, f1, f2), atol=1e-13)
    cases.append({"from": f1, "to": f2, "x": x.tolist(), "y": y.tolist()})
odd = []
for f1, f2, count in [(44100, 47981, 150), (48000, 2003, 900), (1000, 96_001, 4)]:
    x = np.round(random.normal(size=count), 6)
    odd.append({"from": f1, "to": f2, "x": x.tolist(), "y": directly(x, f1, f2).tolist()})
text = json.dumps({"ripple": ripple, "stop": stop, "cases": cases, "odd": odd})
Path(__file__).with_name("resampling.json").write_text(text + "\n")
print(ripple, stop)
