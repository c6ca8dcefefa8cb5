import {
  biquads,
  butterworthShape,
  compileBiquads,
  compileFilter,
  digitalDeviation,
  type Filter,
  filterGroupDelay,
  filterLevel,
  highPass,
  linkwitzRileyShape,
  lowPass,
  poleShift,
  sectionsOf,
  shapeByQ,
  shelf,
  singlePrecision,
} from '@airspring/core/filter';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { pathsOf } from '../../refusal/faults.js';

const refused = (work: () => unknown, ...faults: object[]) =>
  expect(work).toThrowError(expect.objectContaining({ faults: faults.map((fault) => expect.objectContaining(fault)) }));

test('a filter is a plain record with a name', () => {
  const filter = highPass(butterworthShape(4), '24 Hz');
  expect(filter.name).toBe('High-pass of order 4 at 24 Hz, Butterworth');
  expect(JSON.parse(JSON.stringify(filter))).toEqual(filter);
  expect(highPass(shapeByQ({ order: 4, Q: [0.6, 2.5] }), '20 Hz').name).toBe(
    'High-pass of order 4 at 20 Hz, Q 0.6 and 2.5',
  );
});

test('the examples of the docstrings', () => {
  const lifted = highPass(shapeByQ({ order: 2, Q: 2 }), '25 Hz');
  expect(filterLevel(lifted, frequencyGrid([25]))[0]).toBeCloseTo(6.0206, 4);
  const [lower, upper] = filterLevel(lifted, frequencyGrid([0.5, 1])) as unknown as [number, number];
  expect(upper - lower).toBeCloseTo(12, 0);
  expect(filterLevel(highPass(butterworthShape(2), '25 Hz'), frequencyGrid([25]))[0]).toBeCloseTo(-3.0103, 5);
  expect(filterGroupDelay(highPass(butterworthShape(1), '25 Hz'), frequencyGrid([25]))[0]).toBeCloseTo(0.00318, 5);
});

test('refuses every fault at once', () => {
  refused(
    () => shapeByQ({ order: 4, Q: [0, Number.NaN] }),
    { code: 'not-positive', path: 'sections.Q[0]' },
    { code: 'not-finite', path: 'sections.Q[1]' },
  );
  refused(() => highPass(butterworthShape(2), '-20 Hz' as never), { code: 'not-positive', path: 'corner' });
  refused(() => butterworthShape(9), { code: 'out-of-range', path: 'order' });
});

test.each([
  [
    { order: 1, Q: 1 },
    { code: 'inconsistent', path: 'sections.Q' },
  ],
  [{ order: 2 }, { code: 'empty', path: 'sections.Q' }],
  [
    { order: 3, Q: [1, 2] },
    { code: 'inconsistent', path: 'sections.Q' },
  ],
  [
    { order: 4, Q: 1 },
    { code: 'inconsistent', path: 'sections.Q' },
  ],
  [
    { order: 2, Q: 51 },
    { code: 'out-of-range', path: 'sections.Q' },
  ],
  [
    { order: 2, Q: '1' },
    { code: 'not-finite', path: 'sections.Q' },
  ],
])('refuses %j', (input, fault) => refused(() => shapeByQ(input as never), fault));

const own = (numerator: number[], denominator: number[]): Filter => ({
  kind: 'high-pass',
  name: 'own',
  numerator,
  denominator,
});

test.each([
  ['no coefficient', own([], [1, 1]), { code: 'empty', path: 'filter.numerator' }],
  ['only zeros', own([0, 1], [0, 0]), { code: 'empty', path: 'filter.denominator' }],
  ['NaN', own([0, Number.NaN], [1, 1]), { code: 'not-finite', path: 'filter.numerator[1]' }],
  ['a gain that rises without end', own([0, 0, 1], [1, 1]), { code: 'inconsistent', path: 'filter.numerator' }],
  ['a growing one', own([0, 0, 1], [1, -1, 1]), { code: 'inconsistent', path: 'filter.denominator' }],
  ['an undamped one', own([0, 0, 1], [1, 0, 1]), { code: 'inconsistent', path: 'filter.denominator' }],
  [
    'a growing one, all signs equal',
    own([0, 0, 0, 1], [6, 1, 1, 1]),
    { code: 'inconsistent', path: 'filter.denominator' },
  ],
  ['an integrator', own([1], [0, 1]), { code: 'inconsistent', path: 'filter.denominator' }],
  ['order 9', own([1], [1, 9, 36, 84, 126, 126, 84, 36, 9, 1]), { code: 'out-of-range', path: 'filter.denominator' }],
])('refuses %s', (_, filter, fault) => refused(() => compileFilter(filter), fault));

test('multiplies in place: a response that is not 1, and only as far as the grid', () => {
  const kernel = compileFilter(highPass(butterworthShape(1), '100 Hz'));
  const re = Float64Array.of(0, 7);
  const im = Float64Array.of(2, 7);
  kernel(frequencyGrid([100]), { re, im });
  // 1/(1 − j) = (1 + j)/2; times 2j is −1 + j.
  expect(re[0]).toBeCloseTo(-1, 14);
  expect(im[0]).toBeCloseTo(1, 14);
  expect([re[1], im[1]]).toEqual([7, 7]);
});

