import {
  butterworthShape,
  compileFilter,
  type Filter,
  filterGroupDelay,
  filterLevel,
  highPass,
  type ShapeByQInput,
  shapeByQ,
} from '@airspring/core/filter';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import { fixtures, frequencies, scipy } from './fixtures.js';

const grid = frequencyGrid(frequencies);
const f = { value: frequencies, unit: 'Hz' };
const digits = (size: number) => ({ relative: size, why: 'double precision on both sides' });

const level = (filter: Filter, frequency: number) => filterLevel(filter, frequencyGrid([frequency]))[0]!;

function response(filter: Filter) {
  const re = new Float64Array(grid.length).fill(1);
  const im = new Float64Array(grid.length);
  compileFilter(filter)(grid, { re, im });
  return { re, im };
}

/** Coefficients of the Butterworth polynomials in ascending powers, corner 1 rad/s. */
const polynomials = [
  [1, 1],
  [1, 1.414213562, 1],
  [1, 2, 2, 1],
  [1, 2.61312593, 3.414213562, 2.61312593, 1],
];

([1, 2, 3, 4] as const).forEach((order, i) => {
  const corner = si('frequency', 1 / (2 * Math.PI)); // 1 rad/s
  check(`filter.butterworth.order${order}`, {
    formula: 'filter/butterworthShape',
    source: { key: 'zverev1967', locator: 'Butterworth family, |H|² = 1/(1 + ω²ⁿ), poles worked out apart' },
    status: 'derived',
    kind: 'table',
    given: { order: { value: order, unit: '1' }, corner: { value: 1, unit: 'rad/s' } },
    got: () => {
      const { numerator, denominator } = highPass(butterworthShape(order), corner);
      return [numerator[order]!, ...denominator];
    },
    expected: [1, ...(polynomials[i] as number[])],
    unit: '1',
    tolerance: {
      relative: [1e-15, 1e-9, 1e-15, 1e-9][i]!,
      why: 'ten digits given where the root of 2 is in it',
    },
  });

  const filter = () => highPass(butterworthShape(order), '24 Hz');
  const expected = fixtures.butterworth[i] as (typeof fixtures.butterworth)[0];
  const given = { order: { value: order, unit: '1' }, corner: { value: 24, unit: 'Hz' }, frequencies: f };
  const program = { source: scipy, status: 'derived', kind: 'program', given } as const;
  check(`filter.butterworth.program${order}`, {
    ...program,
    formula: 'filter/highPass',
    got: ({ frequencies }) => level(filter(), frequencies),
    expected: expected.level,
    unit: 'dB',
    tolerance: { absolute: order * 5e-14, why: 'double precision on both sides, levels down to -100 dB' },
  });
  check(`filter.compile.program${order}.re`, {
    ...program,
    formula: 'filter/compileFilter',
    got: ({ frequencies }) => response(filter()).re[grid.indexOf(frequencies)]!,
    expected: expected.re,
    unit: '1',
    tolerance: { absolute: order * 2e-15, why: 'double precision on both sides; magnitude at most 1' },
  });
  check(`filter.compile.program${order}.im`, {
    ...program,
    formula: 'filter/compileFilter',
    got: ({ frequencies }) => response(filter()).im[grid.indexOf(frequencies)]!,
    expected: expected.im,
    unit: '1',
    tolerance: { absolute: order * 1.5e-15, why: 'double precision on both sides; magnitude at most 1' },
  });
  check(`filter.group-delay.program${order}`, {
    ...program,
    formula: 'filter/filterGroupDelay',
    got: ({ frequencies }) => filterGroupDelay(filter(), frequencyGrid([frequencies]))[0]!,
    expected: expected.delay,
    unit: 's',
    tolerance: digits(order * 5e-15),
  });
});

check('filter.level.corner', {
  formula: 'filter/filterLevel',
  source: { key: 'zverev1967', locator: 'Butterworth family: half the power at the corner' },
  status: 'derived',
  kind: 'table',
  given: { order: { value: [1, 2, 3, 4], unit: '1' }, frequency: { value: 24, unit: 'Hz' } },
  got: ({ order, frequency }) => level(highPass(butterworthShape(order), '24 Hz'), frequency),
  expected: [-3.0103, -3.0103, -3.0103, -3.0103],
  unit: 'dB',
  tolerance: { absolute: 5e-7, why: '10 lg ½ = −3.01029996, rounded to −3.0103' },
});

