/** Shapes of filters, shelves and pole shifts, against a numeric library and against tables of sections. */
import {
  besselShape,
  butterworthShape,
  chebyshevShape,
  denominatorOfMagnitude,
  type Filter,
  type FilterShape,
  filterLevel,
  highPass,
  legendreShape,
  linkwitzRileyShape,
  lowPass,
  poleShift,
  sectionsOf,
  shapeByQ,
  shelf,
} from '@airspring/core/filter';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import tables from '../numeric/printed-poles.json' with { type: 'json' };
import { scipy } from './fixtures.js';
import fixtures from './shapes.json' with { type: 'json' };

const grid = frequencyGrid(fixtures.frequencies);
const levels = (filter: Filter) => filterLevel(filter, grid);
const hertz = (f: number) => si('frequency', f);
const perSecond = hertz(1 / (2 * Math.PI)); // 1 rad/s
const f = { value: String(fixtures.frequencies), unit: 'Hz' };
const rounding = (absolute: number) => ({ absolute, why: 'double precision on both sides, levels down to −200 dB' });

const shapes: Record<string, readonly [name: string, make: (order: number, ripple: number) => FilterShape]> = {
  butterworth: ['butterworthShape', butterworthShape],
  bessel: ['besselShape', besselShape],
  legendre: ['legendreShape', legendreShape],
  'linkwitz-riley': ['linkwitzRileyShape', linkwitzRileyShape],
  chebyshev: ['chebyshevShape', (order, ripple) => chebyshevShape(order, { ripple })],
};

for (const { shape, order, ripple, denominator, lowPass: low, highPass: high } of fixtures.rows) {
  const [name, make] = shapes[shape]!;
  const id = `${shape}.${order}${ripple ? `.${ripple}` : ''}`;
  const program = {
    source: scipy,
    status: 'derived',
    kind: 'program',
    given: { order: { value: order, unit: '1' }, ripple: { value: ripple, unit: 'dB' } },
  } as const;
  check(`filter.shape.${id}`, {
    ...program,
    formula: `filter/${name}`,
    got: ({ order, ripple }) => [...make(order, ripple).denominator],
    expected: denominator,
    unit: '1',
    tolerance: { relative: 3e-13, why: 'poles multiplied out in double precision' },
  });
  const given = { ...program.given, corner: { value: fixtures.corner, unit: 'Hz' }, f };
  check(`filter.low-pass.${id}`, {
    ...program,
    given,
    formula: 'filter/lowPass',
    got: ({ order, ripple, corner }) => levels(lowPass(make(order, ripple), hertz(corner))),
    expected: low,
    unit: 'dB',
    tolerance: rounding(3e-12),
  });
  check(`filter.high-pass.${id}`, {
    ...program,
    given,
    formula: 'filter/highPass',
    got: ({ order, ripple, corner }) => levels(highPass(make(order, ripple), hertz(corner))),
    expected: high,
    unit: 'dB',
    tolerance: rounding(3e-12),
  });
}

for (const [i, { level: expected, ...input }] of fixtures.shifts.entries())
  check(`filter.pole-shift.${i}`, {
    formula: 'filter/poleShift',
    source: scipy,
    status: 'derived',
    kind: 'program',
    given: {
      f0: { value: input.f0, unit: 'Hz' },
      Q0: { value: input.Q0, unit: '1' },
      f1: { value: input.f1, unit: 'Hz' },
      Q1: { value: input.Q1, unit: '1' },
      f,
    },
    got: ({ f0, Q0, f1, Q1 }) => levels(poleShift({ f0: hertz(f0), Q0, f1: hertz(f1), Q1 })),
    expected,
    unit: 'dB',
    tolerance: rounding(3e-13),
  });

check('filter.pole-shift.closed-box', {
  formula: 'filter/poleShift',
  source: { key: 'small1972closed1', locator: 'response function: behind the shift it is that of the wanted box' },
  status: 'derived',
  kind: 'example',
  given: { frequency: { value: [5, 30, 55, 200], unit: 'Hz' } },
  got: ({ frequency }) => {
    const at = frequencyGrid([frequency]);
    const box = filterLevel(highPass(shapeByQ({ order: 2, Q: 1.1 }), '55 Hz'), at)[0]!;
    return box + filterLevel(poleShift({ f0: '55 Hz', Q0: 1.1, f1: '30 Hz', Q1: 0.5 }), at)[0]!;
  },
  // Qtc = ½: (f/30)² / (1 + (f/30)²), worked out by hand.
  expected: [5, 30, 55, 200].map((x) => 20 * Math.log10((x / 30) ** 2 / (1 + (x / 30) ** 2))),
  unit: 'dB',
  tolerance: { absolute: 1e-13, why: 'double precision on both sides' },
});

