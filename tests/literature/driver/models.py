"""Impedances of coil models and compliances of suspension models, with their slopes, to 40 digits.

Run: python3 tests/literature/driver/models.py > tests/literature/driver/models.json
The formulas are written as in the sources, over complex s = jω; slopes are numerical derivatives of these.
Creep is transformed from time: under a lasting force the compliance grows by λ Cms in each decade of time.
"""

import json

from mpmath import diff, euler, exp, inf, log, mp, mpc, mpf, pi, quad, sqrt

mp.dps = 40


def transformed(growth, s):
    """s ∫ growth(t) exp(-st) dt, along t = u/s."""
    return quad(lambda u: growth(u / s) * exp(-u), [0, 1, 10, inf])


COILS = {
    'lossyInductor': (
        ('K', 'exponent'),
        lambda s, K, n: K * s**n,
        [(0.02, 0.7), (0.01, 0.5), (0.001, 1.0), (0.05, 0.6)],
    ),
    'fourParameterInductor': (
        ('Kr', 'Xr', 'Ki', 'Xi'),
        lambda s, Kr, Xr, Ki, Xi: Kr * (s / 1j) ** Xr + 1j * Ki * (s / 1j) ** Xi,
        [(0.0022, 0.75, 0.0048, 0.76), (0.003, 0.8, 0.02, 0.66)],
    ),
    'semiInductor': (
        ('Leb', 'Le', 'K', 'Rss'),
        lambda s, Leb, Le, K, Rss: s * Leb + 1 / (1 / (s * Le) + 1 / (K * sqrt(s)) + 1 / Rss),
        [(1e-4, 1e-3, 0.03, 50.0), (5e-5, 2e-3, 0.06, 200.0)],
    ),
    # A limit of the same circuit: a semi-inductance alone.
    'semiInductorAlone': (
        ('Leb', 'Le', 'K', 'Rss'),
        lambda s, Leb, Le, K, Rss: K * sqrt(s),
        [(0.0, 1e3, 0.02, 1e9), (0.0, 1e3, 0.05, 1e9)],
    ),
    'inductor': (('Le',), lambda s, Le: s * Le, [(9e-4,), (2e-4,)]),
    'lr2Inductor': (
        ('Le', 'R2', 'L2'),
        lambda s, Le, R2, L2: s * Le + s * L2 * R2 / (R2 + s * L2),
        [(3e-4, 6.0, 8e-4), (1e-4, 20.0, 1.5e-3)],
    ),
}
SUSPENSIONS = {
    'logarithmicCreep': (
        ('lambda', 'frequency'),
        # Euler's constant puts the real part at Cms where the frequency is f0.
        lambda s, lam, f0: transformed(lambda t: 1 + lam * (log(2 * pi * f0 * t) + euler) / log(10), s),
        [(0.037, 27.0), (0.05, 40.0), (0.1, 27.0), (0.102, 33.0), (0.15, 60.0)],
    ),
    'hystereticDamping': (('lossFactor',), lambda s, eta: 1 / (1 + 1j * eta), [(0.05,), (0.2,)]),
}


def cases(models, frequencies):
    for name, (parameters, formula, sets) in models.items():
        for given in sets:
            numbers = [mpf(x) for x in given]
            for f in frequencies:
                w = 2 * pi * f
                at = lambda w, *p: mpc(formula(mpc(0, 1) * w, *p))
                slopes = [w * diff(lambda x: at(x, *numbers), w)]
                for k in range(len(numbers)):
                    slopes.append(diff(lambda x: at(w, *numbers[:k], x, *numbers[k + 1 :]), numbers[k]))
                yield {
                    'model': name,
                    'parameters': dict(zip(parameters, given)),
                    'f': f,
                    'value': pair(at(w, *numbers)),
                    'slopes': [pair(one) for one in slopes],
                }


def pair(z):
    return [float(z.real), float(z.imag)]


print(
    json.dumps(
        {
            'made': 'models.py with mpmath 1.3.0, 40 digits; parameters invented, but for set 1 of the four parameters',
            'coils': list(cases(COILS, [20, 200, 1000, 5000, 20000])),
            'suspensions': list(cases(SUSPENSIONS, [0.5, 5, 27, 54, 400])),
        },
        indent=1,
    )
)