test.each([
  [
    'a gain that is not 1 far away',
    { name: 'own', denominator: [2, 1], sources: [] },
    'inconsistent shape.denominator',
  ],
  ['no coefficients', { name: 'own', denominator: [], sources: [] }, 'empty shape.denominator'],
  ['another sign', { name: 'own', denominator: [1, -1], sources: [] }, 'not-positive shape.denominator[1]'],
  ['order 9', { name: 'own', denominator: new Array(10).fill(1), sources: [] }, 'out-of-range shape.denominator'],
  ['no record', undefined, 'empty shape.denominator'],
])('refuses a shape with %s', (_, shape, said) => {
  const [code, path] = said.split(' ');
  for (const make of [highPass, lowPass]) refused(() => make(shape as never, '20 Hz'), { code, path });
});

test('refuses what a shelf, a pole shift or a digital filter cannot be', () => {
  refused(() => shelf({ order: 1, corner: '60 Hz', gain: 6, Q: 1 }), { code: 'inconsistent', path: 'shelf.Q' });
  refused(
    () => shelf({ order: 3 as never, corner: '60 Hz', gain: 60 }),
    { path: 'shelf.order' },
    { path: 'shelf.gain' },
  );
  refused(
    () => poleShift({ f0: '500 Hz', Q0: 1, f1: '20 Hz', Q1: 99 }),
    { path: 'poleShift.Q1' },
    { path: 'poleShift.f1' },
  );
  const filter = highPass(butterworthShape(2), '5 kHz');
  refused(() => biquads(filter, { sampleRate: '8 kHz' }), { code: 'out-of-range', path: 'digital.exactAt' });
  const section = { b0: 1, b1: 0, b2: 0, a1: 2, a2: 1.1 };
  const digital = {
    name: 'own',
    sampleRate: si('frequency', 48_000),
    sections: [section, { ...section, a1: Number.NaN }],
  };
  refused(
    () => compileBiquads(digital),
    { code: 'inconsistent', path: 'digital.sections[0]' },
    { code: 'not-finite', path: 'digital.sections[1].a1' },
  );
});

test('the difference equation is what it says: a step settles at the gain of the lowest frequency', () => {
  const { sections } = biquads(lowPass(butterworthShape(2), '80 Hz'), { sampleRate: '48 kHz' });
  const { b0, b1, b2, a1, a2 } = sections[0]!;
  const y = [0, 0];
  for (let n = 2; n < 20_000; n++) {
    const [x1, x2] = [n > 2 ? 1 : 0, n > 3 ? 1 : 0];
    y.push(b0 + b1 * x1 + b2 * x2 - a1 * y[n - 1]! - a2 * y[n - 2]!);
  }
  expect(y.at(-1)).toBeCloseTo(1, 9);
  // A Butterworth filter of order 2 overshoots by exp(−π).
  expect(Math.max(...y)).toBeCloseTo(1 + Math.exp(-Math.PI), 4);
});

test('coefficients in 32 bits: a warning at a low corner, and none where the corner is high', () => {
  const at = (corner: '24 Hz' | '500 Hz', rate: '48 kHz' | '192 kHz') =>
    singlePrecision(biquads(highPass(butterworthShape(2), corner), { sampleRate: rate }));
  const low = at('24 Hz', '192 kHz');
  if (!low.ok) throw new Error('stable');
  expect(low.warnings.map(({ path }) => path)).toEqual(['deviation.level', 'noiseGain']);
  expect(low.poles[0]!.rounded.f0).toBeCloseTo(23.6, 1);
  const high = at('500 Hz', '48 kHz');
  expect(high.ok && high.warnings).toEqual([]);
  const digital = biquads(highPass(linkwitzRileyShape(8), '2 Hz'), { sampleRate: '192 kHz' });
  expect(singlePrecision(digital)).toMatchObject({ ok: false, because: [{ code: 'unstable-in-single-precision' }] });
});

test('32-bit coefficients of a pole near the lowest frequency there is are judged from that frequency up', () => {
  const slow = biquads(highPass(shapeByQ({ order: 2, Q: 0.05 }), '0.01 Hz'), { sampleRate: '10 Hz' });
  const found = singlePrecision(slow);
  expect(found.ok && found.poles[0]!.exact.f0).toBeCloseTo(0.01, 9);
  const slower = singlePrecision(biquads(highPass(butterworthShape(1), '0.0005 Hz'), { sampleRate: '1 Hz' }));
  expect(slower.ok && slower.deviation.levelAt).toBeGreaterThanOrEqual(1e-4);
});

test('takes a filter of another kind of zeros: a notch reads as silence, not as minus infinity', () => {
  const notch = own([1, 0, 1], [1, 1, 1]);
  const [level] = filterLevel(notch, frequencyGrid([1 / (2 * Math.PI)]));
  expect(level).toBeLessThan(-250);
  expect(Number.isFinite(level)).toBe(true);
});

test('a filter without poles has no sections, whose gain would be lost', () => {
  const constant: Filter = { kind: 'shelf', name: 'twice as much', numerator: [2], denominator: [1] };
  for (const ask of [() => sectionsOf(constant), () => biquads(constant, { sampleRate: '48 kHz' })])
    expect(pathsOf(ask)).toEqual(['filter.denominator']);
});

test('a band beyond half the sample rate is refused, where a digital filter only repeats itself', () => {
  const filter = highPass(butterworthShape(2), '24 Hz');
  const digital = biquads(filter, { sampleRate: '48 kHz' });
  expect(pathsOf(() => digitalDeviation(filter, digital, { from: '20 Hz', to: '24 kHz' }))).toEqual([]);
  expect(pathsOf(() => digitalDeviation(filter, digital, { from: '20 Hz', to: '40 kHz' }))).toEqual(['deviation.to']);
});
