/** Planted liars of the seams besides families, each found by the law that is named for it. */
import {
  conicalProfile,
  flanged,
  type LineSection,
  type Opening,
  type Profile,
  pistonRadiation,
  type Radiation,
  roundSection,
  unflanged,
} from '@airspring/core/duct';
import { systemOf, ventedFamily } from '@airspring/core/enclosure';
import { butterworthShape, type Filter, highPass, lowPass } from '@airspring/core/filter';
import {
  endCorrectionLaws,
  filterLaws,
  lawElementLaws,
  limitLaws,
  lineSectionLaws,
  profileLaws,
  radiationLaws,
} from '@airspring/core/laws';
import { type Limit, travelLimit } from '@airspring/core/limit';
import { type Law, losslessLine } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import { describe, expect, test } from 'vitest';
import { brokenLaws, driver, vented } from './boxes.js';

describe('end corrections', () => {
  const end = (f: (o: Opening, k: number) => number, sources = ['own']) =>
    Object.assign((o: Opening, k: number) => f(o, k), { sources });
  let calls = 0;
  test.each([
    ['always ten millimetres', 'a length that scales with the size', end(() => 0.01)],
    ['negative', 'finite and not negative', end(({ radius }) => -radius)],
    [
      'diameter for radius',
      'a length within the bounds of the literature',
      end((o, k) => unflanged({ radius: 2 * o.radius }, k)),
    ],
    [
      'radius for diameter',
      'a length within the bounds of the literature',
      end((o, k) => flanged({ radius: o.radius / 2 }, k)),
    ],
    ['140 radii', 'a length within the bounds of the literature', end(({ radius }) => 140 * radius)],
    ['none at k = 0', 'smooth toward long waves', end(({ radius }, k) => (k === 0 ? 0 : radius))],
    [
      '2 % more above ka = 0.7',
      'no jump over frequency',
      end((o, k) => flanged(o, k) * (k * o.radius > 0.7 ? 1.02 : 1)),
    ],
    ['other at each call', 'the same answer twice', end((o, k) => flanged(o, k) * (1 + 1e-9 * ++calls))],
    ['nobody', 'sources named', end(flanged, [])],
  ] as const)('%s: %s', (_, law, liar) => {
    expect(brokenLaws(endCorrectionLaws(liar))).toContain(law);
  });
});

test('an end correction 2 % too long shows beside a length that is known', () => {
  const liar = Object.assign((o: Opening, k: number) => 1.02 * flanged(o, k), { sources: ['own'] });
  const known = [{ opening: { radius: 0.05 }, k: 0, length: 0.04108 }];
  expect(brokenLaws(endCorrectionLaws(liar))).toEqual([]);
  expect(brokenLaws(endCorrectionLaws(liar, { known }))).toEqual(['agrees with known values']);
  expect(brokenLaws(endCorrectionLaws(flanged, { known }))).toEqual([]);
});

describe('radiations', () => {
  const lying = (change: (out: Float64Array, ka: number) => void, scale = 1): Radiation =>
    Object.assign(
      ({ radius }: Opening, k: number, out: Float64Array) => {
        pistonRadiation({ radius: scale * radius }, k, out);
        change(out, k * radius);
      },
      { sources: ['own'] },
    );
  const put = (out: Float64Array, place: number, by: number) => {
    out[place] = by * out[place]!;
  };
  test.each([
    ['diameter for radius', 'the power of a point source at long waves', lying(() => {}, 2)],
    ['2 % too much resistance', 'the power of a point source at long waves', lying((out) => put(out, 0, 1.02))],
    ['twice the mass', 'a mass at long waves', lying((out) => put(out, 1, 2))],
    ['a spring', 'a mass at long waves', lying((out) => put(out, 1, -1))],
    ['power from outside above ka = 2', 'gives out no power', lying((out, ka) => ka > 2 && put(out, 0, -1))],
    ['2 % more above ka = 0.7', 'no jump over frequency', lying((out, ka) => ka > 0.7 && put(out, 1, 1.02))],
    [
      'one number only',
      'finite, and both numbers filled',
      Object.assign(
        (_: Opening, __: number, out: Float64Array) => {
          out[0] = 0;
        },
        { sources: ['own'] },
      ),
    ],
    [
      'a length of its own',
      'a function of ka alone',
      Object.assign((_: Opening, k: number, out: Float64Array) => pistonRadiation({ radius: 0.05 }, k, out), {
        sources: ['own'],
      }),
    ],
  ] as const)('%s: %s', (_, law, liar) => {
    expect(brokenLaws(radiationLaws(liar))).toContain(law);
  });
  test('2 % too much mass shows beside its end correction', () => {
    const liar = lying((out) => put(out, 1, 1.02));
    expect(brokenLaws(radiationLaws(liar))).toEqual([]);
    expect(brokenLaws(radiationLaws(liar, { end: flanged }))).toEqual(['a mass at long waves']);
  });
});