check('filter.level.slope', {
  formula: 'filter/filterLevel',
  source: { key: 'zverev1967', locator: 'Butterworth family: −10 lg(1 + (ω₀/ω)²ⁿ) at a tenth of the corner' },
  status: 'derived',
  kind: 'table',
  given: { order: { value: [1, 2, 3, 4], unit: '1' }, frequency: { value: 2.4, unit: 'Hz' } },
  got: ({ order, frequency }) => level(highPass(butterworthShape(order), '24 Hz'), frequency),
  expected: [-20.04321, -40.00043, -60, -80],
  unit: 'dB',
  tolerance: { absolute: 1e-5, why: 'five decimals given' },
});

fixtures.byQ.forEach(({ order, corner, Q, level: expected, delay }, i) => {
  const input = { order, ...(Q.length > 0 && { Q: Q.length > 1 ? Q : Q[0] }) };
  const filter = () => highPass(shapeByQ(input as ShapeByQInput), si('frequency', corner));
  const given = {
    order: { value: order, unit: '1' },
    corner: { value: corner, unit: 'Hz' },
    Q: { value: Q.join(' and '), unit: '1' },
    frequencies: f,
  };
  check(`filter.high-pass-by-q.program${i}`, {
    formula: 'filter/shapeByQ',
    source: scipy,
    status: 'derived',
    kind: 'program',
    given,
    got: ({ frequencies }) => level(filter(), frequencies),
    expected,
    unit: 'dB',
    tolerance: { absolute: 1e-13, why: 'double precision on both sides, levels down to -100 dB' },
  });
  check(`filter.group-delay.by-q.program${i}`, {
    formula: 'filter/filterGroupDelay',
    source: scipy,
    status: 'derived',
    kind: 'program',
    given,
    got: ({ frequencies }) => filterGroupDelay(filter(), frequencyGrid([frequencies]))[0]!,
    expected: delay,
    unit: 's',
    tolerance: digits(order * 5e-15),
  });
});

check('filter.high-pass-by-q.corner', {
  formula: 'filter/shapeByQ',
  source: { key: 'zverev1967', locator: 'second-order section: |H| = Q at its corner' },
  status: 'derived',
  kind: 'table',
  given: { Q: { value: [0.05, 0.5, 1, 2, 50], unit: '1' }, frequency: { value: 25, unit: 'Hz' } },
  got: ({ Q, frequency }) => 10 ** (level(highPass(shapeByQ({ order: 2, Q }), '25 Hz'), frequency) / 20),
  expected: [0.05, 0.5, 1, 2, 50],
  unit: '1',
  tolerance: digits(5e-15),
});

/** Polynomials of cascaded sections (1 + s) and (1 + s/Q + s²), corner 1 rad/s, multiplied out by hand. */
const cascades = [
  { order: 2, Q: 0.5, denominator: [1, 2, 1] },
  { order: 2, Q: 2, denominator: [1, 0.5, 1] },
  { order: 3, Q: 1, denominator: [1, 2, 2, 1] },
  { order: 4, Q: [0.5, 1], denominator: [1, 3, 4, 3, 1] },
] as const;
cascades.forEach(({ order, Q, denominator }, i) => {
  check(`filter.high-pass-by-q.section${i}`, {
    formula: 'filter/shapeByQ',
    source: { key: 'zverev1967', locator: 'cascade of first- and second-order sections' },
    status: 'derived',
    kind: 'example',
    given: {
      order: { value: order, unit: '1' },
      Q: { value: String(Q), unit: '1' },
      corner: { value: 1, unit: 'rad/s' },
    },
    got: () => {
      const found = highPass(shapeByQ({ order, Q } as ShapeByQInput), si('frequency', 1 / (2 * Math.PI)));
      return [found.numerator[order]!, ...found.denominator];
    },
    expected: [1, ...denominator],
    unit: '1',
    tolerance: digits(1e-15),
  });
});

/** Greatest order, corners at both ends of what is accepted and between. */
fixtures.ends.forEach(({ corner, frequencies, denominator, re, im }, i) => {
  for (const [part, expected] of Object.entries({ re, im }) as ['re' | 'im', number[]][]) {
    check(`filter.compile.ends${i}.${part}`, {
      formula: 'filter/compileFilter',
      source: scipy,
      status: 'derived',
      kind: 'program',
      given: { order: { value: 8, unit: '1' }, corner: { value: corner, unit: 'rad/s' } },
      got: () => {
        const columns = { re: new Float64Array(frequencies.length).fill(1), im: new Float64Array(frequencies.length) };
        const numerator = denominator.map((_, k) => (k === 8 ? 1 : 0));
        compileFilter({ kind: 'high-pass', name: 'eighth', numerator, denominator })(
          frequencyGrid(frequencies),
          columns,
        );
        return columns[part];
      },
      expected,
      unit: '1',
      tolerance: {
        relative: [1e-14, 5e-14, 5e-14][i]!,
        why: 'double precision, coefficients multiplied out from poles',
      },
    });
  }
});
