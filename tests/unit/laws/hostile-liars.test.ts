/** Lies that look honest from where a law usually looks: in one shape alone, between two ends, in another medium, in what is chosen. */
import { standardAir } from '@airspring/core/air';
import { logarithmicCreep, lossyInductor } from '@airspring/core/driver';
import {
  finiteFlange,
  type Opening,
  pistonRadiation,
  quadraticLoss,
  roundSection,
  unflanged,
} from '@airspring/core/duct';
import {
  aperiodicFamily,
  closedFamily,
  type Family,
  fourthOrderBandPassFamily,
  parallelBandPassFamily,
  seriesBandPassFamily,
  systemOf,
  ventedFamily,
} from '@airspring/core/enclosure';
import {
  endCorrectionLaws,
  type FamilyTrial,
  flowLossLaws,
  lawElementLaws,
  lineSectionLaws,
  radiationLaws,
} from '@airspring/core/laws';
import { compile, type Law, losslessLine, type Outlet } from '@airspring/core/network';
import { respond } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { brokenLaws, brokenUpTo, closed, driver, rescaledVented, vented } from './boxes.js';
import { trials } from './more-boxes.js';

const sources = ['own'];

describe('elements over frequency', () => {
  const eddy = (sign: 1 | -1): Law => ({
    kind: 'law',
    name: 'eddy',
    nodes: ['coil', 'ground'],
    stands: 'impedance',
    parameters: ['K', 'n'],
    fill: (values, at, frequencies, { re, im }) => {
      const [K, n] = [values[at]!, values[at + 1]!];
      frequencies.forEach((f, i) => {
        const size = K * (2 * Math.PI * f) ** n;
        re[i] = size * Math.cos((n * Math.PI) / 2);
        im[i] = sign * size * Math.sin((n * Math.PI) / 2);
      });
    },
  });
  test('the other sign of time: exp(−jωt)', () => {
    expect(brokenLaws(lawElementLaws(eddy(1), { values: [0.02, 0.7] }))).toEqual([]);
    expect(brokenLaws(lawElementLaws(eddy(-1), { values: [0.02, 0.7] }))).toEqual(['its phase follows its size']);
  });
  test('the other sign of time in a line', () => {
    const honest = losslessLine('duct', ['box', 'ground']);
    const liar: typeof honest = {
      ...honest,
      fill: (values, at, frequencies, out) => {
        honest.fill(values, at, frequencies, out);
        for (const { im } of [out.B, out.C]) im.forEach((value, i) => (im[i] = -value));
      },
    };
    expect(brokenLaws(lawElementLaws(liar, { values: [2e5, 0.001] }))).toEqual([
      'a mass where it is open, a spring where it is shut',
    ]);
  });
});

test.each([
  ['140 radii beside a wall', (o: Opening, k: number) => (o.wall ? 140 * o.radius : unflanged(o, k))],
  [
    'diameter for radius in a flange',
    (o: Opening, k: number) =>
      finiteFlange(o.flangeRadius ? { radius: 2 * o.radius, flangeRadius: 2 * o.flangeRadius } : o, k),
  ],
])('an end correction: %s', (_, end) => {
  const liar = Object.assign((o: Opening, k: number) => end(o, k), { sources });
  expect(brokenLaws(endCorrectionLaws(liar))).toEqual(['a length within the bounds of the literature']);
});

test('a radiation that is 2 % more above ka = 3', () => {
  const liar = Object.assign(
    (opening: Opening, k: number, out: Float64Array) => {
      pistonRadiation(opening, k, out);
      if (k * opening.radius > 3) out[0] = 1.02 * out[0]!;
    },
    { sources },
  );
  expect(brokenLaws(radiationLaws(liar))).toEqual(['no jump over frequency']);
});

test('a section whose layer is 2 % more between thick and thin', () => {
  const honest = roundSection({ diameter: '75 mm' });
  const layer = (s: number, out: Float64Array) => {
    honest.layer(s, out);
    if (s < 100 || s > 3000) return;
    const [re, im] = [1.02 * out[0]!, 1.02 * out[1]!];
    out.set([re, im, 1 - re, -im]);
  };
  expect(brokenLaws(lineSectionLaws({ ...honest, layer }))).toEqual(['no jump between layers']);
});

describe('losses of flow', () => {
  const honest = quadraticLoss({ outward: 1.5 });
  test('that of one day, whatever the air', () => {
    const resistance: typeof honest.resistance = (speed, frequency) => honest.resistance(speed, frequency, standardAir);
    expect(brokenLaws(flowLossLaws({ ...honest, resistance }))).toEqual(['follows the air']);
  });
  test('more above 20 Hz', () => {
    const resistance: typeof honest.resistance = (speed, frequency, air) =>
      honest.resistance(speed, frequency, air) * (frequency > 20 ? 1.02 : 1);
    expect(brokenLaws(flowLossLaws({ ...honest, resistance }))).toEqual(['does not jump over frequency']);
  });
});

