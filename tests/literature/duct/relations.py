"""Writes relations.json: values of textbook relations, worked out from their definitions with 40 digits.

Each entry bears the id of the check that reads it. Tubes and slits: line constants of line-chain.py. Pistons: Bessel and
Struve functions, and quadrature of 1/(2πr) over the surfaces. Profiles: quadrature of ∫dx/S. Vents on a box: roots of the
line equation, and masses that share one spring as an eigenvalue problem. Run: python3 relations.py
"""
import json
from importlib import import_module
from pathlib import Path

import mpmath as mp
from mpmath import mpf, pi

line = import_module("line-chain")
mp.mp.dps = 40
C = mpf("343.2")


def F(*texts):
    return [mpf(text) for text in texts]


def impedance(a):
    """ρc/S."""
    return line.RHO * line.C / (pi * a**2)


def open_tube(a, length, f):
    """Impedance of a lossy tube that ends in nothing: B/D, and D is A."""
    parts = line.chain(a, length, f)
    return parts["B"] / parts["A"]


def narrow(rv):
    """1/(1 − F) of a round tube rv viscous layers wide: what the layer makes of the mass."""
    x = rv * mp.sqrt(mp.mpc(0, -1))
    return 1 / (1 - 2 * mp.besselj(1, x) / (x * mp.besselj(0, x)))


def slit(h, f):
    """Γ and Γ Z of a slit, over its width: F = tanh(x)/x of half its height."""
    w = 2 * pi * f
    layer = lambda diffusivity: mp.tanh(x := h / 2 * mp.sqrt(mp.mpc(0, w) / diffusivity)) / x
    series = mp.mpc(0, w) * line.RHO / (1 - layer(line.MU / line.RHO))
    shunt = mp.mpc(0, w) / (line.RHO * line.C**2) * (1 + (line.GAMMA - 1) * layer(line.MU / (line.RHO * line.PRANDTL)))
    return mp.sqrt(series * shunt), series


def lossless(a):
    """Z S over the phase velocity, of a tube with 1e-40 of the viscosity: ρ as the limit."""
    kept, line.MU = line.MU, line.MU * mpf(10) ** -40
    gamma, z = line.line(a, 50)
    line.MU = kept
    return z.real * pi * a**2 / (100 * pi / gamma.imag)


def reactance(ka):
    return mp.struveh(1, 2 * ka) / ka


def resistance(ka):
    return 1 - mp.besselj(1, 2 * ka) / ka


def mutual(d):
    """Length that each of two discs of radius 1 adds to the other: the potential of one, by elliptic integrals, over the other."""
    potential = lambda s: 4 * (s * mp.ellipe(s**-2) - (s - 1 / s) * mp.ellipk(s**-2))
    arc = lambda s: 2 * mp.acos((s * s + d * d - 1) / (2 * s * d))
    return mp.quad(lambda s: potential(s) * s * arc(s), [d - 1, d, d + 1]) / (2 * pi**2)


def rectangle(aspect):
    """Length over √S of a piston a × b = 1 in a wall: in polar coordinates the 1/r goes, and r is integrated first."""
    a, b = aspect ** mpf(-0.5), aspect ** mpf(0.5)

    def ray(t, end):
        s, c = mp.sin(t), mp.cos(t)
        return a * b * end - (a * s + b * c) * end**2 / 2 + s * c * end**3 / 3

    corner = mp.atan2(b, a)
    one = mp.quad(lambda t: ray(t, a / mp.cos(t)), [0, corner])
    return 2 / pi * (one + mp.quad(lambda t: ray(t, b / mp.sin(t)), [corner, pi / 2]))


def turned(aspect):
    return max(aspect, 1 / aspect)


def neck(volume, length, a, ends=mpf("1.4349")):
    """Frequency at which k tan(kl) = S/V, with ends of so many radii together: one flush and one free end."""
    l, area = length + ends * a, pi * a**2
    k = mp.findroot(lambda k: k * mp.tan(k * l) - area / volume, mp.sqrt(area / (volume * l)))
    return k * C / (2 * pi)


def on_one_spring(masses, compliance):
    """Frequency of air masses that share the air of a box, and the flows in them: the one mode that is not at rest."""
    n = len(masses)
    roots = [mp.sqrt(m) for m in masses]
    values, vectors = mp.eigsy(mp.matrix(n, n) + mp.matrix([[1 / (compliance * r * s) for s in roots] for r in roots]))
    at = max(range(n), key=lambda i: values[i])
    flows = [vectors[i, at] / roots[i] for i in range(n)]
    return mp.sqrt(values[at]) / (2 * pi), [flow / sum(flows) for flow in flows]


def profile(radius, length):
    return mp.quad(lambda x: 1 / (pi * radius(x) ** 2), mp.linspace(0, length, 5))


def cone(a, b, length):
    return profile(lambda x: a + (b - a) * x / length, length)


def horn(a, b, length):
    return profile(lambda x: a * mp.exp(mp.log(b / a) * x / length), length)


