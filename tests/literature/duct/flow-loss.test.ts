import { standardAir } from '@airspring/core/air';
import { lossesTogether, quadraticLoss, turbulentFriction, turbulentWall } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import fixtures from './flow-loss.json' with { type: 'json' };

const air = { ...standardAir, density: si('density', 1.2), viscosity: si('viscosity', 1.82e-5) };
const check = checkIn(air);
const { fundamental, friction, wall } = fixtures;
const program = { key: 'scipy', locator: 'quadrature and roots of the definitions; script flow-loss.py' };

check('duct.quadratic-loss.fundamental', {
  formula: 'duct/quadraticLoss',
  source: program,
  status: 'derived',
  kind: 'program',
  given: {
    out: { value: fundamental.out, unit: '1' },
    into: { value: fundamental.into, unit: '1' },
    u: { value: fundamental.u, unit: 'm/s' },
  },
  got: ({ out, into, u }) =>
    quadraticLoss({ outward: si('ratio', out), inward: si('ratio', into) }).resistance(u, 30, air),
  expected: fundamental.r,
  unit: 'Pa·s/m',
  tolerance: { relative: 1e-14, why: 'quadrature' },
});

check('duct.quadratic-loss.both-directions', {
  formula: 'duct/quadraticLoss',
  source: { key: 'ingard1967', locator: 'mean of the two half cycles: r = 4/(3π) ρ K u for K 0.75, u 10 m/s, ρ 1.2' },
  status: 'derived',
  kind: 'identity',
  given: { K: { value: 0.75, unit: '1' } },
  got: ({ K }) => {
    const { outward, inward } = quadraticLoss({ outward: si('ratio', (4 * K) / 3), inward: si('ratio', (2 * K) / 3) });
    return (4 / (3 * Math.PI)) * 1.2 * ((outward + inward) / 2) * 10;
  },
  expected: 3.81971863421,
  unit: 'Pa·s/m',
  tolerance: { relative: 1e-11, why: 'closed formula' },
});

check('duct.losses-together.sum', {
  formula: 'duct/lossesTogether',
  source: { ...program, locator: `${program.locator}; the fundamental of the sum of two pressures` },
  status: 'derived',
  kind: 'program',
  given: { u: { value: [5, 10], unit: 'm/s' } },
  got: ({ u }) => {
    const half = quadraticLoss({ outward: si('ratio', 0.25) });
    return lossesTogether([half, half]).resistance(u, 30, air);
  },
  expected: [fundamental.r[0]!, 2 * fundamental.r[0]!],
  unit: 'Pa·s/m',
  tolerance: { relative: 1e-14, why: 'quadrature' },
});

check('duct.turbulent-friction.implicit', {
  formula: 'duct/turbulentFriction',
  source: { key: 'colebrook1939', locator: 'implicit law, solved by scipy: script flow-loss.py' },
  status: 'derived',
  kind: 'program',
  given: {
    reynolds: { value: friction.reynolds, unit: '1' },
    rough: { value: friction.rough, unit: '1' },
  },
  got: ({ reynolds, rough }) => turbulentFriction(reynolds, rough),
  expected: friction.f,
  unit: '1',
  tolerance: { relative: 0.02, why: 'the explicit formula is a fit, within 2 %' },
});

check('duct.turbulent-wall.over-laminar', {
  formula: 'duct/turbulentWall',
  source: {
    key: 'colebrook1939',
    locator: 'fundamental by quadrature, with the laminar layer added: script flow-loss.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    u: { value: wall.u, unit: 'm/s' },
    f: { value: wall.f, unit: 'Hz' },
    d: { value: wall.d, unit: 'm' },
    L: { value: wall.L, unit: 'm' },
    laminar: { value: wall.laminar, unit: 'Pa·s/m' },
  },
  got: ({ u, f, d, L, laminar }) =>
    laminar + turbulentWall({ diameter: si('length', d), length: si('length', L) }).resistance(u, f, air),
  expected: wall.r,
  unit: 'Pa·s/m',
  tolerance: { relative: 0.02, why: 'the friction factor is a fit, within 2 %' },
});
