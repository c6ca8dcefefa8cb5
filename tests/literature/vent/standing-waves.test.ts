import { standardAir } from '@airspring/core/air';
import { type Radiation, unflanged, unflangedRadiation, withoutLoss } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { standingWaves } from '@airspring/core/vent';
import { checkIn } from '../../ledger/check.js';
import relations from '../duct/relations.json' with { type: 'json' };
import { tubeAir as warm } from '../tube-air.js';

const m = (value: number) => si('length', value);
const air = { ...standardAir, speedOfSound: si('speed', 343.2) };
const check = checkIn(air);
/** Constants at 300 K. */
const nothing: Radiation = Object.assign((_o: unknown, _k: number, out: Float64Array) => void out.fill(0), {
  sources: ['own'],
});

const first = (a: number, L: number) =>
  standingWaves({ vent: { diameter: m(2 * a), length: m(L), innerEnd: unflanged }, most: 1 }, air)[0]!;
const shapes = {
  L: { value: [0.15, 0.2, 0.3, 0.12], unit: 'm' },
  a: { value: [0.0375, 0.05, 0.05, 0.025], unit: 'm' },
} as const;

check('vent.standing.frequency', {
  formula: 'vent/standingWaves',
  source: {
    key: 'levine1948',
    locator: 'k(L + Δℓ) = π with the exact ends at that ka, interpolated; the flush end as of norris1989',
  },
  status: 'derived',
  kind: 'table',
  given: shapes,
  got: ({ L, a }) => first(a, L).frequency,
  expected: [866.0788988, 649.5591741, 467.2505657, 1122.6768626],
  unit: 'Hz',
  tolerance: {
    relative: 0.003,
    why: 'the walls slow the wave by up to 0.2 %; an end as a mass is kΔℓ for its tangent',
  },
});

check('vent.standing.low-frequency-ends', {
  formula: 'vent/standingWaves',
  source: {
    key: 'rayleigh1896',
    locator: 'open tubes, ends of low frequency: c/(2(L + 1.4349 a)) for one flush and one free end',
  },
  status: 'derived',
  kind: 'identity',
  given: shapes,
  got: ({ L, a }) => first(a, L).frequency,
  expected: [841.9658135, 631.4743602, 461.6067466, 1100.899774],
  unit: 'Hz',
  tolerance: { relative: 0.03, why: 'at ka = 0.59 the true ends are 9 % shorter than those of low frequency' },
});

const free = { innerEnd: unflanged, outerEnd: unflanged };
const radiating = { innerRadiation: unflangedRadiation, outerRadiation: unflangedRadiation };
const open = (a: number, L: number) =>
  standingWaves(
    { vent: { diameter: m(2 * a), length: m(L), ...free }, ...radiating, walls: withoutLoss, most: 1 },
    air,
  )[0]!;

check('vent.standing.radiation', {
  formula: 'vent/standingWaves',
  source: { key: 'fletcher1998', locator: 'radiation resistance ρc(ka)²/4 of both free ends: Q = kL/(ka)² = π/(ka)²' },
  status: 'derived',
  kind: 'identity',
  given: { a: { value: [0.025, 0.025], unit: 'm' }, L: { value: [0.5, 5], unit: 'm' } },
  got: ({ a, L }) => open(a, L).Q,
  expected: [143.420423, 12969.76],
  unit: '1',
  tolerance: {
    relative: 0.035,
    why: 'first order in ka: at ka = 0.148 the exact resistance is 1.1 % lower, and its fit another 1.1 %',
  },
});

check('vent.standing.radiation.frequency', {
  formula: 'vent/standingWaves',
  source: { key: 'fletcher1998', locator: 'open tube with free ends, 0.6133 a each' },
  status: 'derived',
  kind: 'identity',
  given: { a: { value: [0.025], unit: 'm' }, L: { value: [0.5], unit: 'm' } },
  got: ({ a, L }) => open(a, L).frequency,
  expected: [323.3678498],
  unit: 'Hz',
  tolerance: { relative: 0.001, why: 'the ends are 0.5 % shorter at ka = 0.15, and they are 6 % of the whole' },
});

check('vent.standing.wall', {
  formula: 'vent/standingWaves',
  air: warm,
  source: {
    key: 'mpmath',
    locator:
      'quality factor of a pipe from its walls, β/(2α), by the exact line constants (fletcher1998); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.02, 0.02, 0.0375, 0.0375, 0.05, 0.075], unit: 'm' },
    f: { value: [30, 200, 200, 1000, 200, 30], unit: 'Hz' },
  },
  got: ({ a, f }) => {
    const vent = { diameter: m(2 * a), length: m(347.23 / (2 * f)), ...free };
    return standingWaves({ vent, innerRadiation: nothing, outerRadiation: nothing, most: 1 }, warm)[0]!.Q;
  },
  // β/(2α) at f; the resonance lies 1/(2Q) lower, and dβ/df is 1/(4Q) below β/f: together half a unit of Q.
  expected: relations['vent.standing.wall'].map((Q) => Q - 0.5),
  unit: '1',
  tolerance: { relative: 0.002, why: 'second order in 1/Q, 0.0014 at Q = 33' },
});