describe('families', () => {
  type Vented = typeof ventedFamily;
  const { unknowns = [] } = ventedFamily;
  const late = (outlet: Outlet) => (outlet.name === 'vent' ? { ...outlet, delay: 'late' } : outlet);
  const [volume, tuning] = unknowns;
  test.each<[string, string, Vented]>([
    [
      'a vent that is a millisecond late in any air',
      'delays follow the speed of sound',
      {
        ...ventedFamily,
        topology: (spec) => {
          const topology = ventedFamily.topology(spec);
          return { ...topology, outlets: topology.outlets.map(late) };
        },
        values: (spec, air, set) => {
          ventedFamily.values(spec, air, set);
          set('late', 1e-3);
        },
      },
    ],
    [
      'it chooses a field that no spec has',
      'what an alignment chooses is there, and matters',
      { ...ventedFamily, unknowns: [{ ...volume!, field: 'volume' }] },
    ],
    [
      'it chooses what plays no part',
      'what an alignment chooses is there, and matters',
      {
        ...ventedFamily,
        values: (spec, air, set) => ventedFamily.values({ ...spec, fb: vented.fb as never }, air, set),
      },
    ],
    [
      'the units of two unknowns exchanged',
      'what an alignment chooses has its unit',
      {
        ...ventedFamily,
        unknowns: [
          { ...volume!, unit: tuning!.unit },
          { ...tuning!, unit: volume!.unit },
        ],
      },
    ],
    [
      'a search that begins at nothing',
      'what an alignment chooses is there, and matters',
      { ...ventedFamily, unknowns: [{ ...tuning!, starts: [0] }] },
    ],
    ['the tuning as a loss', 'its losses are there, and matter', { ...ventedFamily, losses: ['fb'] }],
  ])('%s: %s', (_, law, family) => {
    expect(brokenUpTo(law, { family, spec: vented, rescaled: rescaledVented })).toContain(law);
  });
  test('it changes what it reads', () => {
    const family: Vented = {
      ...ventedFamily,
      read: (input) => {
        (input as { QL?: number }).QL = 8;
        return ventedFamily.read(input);
      },
    };
    const law = 'leaves what it reads alone';
    expect(brokenUpTo(law, { family, spec: { ...vented } })).toContain(law);
  });
  const scaled = <Spec, Input>(family: Family<Spec, Input>, slot: string, place = 0): Family<Spec, Input> => ({
    ...family,
    values: (spec, air, set) =>
      family.values(spec, air, (name, ...numbers) =>
        set(name, ...numbers.map((x, i) => (name === slot && i === place ? 1.02 * x : x))),
      ),
  });
  const model = 'the network has the numbers of the driver';
  const modelled = {
    ...closed,
    drivers: {
      ...driver,
      coil: lossyInductor({ K: 0.02, exponent: 0.7 }),
      suspension: logarithmicCreep({ lambda: 0.08, at: '27 Hz' }),
    },
  };
  test.each([
    ['coil', 0],
    ['coil', 1],
    ['suspension', 1],
    ['suspension', 2],
  ] as const)('2 % more in the %s, number %i', (slot, place) => {
    const family = { ...scaled(closedFamily, slot, place), compile };
    expect(brokenUpTo(model, { family, spec: modelled })).toContain(model);
  });
  const told = 'tuning and losses are as stated';
  const found = <Spec, Input>(
    family: Family<Spec, Input>,
    slot: string,
    trial: Omit<FamilyTrial<Spec, Input>, 'family'>,
  ) => brokenUpTo(told, { ...trial, family: scaled(family, slot) });
  test.each(['vent front', 'ventLoss front', 'leak front', 'absorption rear', 'leak rear'])(
    'a band-pass with 2 %% more of %s',
    (slot) => {
      expect(found(fourthOrderBandPassFamily, slot, trials.fourth)).toContain(told);
    },
  );
  test.each([parallelBandPassFamily, seriesBandPassFamily])('$name with a rear vent 2 % too heavy', (family) => {
    expect(found(family, 'vent rear', trials.sixth)).toContain(told);
  });
  test('a resistance of a vent 2 % too great shows beside a level that is known', () => {
    const { spec } = trials.aperiodic;
    const frequency = 20;
    const perVolt = respond(systemOf(aperiodicFamily, spec), [frequency]).airSpeedPeak![0]! / Math.SQRT2;
    const trial = { spec, known: [{ probe: 'ventAirSpeed', frequency, perVolt }] };
    expect(brokenUpTo('agrees with known values', { ...trial, family: aperiodicFamily })).toEqual([]);
    expect(brokenUpTo('agrees with known values', { ...trial, family: scaled(aperiodicFamily, 'vent') })).toEqual([
      'agrees with known values',
    ]);
  });
});