out = {}

tubes = [(a, f) for a in F("0.005", "0.01", "0.025", "0.0375", "0.05", "0.075") for f in (20, 50, 100, 500)]
constants = [(line.line(a, f), a, f) for a, f in tubes]
out["duct.line.attenuation"] = [g.real for (g, _), _, _ in constants]
out["duct.line.velocity"] = [2 * pi * f / g.imag for (g, _), _, f in constants]
out["duct.line.impedance.re"] = [(z / impedance(a)).real for (_, z), a, _ in constants]
out["duct.line.impedance.im"] = [(z / impedance(a)).imag for (_, z), a, _ in constants]
out["duct.line.round.attenuation"] = [line.line(a, f)[0].real for a, f in zip(F("0.005", "0.025", "0.075"), (20, 100, 500))]
out["duct.line.narrow.mass"] = [narrow(rv).real for rv in F("0.3", "1")]
out["duct.line.narrow.resistance"] = [narrow(rv).imag for rv in F("0.01", "0.1", "0.3", "1")]
slits = [(slit(h, f), f) for h in F("0.002", "0.005", "0.01", "0.02", "0.04") for f in (20, 50, 200)]
out["duct.line.slit.attenuation"] = [g.real for (g, _), _ in slits]
out["duct.line.slit.velocity"] = [2 * pi * f / g.imag for (g, _), f in slits]
out["duct.line.slit.resistance"] = [series.real for (_, series), _ in slits]
quality = lambda a, f: (g := line.line(a, f)[0]).imag / (2 * g.real)
out["duct.line.wall-quality"] = [quality(a, f) for a in F("0.02", "0.0375", "0.05", "0.075") for f in (30, 200, 1000)]
walls = zip(F("0.02", "0.02", "0.0375", "0.0375", "0.05", "0.075"), (30, 200, 200, 1000, 200, 30))
out["vent.standing.wall"] = [quality(a, f) for a, f in walls]
out["duct.line.lossless"] = [lossless(a) for a in F("0.005", "0.0375", "0.075")]

ends = [open_tube(*F(*sizes), f) for *sizes, f in
        (("0.025", "0.15", 40), ("0.05", "0.2", 30), ("0.05", "0.2", 700), ("0.0125", "0.1", 80))]
for name in ("duct.line.chain", "duct.open-line"):
    out[f"{name}.re"], out[f"{name}.im"] = [z.real for z in ends], [z.imag for z in ends]
out["duct.tube-mass.lossy"] = out["duct.line.chain.im"][:2]

piston = F("0.001", "0.01", "0.05", "0.1", "0.2", "0.5", "1", "1.5", "2", "3", "5", "8", "10", "15", "20")
out["duct.radiation.piston.re"] = [resistance(ka) for ka in piston]
out["duct.radiation.piston.im"] = [reactance(ka) for ka in piston]
out["duct.radiation.column.re"] = [resistance(ka) for ka in F("0.01", "0.5", "3", "20")]
out["duct.radiation.column.im"] = [reactance(ka) for ka in F("0.01", "0.5", "3")]
for name, part in (("mass", reactance), ("resistance", resistance)):
    out[f"duct.radiation.{name}-small"] = part(mpf("0.001"))
    out[f"duct.radiation.{name}"] = [part(ka) for ka in F("0.01", "0.05", "0.1", "0.2")]
static = reactance(mpf(10) ** -25) * mpf(10) ** 25
out["end.piston.static"] = [static]
out["end.piston.dynamic"] = [reactance(ka) / ka for ka in F("0.05", "0.1", "0.2")]
out["end.mutual.pistons"] = [mutual(d) for d in F("2.0001", "2.2", "2.5", "3", "4", "5", "6", "8", "10", "20")]
out["end.mutual.far"] = [mutual(d) for d in F("50", "200")]
out["end.neighbours"] = [static + n * mutual(d) for d, n in zip(F("2.2", "3", "5", "20"), (1, 2, 2, 1))]
out["end.rectangle"] = [rectangle(q) for q in F("1", "1.5", "2", "3", "4", "5", "8", "10", "20", "50")]
# A wall along the long side mirrors the piston: one of twice the height, √2 times as long for the same ratio.
out["end.rectangle.wall"] = [rectangle(turned(q / 2)) for q in F("2", "4", "10", "20", "1", "6")]
out["end.rectangle.corner"] = [rectangle(q) for q in F("1", "2", "5", "20")]

tapers = [F(*sizes) for sizes in (("0.02", "0.08", "0.3"), ("0.03", "0.031", "0.15"), ("0.05", "0.01", "0.05"))]
steep = (mpf("0.02"), mpf("0.05"), mpf("0.05") * mp.log(mpf("2.5")))
out["duct.profile.cone"] = [mpf("1.2") * cone(*taper) for taper in (*tapers, F("0.02", "0.05", "0.03"), steep)]
out["duct.profile.exponential"] = [mpf("1.2") * horn(*taper) for taper in (*tapers, F("0.02", "0.05", "0.03"), steep)]
whole = cone(*F("0.03", "0.045", "0.15"))
out["duct.profile-mass.cone"] = [mpf("1.2") * whole, whole * pi * mpf("0.03") ** 2, mpf("0.06")]

