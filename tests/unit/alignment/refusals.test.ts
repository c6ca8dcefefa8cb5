import {
  type Alignment,
  bandPass,
  bessel,
  butterworth,
  chebyshev,
  criticallyDamped,
  driversFor,
  interOrder,
  legendre,
  lowShelf,
  nearestAlignments,
  ofTotalQ,
  quasiThirdOrder,
  sixthOrderBandPass,
  solveAlignment,
  subChebyshev,
} from '@airspring/core/alignment';
import { closedBox, ventedFamily } from '@airspring/core/enclosure';
import { isInputError } from '@airspring/core/fault';
import { denominatorOfMagnitude } from '@airspring/core/filter';
import { expect, test } from 'vitest';
import { paperAir, physical } from '../../literature/enclosure/textbook.js';

const drivers = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const input = { drivers, QL: 7 };
const withCoil = { drivers: { ...drivers, Le: 1e-3 as never }, QL: 7 };

/** The paths of the faults of a refusal, or what was answered. */
function pathsOf(work: () => unknown): unknown {
  try {
    return work();
  } catch (error) {
    if (isInputError(error)) return error.faults.map(({ path }) => path);
    throw error;
  }
}

test('what is no alignment is refused where drivers are sought for it, too', () => {
  for (const none of [undefined, null, 'QB3', {}])
    expect(pathsOf(() => driversFor(none as never, ventedFamily))).toEqual(['alignment']);
});

const ofOrder = { bessel, butterworth, chebyshev, criticallyDamped, legendre, subChebyshev };
test.each(Object.entries(ofOrder))('%s has whole orders from 2', (_, make) => {
  for (const order of [Number.NaN, -1, 0, 1, 3.5, 50, Infinity, '4' as never]) {
    expect(pathsOf(() => make(order))).toEqual(['order']);
  }
});

test('a ripple, a quality factor and a share out of range are refused', () => {
  for (const ripple of [-1, 0, 1e6, Number.NaN, 'x' as never]) {
    expect(pathsOf(() => chebyshev(4, { ripple }))).toEqual(['chebyshev.ripple']);
  }
  expect(pathsOf(() => chebyshev(4, { riple: 1 } as never))).toEqual(['chebyshev.riple']);
  for (const Qtc of [-1, 0, Number.NaN, Infinity]) expect(pathsOf(() => ofTotalQ(Qtc))).toEqual(['Qtc']);
  for (const depth of [0, 13, Number.NaN, '3' as never]) expect(pathsOf(() => lowShelf(depth))).toEqual(['depth']);
  for (const S of [0.05, 1, 2]) expect(pathsOf(() => bandPass({ S }))).toEqual(['bandPass.S']);
  for (const ripple of [-1, 0, 15]) expect(pathsOf(() => bandPass({ ripple }))).toEqual(['bandPass.ripple']);
  for (const Q of [0.05, 3.1, 50, -1]) expect(pathsOf(() => bandPass({ Q }))).toEqual(['bandPass.Q']);
  for (const Q of [0.1, 3]) expect(bandPass({ Q }).parameters.Q).toBe(Q);
  expect(pathsOf(() => bandPass({ ripple: 1, S: 0.6 }))).toEqual(['bandPass.ripple']);
  for (const ripple of [-1, 0, 7])
    expect(pathsOf(() => sixthOrderBandPass({ ripple }))).toEqual(['sixthOrderBandPass.ripple']);
  for (const share of [-0.1, 1, Number.NaN, '0.5' as never])
    expect(pathsOf(() => interOrder(share))).toEqual(['share']);
});

test.each([[[1, -3, 1]], [[1, 0, -1]], [[0, 1]]])('a squared magnitude of %s is refused', (squared) => {
  expect(pathsOf(() => denominatorOfMagnitude(squared))).toEqual(['squared']);
});

test.each<[string, unknown]>([
  ['alignment', undefined],
  ['alignment', 'QB3'],
  ['alignment', butterworth],
  ['alignment.target', { ...butterworth(4), target: () => [1, 1, 1] }],
  ['alignment.target', { ...butterworth(4), target: () => [1, Number.NaN, 1, 1, 1] }],
  ['alignment.free.to', { ...quasiThirdOrder, free: { ...quasiThirdOrder.free, to: 2 } }],
  ['alignment.free.from', { ...quasiThirdOrder, free: { ...quasiThirdOrder.free, from: Number.NaN } }],
])('what is no alignment is refused at %s', (path, alignment) => {
  const found = pathsOf(() => solveAlignment(alignment as Alignment, ventedFamily, input));
  expect(new Set(found as string[])).toEqual(new Set([path]));
});

