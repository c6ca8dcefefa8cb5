"""Writes signals.json: signals and their spectra by numpy and scipy.

Pink noise is made anew from its definition: random words by a plain Threefry-2x32-20, filters by numpy, interpolation by
scipy.signal.upfirdn. Its spectrum is summed from the frequency responses of all levels. Run: python3 signals.py
"""

import json
from math import ceil, log2
from pathlib import Path

import numpy as np
from scipy import signal

MASK = 0xFFFFFFFF
HALF, POINTS = 12, 512


def threefry(key, counter):
    keys = [*key, key[0] ^ key[1] ^ 0x1BD11BDA]
    a, b = (counter[0] + keys[0]) & MASK, (counter[1] + keys[1]) & MASK
    for turn in range(20):
        r = [13, 15, 26, 6, 17, 29, 16, 24][turn % 8]
        a = (a + b) & MASK
        b = ((b << r) | (b >> (32 - r))) & MASK ^ a
        if turn % 4 == 3:
            n = (turn + 1) // 4
            a = (a + keys[n % 3]) & MASK
            b = (b + keys[(n + 1) % 3] + n) & MASK
    return a, b


assert threefry((0, 0), (0, 0)) == (0x6B200159, 0x99BA4EFE)


def white(seed, level, start, stop):
    """Samples of variance 1, from the 52 highest bits of 27 and 25 bits: 13 bits each, the highest first."""
    out = []
    for i in range(start, stop):
        place, part = divmod(i, 4)
        a, b = threefry((seed, 0), (place & MASK, level))
        bits = (a >> 5) << 25 | b >> 7
        whole = bits >> (39 - 13 * part) & 0x1FFF
        out.append(((whole + 0.5) / 8192 - 0.5) * np.sqrt(12))
    return np.array(out)


side = np.array([1225, -245, 49, -5]) / 2048
interpolator = np.zeros(15)
interpolator[7] = 1
interpolator[[8, 10, 12, 14]] = side
interpolator[[6, 4, 2, 0]] = side
assert np.isclose(interpolator.sum(), 2)


def gain(taps, v):
    """Frequency response of taps about their middle; real, since they are symmetrical."""
    n = np.arange(len(taps)) - len(taps) // 2
    return (taps[:, None] * np.cos(2 * np.pi * np.outer(n, np.atleast_1d(v)))).sum(0)


def filters(rate, weight):
    v = (np.arange(POINTS) + 0.5) / (2 * POINTS)
    square = 1 / v - gain(interpolator, v) ** 2 / (2 * np.minimum(2 * v, 1 - 2 * v))
    octave = np.sqrt(np.maximum(0, square))
    n = np.arange(-HALF, HALF + 1)
    levels = 1 + max(0, ceil(log2(rate / 2)))
    taps = [np.cos(2 * np.pi * np.outer(n, v)) @ (octave * weight(v * rate / 2**k)) / POINTS for k in range(levels)]
    return taps


def density(taps, f, rate):
    """Power spectral density of level 0, of white levels of variance 1, re one sample rate, two-sided."""
    total, road = np.zeros_like(f), np.ones_like(f)
    for k, h in enumerate(taps):
        v = f / rate * 2**k
        total += road * gain(h, v) ** 2
        road = road * gain(interpolator, v) ** 2 / 2
    return total


def power(taps, rate):
    """The integral of the density over all frequencies: in the time domain, level by level, exactly."""
    total = 0
    for k, h in enumerate(taps):
        response = h
        for _ in range(min(k, 10)):
            response = signal.upfirdn(interpolator, response, up=2)
        total += (response**2).sum() / 2 ** min(k, 10)
    return total


def noise(seed, rate, weight, start, count):
    taps = filters(rate, weight)
    scale = 1 / np.sqrt(power(taps, rate))

    def level(k, lo, hi):
        out = signal.fftconvolve(white(seed, k, lo - HALF, hi + HALF), taps[k], "valid")
        if k + 1 < len(taps):
            # Whole samples of the slower level on both sides, so that the interpolator of 15 terms finds all it needs.
            a, b = lo // 2 - 6, hi // 2 + 8
            wide = signal.upfirdn(interpolator, level(k + 1, a, b), up=2)
            # Sample 0 of the slower level stands at 7 of the wide one.
            out = out + wide[7 + lo - 2 * a : 7 + hi - 2 * a]
        return out

    return scale * level(0, start, start + count)


def one(f):
    return np.ones_like(f)


weights = [[20, -13.5], [25, -10.2], [31.5, -7.4], [40, -5.2], [50, -3.5], [63, -2.3], [80, -1.4], [100, -0.9], [125, -0.5], [250, 0]]


def programme(f):
    x, y = np.log(np.array(weights)[:, 0]), np.array(weights)[:, 1]
    g = np.log(f)
    dB = np.where(g < x[0], y[0] + (g - x[0]) * (y[1] - y[0]) / (x[1] - x[0]), np.interp(g, x, y))
    return 10 ** (np.maximum(dB, -200) / 20)


