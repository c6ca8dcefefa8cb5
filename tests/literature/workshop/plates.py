"""Natural frequencies of panels by scipy, in two ways that share nothing with the package: writes plates.json beside this file.

Edges that are held in any way: Ritz with polynomials over the whole side. A line or a bar across a panel whose other two edges are
simply supported: the exact solution of Levy, a sine along the line and an equation of fourth order across it, solved by its four
exponentials. A line across a panel that is clamped all around: polynomials on both sides of it, joined in value and slope.
"""
import json
import os
import numpy
import scipy
from numpy.polynomial import Polynomial, legendre
from scipy.linalg import eigh, null_space
from scipy.optimize import brentq

here = os.path.dirname(os.path.abspath(__file__))


def stiffness(panel):
    e1, e2, g, nu, t = (panel[k] for k in ("along", "across", "shear", "nu", "thickness"))
    d1 = e1 * t**3 / 12 / (1 - nu**2 * e2 / e1)
    d2 = d1 * e2 / e1
    return d1, d2, nu * d2 + g * t**3 / 6


def ritz(panel, edges, count, degree=11):
    """Grain along x. The edges: left, right, bottom, top."""
    a, b = panel["length"], panel["width"]
    d1, d2, h = stiffness(panel)

    def matrices(ends, side):
        # Over -1 to 1: a factor with a simple or a double zero at either end, times Legendre polynomials.
        factor = Polynomial([1, 1]) ** (2 if ends[0] == "clamped" else 1) * Polynomial([1, -1]) ** (2 if ends[1] == "clamped" else 1)
        shapes = [factor * Polynomial(legendre.leg2poly([0] * n + [1])) for n in range(degree)]
        x, w = legendre.leggauss(degree + 8)
        of = lambda order: numpy.array([(s.deriv(order) if order else s)(x) for s in shapes])
        return [(of(o) * w) @ of(o).T * (2 / side) ** (2 * o) * side / 2 for o in (0, 1, 2)]

    mx, sx, cx = matrices(edges[:2], a)
    my, sy, cy = matrices(edges[2:], b)
    k = d1 * numpy.kron(cx, my) + d2 * numpy.kron(mx, cy) + 2 * h * numpy.kron(sx, sy)
    m = panel["density"] * panel["thickness"] * numpy.kron(mx, my)
    return (numpy.sqrt(eigh(k, m, eigvals_only=True)[:count]) / 2 / numpy.pi).tolist()


def levy(panel, ends, at, count, bar=None):
    """A bar, or a line that cannot move, across the side x; the edges along x are simply supported."""
    a, b = panel["length"], panel["width"]
    d1, d2, h = stiffness(panel)
    mass = panel["density"] * panel["thickness"]

    def condition(omega, n):
        """Of many frequencies at once: zero at a natural one."""
        k = n * numpy.pi / b
        # Four exponentials solve d1 X'''' - 2 h k² X'' + (d2 k⁴ - m ω²) X = 0. With them X and its three slopes are known anywhere.
        inner = numpy.sqrt((h * k**2) ** 2 - d1 * (d2 * k**4 - mass * omega**2) + 0j)
        of = [numpy.sqrt((h * k**2 + sign * inner) / d1 + 0j) for sign in (1, -1)]
        s = numpy.stack([of[0], -of[0], of[1], -of[1]], axis=-1)
        vander = numpy.stack([s**o for o in range(4)], axis=-2)
        back = numpy.linalg.inv(vander)
        over = lambda x: ((vander * numpy.exp(s * x)[..., None, :]) @ back).real
        start = numpy.eye(4)[:, [1, 3] if ends[0] == "simple" else [2, 3]]
        out = [0, 2] if ends[1] == "simple" else [0, 1]
        to_line, rest = over(at) @ start, over(a - at)
        if bar is None:
            jump = numpy.broadcast_to(numpy.array([[0], [0], [0], [1.0]]), to_line.shape[:-1] + (1,))
            end = rest @ numpy.concatenate([to_line, jump], axis=-1)
            last = numpy.concatenate([to_line[..., :1, :], numpy.zeros(to_line.shape[:-2] + (1, 1))], axis=-1)
            system = numpy.concatenate([end[..., out, :], last], axis=-2)
        else:
            area = bar["depth"] * bar["thickness"]
            push = panel["along"] * area * bar["depth"] ** 2 / 12 * k**4 - panel["density"] * area * omega**2
            pushed = to_line.copy()
            pushed[..., 3, :] -= (push / d1)[..., None] * to_line[..., 0, :]
            system = (rest @ pushed)[..., out, :]
        # Rows and columns of one size, so that only the sign is left to see.
        system = system / numpy.linalg.norm(system, axis=-2, keepdims=True)
        return numpy.linalg.det(system / numpy.linalg.norm(system, axis=-1, keepdims=True))

    roots = []
    least = numpy.pi**2 / a**2 * numpy.sqrt(d1 / mass)
    for n in range(1, 4):
        grid = numpy.linspace(0.02, 50, 4001) * least
        values = condition(grid, n)
        for i in numpy.nonzero(values[1:] * values[:-1] < 0)[0]:
            root = brentq(lambda omega: float(condition(numpy.array(omega), n)), grid[i], grid[i + 1], xtol=1e-9, rtol=1e-13)
            # A jump of sign is no zero.
            if abs(float(condition(numpy.array(root), n))) < 1e-6:
                roots.append(root)
    return (numpy.array(sorted(roots)[:count]) / 2 / numpy.pi).tolist()