test('the nearest of what is no alignment is refused at its place', () => {
  const system = closedBox({ drivers, netVolume: '40 L' });
  expect(pathsOf(() => nearestAlignments(system, [butterworth(2), butterworth as never]))).toEqual(['alignments[1]']);
});

test.each<[string, object]>([
  ['options', null as never],
  ['options.addResistence', { addResistence: true }],
  ['options.highPass.order', { highPass: { order: 3 } }],
  ['options.highPass.order', { highPass: { order: '2' } }],
  ['options.highPass', { highPass: true }],
  ['options.norm', { norm: () => 1 }],
  ['options.norm', { norm: { name: 'none', of: () => Number.NaN } }],
])('options are refused at %s', (path, options) => {
  expect(pathsOf(() => solveAlignment(quasiThirdOrder, ventedFamily, withCoil, options))).toEqual([path]);
});

test('a box without drivers is refused', () => {
  expect(pathsOf(() => solveAlignment(quasiThirdOrder, ventedFamily, {} as never))).toEqual(['box.drivers']);
  expect(pathsOf(() => solveAlignment(quasiThirdOrder, ventedFamily, undefined as never))).toEqual(['box']);
});

test('a field that is undefined is sought like one that is left out', () => {
  const [plain, undefinedVolume] = [input, { ...input, netVolume: undefined as never }].map((one) =>
    solveAlignment(quasiThirdOrder, ventedFamily, one),
  );
  expect(undefinedVolume).toEqual(plain);
});

const goal = (least: (volume: number) => number): Alignment => ({
  name: 'own goal',
  order: 4,
  target: { least: ({ spec }) => least((spec as { netVolume: number }).netVolume) },
  parameters: {},
  sources: ['own'],
});

test('a goal that falls to the edge of the search has no answer', () => {
  const found = solveAlignment(
    goal((volume) => volume),
    ventedFamily,
    { ...input, fb: '30 Hz' },
  );
  expect(found.ok || found.because[0]?.text).toBe(
    'own goal has no least value: it still falls where netVolume is 30 times as large or as small as is usual.',
  );
});

test.each([
  [() => 1, {}, 'own goal is 1 in every box that was tried: no netVolume and fb changes it.'],
  [() => 0, { fb: '30 Hz' }, 'own goal is 0 in every box that was tried: no netVolume changes it.'],
  [
    (volume: number) => (1000 * volume - 40) ** 2 + 3,
    {},
    'own goal is the same with every fb that was tried. Give fb; then the rest is sought.',
  ],
])('a goal that a number does not change has no answer: %s', (least, more, text) => {
  const found = solveAlignment(goal(least), ventedFamily, { ...input, ...(more as { fb?: never }) });
  expect(found.ok || found.because).toEqual([{ code: 'no-change', text }]);
});

test('a goal tells the least value that it reached', () => {
  const forty = goal((volume) => (1000 * volume - 40) ** 2 + 3);
  const found = solveAlignment(forty, ventedFamily, { ...input, fb: '30 Hz' });
  if (!found.ok) throw new Error(found.because[0]?.text);
  expect(found.least).toBeCloseTo(3, 8);
  expect(1000 * found.system.spec.netVolume).toBeCloseTo(40, 3);
  const shape = solveAlignment(quasiThirdOrder, ventedFamily, input);
  expect(shape.ok && 'least' in shape).toBe(false);
});

test('a goal needs a number that it may choose', () => {
  const found = solveAlignment(
    goal(() => 1),
    ventedFamily,
    { ...input, netVolume: '30 L', fb: '30 Hz' },
  );
  expect(found.ok || found.because[0]?.code).toBe('other-unknowns');
});

test('a goal takes neither resistance nor a high-pass', () => {
  const options = { addResistance: true, highPass: { order: 2 } } as const;
  expect(
    pathsOf(() =>
      solveAlignment(
        goal(() => 1),
        ventedFamily,
        input,
        options,
      ),
    ),
  ).toEqual(['options.addResistance', 'options.highPass']);
});

test.each([
  [[], ['Qts']],
  [
    [0.3, Number.NaN, Infinity],
    ['Qts[1]', 'Qts[2]'],
  ],
  [
    [-1, 0, 0.3],
    ['Qts[0]', 'Qts[1]'],
  ],
  [
    [0.5, 0.3, 0.3],
    ['Qts[1]', 'Qts[2]'],
  ],
])('quality factors of drivers that are %s are refused at their places', (list, paths) => {
  expect(pathsOf(() => driversFor(quasiThirdOrder, ventedFamily, { QL: 7 }, list))).toEqual(paths);
});