def spectrum_error(rate, weight, low, high):
    """Greatest and least of the density over weight²/f, dB, about their middle."""
    f = np.geomspace(low, high, 4001)
    level = 10 * np.log10(density(filters(rate, weight), f, rate) * f / weight(f) ** 2)
    return float(np.ptp(level) / 2)


def slope(rate, low, high):
    f = np.geomspace(low, high, 4001)
    level = 10 * np.log10(density(filters(rate, one), f, rate))
    return float(np.polyfit(np.log2(f), level, 1)[0])


def third_octaves(f, p):
    """Band powers of a density that is constant around each line."""
    step = f[1]
    edges = np.concatenate([[0], np.cumsum(p) * step])
    at = lambda x: np.interp(x, np.concatenate([f - step / 2, [f[-1] + step / 2]]), edges)
    lowest = ceil(10 * np.log10(4 * step / (1000 * (10**0.05 - 10**-0.05))))
    middles = []
    n = lowest
    while 1000 * 10 ** (n / 10 + 0.05) <= f[-1]:
        middles.append(1000 * 10 ** (n / 10))
        n += 1
    m = np.array(middles)
    return m, at(m * 10**0.05) - at(m * 10**-0.05)


def listened():
    """Two tones, a constant, and a chirp that fills all bands, by the method of Welch."""
    rate, count, length = 2000, 7300, 1024
    n = np.arange(count)
    t = n / rate
    x = 0.1 + 0.7 * np.sin(2 * np.pi * 40 * t) + 0.2 * np.sin(2 * np.pi * 333.3 * t) + 0.1 * np.sin(0.001 * n**2)
    f, p = signal.welch(x, rate, "hann", nperseg=length, detrend=False)
    middles, powers = third_octaves(f, p)
    assert np.isclose(p.sum() * f[1], (x**2).mean(), rtol=0.02)
    short = x[:600]
    # Shares in parts of a 24th of an octave from one and a half lines on, by a running sum of the density.
    step = f[1]
    running = lambda at: np.interp(at, np.append(f - step / 2, f[-1] + step / 2), np.append(0, np.cumsum(p) * step))
    edges = 1.5 * step * 2 ** (np.arange(int(np.floor(24 * np.log2(f[-1] / (1.5 * step)) + 1e-9)) + 1) / 24)
    cells = np.diff(running(edges))
    g, q = signal.welch(short, rate, signal.windows.hann(602)[1:-1], nperseg=600, nfft=length, detrend=False)
    return {
        "density": p[[0, 1, 20, 21, 171, 400, 512]].tolist(),
        "lines": [0, 1, 20, 21, 171, 400, 512],
        "short": q[[0, 20, 21, 100, 171]].tolist(),
        "shortLines": [0, 20, 21, 100, 171],
        "bands": middles.tolist(),
        "meanSquares": powers.tolist(),
        "cells": np.sqrt(edges[1:] * edges[:-1]).tolist(),
        "shares": (cells / cells.sum()).tolist(),
        "peak": float(abs(x).max()),
        "rms": float(np.sqrt((x**2).mean())),
        "crestFactor": float(abs(x - x.mean()).max() / x.std()),
    }


def burst(f0, rate):
    count = int(np.floor(6.5 / f0 * rate)) + 1
    t = np.arange(count) / rate
    hann = 0.5 - 0.5 * np.cos(2 * np.pi * t * f0 / 6.5)
    return hann * np.sin(2 * np.pi * f0 * t)


n = np.array([0, 1, 7, 480, 20_000, 47_999])
t = n / 48_000
swept = signal.chirp(t, 10, 1.0, 200, method="logarithmic", phi=-90)
b = burst(31.5, 48_000)
places = [0, 100, 1523, 4952, 9000, 9904]
errors = {
    "pink48": spectrum_error(48_000, one, 1, 0.4535 * 48_000),
    "programme48": spectrum_error(48_000, programme, 10, 20_000),
}
assert errors["pink48"] < 0.021 and errors["programme48"] < 0.2, errors
starts = [0, 1, 1_000_003, 3_000_000_000]
fixtures = {
    "places": n.tolist(),
    "sine": np.sin(2 * np.pi * 30 * t).tolist(),
    "sweep": swept.tolist(),
    "clipped": np.clip(swept, -0.4, 0.4).tolist(),
    "burst": {"places": places, "samples": b[places].tolist(), "rms": float(np.sqrt((b**2).mean()))},
    "pink": [{"from": s, "samples": noise(7, 48_000, one, s, 5).tolist()} for s in starts],
    "pink2k": noise(7, 2000, one, 12_345, 5).tolist(),
    "programme": [{"from": s, "samples": noise(7, 48_000, programme, s, 5).tolist()} for s in starts],
    "errors": errors,
    "slope": slope(48_000, 10, 20_000),
    "welch": listened(),
}
Path(__file__).with_name("signals.json").write_text(json.dumps(fixtures, indent=1) + "\n")
print(errors, fixtures["slope"])