describe('sections', () => {
  const honest = roundSection({ diameter: '75 mm' });
  const layer = (change: (out: Float64Array) => void): LineSection => ({
    ...honest,
    layer: (s, out) => {
      honest.layer(s, out);
      change(out);
    },
  });
  const wide = roundSection({ diameter: '150 mm' });
  const narrow = roundSection({ diameter: '37.5 mm' });
  test.each([
    ['diameter for radius in the area', 'an area within its width', { ...honest, area: wide.area }],
    ['radius for diameter in the width', 'an area within its width', { ...honest, width: 0.0375 }],
    ['the cut-on of ka', 'the first wave across the section', { ...honest, cutOn: honest.cutOn / 2 }],
    ['the cut-on 2 % too late', 'the first wave across the section', { ...honest, cutOn: 1.02 * honest.cutOn }],
    ['the layer of twice the radius', 'a thin layer follows the perimeter', { ...honest, layer: wide.layer }],
    [
      'the layer of a radius 2 % too small',
      'a thin layer follows the perimeter',
      { ...honest, layer: roundSection({ diameter: '73.5 mm' }).layer },
    ],
    ['the layer of half the radius', 'a thin layer follows the perimeter', { ...honest, layer: narrow.layer }],
    [
      'the other sign of time',
      'walls take power',
      layer((out) => {
        out[1] = -out[1]!;
        out[3] = -out[3]!;
      }),
    ],
    [
      'F and 1 − F exchanged',
      'a thick layer fills the section',
      layer((out) => out.set([...out.subarray(2), ...out.subarray(0, 2)])),
    ],
    [
      '1 − F 2 % off',
      'F and 1 − F add up to one',
      layer((out) => {
        out[2] = 1.02 * out[2]!;
      }),
    ],
  ] as const)('%s: %s', (_, law, liar) => {
    expect(brokenLaws(lineSectionLaws(liar))).toContain(law);
  });
});

describe('profiles', () => {
  const honest = conicalProfile({ innerDiameter: '60 mm', outerDiameter: '90 mm', length: '15 cm' });
  const { radius } = honest;
  test.each<[string, string, Profile]>([
    [
      'a step that no joint tells',
      'no jump except at a joint',
      { ...honest, radius: (x) => radius(x) * (x > 0.1 ? 1.02 : 1) },
    ],
    ['closed at its end', 'a radius everywhere', { ...honest, radius: (x) => 0.03 * (1 - x / 0.15) }],
    ['joints in another unit', 'joints rise within it', { ...honest, joints: [100] }],
    ['no length', 'a length', { ...honest, length: 0 }],
  ])('%s: %s', (_, law, liar) => {
    expect(brokenLaws(profileLaws(liar))).toContain(law);
  });
});

