import type { Brief } from 'airspring';
import { describe, expect } from 'vitest';
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import type { Box } from '../../../packages/airspring/src/search/box.js';
import { pointsOf } from '../../../packages/airspring/src/search/points.js';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

/** Each is two whole searches. */
const RUNS = Number(process.env.SLOT_RUNS ?? cases(12));
const mm = (value: number) => `${value} mm`;
const { printer: _, ...rest } = demo;

const briefs: fc.Arbitrary<Brief> = fc
  .record({
    width: fc.integer({ min: 330, max: 600 }),
    height: fc.integer({ min: 330, max: 600 }),
    depth: fc.integer({ min: 250, max: 500 }),
    volume: fc.integer({ min: 40, max: 90 }),
    lowest: fc.integer({ min: 28, max: 46 }),
    level: fc.integer({ min: 86, max: 95 }),
    airSpeed: fc.integer({ min: 8, max: 20 }),
    faces: fc.constantFrom(['front'], ['back'], ['bottom'], ['front', 'top']),
    slot: fc.oneof(
      fc.record({ bends: fc.integer({ min: 0, max: 1 }), largest: fc.integer({ min: 20, max: 80 }).map(mm) }),
      fc.record({
        width: fc.integer({ min: 80, max: 260 }).map(mm),
        along: fc.constantFrom(['none'], ['one'], ['two'], ['one', 'two']),
        bends: fc.integer({ min: 0, max: 1 }),
        largest: fc.integer({ min: 30, max: 90 }).map(mm),
      }),
    ),
  })
  .map(
    ({ width, height, depth, volume, lowest, level, airSpeed, faces, slot }) =>
      ({
        ...rest,
        space: {
          width: mm(width),
          height: mm(height),
          depth: mm(depth),
          volume: `${volume} L`,
          panelThickness: '18 mm',
        },
        wanted: { lowest: `${lowest} Hz`, highest: '120 Hz', level: `${level} dB`, fall: '6 dB' },
        amplifier: { voltage: '30 V', current: '6 A', sourceResistance: '0.1 Ω' },
        box: { ...demo.box, kinds: ['slot-vented'] },
        vent: { airSpeed: `${airSpeed} m/s`, faces },
        slot,
      }) as unknown as Brief,
  );

const more = (text: string, factor: number) => {
  const [value, unit] = text.split(' ') as [string, string];
  return `${Number((Number(value) * factor).toPrecision(12))} ${unit}`;
};

/** Each gives more to choose from, or asks for less. */
const kinder: readonly (readonly [string, (brief: Brief) => Brief])[] = [
  ['a wider space', (b) => ({ ...b, space: { ...b.space, width: more(b.space.width, 1.23) } })],
  ['a higher space', (b) => ({ ...b, space: { ...b.space, height: more(b.space.height, 1.21) } })],
  ['a deeper space', (b) => ({ ...b, space: { ...b.space, depth: more(b.space.depth, 1.37) } })],
  ['more volume', (b) => ({ ...b, space: { ...b.space, volume: more(b.space.volume!, 1.18) } })],
  ['a faster vent', (b) => ({ ...b, vent: { ...b.vent, airSpeed: more(b.vent!.airSpeed!, 1.4) } })],
  ['a higher slot', (b) => ({ ...b, slot: { ...b.slot, largest: more(b.slot!.largest!, 1.3) } })],
  ['a fold', (b) => ({ ...b, slot: { ...b.slot, bends: 1 } })],
  ['another face', (b) => ({ ...b, vent: { ...b.vent, faces: [...new Set([...b.vent!.faces!, 'top'])] } }) as Brief],
  [
    'another way to lie',
    (b) => (b.slot!.along ? ({ ...b, slot: { ...b.slot, along: ['none', 'one', 'two'] } } as Brief) : b),
  ],
];

describe('a slot: more room, a looser limit, one more way to lie: never a conflict, never worse', () => {
  test.prop([briefs, fc.constantFrom(...kinder)], { numRuns: RUNS })(
    'than a thousandth in what was asked for',
    (brief, [name, kinderBrief]) => {
      const search = searchFor(brief);
      const [before] = bestBoxes(search, 1);
      if (before === undefined) return;
      const [after] = bestBoxes(searchFor(kinderBrief(brief)), 1);
      expect(after, name).toBeDefined();
      const { job } = search;
      const score = ({ criteria }: Box) => pointsOf(job, job.weights, criteria);
      // A thousandth of each: ten points are an octave, a halving, ten decibels.
      const weights = Object.values(job.weights).reduce((sum, one) => sum + one, 0);
      const thousandth = 10 * Math.log2(1.001) * weights;
      expect(score(after!), name).toBeGreaterThanOrEqual(score(before) - thousandth);
    },
    120_000,
  );
});