# The edge of a quarter round by its slope: dr/dx = s/√(R² − s²), s from where the flare begins.
flare = lambda s, R: mp.quad(lambda t: t / mp.sqrt(R * R - t * t), [0, s])
out["duct.profile.flare-slope"] = [
    mpf("0.035") + flare(*F(s, R))
    for s, R in (("0.01", "0.01"), ("0.006", "0.01"), ("0", "0.02"), ("0.012", "0.02"), ("0.019", "0.02"))]
# First wave across parallel walls, cos(kx): its slope is nought at both.
out["duct.section.slit.wave"] = [mp.findroot(lambda k: mp.sin(k * w), 3 / w) for w in F("0.3", "0.06", "0.1")]

boxes = [F("0.02", "0.12", "0.025"), F("0.04", "0.15", "0.0375"), F("0.08", "0.2", "0.05")]
for name in ("duct.resonance.line", "vent.tuning.line", "vent.line.fb"):
    out[name] = [neck(*box) for box in boxes]
out["vent.length.piston-end"] = [neck(*box, static + mpf("0.6133")) for box in boxes]
# Vents side by side, over ρ: masses ℓ/S on the spring c²/V.
slots = [F(*sizes) for sizes in (("0.3", "0.03", "0.25"), ("0.1", "0.1", "0.12"), ("0.2", "0.1", "0.12"))]
out["vent.tuning.slot"] = [
    on_one_spring([(L + 2 * rectangle(w / h) * mp.sqrt(w * h)) / (w * h)], mpf("0.06") / C**2)[0] for w, h, L in slots]
sets = [
    ([("0.075", "0.15")] + [("0.05", "0.08")], "0.06"),
    ([("0.1", "0.3")] * 2 + [("0.06", "0.05")], "0.2"),
    ([("0.03", "0.02"), ("0.03", "0.6"), ("0.12", "0.4")], "0.1"),
]
modes = []
for vents, V in sets:
    sizes = [F(*vent) for vent in vents]
    areas = [pi * d**2 / 4 for d, _ in sizes]
    masses = [(L + 2 * static * d / 2) / S for (d, L), S in zip(sizes, areas)]
    modes.append((*on_one_spring(masses, mpf(V) / C**2), areas))
out["vent.several.fb"] = [fb for fb, _, _ in modes]
alike = (1, 2, 1)  # the first vent of a set counts so many openings
out["vent.several.shares"] = [n * flows[0] for (_, flows, _), n in zip(modes, alike)]
out["vent.several.speeds"] = [
    flows[n] / areas[n] * sum(areas) for (_, flows, areas), n in zip(modes, alike)]
first, masses = modes[0], [mpf("1.2") * (mpf(L) + static * mpf(d)) / (pi * mpf(d) ** 2 / 4) for d, L in sets[0][0]]
out["vent.several.every-field"] = [sum(first[2]), 1 / sum(1 / m for m in masses), mpf("0.06")]
for (d, L), flow, area, mass in zip(sets[0][0], first[1], first[2], masses):
    out["vent.several.every-field"] += [flow, area, mpf(L) + static * mpf(d), mass]
# Two tubes through a panel of 18 mm, of walls of 3 mm, in 40 L.
disc = lambda radius: mp.quad(lambda r: 2 * pi * r, [0, radius])
net = mpf("0.04") - 2 * disc(mpf("0.0405")) * (mpf("0.15") - mpf("0.018"))
long = mpf("0.15") + static * mpf("0.075")
mass = long / disc(mpf("0.0375"))
out["vent.every-field"] = [
    on_one_spring([mass, mass], net / C**2)[0], mpf("0.15"), net, mpf("0.04"), long, mpf("1.2") * mass / 2]

# The air that moves as V sin(2πft) through an opening whose area is added up in rings.
moved = [F("30", "0.0003", "0.075"), F("30", "0.0005", "0.1"), F("40", "0.0005", "0.1")]
speed = lambda f, V, d: lambda t: mp.diff(lambda t: V * mp.sin(2 * pi * f * t), t) / mp.quad(lambda r: 2 * pi * r, [0, d / 2])
out["vent.air-speed.peak"] = [speed(*one)(0) for one in moved]
rms = lambda u, f: mp.sqrt(f * mp.quad(lambda t: u(t) ** 2, mp.linspace(0, 1 / f, 5)))
mp.mp.dps = 25
out["vent.air-speed.rms"] = [rms(speed(*one), one[0]) for one in moved]

if __name__ == "__main__":
    numbers = {name: [float(x) for x in value] if isinstance(value, list) else float(value) for name, value in out.items()}
    Path(__file__).with_name("relations.json").write_text(json.dumps(numbers, indent=1) + "\n")