describe('limits', () => {
  const system = systemOf(ventedFamily, vented);
  const [honest] = travelLimit({ ...driver, Xmax: si('displacementPeak', 0.008) }) as [Limit];
  const laws = (limit: Limit) => limitLaws(limit, { system });
  test.each<[string, string, Limit]>([
    ['no such probe', 'its probe is there', { ...honest, probe: 'velocityOfCone' }],
    ['without a number', 'a number above zero', { ...honest, greatestRms: Number.POSITIVE_INFINITY }],
    ['below zero', 'a number above zero', { ...honest, greatestRms: -1 }],
    ['the drive as travel', 'its probe is there', { name: 'drive', integrated: true, greatestRms: 1, basis: 'own' }],
    ['of a number of another box', 'its exponents are of numbers that are there', { ...honest, exponents: { R: -1 } }],
    ['without a word why', 'has a name and a basis', { ...honest, basis: '' }],
  ])('%s: %s', (_, law, liar) => {
    expect(brokenLaws(laws(liar))).toContain(law);
  });
  test('peak for rms, or a velocity for a travel, shows beside a drive that is known', () => {
    // Below all resonances suspension and force alone stand against each other: x = Bl e/(Re + Rg) · Cms, the vent open.
    const frequency = 0.05;
    const driveVoltageRms = (0.008 / Math.SQRT2 / driver.Cms / driver.Bl) * (5.6 + 0.2);
    const known = (limit: Limit) => brokenLaws(limitLaws(limit, { system, reached: [{ frequency, driveVoltageRms }] }));
    expect(known(honest)).toEqual([]);
    expect(known({ ...honest, greatestRms: 0.008 })).toEqual(['agrees with known values']);
    expect(known({ ...honest, greatestRms: 1.02 * honest.greatestRms })).toEqual(['agrees with known values']);
    expect(known({ ...honest, integrated: false })).toEqual(['agrees with known values']);
  });
});

describe('filters', () => {
  const honest = highPass(butterworthShape(4), '24 Hz');
  const { numerator, denominator } = honest;
  test.each<[string, string, Filter]>([
    ['descending powers', 'a gain of one far above its corner', { ...honest, numerator: [...numerator].reverse() }],
    ['a low-shelf for a high-pass', 'silent far below its corner', { ...honest, numerator: [...denominator] }],
    ['a high-pass for a low-pass', 'silent far above its corner', { ...honest, kind: 'low-pass' }],
    [
      'a low-pass for a shelf',
      'a gain of one far above its corner',
      { ...lowPass(butterworthShape(2), '24 Hz'), kind: 'shelf' },
    ],
    ['2 % too loud', 'a gain of one far above its corner', { ...honest, numerator: numerator.map((b) => 1.02 * b) }],
    ['unstable', 'stable', { ...honest, denominator: denominator.map((a, i) => (i === 1 ? -a : a)) }],
    ['no plain record', 'survives JSON', { ...honest, corner: () => 24 } as Filter],
  ])('%s: %s', (_, law, liar) => {
    expect(brokenLaws(filterLaws(liar))).toContain(law);
  });
});

describe('elements over frequency', () => {
  const eddy: Law = {
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
        im[i] = size * Math.sin((n * Math.PI) / 2);
      });
    },
  };
  const values = [0.02, 0.7];
  test('an honest semi-inductance', () => {
    expect(brokenLaws(lawElementLaws(eddy, { values }))).toEqual([]);
  });
  test('its slots exchanged: a power above one gives power', () => {
    expect(brokenLaws(lawElementLaws(eddy, { values: [0.7, 1.02] }))).toEqual(['gives out no power']);
  });
  test('a value too many, values changed', () => {
    expect(brokenLaws(lawElementLaws(eddy, { values: [...values, 1] }))).toContain('as many values as parameters');
    const fill: Law['fill'] = (all, at, ...rest) => {
      eddy.fill(all, at, ...rest);
      all[at] = 1.02 * all[at]!;
    };
    const found = brokenLaws(lawElementLaws({ ...eddy, fill }, { values }));
    expect(found).toContain('changes nothing that it reads');
  });
  test('a line that is reciprocal only below 4 kHz', () => {
    const honest = losslessLine('duct', ['box', 'ground']);
    const liar: typeof honest = {
      ...honest,
      fill: (all, at, frequencies, out) => {
        honest.fill(all, at, frequencies, out);
        frequencies.forEach((f, i) => {
          if (f > 4000) out.D.re[i] = 1.02 * out.D.re[i]!;
        });
      },
    };
    expect(brokenLaws(lawElementLaws(liar, { values: [2e5, 0.001] }))).toContain('reciprocal');
  });
});
