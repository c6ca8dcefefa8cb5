"""Sizes of printed parts and of panels by scipy and plain geometry, without a triangle: writes solids.json beside this file."""
import json
import os
import numpy
import scipy
from scipy.integrate import quad

here = os.path.dirname(os.path.abspath(__file__))


def tube_volume(bore, wall, length):
    """Between two cylinders."""
    return numpy.pi / 4 * ((bore + 2 * wall) ** 2 - bore**2) * length


def flared_air(bore, radius, length):
    """Air in a duct whose two ends are quarter rounds: discs, integrated along the centre line."""
    a = bore / 2
    widened = lambda x: (a + radius - numpy.sqrt(radius**2 - (radius - x) ** 2)) ** 2 * numpy.pi
    end, _ = quad(widened, 0, radius, epsabs=0, epsrel=1e-12)
    return 2 * end + numpy.pi * a**2 * (length - 2 * radius)


tubes = [dict(bore=b, wall=w, length=l, volume=tube_volume(b, w, l)) for b, w, l in [(0.04, 0.0024, 0.1), (0.074, 0.003, 0.25), (0.12, 0.004, 0.6)]]
# A quarter bend: the same section led around a circle (Pappus).
bends = [dict(bore=b, wall=w, radius=r, leg=g, length=2 * g + numpy.pi / 2 * r, volume=tube_volume(b, w, 2 * g + numpy.pi / 2 * r)) for b, w, r, g in [(0.05, 0.003, 0.06, 0.05), (0.074, 0.003, 0.08, 0.1)]]
flares = [dict(bore=b, radius=r, length=l, air=flared_air(b, r, l)) for b, r, l in [(0.05, 0.01, 0.12), (0.07, 0.02, 0.2), (0.1, 0.03, 0.25)]]
# Points of an ellipse and of the exponential less its tangent.
places = [0.25, 0.5, 0.75]
depth, widening = 0.04, 0.02
ellipse = [widening * (1 - numpy.cos(numpy.pi / 2 * t)) for t in places]
exponential = [widening * (numpy.exp(4 * t) - 1 - 4 * t) / (numpy.exp(4) - 5) for t in places]
# Boxes of three joints: the walls are what lies between two cuboids.
boxes = []
for w, h, d, t in [(0.3, 0.4, 0.35, 0.018), (0.407, 0.332, 0.407, 0.018), (0.25, 0.25, 0.5, 0.012)]:
    walls = w * h * d - (w - 2 * t) * (h - 2 * t) * (d - 2 * t)
    boxes.append(dict(outer=[w, h, d], thickness=t, walls=walls, buttSide=[h - 2 * t, d - 2 * t], rabbetTop=d - 2 * t + 2 * t / 2))
# A window brace: a border around openings beside each other.
windows = [dict(space=[s, u], border=b, opening=[s - 2 * b, u - 2 * b]) for s, u, b in [(0.3, 0.4, 0.05), (0.25, 0.2, 0.03), (0.6, 0.3, 0.06)]]
shear = [dict(along=e, across=f, nu=n, shear=numpy.sqrt(e * f) / (2 * (1 + n))) for e, f, n in [(9e9, 9e9, 0.25), (10e9, 7e9, 0.1), (3e9, 2e9, 0.3)]]
# Small parts: rings and cylinders, less their holes.
disc = lambda d: numpy.pi / 4 * d**2
gaskets = [dict(inner=i, outer=o, thickness=t, count=n, circle=c, hole=h, volume=(disc(o) - disc(i) - n * disc(h)) * t) for i, o, t, n, c, h in [(0.146, 0.167, 0.002, 4, 0.157, 0.0045), (0.186, 0.21, 0.003, 6, 0.198, 0.005), (0.232, 0.262, 0.002, 8, 0.246, 0.0055)]]
discs = [dict(mass=m, diameter=d, hole=h, density=r, height=m / (0.97 * r * (disc(d) - disc(h)))) for m, d, h, r in [(0.012, 0.05, 0.0043, 1240), (0.08, 0.09, 0.0064, 1240), (0.4, 0.12, 0.0084, 1040)]]
cups = [dict(diameter=d, depth=e, wall=w, floor=f, beyond=b, flange=t, volume=(disc(d + 2 * w) - disc(d)) * e + disc(d + 2 * w) * f + (disc(d + 2 * (w + b)) - disc(d + 2 * w)) * t - 2 * disc(0.008) * f - 4 * disc(0.004) * t, behind=disc(d + 2 * w) * (e + f - t - 0.012)) for d, e, w, f, b, t in [(0.056, 0.024, 0.0024, 0.004, 0.011, 0.004), (0.05, 0.03, 0.002, 0.003, 0.012, 0.003), (0.08, 0.02, 0.003, 0.005, 0.01, 0.004)]]
json.dump(
    dict(program=f"scipy {scipy.__version__}", tubes=tubes, bends=bends, flares=flares, depth=depth, widening=widening, places=places, ellipse=ellipse, exponential=exponential, boxes=boxes, windows=windows, shear=shear, gaskets=gaskets, discs=discs, cups=cups),
    open(os.path.join(here, "solids.json"), "w"),
    indent=1,
)