for (const [i, { level: expected, order, corner, gain, Q }] of fixtures.shelves.entries())
  check(`filter.shelf.${i}`, {
    formula: 'filter/shelf',
    source: scipy,
    status: 'derived',
    kind: 'program',
    given: {
      order: { value: order, unit: '1' },
      corner: { value: corner, unit: 'Hz' },
      gain: { value: gain, unit: 'dB' },
      Q: { value: Q, unit: '1' },
      f,
    },
    got: ({ corner, gain, Q }) =>
      levels(shelf({ order: order as 1 | 2, corner: hertz(corner), gain, ...(order === 2 && { Q }) })),
    expected,
    unit: 'dB',
    tolerance: rounding(2e-13),
  });

check('filter.shelf.middle', {
  formula: 'filter/shelf',
  source: { key: 'w3caudioeq', locator: 'low shelf: half of the gain in dB at the corner' },
  status: 'derived',
  kind: 'standard',
  given: { order: { value: [1, 2, 2], unit: '1' }, gain: { value: [6, 6, -12], unit: 'dB' } },
  got: ({ order, gain }) =>
    filterLevel(shelf({ order: order as 1 | 2, corner: '60 Hz', gain }), frequencyGrid([60]))[0]!,
  expected: [3, 3, -6],
  unit: 'dB',
  tolerance: { absolute: 1e-13, why: 'double precision' },
});

/** Sections of a low-pass as tables print them, 1 + a s + b s² over its corner, in the order of the table. */
const printed = [
  ['butterworth sections', 'butterworthShape', (order: number) => butterworthShape(order)],
  ['bessel sections', 'besselShape', (order: number) => besselShape(order)],
  ['chebyshev sections', 'chebyshevShape', (order: number, ripple: number) => chebyshevShape(order, { ripple })],
] as const;
const numbersOf = (shape: FilterShape) =>
  sectionsOf(lowPass(shape, perSecond)).map(({ denominator: [c, b, a] }) => ({ a: b! / c!, b: (a ?? 0) / c! }));
for (const [table, name, make] of printed) {
  for (const [i, row] of tables[table].rows.entries()) {
    const { order, ripple = 0 } = row as { order: number; ripple?: number };
    for (const part of ['a', 'b'] as const) {
      // A zero stands for a section of first order, which has no b, and is no number of digits.
      const digits = (row as unknown as Record<'a' | 'b', string[]>)[part].map((text) =>
        text === '0' ? undefined : text,
      );
      for (const formula of [name, 'sectionsOf'])
        check(`filter.read.${table.replace(' ', '-')}.${i}.${part}.${formula}`, {
          formula: `filter/${formula}`,
          source: tables[table].source,
          status: 'seen',
          kind: 'table',
          given: { order: { value: order, unit: '1' }, ripple: { value: ripple, unit: 'dB' } },
          got: () =>
            numbersOf(make(order, ripple)).flatMap((section, k) => (digits[k] === undefined ? [] : [section[part]])),
          printed: digits.filter((text) => text !== undefined),
          unit: '1',
        });
    }
  }
}

/** f0 and Q of sections in Hz, by rising Q: printed poles as numbers of a high-pass at 24 Hz. */
const halved = tables['bessel half power'];
for (const [i, { order, re, im }] of halved.rows.entries()) {
  const poles = re.map((x, k) => [Number(x), Number(im[k])] as const);
  const quality = ([x, y]: readonly [number, number]) => (y === 0 ? 0 : Math.hypot(x, y) / (2 * x));
  const sorted = [...poles].sort((a, b) => quality(a) - quality(b));
  const found = () => sectionsOf(highPass(besselShape(order), '24 Hz'));
  const row = {
    formula: 'filter/sectionsOf',
    source: { ...halved.source, locator: `${halved.source.locator}: 24 Hz over the size of each pole, and its Q` },
    status: 'derived',
    kind: 'table',
    given: { order: { value: order, unit: '1' } },
    tolerance: { relative: 1.5e-10, why: 'the poles are printed to ten decimals' },
  } as const;
  check(`filter.sections.bessel.${i}.f0`, {
    ...row,
    got: () => found().map(({ f0 }) => f0),
    expected: sorted.map(([x, y]) => 24 / Math.hypot(x, y)),
    unit: 'Hz',
  });
  check(`filter.sections.bessel.${i}.Q`, {
    ...row,
    got: () => found().flatMap(({ Q }) => (Q === undefined ? [] : [Q])),
    expected: sorted.filter(([, y]) => y !== 0).map(quality),
    unit: '1',
  });
}

