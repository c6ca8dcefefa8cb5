"""Writes digital.json: digital filters by scipy.signal from zeros and poles, and what single precision makes of them.

bilinear_zpk after scaling to the warped frequency, zpk2sos for the sections. Poles of rounded sections: roots of z^2 + a1 z + a2 in
extended precision (mpmath), taken back to the s plane. Noise gain: sum of the squared response of 1/A to one sample, by lfilter.
Run: python3 digital.py
"""

import json
from pathlib import Path

import mpmath as mp
import numpy as np
import scipy
from scipy import signal

mp.mp.dps = 40


def analog(kind, order, corner, family="butter"):
    w = 2 * np.pi * corner
    if family == "lr":
        z, p, _ = signal.buttap(order // 2)
        p = np.concatenate([p, p])
    elif family == "bessel":
        z, p, _ = signal.besselap(order, norm="mag")
    else:
        z, p, _ = signal.buttap(order)
    if kind == "low-pass":
        return [], p * w, np.prod(-p * w).real
    return np.zeros(order), w / p, 1.0


def digital(kind, order, corner, rate, family="butter", exact_at=None):
    z, p, k = analog(kind, order, corner, family)
    mean = float(np.exp(np.mean(np.log(np.abs(p)))) / 2 / np.pi)
    at = exact_at or mean
    # bilinear_zpk has s = 2 fs (z - 1)/(z + 1); ours has k in place of 2 fs, so the plane is stretched by their ratio.
    stretch = 2 * rate / (2 * np.pi * at / np.tan(np.pi * at / rate))
    zd, pd, kd = signal.bilinear_zpk(np.array(z) * stretch, p * stretch, k * stretch ** (len(p) - len(z)), rate)
    sos = signal.zpk2sos(zd, pd, kd)
    quality = [abs_root_quality(s[4], s[5]) for s in sos]
    sos = [sos[i] for i in np.argsort(quality, kind="stable")]
    band = [corner / 20, 0.45 * rate]
    f = np.geomspace(*band, 400)
    _, ha = signal.freqs_zpk(z, p, k, 2 * np.pi * f)
    _, hd = signal.freqz_zpk(zd, pd, kd, f, fs=rate)
    levels = 20 * np.log10(np.abs(hd) / np.abs(ha))
    phases = np.angle(hd / ha)
    i, j = np.argmax(np.abs(levels)), np.argmax(np.abs(phases))
    probes = sorted([corner / 4, corner, 0.1 * rate])
    _, h = signal.freqz_zpk(zd, pd, kd, probes, fs=rate)
    return {
        "kind": kind, "order": order, "corner": corner, "rate": rate, "family": family, "exactAt": exact_at or 0,
        "a1": [s[4] for s in sos], "a2": [s[5] for s in sos],
        "gain": float(np.prod([s[0] for s in sos])),
        # Sections may share out their zeros in another way; their product is the same.
        "numerator": np.poly(zd).real.tolist(),
        "probes": probes, "re": h.real.tolist(), "im": h.imag.tolist(),
        "band": band, "level": levels[i], "levelAt": f[i], "phase": phases[j], "phaseAt": f[j],
    }


def abs_root_quality(a1, a2):
    if a2 == 0:
        return 0.0
    return float(np.sqrt(max((1 + a1 + a2) * (1 - a1 + a2), 0)) / (2 * (1 - a2)))


def poles_of(a1, a2, rate):
    """f0 and Q of the analog section, from the roots, by the inverse of the bilinear transform with k = 2 rate."""
    if a2 == 0:
        s = 2 * rate * (-a1 - 1) / (-a1 + 1)
        return [float(rate / mp.pi * mp.atan(-s / (2 * rate))), 0.0]
    a1, a2 = mp.mpf(float(a1)), mp.mpf(float(a2))
    root = (-a1 + mp.sqrt(mp.mpc(a1 * a1 - 4 * a2))) / 2
    s = 2 * rate * (root - 1) / (root + 1)
    w = abs(s)
    return [float(rate / mp.pi * mp.atan(w / (2 * rate))), float(w / (-2 * mp.re(s)))]


def noise(a1, a2, rate, corner):
    count = int(40 * rate / corner)
    impulse = np.zeros(count)
    impulse[0] = 1
    return float(10 * np.log10(np.sum(signal.lfilter([1], [1, a1, a2], impulse) ** 2)))


def single(order, corner, rate):
    """High-pass of order 1 or 2, Butterworth, with its coefficients rounded to 32 bits."""
    w = 2 * np.pi * corner
    k = w / np.tan(np.pi * corner / rate)
    if order == 1:
        b, a = np.array([k, -k, 0]) / (k + w), np.array([k + w, w - k, 0]) / (k + w)
    else:
        d = [w * w, w * np.sqrt(2), 1]
        a0 = d[0] + d[1] * k + k * k
        b = np.array([k * k, -2 * k * k, k * k]) / a0
        a = np.array([a0, 2 * (d[0] - k * k), d[0] - d[1] * k + k * k]) / a0
    b32, a32 = b.astype(np.float32).astype(float), a.astype(np.float32).astype(float)
    f = np.geomspace(corner / 10, 0.49 * rate, 400)
    z = [mp.e ** (-2j * mp.pi * mp.mpf(float(x)) / rate) for x in f]

    def response(b, a):
        return [(mp.mpf(b[0]) + mp.mpf(b[1]) * x + mp.mpf(b[2]) * x * x) / (1 + mp.mpf(a[1]) * x + mp.mpf(a[2]) * x * x) for x in z]

    ratio = [q / p for p, q in zip(response(b, a), response(b32, a32))]
    levels = np.array([float(20 * mp.log10(abs(r))) for r in ratio])
    phases = np.array([float(mp.arg(r)) for r in ratio])
    i, j = np.argmax(np.abs(levels)), np.argmax(np.abs(phases))
    exact, rounded = poles_of(a[1], a[2], rate), poles_of(a32[1], a32[2], rate)
    return {
        "order": order, "corner": corner, "rate": rate, "b": b32.tolist(), "a": a32.tolist(),
        "exact": exact, "rounded": rounded,
        "level": levels[i], "levelAt": f[i], "phase": phases[j], "phaseAt": f[j],
        "noiseGain": noise(a[1], a[2], rate, corner),
    }


fixtures = {
    "program": f"scipy {scipy.__version__}",
    "filters": [
        digital("high-pass", 2, 24.0, 48000.0),
        digital("high-pass", 4, 24.0, 48000.0),
        digital("high-pass", 8, 24.0, 48000.0, "lr"),
        digital("high-pass", 3, 30.0, 44100.0, "bessel"),
        digital("low-pass", 4, 80.0, 48000.0, "lr"),
        digital("low-pass", 1, 120.0, 8000.0),
        digital("low-pass", 5, 2000.0, 48000.0),
        digital("low-pass", 4, 2000.0, 48000.0, "butter", 5000.0),
        digital("high-pass", 2, 20000.0, 48000.0),
    ],
    "single": [single(2, 24.0, 48000.0), single(2, 24.0, 192000.0), single(1, 24.0, 48000.0), single(2, 240.0, 48000.0)],
}
Path(__file__).with_name("digital.json").write_text(json.dumps(fixtures, indent=1) + "\n")