def clamped_with_line(panel, at, count, degree=13):
    """Clamped all around, with a line across x: polynomials on both sides of it, joined in value (zero) and slope."""
    a, b = panel["length"], panel["width"]
    d1, d2, h = stiffness(panel)

    def pieces(side):
        x, w = legendre.leggauss(degree + 4)
        shapes = [Polynomial(legendre.leg2poly([0] * n + [1])) for n in range(degree)]
        of = lambda order: numpy.array([(s.deriv(order) if order else s)(x) for s in shapes])
        return [(of(o) * w) @ of(o).T * (2 / side) ** (2 * o) * side / 2 for o in (0, 1, 2)], shapes

    def ends(shapes, side, end):
        return numpy.array([[s(end) for s in shapes], [s.deriv()(end) * 2 / side for s in shapes]])

    (left, shapes), (right, _) = pieces(at), pieces(a - at)
    zero = numpy.zeros((2, degree))
    joined = numpy.vstack([
        numpy.hstack([ends(shapes, at, -1), zero]),
        numpy.hstack([zero, ends(shapes, a - at, 1)]),
        numpy.hstack([ends(shapes, at, 1)[:1], zero[:1]]),
        numpy.hstack([zero[:1], ends(shapes, a - at, -1)[:1]]),
        numpy.hstack([ends(shapes, at, 1)[1:], -ends(shapes, a - at, -1)[1:]]),
    ])
    z = null_space(joined)
    mx, sx, cx = [z.T @ scipy.linalg.block_diag(l, r) @ z for l, r in zip(left, right)]
    whole, shapes = pieces(b)
    z = null_space(numpy.vstack([ends(shapes, b, -1), ends(shapes, b, 1)]))
    my, sy, cy = [z.T @ one @ z for one in whole]
    k = d1 * numpy.kron(cx, my) + d2 * numpy.kron(mx, cy) + 2 * h * numpy.kron(sx, sy)
    m = panel["density"] * panel["thickness"] * numpy.kron(mx, my)
    return (numpy.sqrt(eigh(k, m, eigvals_only=True)[:count]) / 2 / numpy.pi).tolist()


fibre = dict(along=3e9, across=3e9, nu=0.25, shear=3e9 / 2.5, density=730, thickness=0.018)
birch = dict(along=10e9, across=7e9, nu=0.1, shear=0.62e9, density=685, thickness=0.012)
chip = dict(along=1.6e9, across=1.6e9, nu=0.25, shear=1.6e9 / 2.5, density=650, thickness=0.016)
held = [["simple"] * 4, ["clamped"] * 4, ["clamped", "simple", "simple", "simple"], ["clamped", "clamped", "simple", "simple"], ["clamped", "simple", "clamped", "simple"]]
panels = [dict(fibre, length=0.4, width=0.3), dict(birch, length=0.35, width=0.5), dict(chip, length=0.6, width=0.24)]
plain = [dict(panel=p, edges=e, frequencies=ritz(p, e, 4)) for p in panels for e in held]
lines = [dict(panel=p, ends=e, at=c * p["length"], frequencies=levy(p, e, c * p["length"], 3)) for p in panels for e, c in [(["simple", "simple"], 0.5), (["simple", "simple"], 0.4), (["clamped", "simple"], 0.55)]]
bars = [dict(panel=p, ends=["simple", "simple"], at=c * p["length"], bar=dict(depth=d, thickness=0.018), frequencies=levy(p, ["simple", "simple"], c * p["length"], 3, dict(depth=d, thickness=0.018))) for p in panels for c, d in [(0.5, 0.03), (0.4, 0.06)]]
clamped = [dict(panel=p, at=c * p["length"], frequencies=clamped_with_line(p, c * p["length"], 3)) for p in panels for c in (0.5, 0.42)]


def best(panel, ends):
    """Where a line that cannot move lifts the first frequency most."""
    without = ritz(panel, ends + ["simple"] * 2, 1)[0]
    found = scipy.optimize.minimize_scalar(lambda c: -levy(panel, ends, c, 1)[0], bounds=(0.3 * panel["length"], 0.7 * panel["length"]), method="bounded", options=dict(xatol=2e-5))
    return dict(panel=panel, ends=ends, at=found.x, frequency=-found.fun, without=without)


upright = dict(fibre, length=0.3, width=0.4)
bests = [best(upright, ["simple", "simple"]), best(panels[0], ["simple", "simple"]), best(panels[0], ["clamped", "simple"]), best(panels[2], ["clamped", "simple"])]
json.dump(dict(program=f"scipy {scipy.__version__}", plain=plain, lines=lines, bars=bars, clamped=clamped, bests=bests), open(os.path.join(here, "plates.json"), "w"), indent=1)