check('filter.sections.gain', {
  formula: 'filter/sectionsOf',
  source: { key: 'zverev1967', locator: 'cascade of sections: each of a high-pass passes 1 far above' },
  status: 'derived',
  kind: 'example',
  given: { order: { value: [5, 6, 8], unit: '1' } },
  got: ({ order }) =>
    sectionsOf(highPass(butterworthShape(order), '24 Hz')).reduce(
      (sum, section) => sum + 10 ** (filterLevel(section, frequencyGrid([2e6]))[0]! / 20),
      0,
    ),
  expected: [3, 3, 4],
  unit: '1',
  tolerance: { absolute: 1e-9, why: 'far above is 2 MHz' },
});

check('filter.magnitude.butterworth', {
  formula: 'filter/denominatorOfMagnitude',
  source: { key: 'zverev1967', locator: 'Butterworth polynomials of order 2 to 5 from 1 + ω²ⁿ' },
  status: 'derived',
  kind: 'table',
  given: { order: { value: [2, 3, 4, 5], unit: '1' } },
  got: ({ order }) => denominatorOfMagnitude([1, ...Array.from({ length: order - 1 }, () => 0), 1])[1]!,
  expected: [Math.SQRT2, 2, 2.61312592975, 3.2360679775],
  unit: '1',
  tolerance: { relative: 1e-11, why: 'twelve digits' },
});

check('filter.read.legendre-5', {
  formula: 'filter/legendreShape',
  source: {
    key: 'papoulis1958',
    locator: 'L₅(ω²): coefficients of ω² to ω¹⁰',
  },
  status: 'seen',
  kind: 'table',
  given: { order: { value: 5, unit: '1' } },
  got: ({ order }) => {
    const { denominator: d } = legendreShape(order);
    // |D|² in powers of ω².
    const square = (k: number) =>
      d.reduce((sum, a, i) => sum + (i > 2 * k || 2 * k - i > order ? 0 : a * d[2 * k - i]! * (-1) ** (k + i)), 0);
    return [1, 2, 3, 4, 5].map(square);
  },
  printed: ['1', '-8', '28', '-40', '20'],
  unit: '1',
  tolerance: { absolute: 1e-12, why: 'whole numbers are exact' },
});

/** Coefficients worked out by hand, with corners in rad/s. */
const perSeconds = (omega: number) => hertz(omega / (2 * Math.PI));
const coefficients = ({ numerator, denominator }: Filter) => [...numerator.filter((b) => b !== 0), ...denominator];
const handmade = [
  ['highPass', 'zverev1967', () => highPass(butterworthShape(2), perSeconds(2)), [1, 4, 2 * Math.SQRT2, 1]],
  ['highPass', 'zverev1967', () => highPass(butterworthShape(3), perSeconds(2)), [1, 8, 8, 4, 1]],
  ['lowPass', 'zverev1967', () => lowPass(butterworthShape(2), perSeconds(2)), [4, 4, 2 * Math.SQRT2, 1]],
  ['lowPass', 'zverev1967', () => lowPass(butterworthShape(3), perSeconds(2)), [8, 8, 8, 4, 1]],
  // A = 2.
  ['shelf', 'w3caudioeq', () => shelf({ order: 1, corner: perSeconds(2), gain: 40 * Math.log10(2) }), [4, 1, 1, 1]],
  [
    'shelf',
    'w3caudioeq',
    () => shelf({ order: 2, corner: perSeconds(2), gain: 40 * Math.log10(2) }),
    [8, 4, 1, 2, 2, 1],
  ],
  [
    'poleShift',
    'small1972closed1',
    () => poleShift({ f0: perSeconds(1), Q0: 2, f1: perSeconds(2), Q1: 0.5 }),
    [1, 0.5, 1, 4, 4, 1],
  ],
  ['sectionsOf', 'zverev1967', () => sectionsOf(highPass(butterworthShape(3), perSeconds(2)))[1]!, [1, 4, 2, 1]],
  ['sectionsOf', 'zverev1967', () => sectionsOf(lowPass(butterworthShape(3), perSeconds(2)))[0]!, [2, 2, 1]],
] as const;
for (const [i, [name, key, make, expected]] of handmade.entries())
  check(`filter.coefficients.${i}.${name}`, {
    formula: `filter/${name}`,
    source: { key, locator: 'transfer function, worked out by hand: coefficients that are not 0, ascending' },
    status: 'derived',
    kind: 'example',
    given: { filter: { value: name, unit: '' } },
    got: () => coefficients(make()),
    expected,
    unit: 'powers of rad/s',
    tolerance: { relative: 2e-14, why: 'double precision' },
  });
