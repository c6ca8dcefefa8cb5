/** Walks from random starts find no box of an alignment that the solver does not tell: boxes with a notch, and band-passes. */
import {
  type Alignment,
  bandPass,
  butterworth,
  chebyshev,
  fixedAt,
  quasiThirdOrder,
  sixthOrderBandPass,
  solveAlignment,
} from '@airspring/core/alignment';
import {
  type DrivenSpec,
  type Family,
  fourthOrderBandPassFamily,
  parallelBandPassFamily,
  passiveRadiatorFamily,
  seriesBandPassFamily,
} from '@airspring/core/enclosure';
import { boundedMinimum } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { levelCrossings, respond } from '@airspring/core/response';
import { expect } from 'vitest';
import { walkToShape } from '../../../packages/core/src/alignment/roots.js';
import { shapedBox } from '../../../packages/core/src/alignment/shaped-box.js';
import {
  boxUnknowns,
  canBeBuilt,
  fill,
  qualityUnknown,
  resistanceFactor,
} from '../../../packages/core/src/alignment/unknowns.js';
import { cases, fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';
import { paperAir as air, fs, physical, split } from '../../literature/enclosure/textbook.js';

const driverOf = (Qts: number) => physical({ fs, ...split(Qts, 20), Vas: 0.06, Sd: 0.033, Re: 5.6 }, air);
/** Of so low a quality factor that every box takes a resistance in front of it. */
const low = driverOf(0.05);
const fixed = (alignment: Alignment, parameters: Readonly<Record<string, number>>): Alignment => {
  const found = fixedAt(alignment, parameters);
  if (!found.ok) throw new Error(found.because[0]?.text);
  return found.alignment;
};

/** Roots that walks from random places reach: the logarithms of what is sought. */
function reached(type: Alignment, family: Family<DrivenSpec, never>, input: object, places: readonly number[]) {
  const open = family.unknowns ?? [];
  const whole = { ...input, drivers: low, ...Object.fromEntries(open.map(({ field }) => [field, 1])) };
  const read = family.read(whole as never);
  const inBox = boxUnknowns(open, read, air);
  const spec = fill(inBox, { ...read }, (i) => inBox[i]!.starts[0]!);
  const sought = [...inBox, ...(inBox.length < type.order - 1 ? [qualityUnknown(spec)] : [])];
  const walk = walkToShape(type.target as never, shapedBox(family, spec, air)!, spec, sought);
  const many = Math.floor(places.length / sought.length);
  return Array.from({ length: many }, (_, k) => {
    const start = sought.map(({ starts }, i) => Math.log(starts[0]!) + places[k * sought.length + i]!);
    const place = walk.place(start, 0, { mostSteps: 30 });
    return place && walk.rootAt(place, 0);
  }).filter((root) => {
    if (root === undefined || !canBeBuilt(inBox, root.spec)) return false;
    const quality = root.place[inBox.length];
    return quality === undefined || resistanceFactor(spec, Math.exp(quality)) > 1;
  });
}

const places = fc.array(fc.double({ min: -2.5, max: 2.5, noNaN: true }), { minLength: 125, maxLength: 125 });
const leak = fc.oneof(fc.constant(0), fc.double({ min: 4, max: 30, noNaN: true }));
const radiatorOf = (ratio: number) => {
  const Cms = si('compliance', (0.06 * ratio) / (air.density * air.speedOfSound ** 2 * 0.05 ** 2));
  return { Sd: si('coneArea', 0.05), Mms: si('mass', 0.02), Cms, Rms: si('mechanicalResistance', 1) };
};
const kinds: readonly (readonly [string, Family<never, never>, readonly Alignment[], (QL: number) => object])[] = [
  [
    'a passive radiator',
    passiveRadiatorFamily as never,
    [butterworth(4), fixed(quasiThirdOrder, { B: 1.5 }), fixed(chebyshev(4), { ripple: 0.3 })],
    (QL) => ({ radiator: radiatorOf(1 + QL / 10) }),
  ],
  [
    'a band-pass of fourth order',
    fourthOrderBandPassFamily as never,
    [bandPass({ Q: 0.6 }), bandPass({ S: 0.5, Q: 0.9 }), bandPass({ S: 0.85, Q: 0.5 })],
    (QL) => (QL > 0 ? { frontQL: QL } : {}),
  ],
  [
    'a parallel band-pass',
    parallelBandPassFamily as never,
    [fixed(sixthOrderBandPass(), { bandwidth: 1 }), fixed(sixthOrderBandPass({ ripple: 0.5 }), { bandwidth: 1.5 })],
    (QL) => (QL > 0 ? { frontQL: QL, rearQL: QL } : {}),
  ],
  [
    'a series band-pass',
    seriesBandPassFamily as never,
    [fixed(sixthOrderBandPass(), { bandwidth: 1 }), fixed(sixthOrderBandPass({ ripple: 0.5 }), { bandwidth: 1.5 })],
    (QL) => (QL > 0 ? { frontQL: QL, rearQL: QL } : {}),
  ],
];
/** Each is dozens of walks. */
const RUNS = Math.min(12, Math.max(4, Math.ceil(fuzzRuns / 50)));
for (const [called, family, types, inputOf] of kinds) {
  test.prop([fc.constantFrom(...types), leak, places], { numRuns: RUNS })(`${called}`, (type, QL, from) => {
    const input = inputOf(QL);
    const found = solveAlignment(type, family as never, { ...input, drivers: low } as never, {
      air,
      addResistance: true,
    });
    const told = found.ok ? [found, ...found.others] : [];
    for (const { deviation } of told) expect(deviation!.greatest).toBeLessThan(1e-6);
    const fields = family.unknowns!.map(({ field }) => field);
    const numbers = (spec: unknown) => fields.map((field) => (spec as Readonly<Record<string, number>>)[field]!);
    for (const { spec } of reached(type, family as never, input, from).filter((one) => one !== undefined)) {
      const got = numbers(spec);
      // In a parallel band-pass the two chambers may change places.
      if (called === 'a parallel band-pass' && got[1]! > got[3]!) continue;
      const near = told.find(({ system }) =>
        numbers(system.spec).every((value, i) => Math.abs(value / got[i]! - 1) < 1e-4),
      );
      expect(near, `${type.name} ${QL}: ${got}`).toBeDefined();
    }
  });
}

test.prop([fc.double({ min: 0.3, max: 0.95, noNaN: true }), fc.double({ min: 0.45, max: 1.2, noNaN: true }), leak], {
  numRuns: cases(15),
})('both edges of a band-pass are half power below its greatest level', (S, Q, QL) => {
  const input = { drivers: driverOf(0.35), ...(QL > 0 && { frontQL: QL }) };
  const found = solveAlignment(bandPass({ S, Q }), fourthOrderBandPassFamily, input, { air });
  if (!found.ok) return;
  const { f3, upper, system, frequency } = found;
  if (!f3.ok || !upper?.ok) throw new Error('no edge');
  const options = { from: si('frequency', frequency! / 20), to: si('frequency', 20 * frequency!) };
  const crossings = levelCrossings(system, { ...options, reference: 'maximum' });
  expect(crossings[0]! / f3.frequency).toBeCloseTo(1, 9);
  expect(crossings.at(-1)! / upper.frequency).toBeCloseTo(1, 9);
  const levelAt = (at: number) => respond(system, frequencyGrid([at])).levelHalfSpace[0]!;
  // The greatest level, refined around each of many places.
  const inside = Array.from({ length: 40 }, (_, i) => f3.frequency * (upper.frequency / f3.frequency) ** (i / 39));
  const tops = inside.slice(2).map((_, i) => boundedMinimum((f) => -levelAt(f), inside[i]!, inside[i + 2]!).x);
  const top = Math.max(...tops.map(levelAt));
  const { levelHalfSpace } = respond(system, frequencyGrid([f3.frequency, upper.frequency]));
  for (const level of levelHalfSpace) expect(top - level - 10 * Math.log10(2)).toBeCloseTo(0, 6);
});
