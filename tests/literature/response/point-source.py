"""Writes point-source.json: level and power of air that moves to and fro at one point of a rigid wall, by mpmath.

A hemisphere far smaller than any wavelength breathes; outside it the wave is exp(−jkr)/r, its velocity the numeric slope of
its pressure (ρ dv/dt = −dp/dr), and its power the intensity summed over a hemisphere. Run: python3 point-source.py
"""
import json
from pathlib import Path

import mpmath as mp
from mpmath import mpf, pi

mp.mp.dps = 50
RHO, C, REFERENCE = mpf("1.2041"), mpf("343.2"), mpf("20e-6")
VOLUMES = [("1e-4", "20"), ("1e-4", "40"), ("5e-4", "20"), ("3.03065e-5", "41.4")]


def wave(volume, f):
    """Pressure and velocity (rms) over the radius, for a displaced volume (peak)."""
    w = 2 * pi * f
    shape = lambda r: mp.expj(-w / C * r) / r
    slope = lambda r: -mp.diff(shape, r, h=r * mpf(10) ** -20) / (mp.mpc(0, w) * RHO)
    small = mpf(10) ** -12
    flow = mp.quad(lambda t: 2 * pi * small**2 * mp.sin(t), [0, pi / 2]) * slope(small)
    size = w * volume / mp.sqrt(2) / flow
    return lambda r: size * shape(r), lambda r: size * slope(r)


levels, powers = [], []
for volume, f in VOLUMES:
    p, v = wave(mpf(volume), mpf(f))
    levels.append(20 * mp.log10(abs(p(1)) / REFERENCE))
    intensity = mp.re(p(1) * mp.conj(v(1)))
    powers.append(mp.quad(lambda t: 2 * pi * mp.sin(t) * intensity, [0, pi / 2]))

out = {
    "volume": [float(volume) for volume, _ in VOLUMES],
    "frequency": [float(f) for _, f in VOLUMES],
    "level": [float(level) for level in levels],
    "power": [float(power) for power in powers],
}
if __name__ == "__main__":
    Path(__file__).with_name("point-source.json").write_text(json.dumps(out, indent=1) + "\n")
